// The writing desk: what is open, what is asked of the desk and what is shown of its answer.
import { ask, get, id, Lost, make, newest, plural, Refused } from './ask.js';
import { at, knowVerbs, writing } from './writing.js';
import { arrows, files } from './files.js';
import { point, sheet, states } from './sheet.js';
import { forms } from './form.js';
import { conflict, sure } from './conflict.js';

const open = new Map(); // path → { state, hash, saved }: what is open, and what is known of the disk
const desk = { path: '', files: [], findings: [], names: [], shop: [], homes: {}, view: null, holding: null, unchecked: false };
const check = newest();
let editor, form;

const tell = (text) => { id('tell').textContent = text; clearTimeout(tell.timer); tell.timer = setTimeout(() => { id('tell').textContent = ''; }, 6000); };
let alarmOf = ''; // the file that the alarm is about; it goes when another is chosen
const alarm = (text, ...buttons) => { alarmOf = ''; id('alarm').replaceChildren(...(text ? [make('span', {}, text), ...buttons] : [])); };
const alarmFor = (path, text, ...buttons) => { alarm(text, ...buttons); alarmOf = path; };
const button = (text, does) => make('button', { type: 'button', onclick: does }, text);
let gone = false;
const wrong = (problem, path) => {
  if (problem instanceof Lost) {
    gone = true;
    alarm('The desk does not answer: it was stopped, or this computer slept. Your text is still here and not saved.',
      button('Try again', () => { look(true); }), button('Copy the text', () => navigator.clipboard.writeText(textOf(desk.path)).then(() => tell('The text is copied.'))));
    return;
  }
  if (!(problem instanceof Refused)) { console.error(problem); }
  const of = typeof path === 'string' ? path : desk.path;
  alarmFor(of, of && !problem.message.includes(of) ? of + ': ' + problem.message : problem.message, button('Close', () => alarm('')));
};

// What is open.
const stateOf = (path) => (path === desk.path ? editor.view.state : open.get(path).state);
const textOf = (path) => editor.textOf(stateOf(path));
const unsaved = () => new Set([...open.keys()].filter((path) => open.get(path).hash === '' || textOf(path) !== open.get(path).saved));
const asked = () => ({ unsaved: Object.fromEntries([...unsaved()].map((path) => [path, textOf(path)])), path: desk.path });

const fetched = async (path) => {
  if (!open.has(path)) {
    const file = await get('file?path=' + encodeURIComponent(path));
    open.set(path, { state: editor.begin(file.text), hash: file.hash, saved: file.text });
  }
};

const choose = async (path, quietly) => {
  try {
    await fetched(path);
  } catch (problem) { wrong(problem, path); return; }
  if (desk.path && open.has(desk.path)) { open.get(desk.path).state = editor.view.state; }
  const other = desk.path !== path;
  desk.path = path;
  editor.show(open.get(path).state);
  id('editor').hidden = false;
  id('welcome').hidden = true;
  history.replaceState(null, '', '#' + encodeURIComponent(path));
  clearTimeout(unread);
  if (other) {
    Object.assign(desk, { view: null, holding: null, unchecked: false, homes: {} });
    id('sides').classList.add('old');
    id('variant').value = '';
    if (alarmOf && alarmOf !== path) { alarm(''); }
  }
  drawReplaced();
  marks();
  drawFindings();
  drawHead();
  drawFiles();
  await look(false);
  if (!quietly) { tab('text'); editor.view.focus(); }
};

const begin = async (path, text) => {
  open.set(path, { state: editor.begin(text), hash: '', saved: '' });
  desk.files.push({ path, kind: path.startsWith('machines/') ? 'machine' : 'procedure', title: '', name: '' });
  await choose(path, true);
  tab('text');
  editor.goTo({ line: editor.view.state.doc.lines - 1, character: 0 });
  editor.view.focus();
  tell(path + ' is begun. Save it with Ctrl+S.');
};

