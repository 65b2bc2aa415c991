package quantity

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const rounds = 5_000

// someFigure writes a figure the way one is written: few places, seldom a fraction.
func someFigure(r *rand.Rand) (text string, value *big.Rat) {
	switch r.IntN(8) {
	case 0:
		below := []int{2, 4, 8, 16, 32, 64}[r.IntN(6)]
		text = fmt.Sprintf("%d/%d", 1+r.IntN(below-1), below)
		value, _ = new(big.Rat).SetString(text)
		if whole := r.IntN(4); whole > 0 {
			text = fmt.Sprintf("%d-%s", whole, text)
			value.Add(value, big.NewRat(int64(whole), 1))
		}
		return text, value
	case 1:
		text = fmt.Sprint(1 + r.IntN(9))
	case 2, 3:
		text = fmt.Sprint(1 + r.IntN(99))
	case 4:
		text = fmt.Sprint(1 + r.IntN(5000))
	case 5:
		text = fmt.Sprintf("%.1f", 0.1+r.Float64()*50)
	case 6:
		text = fmt.Sprintf("%.2f", 0.01+r.Float64()*10)
	default:
		text = fmt.Sprintf("%.3f", 0.001+r.Float64())
	}
	value, _ = new(big.Rat).SetString(text)
	return text, value
}

// someAmount writes an amount of any unit and shape, as text.
func someAmount(r *rand.Rand) (text string, d Dimension) {
	unit := units[r.IntN(len(units))]
	for unit.Dimension == Length && unit.Symbol == "m" && r.IntN(2) == 0 {
		unit = units[r.IntN(len(units))]
	}
	one, a := someFigure(r)
	two, b := someFigure(r)
	if a.Cmp(b) > 0 {
		one, two = two, one
	}
	same := a.Cmp(b) == 0
	switch shape := r.IntN(7); {
	case shape == 0 && !same:
		text = one + " to " + two
	case shape == 1 && !same:
		text = two + " ± " + one
	case shape == 2:
		text = "max " + one
	case shape == 3:
		text = "min " + one
	case shape == 4:
		text = "about " + one
	case shape == 5 && !same && unit.Symbol != "%":
		return two + " " + unit.Symbol + " ± 5 %", unit.Dimension
	default:
		text = one
	}
	return withUnit(text, unit.Symbol, " "), unit.Dimension
}

func eachAmount(t *testing.T, check func(text string, a Amount)) {
	t.Helper()
	r := rand.New(rand.NewPCG(1, 2))
	for range rounds {
		text, d := someAmount(r)
		a, problems := Parse(text, d)
		require.Empty(t, errors(problems), text)
		check(text, a)
		if t.Failed() {
			return
		}
	}
}

// What is printed is read again: the author's figure exactly, a figure in both systems
// without the two disagreeing.
func TestPrintedAmountsAreReadAgain(t *testing.T) {
	eachAmount(t, func(text string, a Amount) {
		for _, s := range []System{Metric, Inch, Both, Neutral} {
			printed := a.Format(s)
			again, problems := Parse(printed, a.Dimension)
			for _, p := range problems {
				assert.Equal(t, Unusual, p.Kind, "%s prints as %s: %s", text, printed, p.Message)
			}
			if s == Both || s == Neutral || a.Unit.System == s || a.Unit.System == Neutral {
				assert.Equal(t, bounds(a), bounds(again), "%s prints as %s", text, printed)
				assert.Equal(t, a.Shape, again.Shape, printed)
				assert.Equal(t, printed, again.Format(s), "printing settles")
			}
			plain, problems := Parse(a.Plain(), a.Dimension)
			assert.Empty(t, errors(problems), a.Plain())
			assert.Equal(t, bounds(a), bounds(plain), a.Plain())
		}
	})
}

