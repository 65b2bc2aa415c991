package due

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// even is the points of a meter that gains so much every day, read every so many days.
func even(from Day, aDay float64, every, count int) []Point {
	var out []Point
	for k := range count {
		out = append(out, Point{from.AddDays(k * every), aDay * float64(k*every), k})
	}
	return out
}

var summer = []Season{{FromMonth: 4, FromDay: 1, ToMonth: 9, ToDay: 30, AWeek: 20}}

func pattern(t testing.TB, seasons ...Season) Pattern {
	t.Helper()
	p, err := NewPattern(seasons)
	require.NoError(t, err)
	return p
}

func TestEvenUseIsForecastToTheDay(t *testing.T) {
	u := Forecast(even(day(t, "2026-01-01"), 2, 30, 14), Pattern{})
	assert.Equal(t, ByReadings, u.Basis)
	assert.InDelta(t, 14, u.AWeek, 1e-9)
	last := u.Read
	assert.Equal(t, "2027-01-26", last.String())
	for ahead := 1; ahead < 2000; ahead += 7 {
		span, known := u.Reached(780 + 2*float64(ahead))
		require.True(t, known)
		assert.Equal(t, last.AddDays(ahead), span.Expected)
		value, known := u.On(last.AddDays(ahead))
		require.True(t, known)
		assert.InDelta(t, 780+2*float64(ahead), value.Expected, 1e-6)
		half := 0.25 / math.Sqrt(12) * 2 * float64(ahead) // twelve stretches within the year: more than 5 %
		assert.InDelta(t, value.Expected-half, value.Low, 1e-6)
		assert.InDelta(t, value.Expected+half, value.High, 1e-6)
	}
	between, known := u.On(day(t, "2026-01-16"))
	require.True(t, known)
	assert.Equal(t, Value{0, 30, 60}, between)
	past, known := u.Reached(45)
	require.True(t, known)
	assert.Equal(t, Span{day(t, "2026-01-02"), day(t, "2026-01-24"), day(t, "2026-01-31")}, past)
	before, known := u.Reached(0)
	require.True(t, known)
	assert.Equal(t, Span{day(t, "2026-01-01"), day(t, "2026-01-01"), day(t, "2026-01-01")}, before)
}

// The half width, worked out by hand from the formula in the doc of Forecast.
func TestTheSpanIsThatOfTheFormula(t *testing.T) {
	begin := day(t, "2026-03-01")
	u := Forecast([]Point{{begin, 0, 0}, {begin.AddDays(10), 50, 1}, {begin.AddDays(30), 80, 2}, {begin.AddDays(40), 130, 3}}, Pattern{})
	rate := 130.0 / 40
	var s2 float64
	for _, c := range []struct{ v, w float64 }{{50, 10}, {30, 20}, {50, 10}} {
		s2 += (c.v - rate*c.w) * (c.v - rate*c.w) / c.w
	}
	s2 /= 2
	half := 2 * math.Sqrt(s2*(200+200.0*200/40))
	value, known := u.On(u.Read.AddDays(200))
	require.True(t, known)
	assert.Greater(t, half, 0.25/math.Sqrt(3)*rate*200)
	assert.InDelta(t, 130+rate*200-half, value.Low, 1e-9)
	assert.InDelta(t, 130+rate*200, value.Expected, 1e-9)
	assert.InDelta(t, 130+rate*200+half, value.High, 1e-9)
}

func TestOnlyAboutTheLastTwelveMonthsCount(t *testing.T) {
	old := even(day(t, "2023-01-01"), 10, 28, 20)
	last := old[len(old)-1]
	points := append([]Point{}, old...)
	for k := 1; k <= 13; k++ {
		points = append(points, Point{last.Day.AddDays(30 * k), last.Total + 30*float64(k), len(points)})
	}
	assert.InDelta(t, 7, Forecast(points, Pattern{}).AWeek, 1e-9)
	// What is older counts where nothing else is there.
	assert.InDelta(t, 7, Forecast([]Point{{day(t, "2020-01-01"), 0, 0}, {day(t, "2026-01-01"), 2192, 1}}, Pattern{}).AWeek, 1e-9)
}

