package assist

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/internal/trade"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

var shortName = pattern.MustCompile(schema.NamePattern)

// RenameRange is the name at an offset that can be renamed: its place and how it is written.
// The error says why it cannot be, and what to do.
func (s *Shop) RenameRange(path string, offset int) (source.Place, string, error) {
	m, t, err := s.renamed(path, offset)
	if err != nil {
		return source.Place{}, "", err
	}
	return place(m.file, m.span), t.name, nil
}

// renamed is the name at an offset and what it names, where that can have another name.
func (s *Shop) renamed(path string, offset int) (mention, target, error) {
	file := s.file(path)
	if file == nil {
		return mention{}, target{}, fmt.Errorf("there is no file %q here", path)
	}
	m, ok := s.at(file, offset)
	if !ok {
		if file.Unread() {
			return m, target{}, broken(file)
		}
		return m, target{}, fmt.Errorf("no name stands here; go to the name of a part, a tool, a step or another thing")
	}
	t := s.resolve(m)
	switch {
	case !t.known():
		if _, what, ok := builtIn(m); ok {
			return m, t, fmt.Errorf("%q is a %s, and has its name from the language", m.name, what)
		}
		return m, t, fmt.Errorf("nothing is described by the name %q; describe it first", m.name)
	case t.kind == "machine" && m.name != t.name:
		return m, t, fmt.Errorf("the machine is called by its title here; write its name %q to rename it", t.name)
	case t.kind == "unit":
		return m, t, fmt.Errorf("the service book knows the machine by its short name %q, which stays; change its title", t.name)
	case t.kind == "caution":
		if _, ok := trade.FindHazard(t.name); ok {
			return m, t, fmt.Errorf("%q is the name of a hazard, which this message stands in for; describe another message beside it", t.name)
		}
	}
	return m, t, s.readable(t)
}

// bookKinds are the kinds of thing that entries of a service book name.
var bookKinds = []string{"machine", "procedure", "fluid", "supply", "spare"}

// BookName is the name that entries of a service book have for what is named at an offset; false
// where they have none.
func (s *Shop) BookName(path string, offset int) (string, bool) {
	_, t, err := s.renamed(path, offset)
	if err != nil {
		return "", false
	}
	all, err := s.together(t)
	return t.name, err == nil && slices.ContainsFunc(all, func(one target) bool { return slices.Contains(bookKinds, one.kind) })
}

// readable is an error where a file cannot be read that may hold the name.
func (s *Shop) readable(t target) error {
	for _, file := range s.set.Files {
		if !file.Unread() {
			continue
		}
		if file == t.file || t.kind != "step" && (holds(file, t.name) || holds(file, model.Spoken(t.name))) {
			return broken(file)
		}
	}
	return nil
}

func holds(file *model.File, name string) bool { return bytes.Contains(file.Source.Text, []byte(name)) }

func broken(file *model.File) error {
	line := 0
	if _, faults := tree.Parse(file.Source); len(faults) > 0 {
		line = faults[0].Place.Start().Line
	}
	return fmt.Errorf("%s:%d cannot be read, so its names are not known; mend it first", file.Source.Path, line)
}

// Rename is what to change in all files for what is named at an offset to have another name.
// The error says why it cannot, and what to do. A part and the spare that its replacing takes
// by its name are renamed together. Entries of a service book are never changed;
// those of a procedure or a machine of the shop keep the name they were made under.
func (s *Shop) Rename(path string, offset int, name string) ([]finding.Edit, error) {
	_, t, err := s.renamed(path, offset)
	switch {
	case err != nil:
		return nil, err
	case !shortName.MatchString(name):
		return nil, fmt.Errorf("%q is not a short name; write it in lower case letters and figures, words joined by hyphens", name)
	case name == t.name:
		return nil, nil
	}
	all, err := s.together(t)
	if err != nil {
		return nil, err
	}
	var out []finding.Edit
	for _, one := range all {
		if err := s.free(one, name); err != nil {
			return nil, err
		}
		for _, m := range s.named[one] {
			switch {
			case m.bare:
				edit, err := nameWritten(m, name)
				if err != nil {
					return nil, err
				}
				out = append(out, edit)
			case m.name == t.name: // a machine can be called by its title too, which stays
				out = append(out, finding.Edit{Place: place(m.file, m.span), Text: name})
			}
		}
	}
	slices.SortStableFunc(out, func(a, b finding.Edit) int { return comparePlaces(a.Place, b.Place) })
	return out, nil
}