// Checking: the file at hand at once, all the others when the hands rest.
let soon = 0, later = 0;
const look = async (all) => {
  clearTimeout(soon);
  clearTimeout(later);
  const held = {};
  for (const [path, one] of open) { if (one.hash) { held[path] = one.hash; } }
  let answer;
  try {
    answer = await check('check', { ...asked(), all, variant: id('variant').value, stock: id('stock').value, open: held });
  } catch (problem) { wrong(problem); return; }
  if (!answer) { return; }
  if (gone) { gone = false; alarm(''); }
  for (const file of answer.files) { // what a file is called stays while its text cannot be read
    const before = desk.files.find((one) => one.path === file.path);
    if (before && !file.title && before.title && answer.findings.some((one) => one.path === file.path && one.severity === 'error')) { Object.assign(file, { title: before.title, name: before.name, kind: before.kind }); }
  }
  desk.files = answer.files;
  desk.findings = answer.all ? answer.findings : [...desk.findings.filter((one) => one.path !== desk.path), ...answer.findings.filter((one) => one.path === desk.path)];
  if (answer.names.length) { desk.names = answer.names; }
  desk.shop = answer.shop || [];
  if (Object.keys(answer.homes).length) { desk.homes = answer.homes; } // or else the text cannot be read just now
  Object.assign(desk, { holding: answer.holding, unchecked: answer.unchecked });
  marks();
  drawFindings();
  drawFiles();
  await drawView(answer);
  drawHead();
  if (answer.faults && answer.faults.length) { alarm(answer.faults.join('; '), button('Close', () => alarm(''))); }
  for (const path of answer.changed) { // but not what was saved or shown anew since it was asked for
    if (open.has(path) && open.get(path).hash === held[path]) { await changed(path); }
  }
  if (!answer.all) { later = setTimeout(() => look(true), 600); }
};
const typed = () => {
  if (id('tell').textContent === 'Saved.') { tell(''); } // no longer
  clearTimeout(soon);
  clearTimeout(later);
  soon = setTimeout(() => look(false), 120);
  drawSaved();
};

// A file that is another on the disk now is shown anew; with text that is not saved it is asked about.
const changed = async (path) => {
  const differs = () => alarmFor(path, path + ' was changed on the disk meanwhile.', button('Compare both', () => compare(path)));
  if (unsaved().has(path)) { differs(); return; }
  try {
    const file = await get('file?path=' + encodeURIComponent(path));
    if (file.hash === open.get(path).hash) { return; }
    if (unsaved().has(path)) { differs(); return; } // it was written in while it was fetched
    replaceText(path, file.text);
    Object.assign(open.get(path), { hash: file.hash, saved: file.text });
    tell(path + ' was changed on the disk and is shown anew.');
    typed();
  } catch (problem) {
    if (problem.status === 404) { open.get(path).hash = ''; tell(path + ' is no longer on the disk. Save it to write it again.'); drawFiles(); drawSaved(); } else { wrong(problem); }
  }
};

const replaceText = (path, text) => {
  if (path === desk.path) { editor.view.dispatch(editor.put(editor.view.state, text, true)); } else { open.get(path).state = editor.put(open.get(path).state, text, true).state; }
};

// Saving.
const save = async () => {
  for (const path of unsaved()) {
    const text = textOf(path), before = open.get(path).saved;
    if (!text.trim() && before.trim()) {
      if (!await sure(path + ' is empty now. Saved so, its ' + plural(before.trim().split('\n').length, 'line is', 'lines are') + ' gone from the disk.', 'Save it empty', 'Do not save')) { return; }
      replaced.set(path, [['what stood in it', before]]);
    }
    if (!await saveOne(path, text, open.get(path).hash)) { return; }
  }
  tell('Saved.');
  look(true);
};
const saveOne = async (path, text, hash) => {
  try {
    const answer = await ask('save', { path, text, hash });
    Object.assign(open.get(path), { hash: answer.hash, saved: text });
    if (alarmOf === path) { alarm(''); }
    drawSaved();
    drawFiles();
    drawReplaced();
    return true;
  } catch (problem) {
    if (problem.status === 409) { await settle(path, problem.body); } else { wrong(problem, path); }
    return false;
  }
};

const compare = async (path) => {
  try {
    const file = await get('file?path=' + encodeURIComponent(path));
    await settle(path, { text: file.text, hash: file.hash, gone: false });
  } catch (problem) {
    if (problem.status === 404) { await settle(path, { text: '', hash: '', gone: true }); } else { wrong(problem, path); }
  }
};

