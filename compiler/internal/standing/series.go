package standing

import (
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
}

// Read is one time it was read.
type Read struct {
	Entry   int
	Day     due.Day
	Value   string // as it was written: "34 mm"
	Outside bool
	Total   float64 // running total of the meter
	Metered bool    // Total is known
}

// ReadAt gathers what was read at some machines up to a day, thing by thing, in the order
// they first come; book is that of the same scan.
func ReadAt(units []Unit, book *Book, on due.Day, scan func(func(entry.Entry) error) error) ([]Series, error) {
	var out []Series
	index := map[[3]string]int{}
	meters := map[string]due.Meter{}
	for _, unit := range units {
		meters[unit.Name] = book.meter(unit)
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
		history := book.of(unit.Name)
		for _, reading := range e.Readings {
			key := [3]string{unit.Name, e.Procedure, reading.What}
			at, known := index[key]
			if !known {
				at = len(out)
				index[key] = at
				out = append(out, Series{Unit: unit, Procedure: e.Procedure, Step: reading.Step, What: reading.What})
			}
			point := Read{Entry: number, Day: day, Value: reading.Value, Outside: reading.Outside}
			if i := slices.Index(history.entries, number); i >= 0 {
				point.Total, point.Metered = meters[unit.Name].Total(i)
			}
			out[at].Points = append(out[at].Points, point)
		}
		return nil
	})
	return out, err
}

// meter joins the readings of the meter of a machine.
func (b *Book) meter(unit Unit) due.Meter {
	meter, _ := due.Join(unit.Start, most(unit), b.of(unit.Name).readings)
	return meter
}

// most is what the meter of a machine can gain in a day; 0 where nothing bounds it.
func most(unit Unit) float64 {
	if unit.Meter == "h" {
		return due.HoursADay
	}
	return 0
}
