// Drives the editor service with the client library of the Language Server Protocol under Node,
// and writes what it saw as JSON. Twice: once as a client that is sent findings, once as one that
// asks for them.
// In the environment: BENCHLEAF, the command; SHOP, a copy of the demonstration shop; SAW, the file to write.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import * as lsp from "vscode-languageserver-protocol/node";

const { BENCHLEAF, SHOP, SAW } = process.env;
const address = (name) => pathToFileURL(join(SHOP, name)).href;
const procedure = address("log-deck-gearbox-oil.toml"), machine = address("machines/log-deck.toml");

// What an editor of our day says it can do.
const capabilities = (pulls) => ({
  general: { positionEncodings: ["utf-16"] },
  workspace: { applyEdit: true, workspaceEdit: { documentChanges: true }, didChangeWatchedFiles: { dynamicRegistration: true } },
  textDocument: {
    synchronization: { didSave: true, willSave: false },
    publishDiagnostics: { relatedInformation: true, versionSupport: true },
    ...(pulls ? { diagnostic: { dynamicRegistration: true, relatedDocumentSupport: false } } : {}),
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ["quickfix"] } }, isPreferredSupport: true },
    completion: { completionItem: { snippetSupport: true, documentationFormat: ["markdown", "plaintext"] } },
    hover: { contentFormat: ["markdown", "plaintext"] },
    definition: { linkSupport: false }, references: {}, rename: { prepareSupport: true }, formatting: {}, inlayHint: {},
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
  },
});

// Text as the client holds it; a string of JavaScript counts as the protocol does.
class Text {
  constructor(connection, uri) {
    Object.assign(this, { connection, uri, version: 1, text: readFileSync(new URL(uri), "utf8") });
  }
  offset({ line, character }) {
    let at = 0;
    for (; line > 0; line--) at = this.text.indexOf("\n", at) + 1;
    return at + character;
  }
  position(offset) {
    const before = this.text.slice(0, offset).split("\n");
    return { line: before.length - 1, character: before.at(-1).length };
  }
  behind(words) {
    const at = this.text.indexOf(words);
    if (at < 0) throw new Error(`no text holds ${words}`);
    return this.position(at + words.length);
  }
  at(words) {
    return { textDocument: { uri: this.uri }, position: this.behind(words) };
  }
  open() {
    return this.connection.sendNotification(lsp.DidOpenTextDocumentNotification.type, { textDocument: { uri: this.uri, languageId: "toml", version: this.version, text: this.text } });
  }
  // change applies edits, the last of the text first, and tells the service of each.
  async change(edits) {
    const sorted = [...edits].sort((a, b) => this.offset(b.range.start) - this.offset(a.range.start));
    for (const { range, newText } of sorted) {
      this.text = this.text.slice(0, this.offset(range.start)) + newText + this.text.slice(this.offset(range.end));
    }
    await this.connection.sendNotification(lsp.DidChangeTextDocumentNotification.type, {
      textDocument: { uri: this.uri, version: ++this.version },
      contentChanges: sorted.map(({ range, newText }) => ({ range, text: newText })),
    });
  }
}

async function session(pulls, work) {
  const service = spawn(BENCHLEAF, ["editor"], { stdio: ["pipe", "pipe", "inherit"] });
  const ended = once(service, "exit");
  const connection = lsp.createProtocolConnection(new lsp.StreamMessageReader(service.stdout), new lsp.StreamMessageWriter(service.stdin));
  const published = new Map();
  let tell = () => {};
  connection.onNotification(lsp.PublishDiagnosticsNotification.type, (one) => {
    published.set(one.uri, one);
    tell();
  });
  connection.listen();
  const told = await connection.sendRequest(lsp.InitializeRequest.type, {
    processId: process.pid, rootUri: pathToFileURL(SHOP).href, capabilities: capabilities(pulls), workspaceFolders: null,
  });
  await connection.sendNotification(lsp.InitializedNotification.type, {});
  // found waits for the findings of a text as it is now.
  const found = async (text) => {
    while (published.get(text.uri)?.version !== text.version) {
      await new Promise((go, stop) => {
        const timer = setTimeout(() => stop(new Error("waited in vain for findings of " + text.uri)), 20_000);
        tell = () => { clearTimeout(timer); go(); };
      });
    }
    return published.get(text.uri).diagnostics;
  };
  const saw = { server: told.serverInfo.name, sync: told.capabilities.textDocumentSync.change };
  await work(connection, saw, found);
  saw.sent = published.size;
  await connection.sendRequest(lsp.ShutdownRequest.type);
  await connection.sendNotification(lsp.ExitNotification.type);
  [saw.code] = await ended;
  connection.dispose();
  return saw;
}

// slip writes x in the place of the last letter of a name.
async function slip(text) {
  const start = text.behind('remove = "drain-plu');
  await text.change([{ range: { start, end: { ...start, character: start.character + 1 } }, newText: "x" }]);
}

