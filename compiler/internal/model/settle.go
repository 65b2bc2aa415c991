package model

import (
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/tree"
)

// Amounts are the amounts of a file as the schema knows them, in the order in which they are
// read; none where the file is in no version of the language that is read here.
func Amounts(document *tree.Document) []Amount {
	d := &decoder{file: &File{Source: document.File, Document: document, index: map[key]any{}, view: &view{}}}
	if entry := document.Root.Get("benchleaf"); entry != nil && d.version(document.Root) {
		d.root(document.Root)
	}
	return d.amounts
}

// Settled is the amount in the spelling of the pages, with all that its author wrote. It is
// false where the amount is no text, where anything stands against it, and where it would not
// be read as the same amount in that spelling.
func (a Amount) Settled() (text string, ok bool) {
	if !a.OK || len(a.Problems) > 0 || a.Value.Kind != tree.StringKind {
		return "", false
	}
	text = a.Amount.Settled()
	if text == a.Text.Text {
		return text, true
	}
	again, problems := readAmount(text, a.Of)
	return text, len(problems) == 0 && quantity.Alike(a.Amount, again)
}
