package pagestest

import (
	"math"
	"math/rand/v2"

	"benchleaf/compiler/internal/plan"
)

// Trend is a chain that wears towards its limit.
func Trend() plan.Trend {
	low, high := 20.0, 30.0
	out := plan.Trend{Words: Words(), Shop: "Harrow Lane Mill", Machine: "Log-deck conveyor", What: "Chain slack", Unit: "mm", XTitle: "Hour meter, h",
		Low: &low, High: &high, Line: &plan.TrendLine{A: 19.7143, B: 0.00414286}, Date: "2026-11-27",
		Meets:   &plan.TrendMeeting{X: 2483, Early: 2163, Late: 2874, Text: "2480 h (2160 to 2870 h)"},
		Verdict: "If it goes on like this, it reaches 30 mm at 2480 h, likely between 2160 h and 2870 h."}
	days := []string{"2025-03-04", "2025-06-11", "2025-09-02", "2025-11-30", "2026-02-17", "2026-05-06", "2026-08-20", "2026-11-27"}
	for i, y := range []float64{21, 21.5, 23, 23.5, 25.5, 25, 27.5, 28} {
		out.Points = append(out.Points, plan.TrendPoint{X: 250 * float64(i+1), Y: y, Day: days[i]})
	}
	for x := 250.0; x <= 2900; x += 53 {
		half := 1.0706 * math.Sqrt(1+1.0/8+(x-1125)*(x-1125)/2.625e6)
		out.Band = append(out.Band, plan.TrendBand{X: x, Low: 19.7143 + 0.00414286*x - half, High: 19.7143 + 0.00414286*x + half})
	}
	return out
}

// RandomTrend makes a trend as no machine would have it: figures of any size, a line that
// has nothing to do with them, limits anywhere.
func RandomTrend(seed uint64) plan.Trend {
	g := dice{rand.New(rand.NewPCG(seed, 17))}
	scale := func() float64 { return math.Pow(10, float64(g.IntN(13)-5)) }
	sx, sy, dx, dy := scale(), scale(), 0.0, 0.0
	if g.IntN(3) == 0 {
		dx, dy = scale(), -scale()
	}
	out := plan.Trend{Words: Words(), Shop: g.text(3), Machine: g.text(g.upTo(4)), What: g.text(1 + g.upTo(8)), Unit: g.text(g.upTo(1)), XTitle: g.text(1 + g.upTo(4)),
		Verdict: g.text(g.upTo(30)), Date: "2026-01-31"}
	x := func() float64 { return dx + sx*g.Float64() }
	y := func() float64 { return dy + sy*g.NormFloat64() }
	for range g.upTo(60) {
		out.Points = append(out.Points, plan.TrendPoint{X: x(), Y: y(), Day: []string{"2026-01-31", "2025-12-01", ""}[g.IntN(3)], Outside: g.IntN(4) == 0, Before: g.IntN(5) == 0})
		if g.IntN(9) == 0 {
			last := out.Points[len(out.Points)-1]
			out.Points = append(out.Points, last, last)
		}
	}
	switch g.IntN(20) {
	case 0:
		out.Points = append(out.Points, plan.TrendPoint{X: math.NaN(), Y: math.Inf(1), Day: g.word()})
	case 1:
		for i := range out.Points {
			out.Points[i].X, out.Points[i].Y = 7, 7
		}
	}
	limit := func() *float64 {
		at := y()
		return []*float64{nil, &at}[g.IntN(2)]
	}
	out.Low, out.High = limit(), limit()
	if g.IntN(3) > 0 {
		out.Line = &plan.TrendLine{A: y(), B: g.NormFloat64() * sy / sx}
		for range g.upTo(20) {
			out.Band = append(out.Band, plan.TrendBand{X: x(), Low: y(), High: y()})
		}
		if g.IntN(2) == 0 {
			out.Meets = &plan.TrendMeeting{X: 3 * x(), Early: x(), Late: 5 * x(), Text: g.text(g.upTo(7))}
		}
	}
	return out
}
