// What the forms call a key where its own word does not say it; all others are called by their
// own word. The key stands beside it, as it is written in the text.
const everywhere = {
  for: 'Only for versions', every: 'How often', 'held-by': 'Held by which fasteners', 'loaded-by': 'Loaded by what', behind: 'What is off before it', guards: 'Guards against', 'anew-after': 'Set anew after',
  across: 'Width across flats', class: 'Strength class', condition: 'State of the thread', circles: 'Bolt circles', product: 'What goes on the thread', access: 'What fits on the head', reach: 'How deep the head sits',
  passes: 'Share of the torque in each pass', order: 'Order of tightening', at: 'Place on the outline', how: 'How it is done', wear: 'Protective equipment', hazards: 'Hazards it brings', notes: 'Good to know',
  where: 'Where it is kept', sheet: 'Safety data sheet', number: 'Number', count: 'How many', amount: 'How much', mass: 'Mass', new: 'Value when new', outside: 'What to do when it is not right',
  expect: 'What is seen when all is well', until: 'What ends it', least: 'Least time', most: 'Most time', keep: 'What must hold meanwhile', meanwhile: 'Done while it waits', reading: 'Value to write down', set: 'Set to', into: 'Caught in',
  'by-hand': 'Why by hand only', pose: 'Position', say: 'More words', stage: 'Heading from here on', time: 'Time it takes', spares: 'New parts', supplies: 'Fluids and consumables', cautions: 'Safety messages', people: 'How many people',
  'in-service': 'In service since', 'meter-then': 'Meter on that day', manual: 'Place in the manual', title: 'Name as it prints', against: 'Hazards it speaks for', avoid: 'How to avoid it', signal: 'Signal word', signs: 'Safety signs',
  vent: 'Where it breathes', level: 'Where the level shows', drain: 'Where it is drained', fill: 'Where it is filled', isolate: 'How it is cut off', prove: 'How it is proved dead', restore: 'How it is given back', relieve: 'How it is let out', 'stops-in': 'Time until it stands still',
  pack: 'How many in a pack', packs: 'Packs it comes in', stroke: 'What one stroke gives', service: 'Specification', sizes: 'Widths it fits', points: 'Recesses it fits', range: 'Range as marked', holds: 'What it holds', drive: 'Square drive', 'drive-out': 'Square it drives', apart: 'Where another can work',
};
const of = {
  procedure: { title: 'Title', for: 'Only for versions', who: 'Who may do it', 'hands-on': 'Time with hands on', elapsed: 'Time from start to end', first: 'Due the first time', when: 'Done when', start: 'State before the first step', end: 'State after the last step', summary: 'What it does and why', checked: 'Who checked it', 'no-isolation': 'Why nothing is cut off', 'no-close': 'Why nothing is closed up' },
  machine: { title: 'Name as it prints', manual: 'Manual', variants: 'Versions', meter: 'What its meter counts' },
  point: { fitting: 'Kind of fitting', tool: 'Lubricated with' },
  limit: { how: 'How it is measured', tool: 'Instrument', outside: 'What to do outside the limit' },
  pose: { how: 'How it gets there' },
  unit: { machine: 'Which machine', version: 'Which version' },
  store: { 'on-hand': 'How much there is', counted: 'Counted on', keep: 'Least to keep', lead: 'Time to deliver' },
  part: { tool: 'Special tool', seals: 'Seals renewed with it' },
};
of.cover = of.part;

export const wordFor = (table, key) => {
  const word = (of[table] || {})[key] || everywhere[key] || key.replace(/-/g, ' ');
  return word[0].toUpperCase() + word.slice(1);
};
