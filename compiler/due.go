package compiler

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/emit/ical"
	"benchleaf/compiler/internal/emit/json"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/standing"
)

// Asked is what is asked of what is due.
type Asked struct {
	On     string            // the day as 2026-05-01
	By     string            // only what is due by this day; everything where it is empty
	Meters map[string]string // what meters stand at on the day, by the short names of machines: "1234 h"
}

// Due is what is due in a shop.
type Due struct {
	Rows     []plan.DueRow
	Problems []string // entries and readings that could not be taken as they stand, and what is in Unread
	Unread   []string // files of procedures that cannot be read, or whose interval cannot; the list lacks them

	list   plan.DueList
	on, by due.Day
	stands []standing.Standing // of every job, also of what is not due by then
	result *Result
	fleet  *fleet
}

// Due says when each job is due at each machine, by a service book; an empty book is one in
// which nothing was done yet. A job that an error stands against is told too, and that it is
// so, as long as it can be read when it is due. It is an error when a day that is asked for is
// none, or by is before on, when a meter that is given is of no machine or cannot be taken, or
// when the book cannot be read.
func (r *Result) Due(look Look, asked Asked, book BookText) (*Due, error) {
	by := due.Never
	if asked.By != "" {
		var err error
		if by, err = due.ParseDay(asked.By); err != nil {
			return nil, err
		}
	}
	f, err := r.fleet(asked, book)
	if err != nil {
		return nil, err
	}
	jobs, units, kept, on := f.jobs, f.units, f.book, f.on
	if by < on {
		return nil, fmt.Errorf("--by %s is before %s, the day it is asked for; give a day from then on", by, on)
	}
	stands := standing.Of(jobs, units, kept, on)
	for i := range stands {
		stands[i].Held = r.jobAs(stands[i].Job).Blocked
	}
	out := &Due{Problems: f.problems, Unread: f.unread, on: on, by: by, stands: slices.Clone(stands), result: r, fleet: f}
	for _, path := range f.unread {
		out.Problems = append(out.Problems, path+": it is not in the list, since an error in it, or in what it uses, keeps it from being read; see benchleaf lint")
	}
	if asked.By != "" {
		stands = slices.DeleteFunc(stands, func(one standing.Standing) bool { return one.Answer.Day == 0 || one.Answer.Day > by })
	}
	for _, problem := range kept.Problems {
		if problem.Entry == given {
			return nil, fmt.Errorf("given now: %s", strings.ReplaceAll(problem.Text, ", and is left aside", ""))
		}
	}
	out.Problems = append(out.Problems, r.told(kept)...)
	if len(stands) == 0 {
		return out, nil
	}
	_, system, err := look.settle(compose.WishesOf(stands[0].Job))
	if err != nil {
		return nil, err
	}
	out.list, err = compose.DueList(stands, on, look.Language, system)
	if err != nil {
		return nil, err
	}
	out.Rows = slices.Clone(out.list.Rows)
	for i := range out.Rows { // spaces that keep a line together are for pages
		for _, text := range []*string{&out.Rows[i].Meter, &out.Rows[i].LastMeter, &out.Rows[i].Every, &out.Rows[i].Note} {
			*text = strings.ReplaceAll(*text, "\u00a0", " ")
		}
	}
	return out, nil
}

// fleet is the machines of a shop with what its service book tells of them up to a day.
type fleet struct {
	jobs     []*model.Job
	units    []standing.Unit
	book     *standing.Book
	problems []string
	on       due.Day
	text     BookText      // of the book
	whole    int64         // bytes from its start
	more     []entry.Entry // behind it
	wrong    []string      // entries that cannot be read, and numbers that are not in order
	scanned  bool          // the book was read to its end once
	far      string        // the day after which an entry is likely dated wrong; empty where nobody knows what day it is
	unread   []string      // files of procedures of which it cannot be read when they are due
	partial  bool          // a file cannot be read, so that nobody knows all machines

	elsewhere map[string]bool // machines that nobody asks for
}

