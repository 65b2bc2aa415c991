package compose

import (
	"cmp"
	"math"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/standing"
	"benchleaf/compiler/internal/trend"
)

// Trend puts into words how one thing that is read has moved; blank is the place on the card
// it is written at. It is false where no reading is a figure. It is an error when the
// shop's language has no words.
func Trend(work Work, series standing.Series, blank plan.Blank, on string, system quantity.System) (plan.Trend, bool, error) {
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
	symbol := cmp.Or(w.words.Units[series.Unit.Meter], series.Unit.Meter)
	out.XTitle = w.words.Labels.Hours + ", " + symbol
	if !metered {
		symbol = cmp.Or(w.words.Units["days"], "days")
		out.XTitle = w.words.Labels.Date + ", " + symbol
	}
	var points []trend.Point
	for _, one := range series.Points {
		amount, problems := quantity.Parse(one.Value, unit.Dimension)
		low, isLow := amount.Min()
		high, isHigh := amount.Max()
		if len(problems) > 0 || !isLow || !isHigh {
			continue
		}
		middle, _ := unit.FromBase(new(big.Rat).Quo(new(big.Rat).Add(low, high), big.NewRat(2, 1))).Float64()
		x := one.Total
		if !metered {
			x = float64(one.Day - series.Points[0].Day)
		}
		points = append(points, trend.Point{X: x, Y: middle})
		out.Points = append(out.Points, plan.TrendPoint{X: x, Y: middle, Day: one.Day.String(), Outside: one.Outside})
	}
	if len(points) == 0 {
		return plan.Trend{}, false, nil
	}
	w.judge(&out, points, symbol)
	return out, true, nil
}

func bound(text string) *float64 {
	value, err := strconv.ParseFloat(text, 64)
	if text == "" || err != nil {
		return nil
	}
	return &value
}

// judge lays the line through the readings and says where it goes, or why nothing is said.
func (w *writer) judge(out *plan.Trend, points []trend.Point, symbol string) {
	labels := w.words.Labels
	line, why := trend.Fit(points)
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
		at := func(x float64) string { return w.plain(math.Round(x)) + "\u00a0" + symbol }
		switch why {
		case trend.None:
			out.Meets = &plan.TrendMeeting{X: meeting.X, Early: meeting.Early, Late: meeting.Late, Text: at(meeting.X)}
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
