package compiler

import (
	"errors"
	"fmt"
	"maps"
	"math/big"
	"regexp"
	"slices"
	"strings"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/standing"
	"benchleaf/compiler/internal/store"
)

// Accepted is what came of holding entries against the service book and their cards.
type Accepted struct {
	Entries  []Entry       // ready for the book
	Stood    map[int]Entry // by the index of an entry, that of the book which it stands for
	Problems []string      // speak against writing, a line each
	Notes    []string      // are to be known, and do not
}

// Accept makes entries ready for the service book that has book in it so far: each gets the
// machine it is of, and the revision and the title of its procedure where it does not say
// them. What speaks against an entry is told, a line each: a machine or a procedure that is
// not here, steps and readings that are not those of the card, a meter that goes backwards, a
// day after today, an entry that is there already, one to be put right that is not there.
// Readings outside of their limits are said to be. Where it does not say what was used, it
// gets what its card takes for the steps that were done. One of a joined procedure becomes
// one for each procedure it was joined out of.
func (r *Result) Accept(book BookText, entries []Entry, today string) (Accepted, error) {
	on := today
	for i, one := range entries {
		if _, err := due.ParseDay(string(one.Date)); err != nil {
			return Accepted{}, fmt.Errorf("%sit has no date; write date = %s in it, or the day it was done", called(i, entries), today)
		}
		on = max(on, string(one.Date))
	}
	before, err := r.fleet(Asked{On: on}, book)
	if err != nil {
		return Accepted{}, err
	}
	out := Accepted{Stood: map[int]Entry{}, Notes: slices.Clone(before.wrong)}
	gone := maps.Clone(before.book.Replaced())
	for i, one := range entries {
		name := called(i, entries)
		var told, notes []string
		var old *Entry
		if one.Corrects != 0 {
			found, why, err := before.open(one.Corrects)
			if err != nil {
				return Accepted{}, err
			}
			if why == "" && found.Voids() && one.Voids() {
				why = fmt.Sprintf("entry %d only takes out entry %d; to bring that one back, log --corrects %d", one.Corrects, found.Corrects, one.Corrects)
			}
			if why == "" && gone[one.Corrects] {
				why = fmt.Sprintf("entry %d is put right by another of these already", one.Corrects)
			}
			if why != "" {
				told = append(told, why)
			} else {
				old, out.Stood[len(out.Entries)], gone[one.Corrects] = &found, found, true
			}
		}
		one, against, notes := r.accept(one, old, before)
		if told = append(told, against...); string(one.Date) > today && !one.Voids() && (one.Procedure != "" || one.Meter != "" || len(one.Used)+len(one.Received) > 0) {
			told = append(told, fmt.Sprintf("%s is after today, %s; write the day it was done or read", one.Date, today))
		}
		parts := []Entry{one}
		if len(told) == 0 {
			var problem string
			if parts, problem = r.apart(one, before.units); problem != "" {
				told = append(told, problem)
			}
		}
		for _, text := range told {
			out.Problems = append(out.Problems, name+text)
		}
		for _, text := range notes {
			out.Notes = append(out.Notes, name+text)
		}
		out.Entries = append(out.Entries, parts...)
	}
	again, err := before.again(out.Entries, gone)
	if err != nil {
		return Accepted{}, err
	}
	out.Problems = append(out.Problems, again...)
	short, err := r.short(before, out.Entries, gone)
	if err != nil {
		return Accepted{}, err
	}
	out.Notes = append(out.Notes, short...)
	before.more = append(before.more, out.Entries...)
	after, err := standing.Gather(before.units, standing.Watch(before.jobs), before.on, before.scan)
	if err != nil {
		return Accepted{}, err
	}
	standing.Of(before.jobs, before.units, before.book, before.on)
	standing.Of(before.jobs, before.units, after, before.on)
	told := map[string]bool{}
	for _, problem := range before.book.Problems {
		told[problem.Text] = true
	}
	for _, problem := range after.Problems {
		if !told[problem.Text] && !slices.ContainsFunc(out.Problems, func(text string) bool { return strings.HasSuffix(text, problem.Text) }) {
			out.Problems = append(out.Problems, problem.Text)
		}
	}
	return out, nil
}

// called is what one of several entries is called in front of what is told of it.
func called(at int, entries []Entry) string {
	if len(entries) == 1 {
		return "entry: "
	}
	return fmt.Sprintf("entry %d: ", at+1)
}

