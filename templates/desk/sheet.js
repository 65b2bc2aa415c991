// The printed page at the right: pictures of its sides with a button over each step; and
// below it how the machine stands after each step.
import { id, make } from './ask.js';

let shown = []; // sides: { svg, address }

// sheet draws the sides of a card. go(step) goes to its line.
export const sheet = async (view, go) => {
  const box = id('sides');
  box.classList.toggle('old', false);
  if (!view) {
    forget();
    box.replaceChildren(make('p', { class: 'empty' }, 'The card of a procedure is drawn here while you write it.'));
    return;
  }
  const top = box.scrollTop;
  const words = new Map(view.steps.map((step) => [step.number, step]));
  const before = shown;
  shown = view.sides.map((side, i) => (before[i] && before[i].svg === side.svg ? before[i] : { svg: side.svg, address: URL.createObjectURL(new Blob([side.svg], { type: 'image/svg+xml' })) }));
  const pictures = view.sides.map((side, i) => {
    const old = box.children[i] && box.children[i].querySelector('img');
    if (old && old.src === shown[i].address) { return old; }
    const made = make('img', { src: shown[i].address, alt: 'Side ' + (i + 1) + ' of ' + view.sides.length + ' of the card' });
    made.width = Math.round(side.width * 4);
    made.height = Math.round(side.height * 4);
    return made;
  });
  const mine = shown;
  await Promise.all(pictures.map((picture) => picture.decode().catch(() => {})));
  if (mine !== shown) { return; } // a newer page came meanwhile
  const focused = document.activeElement && document.activeElement.classList.contains('spot') ? document.activeElement.dataset.step : '';
  box.replaceChildren(...view.sides.map((side, i) => make('div', { class: 'side' }, pictures[i], ...side.spots.map((spot) => {
    const step = words.get(spot.step);
    const button = make('button', { type: 'button', class: 'spot', 'data-step': spot.step, tabindex: '-1',
      'aria-label': 'Step ' + spot.step + (step ? ': ' + step.words + ' Line ' + (step.from + 1) : ''), title: step ? 'Line ' + (step.from + 1) : false, onclick: () => go(spot.step) });
    Object.assign(button.style, { left: 100 * spot.x / side.width + '%', top: 100 * spot.y / side.height + '%', width: 100 * spot.width / side.width + '%', height: 100 * spot.height / side.height + '%' });
    return button;
  }))));
  before.filter((one) => !shown.includes(one)).forEach((one) => URL.revokeObjectURL(one.address));
  box.scrollTop = top;
  const first = (focused && box.querySelector('.spot[data-step="' + focused + '"]')) || box.querySelector('.spot');
  if (first) { first.tabIndex = 0; }
  if (focused && first) { first.focus({ preventScroll: true }); }
};

const forget = () => { shown.forEach((one) => URL.revokeObjectURL(one.address)); shown = []; };

// point marks a step on the page and in the states; 0 marks none.
export const point = (step, follow) => {
  for (const spot of document.querySelectorAll('.spot, #strip thead button')) {
    const here = step > 0 && Number(spot.dataset.step) === step;
    if (here) { spot.setAttribute('aria-current', 'step'); } else { spot.removeAttribute('aria-current'); }
  }
  document.querySelectorAll('#strip col.step').forEach((column, i) => column.classList.toggle('now', i + 1 === step));
  if (!follow) { return; }
  const box = id('sides'), spot = box.querySelector('.spot[aria-current]');
  if (spot && box.clientHeight) {
    const outer = box.getBoundingClientRect(), inner = spot.getBoundingClientRect();
    if (inner.top < outer.top + 8 || inner.bottom > outer.bottom - 8) { box.scrollTop += inner.top - outer.top - Math.max(12, (outer.height - inner.height) / 3); }
  }
  const strip = id('strip'), number = strip.querySelector('thead button[aria-current]');
  if (number && strip.clientWidth) {
    const outer = strip.getBoundingClientRect(), inner = number.getBoundingClientRect(), names = 160;
    if (inner.left < outer.left + names) { strip.scrollLeft -= outer.left + names - inner.left; } else if (inner.right > outer.right) { strip.scrollLeft += inner.right - outer.right + 8; }
  }
};

// fits tells whether a word goes into its bar; where it does not, the bar alone is drawn.
const fits = (bar) => bar.word.length * 0.5 <= 2.1 * (bar.to - bar.from + 1) - 0.4;

// states draws things by steps.
export const states = (view, go) => {
  const box = id('strip');
  if (!view || !view.steps.length) {
    box.replaceChildren(make('p', { class: 'empty' }, 'What is off, open, empty or locked off after each step is shown here.'));
    return;
  }
  const left = box.scrollLeft, top = box.scrollTop, n = view.steps.length;
  const focused = document.activeElement && box.contains(document.activeElement) ? document.activeElement.dataset.step : '';
  const columns = make('colgroup', {}, make('col', { class: 'names' }), ...view.steps.map(() => make('col', { class: 'step' })));
  const phases = make('tr', {}, make('th', { scope: 'col', rowspan: '2' }, make('span', { class: 'hear' }, 'Thing')), ...view.phases.map((phase) => make('th', { class: 'phase', scope: 'colgroup', colspan: phase.to - phase.from + 1 }, phase.title)));
  const numbers = make('tr', {}, ...view.steps.map((step) => make('th', { scope: 'col' }, make('button', { type: 'button', tabindex: '-1', 'data-step': step.number, 'aria-label': 'Step ' + step.number + ': ' + step.words, title: step.words, onclick: () => go(step.number) }, String(step.number)))));
  const rows = view.strips.map((strip) => {
    const cells = [];
    let next = 1;
    const gap = (to) => { if (to >= next) { cells.push(make('td', { class: 'asbefore', colspan: to - next + 1 }, make('span', { class: 'hear' }, 'as before'))); } };
    for (const bar of strip.bars) {
      gap(bar.from - 1);
      const told = bar.word + ', after ' + (bar.from === bar.to ? 'step ' + bar.from : 'steps ' + bar.from + ' to ' + bar.to);
      cells.push(make('td', { colspan: bar.to - bar.from + 1 }, make('span', { class: 'level' + (bar.half ? ' half' : ''), title: told }, make('span', { class: fits(bar) ? 'word' : 'hear' }, bar.word))));
      next = bar.to + 1;
    }
    gap(n);
    return make('tr', {}, make('th', { scope: 'row' }, strip.name), ...cells);
  });
  const table = make('table', {}, make('caption', { class: 'hear' }, 'How the machine stands after each step'), columns, make('thead', {}, phases, numbers), make('tbody', {}, ...rows));
  table.style.width = 9.5 + 2.1 * n + 'rem';
  box.replaceChildren(table);
  box.scrollLeft = left;
  box.scrollTop = top;
  const first = (focused && box.querySelector('button[data-step="' + focused + '"]')) || box.querySelector('thead button');
  if (first) { first.tabIndex = 0; }
  if (focused && first) { first.focus({ preventScroll: true }); }
};
