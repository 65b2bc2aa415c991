package due

import "cmp"

// Sooner is what a reading asks for while it stands.
type Sooner struct {
	Every Interval // since the last time the job was done; none where it is due at once
	Day   Day      // of the reading
}

// sooner lets what readings ask for count beside the job's own interval: what comes first
// counts, of two that come on one day the job's own, and then the one that stands first.
// An interval of a reading is counted from the last time the job was done, also where the
// job's own stands on a schedule; before the first time it is counted as the job's own is.
func (n next) sooner(own Answer, today Day) Answer {
	out := own
	for i, one := range n.job.Sooner {
		asked := Answer{Limit: ByReading, Day: one.Day, Span: Span{one.Day, one.Day, one.Day}}
		if one.Every.any() {
			other := n
			other.job.Every, other.job.From, other.job.Other = one.Every, FromDone, false
			asked = other.answer(today)
		}
		asked.Sooner = i + 1
		out = first(out, asked)
	}
	if out.Day > 0 {
		n.state(&out, today)
	}
	return out
}

// first is the answer that comes first, with every day that either may come on.
func first(own, asked Answer) Answer {
	out, other := own, asked
	if asked.Day > 0 && (own.Day == 0 || asked.Day < own.Day) || own.State == OnCondition && own.Day == 0 {
		out, other = asked, own
	}
	out.Reason = cmp.Or(out.Reason, other.Reason)
	if other.Calendar > 0 && (out.Calendar == 0 || other.Calendar < out.Calendar) {
		out.Calendar = other.Calendar
	}
	if out.Limit != ByReading && other.Metered && (!out.Metered || other.Meter.Expected < out.Meter.Expected) {
		out.Meter, out.Metered = other.Meter, true
	}
	if out.Day > 0 && other.Day > 0 {
		out.Span = Span{min(out.Span.Early, other.Span.Early), out.Day, min(out.Span.Late, other.Span.Late)}
	}
	return out
}
