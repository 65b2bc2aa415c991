package compose

import (
	"cmp"
	"math"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/standing"
	"benchleaf/compiler/internal/trend"
)

// Trend puts into words how one thing that is read has moved; blank is the place on the card
// it is written at, and fresh the days on which what is measured was renewed. It is false where no reading is a figure. It is an error when the
// shop's language has no words.
func Trend(work Work, series standing.Series, blank plan.Blank, fresh []standing.Renewal, on string, system quantity.System) (plan.Trend, bool, error) {
	w, err := newWriter(work, system)
	if err != nil {
		return plan.Trend{}, false, err
	}
	unit, known := quantity.FindUnit(blank.Unit)
	if blank.Unit == "" || !known {
		return plan.Trend{}, false, nil
	}
	out := plan.Trend{Words: w.words, Machine: series.Unit.Title, What: series.What, Unit: cmp.Or(w.words.Units[blank.Unit], blank.Unit), Date: on, Low: bound(blank.Low), High: bound(blank.High)}
	if work.Job.Shop != nil {
		out.Shop = work.Job.Shop.Title.Text
	}
	metered := !slices.ContainsFunc(series.Points, func(one standing.Read) bool { return !one.Metered })
	j := judge{writer: w, out: &out, symbol: cmp.Or(w.words.Units[series.Unit.Meter], series.Unit.Meter)}
	out.XTitle = w.words.Labels.Hours + ", " + j.symbol
	several := slices.ContainsFunc(series.Points, func(one standing.Read) bool { return one.Other })
	switch {
	case !metered:
		j.symbol = cmp.Or(w.words.Units["days"], "days")
		out.XTitle = w.words.Labels.Date + ", " + j.symbol
	case several: // no one meter has shown them all
		out.XTitle = w.words.Labels.TrendTotal + ", " + j.symbol
		j.ahead = series.Ahead
	}
	series.Points = slices.Clone(series.Points)
	slices.SortStableFunc(series.Points, func(a, b standing.Read) int { return cmp.Compare(a.Day, b.Day) })
	for _, one := range series.Points {
		amount, problems := quantity.Parse(one.Value, unit.Dimension)
		low, isLow := amount.Min()
		high, isHigh := amount.Max()
		if len(problems) > 0 || !isLow || !isHigh {
			continue
		}
		middle, _ := unit.FromBase(new(big.Rat).Quo(new(big.Rat).Add(low, high), big.NewRat(2, 1))).Float64()
		x := one.Total
		switch {
		case !metered:
			x = float64(one.Day - series.Points[0].Day)
		case !several:
			x -= series.Ahead
		}
		j.points, j.reads = append(j.points, trend.Point{X: x, Y: middle}), append(j.reads, one)
		out.Points = append(out.Points, plan.TrendPoint{X: x, Y: middle, Day: one.Day.String(), Outside: one.Outside})
	}
	if len(j.points) == 0 {
		return plan.Trend{}, false, nil
	}
	anew := j.cut(fresh, newOf(work.Job, series.Step, unit))
	j.judge()
	out.Verdict = strings.Join(append([]string{out.Verdict}, anew...), " ")
	if last := j.points[len(j.points)-1].X; several && metered {
		out.Verdict += " " + strings.NewReplacer("{total}", j.amount(last), "{shows}", j.at(last)).Replace(w.words.Labels.TrendAhead)
	}
	return out, true, nil
}

// judge holds the readings of a sheet while they are judged.
type judge struct {
	*writer
	out    *plan.Trend
	points []trend.Point
	reads  []standing.Read // of the points
	symbol string          // of the unit of x
	ahead  float64         // x less what the meter shows that is fitted now
}

// at is what the meter shows that is fitted now.
func (j *judge) at(x float64) string { return j.amount(max(0, x-j.ahead)) }

func (j *judge) amount(x float64) string { return j.plain(math.Round(x)) + "\u00a0" + j.symbol }

// newOf is what is read of something new at a step, in a unit; nil where nobody says.
func newOf(job *model.Job, step int, unit quantity.Unit) *float64 {
	for _, one := range job.Steps {
		for _, object := range one.Objects {
			if one.Number != step || object.Limit == nil || !object.Limit.New.OK || object.Limit.New.Dimension != unit.Dimension {
				continue
			}
			if least, ok := object.Limit.New.Min(); ok {
				value, _ := unit.FromBase(least).Float64()
				return &value
			}
		}
	}
	return nil
}

