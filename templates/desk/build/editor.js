// What the writing desk takes of the editor. All that is the desk's own stands beside it,
// in templates/desk, and needs no bundling.
export { EditorState, Text, Compartment, Annotation, StateEffect, StateField, Transaction, Prec } from '@codemirror/state';
export { EditorView, Decoration, WidgetType, keymap, lineNumbers, highlightActiveLine, highlightActiveLineGutter, highlightSpecialChars, drawSelection, hoverTooltip, gutter, GutterMarker } from '@codemirror/view';
export { StreamLanguage, HighlightStyle, syntaxHighlighting, indentUnit, foldGutter, foldKeymap, foldService, bracketMatching } from '@codemirror/language';
export { defaultKeymap, history, historyKeymap, isolateHistory, undo, redo } from '@codemirror/commands';
export { search, searchKeymap, highlightSelectionMatches, openSearchPanel } from '@codemirror/search';
export { autocompletion, acceptCompletion, completionKeymap, closeBrackets, closeBracketsKeymap, startCompletion, snippet } from '@codemirror/autocomplete';
export { setDiagnostics, lintGutter, lintKeymap, openLintPanel, nextDiagnostic, previousDiagnostic, forEachDiagnostic } from '@codemirror/lint';
export { diffIndices } from 'node-diff3';
export { tags, tagHighlighter } from '@lezer/highlight';
