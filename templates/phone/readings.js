
// A reading is held against its limit as it is typed.
const readings = all('[data-what]');

// The figure of a text as a number and as it is written down; null where it is none.
const figure = (text, unit) => {
  let plain = text.trim().replace(/\u2212/g, '-');
  if (unit && plain.endsWith(unit)) { plain = plain.slice(0, -unit.length).trim(); }
  const parts = /^(?:(\d+)[- ])?(\d+)\/([1-9]\d*)$/.exec(plain);
  if (parts) {
    return { value: Number(parts[1] || 0) + parts[2] / parts[3], text: (parts[1] ? parts[1] + '-' : '') + parts[2] + '/' + parts[3] };
  }
  plain = plain.replace(/^([-+]?\d*),(\d+)$/, '$1.$2').replace(/^\+/, '').replace(/^(-?)\./, '$10.');
  return /^-?\d+(\.\d+)?$/.test(plain) ? { value: Number(plain), text: plain } : null;
};

const limitOf = (field) => field.dataset.limit.replace(/\u00a0/g, ' ');

// What a reading is: nothing, no figure, a figure, within or outside its limit.
const judged = (field) => {
  const text = field.value.trim();
  if (!text) { return { is: '' }; }
  if (!field.dataset.unit) { return { is: 'words', text: text }; }
  const read = figure(text, field.dataset.unit);
  if (!read) { return { is: 'none', text: text }; }
  const low = field.dataset.low, high = field.dataset.high;
  const outside = (low && read.value < Number(low)) || (high && read.value > Number(high));
  return { is: outside ? 'outside' : low || high ? 'within' : 'figure', text: read.text + ' ' + field.dataset.unit };
};

const line = (text, strong) => {
  const out = document.createElement(strong ? 'strong' : 'span');
  out.textContent = text;
  return out;
};

const judge = (field) => {
  const verdict = id(field.id + '-verdict');
  if (!verdict) { return; }
  const found = judged(field);
  const told = {
    outside: [line(words.Outside + ': ' + found.text, true), line(verdict.dataset.otherwise)],
    within: [line(words.Within + ': ' + found.text, true)],
    none: [line(words.NoFigure, true)],
  }[found.is] || [];
  verdict.className = 'verdict ' + found.is;
  if (verdict.textContent !== told.map((one) => one.textContent).join('')) { verdict.replaceChildren(...told); }
  if (found.is === 'outside' || found.is === 'none') { field.setAttribute('aria-invalid', 'true'); } else { field.removeAttribute('aria-invalid'); }
};

// It is judged when the hand rests, so that "2" is not told on the way to "25".
readings.forEach((field) => {
  let rest = 0;
  const now = () => {
    clearTimeout(rest);
    judge(field);
    draw();
  };
  field.addEventListener('change', now);
  field.addEventListener('input', () => {
    clearTimeout(rest);
    rest = setTimeout(now, 600);
  });
});
