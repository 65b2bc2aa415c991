package compose

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
)

// Bound is a procedure of a manual: what its card says, and the work of each version of
// the machine that the card serves.
type Bound struct {
	Card  plan.Card
	Works []Work
}

// binder puts the manual of some procedures together.
type binder struct {
	out   plan.Manual
	words plan.Words
	at    [][]*writer // of each machine
	in    [][]int     // the procedure of the machine each of them is of
	index map[string]*entries
}

// Manual composes the manual of some procedures, at least one, in their order: a chapter
// a machine. It is an error when the language of a shop has no words.
func Manual(procedures []Bound, system quantity.System) (plan.Manual, error) {
	b := &binder{index: map[string]*entries{}}
	for _, kind := range []string{"parts", "fluids", "tools"} {
		b.index[kind] = &entries{}
	}
	var asked []Asked
	for _, bound := range procedures {
		card := bound.Card
		variant := card.Variant
		if machine := bound.Works[0].Job.Machine; machine != nil && len(bound.Works) == len(machine.Variants.Items) {
			card.Variant = "" // it serves them all
		}
		at := slices.IndexFunc(b.out.Machines, func(m plan.Machine) bool { return m.Title == card.Machine })
		if at < 0 {
			at = len(b.out.Machines)
			b.out.Machines = append(b.out.Machines, plan.Machine{Title: card.Machine})
			b.at, b.in = append(b.at, nil), append(b.in, nil)
		}
		b.out.Machines[at].Procedures = append(b.out.Machines[at].Procedures, card)
		for _, work := range bound.Works {
			w, err := newWriter(work, system)
			if err != nil {
				return plan.Manual{}, err
			}
			b.at[at], b.in[at] = append(b.at[at], w), append(b.in[at], len(b.out.Machines[at].Procedures))
		}
		asked = append(asked, Asked{Work: bound.Works[0], Variant: variant})
		b.out.Date = max(b.out.Date, card.Date)
	}
	list, err := Pick(asked, system, nil)
	if err != nil {
		return plan.Manual{}, err
	}
	b.words = list.Words
	b.out.Words, b.out.Shop, b.out.Pick, b.out.Title = list.Words, list.Shop, list, list.Words.Labels.ManualTitle
	b.messages()
	for m := range b.out.Machines {
		machine := &b.out.Machines[m]
		machine.Facts, machine.Map = b.facts(m), b.at[m][0].whole()
		for _, table := range []plan.Table{b.intervals(m), b.torques(m), b.capacities(m), b.lubrication(m), b.limits(m), b.wrenches(m)} {
			if len(table.Rows) > 0 {
				machine.Tables = append(machine.Tables, saying(table))
			}
		}
		b.mentions(m)
	}
	labels := b.words.Labels
	for _, group := range []plan.IndexGroup{
		{Title: labels.Parts, Entries: parted(b.index["parts"].sorted(), b.out.Machines)},
		{Title: labels.Fluids, Entries: b.index["fluids"].sorted()}, {Title: labels.Tools, Entries: b.index["tools"].sorted()},
	} {
		if len(group.Entries) > 0 {
			b.out.Index = append(b.out.Index, group)
		}
	}
	return b.out, nil
}

// saying leaves out the columns of a table that say nothing in any row.
func saying(table plan.Table) plan.Table {
	says := make([]bool, len(table.Columns))
	for _, row := range table.Rows {
		for i, cell := range row.Cells {
			says[i] = says[i] || cell != "" || row.To != (plan.Mention{}) && i == len(row.Cells)-1
		}
	}
	kept := func(texts []string) []string {
		var out []string
		for i, text := range texts {
			if says[i] {
				out = append(out, text)
			}
		}
		return out
	}
	table.Columns = kept(table.Columns)
	for i := range table.Rows {
		table.Rows[i].Cells = kept(table.Rows[i].Cells)
	}
	return table
}

// messages gathers the safety messages of all procedures, each once.
func (b *binder) messages() {
	seen := map[string]int{}
	for m, machine := range b.out.Machines {
		for p, card := range machine.Procedures {
			for _, caution := range card.Cautions {
				caution.Steps = nil
				key := strings.Join([]string{caution.Signal, caution.Hazard, caution.Consequence, caution.Avoid, strings.Join(caution.Wear, ", ")}, "\n")
				at, known := seen[key]
				if !known {
					at = len(b.out.Messages)
					seen[key], b.out.Messages = at, append(b.out.Messages, plan.Message{Caution: caution})
				}
				b.out.Messages[at].In = append(b.out.Messages[at].In, plan.Mention{Machine: m + 1, Procedure: p + 1})
			}
		}
	}
	slices.SortStableFunc(b.out.Messages, func(a, c plan.Message) int {
		signals := plan.Signals()
		return cmp.Or(slices.Index(signals, a.Signal)-slices.Index(signals, c.Signal), compareNames(a.Hazard, c.Hazard))
	})
}

