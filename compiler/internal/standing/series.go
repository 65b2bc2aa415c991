package standing

import (
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
	names := make([]string, len(units))
	for i, unit := range units {
		names[i] = unit.Name
	}
	if err := book.readAll(names, units, on, scan); err != nil {
		return nil, err
	}
	totals := map[string]map[int]float64{} // by machine and entry
	for _, unit := range units {
		meter, _, reads := book.of(unit.Name).join(unit)
		totals[unit.Name] = map[int]float64{}
		for _, point := range meter.Points {
			if point.Index >= 0 {
				totals[unit.Name][reads[point.Index].entry] = point.Total
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
				out = append(out, Series{Unit: unit, Procedure: e.Procedure, Step: reading.Step, What: reading.What})
			}
			point := Read{Entry: number, Day: day, Value: reading.Value, Outside: reading.Outside}
			point.Total, point.Metered = totals[unit.Name][number]
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
