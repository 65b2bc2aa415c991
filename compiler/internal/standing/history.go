package standing

import (
	"cmp"
	"slices"

	"benchleaf/compiler/internal/due"
)

// history is what was read and done at one machine, as far as it decides what is due. It
// grows with the days on which something was read, and not with the entries.
//
// Of the readings of one day it keeps the lowest and the highest, and those at the times done
// that are kept. That is exact where all readings fit one after the other, each the one
// before: those of a day rise from the lowest to the highest, so those left away fit between
// them, and what is asked of a meter (the total at the end of a day, the first reading that
// reaches a total, the use from day to day) is answered by the first and the last of each day.
// On a day on which a meter was replaced readings count in the order they are given, and all
// stay.
//
// Where a reading does not fit, which of them are refused depends on every one of them, also
// on those that come years later, and each that is refused is told with its entry. Nothing can
// be left away then, so the book is read once more, and the machine keeps all its readings:
// 48 bytes for each.
type history struct {
	reads []read // by day
	count int    // of all readings that were taken
	all   bool   // every reading is kept
	done  map[string][]Done
	begun map[string]Done      // the last time a procedure was left with steps that are open
	last  map[[2]string]Prompt // of what is watched, by procedure and name in small letters
}

// read is a reading of a meter.
type read struct {
	due.Reading
	entry int
	order int // in the book, from 1; 0 for no reading
}

// take takes a reading that comes next in the book; whole says that its day keeps all.
func (h *history) take(reading due.Reading, entry int, whole bool) read {
	h.count++
	one := read{reading, entry, h.count}
	at := len(h.reads) // behind its day
	if at > 0 && h.reads[at-1].Day > one.Day {
		at, _ = slices.BinarySearchFunc(h.reads, one.Day+1, func(r read, day due.Day) int { return cmp.Compare(r.Day, day) })
	}
	day := h.reads[:at]
	switch n := len(day); {
	case whole || h.all || n == 0 || day[n-1].Day < one.Day:
		h.reads = slices.Insert(h.reads, at, one)
	case n == 1 || day[n-2].Day < one.Day:
		if one.Value < day[n-1].Value {
			at--
		}
		if one.Value != day[n-1].Value {
			h.reads = slices.Insert(h.reads, at, one)
		}
	case one.Value < day[n-2].Value:
		day[n-2] = one
	case one.Value > day[n-1].Value:
		day[n-1] = one
	}
	return one
}

// work takes a time a procedure was worked by. Of the oldest day it keeps one, of which only
// the day is asked for, and all of the latest day.
func (h *history) work(procedure string, one Done) {
	times := h.done[procedure]
	n := len(times)
	switch {
	case n == 0 || one.Day == times[n-1].Day:
		times = append(times, one)
	case one.Day > times[n-1].Day:
		times[0].read = read{}
		times = append(times[:1], one)
	case one.Day < times[0].Day:
		one.read = read{}
		if times[0].Day == times[n-1].Day {
			times = slices.Insert(times, 0, one)
		} else {
			times[0] = one
		}
	}
	h.done[procedure] = times
}

// begin takes a time a procedure was worked by, but not to its end.
func (h *history) begin(procedure string, one Done) {
	if h.begun == nil {
		h.begun = map[string]Done{}
	}
	if before, known := h.begun[procedure]; !known || one.Day >= before.Day {
		one.read = read{}
		h.begun[procedure] = one
	}
}

// join joins the readings of the meter of a machine. reads are those that Faults and Points
// name by their index.
func (h *history) join(unit Unit) (meter due.Meter, faults []due.Fault, reads []read) {
	reads = slices.Clone(h.reads)
	for _, times := range h.done {
		for _, one := range times {
			if one.read.order > 0 {
				reads = append(reads, one.read)
			}
		}
	}
	slices.SortFunc(reads, func(a, b read) int { return cmp.Compare(a.order, b.order) })
	reads = slices.CompactFunc(reads, func(a, b read) bool { return a.order == b.order })
	readings := make([]due.Reading, len(reads))
	for i, one := range reads {
		readings[i] = one.Reading
	}
	meter, faults = due.Join(unit.Start, most(unit), readings)
	return meter, faults, reads
}

// total is the running total of the meter at a reading; false where it was refused, or there
// is none. reads are those that were joined.
func total(meter due.Meter, reads []read, one read) (float64, bool) {
	at, known := slices.BinarySearchFunc(reads, one.order, func(r read, order int) int { return cmp.Compare(r.order, order) })
	if !known {
		return 0, false
	}
	return meter.Total(at)
}
