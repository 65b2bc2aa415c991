package assist

import (
	"cmp"
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// mention is one place where a name is written.
type mention struct {
	file     *model.File
	span     source.Span // the name alone, without quotes
	name     string      // as a short name
	written  string      // as it is written, without quotes
	kinds    []string    // of which kinds it can be, in the order in which they are looked up
	declares bool        // the thing is described here
	second   bool        // in a second reading: the names are those of the file it is of
	unit     *tree.Table // of a version of a machine that stands in the shop: the machine
	bare     bool        // no name is written: the file's own stands for it
}

// target is what a name means: a thing of a kind in the file that describes it.
type target struct {
	kind, name string
	file       *model.File
}

func (t target) known() bool { return t.file != nil }

// walker goes through a tree by the language.
type walker struct {
	file *model.File
	out  []mention
}

func (s *Shop) read(file *model.File) []mention {
	w := &walker{file: file}
	w.table(file.Document.Root, top())
	w.ownName("machine", "machine")
	w.ownName("procedure", "procedure")
	slices.SortStableFunc(w.out, func(a, b mention) int { return cmp.Compare(a.span.Start, b.span.Start) })
	return w.out
}

// ownName adds that a file has the name of its machine or procedure, where none is written.
func (w *walker) ownName(key, kind string) {
	entry := w.file.Document.Root.Get(key)
	if entry == nil || entry.Value.Table == nil {
		return
	}
	name := w.file.MachineName()
	if kind == "procedure" {
		name = w.file.Name()
	}
	if written := entry.Value.Table.Get("name"); name == "" || written != nil && written.Value.Kind == tree.StringKind {
		return
	}
	w.out = append(w.out, mention{file: w.file, span: entry.KeySpan, name: name, written: name, kinds: []string{kind}, declares: true, bare: true})
}

// kindsOf are the kinds a key of the language names.
func kindsOf(key schema.Key) []string { return strings.Fields(key.Of) }

func (w *walker) table(table *tree.Table, s shape) {
	if table == nil {
		return
	}
	for _, entry := range table.Entries {
		switch s.holds {
		case named:
			kinds, declares := []string{s.layout.Name}, !s.second
			if s.layout.Name == "store" {
				kinds, declares = []string{"fluid", "supply", "spare"}, false // it has the name of what it holds
			}
			w.key(entry, s, kinds, declares)
		case versions:
			w.key(entry, s, []string{"variant"}, false)
		case counted:
			w.key(entry, s, kindsOf(s.key), false)
			continue
		}
		inner := s.down(entry.Key)
		if inner.holds != unknown {
			w.inside(entry.Value, inner)
		}
		if key, known := s.find(entry.Key); known {
			w.value(table, s, key, entry.Value)
		}
	}
}

func (w *walker) inside(value *tree.Value, s shape) {
	w.table(value.Table, s)
	for _, item := range value.Items {
		w.table(item.Table, s)
	}
}

// key adds a name that is written as a key, at each place where it is.
func (w *walker) key(entry *tree.Entry, s shape, kinds []string, declares bool) {
	for i, span := range append([]source.Span{entry.KeySpan}, entry.Again...) {
		w.out = append(w.out, mention{file: w.file, span: w.inner(span), name: entry.Key, written: entry.Key, kinds: kinds, declares: declares && i == 0, second: s.second})
	}
}

// inner is a key without its quotes.
func (w *walker) inner(span source.Span) source.Span {
	if text := w.file.Source.Text[span.Start:span.End]; len(text) > 1 && (text[0] == '"' || text[0] == '\'') {
		return source.Span{Start: span.Start + 1, End: span.End - 1}
	}
	return span
}

// value adds the names that stand in the value of a key.
func (w *walker) value(table *tree.Table, s shape, key schema.Key, value *tree.Value) {
	switch kinds, declares := namesIn(s.layout.Name, key); {
	case len(kinds) == 0:
	case s.layout.Name == "unit" && key.Name == "version":
		w.texts(value, mention{kinds: kinds, unit: table})
	default:
		w.texts(value, mention{kinds: kinds, declares: declares && !s.second, second: s.second})
	}
}

// namesIn are the kinds of the names that a key holds, and whether it is where they are made.
func namesIn(table string, key schema.Key) (kinds []string, declares bool) {
	if key.Kind == schema.Name || key.Kind == schema.Names {
		return kindsOf(key), false
	}
	switch table + "." + key.Name {
	case "machine.name":
		return []string{"machine"}, true
	case "procedure.name":
		return []string{"procedure"}, true
	case "machine.variants":
		return []string{"variant"}, true
	case "step.id":
		return []string{"step"}, true
	case "step.once":
		return []string{"step"}, false
	case "unit.version":
		return []string{"variant"}, false
	case "picture.shows":
		return []string{"part", "cover", "cavity", "energy", "point", "limit", "words"}, false
	}
	return nil, false
}

// texts adds each text of a value as a name.
func (w *walker) texts(value *tree.Value, m mention) {
	for _, item := range append([]*tree.Value{value}, value.Items...) {
		if item.Kind != tree.StringKind || strings.TrimSpace(item.Text) == "" {
			continue
		}
		one := m
		one.file, one.span, one.written = w.file, item.Inside(0, len(item.Text)), item.Text
		one.name = model.Text{Text: item.Text}.Name()
		w.out = append(w.out, one)
	}
}

// at is the mention at an offset of a file.
func (s *Shop) at(file *model.File, offset int) (mention, bool) {
	for _, m := range s.mentions[file] {
		if within(m.span, offset) {
			return m, true
		}
	}
	return mention{}, false
}

// resolve looks up what a name means; nothing where nothing is described by it.
func (s *Shop) resolve(m mention) target {
	file := m.file
	if m.declares {
		return target{m.kinds[0], m.name, file}
	}
	if m.second {
		if file = s.set.First(file); file == nil {
			return target{}
		}
	}
	for _, kind := range m.kinds {
		if found := s.meant(file, m, kind); found != nil {
			return target{kind, s.nameOf(found, m, kind), found}
		}
	}
	return target{}
}

// nameOf is the name that a thing has in its file; a machine can be called by its title too.
func (s *Shop) nameOf(found *model.File, m mention, kind string) string {
	if kind == "machine" {
		return found.MachineName()
	}
	return m.name
}

// meant is the file that describes what a name means, by one kind.
func (s *Shop) meant(file *model.File, m mention, kind string) *model.File {
	switch kind {
	case "words":
		return nil
	case "machine":
		return machineNamed(file, m)
	case "procedure":
		return s.set.Procedure(m.name)
	case "variant":
		of := file.Of()
		if m.unit != nil {
			of = nil
			if entry := m.unit.Get("machine"); entry != nil {
				text := entry.Value.Text
				of = machineNamed(file, mention{file: file, name: model.Text{Text: text}.Name(), written: text})
			}
		}
		if of != nil && of.Machine != nil && of.Machine.Variants.Has(m.name) {
			return of
		}
		return nil
	case "step":
		if stepNamed(file, m.name) != nil {
			return file
		}
		return nil
	}
	found, _ := file.Describing(kind, m.name)
	return found
}

// machineNamed is the file that describes the machine of a name, or of a title.
func machineNamed(file *model.File, m mention) *model.File {
	for _, layer := range file.Layers() {
		if layer.Machine != nil && (layer.MachineName() == m.name || layer.Machine.Title.Text == m.written) {
			return layer
		}
	}
	if file.Machine != nil {
		return file // described beside the procedure, whatever it calls it
	}
	return nil
}

func stepNamed(file *model.File, id string) *model.Step {
	for _, step := range file.Steps {
		if step.ID.Set() && step.ID.Name() == id {
			return step
		}
	}
	return nil
}

func (s *Shop) file(path string) *model.File { return s.set.File(path) }
