package model

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// SecondReading is the figures of a file, read in the manual again by another person.
type SecondReading struct {
	Thing
	By   Text `key:"by"`
	Date Text `key:"date"`
	From Text `key:"from"`

	blanks int // values that nobody has filled in yet
}

// secondReading reads the table [second-reading]: tables as the file has them, in
// which nothing is always needed. Its names are held against the first reading and
// not looked up.
func (d *decoder) secondReading(key schema.Key, value *tree.Value) {
	if !d.want(key, value, tree.TableKind) {
		return
	}
	out := &SecondReading{Thing: d.thing("", value.Span, value.Table)}
	d.second = out
	defer func() { d.second = nil }()
	d.table(value.Table, key.Of, out, false)
	d.file.Second = out
	refs := d.refs
	for _, entry := range value.Table.Entries {
		of, ok := again(entry.Key)
		if !ok {
			continue
		}
		switch of.Kind {
		case schema.Named:
			if !d.want(of, entry.Value, tree.TableKind) {
				continue
			}
			for _, one := range entry.Value.Table.Entries {
				if d.want(schema.Key{Name: one.Key, Example: "{ … }"}, one.Value, tree.TableKind) {
					made, overrides, blank := newThing(of.Of, d.thing(one.Key, one.KeySpan, one.Value.Table))
					d.table(one.Value.Table, of.Of, made, true)
					if overrides != nil {
						d.checkOverrides(of.Of, *overrides, blank)
					}
				}
			}
		case schema.Subs:
			if !d.want(of, entry.Value, tree.TablesKind) {
				continue
			}
			for _, item := range entry.Value.Items {
				step := &Step{Thing: d.thing("", item.Span, item.Table)}
				d.table(item.Table, of.Of, step, true)
				d.checkOverrides(of.Of, step.Variant, func() any { return new(Step) })
			}
		default:
			if !d.want(of, entry.Value, tree.TableKind) {
				continue
			}
			var made any = &Procedure{Thing: d.thing("", entry.Value.Span, entry.Value.Table)}
			if of.Of == "machine" {
				made = &Machine{Thing: d.thing("", entry.Value.Span, entry.Value.Table)}
			}
			d.table(entry.Value.Table, of.Of, made, true)
		}
	}
	d.refs = refs
}

// again is the key of a file that a key of a second reading repeats.
func again(name string) (schema.Key, bool) {
	second, _ := schema.Find("second-reading")
	file, _ := schema.Find("file")
	if key, ok := second.Key(name); !ok || key.Kind != schema.Again {
		return schema.Key{}, false
	}
	return file.Key(name)
}

// secondFolder is the folder for second readings: that of log-deck.toml stands in
// second/log-deck.toml.
const secondFolder = "second"

// SecondPath is the path of the file that holds the second reading of another;
// false where the other holds one itself.
func SecondPath(file string) (string, bool) {
	folder, name := path.Split(file)
	return path.Join(folder, secondFolder, name), path.Base(folder) != secondFolder
}

// otherReading is the other of the two paths of a file and its second reading.
func otherReading(file string) string {
	other, first := SecondPath(file)
	if !first {
		other = path.Join(path.Dir(path.Dir(file)), path.Base(file))
	}
	return other
}

// First is the file that a second reading is of; nil where it is not there.
func (s *Set) First(second *File) *File {
	if _, ok := SecondPath(second.Source.Path); !ok {
		return s.byPath[otherReading(second.Source.Path)]
	}
	return second
}

// Unread reports whether the file could not be read for a fault of the syntax.
func (f *File) Unread() bool { return f.unread }

// Parting says how two readings part.
type Parting int

// ReadOtherwise is a value that the second reading has otherwise, NotHere one that
// only it has, ReadOnce one that only the file has; Unfinished is a second reading
// with blanks left.
const (
	ReadOtherwise Parting = iota
	NotHere
	ReadOnce
	Unfinished
)

// Difference is where two readings of a file part.
type Difference struct {
	Parting
	Of          string       // whose value it is, in words; empty for the procedure's own
	Step        bool         // it is a step's
	Keys        []string     // which values, in words; none where the whole is missing
	Here, There source.Place // the value in the file, or the header of what has none; and in the second reading
	From        string       // what was read a second time
	Blanks      int          // how many are left, of Unfinished
}

// readAgain holds a second reading against its file.
func (s *Set) readAgain(file *File) {
	if file.Second == nil {
		return
	}
	first := s.First(file)
	if first == nil || first == file && len(file.things) == 0 && file.Machine == nil && file.Procedure == nil {
		s.fault(file, nothingRead, file.Second.Header, "nothing is there that this is a second reading of",
			fmt.Sprintf("Write it into the file that was read first, or into one of that name in the folder %s beside it.", secondFolder))
		return
	}
	if first.unread || file.unread {
		return
	}
	first.Differences = append(first.Differences, first.reread(file)...)
}

