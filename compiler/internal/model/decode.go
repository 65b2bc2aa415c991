package model

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/memo"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// decoder reads tables of the tree into things by the schema, and keeps what it
// found wrong, every amount it read and every name that must be somewhere.
type decoder struct {
	file     *File
	findings []finding.Finding
	amounts  []Amount
	refs     []Ref
	second   *SecondReading // while one is read
	memo     *memo.Memo     // of the file; nil where nothing is kept
}

// Ref is a name that must be the name of a thing of one of some kinds.
type Ref struct {
	Name Text
	Of   string
}

var namePattern = pattern.MustCompile(schema.NamePattern)

// shapes tells for each type which field holds which key; made once, when the program starts.
var shapes = shapesOf(Shop{}, Machine{}, Procedure{}, Step{}, Adapter{}, Allow{}, Picture{}, Part{}, Cavity{}, Energy{},
	Pose{}, Area{}, Lubricated{}, Limit{}, Tool{}, Fluid{}, Supply{}, Spare{}, Caution{}, Stock{}, Unit{}, Use{}, Sooner{}, Store{}, Price{}, SecondReading{})

func shapesOf(values ...any) map[reflect.Type]map[string]int {
	out := map[reflect.Type]map[string]int{}
	for _, value := range values {
		kind := reflect.TypeOf(value)
		fields := map[string]int{}
		for i := range kind.NumField() {
			if key := kind.Field(i).Tag.Get("key"); key != "" {
				fields[key] = i
			}
		}
		out[kind] = fields
	}
	return out
}

func (d *decoder) place(span source.Span) source.Place {
	return source.Place{File: d.file.Source, Span: span}
}

// thing makes the common part of a table's model.
func (d *decoder) thing(name string, at source.Span, table *tree.Table) Thing {
	return Thing{Name: name, At: d.place(at), Header: d.place(table.Header), Table: table, File: d.file}
}

// table reads a table into a struct by the schema table of that name.
// A partial table (an override) may leave out what is always needed.
func (d *decoder) table(table *tree.Table, name string, into any, partial bool) {
	layout, _ := schema.Find(name)
	value := reflect.ValueOf(into).Elem()
	fields, known := shapes[value.Type()]
	if !known {
		panic(fmt.Sprintf("model: the keys of %s are not read", name))
	}
	var room [24]string
	meant := room[:0]
	for _, entry := range table.Entries {
		key, known := layout.Key(entry.Key)
		if !known {
			key, known = d.unknownKey(table, entry, layout)
		}
		if !known {
			continue
		}
		meant = append(meant, key.Name)
		if key.Of == "volume mass" && greasy(table) {
			key.Of = "mass volume"
		}
		field, ok := fields[key.Name]
		if !ok {
			if step, isStep := into.(*Step); isStep {
				d.verb(step, entry, key)
			}
			continue
		}
		d.value(key, entry.Value, value.Field(field))
	}
	if partial {
		return
	}
	for _, key := range layout.Keys {
		if key.Required && !slices.Contains(meant, key.Name) {
			d.missingKey(table, layout, key)
		}
	}
}

// greasy reports whether a table describes a grease, which is packed and given by mass.
func greasy(table *tree.Table) bool {
	return slices.ContainsFunc(table.Entries, func(entry *tree.Entry) bool {
		return entry.Key == "kind" && entry.Value.Kind == tree.StringKind && entry.Value.Text == "grease"
	})
}

func (d *decoder) verb(step *Step, entry *tree.Entry, key schema.Key) {
	step.Verbs = append(step.Verbs, Text{Text: key.Name, Value: entry.Value, At: d.place(entry.KeySpan)})
	verb, _ := schema.FindVerb(key.Name)
	if len(step.Verbs) > 1 {
		return
	}
	step.Verb = verb
	if key.Kind == schema.Amount {
		step.Wait = d.amount(key, entry.Value)
		return
	}
	for _, object := range d.list(key, entry.Value).Items {
		step.Objects = append(step.Objects, Object{Text: object})
		d.refs = append(d.refs, Ref{Name: object, Of: key.Of})
	}
}

func (d *decoder) value(key schema.Key, value *tree.Value, field reflect.Value) {
	switch out := field.Addr().Interface().(type) {
	case *Text:
		*out = d.text(key, value)
	case *List:
		*out = d.list(key, value)
	case *Amount:
		*out = d.amount(key, value)
	case *[]Amount:
		*out = d.amountList(key, value)
	case *Whole:
		*out = d.whole(key, value)
	case *[]Whole:
		*out = d.wholes(key, value)
	case *Flag:
		if d.want(key, value, tree.BooleanKind) {
			*out = Flag{On: value.Bool, At: d.place(value.Span)}
		}
	case *[]Spot:
		*out = d.spots(key, value)
	case *[][]Spot:
		*out = d.lines(key, value)
	case *[]Round:
		*out = d.rounds(key, value)
	case *[]Used:
		*out = d.used(key, value)
	case *[]Override:
		*out = d.overrides(key, value)
	case *[]*Caution:
		*out = subs(d, key, value, blank[Caution])
	case *[]*Allow:
		*out = subs(d, key, value, blank[Allow])
	case *[]*Picture:
		*out = subs(d, key, value, blank[Picture])
	case *[]*Use:
		*out = subs(d, key, value, blank[Use])
	case *[]*Price:
		*out = subs(d, key, value, blank[Price])
	case *[]*Sooner:
		*out = subs(d, key, value, blank[Sooner])
	case **Picture:
		*out = sub(d, key, value, blank[Picture])
	case **Adapter:
		*out = sub(d, key, value, blank[Adapter])
	default:
		panic(fmt.Sprintf("model: no reader for key %s", key.Name))
	}
}

