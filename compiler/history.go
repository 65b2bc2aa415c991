package compiler

import (
	"fmt"
	"slices"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/emit/csv"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/standing"
)

// What a history takes of a service book, whose table is held in memory as a whole.
const (
	mostDrawn  = 10_000    // rows of one machine on paper, some 500 sides
	mostTabled = 1_000_000 // entries
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
	count := 0
	if err := f.scan(func(e entry.Entry) error {
		if count++; count > mostTabled {
			return fmt.Errorf("it has more than %d entries up to %s, and a history takes no more; ask for an earlier day, or begin a new book", mostTabled, asked.On)
		}
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
		drawn := content
		for _, table := range []*plan.Table{&drawn.Done, &drawn.Open} {
			if n := len(table.Rows); n > mostDrawn {
				told = append(told, fmt.Sprintf("the history of %s is drawn with the last %d of %d rows; history.csv has all", unit.Name, mostDrawn, n))
				table.Rows = table.Rows[n-mostDrawn:]
			}
		}
		document, problems := pages.LayHistory(drawn, settled)
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