// What was changed here and on the disk is put together. Whatever is chosen, the texts that
// were replaced stay at hand: above the text, and in the undo history.
const settle = async (path, disk) => {
  if (path !== desk.path) { await choose(path, true); }
  const mine = textOf(path);
  const known = (saved) => Object.assign(open.get(path), { hash: disk.hash, saved });
  if (!disk.gone && disk.text === mine) { // somebody wrote the same
    known(mine);
    alarm('');
    typed();
    return;
  }
  const chosen = await conflict({ path, base: open.get(path).saved, mine, theirs: disk.text, gone: disk.gone });
  if (!chosen.which) { editor.view.focus(); return; }
  alarm('');
  const theirs = ['the text on the disk', disk.text], own = ['my text', mine];
  if (!disk.gone) { replaceText(path, disk.text); }
  if (chosen.which === 'theirs') {
    known(disk.text);
    replaced.set(path, [own]);
  } else {
    const text = chosen.which === 'mine' ? mine : editor.joined(stateOf(path), chosen.lines);
    if (!disk.gone) {
      replaceText(path, text);
      replaced.set(path, chosen.which === 'mine' ? [theirs] : [own, theirs]);
    }
    known(disk.gone ? '' : disk.text);
    if (await saveOne(path, text, disk.hash)) { tell('Saved.'); }
  }
  drawReplaced();
  typed();
  editor.view.focus();
};

// Texts that were replaced, by path, each with what it is called.
const replaced = new Map();
const drawReplaced = () => {
  const texts = replaced.get(desk.path) || [];
  id('replaced').hidden = !texts.length;
  id('replaced').replaceChildren(...(texts.length ? [make('span', {}, 'Replaced and still here:'), ...texts.map(([name, text]) => button('Bring back ' + name, () => {
    const now = textOf(desk.path);
    if (now !== text) {
      replaceText(desk.path, text);
      replaced.set(desk.path, [...texts.filter((one) => one[1] !== text && one[1] !== now && one[0] !== 'the text before this'), ['the text before this', now]]);
    }
    drawReplaced();
    tell('It is back, and not saved yet.');
    editor.view.focus();
  })), button('Let it go', () => { replaced.delete(desk.path); drawReplaced(); editor.view.focus(); })] : []));
};

