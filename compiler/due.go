package compiler

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/emit/ical"
	"benchleaf/compiler/internal/emit/json"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
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
	Problems []string // entries and readings that could not be taken as they stand

	list plan.DueList
	on   due.Day
}

// Due says when each job that no error stands against is due at each machine, by a service
// book; an empty book is one in which nothing was done yet. It is an error when a day that
// is asked for is none, when a meter is of no machine, or when the book cannot be read.
func (r *Result) Due(look Look, asked Asked, book []byte) (*Due, error) {
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
	stands := standing.Of(jobs, units, kept, on)
	if asked.By != "" {
		stands = slices.DeleteFunc(stands, func(one standing.Standing) bool { return one.Answer.Day == 0 || one.Answer.Day > by })
	}
	out := &Due{Problems: f.problems, on: on}
	for _, problem := range kept.Problems {
		out.Problems = append(out.Problems, fmt.Sprintf("entry %d of the service book: %s", problem.Entry, problem.Text))
	}
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
	text     []byte        // of the book, as far as it is whole
	more     []entry.Entry // behind it
	faults   bool          // of the book were told
}

func (r *Result) fleet(asked Asked, book []byte) (*fleet, error) {
	out := &fleet{}
	var err error
	if out.on, err = due.ParseDay(asked.On); err != nil {
		return nil, err
	}
	var all []*model.Job
	for _, job := range r.Jobs {
		all = append(all, job.work.Job)
		if !job.Blocked {
			out.jobs = append(out.jobs, job.work.Job)
		}
	}
	out.units, out.problems = standing.Units(all, r.set.Units()) // a machine is there, whatever is wrong with a procedure
	out.text = book[:entry.Torn(book)]
	if torn := len(book) - len(out.text); torn > 0 {
		out.problems = append(out.problems, fmt.Sprintf("the last %d bytes of the service book were torn in writing and are left aside; the next entry puts them into a file of their own", torn))
	}
	for _, name := range slices.Sorted(maps.Keys(asked.Meters)) {
		if !slices.ContainsFunc(out.units, func(unit standing.Unit) bool { return unit.Name == name }) {
			return nil, fmt.Errorf("there is no machine %q; there are: %s", name, strings.Join(unitNames(out.units), ", "))
		}
		out.more = append(out.more, entry.Entry{Unit: name, Date: entry.Day(asked.On), Meter: asked.Meters[name]})
	}
	out.book, err = standing.Gather(out.units, out.on, out.scan)
	return out, err
}

// scan gives the entries in their order. What of the book cannot be read is told once, and
// the rest counts.
func (f *fleet) scan(each func(entry.Entry) error) error {
	err := entry.Scan(bytes.NewReader(f.text), func(e entry.Entry, _ int) error { return each(e) })
	var faults entry.Faults
	switch {
	case errors.As(err, &faults):
		if !f.faults {
			for _, fault := range faults {
				f.problems = append(f.problems, Bookfile+": "+fault.Error())
			}
		}
		f.faults = true
	case err != nil:
		return err
	}
	for _, one := range f.more {
		if err := each(one); err != nil {
			return err
		}
	}
	return nil
}

func unitNames(units []standing.Unit) []string {
	var out []string
	for _, unit := range units {
		out = append(out, unit.Name)
	}
	return out
}

// JSON is what is due for other programs, in a form that stays.
func (d *Due) JSON() []byte {
	return json.Due(d.on.String(), d.Rows, d.Problems)
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
		events = append(events, ical.Event{UID: row.Procedure + "." + row.Unit + "@benchleaf", Day: max(day, d.on), Title: row.Machine + ": " + row.Title, Note: strings.Join(note, "\n"), Categories: []string{row.Machine}})
	}
	return ical.Calendar(events, d.on)
}
