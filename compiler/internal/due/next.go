package due

import "math"

// Interval is running time, calendar time or both; zeros bound nothing. Months and days
// together are one time after the other.
type Interval struct {
	Hours  float64 // or whatever else the meter counts
	Months int
	Days   int
}

func (i Interval) metered() bool { return i.Hours > 0 }

func (i Interval) dated() bool { return i.Months > 0 || i.Days > 0 }

func (i Interval) any() bool { return i.metered() || i.dated() }

// after is the day n intervals later.
func (i Interval) after(day Day, n int) Day {
	return day.AddMonths(n * max(i.Months, 0)).AddDays(n * max(i.Days, 0))
}

// From is what an interval is counted from.
type From int

const (
	FromDone     From = iota // the last time it was done
	FromSchedule             // a grid that stands still, whenever it is done
)

// Done is one time a job was done.
type Done struct {
	Day   Day
	Total float64 // running total of the meter; must be a point of the forecast
	Read  bool    // the total is known
}

// Job is what decides when a job is due.
type Job struct {
	Every Interval
	First Interval // since service began; counts where it is sooner than Every
	From  From
	Start Start
	Done  []Done // in any order; days after today do not count
	Soon  int    // days before it may be due that it is soon
	Other bool   // Every or First is of what the meter does not count, and counts for nothing

	Sooner []Sooner // what readings ask for that stand now
}

// State is how near a job is.
type State int

const (
	Overdue     State = iota // the latest day it is due on is past
	Due                      // today is one of the days it may be due on
	Soon                     // the first of them is near
	Later                    // it is not
	Unknown                  // nothing is known, see Reason
	OnCondition              // no interval rules it any more, or ever did
)

func (s State) String() string {
	return [...]string{"overdue", "due", "soon", "later", "unknown", "on condition"}[s]
}

// Limit is which end of an interval comes first.
type Limit string

const (
	ByMeter    Limit = "meter"
	ByCalendar Limit = "calendar" // also where both come on one day
	ByReading  Limit = "reading"  // one that makes it due at once
)

// Answer is when a job is due next.
type Answer struct {
	State    State
	Day      Day    // it is expected to be due on; 0 for none
	Span     Span   // days it may be due on; Expected is Day
	Limit    Limit  // which comes first; empty for none
	Calendar Day    // it is due on by the calendar alone; 0 for none
	Meter    Value  // running total it is due at; one figure three times where it is known
	Metered  bool   // Meter counts
	Reason   Reason // what of it is not known, also where the other limit is
	Sooner   int    // which of what readings ask for comes first, from 1; 0 where the job's own does
}

// Next tells when a job is due next: by the meter or by the calendar, whichever comes
// first. Where only one of them is known, that one counts, and Reason says what is not.
// What readings ask for counts beside them.
//
// Never done, it is due at First or at Every since service began, whichever comes first.
// From the last time it was done, it is due at Every after that; having been done once,
// First is over.
//
// From the schedule, the grid begins at First (at Every, where that is sooner or there is
// no First) since service began, and goes on by Every. A time done counts for the point of
// the grid that is nearest, for the later of two as near as each other; before the first
// point stands the begin of service. Next is the point behind that: the first that is more
// than half an interval away, and at the most one and a half. So done early it does not
// come twice, and done late none is left out.
// Hours and days have each a grid of their own. The grid of hours stands on what the meter
// showed when service began; that of days, where no such day is known, on the first time
// it was done.
//
// The total of a time done without a reading is taken from the forecast, and widens the span.
func Next(job Job, use Use, today Day) Answer {
	n := next{job: job, use: use}
	for _, done := range job.Done {
		if done.Day < firstDay || done.Day > today {
			continue
		}
		if n.last.Day == 0 || done.Day > n.last.Day || done.Day == n.last.Day && done.after(n.last) {
			n.last = done
		}
		if n.oldest == 0 || done.Day < n.oldest {
			n.oldest = done.Day
		}
	}
	return n.sooner(n.answer(today), today)
}

// after orders times done on one day: a total that is known, and the higher one.
func (d Done) after(other Done) bool {
	return d.Read && (!other.Read || d.Total > other.Total)
}

type next struct {
	job    Job
	use    Use
	last   Done // Day 0: never
	oldest Day
}

func (n next) answer(today Day) Answer {
	if !n.job.First.any() && !n.job.Every.any() {
		if n.job.Other {
			return Answer{State: Unknown, Reason: OtherMeter}
		}
		return Answer{State: OnCondition}
	}
	if n.last.Day == 0 && n.job.Start.Day == 0 {
		return Answer{State: Unknown, Reason: NeverDone}
	}
	var out Answer
	out.Calendar = n.calendar()
	span, metered := n.meter(&out)
	if n.job.Other {
		out.Reason = OtherMeter
	}
	switch {
	case out.Calendar == 0 && !metered && out.Reason == "":
		return Answer{State: OnCondition}
	case out.Calendar == 0 && !metered:
		out.State = Unknown
		return out
	case !metered || out.Calendar > 0 && out.Calendar <= span.Expected:
		out.Limit = ByCalendar
	default:
		out.Limit = ByMeter
	}
	if !metered {
		span = Span{Never, Never, Never}
	}
	if day := out.Calendar; day > 0 {
		span = Span{min(span.Early, day), min(span.Expected, day), min(span.Late, day)}
	}
	out.Day, out.Span = span.Expected, span
	n.state(&out, today)
	return out
}

