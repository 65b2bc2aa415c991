package model

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"sync"

	"benchleaf/compiler/finding"

	"benchleaf/compiler/internal/memo"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/trade"
	"benchleaf/compiler/internal/tree"
)

// Job is one procedure for one version of its machine, with every name looked
// up and what differs for the version put in place. It is what rules check and
// pages print.
type Job struct {
	File      *File
	Procedure *Procedure
	Shop      *Shop    // nil where no shop file is above
	Machine   *Machine // nil where the machine is only named
	Variant   string   // empty where the machine has no versions
	Steps     []*Step
	Faults    []finding.Finding // what this version of the machine has not

	Memo   *memo.Memo // what was worked out of its texts; nil where nothing is kept
	set    *Set
	parts  map[string]*Part
	cavity map[string]*Cavity
	energy map[string]*Energy
	point  map[string]*Lubricated
	limit  map[string]*Limit
	once   onces
}

// onces are lists of a job that are asked for again and again, made when they first are.
type onces struct {
	tools, listed sync.Once
	all, list     []*Tool
	worked        sync.Once
	parts         []*Part
}

// Jobs makes the jobs of a file: one for each version its procedure serves.
// A file with a fault of the language, or one that takes names from such a
// file, has none, so that one fault is not told twice.
func (s *Set) Jobs(file *File) []*Job {
	if !file.whole() {
		return nil
	}
	return s.jobs(file, anyRoom)
}

// whole reports whether a file has a procedure, and no fault of the language stands in it or in
// one that it takes names from.
func (f *File) whole() bool {
	return f.Procedure != nil && !slices.ContainsFunc(f.layers, func(layer *File) bool { return layer.Broken })
}

func anyRoom() *room { return new(room) }

// Drafts makes the jobs of a file that is still being written, as Jobs does: also where a
// fault of the language stands in it or in one that it takes names from, as long as its own
// text could be read. Names that are nowhere are left as words, and keys that are missing empty.
func (s *Set) Drafts(file *File) []*Job {
	if file.Procedure == nil || file.unread {
		return nil
	}
	return s.jobs(file, anyRoom)
}

func (s *Set) jobs(file *File, next func() *room) []*Job {
	variants := []string{""}
	var machine *Machine
	if owner := file.machine; owner != nil {
		machine = owner.Machine
		if machine.Variants.Given && len(machine.Variants.Items) > 0 {
			variants = machine.Variants.Names()
		}
	}
	var jobs []*Job
	for _, variant := range variants {
		if variant == "" || len(file.Procedure.For.Items) == 0 || file.Procedure.For.Has(variant) {
			jobs = append(jobs, s.job(file, machine, variant, next()))
		}
	}
	return jobs
}

// Versions makes a job for each version of the machine that a file describes, in which its things
// are looked up and of which nothing is done; none where it describes no machine.
func (s *Set) Versions(file *File) []*Job {
	if file.Machine == nil {
		return nil
	}
	variants := []string{""}
	if len(file.Machine.Variants.Items) > 0 {
		variants = file.Machine.Variants.Names()
	}
	var out []*Job
	for _, variant := range variants {
		job := s.job(file, file.Machine, variant, anyRoom())
		job.Steps, job.Faults = nil, nil
		out = append(out, job)
	}
	return out
}

func (s *Set) job(file *File, machine *Machine, variant string, in *room) *Job {
	job := &Job{File: file, Procedure: file.Procedure, Machine: machine, Variant: variant, Memo: in.memo, set: s,
		parts: map[string]*Part{}, cavity: map[string]*Cavity{}, energy: map[string]*Energy{}, point: map[string]*Lubricated{}, limit: map[string]*Limit{}}
	for _, layer := range file.layers {
		if layer.Shop != nil && job.Shop == nil {
			job.Shop = layer.Shop
		}
	}
	objects := 0
	for _, step := range file.Steps {
		objects += len(step.Objects)
	}
	job.Steps = make([]*Step, 0, len(file.Steps))
	in.reserve(len(file.Steps))
	looked := in.things(objects) // of all steps
	for _, step := range file.Steps {
		if !serves(step.For, variant) {
			continue
		}
		step = varied(step, step.Variant, variant, "step")
		copied := in.copy(step)
		copied.Number = len(job.Steps) + 1
		if n := len(step.Objects); n <= len(looked) {
			copied.Objects, looked = looked[:n:n], looked[n:]
		} else { // a version may name more
			copied.Objects = make([]Object, n)
		}
		for i, object := range step.Objects {
			job.resolve(&copied.Objects[i], object.Text, step)
		}
		job.Steps = append(job.Steps, copied)
	}
	return job
}

