package compiler

import (
	"bytes"
	"cmp"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// Mend is a fix that was applied: where, and what it did, as a verb phrase.
type Mend struct {
	Place source.Place
	Title string
}

// fixed applies the certain fixes of some findings. A fix is applied whole or
// not at all: one that meets an edit already taken is left for the next run.
func fixed(findings []finding.Finding) ([]Output, []Mend) {
	edits := map[*source.File][]finding.Edit{}
	var mends []Mend
	for _, found := range findings {
		for _, fix := range found.Fixes {
			if fix.Certain && free(edits, fix.Edits) {
				for _, edit := range fix.Edits {
					edits[edit.Place.File] = append(edits[edit.Place.File], edit)
				}
				mends = append(mends, Mend{fix.Edits[0].Place, fix.Title})
				break
			}
		}
	}
	var out []Output
	for file, list := range edits {
		out = append(out, Output{Name: file.Path, Bytes: apply(file.Text, list)})
	}
	slices.SortFunc(out, func(a, b Output) int { return cmp.Compare(a.Name, b.Name) })
	return out, mends
}

func free(taken map[*source.File][]finding.Edit, edits []finding.Edit) bool {
	for _, edit := range edits {
		for _, other := range taken[edit.Place.File] {
			a, b := edit.Place.Span, other.Place.Span
			if a.Start < b.End && b.Start < a.End || a.Start == b.Start {
				return false
			}
		}
	}
	return len(edits) > 0
}

func apply(text []byte, edits []finding.Edit) []byte {
	slices.SortFunc(edits, func(a, b finding.Edit) int { return cmp.Compare(a.Place.Span.Start, b.Place.Span.Start) })
	var out bytes.Buffer
	at := 0
	for _, edit := range edits {
		out.Write(text[at:edit.Place.Span.Start])
		out.WriteString(edit.Text)
		at = edit.Place.Span.End
	}
	out.Write(text[at:])
	return out.Bytes()
}