// Rounding is safe and small: no maximum is raised, no minimum lowered, a range stays
// one, and no figure is off by more than two significant figures can be.
func TestRoundingIsSafe(t *testing.T) {
	eachAmount(t, func(text string, a Amount) {
		unit, ok := a.partner()
		if !ok {
			return
		}
		printed := a.In(unit).Plain()
		got, problems := Parse(printed, a.Dimension)
		require.Empty(t, errors(problems), "%s prints as %s", text, printed)
		low, hasLow := a.Min()
		high, hasHigh := a.Max()
		gotLow, gotHasLow := got.Min()
		gotHigh, gotHasHigh := got.Max()
		require.Equal(t, hasLow, gotHasLow, printed)
		require.Equal(t, hasHigh, gotHasHigh, printed)
		switch a.Shape {
		case Range, Tolerance:
			assert.Equal(t, Range, got.Shape, printed)
			assert.Negative(t, gotLow.Cmp(gotHigh), "%s is a range", printed)
			fallthrough
		case AtLeast, AtMost:
			assert.True(t, !hasLow || gotLow.Cmp(low) >= 0, "%s lowers the minimum of %s", printed, text)
			assert.True(t, !hasHigh || gotHigh.Cmp(high) <= 0, "%s raises the maximum of %s", printed, text)
		}
		most := big.NewRat(1, 10)
		if a.Shape == Exact || a.Shape == About {
			most = big.NewRat(5, 100)
		}
		if hasLow {
			assert.True(t, within(low, gotLow, most, a), "%s is far from %s", printed, text)
		}
		if hasHigh {
			assert.True(t, within(high, gotHigh, most, a), "%s is far from %s", printed, text)
		}
	})
}

// within allows a share of the value, and of a temperature a degree.
func within(want, got, share *big.Rat, a Amount) bool {
	most := new(big.Rat).Mul(share, new(big.Rat).Abs(want))
	if a.Dimension == Temperature {
		most = big.NewRat(1, 1)
	}
	apart := new(big.Rat).Sub(want, got)
	return apart.Abs(apart).Cmp(most) <= 0
}

func TestScaledBounds(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	eachAmount(t, func(text string, a Amount) {
		if a.Dimension == Temperature {
			return
		}
		n := r.IntN(12)
		scaled := a.Scale(n)
		times := big.NewRat(int64(n), 1)
		for _, pair := range [][2]func() (*big.Rat, bool){{a.Min, scaled.Min}, {a.Max, scaled.Max}} {
			before, ok := pair[0]()
			after, still := pair[1]()
			require.Equal(t, ok, still)
			if ok {
				assert.Zero(t, new(big.Rat).Mul(before, times).Cmp(after), "%d times %s is %s", n, text, scaled.Plain())
			}
		}
		again, problems := Parse(scaled.Written, a.Dimension)
		assert.Empty(t, errors(problems), scaled.Written)
		assert.Equal(t, bounds(scaled), bounds(again), "%d times %s prints as %s", n, text, scaled.Written)
	})
}