// sub reads one inner table; setThing is found by reflection because every model has Thing first.
// blank is an empty thing.
func blank[T any]() *T { return new(T) }

func sub[T any](d *decoder, key schema.Key, value *tree.Value, blank func() *T) *T {
	if !d.want(key, value, tree.TableKind) {
		return nil
	}
	out := blank()
	reflect.ValueOf(out).Elem().Field(0).Set(reflect.ValueOf(d.thing("", value.Span, value.Table)))
	d.table(value.Table, key.Of, out, false)
	return out
}

func subs[T any](d *decoder, key schema.Key, value *tree.Value, blank func() *T) []*T {
	if value.Kind != tree.ArrayKind && value.Kind != tree.TablesKind {
		d.want(key, value, tree.TablesKind)
		return nil
	}
	var out []*T
	for _, item := range value.Items {
		if one := sub(d, key, item, blank); one != nil {
			out = append(out, one)
		}
	}
	return out
}

func (d *decoder) text(key schema.Key, value *tree.Value) Text {
	kind := tree.StringKind
	if key.Kind == schema.Day {
		kind = tree.LocalDateKind
	}
	if d.blank(key, value) || !d.want(key, value, kind) {
		return Text{}
	}
	out := Text{Text: value.Text, Value: value, At: d.place(value.Span)}
	switch key.Kind {
	case schema.Choice, schema.Choices:
		if !d.choice(key, out) {
			return Text{}
		}
	case schema.Name, schema.Names:
		d.refs = append(d.refs, Ref{Name: out, Of: key.Of})
	}
	return out
}

// blank reports whether a value is text that was never filled in, and says so.
func (d *decoder) blank(key schema.Key, value *tree.Value) bool {
	if value.Kind != tree.StringKind || strings.TrimSpace(value.Text) != "" {
		return false
	}
	if d.second != nil {
		d.second.blanks++
		return true
	}
	d.emptyText(key, Text{Text: value.Text, Value: value, At: d.place(value.Span)})
	return true
}

func (d *decoder) list(key schema.Key, value *tree.Value) List {
	out := List{Given: true, At: d.place(value.Span)}
	items := []*tree.Value{value}
	if value.Kind == tree.ArrayKind {
		items = value.Items
	} else if key.Kind == schema.Texts || key.Kind == schema.Choices {
		if !d.want(key, value, tree.ArrayKind) {
			return out
		}
	}
	if _, verb := schema.FindVerb(key.Name); verb {
		key.Kind = schema.Texts // a verb's names are kept with the verb
	}
	for _, item := range items {
		if text := d.text(key, item); text.Set() {
			out.Items = append(out.Items, text)
		}
	}
	return out
}

func (d *decoder) amountList(key schema.Key, value *tree.Value) []Amount {
	if value.Kind != tree.ArrayKind {
		return []Amount{d.amount(key, value)}
	}
	var out []Amount
	for _, item := range value.Items {
		out = append(out, d.amount(key, item))
	}
	return out
}

// amount reads a string as an amount of one of the dimensions the key allows.
// What is wrong with it is kept, for the rules on units to say.
func (d *decoder) amount(key schema.Key, value *tree.Value) Amount {
	out := Amount{Of: key.Of, Text: Text{Text: value.Text, Value: value, At: d.place(value.Span)}}
	switch value.Kind {
	case tree.StringKind, tree.IntegerKind, tree.FloatKind:
		if d.blank(key, value) {
			return Amount{}
		}
	default:
		d.want(key, value, tree.StringKind)
		return Amount{}
	}
	text := value.Text
	if value.Kind == tree.IntegerKind && strings.Contains(key.Of, "number") { // a bare number counts pieces
		text += " pieces"
	}
	out.Amount, out.Problems = d.readAmount(text, key.Of)
	out.OK = true
	for _, problem := range out.Problems {
		out.OK = out.OK && problem.Warning
	}
	d.amounts = append(d.amounts, out)
	return out
}

// readAmount reads an amount, or finds it as it was read before.
func (d *decoder) readAmount(text, of string) (quantity.Amount, []quantity.Problem) {
	if d.memo == nil {
		return readAmount(text, of)
	}
	out := amountsRead.Of(d.memo, of+"\n"+text)
	return out.amount, out.problems
}

