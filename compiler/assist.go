package compiler

import (
	"sync"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/assist"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/state"
	"benchleaf/compiler/source"
)

// Completion is one thing that can stand at a place. Its kind is key, verb, table, name, value
// or unit. Insert is plain text for the span Replace, which may be empty; one "$0" in it is
// where the cursor goes. Doc is CommonMark.
type Completion = assist.Completion

// Hover is what is known of a place, in CommonMark.
type Hover = assist.Hover

// Symbol is a thing of a file, for its outline: Place is its name, Whole all of it. Its kind is
// shop, machine, procedure, section, step, group, or the table of a thing: part, tool.
type Symbol = assist.Symbol

// Hint is a short text that an editor shows behind the byte offset At and that is not in the file.
type Hint = assist.Hint

// assistant makes the shop as help while writing knows it, when it is first asked for.
func (r *Result) assistant() func() *assist.Shop {
	return sync.OnceValue(func() *assist.Shop {
		var pictures []string
		for _, picture := range r.pictures {
			if picture.Fault == "" {
				pictures = append(pictures, picture.Path)
			}
		}
		return assist.New(r.set, Rules(), pictures)
	})
}

// Complete lists what can stand at a byte offset of a file, the likeliest first: keys and verbs
// that are not written yet, headers, names the file can see, words of a list, units. The text
// need not be whole. Nothing is left out for what is already written there.
func (r *Result) Complete(path string, offset int) []Completion {
	return r.assist().Complete(path, offset)
}

// Hover says what is known of a byte offset of a file; false where that is nothing. Its place
// holds the offset.
func (r *Result) Hover(path string, offset int) (Hover, bool) { return r.assist().Hover(path, offset) }

// Definition lists where the name at a byte offset is described; the files, where it is a use.
func (r *Result) Definition(path string, offset int) []source.Place {
	return r.assist().Definition(path, offset)
}

// References lists every place in the files where what is named at a byte offset is named, in
// order of path and place, with the place that describes it or without.
func (r *Result) References(path string, offset int, declaration bool) []source.Place {
	return r.assist().References(path, offset, declaration)
}

// Rename is what to change in all files that were given for what is named at a byte offset to
// have another name. Files keep theirs, and so do entries of the service book. The error says
// why it cannot be done, and the way out.
func (r *Result) Rename(path string, offset int, name string) ([]finding.Edit, error) {
	return r.assist().Rename(path, offset, name)
}

// RenameRange is the name at a byte offset that Rename would change, and its place.
func (r *Result) RenameRange(path string, offset int) (source.Place, string, error) {
	return r.assist().RenameRange(path, offset)
}

// BookName is the name that entries of a service book have for what is named at a byte offset: a
// machine, a procedure or what lies in the store. Another name would cut it off from them.
func (r *Result) BookName(path string, offset int) (string, bool) {
	return r.assist().BookName(path, offset)
}

// Symbols is the outline of a file, in its order.
func (r *Result) Symbols(path string) []Symbol { return r.assist().Symbols(path) }

// Hints are what each step of the first job of a file changes about the machine, and amounts in
// the other system of units, in order of place. What the steps change is known of targets
// without a fault of the language only.
func (r *Result) Hints(path string) []Hint {
	var job *model.Job
	var walk *state.Walk
	for i := len(r.Jobs) - 1; i >= 0; i-- {
		if r.Jobs[i].Path == path {
			job, walk = r.Jobs[i].work.Job, r.Jobs[i].walk
		}
	}
	return r.assist().Hints(path, job, walk)
}