// Findings.
const worst = { error: 'error', warning: 'warning', note: 'info' };
const here = () => desk.findings.filter((one) => one.path === desk.path);
const mendWith = async (fix) => {
  const by = new Map();
  for (const edit of fix.edits) { by.set(edit.path, [...(by.get(edit.path) || []), edit]); }
  try {
    for (const [path, edits] of by) {
      await fetched(path);
      const doc = stateOf(path).doc;
      const change = { changes: edits.map((edit) => ({ from: at(doc, edit.from), to: at(doc, edit.to), insert: edit.text })), userEvent: 'input.mend' };
      if (path === desk.path) { editor.view.dispatch(change); } else { open.get(path).state = open.get(path).state.update(change).state; }
    }
  } catch (problem) { wrong(problem); return; }
  tell('Mended: ' + fix.title + '.');
  typed();
};
const marks = () => {
  const doc = editor.view.state.doc;
  editor.mark(here().map((one) => {
    const from = at(doc, one.from), to = Math.max(from, at(doc, one.to));
    return {
      from, to, severity: worst[one.severity], source: one.rule, message: one.summary,
      renderMessage: () => make('span', { class: 'says' }, one.summary, one.help ? make('span', { class: 'small' }, make('br'), one.help) : null),
      actions: (one.fixes || []).map((fix) => ({ name: fix.title, apply: () => mendWith(fix) })),
    };
  }));
};
const mend = () => {
  const doc = editor.view.state.doc, spot = editor.view.state.selection.main.head;
  const line = doc.lineAt(spot);
  const near = here().filter((one) => (one.fixes || []).length && at(doc, one.from) <= line.to && at(doc, one.to) >= line.from)
    .sort((a, b) => Math.abs(at(doc, a.from) - spot) - Math.abs(at(doc, b.from) - spot));
  const one = near.find((found) => at(doc, found.from) <= spot && spot <= at(doc, found.to)) || near[0];
  if (!one) {
    const found = here().some((found) => at(doc, found.from) <= line.to && at(doc, found.to) >= line.from);
    tell(found ? 'What is found on this line is mended by hand; the finding says what to write.' : here().length ? 'Nothing is found on this line. F8 goes to the next finding.' : 'Nothing is found in this file.');
    return;
  }
  if (one.fixes.length === 1) { mendWith(one.fixes[0]); return; }
  const first = document.querySelector('[data-finding="' + desk.findings.indexOf(one) + '"] .fixes button');
  if (first) { tab('found'); first.focus(); }
};
const goTo = async (one) => {
  if (one.path !== desk.path) { await choose(one.path, true); }
  tab('text');
  editor.goTo(one.from, one.to);
  editor.view.focus();
};
const drawFindings = () => {
  const every = id('every').checked;
  const list = desk.findings.filter((one) => every || one.path === desk.path).sort((a, b) => a.path.localeCompare(b.path) || a.from.line - b.from.line);
  const counts = (all) => ['error', 'warning', 'note'].map((kind) => [kind, all.filter((one) => one.severity === kind).length]).filter((pair) => pair[1]);
  const said = counts(list).map(([kind, n]) => plural(n, kind, kind + 's')).join(', ');
  const text = !desk.path && !every ? '' : desk.path && !desk.holding ? '' : said || (desk.unchecked ? 'steps not checked' : desk.holding && desk.holding.length ? 'held back' : 'no findings');
  if (id('tally').textContent !== text) { id('tally').textContent = text; }
  id('tab-count').textContent = list.length ? String(list.length) : '';
  const focused = document.activeElement && document.activeElement.closest('.finding') ? document.activeElement.closest('.finding').dataset.is : '';
  const box = id('findings'), top = box.scrollTop;
  const told = holds();
  box.replaceChildren(...(told ? [told] : []), ...(list.length ? list.map((one) => make('div', { class: 'finding ' + one.severity, 'data-finding': desk.findings.indexOf(one), 'data-is': one.rule + one.path + one.summary, 'data-line': one.path === desk.path ? one.from.line : false },
    make('button', { type: 'button', class: 'goto', onclick: () => goTo(one) }, make('b', { class: 'kind' }, one.severity), ' ' + one.summary + ' ', make('span', { class: 'at' }, (every ? one.path + ', ' : '') + 'line ' + (one.from.line + 1) + (one.variant ? ', ' + one.variant : ''))),
    one.help ? make('p', { class: 'write' }, one.help) : null,
    one.why ? make('p', { class: 'why' }, one.why) : null,
    ...(one.related || []).map((other) => make('p', { class: 'why' }, other.text + (other.path ? ' (' + (other.path === desk.path ? '' : other.path + ', ') + 'line ' + (other.from.line + 1) + ')' : ''))),
    make('div', { class: 'fixes' }, ...(one.fixes || []).map((fix) => button(fix.title, () => mendWith(fix)))))) : told ? [] : [make('p', { class: 'empty' }, desk.path && !desk.holding ? 'It is being checked.' : desk.path || every ? 'Nothing is wrong or missing, as far as benchleaf can tell.' : 'What is wrong or missing in a file is told here.')]));
  box.scrollTop = top;
  if (focused) {
    const again = [...box.querySelectorAll('.finding')].find((one) => one.dataset.is === focused);
    (again ? again.querySelector('button') : box.querySelector('.goto') || id('found')).focus({ preventScroll: true });
  }
  markLine();
};
// holds tells what holds the card back that is not among the findings of the file, and that the
// steps are not checked.
const placeOf = (one) => (one.path === desk.path ? '' : one.path + ', ') + 'line ' + (one.from.line + 1);
const holds = () => {
  const all = desk.holding || [], others = all.filter((one) => one.path !== desk.path);
  if (!desk.unchecked && !others.length) { return null; }
  const own = all.length - others.length;
  const why = desk.unchecked ? 'The steps are not checked yet. ' : 'The card is held back. ';
  const what = others.length ? 'First mend ' + (own ? 'the errors below, and ' : '') + (others.length === 1 ? 'this error in another file:' : 'these errors in other files:') : own ? 'First mend the errors below.' : 'First mend what cannot be read.';
  return make('div', { class: 'finding error holds', 'data-is': 'holds' }, make('p', {}, make('b', { class: 'kind' }, why), what), others.length ? make('ul', {}, ...others.map((one) => make('li', {},
    make('button', { type: 'button', class: 'goto', onclick: () => goTo(one) }, make('span', { class: 'at' }, placeOf(one)), ' ' + one.summary)))) : null);
};
const markLine = () => {
  const doc = editor.view.state.doc, line = doc.lineAt(editor.view.state.selection.main.head).number - 1;
  let first = null;
  for (const one of document.querySelectorAll('.finding')) {
    const is = Number(one.dataset.line) === line && one.dataset.line !== undefined;
    one.classList.toggle('here', is);
    first = first || (is ? one : null);
  }
  if (first && !id('found').contains(document.activeElement)) { first.scrollIntoView({ block: 'nearest' }); }
};