func serves(list List, variant string) bool {
	return variant == "" || len(list.Items) == 0 || list.Has(variant)
}

// varied is a thing with what differs for a version put over it.
func varied[T any](thing *T, overrides []Override, variant, kind string) *T {
	for _, override := range overrides {
		if override.Variant.Name() == variant {
			copied := *thing
			d := &decoder{file: ownerOf(&copied)}
			d.table(override.Table, kind, &copied, true)
			return &copied
		}
	}
	return thing
}

func ownerOf(thing any) *File {
	switch thing := thing.(type) {
	case *Step:
		return thing.File
	case *Part:
		return thing.File
	case *Cavity:
		return thing.File
	case *Energy:
		return thing.File
	case *Lubricated:
		return thing.File
	case *Limit:
		return thing.File
	}
	return nil
}

// look finds a thing of a machine for the job's version, and keeps what it found.
func look[T any](job *Job, kept map[string]*T, kind, name string, parts func(*T) (List, []Override)) *T {
	if found, ok := kept[name]; ok {
		return found
	}
	var out *T
	if thing, ok := job.File.find(kind, name).(*T); ok {
		list, overrides := parts(thing)
		if serves(list, job.Variant) {
			out = varied(thing, overrides, job.Variant, kind)
		}
	}
	kept[name] = out
	return out
}

// Part finds a part or a cover; nil where the version has none of that name.
func (j *Job) Part(name string) *Part {
	fields := func(p *Part) (List, []Override) { return p.For, p.Variant }
	if part := look(j, j.parts, "part", name, fields); part != nil {
		return part
	}
	delete(j.parts, name)
	return look(j, j.parts, "cover", name, fields)
}

// Cavity finds a cavity; nil where the version has none of that name.
func (j *Job) Cavity(name string) *Cavity {
	return look(j, j.cavity, "cavity", name, func(c *Cavity) (List, []Override) { return c.For, c.Variant })
}

// Energy finds a source of energy; nil where the version has none of that name.
func (j *Job) Energy(name string) *Energy {
	return look(j, j.energy, "energy", name, func(e *Energy) (List, []Override) { return e.For, e.Variant })
}

// Point finds a lubrication point; nil where the version has none of that name.
func (j *Job) Point(name string) *Lubricated {
	return look(j, j.point, "point", name, func(p *Lubricated) (List, []Override) { return p.For, p.Variant })
}

// Limit finds a limit; nil where the version has none of that name.
func (j *Job) Limit(name string) *Limit {
	return look(j, j.limit, "limit", name, func(l *Limit) (List, []Override) { return l.For, l.Variant })
}

func library[T any](j *Job, kind, name string) *T {
	thing, _ := j.File.find(kind, name).(*T)
	return thing
}

// Stocks lists the stocks that the shop describes itself, in the order of their names.
func (j *Job) Stocks() []*Stock {
	var out []*Stock
	for _, name := range j.File.names("stock") {
		if stock, ok := j.File.find("stock", name).(*Stock); ok {
			out = append(out, stock)
		}
	}
	return out
}

// Tool finds a tool; nil where there is none of that name.
func (j *Job) Tool(name string) *Tool { return library[Tool](j, "tool", name) }

// Fluid finds a fluid; nil where there is none of that name.
func (j *Job) Fluid(name string) *Fluid { return library[Fluid](j, "fluid", name) }

// Supply finds a consumable; nil where there is none of that name.
func (j *Job) Supply(name string) *Supply { return library[Supply](j, "supply", name) }

// Spare finds a part that is renewed; nil where there is none of that name.
func (j *Job) Spare(name string) *Spare { return library[Spare](j, "spare", name) }

