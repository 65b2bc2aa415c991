package due

import (
	"cmp"
	"math"
	"slices"
)

// Reading is what a meter stood at on a day, in the unit of the meter.
type Reading struct {
	Day   Day
	Value float64 // of the meter that was fitted, or of the one that came off
	Other bool    // another meter took its place on that day
	New   float64 // what that one stood at
}

// Start is when service began, and what the meter stood at; a Day of 0 is not known.
type Start struct {
	Day   Day
	Meter float64
}

// Point is a running total: what one meter would stand at, had it never been replaced.
type Point struct {
	Day   Day
	Total float64
	Index int // of its reading, -1 for the start of service
}

// Meter is the readings of one meter, and of those that took its place, as running totals.
type Meter struct {
	Points []Point // by day, totals never falling
	Ahead  float64 // total less what the meter shows that is fitted last
}

// Why is what is wrong with a reading.
type Why string

const (
	NoReading Why = "is no reading: no day, or no amount from 0"
	TooEarly  Why = "is of a day before service began"
	Backwards Why = "is below an earlier reading"
	TooFast   Why = "is more than the days since an earlier reading can bring"
	TooHigh   Why = "is above a later reading"
	TooLow    Why = "is so low that the days up to a later reading cannot bring it"
)

// Fault is a reading that was refused.
type Fault struct {
	Index   int // of the reading
	Why     Why
	Against int // index of the reading it does not fit, -1 for the start of service or none
}

// HoursADay is the most that a meter of hours can gain in a day.
const HoursADay = 24.0

// Join makes running totals of readings in any order. Those of one day are taken to rise,
// unless another meter was fitted on it: then they stand as they are given. most is what
// the meter can gain in a day at the most (HoursADay for hours), 0 where nothing bounds it;
// the day of either reading counts in full.
//
// Readings that do not fit together are refused, as few as can be: one figure mistyped too
// high does not cost all that come after it. Of two that exclude each other the later goes.
func Join(start Start, most float64, readings []Reading) (Meter, []Fault) {
	var faults []Fault
	order := make([]int, 0, len(readings))
	for i, reading := range readings {
		switch {
		case reading.Day < firstDay || reading.Day > Never || !amount(reading.Value) || reading.Other && !amount(reading.New):
			faults = append(faults, Fault{i, NoReading, -1})
		case start.Day > 0 && reading.Day < start.Day:
			faults = append(faults, Fault{i, TooEarly, -1})
		default:
			order = append(order, i)
		}
	}
	sortReadings(order, readings)

	var meter Meter
	points := make([]Point, 0, len(order)+1)
	if start.Day > 0 && amount(start.Meter) {
		points = append(points, Point{start.Day, start.Meter, -1})
	}
	for _, i := range order {
		points = append(points, Point{readings[i].Day, readings[i].Value + meter.Ahead, i})
		if readings[i].Other {
			meter.Ahead += readings[i].Value - readings[i].New
		}
	}
	kept, refused := longest(points, most)
	meter.Points = kept
	faults = append(faults, refused...)
	slices.SortFunc(faults, func(a, b Fault) int { return a.Index - b.Index })
	return meter, faults
}

// Total is the running total of a reading, by its index; false where it was refused.
func (m Meter) Total(index int) (float64, bool) {
	at := slices.IndexFunc(m.Points, func(p Point) bool { return p.Index == index })
	if at < 0 {
		return 0, false
	}
	return m.Points[at].Total, true
}

// Shows is what the meter that is fitted last stands at when a total is reached.
func (m Meter) Shows(total float64) float64 { return total - m.Ahead }

// ShowsNow reports whether a reading that made a total is of the meter that is fitted last.
func (m Meter) ShowsNow(total, value float64) bool {
	const rounding = 1e-6
	return math.Abs(m.Shows(total)-value) <= rounding*math.Max(1, math.Abs(total))
}

func amount(value float64) bool { return value >= 0 && !math.IsInf(value, 1) }

// sortReadings orders readings by day, and by value within a day that has no other meter.
func sortReadings(order []int, readings []Reading) {
	other := map[Day]bool{}
	for _, i := range order {
		if readings[i].Other {
			other[readings[i].Day] = true
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := readings[a], readings[b]
		if x.Day != y.Day || other[x.Day] {
			return cmp.Compare(x.Day, y.Day)
		}
		return cmp.Compare(x.Value, y.Value)
	})
}

// fits reports whether a total can follow another, and why not.
func fits(from, to Point, most float64) (Why, bool) {
	const rounding = 1e-9
	gain := to.Total - from.Total
	slack := rounding * math.Max(1, math.Abs(from.Total))
	switch {
	case gain < -slack:
		return Backwards, false
	case most > 0 && gain > most*float64(DaysBetween(from.Day, to.Day)+1)+slack:
		return TooFast, false
	}
	return "", true
}

// window is how many points ahead a point is held against: more in a row that are all wrong
// are taken to be right.
const window = 500

// longest keeps the longest chain of points that each fit the one before, the start of
// service always; of chains as long as each other, the one that turns away the later points.
func longest(points []Point, most float64) (kept []Point, refused []Fault) {
	n := len(points)
	length, next := make([]int, n), make([]int, n)
	for i := n - 1; i >= 0; i-- {
		length[i], next[i] = 1, -1
		if i+1 < n && length[i+1] == n-i-1 { // all that comes after fits, so the next is the best there is
			if _, ok := fits(points[i], points[i+1], most); ok {
				length[i], next[i] = length[i+1]+1, i+1
				continue
			}
		}
		for j := i + 1; j < min(n, i+1+window); j++ {
			if _, ok := fits(points[i], points[j], most); ok && length[j]+1 > length[i] {
				length[i], next[i] = length[j]+1, j
			}
		}
	}
	if n == 0 {
		return nil, nil
	}
	at := 0
	for i := range points {
		if points[0].Index >= 0 && length[i] > length[at] {
			at = i
		}
	}
	kept = make([]Point, 0, length[at])
	chosen := make([]bool, n)
	for ; at >= 0; at = next[at] {
		chosen[at] = true
	}
	for i, point := range points {
		if chosen[i] {
			if len(kept) > 0 { // a rounding below
				point.Total = math.Max(point.Total, kept[len(kept)-1].Total)
			}
			kept = append(kept, point)
			continue
		}
		refused = append(refused, blame(points, chosen, i, most))
	}
	return kept, refused
}

// blame says which of its kept neighbours a point does not fit: it fits not both, or it
// would have been kept.
func blame(points []Point, chosen []bool, at int, most float64) Fault {
	fault := Fault{Index: points[at].Index, Why: TooHigh, Against: -1}
	for i := at - 1; i >= 0; i-- {
		if chosen[i] {
			if why, ok := fits(points[i], points[at], most); !ok {
				fault.Why, fault.Against = why, points[i].Index
				return fault
			}
			break
		}
	}
	for i := at + 1; i < len(points); i++ {
		if chosen[i] {
			fault.Against = points[i].Index
			if why, _ := fits(points[at], points[i], most); why == TooFast {
				fault.Why = TooLow
			}
			break
		}
	}
	return fault
}