// compared is how a file differs from a second reading of it.
type compared struct {
	of  *SecondReading
	out []Difference
}

// reread holds a second reading against the file, once for the two as they are.
func (f *File) reread(second *File) []Difference {
	if one, known := f.rereadings[second]; known {
		return one.out
	}
	r := &rereading{comparison: comparison{first: f, second: second}}
	if n := second.Second.blanks; n > 0 {
		r.differ(Difference{Parting: Unfinished, Here: second.Second.Header, There: second.Second.Header, Blanks: n})
	}
	r.file()
	if f.rereadings == nil {
		f.rereadings = map[*File]compared{}
	}
	f.rereadings[second] = compared{second.Second, r.out}
	return r.out
}

// Readings are the files that hold a second reading of the file: itself, or one beside it.
func (f *File) Readings() []*File {
	var out []*File
	for _, layer := range f.layers {
		if layer.Second != nil && (layer == f || layer.Source.Path == otherReading(f.Source.Path)) {
			out = append(out, layer)
		}
	}
	return out
}

// besides lets every file that takes names from one with a second reading see that too.
func (s *Set) besides(file *File) {
	for _, layer := range slices.Clone(file.layers) {
		if other := s.besideOf(layer); other != nil && !slices.Contains(file.layers, other) {
			file.layers = append(file.layers, other)
		}
	}
}

// besideOf is the other reading of a file; nil where nobody made one.
func (s *Set) besideOf(file *File) *File {
	other := s.byPath[otherReading(file.Source.Path)]
	if other != nil && (other.Second != nil || file.Second != nil) {
		return other
	}
	return nil
}

// rereading compares one file with its second reading.
type rereading struct {
	comparison
	inSteps bool
	out     []Difference
}

func (r *rereading) file() {
	layout, _ := schema.Find("file")
	for _, key := range layout.Keys {
		of, ok := again(key.Name)
		if !ok || of.Kind == schema.Subs {
			continue
		}
		here, there := inner(r.first.Document.Root, key.Name), inner(r.second.Second.Table, key.Name)
		table, _ := schema.Find(of.Of)
		if of.Kind == schema.Sub {
			r.table("", here, there, table)
			continue
		}
		for _, name := range names(here, there) {
			title := Spoken(name)
			mine := inner(here, name)
			if mine != nil {
				if entry := mine.Get("title"); entry != nil && entry.Value.Kind == tree.StringKind {
					title = entry.Value.Text
				}
			}
			r.table(title, mine, inner(there, name), table)
		}
	}
	r.steps()
}

// inner is the table of a key, where the table and the key are there.
func inner(table *tree.Table, key string) *tree.Table {
	if table == nil {
		return nil
	}
	if entry := table.Get(key); entry != nil && entry.Value.Kind == tree.TableKind {
		return entry.Value.Table
	}
	return nil
}

// names are the keys of two tables, those of the first before those the second alone has.
func names(tables ...*tree.Table) []string {
	var out []string
	for _, table := range tables {
		if table == nil {
			continue
		}
		for _, entry := range table.Entries {
			if !slices.Contains(out, entry.Key) {
				out = append(out, entry.Key)
			}
		}
	}
	return out
}

// table compares two tables that mean one thing; either may not be there.
func (r *rereading) table(of string, here, there *tree.Table, layout schema.Table) {
	if there == nil {
		r.readOnce(of, here, nil, layout)
		return
	}
	if here == nil {
		r.differ(Difference{Parting: NotHere, Of: of, Here: r.place(r.first, source.Span{}), There: r.place(r.second, there.Header)})
		return
	}
	for _, entry := range there.Entries {
		key, known := layout.Key(entry.Key)
		if !known {
			continue
		}
		mine := here.Get(entry.Key)
		switch {
		case empty(entry.Value): // told as a blank
		case mine == nil:
			if plain(entry.Key, entry.Value) {
				continue
			}
			r.differ(Difference{Parting: NotHere, Of: of, Keys: []string{entry.Key}, Here: r.place(r.first, here.Header), There: r.place(r.second, entry.Value.Span)})
		case key.Kind == schema.Sub:
			table, _ := schema.Find(key.Of)
			r.table(of, mine.Value.Table, entry.Value.Table, table)
		case key.Kind == schema.Overrides:
			table, _ := schema.Find(key.Of)
			for _, variant := range names(mine.Value.Table, entry.Value.Table) {
				r.table(strings.TrimSpace(of+" of the "+Spoken(variant)), inner(mine.Value.Table, variant), inner(entry.Value.Table, variant), table)
			}
		case r.same(key, mine.Value, entry.Value):
			r.first.readBy(mine.Value, r.second.Second)
		default:
			r.differ(Difference{Of: of, Keys: []string{entry.Key}, Here: r.place(r.first, mine.Value.Span), There: r.place(r.second, entry.Value.Span)})
		}
	}
	r.readOnce(of, here, there, layout)
}