// The page and the states.
const stepAt = (line) => {
  const steps = desk.view ? desk.view.steps : [];
  const one = steps.find((step) => step.from <= line && line <= step.to + 1);
  return one ? one.number : 0;
};
const goStep = (number) => {
  const step = desk.view && desk.view.steps.find((one) => one.number === number);
  if (!step) { return; }
  tab('text');
  editor.goTo({ line: step.from, character: 0 });
  editor.view.focus();
};
const moved = () => {
  const doc = editor.view.state.doc, line = doc.lineAt(editor.view.state.selection.main.head);
  id('where').textContent = desk.path ? desk.path + ', line ' + line.number : '';
  point(stepAt(line.number - 1), document.activeElement === document.body || id('text').contains(document.activeElement));
  markLine();
};
const kindOf = (path) => (desk.files.find((file) => file.path === path) || { kind: '' }).kind;
let unread = 0; // tells that the text cannot be read, when the hands rest
const drawView = async (answer) => {
  const procedure = kindOf(desk.path) === 'procedure';
  const several = answer.variants.length > 1;
  const chosen = answer.view ? answer.view.variant : '';
  id('variant-pick').hidden = !several;
  if (several) { id('variant').replaceChildren(...answer.variants.map((one) => make('option', { value: one, selected: one === chosen }, one || 'all'))); }
  clearTimeout(unread);
  if (!answer.view && procedure && desk.view) { // the text cannot be read just now: the last page stays
    unread = setTimeout(() => {
      id('sides').classList.add('old');
      held('The text cannot be read just now; this is the page as it was before.');
    }, 1500);
    prints(false);
    return;
  }
  desk.view = answer.view;
  const places = new Map(); // those in other files first: the findings of this one do not tell them
  for (const one of answer.holding.filter((one) => one.path !== desk.path).concat(answer.holding)) {
    if (!places.has(placeOf(one))) { places.set(placeOf(one), one); }
  }
  const blocks = [...places].slice(0, 3).map(([place, one]) => button(place, () => goTo(one)));
  if (places.size > 3) { blocks.push(make('span', {}, 'and ' + (places.size - 3) + ' more, told in the findings')); }
  if (!answer.view) {
    held(procedure ? 'No card can be drawn yet. The findings say what is missing.' : '');
  } else if (answer.view.blocked) {
    held('Held back, so it is not printed yet' + (answer.unchecked ? ' and its steps are not checked' : '') + '. First mend ' + (places.size === 1 ? 'the error' : 'the errors') + ' at', ...blocks);
  } else { held(answer.view.troubles ? answer.view.troubles.join('; ') : ''); }
  prints(Boolean(answer.view), Boolean(answer.view) && !answer.view.blocked);
  await sheet(answer.view, goStep);
  states(answer.view, goStep);
  moved();
};
const held = (text, ...more) => { // drawn only where it is another, so that the focus stays
  const box = id('held'), said = text + more.map((one) => one.textContent).join(' ');
  box.hidden = !text;
  if (box.dataset.says !== said) {
    box.dataset.says = said;
    box.replaceChildren(make('span', {}, text), ...more);
  }
};
const prints = (sheetToo, card) => {
  id('print-card').disabled = !card;
  id('print-pick').disabled = !card;
  id('print-approval').disabled = !sheetToo;
};
const print = async (kind) => {
  try {
    const answer = await ask('print', { ...asked(), all: false, kind, variant: desk.view ? desk.view.variant : '', stock: id('stock').value });
    const name = (answer.headers.get('Content-Disposition') || '').match(/filename="?([^";]+)/);
    const address = URL.createObjectURL(await answer.blob());
    const link = make('a', { href: address, download: name ? name[1] : kind + '.pdf' });
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(address), 60000);
    tell((name ? name[1] : 'The file') + ' went to your downloads.');
  } catch (problem) { wrong(problem); }
};

