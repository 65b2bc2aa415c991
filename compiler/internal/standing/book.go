package standing

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
)

// Book is what a service book tells of each machine.
type Book struct {
	Problems []Problem
	Worked   map[string]Worked // by the procedures that the entries name
	Strange  map[string]Worked // by why it is not told which machine here the entries are of

	units   map[string]*history
	put     map[int]bool     // numbers of entries that a later one stands for
	fitted  map[due.Day]bool // days on which some meter was replaced
	watched Watched
}

// Worked is how often the entries of a book say something, as that a procedure was worked by.
type Worked struct {
	Times int
	Last  int // number of the last such entry
}

func (w Worked) more(number int) Worked { return Worked{w.Times + 1, number} }

// Problem is an entry that could not be taken as it stands.
type Problem struct {
	Entry int // its number; its place in the book from 1, where it has none; below 0 for a reading that is in no book
	Text  string
}

// Done is one time a procedure was worked by, to its end or with steps that are open.
type Done struct {
	Entry    int
	Day      due.Day
	Who      string
	Revision string
	Outside  int // readings outside of their limits
	LeftOut  int // steps left out
	Open     int // steps neither done nor left out

	read read // of the meter
}

// Gather takes the entries of a book up to a day, but for those that a later one stands
// for. scan gives the entries in their order, each with its number, as often as it is asked;
// what is kept of them does not grow with their number (see history). Of readings it keeps the
// last of what is watched.
func Gather(units []Unit, watched Watched, on due.Day, scan func(func(entry.Entry) error) error) (*Book, error) {
	book := &Book{Worked: map[string]Worked{}, Strange: map[string]Worked{}, units: map[string]*history{}, put: map[int]bool{}, fitted: map[due.Day]bool{}, watched: watched}
	var numbers entry.Numbers
	if err := scan(func(e entry.Entry) error {
		numbers.Take(e.Number)
		switch {
		case e.Corrects > 0 && e.Number > 0 && e.Corrects >= e.Number:
			book.problem(e.Number, "it corrects entry %d, which is none before it, so that it takes nothing out", e.Corrects)
		case e.Corrects > 0:
			book.put[e.Corrects] = true
		}
		if e.NewMeter != "" {
			if day, err := due.ParseDay(string(e.Date)); err == nil {
				book.fitted[day] = true
			}
		}
		return nil
	}); err != nil {
		return nil, err
	}
	for _, number := range slices.Sorted(maps.Keys(book.put)) {
		if numbers.Twice(number) {
			delete(book.put, number)
			book.problem(number, "it is to be put right by a later entry, but several have its number, so all of them count")
		}
	}
	if err := scan(func(e entry.Entry) error {
		if !book.put[e.Number] {
			book.take(e, e.Number, units, on)
		}
		return nil
	}); err != nil {
		return nil, err
	}
	var unfit []string
	for _, unit := range units {
		if _, faults, _ := book.of(unit.Name).join(unit); len(faults) > 0 {
			unfit = append(unfit, unit.Name)
		}
	}
	return book, book.readAll(unfit, units, on, scan)
}

// readAll reads the book once more, and keeps every reading of the meters of some machines.
func (b *Book) readAll(of []string, units []Unit, on due.Day, scan func(func(entry.Entry) error) error) error {
	if len(of) == 0 {
		return nil
	}
	for _, name := range of {
		kept := b.of(name)
		kept.reads, kept.count, kept.all = nil, 0, true
	}
	return scan(func(e entry.Entry) error {
		unit, day, problem, is := placed(e, units, on)
		if !is || problem != "" || b.put[e.Number] || !slices.Contains(of, unit.Name) {
			return nil
		}
		if reading, is, _ := readingOf(e, unit, day); is {
			b.of(unit.Name).take(reading, e.Number, true)
		}
		return nil
	})
}

// Replaced are the numbers of the entries that a later one stands for.
func (b *Book) Replaced() map[int]bool { return b.put }

func (b *Book) problem(number int, format string, args ...any) {
	b.Problems = append(b.Problems, Problem{number, fmt.Sprintf(format, args...)})
}

const noDate = "it has no date"

