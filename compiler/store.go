package compiler

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/emit/csv"
	"benchleaf/compiler/internal/emit/json"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/standing"
	"benchleaf/compiler/internal/store"
)

// Store is how the shelves of a shop stand on a day.
type Store struct {
	Rows     []plan.StoreRow
	Cost     string // of all that is to be bought; empty where nothing has a price
	Unpriced int    // things to buy without a price
	Reckoned int    // entries that do not say what was used, and count as their cards say
	Problems []string
	Unread   []string // files of procedures that cannot be read, as in Due

	content plan.Store
	asked   Asked
	jobs    []Job // that are asked for
	wishes  compose.Wishes
}

const (
	orderWithin = 14  // days in which what is to be ordered is told
	foreseen    = 365 // days of work to come that the shelves are held against, or as far as is asked
	farthest    = 10  // years that may be asked for
)

// Store says what is on the shelves of a shop on a day, what the work of the twelve months
// to come takes of it, when that runs out and what to buy. The work that is asked for is what
// is due by a day, ten years ahead at the most; without one, what is overdue, due and soon. What was used since a shelf
// was counted is taken from the service book; an entry that does not say counts as its card
// says. Jobs that are done when needed are not foreseen.
func (r *Result) Store(look Look, asked Asked, book BookText) (*Store, error) {
	d, err := r.Due(look, asked, book)
	if err != nil {
		return nil, err
	}
	if far := d.on.AddMonths(12 * farthest); asked.By != "" && d.by > far {
		return nil, fmt.Errorf("--by %s is more than %d years ahead; the farthest is %s", asked.By, farthest, far)
	}
	out := &Store{Problems: d.Problems, Unread: d.Unread, asked: asked}
	if len(r.Jobs) == 0 {
		return out, nil
	}
	ledger, err := r.ledger(d)
	if err != nil {
		return nil, err
	}
	wanted, jobs := d.pressing(look, true)
	out.Problems = append(out.Problems, ledger.Problems...)
	works := []compose.Asked{{Work: r.Jobs[0].work.In(look.Language)}}
	out.wishes, out.jobs = compose.WishesOf(works[0].Job), jobs
	_, system, err := look.settle(out.wishes)
	if err != nil {
		return nil, err
	}
	out.content, err = compose.Store(ledger, works, wanted, d.on, orderWithin, system)
	if err != nil {
		return nil, err
	}
	out.content.By = asked.By
	out.Rows, out.Cost, out.Unpriced, out.Reckoned = slices.Clone(out.content.Rows), plainSpaces(out.content.Cost), out.content.Unpriced, out.content.Reckoned
	for i := range out.Rows {
		row := &out.Rows[i]
		for _, text := range []*string{&row.Title, &row.OnHand, &row.Need, &row.Missing, &row.Buy, &row.Cost, &row.Used, &row.Year, &row.Keep} {
			*text = plainSpaces(*text)
		}
	}
	return out, nil
}

// ledger holds the shelves with what the book tells of them and what is foreseen.
func (r *Result) ledger(d *Due) (*store.Ledger, error) {
	f := d.fleet
	ledger := store.Open(store.Things(r.set.Stores(), r.everyUse()), r.set.Shelved(), f.on)
	replaced := f.book.Replaced()
	if err := f.scan(func(e entry.Entry) error {
		if !replaced[e.Number] {
			ledger.Take(e, f.on, func() []store.Use { return r.uses(e, f.units) })
		}
		return nil
	}); err != nil {
		return nil, err
	}
	ledger.Settle()
	until := f.on.AddDays(foreseen)
	if d.by < due.Never {
		until = max(until, d.by)
	}
	for _, one := range d.stands {
		if one.Answer.Day == 0 {
			continue
		}
		uses := r.jobAs(one.Job).takes()
		now := d.presses(one)
		days := []due.Day{max(one.Answer.Day, f.on)}
		for _, next := range due.Following(one.Ask, one.Use, one.Answer, f.on, until) {
			days = append(days, next.Day)
		}
		for i, day := range days {
			if day <= until || now && i == 0 {
				ledger.Expect(day, one.Unit.Name, one.Job, uses, now && (i == 0 || d.by < due.Never && day <= d.by))
			}
		}
	}
	return ledger, nil
}

// takes is what a job takes of each thing.
func (j *Job) takes() []store.Use {
	return store.Uses(j.work.Job, j.work.Needs, func(int) bool { return true })
}

// everyUse is what all jobs take, one after the other.
func (r *Result) everyUse() []store.Use {
	var out []store.Use
	for i := range r.Jobs {
		out = append(out, r.Jobs[i].takes()...)
	}
	return out
}

// uses are what the card of an entry takes for the steps that were done.
func (r *Result) uses(e entry.Entry, units []standing.Unit) []store.Use {
	unit, why := standing.Owner(e, units)
	if why != "" {
		return nil
	}
	at := slices.IndexFunc(r.Jobs, func(job Job) bool { return job.Name == e.Procedure && standing.Serves(job.work.Job, unit) })
	if at < 0 {
		return nil
	}
	job := r.Jobs[at]
	return store.Uses(job.work.Job, job.work.Needs, func(step int) bool {
		left := slices.ContainsFunc(e.LeftOut, func(left entry.LeftOut) bool { return left.Step == step })
		return !left && !slices.Contains(e.Open, step) && (len(e.Done) == 0 || slices.Contains(e.Done, step))
	})
}

// Shopping draws what to buy as a list, shopping-list.pdf, and writes all of the store as store.csv.
func (s *Store) Shopping(look Look) ([]Output, []Trouble, error) {
	if len(s.content.Rows) == 0 {
		return nil, nil, nil
	}
	settled, _, err := look.settle(s.wishes)
	if err != nil {
		return nil, nil, err
	}
	content := compose.Shopping(s.content)
	document, problems := pages.LayPick(content, settled)
	outputs, troubles, err := look.draw("shopping-list.pdf", document, problems, s.jobs)
	if err != nil {
		return nil, nil, err
	}
	table, err := csv.Store(plan.Store{Rows: s.Rows}) // with plain spaces
	return append(outputs, Output{Name: "store.csv", Bytes: table, Jobs: s.jobs}), troubles, err
}

// JSON is how the shelves stand for other programs, in a form that stays.
func (s *Store) JSON() []byte {
	return json.Store(s.asked.On, strings.TrimSpace(s.asked.By), s.Rows, s.Cost, s.Problems)
}
