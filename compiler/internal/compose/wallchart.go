package compose

import (
	"cmp"
	"math/big"
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
)

// WallChart composes the chart of one machine out of its jobs: every procedure that has
// an interval and every lubrication point. It is an error when the shop's language has
// no words, and where no job is given.
func WallChart(works []Work, system quantity.System) (plan.WallChart, error) {
	w, err := newWriter(works[0], system)
	if err != nil {
		return plan.WallChart{}, err
	}
	job := works[0].Job
	out := plan.WallChart{Words: w.words, Machine: job.MachineTitle()}
	if job.Shop != nil {
		out.Shop = job.Shop.Title.Text
	}
	if job.Machine != nil {
		out.Manual = job.Machine.Manual.Text
	}
	c := &chart{w: w}
	for _, work := range works {
		out.Date = max(out.Date, work.Job.Procedure.Date.Text)
		c.intervals(work.Job.Procedure.Every)
	}
	points := job.Points()
	for _, point := range points {
		c.intervals(point.Every)
	}
	c.sort()
	for _, column := range c.columns {
		out.Columns = append(out.Columns, w.amount(column))
	}
	for _, work := range works {
		procedure := work.Job.Procedure
		if len(procedure.Every) == 0 && !procedure.When.Set() {
			continue
		}
		row := plan.ChartRow{Name: procedure.Title.Text, Note: procedure.When.Text, Marks: c.marks(procedure.Every)}
		if len(procedure.First) > 0 {
			row.Note = strings.TrimSpace(w.words.Labels.First + " " + w.interval(procedure.First))
		}
		if !slices.ContainsFunc(out.Jobs, func(other plan.ChartRow) bool { return other.Name == row.Name && other.Note == row.Note }) {
			out.Jobs = append(out.Jobs, row)
		}
	}
	at := map[string]model.Place{}
	places := map[string]model.Place{}
	for _, work := range works {
		for _, place := range work.Job.Places() {
			places[place.Key] = place
		}
	}
	for _, point := range points {
		if len(point.Every) == 0 {
			continue
		}
		var note []string
		if fluid := job.Fluid(point.Fluid.Name()); fluid != nil {
			note = append(note, fluid.Words())
		}
		if amount := w.amount(point.Amount); amount != "" {
			if point.Count.Or(1) > 1 {
				amount += " " + w.words.Labels.Each
			}
			note = append(note, amount)
		}
		name := upper(point.Words())
		if n := point.Count.Or(1); n > 1 {
			name = big.NewInt(int64(n)).String() + " × " + point.Words()
		}
		if place, placed := places["point/"+point.Name]; placed {
			at[name] = place
		}
		out.Points = append(out.Points, plan.ChartRow{Name: name, Note: strings.Join(note, " · "), Marks: c.marks(point.Every)})
	}
	out.Points = append(out.Points, c.fillings(works, places, at)...)
	byInterval := func(a, b plan.ChartRow) int {
		return cmp.Compare(slices.Index(a.Marks, true), slices.Index(b.Marks, true))
	}
	slices.SortStableFunc(out.Jobs, byInterval)
	slices.SortStableFunc(out.Points, byInterval)
	out.Map = located(w.drawing(), out.Points, at)
	return out, nil
}

// filled are the cavities that a job fills.
func filled(job *model.Job) []*model.Cavity {
	var out []*model.Cavity
	for _, step := range job.Steps {
		for _, object := range step.Objects {
			if step.Verb.Key == "fill" && object.Cavity != nil && !slices.Contains(out, object.Cavity) {
				out = append(out, object.Cavity)
			}
		}
	}
	return out
}

// fillings are the rows of what the jobs fill, and where these lie; versions that take
// another amount share a row.
func (c *chart) fillings(works []Work, places, at map[string]model.Place) []plan.ChartRow {
	var out []plan.ChartRow
	var amounts [][]string
	for _, work := range works {
		for _, cavity := range filled(work.Job) {
			if len(work.Job.Procedure.Every) == 0 {
				continue
			}
			row := plan.ChartRow{Name: upper(cavity.Words()), Marks: c.marks(work.Job.Procedure.Every)}
			if fluid := work.Job.Fluid(cavity.Fluid.Name()); fluid != nil {
				row.Note = fluid.Words()
			}
			if place, placed := places["cavity/"+cavity.Name]; placed {
				at[row.Name] = place
			}
			i := slices.IndexFunc(out, func(other plan.ChartRow) bool {
				return other.Name == row.Name && other.Note == row.Note && slices.Equal(other.Marks, row.Marks)
			})
			if i < 0 {
				i, out, amounts = len(out), append(out, row), append(amounts, nil)
			}
			amount := c.w.amount(cavity.Capacity)
			if slices.ContainsFunc(works, func(other Work) bool { return other.Job.Variant != work.Job.Variant }) {
				amount = strings.TrimSpace(work.Job.Variant + " " + amount)
			}
			if amount != "" && !slices.Contains(amounts[i], amount) {
				amounts[i] = append(amounts[i], amount)
			}
		}
	}
	for i := range out {
		out[i].Note = strings.Join(slices.DeleteFunc([]string{out[i].Note, strings.Join(amounts[i], ", ")}, func(text string) bool { return text == "" }), " · ")
	}
	return out
}

// located gives the rows that have a place on a drawing their numbers, and the drawing with
// them; nil where there is no drawing, or nothing on it.
func located(drawing *plan.Drawing, rows []plan.ChartRow, at map[string]model.Place) *plan.Drawing {
	if drawing == nil {
		return nil
	}
	for i, row := range rows {
		if place, known := at[row.Name]; known {
			rows[i].Number = place.Number
			drawing.Callouts = append(drawing.Callouts, plan.Callout{Spot: plan.Spot(place.At), Number: place.Number, Placed: true, Marks: row.Marks})
		}
	}
	if len(drawing.Callouts) == 0 {
		return nil
	}
	return drawing
}

// chart gathers the intervals that stand over its columns.
type chart struct {
	w       *writer
	columns []model.Amount
}

func (c *chart) intervals(every []model.Amount) {
	for _, amount := range every {
		if amount.OK && !slices.ContainsFunc(c.columns, func(other model.Amount) bool { return quantity.Same(other.Amount, amount.Amount) }) {
			c.columns = append(c.columns, amount)
		}
	}
}

// sort brings running times before calendar times, each from the shortest on.
func (c *chart) sort() {
	calendar := func(amount model.Amount) bool { return amount.Dimension == quantity.Calendar }
	slices.SortStableFunc(c.columns, func(a, b model.Amount) int {
		if calendar(a) != calendar(b) {
			if calendar(a) {
				return 1
			}
			return -1
		}
		least, _ := a.Min()
		other, _ := b.Min()
		if least == nil || other == nil {
			return 0
		}
		return least.Cmp(other)
	})
}

func (c *chart) marks(every []model.Amount) []bool {
	out := make([]bool, len(c.columns))
	for _, amount := range every {
		for i, column := range c.columns {
			out[i] = out[i] || amount.OK && quantity.Same(column.Amount, amount.Amount)
		}
	}
	return out
}
