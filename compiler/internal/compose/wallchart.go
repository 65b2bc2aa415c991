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
	for _, point := range points {
		if len(point.Every) == 0 {
			continue
		}
		var note []string
		if fluid := job.Fluid(point.Fluid.Name()); fluid != nil {
			note = append(note, fluid.Words())
		}
		if amount := w.amount(point.Amount); amount != "" {
			note = append(note, amount)
		}
		name := upper(point.Words())
		if n := point.Count.Or(1); n > 1 {
			name = big.NewInt(int64(n)).String() + " × " + point.Words()
		}
		out.Points = append(out.Points, plan.ChartRow{Name: name, Note: strings.Join(note, " · "), Marks: c.marks(point.Every)})
	}
	byInterval := func(a, b plan.ChartRow) int {
		return cmp.Compare(slices.Index(a.Marks, true), slices.Index(b.Marks, true))
	}
	slices.SortStableFunc(out.Jobs, byInterval)
	slices.SortStableFunc(out.Points, byInterval)
	return out, nil
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