func (r *rereading) differ(d Difference) {
	d.From, d.Step = r.second.Second.From.Text, r.inSteps
	r.out = append(r.out, d)
}

func (r *rereading) place(file *File, span source.Span) source.Place {
	return source.Place{File: file.Source, Span: span}
}

// empty reports whether a value is still to be filled in.
func empty(value *tree.Value) bool {
	return value.Kind == tree.StringKind && strings.TrimSpace(value.Text) == ""
}

// saysNone reports whether an entry says that there is nothing: nothing a tool turns,
// nothing to wear.
func saysNone(entry *tree.Entry) bool {
	return entry.Key == "head" && entry.Value.Text == "none" || entry.Value.Kind == tree.ArrayKind && len(entry.Value.Items) == 0
}

// plain reports whether a value is what is meant where the key is left out.
func plain(key string, value *tree.Value) bool {
	switch key {
	case "count", "people":
		return value.Int == 1
	case "head":
		return value.Text == "hex"
	case "access":
		return value.Text == "any"
	}
	return false
}

// readOnce tells of the figures of a table that the second reading leaves out.
func (r *rereading) readOnce(of string, here, there *tree.Table, layout schema.Table) {
	if here == nil {
		return
	}
	var keys []string
	for _, entry := range here.Entries {
		key, known := layout.Key(entry.Key)
		switch {
		case !known:
		case key.Kind == schema.Overrides && entry.Value.Table != nil && (there == nil || there.Get(entry.Key) == nil):
			table, _ := schema.Find(key.Of)
			for _, variant := range entry.Value.Table.Entries {
				if variant.Value.Kind == tree.TableKind {
					r.readOnce(strings.TrimSpace(of+" of the "+Spoken(variant.Key)), variant.Value.Table, nil, table)
				}
			}
		case saysNone(entry):
		case figure(layout.Name, key) && (there == nil || there.Get(entry.Key) == nil):
			keys = append(keys, entry.Key)
		}
	}
	if len(keys) > 0 {
		r.differ(Difference{Parting: ReadOnce, Of: of, Keys: keys, Here: r.place(r.first, here.Header), There: r.second.Second.Header})
	}
}

// figure reports whether a key of a table holds what a second reading is to have: the
// figures and marks that stand in a manual and in which a slip of the pen does harm;
// not times that are guessed, not what is only bought, and no name that only the
// files know. Whatever else a second reading has is compared all the same.
func figure(table string, key schema.Key) bool {
	switch table {
	case "machine", "adapter", "tool", "supply", "spare":
		return false
	}
	if slices.Contains(marks, key.Name) {
		return true
	}
	return (key.Kind == schema.Amount || key.Kind == schema.Amounts) && !slices.Contains(estimates, key.Name) && key.Name != "packs"
}

// marks are the keys besides amounts that are read twice.
var marks = []string{"count", "thread", "class", "condition", "grade"}

// againStep is a step as a second reading knows it: by its verb and object, and by
// how many of the same stand before it.
type againStep struct {
	name  string
	table *tree.Table
}

func stepsOf(root *tree.Table) []againStep {
	var out []againStep
	if root == nil {
		return nil
	}
	seen := map[string]int{}
	for _, section := range []string{"prepare", "step", "close"} {
		entry := root.Get(section)
		if entry == nil {
			continue
		}
		for _, item := range entry.Value.Items {
			if item.Table == nil {
				continue
			}
			name := calledStep(item.Table)
			seen[name]++
			if seen[name] > 1 {
				name = fmt.Sprintf("%s (%d)", name, seen[name])
			}
			out = append(out, againStep{name, item.Table})
		}
	}
	return out
}

func layoutOfSteps() schema.Table {
	layout, _ := schema.Find("step")
	return layout
}