func (r *Result) fleet(asked Asked, book BookText) (*fleet, error) {
	out := &fleet{}
	var err error
	if out.on, err = due.ParseDay(asked.On); err != nil {
		return nil, err
	}
	if today, err := due.ParseDay(r.today); err == nil {
		out.far = max(today, out.on).AddYears(1).String()
	}
	var all []*model.Job
	out.unread = slices.Clone(r.Unchecked)
	for _, job := range r.Jobs {
		all = append(all, job.work.Job)
		switch {
		case timed(job.work.Job):
			out.jobs = append(out.jobs, job.work.Job)
		case !slices.Contains(out.unread, job.Path):
			out.unread = append(out.unread, job.Path)
		}
	}
	slices.Sort(out.unread)
	out.partial = slices.ContainsFunc(r.set.Files, func(file *model.File) bool { return file.Broken })
	out.units, out.problems = standing.Units(all, r.set.Units()) // a machine is there, whatever is wrong with a procedure
	if out.text = book; book != nil {
		if out.whole, err = TornBook(book); err != nil {
			return nil, unread(err)
		}
		if torn := book.Size() - out.whole; torn > 0 {
			out.problems = append(out.problems, fmt.Sprintf("the last %d bytes of the service book were torn in writing and are left aside; the next entry puts them into a file of their own", torn))
		}
	}
	for _, name := range slices.Sorted(maps.Keys(asked.Meters)) {
		if !slices.ContainsFunc(out.units, func(unit standing.Unit) bool { return unit.Name == name }) {
			if len(out.units) == 0 {
				return nil, fmt.Errorf("no machine %q is known, since no procedure of it can be read", name)
			}
			return nil, fmt.Errorf("there is no machine %q; there are: %s", name, strings.Join(unitNames(out.units), ", "))
		}
		out.more = append(out.more, entry.Entry{Number: given, Unit: name, Date: entry.Day(asked.On), Meter: asked.Meters[name]})
	}
	out.elsewhere = r.elsewhere(out.units)
	out.book, err = standing.Gather(out.units, standing.Watch(out.jobs), out.on, out.scan)
	return out, err
}

// timed reports whether it can be read when a job is due.
func timed(job *model.Job) bool {
	unfit := func(amount model.Amount) bool { return amount.Set() && !amount.OK }
	return !slices.ContainsFunc(job.Procedure.Every, unfit) && !slices.ContainsFunc(job.Procedure.First, unfit)
}

// jobAs is a job with what was found of it.
func (r *Result) jobAs(work *model.Job) *Job {
	return &r.Jobs[slices.IndexFunc(r.Jobs, func(job Job) bool { return job.work.Job == work })]
}

// HeldBack says of a procedure that is there why it has no card: an error stands against it,
// or it cannot be read. It is empty for one that has, and for one that is not there.
func (r *Result) HeldBack(procedure string) string {
	for _, job := range r.Jobs {
		if job.Name == procedure && job.Blocked {
			return fmt.Sprintf("an error in %s, or in what it uses, holds %q back; see benchleaf lint", job.Path, procedure)
		}
	}
	for _, path := range r.Unchecked {
		if r.set.File(path).Name() == procedure {
			return fmt.Sprintf("%q cannot be read: an error stands in %s, or in what it uses; see benchleaf lint", procedure, path)
		}
	}
	return ""
}

// scan gives the entries in their order that are of what is asked for.
func (f *fleet) scan(each func(entry.Entry) error) error {
	if err := f.read(func(e entry.Entry) error {
		if f.elsewhere[strings.ToLower(cmp.Or(e.Unit, e.Machine))] || f.partial && f.unknown(e) {
			return nil
		}
		return each(e)
	}); err != nil {
		return err
	}
	for _, one := range f.more {
		if err := each(one); err != nil {
			return err
		}
	}
	return nil
}

// read gives all entries that stand in the book. What of it cannot be read is told once, and
// the rest counts.
func (f *fleet) read(each func(entry.Entry) error) error {
	place := 0
	var numbers entry.Numbers
	var ahead []entry.Entry
	err := entry.Scan(io.NewSectionReader(f.text, 0, f.whole), func(e entry.Entry, _ int) error {
		place++
		e.Number = cmp.Or(e.Number, place)
		if !f.scanned {
			numbers.Take(e.Number)
			if f.far != "" && string(e.Date) > f.far {
				ahead = append(ahead, e)
			}
			if e.Corrects != 0 {
				ahead = slices.DeleteFunc(ahead, func(one entry.Entry) bool { return one.Number == e.Corrects })
			}
		}
		return each(e)
	})
	var faults entry.Faults
	if err != nil && !errors.As(err, &faults) {
		return unread(err)
	}
	if !f.scanned {
		for _, fault := range faults {
			f.wrong = append(f.wrong, Bookfile+": "+fault.Error())
		}
		for _, problem := range numbers.Problems(faults) {
			f.wrong = append(f.wrong, Bookfile+": "+problem)
		}
		for _, one := range ahead {
			f.wrong = append(f.wrong, fmt.Sprintf("entry %d of the service book: its date %s lies more than a year ahead, and it does not count before; put it right with an entry that corrects it", one.Number, one.Date))
		}
		f.problems, f.scanned = append(f.problems, f.wrong...), true
	}
	return nil
}

