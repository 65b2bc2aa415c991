package compiler

import (
	"cmp"
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

// Servicebook is the name of the file with the service book of a shop, beside its shop file.
const Servicebook = "service-book.toml"

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
	on, err := due.ParseDay(asked.On)
	if err != nil {
		return nil, err
	}
	by := due.Never
	if asked.By != "" {
		if by, err = due.ParseDay(asked.By); err != nil {
			return nil, err
		}
	}
	var jobs []*model.Job
	for _, job := range r.Jobs {
		if !job.Blocked {
			jobs = append(jobs, job.work.Job)
		}
	}
	units, problems := standing.Units(jobs, r.set.Units())
	entries, err := entry.Read(book)
	if err != nil {
		return nil, err
	}
	for _, name := range slices.Sorted(maps.Keys(asked.Meters)) {
		if !slices.ContainsFunc(units, func(unit standing.Unit) bool { return unit.Name == name }) {
			return nil, fmt.Errorf("there is no machine %q; there are: %s", name, strings.Join(unitNames(units), ", "))
		}
		entries = append(entries, entry.Entry{Number: given, Unit: name, Date: entry.Day(asked.On), Meter: asked.Meters[name]})
	}
	elsewhere := r.elsewhere(units)
	kept, err := standing.Gather(units, on, func(each func(entry.Entry) error) error {
		for i, one := range entries {
			if elsewhere[strings.ToLower(cmp.Or(one.Unit, one.Machine))] {
				continue
			}
			if one.Number == 0 {
				one.Number = i + 1
			}
			if err := each(one); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	stands := standing.Of(jobs, units, kept, on)
	if asked.By != "" {
		stands = slices.DeleteFunc(stands, func(one standing.Standing) bool { return one.Answer.Day == 0 || one.Answer.Day > by })
	}
	out := &Due{Problems: problems, on: on}
	for _, problem := range kept.Problems {
		whose := fmt.Sprintf("entry %d of the service book", problem.Entry)
		if problem.Entry == given {
			whose = "given now"
		}
		out.Problems = append(out.Problems, whose+": "+problem.Text)
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
	out.Rows = out.list.Rows
	return out, nil
}

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