// What is shown of all this.
const drawFiles = () => {
  const counts = new Map();
  for (const one of desk.findings) {
    const count = counts.get(one.path) || {};
    count[one.severity] = (count[one.severity] || 0) + 1;
    counts.set(one.path, count);
  }
  const there = desk.files.slice();
  for (const path of open.keys()) { if (!there.some((file) => file.path === path)) { there.push({ path, kind: 'library', title: '', name: '' }); } }
  desk.files = there;
  files({ files: there, counts, unsaved: unsaved(), path: desk.path }, choose);
};
const drawSaved = () => {
  const all = unsaved();
  id('save').disabled = !all.size;
  id('save').textContent = all.size > 1 ? 'Save ' + all.size + ' files' : 'Save';
  id('unsaved').hidden = !all.has(desk.path);
  for (const which of ['undo', 'redo']) { // marked and not disabled, so that the focus stays
    id(which).hidden = !desk.path;
    id(which).setAttribute('aria-disabled', String(!editor.can(which)));
  }
};
const drawHead = () => {
  const file = desk.files.find((one) => one.path === desk.path);
  const title = desk.view ? desk.view.title : file && file.title ? file.title : desk.path;
  id('title').textContent = title || 'Open a file, or begin one';
  document.title = (title ? title + ' · ' : '') + 'Writing desk';
  id('add-step').disabled = !file || file.kind !== 'procedure';
  id('add-thing').disabled = !file || file.kind === 'second' || file.kind === 'shop';
  id('tidy').disabled = !file;
  const shop = desk.files.find((one) => one.path === 'shop.toml');
  id('shop').textContent = shop && shop.title ? shop.title : desk.folder;
  drawSaved();
};
const tab = (name) => {
  document.body.dataset.tab = name;
  for (const one of document.querySelectorAll('.tabs button')) {
    if (one.dataset.tab === name) { one.setAttribute('aria-current', 'true'); } else { one.removeAttribute('aria-current'); }
  }
  if (name === 'text') { editor.view.requestMeasure(); }
  if (name === 'sheet' || name === 'state') { moved(); }
};