func TestFewReadingsAreUnknown(t *testing.T) {
	begin := day(t, "2026-05-04")
	near := []Point{{begin, 100, 0}, {begin.AddDays(3), 130, 1}, {begin.AddDays(6), 160, 2}}
	for name, c := range map[string]struct {
		points  []Point
		pattern Pattern
		basis   Basis
		why     Reason
	}{
		"none":                       {nil, Pattern{}, "", NoReadings},
		"one":                        {near[:1], Pattern{}, "", FewReadings},
		"too near":                   {near, Pattern{}, "", FewReadings},
		"still":                      {[]Point{{begin, 5, 0}, {begin.AddDays(90), 5, 1}}, Pattern{}, "", Idle},
		"still in the season":        {[]Point{{begin, 5, 0}, {begin.AddDays(90), 5, 1}}, pattern(t, summer...), ByPattern, ""},
		"a pattern and none":         {nil, pattern(t, summer...), ByPattern, ""},
		"a pattern and one":          {near[:1], pattern(t, summer...), ByPattern, ""},
		"still out of the season":    {[]Point{{begin.AddDays(180), 5, 0}, {begin.AddDays(240), 5, 1}}, pattern(t, summer...), ByPattern, ""},
		"moved out of the season":    {[]Point{{begin.AddDays(180), 5, 0}, {begin.AddDays(240), 65, 1}}, pattern(t, summer...), ByReadings, ""},
		"readings and pattern":       {[]Point{{begin, 5, 0}, {begin.AddDays(90), 65, 1}}, pattern(t, summer...), ByBoth, ""},
		"two, seven days apart":      {[]Point{{begin, 5, 0}, {begin.AddDays(7), 65, 1}}, Pattern{}, ByReadings, ""},
		"several near, one far back": {append([]Point{{begin.AddDays(-40), 20, 0}}, near...), Pattern{}, ByReadings, ""},
	} {
		u := Forecast(c.points, c.pattern)
		assert.Equal(t, c.basis, u.Basis, name)
		assert.Equal(t, c.why, u.Why, name)
		n := len(c.points)
		if n == 0 {
			_, known := u.Reached(1)
			assert.False(t, known, name)
			continue
		}
		last := c.points[n-1]
		_, known := u.Reached(last.Total + 1)
		assert.Equal(t, c.basis != "", known, name)
		_, known = u.On(last.Day + 1)
		assert.Equal(t, c.basis != "", known, name)
		_, known = u.On(c.points[0].Day - 1)
		assert.Equal(t, c.basis != "", known, name)
		span, known := u.Reached(last.Total)
		assert.True(t, known, "%s: what has been read is known", name)
		assert.LessOrEqual(t, span.Late, last.Day)
	}
}

func TestMeasuredUseScalesThePattern(t *testing.T) {
	p := pattern(t, summer...)
	// Half of what the pattern says, measured over the season.
	begin, end := day(t, "2026-03-31"), day(t, "2026-09-30")
	u := Forecast([]Point{{begin, 0, 0}, {end, 10.0 / 7 * 183, 1}}, p)
	assert.Equal(t, ByBoth, u.Basis)
	winter, known := u.On(day(t, "2027-03-31"))
	require.True(t, known)
	assert.InDelta(t, 10.0/7*183, winter.Expected, 1e-6, "no use in winter")
	next, known := u.On(day(t, "2027-09-30"))
	require.True(t, known)
	assert.InDelta(t, 2*10.0/7*183, next.Expected, 1e-6)
	span, known := u.Reached(10.0/7*183 + 10)
	require.True(t, known)
	assert.Equal(t, "2027-04-07", span.Expected.String(), "the first week of the season has 10 h")
	between, known := u.On(day(t, "2026-04-07"))
	require.True(t, known)
	assert.InDelta(t, 10, between.Expected, 1e-6)
}

