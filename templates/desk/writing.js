// The editor in the middle: the general text editor of editor.js with what the desk adds:
// the colours of the language, what may stand at a place, what a word means, and findings.
import * as E from './editor.js';
import { id, make, newest } from './ask.js';

const nonce = document.querySelector('meta[name=nonce]').content;

// The language in colours: tables, verbs, keys, texts and other values.
let verbs = new Set();
export const knowVerbs = (names) => { verbs = new Set(names); };

const quotes = (stream, state, three) => {
  while (!stream.eol()) {
    if (state.mark === '"' && stream.match(/^\\./)) { continue; }
    if (three ? stream.match(state.mark.repeat(3)) : stream.eat(state.mark)) {
      state.inside = '';
      while (three && stream.eat(state.mark)) { /* up to two more belong to it */ }
      return 'string';
    }
    stream.next();
  }
  if (!three) { state.inside = ''; } // a text of one line ends with it
  return 'string';
};

const toml = E.StreamLanguage.define({
  name: 'toml',
  startState: () => ({ inside: '', mark: '', depth: 0, step: false }),
  languageData: { commentTokens: { line: '#' }, closeBrackets: { brackets: ['[', '{', '"', "'"] } },
  tokenTable: { table: E.tags.heading, verb: E.tags.keyword, key: E.tags.propertyName, value: E.tags.atom },
  token: (stream, state) => {
    if (state.inside) { return quotes(stream, state, state.inside === 'three'); }
    if (stream.sol() && state.depth === 0) {
      const header = stream.match(/^\s*\[\[?[^\]#]*\]?\]?/);
      if (header) {
        state.step = /\[\[\s*(prepare|step|close)\s*\]\]/.test(header[0]);
        return 'table';
      }
    }
    if (stream.eatSpace()) { return null; }
    if (stream.match(/^#.*/)) { return 'comment'; }
    if (stream.match(/^"""|^'''/)) { state.mark = stream.current()[0]; state.inside = 'three'; return quotes(stream, state, true); }
    if (stream.match(/^["']/)) { state.mark = stream.current(); state.inside = 'one'; return quotes(stream, state, false); }
    if (stream.match(/^[A-Za-z0-9_-]+(?=\s*[=.])/)) { return state.step && state.depth === 0 && verbs.has(stream.current()) ? 'verb' : 'key'; }
    if (stream.match(/^[[{]/)) { state.depth += 1; return null; }
    if (stream.match(/^[\]}]/)) { state.depth = Math.max(0, state.depth - 1); return null; }
    if (stream.match(/^[A-Za-z0-9_+.:-]+/)) { return 'value'; }
    stream.next();
    return null;
  },
});

const colours = E.tagHighlighter([
  { tag: E.tags.comment, class: 'tok-comment' }, { tag: E.tags.heading, class: 'tok-table' }, { tag: E.tags.keyword, class: 'tok-verb' },
  { tag: E.tags.propertyName, class: 'tok-key' }, { tag: E.tags.string, class: 'tok-string' }, { tag: E.tags.atom, class: 'tok-value' },
]);

const paint = (colour, shape) => 'url(\'data:image/svg+xml,<svg xmlns="http://www.w3.org/2000/svg" width="8" height="4"><path d="' + shape + '" fill="none" stroke="%23' + colour + '" stroke-width="1.4"/></svg>\')';
const wave = 'M0 3q2-4 4-1t4-1';
const look = E.EditorView.theme({
  '&': { backgroundColor: 'var(--paper)', color: 'var(--ink)' },
  '.cm-scroller': { fontFamily: 'var(--mono)', lineHeight: '1.55', overflow: 'auto' },
  '.cm-content': { caretColor: 'var(--ink)', padding: '.4rem 0' },
  '.cm-cursor, .cm-dropCursor': { borderLeftColor: 'var(--ink)', borderLeftWidth: '2px' },
  '.cm-gutters': { backgroundColor: 'var(--paper)', color: 'var(--second)', border: 'none', borderRight: '1px solid var(--rule)' },
  '.cm-activeLine': { backgroundColor: 'var(--line)' },
  '.cm-activeLineGutter': { backgroundColor: 'var(--chosen)', color: 'var(--ink)' },
  '&.cm-focused > .cm-scroller > .cm-selectionLayer .cm-selectionBackground, .cm-selectionBackground': { backgroundColor: 'var(--chosen) !important' },
  '.cm-matchingBracket, &.cm-focused .cm-matchingBracket': { backgroundColor: 'var(--chosen)', outline: '1px solid var(--edge)' },
  '.cm-tooltip': { backgroundColor: 'var(--paper)', color: 'var(--ink)', border: '1.5px solid var(--edge)', borderRadius: '8px', overflow: 'hidden', fontSize: '.875rem' },
  '.cm-tooltip-autocomplete > ul': { fontFamily: 'inherit', maxHeight: '16rem' },
  '.cm-tooltip-autocomplete > ul > li': { padding: '.3rem .6rem !important', display: 'flex', gap: '.8rem' },
  '.cm-tooltip-autocomplete > ul > li[aria-selected]': { backgroundColor: 'var(--act) !important', color: 'var(--on-act) !important' },
  '.cm-completionLabel': { fontFamily: 'var(--mono)' },
  '.cm-completionDetail': { fontStyle: 'normal !important', marginLeft: 'auto !important', color: 'var(--second)', maxWidth: '16rem', overflow: 'hidden', textOverflow: 'ellipsis' },
  'li[aria-selected] .cm-completionDetail': { color: 'inherit' },
  '.cm-completionInfo': { padding: '.5rem .7rem', maxWidth: '24rem', lineHeight: '1.4' },
  '.cm-diagnostic': { padding: '.5rem .7rem', borderLeft: '5px solid', maxWidth: '34rem', lineHeight: '1.4' },
  '.cm-diagnostic-error': { borderLeftColor: 'var(--bad)' },
  '.cm-diagnostic-warning': { borderLeftColor: 'var(--warn-line)', borderLeftStyle: 'dashed' },
  '.cm-diagnostic-info': { borderLeftColor: 'var(--note)', borderLeftStyle: 'dotted' },
  '.cm-diagnosticAction': { font: 'inherit', backgroundColor: 'var(--act)', color: 'var(--on-act)', borderRadius: '6px', margin: '.3rem .4rem 0 0', padding: '.2rem .6rem' },
  '.cm-diagnosticSource': { color: 'var(--second)', fontSize: '.8rem', opacity: '1' },
  '.cm-lintRange-error': { backgroundImage: paint('d02a28', wave) },
  '.cm-lintRange-warning': { backgroundImage: paint('d08400', wave) },
  '.cm-lintRange-info': { backgroundImage: paint('2a7ab8', 'M0 3h2m2 0h2') },
  '.cm-lintPoint-error:after': { borderBottomColor: '#d02a28' },
  '.cm-lintPoint-warning:after': { borderBottomColor: '#d08400' },
  '.cm-lintPoint-info:after': { borderBottomColor: '#2a7ab8' },
  '.cm-panels': { backgroundColor: 'var(--tint)', color: 'var(--ink)', borderTop: '1px solid var(--rule)' },
  '.cm-panel.cm-search': { padding: '.4rem .6rem', fontSize: '.875rem' },
  '.cm-panel.cm-search input, .cm-panel.cm-search button': { minHeight: '0', width: 'auto' },
  '.cm-textfield': { backgroundColor: 'var(--paper)', color: 'var(--ink)', border: '1.5px solid var(--edge)', borderRadius: '6px', fontSize: '.875rem' },
  '.cm-button': { backgroundImage: 'none', backgroundColor: 'var(--act)', color: 'var(--on-act)', border: 'none', borderRadius: '6px' },
  '.cm-searchMatch': { backgroundColor: 'var(--chosen)', outline: '1px solid var(--edge)' },
});

// at turns a place of the desk, lines and units from 0, into one of a text.
export const at = (doc, spot) => {
  if (spot.line >= doc.lines) { return doc.length; }
  const line = doc.line(spot.line + 1);
  return Math.min(line.from + spot.character, line.to);
};
export const spotAt = (doc, offset) => {
  const line = doc.lineAt(offset);
  return { line: line.number - 1, character: offset - line.from };
};

const icons = { verb: 'function', key: 'property', name: 'variable', word: 'enum', table: 'class' };

// writing makes the editor. hooks: changed(), moved(), asked() gives what a request needs,
// mend() mends the finding at the cursor, wrong(error) tells.
export const writing = (hooks) => {
  const completions = newest(), meanings = newest();
  let quiet = false; // a text is put in, and nobody has typed

  const complete = async (context) => {
    const line = context.state.doc.lineAt(context.pos);
    const before = line.text.slice(0, context.pos - line.from);
    const word = context.matchBefore(/[A-Za-z0-9_[.-]+/);
    if (!context.explicit && !word && !/["=]\s*$/.test(before)) { return null; }
    let list;
    try {
      list = await completions('complete', { ...hooks.asked(), all: false, at: spotAt(context.state.doc, context.pos) });
    } catch (wrong) {
      return null; // the next check tells that the desk is gone
    }
    if (!list || !list.length || context.aborted) { return null; }
    const doc = context.state.doc;
    return {
      from: at(doc, list[0].from), to: context.pos, validFor: /^[A-Za-z0-9_[\].-]*$/,
      options: list.map((one, i) => ({
        label: one.label, detail: one.detail, type: icons[one.kind] || 'text', boost: -i / 100,
        info: one.doc ? () => make('div', {}, one.doc) : undefined,
        apply: (view, completion, from, to) => {
          const after = view.state.sliceDoc(to, to + 1);
          const insert = one.insert || one.label;
          if (insert.includes('${')) { E.snippet(insert)(view, completion, from, to); return; }
          view.dispatch({ changes: { from, to, insert }, selection: { anchor: from + insert.length + (after === '"' && !insert.endsWith('"') ? 1 : 0) }, userEvent: 'input.complete' });
        },
      })),
    };
  };

  const hover = E.hoverTooltip(async (view, offset) => {
    let told;
    try {
      told = await meanings('hover', { ...hooks.asked(), all: false, at: spotAt(view.state.doc, offset) });
    } catch (wrong) {
      return null;
    }
    if (!told || !told.text) { return null; }
    return { pos: at(view.state.doc, told.from), end: at(view.state.doc, told.to), above: true, create: () => ({ dom: make('div', { class: 'doc-tip' }, told.text) }) };
  });

  const whole = [
    E.EditorView.cspNonce.of(nonce), look, E.syntaxHighlighting(colours), toml, E.highlightSpecialChars(), E.EditorView.lineWrapping, E.lineNumbers(), E.highlightActiveLine(), E.highlightActiveLineGutter(), E.drawSelection(), E.history(), E.bracketMatching(), E.closeBrackets(),
    E.lintGutter(), E.search({ top: true }), E.highlightSelectionMatches(), E.indentUnit.of('  '), hover,
    E.autocompletion({ override: [complete], activateOnTypingDelay: 150, icons: false }),
    E.EditorView.contentAttributes.of({ 'aria-label': 'Text of the file', tabindex: '0', spellcheck: 'false', autocapitalize: 'off' }),
    E.keymap.of([
      { key: 'F8', run: E.nextDiagnostic, shift: E.previousDiagnostic },
      { key: 'Tab', run: E.acceptCompletion }, // where nothing is offered it leaves the text
      { key: 'Alt-Enter', run: () => { hooks.mend(); return true; } },
      ...E.closeBracketsKeymap, ...E.defaultKeymap, ...E.searchKeymap, ...E.historyKeymap, ...E.completionKeymap,
    ]),
    E.EditorView.updateListener.of((update) => {
      for (const list of update.view.dom.querySelectorAll('.cm-tooltip-autocomplete > ul:not([tabindex])')) { list.tabIndex = 0; }
      if (quiet) { return; }
      if (update.docChanged) { hooks.changed(); }
      if (update.selectionSet || update.docChanged) { hooks.moved(); }
    }),
  ];
  const ends = new E.Compartment(); // how its lines end
  const breaks = (text) => (text.includes('\r\n') && !/[^\r]\n|^\n/.test(text) ? '\r\n' : '\n');

  const view = new E.EditorView({ parent: id('editor'), state: E.EditorState.create({ extensions: whole }) });
  return {
    view,
    begin: (text) => E.EditorState.create({ doc: text, extensions: [...whole, ends.of(E.EditorState.lineSeparator.of(breaks(text)))] }),
    textOf: (state) => state.sliceDoc(),
    show: (state) => { quiet = true; view.setState(state); quiet = false; },
    joined: (state, lines) => lines.join(state.lineBreak),
    put: (state, text, apart) => { // what stays the same is left, and the cursor in it
      const was = state.doc.toString(), now = text.split(breaks(text)).join('\n');
      let from = 0, tail = 0;
      while (from < Math.min(was.length, now.length) && was[from] === now[from]) { from += 1; }
      while (tail < Math.min(was.length, now.length) - from && was.at(-1 - tail) === now.at(-1 - tail)) { tail += 1; }
      return state.update({ changes: { from, to: was.length - tail, insert: E.Text.of(now.slice(from, now.length - tail).split('\n')) },
        effects: ends.reconfigure(E.EditorState.lineSeparator.of(breaks(text))), annotations: apart ? E.isolateHistory.of('full') : undefined });
    },
    can: (which) => E[which]({ state: view.state, dispatch: () => {} }), // a try that changes nothing
    back: (which) => E[which](view) && view.dispatch({ scrollIntoView: true }),
    mark: (list) => view.dispatch(E.setDiagnostics(view.state, list)),
    inMiddle: (offset) => E.EditorView.scrollIntoView(offset, { y: 'center' }),
    goTo: (spot, to) => {
      const doc = view.state.doc, anchor = at(doc, spot);
      view.dispatch({ selection: { anchor, head: to ? at(doc, to) : anchor }, effects: E.EditorView.scrollIntoView(anchor, { y: 'center' }) });
    },
  };
};
