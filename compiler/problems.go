package compiler

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/standing"
)

// told says which entries of a service book could not be taken as they stand, and why: what
// several have in common once.
func (r *Result) told(book *standing.Book) []string {
	var out []string
	for _, problem := range book.Problems {
		whose := fmt.Sprintf("entry %d of the service book", problem.Entry)
		if problem.Entry == given {
			whose = "given now"
		}
		out = append(out, whose+": "+problem.Text)
	}
	for _, why := range byLast(book.Strange) {
		out = append(out, whose(book.Strange[why])+": "+why)
	}
	return append(out, r.misnamed(book.Worked)...)
}

// whose names the entries that say something.
func whose(one standing.Worked) string {
	if one.Times > 1 {
		return fmt.Sprintf("%d entries of the service book, the last of them entry %d", one.Times, one.Last)
	}
	return fmt.Sprintf("entry %d of the service book", one.Last)
}

// byLast orders what entries say by the last of them.
func byLast(said map[string]standing.Worked) []string {
	return slices.SortedFunc(maps.Keys(said), func(a, b string) int {
		return cmp.Or(cmp.Compare(said[a].Last, said[b].Last), cmp.Compare(a, b))
	})
}

// misnamed tells of the procedures that entries name and the shop has not, whether the name
// is misspelt or the procedure is gone: a line for each name, however many entries there are.
// Where not every file of the shop is there and can be read, nobody knows what it has.
func (r *Result) misnamed(worked map[string]standing.Worked) []string {
	if !r.whole || slices.ContainsFunc(r.set.Files, func(file *model.File) bool { return file.Broken }) {
		return nil
	}
	var out []string
	for _, name := range byLast(worked) {
		if r.set.Procedure(name) != nil {
			continue
		}
		out = append(out, whose(worked[name])+": "+r.noProcedure(name))
	}
	return out
}
