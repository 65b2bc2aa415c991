package pages

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ticks are multiples of 1, 2 or 5 of a power of ten, no more than asked for; the axis holds
// what it held, and the figure at each tick is its number.
func TestTicksAreRound(t *testing.T) {
	dice := rand.New(rand.NewPCG(11, 12))
	plain := func(text string) string { return text }
	for range 3000 {
		scale := math.Pow(10, float64(dice.IntN(16)-8))
		a := axis{low: scale * dice.NormFloat64()}
		a.high = a.low + scale*math.Abs(dice.NormFloat64())*math.Pow(10, -float64(dice.IntN(4)))
		low, high, steps := a.low, a.high, 2+dice.IntN(12)
		a.round(steps, plain)
		require.GreaterOrEqual(t, len(a.ticks), 2)
		require.LessOrEqual(t, len(a.ticks), steps+1)
		step := a.ticks[1] - a.ticks[0]
		assert.LessOrEqual(t, a.low, low+step*1e-5)
		assert.GreaterOrEqual(t, a.high, high-step*1e-5)
		first := step / math.Pow(10, math.Floor(math.Log10(step)+1e-6))
		assert.True(t, math.Abs(first-1) < 1e-6 || math.Abs(first-2) < 1e-6 || math.Abs(first-5) < 1e-6, "step %g", step)
		for i, text := range a.texts {
			figure, err := strconv.ParseFloat(text, 64)
			require.NoError(t, err)
			assert.InDelta(t, a.ticks[i], figure, step*1e-3, "%q", text)
			assert.False(t, strings.HasPrefix(text, "-") && figure == 0, text)
		}
	}
}

// What cuts the frame is cut at its edge, and keeps its direction.
func TestLinesAreCutAtTheFrame(t *testing.T) {
	dice := rand.New(rand.NewPCG(13, 14))
	p := plot{frame: Rectangle{2, 3, 10, 6}}
	inside := func(at Point) bool {
		return at.X >= 2-tiny && at.X <= 12+tiny && at.Y >= 3-tiny && at.Y <= 9+tiny
	}
	point := func() Point { return Point{20*dice.Float64() - 4, 16*dice.Float64() - 3} }
	for range 3000 {
		a, b := point(), point()
		from, to, ok := p.within(a, b)
		seen := 0
		for i := range 201 {
			at := between(a, b, float64(i)/200)
			if !inside(at) {
				continue
			}
			seen++
			share := 0.0 // of the way along what is left
			if ok {
				share = ((at.X-from.X)*(to.X-from.X) + (at.Y-from.Y)*(to.Y-from.Y)) / (math.Pow(to.X-from.X, 2) + math.Pow(to.Y-from.Y, 2))
			}
			assert.True(t, ok && share > -1e-6 && share < 1+1e-6, "%v to %v", a, b)
		}
		if ok {
			assert.True(t, inside(from) && inside(to), "%v to %v", a, b)
			cross := (to.X-from.X)*(b.Y-a.Y) - (to.Y-from.Y)*(b.X-a.X)
			assert.InDelta(t, 0, cross, 1e-9)
		} else {
			assert.Zero(t, seen)
		}
	}
}