// open is the entry of the book that another one is to stand for; why says why none can.
func (f *fleet) open(number int) (found Entry, why string, err error) {
	if number < 1 {
		return Entry{}, fmt.Sprintf("corrects = %d is the number of no entry; they count from 1", number), nil
	}
	count, by, last := 0, 0, 0
	err = f.read(func(e entry.Entry) error {
		last = max(last, e.Number)
		if e.Number == number {
			found, count = e, count+1
		}
		if e.Corrects == number && e.Number > number {
			by = e.Number
		}
		return nil
	})
	switch {
	case err != nil:
	case count == 0 && last == 0:
		why = fmt.Sprintf("there is no entry %d, since the service book is empty", number)
	case count == 0:
		why = fmt.Sprintf("there is no entry %d in the service book that can be read; the last is entry %d", number, last)
	case count > 1:
		why = fmt.Sprintf("%d entries of the service book have the number %d, and nobody knows which is meant; give all but one a number that no other has", count, number)
	case by > 0:
		why = fmt.Sprintf("entry %d stands for entry %d already; put that one right instead: --corrects %d", by, number, by)
	}
	return found, why, err
}

// Correction is a new entry that stands for one of the book and says the same so far, to be
// changed; also the one that it stands for is given. One that only took another entry out
// says again what that one did. It is an error when the entry cannot be put right.
func (r *Result) Correction(book BookText, number int) (again, old Entry, err error) {
	f, err := r.fleet(Asked{On: due.Never.String()}, book)
	if err != nil {
		return Entry{}, Entry{}, err
	}
	old, why, err := f.open(number)
	if err == nil && why != "" {
		err = errors.New(why)
	}
	if err != nil {
		return Entry{}, Entry{}, err
	}
	for again = old; again.Voids(); {
		taken, here := again.Corrects, false
		if err := f.read(func(e entry.Entry) error {
			if e.Number == taken && !here {
				again, here = e, true
			}
			return nil
		}); err != nil {
			return Entry{}, Entry{}, err
		}
		if !here || again.Corrects >= taken {
			return Entry{}, Entry{}, fmt.Errorf("entry %d takes out entry %d, which is not there, so that there is nothing to bring back", number, taken)
		}
	}
	again.Number, again.Corrects = 0, number
	return again, old, nil
}

// again says which entries are in the book already, or among these. What is gone by then
// does not count.
func (f *fleet) again(entries []Entry, gone map[int]bool) (out []string, err error) {
	first := make([]int, len(entries))
	err = f.read(func(e entry.Entry) error {
		for i, one := range entries {
			if one.Unit == "" || first[i] > 0 || gone[e.Number] || !one.Same(e) {
				continue
			}
			if unit, why := standing.Owner(e, f.units); why == "" && unit.Name == one.Unit {
				first[i] = e.Number
			}
		}
		return nil
	})
	for i, one := range entries {
		if first[i] > 0 {
			out = append(out, fmt.Sprintf("%sthis is entry %d of the service book already", called(i, entries), first[i]))
			continue
		}
		if at := slices.IndexFunc(entries[:i], func(other Entry) bool { return one.Unit != "" && other.Unit == one.Unit && one.Same(other) }); at >= 0 {
			out = append(out, fmt.Sprintf("%sthis is entry %d of these once more", called(i, entries), at+1))
		}
	}
	return out, err
}

// short says of what more is used than is on the shelf by the book.
func (r *Result) short(f *fleet, entries []Entry, gone map[int]bool) (out []string, err error) {
	if !slices.ContainsFunc(entries, func(e Entry) bool { return len(e.Used) > 0 }) {
		return nil, nil
	}
	ledger := store.Open(store.Things(r.set.Stores(), r.everyUse()), r.set.Shelved(), f.on)
	take := func(e entry.Entry) { ledger.Take(e, f.on, func() []store.Use { return r.uses(e, f.units) }) }
	if err := f.scan(func(e entry.Entry) error {
		if !gone[e.Number] {
			take(e)
		}
		return nil
	}); err != nil {
		return nil, err
	}
	had := make([]*big.Rat, len(ledger.Accounts))
	for i, account := range ledger.Accounts {
		if account.OnHand != nil {
			had[i] = new(big.Rat).Set(account.OnHand)
		}
	}
	for _, one := range entries {
		take(one)
	}
	for i, account := range ledger.Accounts {
		if had[i] != nil && account.OnHand.Sign() < 0 && account.OnHand.Cmp(had[i]) < 0 {
			out = append(out, fmt.Sprintf("more of %s is used than is on the shelf by the book; count it again, or log what came in with --received", account.Name))
		}
	}
	return out, nil
}