// cut leaves only the readings since what is measured was renewed, and says when that was.
// Where the book does not tell, it is so when a reading goes back as far as wear never does (see
// jumps).
func (j *judge) cut(fresh []standing.Renewal, new *float64) (said []string) {
	labels, at, why := j.words.Labels, 0, ""
	for i := 1; i < len(j.reads); i++ {
		switch {
		case slices.ContainsFunc(fresh, func(one standing.Renewal) bool { return one.Before(j.reads[i]) && !one.Before(j.reads[i-1]) }):
			at, why = i, labels.TrendRenewed
		case j.jumps(j.points[i-1].Y, j.points[i].Y, new):
			at, why = i, labels.TrendJumped
		}
	}
	if at == 0 {
		return nil
	}
	said = []string{strings.ReplaceAll(why, "{day}", j.reads[at].Day.String())}
	for i := range at {
		j.out.Points[i].Before = true
	}
	j.points = j.points[at:]
	return said
}

// jumps reports whether a reading goes so far back from the one before that something else is
// measured: where it is written what it is when new, by more than half of the way from there to
// the limit, and to within a quarter of it from new; else by more than all of the way from the
// best reading to the limit, or from one limit to the other. Common practice, no source.
func (j *judge) jumps(before, now float64, new *float64) bool {
	const rounding = 1e-9
	low, high := j.out.Low, j.out.High
	limit := cmp.Or(high, low)
	switch {
	case limit == nil:
		return false
	case low != nil && high != nil && new != nil: // it wears towards the limit that is farther away
		if limit = high; *new-*low > *high-*new {
			limit = low
		}
	case low != nil && high != nil:
		return math.Abs(now-before) > (*high-*low)*(1+rounding)
	}
	worn := func(value, from float64) float64 { return (value - from) / (*limit - from) } // 0 when new, 1 at the limit
	if new != nil {
		return *new != *limit && worn(before, *new)-worn(now, *new) > 0.5 && worn(now, *new) < 0.25
	}
	best := j.points[0].Y
	for _, point := range j.points {
		if limit == low {
			best = max(best, point.Y)
		} else {
			best = min(best, point.Y)
		}
	}
	return best != *limit && worn(before, best)-worn(now, best) > 1+rounding
}

func bound(text string) *float64 {
	value, err := strconv.ParseFloat(text, 64)
	if text == "" || err != nil {
		return nil
	}
	return &value
}

// judge lays the line through the readings and says where it goes, or why nothing is said.
func (j *judge) judge() {
	w, out, points, labels, at := j.writer, j.out, j.points, j.words.Labels, j.at
	line, why := trend.Fit(points)
	if why == trend.None && !line.Slopes() { // within its scatter, so there is no line to draw
		why = trend.Flat
	}
	if why != trend.None {
		out.Verdict = w.silence(why, len(points), "")
		return
	}
	out.Line = &plan.TrendLine{A: line.Intercept, B: line.Slope}
	limit, keeps, limited := 0.0, trend.Below, true
	switch {
	case out.High != nil && (out.Low == nil || line.Slope >= 0):
		limit = *out.High
	case out.Low != nil:
		limit, keeps = *out.Low, trend.Above
	default:
		limited = false
	}
	to := line.Last
	if limited {
		said := w.plain(limit) + "\u00a0" + out.Unit
		meeting, why := line.Meets(limit, keeps)
		switch why {
		case trend.None:
			out.Meets = &plan.TrendMeeting{X: meeting.X, Early: meeting.Early, Late: meeting.Late, Text: j.amount(meeting.X)} // as the axis counts
			out.Verdict = strings.NewReplacer("{limit}", said, "{at}", at(meeting.X), "{early}", at(meeting.Early), "{late}", at(meeting.Late)).Replace(labels.TrendMeeting)
			to = max(to, meeting.Late)
		case trend.Far:
			out.Verdict = strings.NewReplacer("{limit}", said, "{at}", at(meeting.X)).Replace(labels.TrendFar)
		default:
			out.Verdict = w.silence(why, len(points), said)
		}
	} else {
		out.Verdict = labels.TrendNoLimit
	}
	const places = 32
	for i := range places + 1 {
		x := line.First + (to-line.First)*float64(i)/places
		low, high := line.Band(x)
		out.Band = append(out.Band, plan.TrendBand{X: x, Low: low, High: high})
	}
}

// plain writes a figure as short as it is, with the decimal mark of the language.
func (w *writer) plain(value float64) string {
	text := strconv.FormatFloat(value, 'f', -1, 64)
	if w.words.Amounts.Comma {
		text = strings.Replace(text, ".", ",", 1)
	}
	return text
}

// silence says why nothing is said of a limit.
func (w *writer) silence(why trend.Reason, points int, limit string) string {
	labels := w.words.Labels
	text := map[trend.Reason]string{trend.Few: labels.TrendFew, trend.NoFigure: labels.TrendNoFigure, trend.NoSpread: labels.TrendNoSpread,
		trend.Flat: labels.TrendFlat, trend.Past: labels.TrendPast, trend.Away: labels.TrendAway}[why]
	return strings.NewReplacer("{n}", strconv.Itoa(points), "{least}", strconv.Itoa(trend.Least), "{limit}", limit).Replace(text)
}
