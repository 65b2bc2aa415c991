// What is asked when a file is another on the disk than when it was opened: what both changed
// is put together by lines, and where both changed the same lines somebody chooses.
import { id, make, plural } from './ask.js';
import { linesOf, merge, together } from './merge.js';

const says = { mine: 'Yours', theirs: 'From the disk', alike: 'Both wrote the same' };
const text = (lines) => lines.join('\n') || ' ';
const old = (lines) => (lines.length ? make('pre', { class: 'was' }, make('span', { class: 'hear' }, 'Before: '), make('del', {}, text(lines))) : null);
const now = (lines) => (lines.length ? make('pre', { class: 'now' }, text(lines)) : make('p', { class: 'small' }, 'These lines are gone.'));

// drawn shows the places that differ, with a line of what is around them.
const drawn = (places, choice, chosen) => {
  let line = 1; // of what comes out
  const out = [];
  places.forEach((place, i) => {
    if (place.kind === 'same') {
      const first = i === 0 ? 0 : 1, last = i === places.length - 1 ? 0 : 1, lines = place.mine;
      if (first) { out.push(make('pre', { class: 'around' }, text(lines.slice(0, 1)))); }
      if (lines.length > first + last) { out.push(make('p', { class: 'skip' }, plural(lines.length - first - last, 'line is', 'lines are') + ' the same')); }
      if (last && (lines.length > first || !first)) { out.push(make('pre', { class: 'around' }, text(lines.slice(-1)))); }
      line += lines.length;
      return;
    }
    if (place.kind === 'clash') {
      const options = [['theirs', 'On the disk', place.theirs], ['mine', 'Yours', place.mine], ...(place.mine.length && place.theirs.length ? [['both', 'Both: first the lines on the disk, then yours', null]] : [])];
      out.push(make('fieldset', { class: 'place clash' }, make('legend', {}, 'Line ' + line + ': both changed it. Choose what stands:'), old(place.was), ...options.map(([word, name, lines]) =>
        make('label', {}, make('input', { type: 'radio', name: 'clash-' + i, value: word, onchange: () => { choice.set(place, word); chosen(); } }), make('span', {}, make('b', {}, name), lines ? now(lines) : null)))));
      line += place.mine.length;
      return;
    }
    const lines = place.kind === 'theirs' ? place.theirs : place.mine;
    out.push(make('div', { class: 'place ' + place.kind }, make('p', { class: 'whose' }, make('b', {}, says[place.kind]), ' · line ' + line), old(place.was), now(lines)));
    line += lines.length;
  });
  return out;
};

// conflict opens the dialog. texts: path, base that was opened, mine, theirs on the disk, gone.
// It resolves to { which, lines } of what was chosen: merged, mine, theirs, or nothing.
export const conflict = (texts) => new Promise((resolve) => {
  const dialog = id('conflict'), choice = new Map();
  const places = texts.gone ? [] : merge(texts.base, texts.mine, texts.theirs);
  const clashes = places.filter((place) => place.kind === 'clash');
  const left = () => clashes.filter((place) => !choice.has(place)).length;
  const draw = () => {
    id('keep-merged').disabled = left() > 0;
    id('conflict-left').textContent = !clashes.length ? '' : left() ? plural(left(), 'place is', 'places are') + ' left to choose before both can be saved together.' : 'All is chosen.';
  };
  const where = clashes.length ? plural(clashes.length, 'place was', 'places were') + ' changed by both: choose there what stands.' : 'The changes are in different places; all of them stand together here.';
  id('conflict-title').textContent = texts.gone ? 'This file is gone from the disk' : 'You and somebody else changed this file';
  id('conflict-says').textContent = texts.gone ? texts.path + ' is no longer on the disk. Your text is still here. Nothing was written.'
    : texts.path + ' is another on the disk than when you opened it. ' + where + ' Nothing was written.';
  id('merge').replaceChildren(...drawn(places, choice, draw));
  id('merge').hidden = id('keep-merged').hidden = id('take-theirs').hidden = texts.gone;
  id('keep-mine').textContent = texts.gone ? 'Write the file again with my text' : 'Save my text over the one on the disk';
  draw();
  let answer = { which: '' };
  const end = (which) => () => { answer = { which, lines: which === 'merged' ? together(places, choice) : which === 'mine' ? linesOf(texts.mine) : linesOf(texts.theirs) }; dialog.close(); };
  id('keep-merged').onclick = end('merged');
  id('keep-mine').onclick = end('mine');
  id('take-theirs').onclick = end('theirs');
  id('not-now').onclick = () => dialog.close();
  dialog.onclose = () => resolve(answer);
  dialog.showModal();
  id('conflict-title').focus(); // on nothing that writes
  id('merge').scrollTop = 0;
  const first = id('merge').querySelector('.place');
  if (first) { id('merge').scrollTop = Math.max(0, first.offsetTop - id('merge').offsetTop - 40); }
});

// sure asks before something is lost; the focus is on what loses nothing.
export const sure = (question, yes, no) => new Promise((resolve) => {
  const dialog = id('sure');
  const end = (answer) => { dialog.onclose = null; dialog.close(); resolve(answer); }; // at once, and not when the browser comes to it
  const keep = make('button', { type: 'button', onclick: () => end(false) }, no);
  dialog.replaceChildren(make('p', { id: 'sure-says' }, question), make('div', { class: 'buttons' }, keep, make('button', { type: 'button', class: 'plain', onclick: () => end(true) }, yes)));
  dialog.onclose = () => resolve(false);
  dialog.showModal();
  keep.focus();
});
