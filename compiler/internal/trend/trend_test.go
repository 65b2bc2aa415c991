package trend

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Norris, NIST Statistical Reference Datasets, linear regression, lower level of difficulty
// (www.itl.nist.gov/div898/strd/lls/data/Norris.shtml, Norris.dat): readings of an ozone
// monitor, and the certified values.
var norris = []Point{
	{0.2, 0.1}, {337.4, 338.8}, {118.2, 118.1}, {884.6, 888.0}, {10.1, 9.2}, {226.5, 228.1},
	{666.3, 668.5}, {996.3, 998.5}, {448.6, 449.1}, {777.0, 778.9}, {558.2, 559.2}, {0.4, 0.3},
	{0.6, 0.1}, {775.5, 778.1}, {666.9, 668.8}, {338.0, 339.3}, {447.5, 448.9}, {11.6, 10.8},
	{556.0, 557.7}, {228.1, 228.3}, {995.8, 998.0}, {887.6, 888.8}, {120.2, 119.6}, {0.3, 0.3},
	{0.3, 0.6}, {556.8, 557.6}, {339.1, 339.3}, {887.2, 888.0}, {999.0, 998.5}, {779.0, 778.9},
	{11.1, 10.2}, {118.3, 117.6}, {229.2, 228.9}, {669.1, 668.4}, {448.9, 449.2}, {0.5, 0.2},
}

func TestCertifiedValues(t *testing.T) {
	line, reason := Fit(norris)
	require.Equal(t, None, reason)
	for name, one := range map[string]struct{ certified, found float64 }{
		"intercept":           {-0.262323073774029, line.Intercept},
		"its standard error":  {0.232818234301152, line.InterceptError},
		"slope":               {1.00211681802045, line.Slope},
		"its standard error ": {0.429796848199937e-03, line.SlopeError},
		"residual deviation":  {0.884796396144373, line.Residual},
		"R squared":           {0.999993745883712, line.R2},
	} {
		assert.InEpsilon(t, one.certified, one.found, 1e-12, name)
	}
}

// Anscombe, Graphs in Statistical Analysis, The American Statistician 27 (1973): four sets
// that look nothing alike and share a line, y = 3.00 + 0.500 x, with 0.118 for the standard
// error of the slope and 0.667 for R² as printed there.
func TestFourSetsOfOneLine(t *testing.T) {
	x := []float64{10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5}
	fourth := []float64{8, 8, 8, 8, 8, 8, 8, 19, 8, 8, 8}
	for i, y := range [][]float64{
		{8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68},
		{9.14, 8.14, 8.74, 8.77, 9.26, 8.10, 6.13, 3.10, 9.13, 7.26, 4.74},
		{7.46, 6.77, 12.74, 7.11, 7.81, 8.84, 6.08, 5.39, 8.15, 6.42, 5.73},
		{6.58, 5.76, 7.71, 8.84, 8.47, 7.04, 5.25, 12.50, 5.56, 7.91, 6.89},
	} {
		var points []Point
		for j := range y {
			points = append(points, Point{x[j], y[j]})
			if i == 3 {
				points[j].X = fourth[j]
			}
		}
		line, reason := Fit(points)
		require.Equal(t, None, reason)
		assert.InDelta(t, 3.00, line.Intercept, 0.005)
		assert.InDelta(t, 0.500, line.Slope, 0.0005)
		assert.InDelta(t, 0.118, line.SlopeError, 0.0005)
		assert.InDelta(t, 0.667, line.R2, 0.001)
	}
}

