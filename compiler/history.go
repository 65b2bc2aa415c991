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
// a day: as PDF, and all entries as one CSV, also those that are of no machine here. told says
// what of the book could not be taken as it stands.
func (r *Result) Histories(look Look, asked Asked, book BookText) (outputs []Output, all []Trouble, told []string, err error) {
	f, err := r.fleet(asked, book)
	if err != nil {
		return nil, nil, nil, err
	}
	standing.Of(f.jobs, f.units, f.book, f.on)
	told = slices.Concat(f.problems, r.told(f.book))
	of := map[string][]entry.Entry{}
	var others []entry.Entry
	if err := f.scan(func(e entry.Entry) error {
		unit, why := standing.Owner(e, f.units)
		switch {
		case string(e.Date) > asked.On:
		case why != "":
			others = append(others, e)
		default:
			e.Unit = unit.Name
			of[unit.Name] = append(of[unit.Name], e)
		}
		return nil
	}); err != nil {
		return nil, nil, nil, err
	}
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
			return nil, nil, nil, err
		}
		content, err := compose.History(works, unit, of[unit.Name], f.book.Replaced(), asked.On, system)
		if err != nil {
			return nil, nil, nil, err
		}
		document, problems := pages.LayHistory(content, settled)
		made, troubles, err := look.draw(fileName(unit.Name)+"-history.pdf", document, problems, jobs)
		if err != nil {
			return nil, nil, nil, err
		}
		outputs, all, histories = append(outputs, made...), append(all, troubles...), append(histories, content)
		served = append(served, jobs...)
	}
	if len(outputs) == 0 {
		return nil, nil, told, nil
	}
	var works []compose.Work
	for _, job := range r.Jobs {
		works = append(works, job.work)
	}
	histories = append(histories, plan.History{Entries: compose.Entries(works, others, f.book.Replaced())})
	table, err := csv.History(histories)
	return slices.Concat(outputs, []Output{{Name: "history.csv", Bytes: table, Jobs: served}}), all, told, err
}
