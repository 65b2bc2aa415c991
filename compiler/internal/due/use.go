package due

import (
	"math"
	"slices"
)

// Reason is why something is not known.
type Reason string

const (
	NeverDone   Reason = "it was never done, and the day service began is not known"
	NoReadings  Reason = "no reading of the meter is known"
	FewReadings Reason = "no two readings of the meter are 7 days apart, and no pattern of use is given"
	Idle        Reason = "the meter did not move between its readings"
	OtherMeter  Reason = "the meter does not count what the interval is of"
	NotRead     Reason = "what the meter stood at when it was done is not known"
)

// Basis is what a forecast rests on.
type Basis string

const (
	ByReadings Basis = "readings"
	ByBoth     Basis = "readings, spread as the pattern says"
	ByPattern  Basis = "pattern"
)

// Use is how the total of a meter grows. Its methods take a day to its end: what is used
// on a day is on the meter at the end of it.
type Use struct {
	Basis Basis   // empty where use is not known
	Why   Reason  // it is not known
	AWeek float64 // use a week, the mean of a year
	Read  Day     // of the last reading; 0 for none
	Stood bool    // the meter did not move between its readings, and the pattern is taken

	points  []Point
	pattern Pattern
	aDay    float64 // use on a mean day
	floor   float64 // least half width, as a share of what is expected
	spread  float64 // variance of the use of one mean day
	weeks   float64 // mean days it was measured over
}

const (
	apart    = 7   // days between readings that are held against each other
	yearBack = 335 // days that the readings looked at go back, about 12 months

	errors     = 2    // standard errors on either side
	leastShare = 0.05 // half width, of what is expected
	fewShare   = 0.25 // half width after one stretch, and of a pattern: a guess, no source

	horizon = 40 * 365 // days that are looked ahead; what comes later comes Never
)

// Forecast tells how totals will grow from how they grew. points are those of a Meter.
//
// The rate is what was used over about the last 12 months (back to the first reading that
// lies 335 days or more before the last; all readings where none does), over the days
// between; at least two readings 7 days apart are needed. A pattern spreads the measured
// use over the year, whatever its own level is. Where there are too few readings, or the
// pattern has no use where they lie and neither had the meter, or the meter stood still where
// the pattern has use, the pattern is taken as it stands. Where the meter moved though the pattern has no use there, it is left aside.
//
// The span comes from the scatter of use between readings at least 7 days apart, by the
// ratio estimator (Cochran, "Sampling Techniques", 3rd ed., 1977, ch. 6): with v used in w
// days of each of m stretches, W days in all and a rate R, the variance of one day is
// s² = Σ (v − R·w)²/w / (m − 1), and x days ahead the half width is twice
// √(s²·(x + x²/W)): the scatter of the days to come, and that of the rate. It is at least
// 5 %, and at least 25 %/√m, of the use expected in those days. A pattern alone has 25 %.
func Forecast(points []Point, pattern Pattern) Use {
	u := Use{points: points, pattern: pattern}
	if len(points) > 0 {
		u.Read = points[len(points)-1].Day
	}
	knots := stretches(points)
	if len(knots) < 2 {
		u.Why = FewReadings
		if len(points) == 0 {
			u.Why = NoReadings
		}
		return u.byPattern()
	}
	first, last := knots[0], knots[len(knots)-1]
	used := last.Total - first.Total
	over := u.pattern.between(first.Day, last.Day)
	if over == 0 && used == 0 {
		u.Why = Idle
		return u.byPattern()
	}
	u.Basis = ByBoth
	if over == 0 || pattern.share == nil {
		u.Basis, u.pattern = ByReadings, Pattern{}
		over = u.pattern.between(first.Day, last.Day)
	}
	if used == 0 {
		u.Basis, u.Why, u.Stood = "", Idle, pattern.share != nil
		return u.byPattern()
	}
	u.aDay, u.weeks = used/over, over
	stretches := float64(len(knots) - 1)
	for i := 1; i < len(knots); i++ {
		w := u.pattern.between(knots[i-1].Day, knots[i].Day)
		off := knots[i].Total - knots[i-1].Total - u.aDay*w
		u.spread += off * off / math.Max(w, 1)
	}
	u.spread /= math.Max(stretches-1, 1)
	u.floor = math.Max(leastShare, fewShare/math.Sqrt(stretches))
	u.AWeek = u.aDay * daysAWeek
	return u
}

func (u Use) byPattern() Use {
	if u.pattern.share != nil {
		u.Basis, u.Why = ByPattern, ""
		u.aDay, u.floor = u.pattern.aDay, fewShare
		u.AWeek = u.aDay * daysAWeek
	}
	return u
}

