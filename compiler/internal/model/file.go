// Package model is what the files mean: shop, machine, parts, procedures and
// steps, each with its place. It must not judge the work: only whether the
// language is kept and whether every name is somewhere.
package model

import (
	"fmt"
	"path"
	"slices"
	"strings"
	"sync"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/memo"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/internal/trade"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// File is one file of the shop, read.
type File struct {
	Source      *source.File
	Document    *tree.Document
	Shop        *Shop
	Machine     *Machine
	Procedure   *Procedure
	Allow       []*Allow // what the file stands by as a whole
	Steps       []*Step  // prepare, step, close; in that order
	Uses        List
	Amounts     []Amount
	Second      *SecondReading // in the file, of itself or of the file beside it
	Differences []Difference   // of the file from its second readings
	Broken      bool           // a finding of the language stands in it

	number  int  // in the order of the files of its set
	unread  bool // a fault of the syntax stands in it
	bare    bool // nothing of it was read, for a fault of the syntax or of its version
	sleeps  bool // no more is kept of it than others look at
	refs    []Ref
	areas   []Ref                          // those of them that name an area
	layers  []*File                        // files whose names it takes, itself first; set by link
	machine *File                          // describes the machine of its procedure; set by link
	things  []named                        // in file order
	common  []named                        // those of them that do not belong to a machine
	index   map[key]any                    // part drain-plug → *Part
	view    *view                          // what it can see; set by link
	shares  *shared                        // most of the files it takes names from; nil where it uses some itself
	twice   map[*tree.Value]*SecondReading // values that were read twice alike

	memo       *memo.Memo         // of its texts, once it is read again and again
	room       room               // for its steps
	rooms      []*room            // for the steps of its jobs
	rereadings map[*File]compared // of the file from each of its second readings, as far as they were compared
	saying     sync.Once
	said       map[key]string // what it describes, by how it is said: part, "drain plug"
}

// key is the kind and the short name of a thing.
type key struct{ kind, name string }

// view is what a file can see by name: its own things, and those of the files it takes names
// from. It is made when it is first asked for.
type view struct {
	once   sync.Once
	things map[key]origin
	names  map[string][]string // of each kind, sorted, each once
	saying sync.Once
	said   map[string]bool // how anything of the files it takes names from is said
}

// origin is a thing, and the file that describes it.
type origin struct {
	from  *File
	thing any
}

// seen is the view of a file.
func (f *File) seen() *view {
	v := f.view
	if v == nil { // a file that was never read
		v = new(view)
	}
	v.once.Do(func() {
		v.things, v.names = map[key]origin{}, map[string][]string{}
		for _, layer := range f.layers {
			things := layer.things
			if !f.takes(layer, machineKinds[0]) {
				things = layer.common
			}
			for _, thing := range things {
				at := key{thing.kind, thing.name}
				if v.things[at].thing != nil {
					continue
				}
				v.things[at] = origin{layer, layer.index[at]}
				v.names[thing.kind] = append(v.names[thing.kind], thing.name)
			}
		}
		for _, names := range v.names {
			slices.Sort(names)
		}
	})
	return v
}

type named struct {
	kind string
	name string
	at   source.Place
}

// Name is the procedure's short name: as written, or the file's name.
func (f *File) Name() string {
	if f.Procedure != nil && f.Procedure.Short.Set() {
		return f.Procedure.Short.Name()
	}
	return stem(f.Source.Path)
}

// Describes reports whether a file describes things by name besides its procedure: parts,
// tools, cautions.
func (f *File) Describes() bool { return len(f.things) > 0 }

// Pictures are the pictures a file shows, in order: those of the whole job first.
func (f *File) Pictures() []*Picture {
	var out []*Picture
	if f.Procedure != nil {
		out = append(out, f.Procedure.Pictures...)
	}
	for _, step := range f.Steps {
		if step.Picture != nil {
			out = append(out, step.Picture)
		}
	}
	return out
}

// Place is where the picture lies: its path from the shop folder, which begins with ..
// where it leads out of it.
func (p *Picture) Place() string { return path.Join(path.Dir(p.At.File.Path), p.Path.Text) }

// elsewhere is a path that is not one from a file.
var elsewhere = pattern.MustCompile(`^(?:[A-Za-z]:|[A-Za-z][A-Za-z0-9+.-]*://|/|~/)`)

// Outside reports whether the picture lies outside the shop folder.
func (p *Picture) Outside() bool {
	place := p.Place()
	return elsewhere.MatchString(p.Path.Text) || place == ".." || strings.HasPrefix(place, "../")
}

// Readable reports whether the picture is by its name one that is read.
func (p *Picture) Readable() bool {
	return slices.Contains([]string{".png", ".jpg", ".jpeg"}, strings.ToLower(path.Ext(p.Path.Text)))
}

func stem(file string) string { return strings.TrimSuffix(path.Base(file), ".toml") }

// machineName is the short name of the machine the file describes.
func (f *File) machineName() string {
	if f.Machine.Short.Set() {
		return f.Machine.Short.Name()
	}
	return stem(f.Source.Path)
}

// read makes the model of one file. After a syntax fault the file is not read
// further, so that one fault is not told twice.
func read(text *source.File) (*File, []finding.Finding) {
	file := new(File)
	return file, file.read(text)
}

// read makes the model of a text in the place of what the file was.
func (f *File) read(text *source.File) []finding.Finding {
	document, faults := tree.Parse(text)
	kept := f.memo
	if f.Source != nil && kept == nil {
		kept = new(memo.Memo)
	}
	*f = File{Source: text, Document: document, index: map[key]any{}, view: &view{}, memo: kept, room: f.room, rooms: f.rooms}
	kept.Next()
	f.room.used = 0
	file := f
	if len(faults) > 0 {
		file.Broken, file.unread, file.bare = true, true, true
		return faults
	}
	d := &decoder{file: file, memo: kept, amounts: f.room.amounts[:0], refs: f.room.refs[:0]}
	if d.version(document.Root) {
		d.root(document.Root)
	} else {
		file.bare = true
	}
	file.Amounts, file.refs = d.amounts, d.refs
	f.room.amounts, f.room.refs = d.amounts, d.refs
	clear(d.amounts[len(d.amounts):cap(d.amounts)])
	clear(d.refs[len(d.refs):cap(d.refs)])
	for _, ref := range d.refs {
		if ref.Of == "area" {
			file.areas = append(file.areas, ref)
		}
	}
	file.Broken = len(d.findings) > 0
	return d.findings
}

// version reports whether the file is in a language this compiler reads.
func (d *decoder) version(root *tree.Table) bool {
	entry := root.Get("benchleaf")
	start := source.Span{}
	switch {
	case len(root.Entries) == 0:
		d.say(emptyFile, start, "the file says nothing", "Write a procedure, or begin one with: benchleaf new")
		return false
	case entry == nil:
		found := d.say(noVersion, start, "the file does not say which language version it is written in", fmt.Sprintf("Write benchleaf = %d as the first line.", schema.Version))
		found.Fixes = []finding.Fix{{Title: fmt.Sprintf("Write benchleaf = %d as the first line", schema.Version), Certain: true,
			Edits: []finding.Edit{{Place: d.place(start), Text: fmt.Sprintf("benchleaf = %d\n", schema.Version)}}}}
		return false
	case entry.Value.Kind == tree.IntegerKind && entry.Value.Int > schema.Version:
		d.say(newerVersion, entry.Value.Span, fmt.Sprintf("the file is written in language version %d, and this compiler reads up to %d", entry.Value.Int, schema.Version),
			"Get a newer benchleaf, or ask the author for the file in an older version.")
		return false
	}
	return true
}

// root reads the tables of a file. Named tables and steps are read here, not by
// the generic table, since they become things of their own.
func (d *decoder) root(root *tree.Table) {
	layout, _ := schema.Find("file")
	for _, entry := range root.Entries {
		key, known := layout.Key(entry.Key)
		if !known {
			key, known = d.unknownKey(root, entry, layout)
		}
		switch {
		case !known:
		case key.Kind == schema.Named:
			if d.want(key, entry.Value, tree.TableKind) {
				d.named(key, entry.Value.Table)
			}
		case key.Of == "step":
			d.steps(key, entry.Value)
		default:
			d.top(key, entry)
		}
	}
	d.sortSteps()
	if len(d.file.Steps) > 0 && d.file.Procedure == nil {
		d.say(noProcedure, d.file.Steps[0].Header.Span, "the file has steps and no [procedure]", "Write a [procedure] table with title, machine, revision, date and author above the steps.")
	}
	if p := d.file.Procedure; p != nil && len(d.file.Steps) == 0 {
		d.say(noVerb, p.Header.Span, "the procedure has no steps", "Write the first [[step]].")
	}
}

func (d *decoder) top(key schema.Key, entry *tree.Entry) {
	switch key.Name {
	case "benchleaf":
		d.whole(key, entry.Value)
	case "use":
		d.file.Uses = d.list(key, entry.Value)
	case "allow":
		d.file.Allow = subs(d, key, entry.Value, blank[Allow])
	case "shop":
		d.file.Shop = sub(d, key, entry.Value, blank[Shop])
	case "machine":
		d.file.Machine = sub(d, key, entry.Value, blank[Machine])
	case "procedure":
		d.file.Procedure = sub(d, key, entry.Value, blank[Procedure])
	case "second-reading":
		d.secondReading(key, entry.Value)
	}
}

func (d *decoder) steps(key schema.Key, value *tree.Value) {
	d.file.room.reserve(len(value.Items))
	steps := subs(d, key, value, d.file.room.next)
	for _, step := range steps {
		step.Section = key.Name
		switch {
		case len(step.Verbs) > 1:
			d.say(twoVerbs, step.Verbs[1].At.Span, fmt.Sprintf("the step has two verbs, %q and %q", step.Verbs[0].Text, step.Verbs[1].Text),
				fmt.Sprintf("Make a step of its own for %q.", step.Verbs[1].Text))
		case len(step.Verbs) == 0 && !step.Say.Set():
			d.say(noVerb, step.Header.Span, "the step says nothing to do", "Write a verb and its object, or the whole step in words with say.")
		}
		d.checkOverrides("step", step.Variant, func() any { return new(Step) })
	}
	d.file.Steps = append(d.file.Steps, steps...)
}

// sortSteps brings the sections into the order of the job, whatever their order in the file.
func (d *decoder) sortSteps() {
	var sorted []*Step
	for _, section := range []string{"prepare", "step", "close"} {
		for _, step := range d.file.Steps {
			if step.Section == section {
				sorted = append(sorted, step)
			}
		}
	}
	d.file.Steps = sorted
}

func (d *decoder) named(key schema.Key, table *tree.Table) {
	for _, entry := range table.Entries {
		if !namePattern.MatchString(entry.Key) {
			d.say(badName, entry.KeySpan, fmt.Sprintf("%q is not a short name", entry.Key), "Write it in lower case letters and figures, words joined by hyphens.")
			continue
		}
		value := entry.Value
		if value.Kind == tree.TablesKind { // read all the same, so that its names are known
			header := d.place(value.Span).Text()
			found := d.say(wrongKind, value.Span, fmt.Sprintf("%s is written as one of several, and there is one of each name", header),
				fmt.Sprintf("Write [%s.%s], with one pair of brackets.", key.Name, entry.Key))
			if inner, ok := strings.CutPrefix(header, "[["); ok && strings.HasSuffix(inner, "]]") && len(value.Items) == 1 {
				found.Fixes = []finding.Fix{{Title: "Write one pair of brackets", Certain: true, Edits: []finding.Edit{{Place: d.place(value.Span), Text: "[" + strings.TrimSuffix(inner, "]]") + "]"}}}}
			}
			value = value.Items[0]
		}
		if !d.want(schema.Key{Name: entry.Key, Example: "{ … }"}, value, tree.TableKind) {
			continue
		}
		inner := value.Table
		thing := d.thing(entry.Key, entry.KeySpan, inner)
		made, overrides, blank := newThing(key.Of, thing)
		d.table(inner, key.Of, made, false)
		if overrides != nil {
			d.checkOverrides(key.Of, *overrides, blank)
		}
		d.keep(key.Of, thing, made)
	}
}

// newThing makes an empty thing of a kind, and tells where its overrides are
// and how another empty one is made.
func newThing(kind string, thing Thing) (value any, overrides *[]Override, blank func() any) {
	switch kind {
	case "part", "cover":
		part := &Part{Thing: thing, Cover: kind == "cover"}
		return part, &part.Variant, func() any { return new(Part) }
	case "cavity":
		cavity := &Cavity{Thing: thing}
		return cavity, &cavity.Variant, func() any { return new(Cavity) }
	case "energy":
		energy := &Energy{Thing: thing}
		return energy, &energy.Variant, func() any { return new(Energy) }
	case "point":
		point := &Lubricated{Thing: thing}
		return point, &point.Variant, func() any { return new(Lubricated) }
	case "limit":
		limit := &Limit{Thing: thing}
		return limit, &limit.Variant, func() any { return new(Limit) }
	case "pose":
		return &Pose{Thing: thing}, nil, nil
	case "area":
		return &Area{Thing: thing}, nil, nil
	case "tool":
		return &Tool{Thing: thing}, nil, nil
	case "fluid":
		return &Fluid{Thing: thing}, nil, nil
	case "supply":
		return &Supply{Thing: thing}, nil, nil
	case "spare":
		return &Spare{Thing: thing}, nil, nil
	case "unit":
		return &Unit{Thing: thing}, nil, nil
	case "store":
		return &Store{Thing: thing}, nil, nil
	case "stock":
		return &Stock{Thing: thing}, nil, nil
	default:
		return &Caution{Thing: thing}, nil, nil
	}
}

func (d *decoder) checkOverrides(kind string, overrides []Override, blank func() any) {
	for _, override := range overrides {
		d.table(override.Table, kind, blank(), true)
	}
}

// storedKinds are the kinds of thing that lie on a shelf.
const storedKinds = "fluid supply spare"

// twins are kinds that share one set of names, because verbs take either.
var twins = map[string]string{"part": "cover", "cover": "part", "fluid": "supply", "supply": "fluid"}

func (d *decoder) keep(kind string, thing Thing, value any) {
	if twin := twins[kind]; twin != "" && d.file.index[key{twin, thing.Name}] != nil {
		found := d.say(nameTwice, thing.At.Span, fmt.Sprintf("%q is a %s and a %s", thing.Name, twin, kind), "Give one of the two another name.")
		for _, other := range d.file.things {
			if other.kind == twin && other.name == thing.Name {
				found.Related = []finding.Related{{Place: other.at, Text: fmt.Sprintf("the %s of that name", twin)}}
			}
		}
	}
	if caution, ok := value.(*Caution); ok && !caution.Against.Given {
		if _, known := trade.FindHazard(thing.Name); known { // its name says what it is against
			caution.Against = List{Given: true, Items: []Text{{Text: thing.Name, Value: &tree.Value{Kind: tree.StringKind, Text: thing.Name}, At: thing.At}}}
		}
	}
	if kind == "store" { // it has the name of what it holds
		d.refs = append(d.refs, Ref{Name: Text{Text: thing.Name, Value: &tree.Value{Kind: tree.StringKind, Text: thing.Name}, At: thing.At}, Of: storedKinds})
	}
	d.file.index[key{kind, thing.Name}] = value
	d.file.things = append(d.file.things, named{kind: kind, name: thing.Name, at: thing.At})
	if !slices.Contains(machineKinds, kind) {
		d.file.common = append(d.file.common, d.file.things[len(d.file.things)-1])
	}
}