async function sent(connection, saw, found) {
  const ask = (type, params) => connection.sendRequest(type, params);
  const text = new Text(connection, procedure);
  await text.open();
  saw.clean = (await found(text)).length;
  await slip(text);
  const finding = (await found(text)).find((one) => one.severity === lsp.DiagnosticSeverity.Error); // that the steps are not checked is told besides
  saw.found = { message: finding.message, code: finding.code, source: finding.source, severity: finding.severity, line: text.text.split("\n")[finding.range.start.line] };
  const [fix] = await ask(lsp.CodeActionRequest.type, { textDocument: { uri: text.uri }, range: finding.range, context: { diagnostics: [finding], only: ["quickfix"] } });
  saw.fix = { title: fix.title, kind: fix.kind, mends: fix.diagnostics[0].message === finding.message };
  await text.change(fix.edit.changes[text.uri]);
  saw.mended = text.text === readFileSync(new URL(procedure), "utf8") && (await found(text)).length === 0;

  const offered = await ask(lsp.CompletionRequest.type, text.at('remove = "drain'));
  saw.offered = offered.items.map((item) => item.label);
  const plug = offered.items.find((item) => item.label === "drain-plug");
  saw.inserted = plug.textEdit.newText;
  saw.documented = plug.documentation.kind + ": " + plug.documentation.value;
  saw.hover = (await ask(lsp.HoverRequest.type, text.at('tighten = "drain'))).contents.value;
  const [defined] = await ask(lsp.DefinitionRequest.type, text.at('tighten = "drain'));
  saw.defined = defined.uri === machine && readFileSync(new URL(machine), "utf8").split("\n")[defined.range.start.line];
  const named = await ask(lsp.ReferencesRequest.type, { ...text.at('tighten = "drain'), context: { includeDeclaration: true } });
  saw.references = { files: [...new Set(named.map((one) => one.uri))].map((uri) => uri.slice(address("").length + 1)).sort(), places: named.length };
  saw.used = (await ask(lsp.ReferencesRequest.type, { ...text.at('tighten = "drain'), context: { includeDeclaration: false } })).length;

  const outline = await ask(lsp.DocumentSymbolRequest.type, { textDocument: { uri: text.uri } });
  const names = (list) => list.flatMap((one) => [one.name, ...names(one.children ?? [])]);
  saw.outline = names(outline);
  const end = text.position(text.text.length);
  saw.hints = (await ask(lsp.InlayHintRequest.type, { textDocument: { uri: text.uri }, range: { start: { line: 0, character: 0 }, end } }))
    .map((hint) => text.text.split("\n")[hint.position.line].slice(0, hint.position.character) + " | " + hint.label);

  // Untidy, laid out, and then as it was.
  const place = text.behind("[[prepare]]\n"), before = text.text;
  await text.change([{ range: { start: place, end: place }, newText: "\n\n   " }]);
  await text.change(await ask(lsp.DocumentFormattingRequest.type, { textDocument: { uri: text.uri }, options: { tabSize: 2, insertSpaces: true } }));
  saw.tidy = text.text === before;

  // Renamed over the files of the shop, which are opened for it.
  const ready = await ask(lsp.PrepareRenameRequest.type, text.at('tighten = "drain'));
  saw.placeholder = ready.placeholder;
  const { changes } = await ask(lsp.RenameRequest.type, { ...text.at('tighten = "drain'), newName: "sump-plug" });
  saw.renamed = Object.keys(changes).map((uri) => uri.slice(address("").length + 1)).sort();
  const all = [text, ...Object.keys(changes).filter((uri) => uri !== text.uri).map((uri) => new Text(connection, uri))];
  for (const one of all.slice(1)) await one.open();
  for (const one of all) await one.change(changes[one.uri]);
  saw.left = all.filter((one) => one.text.includes("drain-plug")).length;
  await ask(lsp.HoverRequest.type, text.at('tighten = "sump')); // what comes behind a change does not swallow its findings
  await found(all.sort((a, b) => a.uri < b.uri ? -1 : 1).at(-1)); // they come file by file, in this order
  saw.after = [];
  for (const one of all) saw.after.push(...(await found(one)).map((each) => each.message));
  try {
    await ask(lsp.RenameRequest.type, { ...text.at('tighten = "sump'), newName: "not a name" });
  } catch (refused) {
    saw.refused = refused.message;
  }
  await connection.sendNotification(lsp.DidCloseTextDocumentNotification.type, { textDocument: { uri: text.uri } });
}

async function asked(connection, saw) {
  const text = new Text(connection, procedure);
  const pull = async () => {
    const report = await connection.sendRequest(lsp.DocumentDiagnosticRequest.type, { textDocument: { uri: text.uri }, identifier: "benchleaf" });
    return report.kind + ": " + report.items.filter((one) => one.severity === lsp.DiagnosticSeverity.Error).map((one) => one.message.split("\n")[0]).join("; ");
  };
  await text.open();
  saw.clean = await pull();
  await slip(text);
  saw.pulled = await pull();
}

let saw;
try {
  saw = { sent: await session(false, sent), asked: await session(true, asked) };
} catch (error) {
  saw = { error: String(error.stack) };
}
writeFileSync(SAW, JSON.stringify(saw, null, 2));
process.exit(0);