// stretches picks readings at least 7 days apart, from the last one back to about a year.
func stretches(points []Point) []Point {
	var out []Point
	for _, point := range slices.Backward(points) {
		n := len(out)
		if n == 0 || DaysBetween(point.Day, out[n-1].Day) >= apart {
			out = append(out, point)
		}
		if DaysBetween(point.Day, out[0].Day) >= yearBack {
			break
		}
	}
	slices.Reverse(out)
	return out
}

// Value is a total that is not known exactly: Low ≤ Expected ≤ High.
type Value struct{ Low, Expected, High float64 }

// ahead is what is used in x mean days.
func (u Use) ahead(x float64) Value {
	expected := u.aDay * x
	half := u.floor * expected
	if u.spread > 0 {
		half = math.Max(half, errors*math.Sqrt(u.spread*(x+x*x/u.weeks)))
	}
	return Value{math.Max(0, expected-half), expected, expected + half}
}

// On is the total at the end of a day. Between two readings it lies between them; before
// the first and after the last it is false where use is not known.
func (u Use) On(day Day) (Value, bool) {
	n := len(u.points)
	if n == 0 || day < firstDay || day > Never {
		return Value{}, false
	}
	first, last := u.points[0], u.points[n-1]
	if (day < first.Day || day > last.Day) && u.Basis == "" {
		return Value{}, false
	}
	if day < first.Day {
		less := u.ahead(u.pattern.between(day, first.Day))
		return Value{math.Max(0, first.Total-less.High), math.Max(0, first.Total-less.Expected), math.Max(0, first.Total-less.Low)}, true
	}
	if day > last.Day {
		more := u.ahead(u.pattern.between(last.Day, day))
		return Value{last.Total + more.Low, last.Total + more.Expected, last.Total + more.High}, true
	}
	at := n - 1
	for u.points[at].Day > day {
		at--
	}
	from := u.points[at]
	if from.Day == day {
		return Value{from.Total, from.Total, from.Total}, true
	}
	to := u.points[at+1]
	pattern := u.spreads(from.Day, to.Day)
	part := pattern.between(from.Day, day) / pattern.between(from.Day, to.Day)
	return Value{from.Total, math.Min(from.Total+(to.Total-from.Total)*part, to.Total), to.Total}, true
}

// spreads is the pattern that spreads the use between two readings: none where it has no
// use there.
func (u Use) spreads(from, to Day) Pattern {
	if u.pattern.between(from, to) == 0 {
		return Pattern{}
	}
	return u.pattern
}

// Span is a day that is not known exactly: Early ≤ Expected ≤ Late. What does not come
// within 40 years comes Never.
type Span struct{ Early, Expected, Late Day }

// Reached is the first day at whose end a total is reached. What was reached before the
// first reading counts as reached on its day. It is false where no reading is that high
// and use is not known.
func (u Use) Reached(total float64) (Span, bool) {
	at := slices.IndexFunc(u.points, func(p Point) bool { return p.Total >= total })
	switch {
	case len(u.points) == 0:
		return Span{}, false
	case at < 0:
		last := u.points[len(u.points)-1]
		return u.after(last.Day, total-last.Total)
	case at == 0:
		day := u.points[0].Day
		return Span{day, day, day}, true
	}
	from, to := u.points[at-1], u.points[at]
	span := Span{min(from.Day+1, to.Day), to.Day, to.Day}
	pattern := u.spreads(from.Day, to.Day)
	whole, sum := pattern.between(from.Day, to.Day), 0.0
	for day := span.Early; day < to.Day; day++ {
		sum += pattern.weight(day)
		if from.Total+(to.Total-from.Total)*sum/whole >= total {
			span.Expected = day
			break
		}
	}
	return span, true
}

// after is the day by which so much more than at the end of a day is used.
func (u Use) after(day Day, amount float64) (Span, bool) {
	if u.Basis == "" || day < firstDay || day > Never || math.IsNaN(amount) {
		return Span{}, false
	}
	const rounding = 1e-9
	amount *= 1 - rounding
	span := Span{Never, Never, Never}
	var x float64
	for d, end := day+1, min(day+horizon, Never-1); d <= end; d++ {
		x += u.pattern.weight(d)
		value := u.ahead(x)
		if span.Early == Never && value.High >= amount {
			span.Early = d
		}
		if span.Expected == Never && value.Expected >= amount {
			span.Expected = d
		}
		if value.Low >= amount {
			span.Late = d
			break
		}
	}
	return span, true
}