// Pose finds a position; nil where there is none of that name.
func (j *Job) Pose(name string) *Pose { return library[Pose](j, "pose", name) }

// Tools lists every tool the job's file can see, by name. The list is not to be changed.
func (j *Job) Tools() []*Tool {
	j.once.tools.Do(func() {
		for _, name := range j.File.names("tool") {
			j.once.all = append(j.once.all, j.Tool(name))
		}
	})
	return slices.Clip(j.once.all)
}

// Listed are the tools on the list of the procedure, in its order. The list is not to be changed.
func (j *Job) Listed() []*Tool {
	j.once.listed.Do(func() {
		for _, name := range j.Procedure.Tools.Names() {
			if tool := j.Tool(name); tool != nil {
				j.once.list = append(j.once.list, tool)
			}
		}
	})
	return slices.Clip(j.once.list)
}

// Covers lists the covers and guards of the machine, by name.
func (j *Job) Covers() []*Part { return j.ofKind("cover") }

// Parts lists the parts of the machine that are no covers, by name.
func (j *Job) Parts() []*Part { return j.ofKind("part") }

func (j *Job) ofKind(kind string) []*Part {
	var out []*Part
	for _, name := range j.File.names(kind) {
		if part := j.Part(name); part != nil {
			out = append(out, part)
		}
	}
	return out
}

// Limits lists what is measured on the machine, by name.
func (j *Job) Limits() []*Limit {
	var out []*Limit
	for _, name := range j.File.names("limit") {
		if limit := j.Limit(name); limit != nil {
			out = append(out, limit)
		}
	}
	return out
}

// Freed lists the covers that come off with a part: itself, or those it holds; none for nil.
func (j *Job) Freed(part *Part) []*Part {
	switch {
	case part == nil:
		return nil
	case part.Cover:
		return []*Part{part}
	}
	var out []*Part
	for _, cover := range j.Covers() {
		if cover.HeldBy.Has(part.Name) {
			out = append(out, cover)
		}
	}
	return out
}

// Cavities lists the places that hold a fluid, by name.
func (j *Job) Cavities() []*Cavity {
	var out []*Cavity
	for _, name := range j.File.names("cavity") {
		if cavity := j.Cavity(name); cavity != nil {
			out = append(out, cavity)
		}
	}
	return out
}

// Emptied is the cavity that runs out into a container when a step takes its drain out,
// with no step after it that drains it; nil where none does.
func (j *Job) Emptied(step *Step) *Cavity {
	if !step.Into.Set() || step.Verb.Key != "open" && step.Verb.Key != "remove" && step.Verb.Key != "loosen" && step.Verb.Key != "disconnect" {
		return nil
	}
	for _, cavity := range j.Cavities() {
		drain := cavity.Drain.Set() && slices.ContainsFunc(step.Objects, func(o Object) bool { return o.Part != nil && o.Part == j.Part(cavity.Drain.Name()) })
		drained := slices.ContainsFunc(j.Steps[step.Number:], func(later *Step) bool {
			return later.Verb.Key == "drain" && slices.ContainsFunc(later.Objects, func(o Object) bool { return o.Cavity == cavity })
		})
		if drain && !drained {
			return cavity
		}
	}
	return nil
}

// Points lists the lubrication points of the machine, in the order of its file.
func (j *Job) Points() []*Lubricated {
	var out []*Lubricated
	for _, name := range j.File.names("point") {
		if point := j.Point(name); point != nil {
			out = append(out, point)
		}
	}
	slices.SortStableFunc(out, func(a, b *Lubricated) int { return cmp.Compare(a.Header.Span.Start, b.Header.Span.Start) })
	return out
}

// Energies lists the sources of energy of the machine, by name.
func (j *Job) Energies() []*Energy {
	var out []*Energy
	for _, name := range j.File.names("energy") {
		if energy := j.Energy(name); energy != nil {
			out = append(out, energy)
		}
	}
	return out
}

// English is the language in which the author's words are read.
const English = "en"

// Language is the language the shop works in.
func (j *Job) Language() string {
	if j.Shop == nil || !j.Shop.Language.Set() {
		return English
	}
	return j.Shop.Language.Text
}

