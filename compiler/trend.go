package compiler

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/standing"
	"benchleaf/compiler/internal/state"
)

// Trends draws a sheet for each thing that was read on a machine, by a service book: its
// readings against their limit, and when the limit comes if they go on as they did. What is
// no figure has none.
func (r *Result) Trends(look Look, asked Asked, book BookText) ([]Output, []Trouble, error) {
	f, err := r.fleet(asked, book)
	if err != nil {
		return nil, nil, err
	}
	series, err := standing.ReadAt(f.units, f.book, f.on, f.scan)
	if err != nil {
		return nil, nil, err
	}
	var outputs []Output
	var all []Trouble
	for _, one := range series {
		sheet, told, err := r.trend(look, f, one)
		if err != nil {
			return nil, nil, err
		}
		if !told {
			continue
		}
		document, problems := pages.LayTrend(sheet.content, sheet.look)
		made, troubles, err := look.draw(fileName(one.Unit.Name+"-"+one.What)+"-trend.pdf", document, problems, []Job{*sheet.job})
		if err != nil {
			return nil, nil, err
		}
		outputs, all = append(outputs, made...), append(all, troubles...)
	}
	return outputs, all, nil
}

// trendSheet is what a sheet says, and how it is to be made.
type trendSheet struct {
	content plan.Trend
	job     *Job
	look    pages.Look
}

// trend puts one thing that was read into words; false where there is nothing to draw.
func (r *Result) trend(look Look, f *fleet, one standing.Series) (trendSheet, bool, error) {
	job := r.jobOf(one.Procedure, one.Unit)
	if job == nil {
		return trendSheet{}, false, nil
	}
	settled, system, err := look.settleSheet(compose.WishesOf(job.work.Job))
	if err != nil {
		return trendSheet{}, false, err
	}
	card, err := r.card(job, look)
	if err != nil {
		return trendSheet{}, false, err
	}
	blank, known := blankOf(card, one.What)
	if !known {
		return trendSheet{}, false, nil
	}
	if step := stepOf(job.work.Job, one.What); step > 0 { // the card may have other steps than when it was read
		one.Step = step
	}
	fresh, err := r.renewals(f, job, one)
	if err != nil {
		return trendSheet{}, false, err
	}
	content, told, err := compose.Trend(job.work.In(look.Language), one, blank, fresh, f.on.String(), system)
	return trendSheet{content, job, settled}, told, err
}

// stepOf is the number of the step at which something is read; 0 where its name tells none.
func stepOf(job *model.Job, what string) int {
	for _, step := range job.Steps {
		if name := step.Reading.Text; strings.EqualFold(name, what) || name == "" && len(step.Objects) == 1 && strings.EqualFold(step.Objects[0].Words(), what) {
			return step.Number
		}
	}
	return 0
}

// renewals are the times at which the part was renewed that a series is measured on, as far as
// its step names one; by a card of this machine, whichever it is.
func (r *Result) renewals(f *fleet, job *Job, one standing.Series) ([]standing.Renewal, error) {
	at := slices.IndexFunc(job.work.Job.Steps, func(step *model.Step) bool { return step.Number == one.Step })
	if at < 0 || !slices.ContainsFunc(job.work.Job.Steps[at].Objects, func(object model.Object) bool { return object.Part != nil }) {
		return nil, nil
	}
	renews := func(procedure string) (steps []int) {
		card := r.jobOf(procedure, one.Unit)
		if card == nil {
			return nil
		}
		for _, step := range card.work.Job.Steps {
			if step.Verb.Key == "replace" && slices.ContainsFunc(step.Objects, func(object model.Object) bool { return renewsOf(card.work.Job, object, job.work.Job.Steps[at].Objects) }) {
				steps = append(steps, step.Number)
			}
		}
		return steps
	}
	return standing.RenewedAt(one.Unit, f.units, f.book, f.on, renews, f.scan)
}

// renewsOf reports whether what is replaced at a step of a job is one of some parts that are measured.
func renewsOf(job *model.Job, replaced model.Object, measured []model.Object) bool {
	return slices.ContainsFunc(measured, func(object model.Object) bool {
		switch {
		case object.Part == nil:
			return false
		case replaced.Part != nil:
			return replaced.Part.Name == object.Part.Name
		}
		return replaced.Spare != nil && state.GoesInFor(job, replaced.Spare, object.Part)
	})
}

// blankOf is the place of a card at which something is written down.
func blankOf(card plan.Card, what string) (plan.Blank, bool) {
	blanks := slices.Clone(card.Blanks)
	for _, section := range card.Sections {
		for _, step := range section.Steps {
			blanks = append(blanks, step.Readings...)
		}
	}
	at := slices.IndexFunc(blanks, func(blank plan.Blank) bool { return blank.Label == what })
	if at < 0 {
		return plan.Blank{}, false
	}
	return blanks[at], true
}

// fileName makes a name of words: small letters, figures and hyphens.
func fileName(words string) string {
	name := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			return r
		case r >= 'A' && r <= 'Z':
			return r - 'A' + 'a'
		}
		return '-'
	}, words)
	return strings.Join(strings.FieldsFunc(name, func(r rune) bool { return r == '-' }), "-")
}