// state says how near an answer is.
func (n next) state(out *Answer, today Day) {
	switch span := out.Span; {
	case today > span.Late:
		out.State = Overdue
	case today >= span.Early:
		out.State = Due
	case DaysBetween(today, span.Early) <= n.job.Soon:
		out.State = Soon
	default:
		out.State = Later
	}
}

// calendar is the day it is due on by the calendar, 0 for none.
func (n next) calendar() Day {
	first, every, start := n.job.First, n.job.Every, n.job.Start.Day
	begin, end := start, Day(0) // of the first interval
	for _, interval := range []Interval{first, every} {
		if start > 0 && interval.dated() && (end == 0 || interval.after(start, 1) < end) {
			end = interval.after(start, 1)
		}
	}
	switch {
	case n.last.Day == 0:
		return end
	case n.job.From == FromDone:
		if !every.dated() {
			return 0
		}
		return every.after(n.last.Day, 1)
	case start == 0:
		begin, end = n.oldest, 0
		if every.dated() {
			end = every.after(n.oldest, 1)
		}
	}
	if end == 0 || behind(n.last.Day, begin, end) {
		return end
	}
	if !every.dated() {
		return 0
	}
	anchor, skip := end, 0
	if end == every.after(begin, 1) { // months count from where service began
		anchor, skip = begin, 1
	}
	for k := skip + 1; ; k++ {
		begin, end = end, every.after(anchor, k)
		if end == Never || behind(n.last.Day, begin, end) {
			return end
		}
	}
}

// behind reports whether the end of an interval is more than half of it away.
func behind(done, begin, end Day) bool {
	return 2*DaysBetween(done, end) > DaysBetween(begin, end)
}

// meter is the days it is due on by the meter; false where there are none, with the reason
// in the answer if they are only not known.
func (n next) meter(out *Answer) (Span, bool) {
	if n.last.Day == 0 {
		least := least(n.job.First, n.job.Every)
		if least == 0 {
			return Span{}, false
		}
		target := n.job.Start.Meter + least
		return n.reached(out, Value{target, target, target})
	}
	base, known := Value{n.last.Total, n.last.Total, n.last.Total}, n.last.Read
	if !known {
		base, known = n.use.On(n.last.Day)
	}
	if n.job.From == FromSchedule {
		return n.gridded(out, base, known)
	}
	hours := n.job.Every.Hours
	switch {
	case !n.job.Every.metered():
		return Span{}, false
	case known:
		return n.reached(out, Value{base.Low + hours, base.Expected + hours, base.High + hours})
	}
	span, ok := n.use.after(n.last.Day, hours)
	if !ok {
		out.Reason = n.reason(NotRead)
	}
	return span, ok
}

func least(first, every Interval) float64 {
	switch {
	case first.metered() && every.metered():
		return math.Min(first.Hours, every.Hours)
	case first.metered():
		return first.Hours
	case every.metered():
		return every.Hours
	}
	return 0
}

// gridded is the days the next point of the grid of hours is reached on.
func (n next) gridded(out *Answer, base Value, known bool) (Span, bool) {
	first := least(n.job.First, n.job.Every)
	switch {
	case first == 0:
		return Span{}, false
	case !known:
		out.Reason = n.reason(NotRead)
		return Span{}, false
	}
	start, every := n.job.Start.Meter, 0.0
	if n.job.Every.metered() {
		every = n.job.Every.Hours
	}
	target := Value{point(start, first, every, base.Low), point(start, first, every, base.Expected), point(start, first, every, base.High)}
	if math.IsInf(target.Expected, 1) {
		return Span{}, false
	}
	return n.reached(out, target)
}

// point is the first point of a grid of hours that is more than half an interval behind a
// total; infinite where the grid ends with its first point.
func point(start, first, every, total float64) float64 {
	end := start + first
	switch {
	case 2*(end-total) > first:
		return end
	case every == 0:
		return math.Inf(1)
	}
	k := math.Max(1, math.Floor((total-end)/every+0.5)+1)
	return end + k*every
}

// reached turns totals into days.
func (n next) reached(out *Answer, target Value) (Span, bool) {
	out.Meter, out.Metered = target, true
	early, ok := n.use.Reached(target.Low)
	expected, okExpected := n.use.Reached(target.Expected)
	late, okLate := n.use.Reached(target.High)
	if !ok || !okExpected || !okLate {
		out.Reason = n.reason(NoReadings)
		return Span{}, false
	}
	return Span{early.Early, expected.Expected, late.Late}, true
}

// reason is why use is not known, or another reason where it is.
func (n next) reason(other Reason) Reason {
	if n.use.Why != "" {
		return n.use.Why
	}
	return other
}