// Language is the language of the shop that the file is of.
func (f *File) Language() string {
	for _, layer := range f.layers {
		if layer.Shop != nil && layer.Shop.Language.Set() {
			return layer.Shop.Language.Text
		}
	}
	return English
}

// MachineTitle is the machine's name as it prints.
func (j *Job) MachineTitle() string {
	if j.Machine != nil {
		return j.Machine.Title.Text
	}
	if words := j.Procedure.Machine.Text; strings.Contains(words, " ") {
		return words // not a short name
	}
	return Spoken(j.Procedure.Machine.Text)
}

// MachineName is the short name of the machine that a file describes; empty where it describes none.
func (f *File) MachineName() string {
	if f.Machine == nil {
		return ""
	}
	return f.machineName()
}

// MachineName is the machine's short name; empty where the machine is only named in words.
func (j *Job) MachineName() string {
	if owner := j.File.machine; owner != nil && owner.Machine != nil {
		return owner.machineName()
	}
	return ""
}

// Caution finds a safety message by its name: the shop's, or the built-in one of that hazard.
func (j *Job) Caution(name string) *Caution {
	if caution := library[Caution](j, "caution", name); caution != nil {
		return caution
	}
	return builtIns()[name]
}

// builtIns are the built-in messages by their names. They are not to be changed.
var builtIns = sync.OnceValue(func() map[string]*Caution {
	out := map[string]*Caution{}
	for _, hazard := range trade.Hazards() {
		out[hazard.Key] = builtIn(hazard)
	}
	return out
})

// BuiltIn reports whether a message is one of the compiler's own, and not the shop's.
func (c *Caution) BuiltIn() bool { return c.File == nil }

// Raised is a built-in message at a graver level: what can happen, will.
func (c *Caution) Raised(level trade.Signal) *Caution {
	out := *c
	out.Signal.Text = level.String()
	if level == trade.Danger {
		out.Consequence.Text = strings.Replace(c.Consequence.Text, "can ", "will ", 1)
	}
	return &out
}

// Wearing is a built-in message that asks to wear no more than some of what it names.
func (c *Caution) Wearing(some map[string]bool) *Caution {
	out := *c
	out.Wear.Items = slices.DeleteFunc(slices.Clone(c.Wear.Items), func(item Text) bool { return !some[item.Text] })
	return &out
}

func builtIn(hazard trade.Hazard) *Caution {
	text := func(words string) Text {
		return Text{Text: words, Value: &tree.Value{Kind: tree.StringKind, Text: words}}
	}
	list := func(words []string) List {
		out := List{Given: true}
		for _, word := range words {
			out.Items = append(out.Items, text(word))
		}
		return out
	}
	return &Caution{Thing: Thing{Name: hazard.Key}, Signal: text(hazard.Level.String()), Against: list([]string{hazard.Key}),
		Hazard: text(hazard.Hazard), Consequence: text(hazard.Sentence()), Avoid: text(hazard.Avoid), Wear: list(hazard.Wear), Signs: list(hazard.Signs)}
}

// resolve looks an object up, into its place, among the kinds its verb takes, in their order.
func (j *Job) resolve(out *Object, text Text, step *Step) {
	name := text.Name()
	for kind := range strings.FieldsSeq(step.Verb.Object) {
		*out = Object{Text: text, Kind: kind}
		if lookup := lookups[kind]; lookup != nil && lookup(j, name, out) {
			return
		}
	}
	for kind := range strings.FieldsSeq(step.Verb.Object) {
		if j.File.find(kind, text.Name()) != nil {
			j.Faults = append(j.Faults, finding.Finding{
				Rule: notInVariant.ID, Severity: notInVariant.Severity, Place: text.At, Why: notInVariant.Why, Variant: j.Variant,
				Summary: fmt.Sprintf("the version %q has no %q", j.Variant, text.Text),
				Help:    fmt.Sprintf("Write for = [...] on the step, without %q, or describe the part for that version too.", j.Variant),
			})
			break
		}
	}
	*out = Object{Text: text, Kind: "words"}
}