func (b *binder) facts(m int) []plan.Fact {
	labels, machine := b.words.Labels, b.at[m][0].job.Machine
	if machine == nil {
		return nil
	}
	facts := []plan.Fact{{Label: labels.Maker, Text: machine.Maker.Text}, {Label: labels.Model, Text: machine.Model.Text},
		{Label: labels.Variant, Text: strings.Join(texts(machine.Variants), ", ")}, {Label: labels.Manual, Text: machine.Manual.Text}}
	return slices.DeleteFunc(facts, func(fact plan.Fact) bool { return fact.Text == "" })
}

// row is a line of a table on its way: what it is of, and the versions it holds for.
type row struct {
	name     string // begins with a capital
	cells    []string
	versions []string
	entries  []entryOf // the terms of the index the line stands for
}

// entryOf is a term of one kind.
type entryOf struct{ kind, term string }

// rows gathers the lines of a table from the versions of a machine; what they share
// counts once.
type rows struct{ list []row }

func (r *rows) add(w *writer, name string, cells []string, terms ...entryOf) {
	at := slices.IndexFunc(r.list, func(other row) bool { return other.name == name && slices.Equal(other.cells, cells) })
	if at < 0 {
		at = len(r.list)
		r.list = append(r.list, row{name: name, cells: cells, entries: terms})
	}
	if !slices.Contains(r.list[at].versions, w.job.Variant) {
		r.list[at].versions = append(r.list[at].versions, w.job.Variant)
	}
}

// table sorts the lines by name and says of those that do not hold for every version
// which they hold for.
func (b *binder) table(m int, key, title string, columns []string, r rows) plan.Table {
	all := map[string]bool{}
	for _, w := range b.at[m] {
		all[w.job.Variant] = true
	}
	slices.SortStableFunc(r.list, func(a, c row) int { return compareNames(a.name, c.name) })
	table := plan.Table{Key: key, Title: title, Columns: columns}
	for i, row := range r.list {
		name := row.name
		if len(row.versions) < len(all) {
			name += ", " + strings.Join(row.versions, ", ")
		}
		table.Rows = append(table.Rows, plan.Row{Cells: append([]string{name}, row.cells...)})
		for _, one := range row.entries {
			b.index[one.kind].add(one.term, plan.Mention{Machine: m + 1, Table: key, Row: i + 1})
		}
	}
	return table
}

// intervals says of each procedure when it is due first and how often then.
func (b *binder) intervals(m int) plan.Table {
	labels := b.words.Labels
	table := plan.Table{Key: "interval", Title: labels.Intervals, Columns: []string{labels.Procedure, labels.First, labels.ThenEvery, labels.Page}}
	for p, card := range b.out.Machines[m].Procedures {
		said := map[string]string{}
		for _, fact := range card.Facts {
			said[fact.Label] = fact.Text
		}
		every := slices.DeleteFunc([]string{said[labels.Every], said[labels.When]}, func(text string) bool { return text == "" })
		if len(every) > 1 {
			every[1] = lowerFirst(every[1])
		}
		name := card.Title
		if card.Variant != "" {
			name += ", " + card.Variant
		}
		table.Rows = append(table.Rows, plan.Row{Cells: []string{name, said[labels.First], strings.Join(every, "; "), ""}, To: plan.Mention{Machine: m + 1, Procedure: p + 1}})
	}
	return table
}

// torques lists the fasteners with what they are tightened to; those that a step names
// with a torque of its own too.
func (b *binder) torques(m int) plan.Table {
	labels := b.words.Labels
	var r rows
	for _, w := range b.at[m] {
		for _, part := range append(w.job.Parts(), w.job.Covers()...) {
			if part.Torque.OK && part.Torque.Set() {
				r.add(w, upper(part.Words()), w.torqueCells(part, part.Torque, part.Condition), entryOf{"parts", upper(part.Words())})
			}
		}
		for _, step := range w.job.Steps {
			if !step.Torque.Set() || !step.Torque.OK {
				continue
			}
			for _, object := range step.Objects {
				part := object.Part
				if part == nil {
					part = &model.Part{}
				}
				if part.Torque.Text.Text == step.Torque.Text.Text {
					continue
				}
				condition := part.Condition
				if step.Condition.Set() {
					condition = step.Condition
				}
				r.add(w, upper(object.Words()), w.torqueCells(part, step.Torque, condition), entryOf{"parts", upper(object.Words())})
			}
		}
	}
	return b.table(m, "torque", labels.Torques, []string{labels.Fastener, labels.Quantity, labels.Thread, labels.Class, labels.Torque, labels.Condition}, r)
}

func (w *writer) torqueCells(part *model.Part, torque model.Amount, condition model.Text) []string {
	value := w.amount(torque)
	if part.Angle.OK && part.Angle.Set() {
		value += " + " + w.amount(part.Angle)
	}
	count := ""
	if n := part.Count.Or(1); n > 1 {
		count = strconv.Itoa(n)
	}
	state := []string{w.words.Conditions[condition.Text], w.words.Orders[part.Order.Text]}
	if part.LeftHand.On {
		state = append(state, w.words.Labels.LeftHand)
	}
	state = slices.DeleteFunc(state, func(text string) bool { return text == "" })
	return []string{count, part.Thread.Text, part.Class.Text, value, strings.Join(state, ", ")}
}

