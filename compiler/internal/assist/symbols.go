package assist

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// Symbols is the outline of a file: shop, machine and procedure, the steps by their sections,
// and what it describes by its kind, in the order of the file.
func (s *Shop) Symbols(path string) []Symbol {
	file := s.file(path)
	if file == nil {
		return nil
	}
	var out []Symbol
	numbers := stepNumbers(file)
	for _, entry := range file.Document.Root.Entries {
		key, known := top().find(entry.Key)
		switch {
		case !known:
		case key.Of == "step" && entry.Value.Kind == tree.TablesKind:
			out = append(out, group(s.steps(file, entry, numbers), sections[key.Name], "section"))
		case key.Kind == schema.Named && entry.Value.Table != nil:
			if things := s.things(file, key, entry.Value.Table); len(things) > 0 {
				out = append(out, group(things, key.Name+"s", "group"))
			}
		case key.Kind == schema.Sub && entry.Value.Table != nil:
			out = append(out, s.single(file, key, entry))
		}
	}
	slices.SortStableFunc(out, func(a, b Symbol) int { return cmp.Compare(a.Whole.Span.Start, b.Whole.Span.Start) })
	return out
}

var sections = map[string]string{"prepare": "make ready", "step": "work", "close": "close up"}

// plurals that do not end in a mere s.
var plurals = map[string]string{"cavitys": "cavities", "energys": "energies", "supplys": "supplies", "stores": "store"}

// group is a symbol that holds others.
func group(children []Symbol, name, kind string) Symbol {
	if plural := plurals[name]; plural != "" {
		name = plural
	}
	out := Symbol{Name: name, Kind: kind, Place: children[0].Place, Whole: children[0].Whole, Children: children}
	for _, child := range children {
		out.Whole.Span.Start = min(out.Whole.Span.Start, child.Whole.Span.Start)
		out.Whole.Span.End = max(out.Whole.Span.End, child.Whole.Span.End)
	}
	return out
}

// stepNumbers are the numbers of a file's steps as its card prints them; of several versions
// those of the first that it serves. A step that is not of that version has none.
func stepNumbers(file *model.File) map[*tree.Table]int {
	variant := ""
	if of := file.Of(); of != nil && of.Machine != nil && file.Procedure != nil {
		for _, name := range of.Machine.Variants.Names() {
			if !model.Conditional(file.Procedure.For, name) {
				variant = name
				break
			}
		}
	}
	out := map[*tree.Table]int{}
	for _, step := range file.Steps {
		if !model.Conditional(step.For, variant) {
			out[step.Table] = len(out) + 1
		}
	}
	return out
}

func (s *Shop) steps(file *model.File, entry *tree.Entry, numbers map[*tree.Table]int) []Symbol {
	var out []Symbol
	for _, item := range entry.Value.Items {
		if item.Table == nil {
			continue
		}
		one := Symbol{Kind: "step", Place: place(file, item.Table.Header), Whole: whole(file, item.Table)}
		for _, step := range file.Steps {
			if step.Table != item.Table {
				continue
			}
			one.Name = cmp.Or(stepWords(step), "…")
			if step.Stage.Set() {
				one.Detail = step.Stage.Text
			}
		}
		if number := numbers[item.Table]; number > 0 {
			one.Name = fmt.Sprintf("%d · %s", number, one.Name)
		} else {
			one.Name = "– · " + one.Name
		}
		out = append(out, one)
	}
	return out
}

// whole is a table from its header to the last value in it.
func whole(file *model.File, table *tree.Table) source.Place {
	return place(file, source.Span{Start: table.Header.Start, End: table.End()})
}

func (s *Shop) things(file *model.File, key schema.Key, table *tree.Table) []Symbol {
	var out []Symbol
	for _, entry := range table.Entries {
		if entry.Value.Table == nil {
			continue
		}
		one := Symbol{Name: entry.Key, Kind: key.Of, Place: place(file, entry.KeySpan), Whole: whole(file, entry.Value.Table)}
		one.Whole.Span.Start = min(one.Whole.Span.Start, entry.KeySpan.Start)
		one.Whole.Span.End = max(one.Whole.Span.End, entry.KeySpan.End)
		if card, ok := s.about(file, target{key.Of, entry.Key, file}, false); ok {
			one.Detail = cut(strings.Join(append([]string{card.title}, card.detail...), ", "), 80)
		}
		out = append(out, one)
	}
	return out
}

// single is a table of which there is one.
func (s *Shop) single(file *model.File, key schema.Key, entry *tree.Entry) Symbol {
	out := Symbol{Name: key.Name, Kind: key.Name, Place: place(file, entry.KeySpan), Whole: whole(file, entry.Value.Table)}
	out.Whole.Span.Start = min(out.Whole.Span.Start, entry.KeySpan.Start)
	out.Whole.Span.End = max(out.Whole.Span.End, entry.KeySpan.End)
	if title := entry.Value.Table.Get("title"); title != nil && title.Value.Kind == tree.StringKind && title.Value.Text != "" {
		out.Name, out.Detail = title.Value.Text, key.Name
	}
	return out
}