// lookups find an object of each kind and put it in its field.
var lookups = map[string]func(j *Job, name string, out *Object) bool{
	"part":   func(j *Job, name string, out *Object) bool { out.Part = j.Part(name); return out.Part != nil },
	"cover":  func(j *Job, name string, out *Object) bool { out.Part = j.Part(name); return out.Part != nil },
	"cavity": func(j *Job, name string, out *Object) bool { out.Cavity = j.Cavity(name); return out.Cavity != nil },
	"energy": func(j *Job, name string, out *Object) bool { out.Energy = j.Energy(name); return out.Energy != nil },
	"point":  func(j *Job, name string, out *Object) bool { out.Point = j.Point(name); return out.Point != nil },
	"limit":  func(j *Job, name string, out *Object) bool { out.Limit = j.Limit(name); return out.Limit != nil },
	"spare":  func(j *Job, name string, out *Object) bool { out.Spare = j.Spare(name); return out.Spare != nil },
	"fluid":  func(j *Job, name string, out *Object) bool { out.Fluid = j.Fluid(name); return out.Fluid != nil },
	"supply": func(j *Job, name string, out *Object) bool { out.Supply = j.Supply(name); return out.Supply != nil },
	"procedure": func(j *Job, name string, out *Object) bool {
		if other := j.set.Procedure(name); other != nil {
			out.Other = other.Procedure
		}
		return out.Other != nil
	},
}

// Worked lists the parts and covers that steps name as their objects, each once, in
// the order of the steps.
func (j *Job) Worked() []*Part {
	j.once.worked.Do(func() {
		seen := map[*Part]bool{}
		for _, step := range j.Steps {
			for _, object := range step.Objects {
				if object.Part != nil && !seen[object.Part] {
					seen[object.Part] = true
					j.once.parts = append(j.once.parts, object.Part)
				}
			}
		}
	})
	return slices.Clip(j.once.parts)
}

// Things lists how the things of some kinds that the job's file can name are called, in
// the order of their names.
func (j *Job) Things(kinds ...string) []string {
	var out []string
	for _, kind := range kinds {
		for _, name := range j.File.names(kind) {
			if thing, ok := j.File.find(kind, name).(interface{ Words() string }); ok {
				out = append(out, thing.Words())
			}
		}
	}
	return out
}

// Units lists the machines that stand in the shop, as the files describe them, in the order
// of the files.
func (s *Set) Units() []*Unit {
	var out []*Unit
	for _, file := range s.Files {
		out = append(out, file.Units()...)
	}
	return out
}

// MeterUnit is the symbol of the unit that the meter of a machine counts in: h, km, cycles;
// empty where it has none. A machine that is only named in words has a meter of hours.
func (m *Machine) MeterUnit() string {
	if m == nil {
		return "h"
	}
	return map[string]string{"": "h", "hours": "h", "cycles": "cycles", "distance": "km"}[m.Meter.Text]
}

// Counted reports whether a meter in some unit, or the calendar, counts an amount.
func Counted(amount Amount, symbol string) bool {
	unit, known := quantity.FindUnit(symbol)
	return amount.Dimension == quantity.Calendar || symbol != "" && known && amount.Dimension == unit.Dimension
}

// Units lists the machines that a file says stand in the shop, in its order.
func (f *File) Units() []*Unit {
	return described[*Unit](f)
}

// Described is the machine of a name that the file can see; nil where there is none.
func (f *File) Described(name string) *Machine {
	for _, layer := range f.layers {
		if layer.Machine != nil && layer.machineName() == name {
			return layer.Machine
		}
	}
	return nil
}

// OffCard are the amounts of a file that stand on no card: what is on the shelves, and how much
// the machines of the shop run.
func (f *File) OffCard() []Amount {
	var out []Amount
	for _, kept := range f.Stores() {
		out = append(append(out, kept.OnHand...), kept.Keep, kept.Lead)
		for _, price := range kept.Prices {
			out = append(out, price.Pack)
		}
	}
	for _, unit := range f.Units() {
		out = append(out, unit.MeterThen)
		for _, use := range unit.Use {
			out = append(out, use.Week)
		}
	}
	return slices.DeleteFunc(out, func(amount Amount) bool { return !amount.Set() })
}