// accept fills in what an entry does not say, and says what speaks against it and what is to
// be known. old is the entry that it stands for, if any.
func (r *Result) accept(e Entry, old *Entry, f *fleet) (out Entry, problems, notes []string) {
	if e.Voids() {
		return e, nil, nil
	}
	if e.Unit == "" && e.Machine == "" && e.Procedure == "" && (len(e.Used)+len(e.Received) > 0 || e.Remarks != "") {
		return e, r.moved(e), nil
	}
	if e.Unit == "" && e.Machine == "" {
		if at := slices.IndexFunc(f.jobs, func(job *model.Job) bool { return job.File.Name() == e.Procedure }); at >= 0 {
			e.Machine = f.jobs[at].MachineTitle()
		}
	}
	unit, why := standing.Owner(e, f.units)
	if why != "" {
		return e, []string{why}, nil
	}
	e.Unit = unit.Name
	if e.Machine != "" && !slices.ContainsFunc([]string{unit.Title, unit.MachineTitle, unit.Machine}, func(name string) bool { return strings.EqualFold(e.Machine, name) }) {
		return e, []string{fmt.Sprintf("machine is %q, and %s is a %s; put right which of the two it was", e.Machine, unit.Name, unit.MachineTitle)}, nil
	}
	if e.Procedure == "" {
		if e.Meter == "" && e.NewMeter == "" && e.Remarks == "" && len(e.Used)+len(e.Received) == 0 {
			return e, []string{"it says neither what was done nor what was read"}, nil
		}
		return e, r.moved(e), nil
	}
	job := r.jobOf(e.Procedure, unit)
	if r.set.Procedure(e.Procedure) == nil {
		return e, []string{r.noProcedure(e.Procedure)}, nil
	}
	if why := r.HeldBack(e.Procedure); job == nil && why != "" {
		return e, []string{why}, nil
	}
	if job == nil {
		return e, []string{fmt.Sprintf("no procedure %q is of %s", e.Procedure, unit.Name)}, nil
	}
	if e.Meter == "" && standing.ByMeter(job.work.Job, unit) {
		notes = append(notes, fmt.Sprintf("%s is due by the meter of %s, and nothing says what that stood at; give it with --meter", e.Procedure, unit.Name))
	}
	card, err := r.card(job, Look{})
	if err != nil {
		return e, []string{err.Error()}, notes
	}
	if old != nil && e.Revision == old.Revision && e.Revision != card.Revision && old.Unit == e.Unit && e.SameWork(*old) {
		return e, r.moved(e), notes // it was held against its own card when it was done
	}
	e.Machine, e.Variant = card.Machine, card.Variant
	if e.Revision == "" {
		e.Revision = card.Revision
	}
	if e.Revision != card.Revision {
		return e, []string{fmt.Sprintf("it was worked by revision %s, and the card here is revision %s, so that it cannot be held against it", e.Revision, card.Revision)}, notes
	}
	e = e.Judged(card)
	if len(e.Used) == 0 || len(e.Open)+len(e.LeftOut) > 0 && slices.Equal(e.Used, moves(job.takes())) { // a form holds what all steps take
		e.Used = moves(r.uses(e, f.units))
	}
	return e, append(e.Check(card), r.moved(e)...), notes
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
		if problem := amount(things, moved); problem != "" {
			out = append(out, problem)
		} else if problem := store.Check(things, r.set.Shelved(), moved); problem != "" {
			out = append(out, problem)
		}
	}
	return out
}

// figure is a number with no unit, below nothing or with parts too.
var figure = regexp.MustCompile(`^[-+]?[0-9]+(\.[0-9]*)?$`)

// amount says what is wrong with the size of what moves; nothing where it is more than nothing
// and what is counted in pieces is whole.
func amount(things []*store.Thing, moved entry.Moved) string {
	at := slices.IndexFunc(things, func(thing *store.Thing) bool { return thing.Name == moved.What })
	if at < 0 {
		return ""
	}
	thing, text := things[at], strings.TrimSpace(moved.Amount)
	if size, is := new(big.Rat).SetString(text); is && figure.MatchString(text) {
		switch {
		case size.Sign() <= 0:
			return fmt.Sprintf("%s: %q is not more than nothing", moved.What, text)
		case thing.Unit.Dimension != quantity.Count:
			return fmt.Sprintf("%q has no unit; %s is counted in %s", text, thing.Name, thing.Unit.Symbol)
		case !size.IsInt():
			return fmt.Sprintf("%s: %q is no whole number, and it is counted in pieces", moved.What, text)
		}
		return ""
	}
	if much, problem := thing.Read(text); problem == "" && much.Sign() <= 0 || strings.HasPrefix(text, "-") {
		return fmt.Sprintf("%s: %q is not more than nothing", moved.What, text)
	}
	return ""
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
	if r.set.Procedure(procedure) == nil {
		return Entry{}, errors.New(r.noProcedure(procedure))
	}
	at := slices.Index(unitNames(f.units), unit)
	if at < 0 && unit != "" {
		return Entry{}, errors.New(standing.NoUnit(unit, f.units))
	}
	if at < 0 {
		var of []string
		for i, one := range f.units {
			if r.jobOf(procedure, one) != nil {
				at, of = i, append(of, one.Name)
			}
		}
		if len(of) > 1 {
			return Entry{}, fmt.Errorf("%s is done to several machines: %s; say which with --unit", procedure, strings.Join(of, ", "))
		}
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
	if !job.Joined() {
		out.Used = moves(r.uses(out, f.units))
	}
	return out, nil
}