// Keys that hold everywhere.
const panes = ['files', 'text', 'sheet', 'found', 'state'];
const enter = (name) => {
  tab(name);
  const inner = { files: '.file[tabindex="0"]', sheet: '.spot[aria-current], .spot[tabindex="0"]', found: '.finding.here .goto, .goto', state: 'thead button[aria-current], thead button[tabindex="0"]' }[name];
  if (name === 'text' && desk.path) { editor.view.focus(); return; }
  ((inner && id(name).querySelector(inner)) || id(name)).focus();
};
document.addEventListener('keydown', (event) => {
  if (document.querySelector('dialog[open]')) { return; }
  if ((event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === 's') {
    event.preventDefault();
    save();
  } else if (event.key === 'F6') {
    event.preventDefault();
    const at = panes.findIndex((name) => id(name).contains(document.activeElement));
    enter(panes[(at + (event.shiftKey ? panes.length - 1 : 1) + (at < 0 && event.shiftKey ? 1 : 0)) % panes.length]);
  } else if (event.altKey && event.key.toLowerCase() === 'n' && !id('add-step').disabled) {
    event.preventDefault();
    addStep();
  }
});
const addStep = () => form.step().catch(wrong);

const start = async () => {
  editor = writing({ changed: typed, moved, asked, mend, wrong });
  const [shop, language] = await Promise.all([get('shop'), get('language')]);
  desk.folder = shop.folder;
  knowVerbs([...language.verbs.map((verb) => verb.key), 'say']);
  id('tidy').hidden = !shop.tidy;
  id('stock').append(...shop.stocks.map((one) => make('option', { value: one }, one)));
  form = forms({
    language, sure, names: () => desk.names, shop: () => desk.shop, homes: () => desk.homes, files: () => desk.files, begin,
    current: () => ({ path: desk.path, text: editor.view.state.doc.toString(), line: editor.view.state.doc.lineAt(editor.view.state.selection.main.head).number - 1 }),
    text: async (path) => {
      await fetched(path);
      return stateOf(path).doc.toString();
    },
    insert: async (path, placed) => {
      if (path !== desk.path) {
        const one = open.get(path), doc = one.state.doc;
        one.state = one.state.update({ changes: { from: placed.line >= doc.lines ? doc.length : doc.line(placed.line + 1).from, insert: one.state.toText(placed.text) }, userEvent: 'input.form' }).state;
        tell('It stands in ' + path + ' now, and is not saved yet.');
        drawSaved();
        drawFiles();
        await look(false);
        return;
      }
      const doc = editor.view.state.doc;
      const from = placed.line >= doc.lines ? doc.length : doc.line(placed.line + 1).from;
      const head = from + (placed.text.match(/^\n*/)[0].length);
      editor.view.dispatch({ changes: { from, insert: editor.view.state.toText(placed.text) }, selection: { anchor: head }, effects: editor.inMiddle(head), userEvent: 'input.form' });
      editor.view.focus();
      await look(false);
    },
  });
  id('new-procedure').addEventListener('click', () => form.procedure());
  id('new-machine').addEventListener('click', () => form.machine());
  id('add-step').addEventListener('click', addStep);
  id('add-thing').addEventListener('click', () => form.thing(kindOf(desk.path)));
  id('save').addEventListener('click', save);
  for (const which of ['undo', 'redo']) { id(which).addEventListener('click', () => { if (desk.path) { editor.back(which); } }); }
  id('tidy').addEventListener('click', async () => {
    try { const answer = await ask('tidy', { text: textOf(desk.path) }); if (answer.text !== textOf(desk.path)) { replaceText(desk.path, answer.text); } tell('Tidied.'); } catch (problem) { wrong(problem, desk.path); }
  });
  id('keys').addEventListener('click', () => id('help').showModal());
  id('help-close').addEventListener('click', () => id('help').close());
  id('filter').addEventListener('input', drawFiles);
  id('filter').addEventListener('keydown', (event) => { // the keys go on in the list
    const first = id('list').querySelector('.file');
    if (!first || event.isComposing || !['Enter', 'ArrowDown'].includes(event.key)) { return; }
    event.preventDefault();
    if (event.key === 'ArrowDown') {
      id('list').querySelectorAll('.file').forEach((one) => { one.tabIndex = one === first ? 0 : -1; });
      first.focus();
    } else if (id('filter').value.trim()) { choose(first.dataset.path); }
  });
  id('every').addEventListener('change', drawFindings);
  id('variant').addEventListener('change', () => look(false));
  id('stock').addEventListener('change', () => look(false));
  id('print-card').addEventListener('click', () => print('card'));
  id('print-pick').addEventListener('click', () => print('pick'));
  id('print-approval').addEventListener('click', () => print('approval'));
  for (const one of document.querySelectorAll('.tabs button')) { one.addEventListener('click', () => tab(one.dataset.tab)); }
  document.querySelector('.jump').addEventListener('click', (event) => { event.preventDefault(); enter('text'); });
  arrows(id('list'), '.file');
  arrows(id('sides'), '.spot', true);
  arrows(id('strip'), 'thead button', true);
  window.addEventListener('beforeunload', (event) => { if (unsaved().size) { event.preventDefault(); } });
  window.addEventListener('focus', () => { if (desk.path) { typed(); } });
  tab('text');
  states(null, goStep);
  sheet(null, goStep);
  await look(true);
  const opened = decodeURIComponent(location.hash.slice(1));
  if (desk.files.some((file) => file.path === opened)) { await choose(opened); } else if (window.matchMedia('(max-width: 50em)').matches) { tab('files'); }
  document.body.dataset.ready = 'true';
};
start().catch(wrong);