func TestAPatternIsTakenOrRefused(t *testing.T) {
	winter := Season{FromMonth: 11, FromDay: 15, ToMonth: 2, ToDay: 28, AWeek: 14}
	p := pattern(t, winter, Season{FromMonth: 3, FromDay: 1, ToMonth: 3, ToDay: 31, AWeek: 7})
	aDay := func(text string) float64 { return p.weight(day(t, text)) * p.aDay }
	for text, want := range map[string]float64{"2026-11-14": 0, "2026-11-15": 2, "2026-12-31": 2, "2027-01-01": 2, "2027-02-28": 2, "2028-02-29": 2, "2027-03-01": 1, "2027-03-31": 1, "2027-04-01": 0} {
		assert.InDelta(t, want, aDay(text), 1e-12, text)
	}
	var sum float64
	for d := day(t, "2001-01-01"); d < day(t, "2401-01-01"); d++ {
		sum += p.weight(d)
	}
	assert.InDelta(t, daysAnEra, sum, 1e-6, "the mean of 400 years is 1")
	whole := pattern(t, Season{FromMonth: 7, FromDay: 1, ToMonth: 6, ToDay: 30, AWeek: 7})
	assert.InDelta(t, 1, whole.aDay, 1e-12)
	for name, bad := range map[string][]Season{
		"none":          nil,
		"no use":        {{4, 1, 9, 30, 0}},
		"no such day":   {{4, 31, 9, 30, 20}},
		"no such month": {{4, 1, 13, 1, 20}},
		"below none":    {{4, 1, 9, 30, -1}},
		"no number":     {{4, 1, 9, 30, math.NaN()}},
		"no end":        {{4, 1, 9, 30, math.Inf(1)}},
		"over another":  {summer[0], {9, 30, 10, 31, 5}},
		"around it":     {winter, {1, 5, 1, 6, 5}},
	} {
		_, err := NewPattern(bad)
		assert.Error(t, err, name)
	}
}

// someUse is a meter read at odd times, with some pattern or none.
func someUse(r *rand.Rand) (Use, []Point) {
	d, total := Day(700000+r.IntN(30000)), 1000*r.Float64()
	var points []Point
	for k := range r.IntN(12) {
		points = append(points, Point{d, total, k})
		gap := r.IntN(80)
		d, total = d.AddDays(gap), total+float64(gap)*8*r.Float64()*float64(r.IntN(4))
	}
	var p Pattern
	if r.IntN(3) == 0 {
		p, _ = NewPattern([]Season{{1 + r.IntN(12), 1 + r.IntN(28), 1 + r.IntN(12), 1 + r.IntN(28), 1 + 50*r.Float64()}})
	}
	return Forecast(points, p), points
}

func TestEveryForecastIsInOrder(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for range 150 {
		u, points := someUse(r)
		if len(points) == 0 {
			continue
		}
		from, to := points[0].Day-20, u.Read+400
		var before Value
		for d := from; d < to; d += Day(1 + r.IntN(20)) {
			value, known := u.On(d)
			if !known {
				continue
			}
			require.True(t, before.Low <= value.Low && before.Expected <= value.Expected && before.High <= value.High, "falls")
			require.True(t, 0 <= value.Low && value.Low <= value.Expected && value.Expected <= value.High, "%v", value)
			before = value
		}
		var last Span
		for total := points[0].Total; total < points[len(points)-1].Total+600; total += 40 * r.Float64() {
			span, known := u.Reached(total)
			if !known {
				continue
			}
			require.True(t, last.Early <= span.Early && last.Expected <= span.Expected && last.Late <= span.Late, "comes earlier")
			require.True(t, span.Early <= span.Expected && span.Expected <= span.Late, "%v", span)
			if span.Expected < Never {
				value, known := u.On(span.Expected)
				require.True(t, known)
				require.GreaterOrEqual(t, value.Expected, total-1e-6)
			}
			last = span
		}
	}
}

// Machines that run some days and not others, by chance: how often the day a service is
// reached lies in the span that was told for it. A normal one of two standard errors holds 95 %.
func TestTheSpanHoldsWhatItPromises(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 4))
	const machines = 1500
	held, width := 0, 0.0
	for range machines {
		runs, hours := 0.15+0.8*r.Float64(), 2+6*r.Float64()
		use := func() float64 {
			if r.Float64() > runs {
				return 0
			}
			return math.Min(24, hours*(0.3+1.4*r.Float64()))
		}
		d, total := Day(730000), 0.0
		points := []Point{{d, 0, 0}}
		for len(points) < 14 {
			for range 10 + r.IntN(35) {
				d, total = d+1, total+use()
			}
			points = append(points, Point{d, total, len(points)})
		}
		target := total + 100 + 400*r.Float64()
		span, known := Forecast(points, Pattern{}).Reached(target)
		require.True(t, known)
		for ; total < target; d++ {
			total += use()
		}
		if span.Early <= d && d <= span.Late {
			held++
		}
		width += float64(DaysBetween(span.Early, span.Late)) / float64(DaysBetween(points[13].Day, span.Expected))
	}
	assert.Greater(t, float64(held)/machines, 0.94)
	assert.Less(t, width/machines, 0.6, "and is no wider than it need be")
	t.Logf("%.1f %% held, mean width %.0f %% of the days ahead", 100*float64(held)/machines, 100*width/machines)
}
