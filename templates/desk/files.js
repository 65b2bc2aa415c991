// The files at the left, by what they hold, with badges of findings.
import { id, make, plural } from './ask.js';

const groups = [['procedure', 'Procedures'], ['machine', 'Machines'], ['shop', 'Shop'], ['library', 'Shop'], ['second', 'Second readings']];
const titles = ['Procedures', 'Machines', 'Shop', 'Second readings'];
const worst = ['error', 'warning', 'note'];

// files draws the list. state: files, counts by path, unsaved paths, current path; choose(path).
export const files = (state, choose) => {
  const wanted = id('filter').value.trim().toLowerCase();
  const list = id('list');
  const shut = list.querySelector('details') ? !list.querySelector('details').open : true;
  const focused = document.activeElement && document.activeElement.dataset ? document.activeElement.dataset.path : '';
  const top = list.scrollTop;
  const out = [];
  for (const title of titles) {
    const kinds = groups.filter((group) => group[1] === title).map((group) => group[0]);
    const items = state.files.filter((file) => kinds.includes(file.kind) && (!wanted || (file.path + ' ' + file.title).toLowerCase().includes(wanted)))
      .sort((a, b) => (a.title || a.path).localeCompare(b.title || b.path));
    if (!items.length) { continue; }
    const rows = make('ul', {}, ...items.map((file) => {
      const counts = state.counts.get(file.path) || {};
      const kind = worst.find((one) => counts[one]);
      const stem = file.path.replace(/\.toml$/, '').replace(/^.*\//, '');
      const unsaved = state.unsaved.has(file.path);
      const told = [kind ? worst.filter((one) => counts[one]).map((one) => plural(counts[one], one, one + 's')).join(', ') : '', unsaved ? 'not saved' : ''].filter(Boolean).join(', ');
      return make('li', {}, make('button', { type: 'button', class: 'file', 'data-path': file.path, 'aria-current': file.path === state.path ? 'true' : false, tabindex: '-1', title: file.path, onclick: () => choose(file.path) },
        make('span', { class: 'said' }, file.title || stem, make('small', {}, file.title ? file.path : file.path.includes('/') ? file.path.replace(/\/[^/]*$/, '/') : 'top of the folder')),
        unsaved ? make('span', { class: 'dot', 'aria-hidden': 'true' }) : null,
        kind ? make('span', { class: 'badge ' + kind, 'aria-hidden': 'true' }, String(counts[kind])) : null,
        told ? make('span', { class: 'hear' }, ', ' + told) : null));
    }));
    const second = title === 'Second readings';
    out.push(second ? make('details', { open: !shut || Boolean(wanted) || items.some((file) => file.path === state.path) }, make('summary', {}, title + ' · ' + items.length), rows) : make('div', {}, make('h3', {}, title + ' · ' + items.length), rows));
  }
  list.replaceChildren(...out);
  list.scrollTop = top;
  const all = [...list.querySelectorAll('.file')];
  const first = all.find((file) => file.dataset.path === focused) || all.find((file) => file.hasAttribute('aria-current')) || all[0];
  if (first) { first.tabIndex = 0; }
  if (focused && first && first.dataset.path === focused) { first.focus({ preventScroll: true }); }
};

// The arrows move within the list.
export const arrows = (parent, pattern, across) => parent.addEventListener('keydown', (event) => {
  const step = { ArrowDown: 1, ArrowUp: -1, ...(across ? { ArrowRight: 1, ArrowLeft: -1 } : {}) }[event.key];
  const ends = { Home: 0, End: -1 }[event.key];
  const all = [...parent.querySelectorAll(pattern)].filter((one) => one.checkVisibility());
  const here = all.indexOf(document.activeElement);
  if (here < 0 || step === undefined && ends === undefined) { return; }
  event.preventDefault();
  const next = ends !== undefined ? all.at(ends) : all[Math.min(all.length - 1, Math.max(0, here + step))];
  all.forEach((one) => { one.tabIndex = one === next ? 0 : -1; });
  next.focus();
});
