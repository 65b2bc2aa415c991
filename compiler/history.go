package compiler

import (
	"slices"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/emit/csv"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/standing"
)

// Histories draws for each machine of the shop what was done to it, by a service book, up to
// a day: as PDF, and all of them as one CSV.
func (r *Result) Histories(look Look, asked Asked, book BookText) ([]Output, []Trouble, error) {
	f, err := r.fleet(asked, book)
	if err != nil {
		return nil, nil, err
	}
	of := map[string][]entry.Entry{}
	if err := f.scan(func(e entry.Entry) error {
		if unit, why := standing.Owner(e, f.units); why == "" && string(e.Date) <= asked.On {
			of[unit.Name] = append(of[unit.Name], e)
		}
		return nil
	}); err != nil {
		return nil, nil, err
	}
	var outputs []Output
	var all []Trouble
	var histories []plan.History
	var served []Job
	for _, unit := range f.units {
		var works []compose.Work
		var jobs []Job
		for _, job := range r.Jobs {
			if standing.Serves(job.work.Job, unit) {
				works, jobs = append(works, job.work.In(look.Language)), append(jobs, job)
			}
		}
		if len(works) == 0 {
			continue
		}
		settled, system, err := look.settleSheet(compose.WishesOf(works[0].Job))
		if err != nil {
			return nil, nil, err
		}
		content, err := compose.History(works, unit, of[unit.Name], f.book.Replaced(), system)
		if err != nil {
			return nil, nil, err
		}
		document, problems := pages.LayHistory(content, settled)
		made, troubles, err := look.draw(fileName(unit.Name)+"-history.pdf", document, problems, jobs)
		if err != nil {
			return nil, nil, err
		}
		outputs, all, histories = append(outputs, made...), append(all, troubles...), append(histories, content)
		served = append(served, jobs...)
	}
	if len(outputs) == 0 {
		return nil, nil, nil
	}
	table, err := csv.History(histories)
	return slices.Concat(outputs, []Output{{Name: "history.csv", Bytes: table, Jobs: served}}), all, err
}