// capacities lists the places that hold a fluid.
func (b *binder) capacities(m int) plan.Table {
	labels := b.words.Labels
	var r rows
	for _, w := range b.at[m] {
		for _, cavity := range w.job.Cavities() {
			terms := []entryOf{{"parts", upper(cavity.Words())}}
			fluid, capacity := w.fluidCell(cavity.Fluid), w.amount(cavity.Capacity)
			if fluid == "" && capacity == "" {
				continue
			}
			if used := w.job.Fluid(cavity.Fluid.Name()); used != nil {
				terms = append(terms, entryOf{"fluids", upper(fluidWords(used))})
			}
			r.add(w, upper(cavity.Words()), []string{fluid, capacity}, terms...)
		}
	}
	return b.table(m, "capacity", labels.Capacities, []string{labels.Where, labels.Fluid, labels.Capacity}, r)
}

// fluidCell names a fluid with its grade and service.
func (w *writer) fluidCell(name model.Text) string {
	fluid := w.job.Fluid(name.Name())
	if fluid == nil {
		return upper(model.Spoken(name.Text))
	}
	words := upper(fluidWords(fluid))
	if fluid.Service.Set() {
		words += ", " + fluid.Service.Text
	}
	return words
}

// lubrication lists the points with what they take, how much and how often; where a point
// does not say how often, the procedures do that lubricate it.
func (b *binder) lubrication(m int) plan.Table {
	labels := b.words.Labels
	var r rows
	for _, w := range b.at[m] {
		for _, point := range w.job.Points() {
			every := w.interval(point.Every)
			if every == "" {
				every = strings.Join(b.lubricated(m, point.Name), "; ")
			}
			count := ""
			if n := point.Count.Or(1); n > 1 {
				count = strconv.Itoa(n)
			}
			terms := []entryOf{{"parts", upper(point.Words())}}
			if used := w.job.Fluid(point.Fluid.Name()); used != nil {
				terms = append(terms, entryOf{"fluids", upper(fluidWords(used))})
			}
			r.add(w, upper(point.Words()), []string{count, w.fluidCell(point.Fluid), w.amount(point.Amount), every}, terms...)
		}
	}
	return b.table(m, "lubrication", labels.Lubrication, []string{labels.Point, labels.Quantity, labels.Fluid, labels.Amount, labels.Every}, r)
}

// lubricated lists how often the procedures of a machine are due that lubricate a point.
func (b *binder) lubricated(m int, point string) []string {
	var out []string
	for _, w := range b.at[m] {
		every := w.interval(w.job.Procedure.Every)
		if every == "" || slices.Contains(out, every) {
			continue
		}
		if slices.ContainsFunc(w.job.Steps, func(step *model.Step) bool {
			return slices.ContainsFunc(step.Objects, func(object model.Object) bool { return object.Point != nil && object.Point.Name == point })
		}) {
			out = append(out, every)
		}
	}
	return out
}

// limits lists what is measured, with what to do outside; limits of a step's own too.
func (b *binder) limits(m int) plan.Table {
	labels := b.words.Labels
	var r rows
	for _, w := range b.at[m] {
		for _, limit := range w.job.Limits() {
			r.add(w, upper(limit.Words()), []string{w.amount(limit.New), w.amount(limit.Limit), sentence(limit.Outside.Text)}, entryOf{"parts", upper(limit.Words())})
		}
		for _, step := range w.job.Steps {
			if !step.Limit.OK || !step.Limit.Set() || len(step.Objects) == 0 {
				continue
			}
			name := upper(strings.TrimPrefix(w.objects(step, false), "the "))
			r.add(w, name, []string{"", w.amount(step.Limit), w.otherwise(step).Text}, entryOf{"parts", name})
		}
	}
	return b.table(m, "limit", labels.Limits, []string{labels.Measured, labels.WhenNew, labels.Limit, labels.Outside}, r)
}

// wrenches lists the sizes that the fasteners of the procedures ask for, with what they turn.
func (b *binder) wrenches(m int) plan.Table {
	labels := b.words.Labels
	var sizes heads
	for _, w := range b.at[m] {
		for _, grip := range w.needs.Grips {
			if grip.Fault == nil && (len(grip.Widths) > 0 || grip.Point != "") {
				sizes.add(w.gripWords(grip), grip.Part.Words())
			}
		}
	}
	slices.SortStableFunc(sizes.order, compareNames)
	table := plan.Table{Key: "wrench", Title: labels.Wrenches, Columns: []string{labels.Size, labels.Serves}}
	for _, size := range sizes.order {
		parts := sizes.parts[size]
		slices.SortStableFunc(parts, compareNames)
		table.Rows = append(table.Rows, plan.Row{Cells: []string{size, upper(strings.Join(parts, ", "))}})
	}
	return table
}