// NIST/SEMATECH e-Handbook, 1.3.6.7.2, upper critical values; the columns are one-sided.
func TestQuantilesOfThePublishedTable(t *testing.T) {
	sides := []float64{0.90, 0.95, 0.975, 0.99, 0.995}
	for degrees, row := range map[int][]float64{
		1: {3.078, 6.314, 12.706, 31.821, 63.657}, 2: {1.886, 2.920, 4.303, 6.965, 9.925}, 3: {1.638, 2.353, 3.182, 4.541, 5.841},
		4: {1.533, 2.132, 2.776, 3.747, 4.604}, 5: {1.476, 2.015, 2.571, 3.365, 4.032}, 6: {1.440, 1.943, 2.447, 3.143, 3.707},
		7: {1.415, 1.895, 2.365, 2.998, 3.499}, 8: {1.397, 1.860, 2.306, 2.896, 3.355}, 9: {1.383, 1.833, 2.262, 2.821, 3.250},
		10: {1.372, 1.812, 2.228, 2.764, 3.169}, 13: {1.350, 1.771, 2.160, 2.650, 3.012}, 20: {1.325, 1.725, 2.086, 2.528, 2.845},
		25: {1.316, 1.708, 2.060, 2.485, 2.787}, 30: {1.310, 1.697, 2.042, 2.457, 2.750}, 40: {1.303, 1.684, 2.021, 2.423, 2.704},
		60: {1.296, 1.671, 2.000, 2.390, 2.660}, 100: {1.290, 1.660, 1.984, 2.364, 2.626},
	} {
		for i, published := range row {
			assert.InDelta(t, published, student(degrees, 2*sides[i]-1), 0.00051, "%d degrees, %g", degrees, sides[i])
		}
	}
	for i, published := range []float64{1.282, 1.645, 1.960, 2.326, 2.576} { // infinitely many
		assert.InDelta(t, published, student(100000, 2*sides[i]-1), 0.00051)
	}
}

// One and two degrees have quantiles in closed form (Abramowitz and Stegun, 26.7.3, 26.7.4).
func TestQuantilesInClosedForm(t *testing.T) {
	for _, share := range []float64{0.001, 0.1, 0.5, 0.9, 0.99, 0.999999} {
		assert.InEpsilon(t, math.Tan(share*math.Pi/2), student(1, share), 1e-9)
		assert.InEpsilon(t, share*math.Sqrt2/math.Sqrt(1-share*share), student(2, share), 1e-9)
	}
}

// worn are readings that rise by a slope from a start, with scatter.
func worn(dice *rand.Rand, n int, slope, start, scatter float64) []Point {
	var out []Point
	for i := range n {
		x := float64(i)*250 + dice.Float64()*100
		out = append(out, Point{x, start + slope*x + scatter*dice.NormFloat64()})
	}
	return out
}

func TestOtherUnitsAndOtherZerosChangeNothing(t *testing.T) {
	dice := rand.New(rand.NewPCG(1, 2))
	told := 0
	for range 300 {
		points := worn(dice, 4+dice.IntN(20), 0.004+0.004*dice.Float64(), 10, 1.5)
		line, reason := Fit(points)
		require.Equal(t, None, reason)
		limit := line.At(line.Last) + 3*dice.Float64() - 0.5
		meeting, why := line.Meets(limit, Below)
		sx, sy := math.Exp(8*dice.NormFloat64()), math.Exp(8*dice.NormFloat64()) // factors
		dx, dy := 1e4*dice.NormFloat64(), 100*dice.NormFloat64()                 // shifts, before the factors
		down := dice.IntN(2) == 0
		keeps := Below
		if down {
			sy, keeps = -sy, Above
		}
		moved := slices.Clone(points)
		for i, p := range moved {
			moved[i] = Point{sx * (p.X + dx), sy * (p.Y + dy)}
		}
		dice.Shuffle(len(moved), func(i, j int) { moved[i], moved[j] = moved[j], moved[i] })
		other, reason := Fit(moved)
		require.Equal(t, None, reason)
		assert.InEpsilon(t, line.Slope*sy/sx, other.Slope, 1e-8)
		assert.InEpsilon(t, line.Residual*math.Abs(sy), other.Residual, 1e-8)
		assert.InEpsilon(t, line.SlopeError*math.Abs(sy)/sx, other.SlopeError, 1e-8)
		assert.InEpsilon(t, line.R2, other.R2, 1e-8)
		again, whyNot := other.Meets(sy*(limit+dy), keeps)
		require.Equal(t, why, whyNot)
		if why == None {
			told++
			span := line.Last - line.First
			assert.InDelta(t, meeting.X, again.X/sx-dx, 1e-6*span)
			assert.InDelta(t, meeting.Early, again.Early/sx-dx, 1e-6*span)
			assert.InDelta(t, meeting.Late, again.Late/sx-dx, 1e-6*span)
		}
	}
	assert.Greater(t, told, 50)
}

