package standing

import (
	"cmp"
	"slices"

	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/entry"
)

// Series is one thing that is read on one machine, time after time, in the order of the book.
type Series struct {
	Unit      Unit
	Procedure string
	Step      int
	What      string
	Points    []Read
	Ahead     float64 // running total less what the meter shows that is fitted now
}

// Read is one time it was read.
type Read struct {
	Entry   int
	Step    int
	Day     due.Day
	Value   string // as it was written: "34 mm"
	Outside bool
	Total   float64 // running total of the meter
	Metered bool    // Total is known
	Other   bool    // it was read on a meter that was replaced since
}

// Renewal is one time that what is measured was renewed.
type Renewal struct {
	Entry int
	Step  int // of the card that was worked by
	Day   due.Day
	Of    string // procedure
}

// RenewedAt gathers the times up to a day at which a part of a machine was renewed: renews says
// at which steps of a procedure that is done, none where at no step.
func RenewedAt(unit Unit, units []Unit, book *Book, on due.Day, renews func(procedure string) []int, scan func(func(entry.Entry) error) error) ([]Renewal, error) {
	var out []Renewal
	err := scan(func(e entry.Entry) error {
		day, err := due.ParseDay(string(e.Date))
		if err != nil || day > on || e.Procedure == "" || book.put[e.Number] {
			return nil
		}
		steps := renews(e.Procedure)
		if len(steps) == 0 {
			return nil
		}
		if of, why := Owner(e, units); why != "" || of.Name != unit.Name {
			return nil
		}
		for _, step := range steps {
			if len(e.Done) == 0 || slices.Contains(e.Done, step) {
				out = append(out, Renewal{Entry: e.Number, Step: step, Day: day, Of: e.Procedure})
			}
		}
		return nil
	})
	return out, err
}

// Before reports whether something was renewed before a reading was taken: on one day by their
// places in the book, and within one entry by their steps.
func (r Renewal) Before(read Read) bool {
	return cmp.Or(cmp.Compare(r.Day, read.Day), cmp.Compare(r.Entry, read.Entry), cmp.Compare(r.Step, read.Step)) < 0
}

// ReadAt gathers what was read at some machines up to a day, thing by thing, in the order
// they first come; book is that of the same scan.
func ReadAt(units []Unit, book *Book, on due.Day, scan func(func(entry.Entry) error) error) ([]Series, error) {
	var out []Series
	index := map[[3]string]int{}
	names := make([]string, len(units))
	for i, unit := range units {
		names[i] = unit.Name
	}
	if err := book.readAll(names, units, on, scan); err != nil {
		return nil, err
	}
	type stood struct { // what the meter stood at
		total float64
		other bool
	}
	totals, ahead := map[string]map[int]stood{}, map[string]float64{} // by machine and entry
	for _, unit := range units {
		meter, _, reads := book.of(unit.Name).join(unit)
		totals[unit.Name], ahead[unit.Name] = map[int]stood{}, meter.Ahead
		for _, point := range meter.Points {
			if point.Index >= 0 {
				read := reads[point.Index]
				totals[unit.Name][read.entry] = stood{point.Total, !meter.ShowsNow(point.Total, read.Value)}
			}
		}
	}
	err := scan(func(e entry.Entry) error {
		number := e.Number
		day, err := due.ParseDay(string(e.Date))
		if err != nil || day > on || e.Procedure == "" || len(e.Readings) == 0 || book.put[number] {
			return nil
		}
		unit, why := Owner(e, units)
		if why != "" {
			return nil // told when the book was gathered
		}
		for _, reading := range e.Readings {
			key := [3]string{unit.Name, e.Procedure, reading.What}
			at, known := index[key]
			if !known {
				at = len(out)
				index[key] = at
				out = append(out, Series{Unit: unit, Procedure: e.Procedure, Step: reading.Step, What: reading.What, Ahead: ahead[unit.Name]})
			}
			point := Read{Entry: number, Step: reading.Step, Day: day, Value: reading.Value, Outside: reading.Outside}
			if at, known := totals[unit.Name][number]; known {
				point.Total, point.Metered, point.Other = at.total, true, at.other
			}
			out[at].Points = append(out[at].Points, point)
		}
		return nil
	})
	return out, err
}

// most is what the meter of a machine can gain in a day; 0 where nothing bounds it.
func most(unit Unit) float64 {
	if unit.Meter == "h" {
		return due.HoursADay
	}
	return 0
}