// unknown reports whether an entry is of a machine that is not known.
func (f *fleet) unknown(e entry.Entry) bool {
	return e.Unit != "" && !slices.ContainsFunc(f.units, func(unit standing.Unit) bool { return unit.Name == e.Unit })
}

// unread says that a service book cannot be read.
func unread(err error) error { return fmt.Errorf("%s cannot be read: %w", Bookfile, err) }

// plainSpaces makes the spaces that keep an amount on one line into plain ones.
func plainSpaces(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

// given is the number of an entry that stands in no book.
const given = -1

// elsewhere are the names of machines that the files tell of, but of which no job is asked
// for, in small letters: what was done there is no matter here.
func (r *Result) elsewhere(units []standing.Unit) map[string]bool {
	out := map[string]bool{}
	for _, one := range r.set.Units() {
		out[strings.ToLower(one.Name)], out[strings.ToLower(one.Title.Text)] = true, true
	}
	for _, file := range r.set.Files {
		if file.Machine != nil {
			out[strings.ToLower(file.Machine.Short.Name())], out[strings.ToLower(file.Machine.Title.Text)] = true, true
		}
	}
	for _, job := range r.Jobs {
		out[strings.ToLower(job.Machine)] = true
	}
	delete(out, "")
	for _, unit := range units {
		for _, name := range []string{unit.Name, unit.Title, unit.Machine, unit.MachineTitle} {
			delete(out, strings.ToLower(name))
		}
	}
	return out
}

// Called is what the machine of a row is called: its title, and its short name where another
// machine of the list has the same.
func (d *Due) Called(row plan.DueRow) string {
	if slices.ContainsFunc(d.Rows, func(other plan.DueRow) bool { return other.Machine == row.Machine && other.Unit != row.Unit }) {
		return row.Machine + " (" + row.Unit + ")"
	}
	return row.Machine
}

func unitNames(units []standing.Unit) []string {
	var out []string
	for _, unit := range units {
		out = append(out, unit.Name)
	}
	return out
}

// Pages draws what is due as a list to hang at the bench, due-list.pdf, and for each machine
// a planner of the twelve months to come, NAME-planner.pdf. They are printed on stock as
// approval sheets are.
func (d *Due) Pages(look Look) ([]Output, []Trouble, error) {
	if len(d.stands) == 0 {
		return nil, nil, nil
	}
	settled, system, err := look.settleSheet(compose.WishesOf(d.stands[0].Job))
	if err != nil {
		return nil, nil, err
	}
	if look.Distance == "" && settled.Stock.Distance > 0 {
		settled.DistanceMM = 0 // a wall hangs farther away than a card lies
	}
	list, err := compose.DueList(d.stands, d.on, look.Language, system)
	if err != nil {
		return nil, nil, err
	}
	if d.by < due.Never {
		list.Rows = slices.DeleteFunc(list.Rows, func(row plan.DueRow) bool { return row.Day == "" || row.Day > d.by.String() })
	}
	list.Problems = d.Problems
	document, problems := pages.LayDueList(list, settled)
	outputs, troubles, err := look.draw("due-list.pdf", document, problems, nil)
	if err != nil {
		return nil, nil, err
	}
	taken := map[string]bool{}
	for _, unit := range unitsOf(d.stands) {
		content, err := compose.Planner(d.stands, unit, d.on, look.Language, system)
		if err != nil {
			return nil, nil, err
		}
		document, problems := onOneSide(settled, func(look pages.Look) (pages.Document, []pages.Problem) { return pages.LayPlanner(content, look) })
		name := plannerName(unit)
		for n := 2; taken[name]; n++ {
			name = plannerName(unit) + "-" + strconv.Itoa(n)
		}
		taken[name] = true
		made, told, err := look.draw(name+"-planner.pdf", document, problems, nil)
		if err != nil {
			return nil, nil, err
		}
		outputs, troubles = append(outputs, made...), append(troubles, told...)
	}
	return outputs, troubles, nil
}

// Bring draws the list of what to bring for what is due: tools, fluids, new parts, what to
// wear, and what of it is not on the shelf, for which the book is read once more. Without a day
// that was asked for it is for what is overdue, due and soon. There is none where nothing is. A
// job that has no card is not in it.
func (d *Due) Bring(look Look) ([]Output, []Trouble, error) {
	asked, jobs := d.pressing(look, false)
	if len(asked) == 0 {
		return nil, nil, nil
	}
	ledger, err := d.result.ledger(d)
	if err != nil {
		return nil, nil, err
	}
	return look.pick("bring", compose.WishesOf(asked[0].Job), func(system quantity.System) (plan.PickList, error) {
		return compose.Pick(asked, system, ledger)
	}, jobs, d.on.String())
}

// presses reports whether a job is asked for: it is due by the day, or overdue, due or soon
// where no day was given.
func (d *Due) presses(one standing.Standing) bool {
	if d.by < due.Never {
		return one.Answer.Day > 0 && one.Answer.Day <= d.by
	}
	return one.Answer.State <= due.Soon
}

// pressing are the jobs that are asked for, the most pressing first; held says that those
// without a card are wanted too.
func (d *Due) pressing(look Look, held bool) (asked []compose.Asked, jobs []Job) {
	for _, one := range d.stands {
		job := d.result.jobAs(one.Job)
		if job.Blocked && !held || !d.presses(one) {
			continue
		}
		which := one.Unit.Version
		if one.Unit.Name != one.Unit.Machine {
			which = one.Unit.Name
		}
		asked, jobs = append(asked, compose.Asked{Work: job.work.In(look.Language), Variant: which, Unit: one.Unit.Name}), append(jobs, *job)
	}
	return asked, jobs
}

// onOneSide lays a sheet for a wall out for the farthest of some distances at which it takes
// one side, or else the fewest.
func onOneSide(look pages.Look, lay func(pages.Look) (pages.Document, []pages.Problem)) (pages.Document, []pages.Problem) {
	const hand = 500 // of what is read on the bench
	document, problems := lay(look)
	for _, share := range []float64{0.85, 0.7} {
		if len(document.Sides) == 1 && len(problems) == 0 || look.DistanceMM > 0 || look.Stock.Distance <= hand {
			break
		}
		near := look
		near.DistanceMM = share * look.Stock.Distance
		if nearer, left := lay(near); len(nearer.Sides) < len(document.Sides) {
			document, problems = nearer, left
		}
	}
	return document, problems
}

// unitsOf lists the machines by their short names, in order.
func unitsOf(stands []standing.Standing) []string {
	var out []string
	for _, one := range stands {
		out = append(out, one.Unit.Name)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// plannerName makes a name for a file out of that of a machine.
func plannerName(name string) string {
	plain := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return '-'
	}, name)
	return first(strings.Trim(plain, "-"), "machine")
}

// JSON is what is due for other programs, in a form that stays.
func (d *Due) JSON() []byte {
	rows := slices.Clone(d.Rows)
	for i := range rows {
		for _, text := range []*string{&rows[i].Meter, &rows[i].Every, &rows[i].LastMeter, &rows[i].Note} {
			*text = plainSpaces(*text)
		}
	}
	return json.Due(d.on.String(), rows, d.Problems)
}

// Calendar is what is due as a calendar that calendar programs take (RFC 5545): an event of
// a whole day for each job whose day is known, on the day itself for what is overdue.
func (d *Due) Calendar() ([]byte, error) {
	var events []ical.Event
	for _, row := range d.Rows {
		day, err := due.ParseDay(row.Day)
		if row.Day == "" || err != nil {
			continue
		}
		note := []string{row.Word}
		if row.Meter != "" {
			note = append(note, row.Meter)
		}
		if row.Early != "" || row.Late != "" {
			note = append(note, strings.NewReplacer("{early}", first(row.Early, row.Day), "{late}", first(row.Late, row.Day)).Replace(d.list.Words.Labels.Between))
		}
		if row.Note != "" {
			note = append(note, row.Note)
		}
		events = append(events, ical.Event{UID: row.Procedure + "." + row.Unit + "@benchleaf", Day: max(day, d.on), Title: d.Called(row) + ": " + row.Title, Note: strings.Join(note, "\n"), Categories: []string{row.Machine}})
	}
	return ical.Calendar(events, d.on)
}
