package standing

import (
	"fmt"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/quantity"
)

// Book is what a service book tells of each machine.
type Book struct {
	Problems []Problem

	units map[string]*history
	put   map[int]bool // numbers of entries that a later one stands for

	watched Watched
}

// Problem is an entry that could not be taken as it stands.
type Problem struct {
	Entry int // its number; its place in the book from 1, where it has none; below 0 for a reading that is in no book
	Text  string
}

// history is what was read and done at one machine.
type history struct {
	readings []due.Reading
	entries  []int // the entry of each reading
	done     map[string][]Done
	last     map[[2]string]Prompt // of what is watched, by procedure and name in small letters
}

// Done is one time a procedure was worked by.
type Done struct {
	Entry    int
	Day      due.Day
	Who      string
	Revision string
	Outside  int // readings outside of their limits
	LeftOut  int // steps left out or open

	reading int // index of the reading of the meter; -1 for none
}

// Gather takes the entries of a book up to a day, but for those that a later one stands
// for. scan gives the entries in their order, each with its number, as often as it is asked.
// Of readings it keeps the last of what is watched.
func Gather(units []Unit, watched Watched, on due.Day, scan func(func(entry.Entry) error) error) (*Book, error) {
	put := map[int]bool{}
	if err := scan(func(e entry.Entry) error {
		if e.Corrects > 0 {
			put[e.Corrects] = true
		}
		return nil
	}); err != nil {
		return nil, err
	}
	book := &Book{units: map[string]*history{}, put: put, watched: watched}
	err := scan(func(e entry.Entry) error {
		if !put[e.Number] {
			book.take(e, e.Number, units, on)
		}
		return nil
	})
	return book, err
}

// Replaced are the numbers of the entries that a later one stands for.
func (b *Book) Replaced() map[int]bool { return b.put }

func (b *Book) problem(number int, format string, args ...any) {
	b.Problems = append(b.Problems, Problem{number, fmt.Sprintf(format, args...)})
}

func (b *Book) take(e entry.Entry, number int, units []Unit, on due.Day) {
	if e.Unit == "" && e.Machine == "" && e.Procedure == "" && e.Meter == "" {
		return // of the store, or words alone
	}
	day, err := due.ParseDay(string(e.Date))
	if err != nil {
		b.problem(number, "it has no date")
		return
	}
	if day > on {
		return
	}
	unit, why := Owner(e, units)
	if why != "" {
		b.problem(number, "%s", why)
		return
	}
	kept := b.of(unit.Name)
	done := Done{Entry: number, Day: day, Who: e.Who, Revision: e.Revision, LeftOut: len(e.LeftOut) + len(e.Open), reading: -1}
	if e.Meter != "" || e.NewMeter != "" {
		value, problem := meter(e.Meter, unit.Meter)
		other, another := meter(e.NewMeter, unit.Meter)
		switch {
		case unit.Meter == "":
			b.problem(number, "%s has no meter, and the entry reads %s", unit.Name, e.Meter)
		case problem != "":
			b.problem(number, "meter = %q %s", e.Meter, problem)
		case e.NewMeter != "" && another != "":
			b.problem(number, "new-meter = %q %s", e.NewMeter, another)
		default:
			done.reading = len(kept.readings)
			kept.readings = append(kept.readings, due.Reading{Day: day, Value: value, Other: e.NewMeter != "", New: other})
			kept.entries = append(kept.entries, number)
		}
	}
	for _, reading := range e.Readings {
		if reading.Outside {
			done.Outside++
		}
	}
	kept.watch(e, number, day, b.watched)
	if e.Procedure != "" {
		kept.done[e.Procedure] = append(kept.done[e.Procedure], done)
	}
}

func (b *Book) of(unit string) *history {
	if b.units[unit] == nil {
		b.units[unit] = &history{done: map[string][]Done{}}
	}
	return b.units[unit]
}

// Owner is the machine an entry is of: the one it names, or the only one of its kind.
func Owner(e entry.Entry, units []Unit) (Unit, string) {
	var found []Unit
	for _, unit := range units {
		switch {
		case e.Unit != "":
			if unit.Name == e.Unit {
				return unit, ""
			}
		case strings.EqualFold(e.Machine, unit.Title) || strings.EqualFold(e.Machine, unit.MachineTitle) || e.Machine == unit.Machine:
			if e.Variant == "" || unit.Version == "" || e.Variant == unit.Version {
				found = append(found, unit)
			}
		}
	}
	switch {
	case e.Unit != "":
		return Unit{}, fmt.Sprintf("no machine here is named %q", e.Unit)
	case len(found) == 1:
		return found[0], ""
	case len(found) == 0:
		return Unit{}, fmt.Sprintf("no machine here is called %q", e.Machine)
	}
	var names []string
	for _, unit := range found {
		names = append(names, unit.Name)
	}
	return Unit{}, fmt.Sprintf("it does not say which of the machines it is of; write unit = %q, or another of: %s", names[0], strings.Join(names, ", "))
}

// meter reads what a meter stood at, in the unit of the meter; problem says what is wrong.
func meter(text, unit string) (value float64, problem string) {
	if text == "" {
		return 0, "is empty"
	}
	if figures, is := strings.CutSuffix(text, " "+unit); is && len(figures) < 12 && strings.Trim(figures, "0123456789") == "" {
		if value, err := strconv.ParseFloat(figures, 64); err == nil { // as nearly every reading is written
			return value, ""
		}
	}
	of, known := quantity.FindUnit(unit)
	if !known {
		return 0, "is of a machine that has no meter"
	}
	amount, problems := quantity.Parse(text, of.Dimension)
	low, bounded := amount.Min()
	high, topped := amount.Max()
	if len(problems) > 0 || !bounded || !topped || low.Cmp(high) != 0 {
		return 0, fmt.Sprintf("is no single figure in %s", unit)
	}
	value, _ = of.FromBase(low).Float64()
	return value, ""
}