// placed is the machine and the day an entry is of; false where it is of neither, or of a day
// that is not looked at.
func placed(e entry.Entry, units []Unit, on due.Day) (unit Unit, day due.Day, problem string, is bool) {
	if e.Unit == "" && e.Machine == "" && e.Procedure == "" && e.Meter == "" {
		return Unit{}, 0, "", false // of the store, or words alone
	}
	day, err := due.ParseDay(string(e.Date))
	if err != nil {
		return Unit{}, 0, noDate, true
	}
	if day > on {
		return Unit{}, 0, "", false
	}
	unit, problem = Owner(e, units)
	return unit, day, problem, true
}

// readingOf is the reading of the meter of an entry; false where it has none that can be read.
func readingOf(e entry.Entry, unit Unit, day due.Day) (reading due.Reading, is bool, problem string) {
	if e.Meter == "" && e.NewMeter == "" {
		return due.Reading{}, false, ""
	}
	value, problem := meter(e.Meter, unit.Meter)
	other, another := meter(e.NewMeter, unit.Meter)
	switch {
	case unit.Meter == "":
		return due.Reading{}, false, fmt.Sprintf("%s has no meter, and the entry reads %s", unit.Name, e.Meter)
	case e.Meter == "":
		return due.Reading{}, false, fmt.Sprintf("new-meter = %q stands without meter; add meter, what the old one stood at last (--meter)", e.NewMeter)
	case problem != "":
		return due.Reading{}, false, fmt.Sprintf("meter = %q %s", e.Meter, problem)
	case e.NewMeter != "" && another != "":
		return due.Reading{}, false, fmt.Sprintf("new-meter = %q %s", e.NewMeter, another)
	}
	return due.Reading{Day: day, Value: value, Other: e.NewMeter != "", New: other}, true, ""
}

func (b *Book) take(e entry.Entry, number int, units []Unit, on due.Day) {
	unit, day, why, is := placed(e, units, on)
	if !is {
		return
	}
	if why != "" {
		if why == noDate {
			b.problem(number, "%s", why)
		} else {
			b.Strange[why] = b.Strange[why].more(number)
		}
		return
	}
	kept := b.of(unit.Name)
	done := Done{Entry: number, Day: day, Who: e.Who, Revision: e.Revision, LeftOut: len(e.LeftOut), Open: len(e.Open)}
	reading, is, why := readingOf(e, unit, day)
	if why != "" {
		b.problem(number, "%s", why)
	}
	if is {
		done.read = kept.take(reading, number, b.fitted[day])
	}
	for _, reading := range e.Readings {
		if reading.Outside {
			done.Outside++
		}
	}
	kept.watch(e, number, day, b.watched)
	if e.Procedure == "" {
		return
	}
	b.Worked[e.Procedure] = b.Worked[e.Procedure].more(number)
	if done.Open > 0 {
		kept.begin(e.Procedure, done)
	} else {
		kept.work(e.Procedure, done)
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
		return Unit{}, NoUnit(e.Unit, units)
	case len(found) == 1:
		return found[0], ""
	case len(found) == 0:
		return Unit{}, fmt.Sprintf("no machine here is called %q", e.Machine)
	}
	names := names(found)
	return Unit{}, fmt.Sprintf("it does not say which of the machines it is of; write unit = %q, or another of: %s", names[0], strings.Join(names, ", "))
}

// mostNamed is how many machines are named where one is not known.
const mostNamed = 12

// NoUnit says that a name is that of no machine, and which is meant: one of those that are of
// the kind of that name, or the nearest, or one of all there are.
func NoUnit(name string, units []Unit) string {
	said := fmt.Sprintf("no machine here is named %q", name)
	var kind []Unit
	for _, unit := range units {
		if strings.EqualFold(name, unit.Machine) || strings.EqualFold(name, unit.MachineTitle) || strings.EqualFold(name, unit.Title) {
			kind = append(kind, unit)
		}
	}
	all := names(units)
	switch near := model.Nearest(name, all); {
	case len(kind) > 0:
		return said + "; of that kind there are: " + strings.Join(names(kind), ", ")
	case near != "":
		return said + fmt.Sprintf("; did you mean %q?", near)
	case len(all) > 0 && len(all) <= mostNamed:
		return said + "; there are: " + strings.Join(all, ", ")
	}
	return said
}

func names(units []Unit) []string {
	out := make([]string, len(units))
	for i, unit := range units {
		out[i] = unit.Name
	}
	return out
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
