// The guided forms: a new machine, a new procedure, a step, a thing. Their fields come out
// of the table of the language; what is filled in is written as TOML by the desk.
import { ask, id, make } from './ask.js';
import { wordFor } from './words.js';

// What each form asks for first, in this order; the other keys stand under "More".
const first = {
  procedure: ['title', 'machine', 'revision', 'date', 'author', 'who', 'hands-on', 'every', 'summary', 'manual', 'start', 'end', 'tools', 'supplies', 'spares', 'wear', 'cautions', 'no-isolation', 'no-close'],
  machine: ['title', 'manual', 'maker', 'model', 'meter', 'variants'],
};
const never = { procedure: ['name', 'joins', 'joined-revisions'], machine: ['name'], step: ['origin', 'gate', 'person', 'once', 'id'] };
// An empty list says that there is none; left out, it would be asked for.
const silent = { procedure: ['tools', 'supplies', 'spares', 'wear'] };
const things = { machine: ['part', 'cover', 'cavity', 'energy', 'point', 'limit', 'pose', 'area'], procedure: ['part', 'cover', 'cavity', 'energy', 'point', 'limit', 'pose', 'area', 'tool', 'fluid', 'supply', 'spare', 'caution'], library: ['tool', 'fluid', 'supply', 'spare', 'caution', 'unit', 'store'] };
const short = (text) => text.toLowerCase().normalize('NFKD').replace(/[\u0300-\u036f]/g, '').replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '');
const plain = (example) => (example || '').replace(/^"(.*)"$/, '$1').replace(/^\[(.*)\]$/, '$1').replace(/"/g, '');
// same tells whether two texts are heard alike; what a label says is not said again.
const same = (one, other) => short(one) === short(other);
const beyond = (doc, called) => {
  if (!doc.toLowerCase().startsWith(called.toLowerCase()) || !/^\s*[.,:;]/.test(doc.slice(called.length))) { return doc; }
  const rest = doc.slice(called.length).replace(/^[\s.,:;]+/, '');
  return rest && rest[0].toUpperCase() + rest.slice(1);
};
// Tools that a key names are of one sort.
const sorts = { step: { into: 'container' } };
const described = ['part', 'cover', 'cavity', 'energy', 'area', 'tool', 'fluid', 'supply', 'spare'];
// others asks for short names of things that are not described yet.
const others = (at, called) => {
  const input = make('input', { id: at + '-others', 'aria-describedby': at + '-others-doc', autocomplete: 'off', spellcheck: 'false' });
  return { read: () => input.value.split(/[\s,]+/).filter(Boolean),
    element: make('div', { class: 'others' }, make('label', { for: at + '-others' }, 'Not in the list', make('span', { class: 'hear' }, ': ' + called)), make('p', { class: 'doc', id: at + '-others-doc' }, 'Short names, such as oil-pump, with a space between. Describe each of them next, with “Add thing”.'), input) };
};
const shortDoc = 'Lower case letters and figures, words joined by hyphens, such as drain-plug. Steps call it by this name; on the card it reads “drain plug”, or as “Name as it prints” says.';
const lines = (text) => text.split('\n').map((line) => line.trim()).filter(Boolean);

let counted = 0;

// field builds what asks for one key. It gives the element and read(), the value or undefined.
const field = (key, names, preset, of) => {
  counted += 1;
  const at = 'field-' + counted;
  const kinds = (key.of || '').split(' ');
  const sort = (sorts[of] || {})[key.name];
  const known = names.filter((name) => kinds.includes(name.kind) && (!sort || name.sort === sort));
  const need = key.required ? make('span', { class: 'need' }, ' needed') : null;
  const called = key.word || wordFor(of, key.name);
  const told = beyond(key.doc, called), doc = told ? at + '-doc' : false;
  const about = told ? make('p', { class: 'doc', id: doc }, told) : null;
  const written = key.word || same(called, key.name) ? null : make('code', { class: 'key' }, key.name);
  const label = make('label', { for: at }, called, need, written);
  const say = plain(key.example);
  const whole = (control, read, wide, ...more) => ({ key, read, element: make('div', { class: 'field' + (wide ? ' wide' : '') }, label, about, control, ...more) });
  const list = (read, ...more) => ({ key, read: () => { const out = [...box.querySelectorAll(':checked')].map((tick) => tick.value); return read(out); },
    element: make('fieldset', { class: 'field wide' }, make('legend', {}, called, need, written), about, box, ...more) });
  let box;
  const ticks = (options, more) => {
    box = make('div', { class: 'ticks' }, ...options.map((one) => make('label', {}, make('input', { type: 'checkbox', value: one.word, checked: (preset || []).includes(one.word) }), make('span', {}, one.doc || one.word, one.doc && !same(one.doc, one.word) ? make('small', {}, ' ' + one.word) : null))));
    return list((chosen) => { const all = [...chosen, ...(more ? more.read() : [])]; return all.length ? all : undefined; }, more ? more.element : null);
  };
  const input = (attributes) => make('input', { id: at, 'aria-describedby': doc, autocomplete: 'off', required: key.required, ...attributes });
  const text = (rows, more) => make('textarea', { id: at, 'aria-describedby': doc, rows, spellcheck: 'true', required: key.required, ...more });
  switch (key.kind) {
    case 'words': { const area = text(2, { placeholder: say }); area.value = preset || ''; return whole(area, () => area.value.trim() || undefined, true); }
    case 'texts': case 'amounts': {
      const area = text(2, { placeholder: say ? say.split(', ').join('\n') : false });
      area.value = preset || '';
      return whole(area, () => { const all = lines(area.value); return !all.length ? undefined : key.kind === 'amounts' && all.length === 1 ? all[0] : all; }, false, make('p', { class: 'small' }, 'One a line.'));
    }
    case 'names':
      if (known.length) { return ticks(known.map((name) => ({ word: name.name, doc: name.words })), kinds.some((kind) => described.includes(kind)) ? others(at, called) : null); }
      { const area = text(2, { placeholder: say.split(', ').join('\n') }); return whole(area, () => (lines(area.value).length ? lines(area.value) : undefined), false, make('p', { class: 'small' }, 'Short names, one a line.')); }
    case 'choices': return ticks(key.choices);
    case 'choice': {
      const select = make('select', { id: at, 'aria-describedby': doc, required: key.required }, make('option', { value: '' }, '—'), ...key.choices.map((one) => make('option', { value: one.word, selected: preset === one.word }, one.doc && !same(one.doc, one.word) ? one.word + ': ' + one.doc : one.word)));
      return whole(select, () => select.value || undefined);
    }
    case 'flag': { const tick = input({ type: 'checkbox' }); return whole(tick, () => (tick.checked ? true : undefined)); }
    case 'day': { const day = input({ type: 'date' }); day.value = preset || ''; return whole(day, () => day.value || undefined); }
    case 'whole': { const number = input({ type: 'number', min: 1, step: 1 }); return whole(number, () => (number.value ? Number(number.value) : undefined)); }
    case 'wholes': { const numbers = input({ placeholder: say }); return whole(numbers, () => { const all = numbers.value.split(/[\s,]+/).filter(Boolean).map(Number); return all.length ? all : undefined; }); }
    case 'quantity': {
      const area = text(2, { placeholder: 'rags 2' });
      return whole(area, () => {
        const out = {};
        for (const line of lines(area.value)) {
          const match = line.match(/^(\S+?)\s*[=:]?\s+"?(.*?)"?$/);
          if (match) { out[match[1]] = /^\d+$/.test(match[2]) ? Number(match[2]) : match[2]; }
        }
        return Object.keys(out).length ? out : undefined;
      }, false, make('p', { class: 'small' }, 'A name and how many or how much, one a line' + (known.length ? ': ' + known.slice(0, 6).map((name) => name.name).join(', ') + (known.length > 6 ? ' …' : '') : '') + '.'));
    }
    default: {
      if (known.length && !kinds.includes('words')) { // one of these, and nothing else
        const select = make('select', { id: at, 'aria-describedby': doc, required: key.required }, make('option', { value: '' }, '—'), ...kinds.filter((kind) => known.some((name) => name.kind === kind)).map((kind) => {
          const options = known.filter((name) => name.kind === kind).map((name) => make('option', { value: name.name }, same(name.words, name.name) ? name.words : name.words + ' (' + name.name + ')'));
          return make('optgroup', { label: kind }, ...options);
        }));
        return whole(select, () => select.value || undefined);
      }
      const list = known.length ? at + '-list' : false;
      const line = input({ list, placeholder: say, spellcheck: 'true' });
      line.value = preset || '';
      return whole(line, () => line.value.trim() || undefined, false, list ? make('datalist', { id: list }, ...known.map((name) => make('option', { value: name.name }, same(name.words, name.name) ? '' : name.words))) : null);
    }
  }
};

// forms opens the dialogs. hooks: language, names(), shop(), files(), homes() gives the files that
// a thing of each kind can go into, current() gives path, text and line, text(path) the text of a
// file, insert(path, placed) puts text in, begin(path, text) begins a file.
export const forms = (hooks) => {
  const dialog = id('form');
  const table = (name) => hooks.language.tables.find((one) => one.name === name);

  let typed = false; // something was filled in that is not written yet
  let asking = false;
  const leave = async () => {
    if (asking) { return; }
    asking = true;
    if (!typed || await hooks.sure('What you filled in is not written yet.', 'Throw it away', 'Go on filling in')) { dialog.close(); }
    asking = false;
  };
  document.addEventListener('keydown', (event) => { // wherever the focus is, or the browser shuts it unasked
    if (event.key !== 'Escape' || !dialog.open || event.target.closest?.('dialog:not(#form)') || document.getElementById('sure').open) { return; }
    event.preventDefault();
    event.stopPropagation();
    leave();
  }, true);
  dialog.addEventListener('cancel', (event) => { event.preventDefault(); leave(); });
  const show = (title, lead, body, done, more) => {
    const wrong = make('p', { class: 'wrong', role: 'alert' });
    const buttons = make('div', { class: 'buttons' }, make('button', { type: 'submit' }, done), more ? make('button', { type: 'submit', class: 'plain', value: 'more' }, more) : null, make('button', { type: 'button', class: 'plain', onclick: leave }, 'Cancel'));
    const form = make('form', { method: 'dialog', novalidate: true }, make('h2', { id: 'form-title' }, title), lead ? make('p', { class: 'lead' }, lead) : null, body.element, wrong, buttons);
    form.addEventListener('submit', async (event) => {
      event.preventDefault();
      wrong.textContent = '';
      const empty = [...form.querySelectorAll('input[required], textarea[required], select[required]')].find((one) => !one.value.trim() && one.checkVisibility());
      if (empty) {
        wrong.textContent = 'Fill in “' + empty.closest('.field').querySelector('label').firstChild.textContent + '” first.';
        empty.focus();
        return;
      }
      try {
        if (await body.done(event.submitter && event.submitter.value === 'more')) { typed = false; dialog.close(); }
      } catch (problem) {
        wrong.textContent = problem.message;
      }
    });
    form.addEventListener('input', (event) => { typed = typed || !event.target.matches('#step-section, #step-behind, #step-verb, #thing-kind, #thing-file'); });
    typed = false;
    dialog.replaceChildren(form);
    if (!dialog.open) { dialog.showModal(); }
    const start = form.querySelector('input, select, textarea');
    if (start) { start.focus(); }
    return form;
  };

  // preview writes the TOML of a form while it is filled in, with the file it goes into.
  const preview = (element, build, into) => {
    const head = make('b', { id: 'written-head' });
    const pre = make('pre', { tabindex: '0', role: 'group', 'aria-labelledby': 'written-head' });
    let timer = 0;
    const draw = () => {
      clearTimeout(timer);
      head.textContent = 'What will be written into ' + into();
      timer = setTimeout(async () => {
        try { pre.textContent = (await ask('write', { ...build(), text: 'benchleaf = 1\n', line: 0 })).text.trim(); } catch (problem) { pre.textContent = '# ' + problem.message; }
      }, 150);
    };
    for (const event of ['input', 'change']) { element.addEventListener(event, draw); }
    draw();
    return make('div', { class: 'written' }, head, pre);
  };

  const valuesOf = (fields, name) => {
    const out = {};
    for (const one of fields) {
      const value = one.read();
      if (value !== undefined) { out[one.key.name] = value; } else if ((silent[name] || []).includes(one.key.name)) { out[one.key.name] = []; }
    }
    return out;
  };

  // split shares the fields of a table out: what is asked first, and what may be added.
  const split = (name, asked, presets, apart, more) => {
    const all = table(name).keys.filter((key) => key.kind && !(never[name] || []).includes(key.name) && !(apart || []).includes(key.name)).map((key) => ({ ...key, ...((more || {}).keys || {})[key.name] }));
    const front = asked ? asked.map((key) => all.find((one) => one.name === key)).filter(Boolean) : all.filter((key) => key.required);
    const rest = all.filter((key) => !front.includes(key));
    const build = (key) => field(key, (more || {}).names || hooks.names(), presets && presets[key.name], name);
    const one = front.map(build), other = rest.map(build);
    const element = make('div', {}, make('div', { class: 'fields' }, ...one.map((f) => f.element)), other.length ? make('details', { class: 'more' }, make('summary', {}, 'More'), make('div', { class: 'fields' }, ...other.map((f) => f.element))) : null);
    return { element, fields: [...one, ...other] };
  };

  // carry takes what was filled in for a key along, where another form asks for it too.
  const carry = (before, after) => {
    for (const one of after) {
      const old = before.find((other) => other.key.name === one.key.name);
      if (!old) { continue; }
      const controls = [...one.element.querySelectorAll('input, textarea, select')];
      [...old.element.querySelectorAll('input, textarea, select')].forEach((control, i) => {
        if (!controls[i] || controls[i].tagName !== control.tagName || controls[i].type !== control.type) { return; }
        if (control.type === 'checkbox') { controls[i].checked = control.checked; } else { controls[i].value = control.value; }
      });
    }
  };

  const named = (what, folder) => {
    const name = make('input', { id: 'file-name', 'aria-describedby': 'file-name-doc', autocomplete: 'off', spellcheck: 'false', required: true });
    const element = make('div', { class: 'field' }, make('label', { for: 'file-name' }, 'File name', make('span', { class: 'need' }, ' needed')), make('p', { class: 'doc', id: 'file-name-doc' }, 'Lower case letters and figures, words joined by hyphens; ' + what + ' is known by it.'), name);
    return { element, input: name, path: () => folder + name.value.trim().replace(/\.toml$/, '') + '.toml' };
  };
  // The name of the file follows the title until it is written by hand.
  const follow = (fields, name) => {
    const title = fields.find((one) => one.key.name === 'title').element.querySelector('input');
    let own = false;
    name.input.addEventListener('input', () => { own = true; });
    title.addEventListener('input', () => { if (!own) { name.input.value = short(title.value); name.input.dispatchEvent(new Event('change')); } });
  };
  const free = (path) => {
    if (!/^([a-z0-9-]+\/)*[a-z0-9]+(-[a-z0-9]+)*\.toml$/.test(path)) { throw new Error('“' + path.replace(/^.*\//, '').replace(/\.toml$/, '') + '” is no file name. Write lower case letters and figures, words joined by hyphens.'); }
    if (hooks.files().some((file) => file.path === path)) { throw new Error('There is a file ' + path + ' already.'); }
    return path;
  };
  const newFile = (name) => (name.input.value.trim() ? 'the new file ' + name.path() : 'a new file');
  const today = () => new Date().toLocaleDateString('sv-SE');

  const procedure = () => {
    const names = hooks.shop(); // of a file that is not there yet
    const machines = names.some((one) => one.kind === 'machine');
    const made = split('procedure', first.procedure, { revision: 'A', date: today() }, [], { names, keys: { machine: { doc: machines ? 'The machine it is done on. One that is not in the list is described first, with “New machine”.' : 'Its name in plain words. Or describe it first, with “New machine”; then its parts are known.' } } });
    const name = named('the procedure', '');
    follow(made.fields, name);
    made.element.querySelector('.fields').children[0].after(name.element);
    const build = () => ({ table: 'procedure', header: '', values: valuesOf(made.fields, 'procedure') });
    made.element.append(preview(made.element, build, () => newFile(name)));
    made.done = async () => {
      const path = free(name.path());
      const placed = await ask('write', { ...build(), text: '', line: 0 });
      await hooks.begin(path, placed.text);
      return true;
    };
    show('New procedure', 'What the job is. An empty list says “none”: nothing may be left out in silence.', made, 'Begin it');
  };

  const machine = () => {
    const shop = hooks.files().some((file) => file.path === 'shop.toml');
    const made = split('machine', first.machine, {}, [], { keys: { variants: { doc: 'Where it comes in several versions, such as short and long: a short name for each.' } } });
    const name = named('the machine', 'machines/');
    follow(made.fields, name);
    made.element.querySelector('.fields').children[0].after(name.element);
    let title = null;
    if (!shop) {
      title = make('input', { id: 'shop-title', 'aria-describedby': 'shop-doc', required: true, autocomplete: 'off' });
      made.element.prepend(make('div', { class: 'field wide' }, make('label', { for: 'shop-title' }, 'Name of the shop', make('span', { class: 'need' }, ' needed')), make('p', { class: 'doc', id: 'shop-doc' }, 'Written into shop.toml, by which every procedure of this folder knows its machines.'), title));
    }
    const build = () => ({ table: 'machine', header: '', values: valuesOf(made.fields, 'machine') });
    made.element.append(preview(made.element, build, () => newFile(name)));
    made.done = async () => {
      const path = free(name.path());
      const placed = await ask('write', { ...build(), text: '', line: 0 });
      if (title) {
        const head = await ask('write', { table: 'shop', header: '', values: { title: title.value.trim() }, text: '', line: 0 });
        await hooks.begin('shop.toml', head.text.replace(/^benchleaf = 1\n/, 'benchleaf = 1\nuse = ["machines/*.toml"]\n'));
      }
      await hooks.begin(path, placed.text);
      return true;
    };
    show('New machine', 'What the machine is. Its parts, covers, cavities and energies are added next, with “Add thing”.', made, 'Begin it');
  };

  const step = async (verbWas) => {
    const { path, text, line } = hooks.current();
    const there = await ask('steps', { text, line });
    const verbs = hooks.language.verbs;
    const sections = [['prepare', 'Make it safe'], ['step', 'The work'], ['close', 'Close up and test']];
    const where = make('select', { id: 'step-section' }, ...sections.map(([word, says]) => make('option', { value: word, selected: word === there.section }, says)));
    // It goes behind the step the cursor is in; or else to the end of its part.
    const behind = make('select', { id: 'step-behind', 'aria-describedby': 'behind-doc' });
    const places = () => {
      const own = there.steps.filter((one) => one.section === where.value);
      const last = own.length ? own[own.length - 1].line : -1;
      const chosen = own.some((one) => one.line === there.here) ? there.here : last;
      behind.replaceChildren(make('option', { value: '-1', selected: chosen === -1 }, own.length ? 'No other: it comes first' : 'No other: it is the first'),
        ...own.map((one) => make('option', { value: one.line, selected: one.line === chosen }, 'Line ' + (one.line + 1) + (one.line === there.here ? ', at the cursor: ' : one.line === last ? ', the last: ' : ': ') + one.words)));
    };
    where.addEventListener('change', places);
    places();
    const pick = make('select', { id: 'step-verb', size: 10, 'aria-describedby': 'verb-about' }, ...verbs.map((verb) => make('option', { value: verb.key }, verb.key.replace(/-/g, ' '))), make('option', { value: 'say' }, 'words only'));
    const about = make('div', { class: 'about', id: 'verb-about', 'aria-live': 'polite' });
    const rest = make('div', { class: 'rest' });
    const element = make('div', {}, make('div', { class: 'fields' }, make('div', { class: 'field' }, make('label', { for: 'step-section' }, 'Part of the job'), make('p', { class: 'doc' }, 'In ' + path + '.'), where),
      make('div', { class: 'field' }, make('label', { for: 'step-behind' }, 'Behind which step'), make('p', { class: 'doc', id: 'behind-doc' }, 'The step goes right behind this one.'), behind)), make('div', { class: 'verbs' }, make('div', { class: 'field' }, make('label', { for: 'step-verb' }, 'What is done'), pick), about), rest);
    let fields = [];
    const choose = () => {
      const verb = verbs.find((one) => one.key === pick.value);
      if (!verb) {
        about.replaceChildren(make('h3', {}, 'Words only'), make('p', {}, 'The step is text alone. It prints and its words are checked, but nothing is known of what it does to the machine.'));
        const made = split('step', ['say', 'stage'], {}, verbs.map((one) => one.key), { keys: { say: { required: true, word: 'In words', doc: 'What is done, in words.' } } });
        carry(fields, made.fields);
        fields = made.fields;
        rest.replaceChildren(made.element);
        return;
      }
      about.replaceChildren(make('h3', {}, verb.key.replace(/-/g, ' ')), make('p', {}, verb.doc), make('dl', {}, ...[['Needs', verb.needs], ['Makes true', verb.makes], ['Such as', verb.key + ' = ' + verb.sample]].filter((row) => row[1]).flatMap((row) => [make('dt', {}, row[0]), make('dd', {}, row[1])])));
      const key = table('step').keys.find((one) => one.name === verb.key);
      const time = verb.object === 'time';
      const what = { ...key, kind: time ? 'amount' : 'name', required: true, name: verb.key, word: time ? 'How long' : 'To what', doc: time ? 'The time that passes.' : 'A name that is described' + (verb.object.includes('words') ? ', or words of your own with a space in them.' : ' (' + verb.object.split(' ').join(', ') + ').') };
      const object = field(what, hooks.names(), '', 'step');
      const read = object.read;
      const made = split('step', verb.takes || [], {}, verbs.map((one) => one.key));
      carry(fields, made.fields);
      fields = [{ key, read, element: object.element }, ...made.fields];
      made.element.querySelector('.fields').prepend(object.element);
      rest.replaceChildren(made.element);
    };
    pick.addEventListener('change', choose);
    pick.value = verbWas || 'remove';
    choose();
    const build = () => ({ table: 'step', header: where.value, values: valuesOf(fields, 'step') });
    element.append(preview(element, build, () => path));
    const body = { element, done: async (more) => {
      const after = Number(behind.value);
      await hooks.insert(path, await ask('write', { ...build(), text, line: Math.max(after, 0), first: after < 0 }));
      if (more) { await step(pick.value); return false; }
      return true;
    } };
    show('Add step', 'One action.', body, 'Add it', 'Add it, and another');
  };

  const thing = (kind) => {
    const kinds = things[kind === 'machine' || kind === 'procedure' ? kind : 'library'];
    const pick = make('select', { id: 'thing-kind', 'aria-describedby': 'kind-doc' }, ...kinds.map((one) => make('option', { value: one }, one)));
    const name = make('input', { id: 'thing-name', required: true, autocomplete: 'off', spellcheck: 'false', 'aria-describedby': 'thing-doc' });
    const doc = make('p', { class: 'doc', id: 'kind-doc' });
    const here = hooks.current().path;
    const file = make('select', { id: 'thing-file', 'aria-describedby': 'file-doc' });
    const about = make('p', { class: 'doc', id: 'file-doc' });
    const known = make('p', { class: 'small', role: 'status' });
    const know = () => { // of the same name elsewhere
      const other = hooks.names().find((one) => one.kind === pick.value && one.name === name.value.trim());
      known.textContent = !other ? '' : 'There is one of this name: ' + other.words + '.' + (file.value === here && kind === 'procedure' ? ' What is written into ' + here + ' goes before it, in this file alone.' : '');
    };
    let byHand = ''; // the file that was chosen
    const into = () => {
      const homes = hooks.homes()[pick.value] || [here];
      const chosen = homes.includes(byHand) ? byHand : homes[0];
      file.replaceChildren(...homes.map((path) => {
        const title = (hooks.files().find((one) => one.path === path) || {}).title;
        return make('option', { value: path, selected: path === chosen }, path + (title ? ': ' + title : ''));
      }));
      about.textContent = homes.length === 1 ? 'It is known to this file, and to those that take names from it.'
        : 'What stands in a file of the machine or the shop is known to all its procedures; in ' + here + ', to this one alone.';
    };
    file.addEventListener('change', () => { byHand = file.value; know(); });
    const rest = make('div', { class: 'rest' });
    let fields = [];
    const choose = () => {
      const layout = table(pick.value);
      doc.textContent = layout.doc;
      const keys = layout.keys.filter((key) => key.kind);
      const made = split(pick.value, keys.filter((key) => key.required || ['title', 'kind', 'thread', 'torque', 'count', 'fluid', 'capacity', 'guards', 'held-by'].includes(key.name)).map((key) => key.name));
      carry(fields, made.fields);
      fields = made.fields;
      rest.replaceChildren(made.element);
      into();
      know();
    };
    pick.addEventListener('change', choose);
    name.addEventListener('input', know);
    choose();
    const element = make('div', {}, make('div', { class: 'fields' }, make('div', { class: 'field' }, make('label', { for: 'thing-kind' }, 'What it is'), doc, pick),
      make('div', { class: 'field' }, make('label', { for: 'thing-file' }, 'Which file it goes into'), about, file),
      make('div', { class: 'field' }, make('label', { for: 'thing-name' }, 'Short name', make('span', { class: 'need' }, ' needed')), make('p', { class: 'doc', id: 'thing-doc' }, shortDoc), name, known)), rest);
    const build = () => ({ table: pick.value, header: name.value.trim() || 'name', values: valuesOf(fields, pick.value) });
    element.append(preview(element, build, () => file.value));
    const body = { element, done: async (more) => {
      const path = file.value;
      await hooks.insert(path, await ask('write', { ...build(), text: await hooks.text(path), line: 0 }));
      if (more) { thing(kind); return false; }
      return true;
    } };
    show('Add thing', 'A part, a cover, a tool: described once, named in every step.', body, 'Add it', 'Add it, and another');
  };

  return { procedure, machine, step, thing };
};
