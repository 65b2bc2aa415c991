
// The entry of the service book, written by the layout that its reader has.
const whole = (text) => Array.from(text).map((sign) => (/^[\ud800-\udfff]$/.test(sign) ? '\ufffd' : sign)).join('');
const quoted = (text) => JSON.stringify(whole(text)).replace(/\u007f/g, '\\u007f');

const value = (kind, fact) => {
  if (kind === 'text') { return quoted(fact); }
  if (kind === 'wholes') { return '[' + fact.join(', ') + ']'; }
  return String(fact);
};

const nothing = (fact) => fact === undefined || fact === '' || fact === false || fact === 0 || (Array.isArray(fact) && fact.length === 0);

const table = (name, layout, facts) => {
  const flat = layout.filter((field) => field.kind !== 'tables' && !(field.may && nothing(facts[field.key])));
  const below = layout.filter((field) => field.kind === 'tables');
  return '[[' + name + ']]\n' + flat.map((field) => field.key + ' = ' + value(field.kind, facts[field.key]) + '\n').join('') +
    below.map((field) => (facts[field.key] || []).map((fact) => '\n' + table(name + '.' + field.key, field.fields, fact)).join('')).join('');
};

const ofKind = (kind) => {
  const field = readings.find((one) => one.dataset.of === kind);
  return field ? judged(field).text || '' : '';
};

const entryText = () => table('entry', card.layout, {
  procedure: card.procedure, revision: card.revision, machine: card.machine, variant: card.variant,
  date: ofKind('day') || today(), who: ofKind('worker'), meter: ofKind('meter'),
  done: numbers.filter(ticked), open: openSteps(), remarks: id('remarks').value.trim(),
  reading: readings.filter((field) => !field.dataset.of && field.value.trim()).map((field) => {
    const found = judged(field);
    return { step: Number(field.dataset.step), what: field.dataset.what, value: found.text, limit: limitOf(field), outside: found.is === 'outside' };
  }),
  'left-out': numbers.filter(leftOut).map((n) => ({ step: n, why: id('why-' + n).value.trim() })),
});

const taken = (told) => {
  kept.taken = true;
  keep();
  id('taken').textContent = told;
};

id('save').addEventListener('click', () => {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([entryText()], { type: 'application/toml' }));
  link.download = card.procedure + (card.variant ? '-' + card.variant : '') + '-' + (ofKind('day') || today()) + '.toml';
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  taken(words.Saved);
});

id('copy').addEventListener('click', () => {
  id('entry').select();
  const byHand = () => { if (document.execCommand('copy')) { taken(words.Copied); } else { id('taken').textContent = words.NotCopied; } };
  if (navigator.clipboard && window.isSecureContext) {
    navigator.clipboard.writeText(entryText()).then(() => taken(words.Copied), byHand);
  } else {
    byHand();
  }
});

drawn.push(() => {
  const open = openSteps();
  id('open-steps').hidden = open.length === 0;
  id('open-steps').textContent = words.StillOpen + ': ' + (open.length === 1 ? words.AtStep : words.AtSteps) + ' ' + open.join(', ');
  const text = entryText();
  if (id('entry').value !== text) {
    id('entry').value = text;
    if (!kept.taken) { id('taken').textContent = ''; }
  }
});

const sure = id('sure');
id('again').addEventListener('click', () => {
  id('sure-taken').hidden = kept.taken;
  sure.showModal();
});
id('keep').addEventListener('click', () => sure.close());
id('wipe').addEventListener('click', () => {
  sure.close();
  kept = Object.assign(fresh(), { view: kept.view });
  disk.wipe(key);
  restore();
  readings.forEach(judge);
  id('taken').textContent = '';
  go('before');
});

// All is there: show what works, and where the work stands.
if (kept.view !== 'one' && kept.view !== 'all') { kept.view = window.matchMedia('(max-width: 56em)').matches ? 'one' : 'all'; }
const dark = disk.get(screens.name) || '';
screen(dark);
all('[name=screen]').forEach((choice) => { choice.checked = choice.value === dark; });
all('[name=view]').forEach((choice) => { choice.checked = choice.value === kept.view; });
['.choices', '.dock', '.entry'].forEach((part) => { all(part)[0].hidden = false; });
root.dataset.alive = '';
restore();
readings.forEach(judge);
draw();