func TestSumsAddUp(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	eachAmount(t, func(text string, a Amount) {
		figure, _ := someFigure(r)
		b, problems := Parse(withUnit(figure, a.Unit.Symbol, " "), a.Dimension)
		require.Empty(t, errors(problems))
		sum, ok := a.Add(b)
		require.Equal(t, a.Dimension != Temperature, ok, text)
		if !ok {
			return
		}
		other, ok := b.Add(a)
		require.True(t, ok)
		assert.Equal(t, bounds(sum), bounds(other), "the order does not matter")
		for _, pair := range [][3]func() (*big.Rat, bool){{a.Min, b.Min, sum.Min}, {a.Max, b.Max, sum.Max}} {
			x, ok := pair[0]()
			y, _ := pair[1]()
			z, still := pair[2]()
			require.Equal(t, ok, still, "%s and %s is %s", text, figure, sum.Plain())
			if ok {
				assert.Zero(t, x.Add(x, y).Cmp(z), "%s and %s is %s", text, figure, sum.Plain())
			}
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, text := range []string{"42 N·m", "35 to 40 N·m (26 to 30 lbf·ft)", "1-3/16 in", "max 0.5 mm", "38 ± 3 N·m", "25 +2/-1 mm", "1 h 15", "-20--10 °C",
		"10,5 N·m", ".5 in", "5'-3\"", "1 gal (US)", "90 lbf·in / 10 N·m", "about 2 L", "38 N·m ± 5 %", "quarter turn", "1½\"", "1 500 N·m", "2 t", "± 0.5 mm"} {
		for _, want := range []Dimension{Torque, Length, Time, Any} {
			f.Add(text, int(want))
		}
	}
	// Found by fuzzing.
	f.Add("±01Nm", int(Torque))
	f.Add("0C-0C", int(TemperatureDifference))
	f.Add("700000000000000\"", int(Length))
	f.Add("+-70000000000\"", int(Any))
	f.Add("0y+0-.", int(Calendar))
	f.Fuzz(func(t *testing.T, text string, number int) {
		want := Dimension(number)
		a, problems := Parse(text, want)
		for _, p := range problems {
			require.True(t, 0 <= p.Start && p.Start <= p.End && p.End <= len(text), "%q: %v", text, p)
			require.NotEmpty(t, p.Message)
			require.NotEmpty(t, p.Help)
		}
		require.Equal(t, len(errors(problems)) > 0, a.Dimension == None, "%q", text)
		if len(problems) > 0 {
			return
		}
		for _, s := range []System{Metric, Inch, Both} {
			printed := a.Format(s)
			again, problems := Parse(printed, a.Dimension)
			for _, p := range problems {
				require.Equal(t, Unusual, p.Kind, "%q prints as %q: %s", text, printed, p.Message)
			}
			require.Equal(t, a.Dimension, again.Dimension)
			if s == Both {
				require.Equal(t, bounds(a), bounds(again), "%q prints as %q", text, printed)
			}
		}
		metric := a.Format(Metric)
		again, _ := Parse(metric, a.Dimension)
		near(t, a, again, text+" prints as "+metric)
	})
}

// near holds a printed amount against its original: agree's margins, which the dual
// figure of an author is held to as well.
func near(t *testing.T, a, b Amount, what string) {
	t.Helper()
	if a.Unit.System == Neutral || a.Unit.System == b.Unit.System {
		require.Equal(t, bounds(a), bounds(b), what)
		return
	}
	require.True(t, agree(a, b), what)
}

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		Parse("35 to 40 N·m", Torque)
	}
}

func BenchmarkFormat(b *testing.B) {
	a, _ := Parse("35 to 40 N·m", Torque)
	for b.Loop() {
		_ = a.Format(Both)
	}
}

// What a file is to hold is the same amount in every figure, and settles at once; with the
// other system behind it too.
func TestSettledAmountsAreTheSame(t *testing.T) {
	eachAmount(t, func(text string, a Amount) {
		for _, written := range []string{text, a.Format(Both), strings.ReplaceAll(text, " to ", "-")} {
			a, problems := Parse(written, a.Dimension)
			if len(problems) > 0 {
				continue
			}
			again, problems := Parse(a.Settled(), a.Dimension)
			assert.Empty(t, problems, "%s settles as %s", written, a.Settled())
			assert.True(t, Alike(a, again), "%s settles as %s", written, a.Settled())
			assert.Equal(t, a.Settled(), again.Settled())
		}
	})
}

func TestSettled(t *testing.T) {
	for text, want := range map[string]string{
		"35-40Nm": "35 to 40 N·m", "25 ft-lb": "25 lbf·ft", "1 1/2in": "1-1/2 in", "½ inch": "1/2 in", "at most 0.50mm": "max 0.50 mm", "5 litres approx.": "about 5 L",
		"42 Nm/31 ft-lb": "42 N·m (31 lbf·ft)", "38±3Nm (28 ft-lb)": "38 ± 3 N·m (28 lbf·ft)", "1h15": "1 h 15 min", "10 +0.2/-0.1mm": "10 +0.2/-0.1 mm", "-5 deg C": "-5 °C", "1 500 rpm": "1 500 rpm",
		"max 3mm (0.12 in)": "max 3 mm (0.12 in)", "between 3 and 5 mm": "3 to 5 mm", "1 months": "1 month", "two turns": "2 turns", "90 deg": "90°",
	} {
		amount, _ := Parse(text, Any)
		assert.Equal(t, want, amount.Settled(), text)
	}
	one, _ := Parse("quarter turn", Angle)
	other, _ := Parse("1/4 turn", Angle)
	assert.False(t, Alike(one, other), "a word says less exactly")
	assert.True(t, Alike(Amount{}, Amount{}))
	assert.False(t, Alike(one, Amount{}))
}