// Residuals add up to nothing, alone and by x, and no line near by has a smaller sum of squares.
func TestNoOtherLineIsNearer(t *testing.T) {
	dice := rand.New(rand.NewPCG(3, 4))
	for range 100 {
		points := worn(dice, 4+dice.IntN(20), dice.NormFloat64()/100, 10, 1.5)
		line, _ := Fit(points)
		squares := func(a, b float64) (sum float64) {
			for _, p := range points {
				sum += (p.Y - a - b*p.X) * (p.Y - a - b*p.X)
			}
			return sum
		}
		sum, byX, least := 0.0, 0.0, squares(line.Intercept, line.Slope)
		for _, p := range points {
			sum += p.Y - line.At(p.X)
			byX += (p.Y - line.At(p.X)) * p.X
		}
		assert.InDelta(t, 0, sum, 1e-9)
		assert.InDelta(t, 0, byX, 1e-6)
		for range 20 {
			other := squares(line.Intercept+line.InterceptError*dice.NormFloat64(), line.Slope+line.SlopeError*dice.NormFloat64())
			assert.GreaterOrEqual(t, other, least*(1-1e-12))
		}
	}
}

func TestALineWithoutScatter(t *testing.T) {
	line, reason := Fit([]Point{{0, 10}, {100, 12}, {200, 14}, {300, 16}})
	require.Equal(t, None, reason)
	assert.InDelta(t, 0.02, line.Slope, 1e-15)
	assert.InDelta(t, 10, line.Intercept, 1e-12)
	assert.InDelta(t, 0, line.Residual, 1e-12)
	assert.InDelta(t, 1, line.R2, 1e-12)
	meeting, reason := line.Meets(20, Below)
	require.Equal(t, None, reason)
	for _, x := range []float64{meeting.X, meeting.Early, meeting.Late} {
		assert.InDelta(t, 500, x, 1e-9)
	}
}

// The edges of the band meet the limit where the interval begins and ends.
func TestTheIntervalEndsWhereTheBandMeetsTheLimit(t *testing.T) {
	dice := rand.New(rand.NewPCG(5, 6))
	told := 0
	for range 300 {
		line, _ := Fit(worn(dice, 4+dice.IntN(12), 0.005, 10, 1))
		limit := line.At(line.Last + 0.8*dice.Float64()*(line.Last-line.First))
		meeting, reason := line.Meets(limit, Below)
		if reason != None {
			continue
		}
		told++
		_, high := line.Band(meeting.Early)
		low, _ := line.Band(meeting.Late)
		assert.InEpsilon(t, limit, high, 1e-9)
		assert.InEpsilon(t, limit, line.At(meeting.X), 1e-9)
		assert.InEpsilon(t, limit, low, 1e-9)
		assert.Less(t, meeting.Early, meeting.X)
		assert.Less(t, meeting.X, meeting.Late)
	}
	assert.Greater(t, told, 200)
}

// In 90 of 100 shops the band holds the next reading, and a reading that is met with at an
// unknown x has that x in its interval.
func TestIntervalsHoldAsOftenAsTheySay(t *testing.T) {
	dice := rand.New(rand.NewPCG(7, 8))
	const shops, slope, start, scatter, at = 20000, 0.01, 10.0, 1.0, 2500.0
	band, interval, all := 0, 0, 0
	for range shops {
		line, _ := Fit(worn(dice, 8, slope, start, scatter))
		reading := start + slope*at + scatter*dice.NormFloat64()
		if low, high := line.Band(at); low <= reading && reading <= high {
			band++
		}
		meeting, reason := line.Meets(reading, Below)
		if reason != None {
			continue
		}
		all++
		if meeting.Early <= at && at <= meeting.Late {
			interval++
		}
	}
	assert.Greater(t, all, shops*99/100)
	assert.InDelta(t, Level, float64(band)/shops, 0.007)
	assert.InDelta(t, Level, float64(interval)/float64(all), 0.007)
}

// Of flat readings one in ten is taken to slope, as the level says.
func TestFlatReadingsAreSeldomSaidToSlope(t *testing.T) {
	dice := rand.New(rand.NewPCG(9, 10))
	const shops = 20000
	for _, n := range []int{4, 9} {
		slopes := 0
		for range shops {
			if line, _ := Fit(worn(dice, n, 0, 10, 1)); line.Slopes() {
				slopes++
			}
		}
		assert.InDelta(t, 1-Level, float64(slopes)/shops, 0.007)
	}
}

