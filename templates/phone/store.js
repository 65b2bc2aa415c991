// What is ticked and written stays on this device, under the procedure, its revision, the
// version of the machine, and a digest of what the page says.
const card = JSON.parse(document.getElementById('card').textContent);
const words = card.words;
const place = ['benchleaf', card.procedure, card.revision, card.variant, ''].join(' / ');
const key = place + card.digest;
const fresh = () => ({ fields: {}, timers: {}, at: 'before', view: '', taken: false });
let kept = fresh();

const id = (name) => document.getElementById(name);
const all = (pattern, within) => Array.from((within || document).querySelectorAll(pattern));
const said = (text, marks) => Object.keys(marks).reduce((out, mark) => out.replace('{' + mark + '}', marks[mark]), text);

// What is drawn anew when something was ticked, written or moved to.
const drawn = [];
const draw = () => drawn.forEach((one) => one());

const disk = {
  get(name) {
    try { return window.localStorage.getItem(name); } catch (_) { id('not-kept').hidden = false; return null; }
  },
  set(name, text) {
    try { window.localStorage.setItem(name, text); } catch (_) { id('not-kept').hidden = false; }
  },
  wipe(name) {
    try { window.localStorage.removeItem(name); } catch (_) { id('not-kept').hidden = false; }
  },
  others() {
    try { return Object.keys(window.localStorage).filter((name) => name.startsWith(place) && name !== key); } catch (_) { return []; }
  },
};

const keep = () => disk.set(key, JSON.stringify(kept));

const today = () => {
  const now = new Date();
  const two = (n) => String(n).padStart(2, '0');
  return now.getFullYear() + '-' + two(now.getMonth() + 1) + '-' + two(now.getDate());
};

// Puts what is kept into the fields of the page.
const restore = () => all('[data-keep]').forEach((field) => {
  const value = kept.fields[field.dataset.keep];
  if (field.type === 'checkbox') {
    field.checked = value === true;
  } else {
    field.value = value !== undefined ? value : field.type === 'date' ? today() : '';
  }
});

const note = (field) => {
  kept.fields[field.dataset.keep] = field.type === 'checkbox' ? field.checked : field.value;
  kept.taken = false;
  keep();
};

try { Object.assign(kept, JSON.parse(disk.get(key) || '{}')); } catch (_) { kept = fresh(); }
id('changed').hidden = disk.others().length === 0;
document.addEventListener('input', (event) => {
  if (event.target.dataset.keep) {
    note(event.target);
    draw();
  }
});