type amountRead struct {
	amount   quantity.Amount
	problems []quantity.Problem
}

var amountsRead = memo.Of(func(of string) (out amountRead) {
	of, text, _ := strings.Cut(of, "\n")
	out.amount, out.problems = readAmount(text, of)
	return out
})

func readAmount(text, of string) (quantity.Amount, []quantity.Problem) {
	wants := dimensions(of)
	return quantity.Parse(text, wants[0], wants[1:]...)
}

func (d *decoder) whole(key schema.Key, value *tree.Value) Whole {
	if !d.want(key, value, tree.IntegerKind) {
		return Whole{}
	}
	if value.Int < 1 || value.Int > 1_000_000 {
		d.say(wrongKind, value.Span, fmt.Sprintf("%q is %s, and must be a whole number from 1", key.Name, value.Text), "Write the number of things, from 1.")
		return Whole{}
	}
	return Whole{N: int(value.Int), At: d.place(value.Span)}
}

func (d *decoder) wholes(key schema.Key, value *tree.Value) []Whole {
	if !d.want(key, value, tree.ArrayKind) {
		return nil
	}
	var out []Whole
	for _, item := range value.Items {
		if whole := d.whole(key, item); whole.N > 0 {
			out = append(out, whole)
		}
	}
	return out
}

func (d *decoder) spots(key schema.Key, value *tree.Value) []Spot {
	if !d.want(key, value, tree.ArrayKind) {
		return nil
	}
	points := []*tree.Value{value}
	if key.Kind != schema.Point {
		points = value.Items
	}
	var out []Spot
	for _, point := range points {
		if n := d.numbers(point, 2, "a point", "Write two numbers, [x, y]."); n != nil {
			out = append(out, Spot{n[0], n[1]})
		}
	}
	return out
}

func (d *decoder) lines(key schema.Key, value *tree.Value) [][]Spot {
	if !d.want(key, value, tree.ArrayKind) {
		return nil
	}
	var out [][]Spot
	for _, line := range value.Items {
		out = append(out, d.spots(key, line))
	}
	return out
}

func (d *decoder) rounds(key schema.Key, value *tree.Value) []Round {
	if !d.want(key, value, tree.ArrayKind) {
		return nil
	}
	var out []Round
	for _, round := range value.Items {
		if n := d.numbers(round, 3, "a circle", "Write three numbers, [x, y, radius]."); n != nil {
			out = append(out, Round{Spot{n[0], n[1]}, n[2]})
		}
	}
	return out
}

// farthest is the largest number of a place: what lies farther cannot be drawn.
const farthest = 1e9

// numbers reads a list of so many numbers; nil, and told, where it is something else.
func (d *decoder) numbers(value *tree.Value, count int, what, help string) []float64 {
	var out []float64
	for _, item := range value.Items {
		switch item.Kind {
		case tree.IntegerKind:
			out = append(out, float64(item.Int))
		case tree.FloatKind:
			out = append(out, item.Float)
		}
	}
	for _, n := range out {
		if !(math.Abs(n) <= farthest) { // not a number fails this as well
			d.say(wrongKind, value.Span, fmt.Sprintf("%q is not %s", d.place(value.Span).Text(), what), fmt.Sprintf("Write numbers from %g to %g.", -farthest, farthest))
			return nil
		}
	}
	if value.Kind != tree.ArrayKind || len(out) != count || len(value.Items) != count {
		d.say(wrongKind, value.Span, fmt.Sprintf("%q is not %s", d.place(value.Span).Text(), what), help)
		return nil
	}
	return out
}

func (d *decoder) used(key schema.Key, value *tree.Value) []Used {
	if !d.want(key, value, tree.TableKind) {
		return nil
	}
	var out []Used
	for _, entry := range value.Table.Entries {
		used := Used{Name: Text{Text: entry.Key, Value: &tree.Value{Kind: tree.TableKind, Span: entry.KeySpan}, At: d.place(entry.KeySpan)}}
		d.refs = append(d.refs, Ref{Name: used.Name, Of: key.Of})
		if entry.Value.Kind == tree.IntegerKind {
			used.Count = d.whole(key, entry.Value).N
		} else {
			used.Amount = d.amount(schema.Key{Name: entry.Key, Of: "volume mass count length"}, entry.Value)
		}
		out = append(out, used)
	}
	return out
}

func (d *decoder) overrides(key schema.Key, value *tree.Value) []Override {
	if !d.want(key, value, tree.TableKind) {
		return nil
	}
	var out []Override
	for _, entry := range value.Table.Entries {
		if !d.want(key, entry.Value, tree.TableKind) {
			continue
		}
		variant := Text{Text: entry.Key, Value: &tree.Value{Kind: tree.TableKind, Span: entry.KeySpan}, At: d.place(entry.KeySpan)}
		d.refs = append(d.refs, Ref{Name: variant, Of: "variant"})
		out = append(out, Override{Variant: variant, Table: entry.Value.Table})
	}
	return out
}
