package compiler

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/standing"
	"benchleaf/compiler/internal/store"
)

// Accept makes entries ready for the service book that has book in it so far: each gets the
// machine it is of, and the revision and the title of its procedure where it does not say
// them. What speaks against an entry is told, a line each: a machine or a procedure that is
// not here, steps and readings that are not those of the card, a meter that goes backwards.
// Readings outside of their limits are said to be. Where it does not say what was used, it
// gets what its card takes for the steps that were done.
func (r *Result) Accept(book BookText, entries []Entry) (ready []Entry, problems []string, err error) {
	last := ""
	for _, one := range entries {
		last = max(last, string(one.Date))
	}
	if _, err := due.ParseDay(last); err != nil {
		return nil, []string{"an entry has no date such as 2026-05-01"}, nil
	}
	before, err := r.fleet(Asked{On: last}, book)
	if err != nil {
		return nil, nil, err
	}
	for i, one := range entries {
		name := "entry"
		if len(entries) > 1 {
			name = fmt.Sprintf("entry %d", i+1)
		}
		var told []string
		one, told = r.accept(one, before)
		for _, text := range told {
			problems = append(problems, name+": "+text)
		}
		ready = append(ready, one)
	}
	before.more = append(before.more, ready...)
	after, err := standing.Gather(before.units, standing.Watch(before.jobs), before.on, before.scan)
	if err != nil {
		return nil, nil, err
	}
	standing.Of(before.jobs, before.units, before.book, before.on)
	standing.Of(before.jobs, before.units, after, before.on)
	told := map[string]bool{}
	for _, problem := range before.book.Problems {
		told[problem.Text] = true
	}
	for _, problem := range after.Problems {
		if !told[problem.Text] && !slices.ContainsFunc(problems, func(text string) bool { return strings.HasSuffix(text, problem.Text) }) {
			problems = append(problems, problem.Text)
		}
	}
	return ready, problems, nil
}

// accept fills in what an entry does not say, and says what speaks against it.
func (r *Result) accept(e Entry, f *fleet) (Entry, []string) {
	if e.Corrects > 0 && e.Unit == "" && e.Machine == "" && e.Procedure == "" {
		return e, nil // it only takes another one out
	}
	if e.Unit == "" && e.Machine == "" && e.Procedure == "" && (len(e.Used)+len(e.Received) > 0 || e.Remarks != "") {
		return e, r.moved(e)
	}
	if e.Unit == "" && e.Machine == "" {
		if at := slices.IndexFunc(f.jobs, func(job *model.Job) bool { return job.File.Name() == e.Procedure }); at >= 0 {
			e.Machine = f.jobs[at].MachineTitle()
		}
	}
	unit, why := standing.Owner(e, f.units)
	if why != "" {
		return e, []string{why}
	}
	e.Unit = unit.Name
	if e.Procedure == "" {
		if e.Meter == "" && e.NewMeter == "" && e.Remarks == "" && len(e.Used)+len(e.Received) == 0 {
			return e, []string{"it says neither what was done nor what was read"}
		}
		return e, r.moved(e)
	}
	job := r.jobOf(e.Procedure, unit)
	if r.set.Procedure(e.Procedure) == nil {
		return e, []string{r.noProcedure(e.Procedure)}
	}
	if job == nil {
		return e, []string{fmt.Sprintf("no procedure %q is of %s", e.Procedure, unit.Name)}
	}
	card, err := r.card(job, Look{})
	if err != nil {
		return e, []string{err.Error()}
	}
	e.Machine, e.Variant = card.Machine, card.Variant
	if e.Revision == "" {
		e.Revision = card.Revision
	}
	if e.Revision != card.Revision {
		return e, []string{fmt.Sprintf("it was worked by revision %s, and the card here is revision %s, so that it cannot be held against it", e.Revision, card.Revision)}
	}
	e = e.Judged(card)
	if len(e.Used) == 0 {
		e.Used = moves(r.uses(e, f.units))
	}
	return e, append(e.Check(card), r.moved(e)...)
}