// Stocks lists the stocks that a file describes, in its order.
func (f *File) Stocks() []*Stock {
	return described[*Stock](f)
}

// Parts lists the parts and covers that a file describes, in its order.
func (f *File) Parts() []*Part {
	return described[*Part](f)
}

// described lists the things of a type that a file describes, in its order.
func described[T any](f *File) []T {
	var out []T
	for _, thing := range f.things {
		if one, ok := f.index[key{thing.kind, thing.name}].(T); ok {
			out = append(out, one)
		}
	}
	return out
}

// Named is something that a file describes by name.
type Named struct {
	Kind, Name string
	Value      any // a pointer: *Part of a part and a cover, *Tool of a tool and so on
}

// Named lists what a file describes by name, in its order.
func (f *File) Named() []Named {
	var out []Named
	for _, thing := range f.things {
		out = append(out, Named{thing.kind, thing.name, f.index[key{thing.kind, thing.name}]})
	}
	return out
}

// Resolved is something of that kind and name with what differs for the job's version put in
// place; nil where the version has none.
func (j *Job) Resolved(kind, name string) any {
	switch kind {
	case "part", "cover":
		if one := j.Part(name); one != nil {
			return one
		}
	case "cavity":
		if one := j.Cavity(name); one != nil {
			return one
		}
	case "energy":
		if one := j.Energy(name); one != nil {
			return one
		}
	case "point":
		if one := j.Point(name); one != nil {
			return one
		}
	case "limit":
		if one := j.Limit(name); one != nil {
			return one
		}
	default:
		return j.File.find(kind, name)
	}
	return nil
}

// MachineKinds are the kinds of thing that belong to a machine.
func MachineKinds() []string { return machineKinds }

// Stores lists what a file says is on the shelf, in its order.
func (f *File) Stores() []*Store {
	return described[*Store](f)
}

// Stores lists what the files say is on the shelf, in the order of the files.
func (s *Set) Stores() []*Store {
	var out []*Store
	for _, file := range s.Files {
		out = append(out, file.Stores()...)
	}
	return out
}

// Stored is what a name in the store means to a file: a *Fluid, a *Supply or a *Spare; nil for none.
func (f *File) Stored(name string) any {
	for _, kind := range strings.Fields(storedKinds) {
		if thing := f.find(kind, name); thing != nil {
			return thing
		}
	}
	return nil
}

// Shelved are the names of all fluids, supplies and spares that the files describe, sorted.
func (s *Set) Shelved() []string {
	var out []string
	for _, file := range s.Files {
		for _, thing := range file.things {
			if slices.Contains(strings.Fields(storedKinds), thing.kind) {
				out = append(out, thing.name)
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// Reading is a value that a job asks for: its name as the record strip prints it, empty
// where several things name it together, its limit, and what it is when new.
type Reading struct {
	Name  string
	Limit Amount
	New   Amount // what it is when new, where somebody says
}

// Readings lists the values that the steps of a job and its record ask for, in their order.
func (j *Job) Readings() []Reading {
	var out []Reading
	for _, step := range j.Steps {
		one, asked := Reading{Limit: step.Limit}, step.Reading.Set()
		if step.Verb.Key == "measure" || step.Verb.Key == "record" {
			one.Limit, asked = step.HeldAgainst(), true
			if len(step.Objects) == 1 {
				one.Name = step.Objects[0].Words()
				if limit := step.Objects[0].Limit; limit != nil {
					one.New = limit.New
				}
			}
		}
		if step.Reading.Set() {
			one.Name = step.Reading.Text
		}
		if asked {
			out = append(out, one)
		}
	}
	for _, item := range j.Procedure.Record.Items {
		out = append(out, Reading{Name: item.Text})
	}
	return out
}

// Beside lists the jobs of another procedure, one for each version of its machine; none
// where it is not there or has a fault of the language.
func (j *Job) Beside(procedure string) []*Job {
	if file := j.set.Procedure(procedure); file != nil {
		return j.set.Jobs(file)
	}
	return nil
}
