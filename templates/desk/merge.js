// Two texts that came out of one, put together by lines. It must know nothing of the page.
import { diffIndices } from './editor.js';

const most = 2000; // lines that are compared with each other; where more differ, they are one place
const same = (a, b) => a.length === b.length && a.every((line, i) => line === b[i]);
export const linesOf = (text) => text.replace(/\r\n/g, '\n').split('\n');

// byLine shares lines out where all three texts have as many: each is a place of its own.
const byLine = (was, mine, theirs) => was.map((line, i) => kindOf([line], [mine[i]], [theirs[i]]));
const kindOf = (was, mine, theirs) => {
  if (same(mine, theirs)) { return { kind: same(mine, was) ? 'same' : 'alike', was, mine, theirs }; }
  if (same(theirs, was)) { return { kind: 'mine', was, mine, theirs }; }
  if (same(mine, was)) { return { kind: 'theirs', was, mine, theirs }; }
  return { kind: 'clash', was, mine, theirs };
};

// hunks are the runs of lines of a base that are others in a text.
const hunksOf = (base, lines, side) => {
  const shortest = Math.min(base.length, lines.length);
  let head = 0, tail = 0;
  while (head < shortest && base[head] === lines[head]) { head += 1; }
  while (tail < shortest - head && base.at(-1 - tail) === lines.at(-1 - tail)) { tail += 1; }
  const [was, now] = [base, lines].map((all) => all.slice(head, all.length - tail));
  const found = Math.max(was.length, now.length) > most ? [{ buffer1: [0, was.length], buffer2: [0, now.length] }] : diffIndices(was, now);
  return found.map(({ buffer1: [from, length], buffer2: [first, long] }) => ({ side, from: head + from, to: head + from + length, now: head + first, then: head + first + long }));
};

// groups are the runs of lines that one side or both changed; what touches is one run.
const groups = (base, mine, theirs) => {
  const hunks = [...hunksOf(base, mine, 0), ...hunksOf(base, theirs, 1)];
  hunks.sort((one, other) => one.from - other.from || one.to - other.to);
  const out = [];
  for (const hunk of hunks) {
    let last = out.at(-1);
    if (!last || hunk.from > last.to) {
      last = { from: hunk.from, to: hunk.to, sides: [[], []] };
      out.push(last);
    }
    last.to = Math.max(last.to, hunk.to);
    last.sides[hunk.side].push(hunk);
  }
  return out;
};

// merge gives the places of two texts in order. Each has a kind: same; mine or theirs, where
// one changed it; alike, where both did and wrote the same; clash, where both wrote otherwise.
export const merge = (base, mine, theirs) => {
  const o = linesOf(base), a = linesOf(mine), b = linesOf(theirs);
  const out = [];
  const add = (place) => {
    const before = out.at(-1);
    if (place.was.length + place.mine.length + place.theirs.length === 0) { return; }
    if (before && before.kind === place.kind) { // runs on
      for (const side of ['was', 'mine', 'theirs']) { before[side] = [...before[side], ...place[side]]; }
    } else { out.push(place); }
  };
  const alike = (lines) => add({ kind: 'same', was: lines, mine: lines, theirs: lines });
  let at = 0; // lines of the base that are told
  for (const { from, to, sides } of groups(o, a, b)) {
    alike(o.slice(at, from));
    const was = o.slice(from, to);
    const [mine, theirs] = [[a, sides[0]], [b, sides[1]]].map(([lines, hunks]) => (hunks.length ? lines.slice(hunks[0].now - (hunks[0].from - from), hunks.at(-1).then + (to - hunks.at(-1).to)) : was));
    if (sides.flat().every((hunk) => hunk.to - hunk.from === hunk.then - hunk.now)) { // lines in the place of lines
      byLine(was, mine, theirs).forEach(add);
    } else { add(kindOf(was, mine, theirs)); }
    at = to;
  }
  alike(o.slice(at));
  return out;
};

// together is the text of all places; choice gives for each clash mine, theirs or both.
export const together = (places, choice) => places.flatMap((place) => {
  if (place.kind !== 'clash') { return place.kind === 'theirs' ? place.theirs : place.mine; }
  const chosen = choice.get(place);
  return chosen === 'both' ? [...place.theirs, ...place.mine] : place[chosen];
});
