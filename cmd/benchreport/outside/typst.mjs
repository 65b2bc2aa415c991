// Compiles every Typst text of a folder in this one process, each to a PDF in memory, and prints
// the milliseconds for each. The faces are loaded and some texts compiled before the clock.
//
//   node typst.mjs TEXTS FACES FIRST.pdf
//
// The PDF of the first text is written after the clock, to be looked at.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { NodeCompiler } from "@myriaddreamin/typst-ts-node-compiler";

const [texts, faces, first] = process.argv.slice(2);
const all = readdirSync(texts).filter((name) => name.endsWith(".typ")).sort().map((name) => readFileSync(join(texts, name), "utf8"));
const compiler = NodeCompiler.create({ workspace: texts, fontArgs: [{ fontPaths: [faces] }] });
const made = (text) => compiler.pdf({ mainFileContent: text });

for (const text of all.slice(0, 5)) made(text);
const start = process.hrtime.bigint();
let bytes = 0;
for (const text of all) bytes += made(text).length;
const took = Number(process.hrtime.bigint() - start) / 1e6;
if (bytes === 0) throw new Error("no PDF came out");
writeFileSync(first, made(all[0]));
console.log(took / all.length);
