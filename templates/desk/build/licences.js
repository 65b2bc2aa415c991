// Writes the licences of all that is bundled into editor.js.
import { readFileSync, existsSync } from 'node:fs';

const lock = JSON.parse(readFileSync('package-lock.json', 'utf8'));
const bundled = Object.entries(lock.packages).filter(([path, one]) => path && !one.dev && !one.optional).sort(([a], [b]) => (a < b ? -1 : 1));
const texts = new Map();
for (const [path, one] of bundled) {
  const file = ['LICENSE', 'LICENSE.md', 'LICENSE.txt'].map((name) => path + '/' + name).find(existsSync);
  if (!file) { throw new Error(path + ' has no licence text'); }
  const text = readFileSync(file, 'utf8').trim();
  texts.set(text, [...(texts.get(text) || []), path.replace(/^node_modules\//, '') + ' ' + one.version + ' (' + one.license + ')']);
}
process.stdout.write('editor.js is bundled out of these packages. Each stands under the licence below its name.\n');
for (const [text, names] of texts) { process.stdout.write('\n' + names.join('\n') + '\n\n' + text + '\n'); }