// calledStep is what a step does, as it is read aloud; "the step in words" where it has no verb.
func calledStep(table *tree.Table) string {
	for _, entry := range table.Entries {
		if verb, ok := schema.FindVerb(entry.Key); ok {
			if key, _ := layoutOfSteps().Key(entry.Key); key.Kind == schema.Amount {
				return Spoken(verb.Key)
			}
			var objects []string
			for _, item := range append(slices.Clone(entry.Value.Items), entry.Value) {
				if item.Text != "" {
					objects = append(objects, Spoken(item.Text))
				}
			}
			slices.Sort(objects)
			return strings.TrimSpace(Spoken(verb.Key) + " " + strings.Join(objects, ", "))
		}
	}
	return "the step in words"
}

// steps compares the steps of both readings, each by its name.
func (r *rereading) steps() {
	r.inSteps = true
	layout := layoutOfSteps()
	mine, theirs := stepsOf(r.first.Document.Root), stepsOf(r.second.Second.Table)
	at := r.place(r.first, source.Span{})
	if r.first.Procedure != nil {
		at = r.first.Procedure.Header
	}
	find := func(list []againStep, name string) int {
		return slices.IndexFunc(list, func(one againStep) bool { return one.name == name })
	}
	for _, their := range theirs {
		if i := find(mine, their.name); i >= 0 {
			r.table(their.name, mine[i].table, their.table, layout)
			continue
		}
		r.differ(Difference{Parting: NotHere, Of: their.name, Here: at, There: r.place(r.second, their.table.Header)})
	}
	for _, my := range mine {
		if find(theirs, my.name) < 0 && my.name != "the step in words" {
			r.readOnce(my.name, my.table, nil, layout)
		}
	}
}

// readBy keeps who read a value a second time.
func (f *File) readBy(value *tree.Value, reader *SecondReading) {
	if f.twice == nil {
		f.twice = map[*tree.Value]*SecondReading{}
	}
	f.twice[value] = reader
	for _, item := range value.Items {
		f.twice[item] = reader
	}
}

// Blanks is the form of a second reading: every figure of the file that is to be
// read twice, without its value.
func (f *File) Blanks() string {
	var out strings.Builder
	layout, _ := schema.Find("file")
	for _, key := range layout.Keys {
		of, ok := again(key.Name)
		entry := f.Document.Root.Get(key.Name)
		if !ok || entry == nil {
			continue
		}
		table, _ := schema.Find(of.Of)
		header := "second-reading." + key.Name
		switch {
		case entry.Value.Kind == tree.TablesKind:
			for _, item := range entry.Value.Items {
				f.blanks(&out, "[["+header+"]]", header, item.Table, table)
			}
		case entry.Value.Kind == tree.TableKind && of.Kind == schema.Named:
			for _, one := range entry.Value.Table.Entries {
				if one.Value.Kind == tree.TableKind {
					f.blanks(&out, "["+header+"."+one.Key+"]", header+"."+one.Key, one.Value.Table, table)
				}
			}
		case entry.Value.Kind == tree.TableKind:
			f.blanks(&out, "["+header+"]", header, entry.Value.Table, table)
		}
	}
	return out.String()
}

// blanks writes the blanks of one table, and those of its versions behind it.
func (f *File) blanks(out *strings.Builder, header, path string, table *tree.Table, layout schema.Table) {
	var lines, versions strings.Builder
	for _, entry := range table.Entries {
		key, _ := layout.Key(entry.Key)
		switch {
		case key.Kind == schema.Overrides && entry.Value.Kind == tree.TableKind:
			variants, _ := schema.Find(key.Of)
			for _, variant := range entry.Value.Table.Entries {
				if variant.Value.Kind == tree.TableKind {
					name := path + ".variant." + variant.Key
					f.blanks(&versions, "["+name+"]", name, variant.Value.Table, variants)
				}
			}
		case figure(layout.Name, key):
			fmt.Fprintf(&lines, "%s = \"\"\n", key.Name)
		}
	}
	step := f.verbLine(table, layout)
	if lines.Len() > 0 && (layout.Name != "step" || step != "") || versions.Len() > 0 {
		fmt.Fprintf(out, "\n%s\n%s%s%s", header, step, lines.String(), versions.String())
	}
}

// verbLine is the line of a step that says which it is; nothing for another table.
func (f *File) verbLine(table *tree.Table, layout schema.Table) string {
	if layout.Name != "step" {
		return ""
	}
	for _, entry := range table.Entries {
		if _, verb := schema.FindVerb(entry.Key); !verb {
			continue
		}
		if key, _ := layout.Key(entry.Key); key.Kind == schema.Amount { // the wait is itself the figure
			if until := table.Get("until"); until != nil {
				return fmt.Sprintf("# until %s\n", until.Value.Text)
			}
			return "# the next wait\n"
		}
		return fmt.Sprintf("%s = %s\n", entry.Key, source.Place{File: f.Source, Span: entry.Value.Span}.Text())
	}
	return ""
}