func TestWhatCannotBeSaidHasAReason(t *testing.T) {
	rising := []Point{{0, 10}, {100, 11.1}, {200, 11.9}, {300, 13}, {400, 14.1}}
	for name, one := range map[string]struct {
		points []Point
		want   Reason
	}{
		"none":          {nil, Few},
		"three":         {rising[:3], Few},
		"one meter":     {[]Point{{1e6 + 0.1, 1}, {1e6 + 0.1, 2}, {1e6 + 0.1, 3}, {1e6 + 0.1, 4}}, NoSpread},
		"not a number":  {[]Point{{0, 1}, {1, math.NaN()}, {2, 3}, {3, 4}}, NoFigure},
		"endless":       {[]Point{{0, 1}, {math.Inf(1), 2}, {2, 3}, {3, 4}}, NoFigure},
		"endless twice": {[]Point{{math.Inf(1), 1}, {math.Inf(1), 2}, {math.Inf(1), 3}, {math.Inf(1), 4}}, NoFigure},
		"overflow":      {[]Point{{0, 1e300}, {1e200, -1e300}, {2, 3}, {3, 4}}, NoFigure},
		"rising":        {rising, None},
	} {
		_, reason := Fit(one.points)
		assert.Equal(t, one.want, reason, name)
	}
	line, _ := Fit(rising)
	for name, one := range map[string]struct {
		limit float64
		keeps Side
		want  Reason
	}{
		"ahead":                  {15, Below, None},
		"not a number":           {math.NaN(), Below, NoFigure},
		"behind":                 {12, Below, Past},
		"behind a lower limit":   {15, Above, Past},
		"away from":              {9, Above, Away},
		"farther than they span": {30, Below, Far},
	} {
		meeting, reason := line.Meets(one.limit, one.keeps)
		assert.Equal(t, one.want, reason, name)
		switch reason {
		case None:
			assert.Greater(t, meeting.X, 400.0)
		case Far:
			assert.Equal(t, Meeting{X: 800}, meeting, name)
		default:
			assert.Zero(t, meeting, name)
		}
	}
	_, reason := Line{}.Meets(1, Below)
	assert.Equal(t, NoFigure, reason)
	flat, _ := Fit([]Point{{0, 20.1}, {100, 19.9}, {200, 20.2}, {300, 19.8}, {400, 20}})
	alike, _ := Fit([]Point{{0, 0.1}, {0.1, 0.1}, {0.2, 0.1}, {0.7, 0.1}})
	for _, line := range []Line{flat, alike} {
		_, reason := line.Meets(30, Below)
		assert.Equal(t, Flat, reason)
	}
	assert.Zero(t, alike.R2)
}

// Where the scatter is wide, no more is promised than the interval bears.
func TestFarPromisesNoMoreThanTheIntervalBears(t *testing.T) {
	line, _ := Fit([]Point{{0, 10}, {100, 13}, {200, 10.5}, {300, 13.5}, {400, 12.2}, {500, 15.5}})
	limit := line.At(line.Last + 1.05*(line.Last-line.First))
	meeting, reason := line.Meets(limit, Below)
	require.Equal(t, Far, reason)
	_, high := line.Band(meeting.X)
	assert.InEpsilon(t, limit, high, 1e-9)
	assert.Less(t, meeting.X, 1000.0)
	assert.GreaterOrEqual(t, meeting.X, line.Last)
}

func FuzzFit(f *testing.F) {
	f.Add(0.0, 1.0, 1.0, 2.0, 2.0, 3.0, 3.0, 4.5, 10.0)
	f.Fuzz(func(t *testing.T, ax, ay, bx, by, cx, cy, dx, dy, limit float64) {
		line, reason := Fit([]Point{{ax, ay}, {bx, by}, {cx, cy}, {dx, dy}})
		if reason != None {
			return
		}
		for _, keeps := range []Side{Below, Above} {
			meeting, reason := line.Meets(limit, keeps)
			assert.True(t, finite(meeting.X, meeting.Early, meeting.Late))
			if reason == None {
				assert.GreaterOrEqual(t, meeting.X, line.Last)
				assert.LessOrEqual(t, meeting.Early, meeting.Late)
			}
		}
	})
}