// moves are uses as entries tell of them; what holds amounts of several kinds is left out.
func moves(uses []store.Use) []entry.Moved {
	var out []entry.Moved
	for _, use := range uses {
		if text, ok := use.Text(); ok {
			out = append(out, entry.Moved{What: use.Name, Amount: text})
		}
	}
	return out
}

// moved says what speaks against what an entry takes from the shelves and adds to them.
func (r *Result) moved(e Entry) []string {
	if len(e.Used)+len(e.Received) == 0 {
		return nil
	}
	things := store.Things(r.set.Stores(), r.everyUse())
	var out []string
	for _, moved := range slices.Concat(e.Used, e.Received) {
		if problem := store.Check(things, r.set.Shelved(), moved); problem != "" {
			out = append(out, problem)
		}
	}
	return out
}

// noProcedure says that a name is that of no procedure, and which one is like it.
func (r *Result) noProcedure(name string) string {
	var names []string
	for _, file := range r.set.Files {
		if file.Procedure != nil {
			names = append(names, file.Name())
		}
	}
	said := fmt.Sprintf("no procedure here is named %q", name)
	if near := model.Nearest(name, names); near != "" {
		said += fmt.Sprintf("; did you mean %q?", near)
	}
	return said
}

// jobOf is the job of a procedure for the version of a machine; nil where there is none, or
// an error stands against it.
func (r *Result) jobOf(procedure string, unit standing.Unit) *Job {
	for i, job := range r.Jobs {
		if !job.Blocked && job.Name == procedure && standing.Serves(job.work.Job, unit) {
			return &r.Jobs[i]
		}
	}
	return nil
}

func (r *Result) card(job *Job, look Look) (plan.Card, error) {
	_, system, err := look.settle(compose.WishesOf(job.work.Job))
	if err != nil {
		return plan.Card{}, err
	}
	return compose.Card(job.work.In(look.Language), system, nil)
}

// Form is an entry to fill in for a procedure at a machine: every step is done, every reading
// is there without its value, and what the card takes is used.
func (r *Result) Form(procedure, unit, date string) (Entry, error) {
	f, err := r.fleet(Asked{On: date}, nil)
	if err != nil {
		return Entry{}, err
	}
	names := unitNames(f.units)
	at := slices.Index(names, unit)
	if at < 0 && unit != "" {
		return Entry{}, fmt.Errorf("there is no machine %q; there are: %s", unit, strings.Join(names, ", "))
	}
	if at < 0 {
		at = slices.IndexFunc(f.units, func(one standing.Unit) bool { return r.jobOf(procedure, one) != nil })
	}
	if r.set.Procedure(procedure) == nil {
		return Entry{}, errors.New(r.noProcedure(procedure))
	}
	if at < 0 {
		return Entry{}, fmt.Errorf("no procedure %q is of a machine here", procedure)
	}
	job := r.jobOf(procedure, f.units[at])
	if job == nil {
		return Entry{}, fmt.Errorf("no procedure %q is of %s", procedure, f.units[at].Name)
	}
	card, err := r.card(job, Look{})
	if err != nil {
		return Entry{}, err
	}
	out := Entry{Unit: f.units[at].Name, Procedure: procedure, Revision: card.Revision, Machine: card.Machine, Variant: card.Variant, Date: entry.Day(date)}
	read := func(step int, blanks []plan.Blank) {
		for _, blank := range blanks {
			if blank.Of == "" {
				out.Readings = append(out.Readings, entry.Reading{Step: step, What: blank.Label, Limit: strings.ReplaceAll(blank.Limit, "\u00a0", " ")})
			}
		}
	}
	for _, section := range card.Sections {
		for _, step := range section.Steps {
			out.Done = append(out.Done, step.Number)
			read(step.Number, step.Readings)
		}
	}
	read(0, card.Blanks)
	out.Used = moves(r.uses(out, f.units))
	return out, nil
}