// nameWritten writes the name of a machine or procedure that had its file's.
func nameWritten(m mention, name string) (finding.Edit, error) {
	table := m.file.Document.Root.Get(m.kinds[0]).Value.Table
	header := place(m.file, table.Header)
	switch text := header.Text(); {
	case table.Inline:
		at := table.Header.Start + 1
		after := ", "
		if len(table.Entries) == 0 {
			after = " "
		}
		return finding.Edit{Place: place(m.file, source.Span{Start: at, End: at}), Text: fmt.Sprintf(" name = %q%s", name, after)}, nil
	case strings.HasPrefix(text, "["):
		line := m.file.Source.Position(table.Header.End).Line
		at, end := table.Header.End, "\n"
		if bytes.HasPrefix(m.file.Source.Text[lineStart(m.file.Source, at)+len(m.file.Source.Line(line)):], []byte("\r\n")) {
			end = "\r\n"
		}
		at = lineStart(m.file.Source, at) + len(m.file.Source.Line(line)) // behind a comment
		return finding.Edit{Place: place(m.file, source.Span{Start: at, End: at}), Text: end + fmt.Sprintf("name = %q", name)}, nil
	}
	return finding.Edit{}, fmt.Errorf("%s has its name from its file; write name = %q into its [%s] first", m.file.Source.Path, m.name, m.kinds[0])
}

// lineStart is where the line of an offset begins.
func lineStart(file *source.File, offset int) int {
	return bytes.LastIndexByte(file.Text[:offset], '\n') + 1
}

// beside are the kinds that can stand where a name of a kind can, so that one name for two of
// them would be taken for the other.
func beside(kind string) []string {
	out := []string{kind}
	for _, table := range schema.Tables() {
		for _, key := range table.Keys {
			kinds := kindsOf(key)
			if key.Kind != schema.Name && key.Kind != schema.Names || !slices.Contains(kinds, kind) {
				continue
			}
			for _, other := range kinds {
				if other != "words" && !slices.Contains(out, other) {
					out = append(out, other)
				}
			}
		}
	}
	return out
}

// free is an error where a name already means something wherever the thing is named.
func (s *Shop) free(t target, name string) error {
	taken := func(kind string, at source.Place) error {
		return fmt.Errorf("%s is named %q in %s:%d; take another name", model.Article(kind), name, at.File.Path, at.Start().Line)
	}
	for _, m := range s.mentions[t.file] { // a step, a version, a thing of the same file
		if m.declares && m.name == name && m.kinds[0] == t.kind {
			return taken(t.kind, place(m.file, m.span))
		}
	}
	switch t.kind {
	case "step", "variant":
		return nil
	case "machine", "procedure":
		for _, file := range s.set.Files {
			for _, m := range s.mentions[file] {
				if m.declares && m.name == name && m.kinds[0] == t.kind {
					return taken(t.kind, place(m.file, m.span))
				}
			}
		}
		return nil
	}
	if _, what, ok := builtIn(mention{name: name, kinds: []string{t.kind}}); ok {
		return fmt.Errorf("%q is the name of a %s; take another name", name, what)
	}
	kinds := beside(t.kind)
	for _, file := range s.set.Files {
		if !file.Sees(t.file, t.kind) {
			continue
		}
		for _, kind := range kinds {
			found, _ := file.Describing(kind, name)
			if found == nil {
				continue
			}
			for _, m := range s.mentions[found] {
				if m.declares && m.name == name && m.kinds[0] == kind {
					return taken(kind, place(found, m.span))
				}
			}
		}
		for _, m := range s.mentions[file] { // words that would be taken for the name
			if m.name == name && slices.Contains(m.kinds, "words") && slices.Contains(m.kinds, t.kind) && !s.resolve(m).known() {
				return fmt.Errorf("%q stands in words in %s:%d and would be taken for the name; take another name", m.written, file.Source.Path, place(file, m.span).Start().Line)
			}
		}
	}
	return nil
}
