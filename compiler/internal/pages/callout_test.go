package pages

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"benchleaf/compiler/internal/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Discs keep their order and their distance, stay within their row, and stand as near to
// where they want to be as any other places do (least sum of squares).
func TestDiscsAreSpacedAsLittleAsNeeded(t *testing.T) {
	dice := rand.New(rand.NewPCG(3, 4))
	off := func(want, got []float64) float64 {
		sum := 0.0
		for i := range want {
			sum += (want[i] - got[i]) * (want[i] - got[i])
		}
		return sum
	}
	for range 300 {
		n := 1 + dice.IntN(8)
		const low, high, pitch = 5, 95, 10
		want := make([]float64, n)
		for i := range want {
			want[i] = dice.Float64() * 100
			if i > 0 {
				want[i] = max(want[i-1], want[i])
			}
		}
		got := spaced(want, low, high, pitch)
		ok := func(places []float64) bool {
			for i, x := range places {
				if x < low-1e-9 || x > high+1e-9 || i > 0 && x-places[i-1] < pitch-1e-9 {
					return false
				}
			}
			return true
		}
		assert.True(t, ok(got), "%v of %v", got, want)
		for range 400 {
			other := make([]float64, n)
			for i := range other {
				other[i] = got[i] + dice.NormFloat64()*2
			}
			if ok(other) {
				assert.GreaterOrEqual(t, off(want, other), off(want, got)-1e-9, "%v is nearer to %v than %v", other, want, got)
			}
		}
	}
}

func TestLinesToTheDiscsNeverCross(t *testing.T) {
	dice := rand.New(rand.NewPCG(5, 6))
	for range 300 {
		var pins []pin
		for i := range 2 + dice.IntN(12) {
			pins = append(pins, pin{number: i + 1, at: Point{100 * dice.Float64(), 40 * dice.Float64()}, above: true})
		}
		side := make([]*pin, len(pins))
		for i := range pins {
			side[i] = &pins[i]
		}
		spread(side, -4, 3, 97, 6)
		for i, a := range pins {
			for _, b := range pins[:i] {
				// Both lines as far as the height of the discs: the sign of four triangles.
				turn := func(p, q, r Point) bool { return (q.X-p.X)*(r.Y-p.Y)-(q.Y-p.Y)*(r.X-p.X) > 0 }
				da, db := Point{a.x, -4}, Point{b.x, -4}
				crossed := turn(da, a.at, db) != turn(da, a.at, b.at) && turn(db, b.at, da) != turn(db, b.at, a.at)
				assert.False(t, crossed, "%d and %d", a.number, b.number)
			}
		}
	}
}

// A dial shows its intervals clockwise from the top, each part as large as the others.
func TestADialHasAPartForEachInterval(t *testing.T) {
	marks := dial(Point{}, 10, 6, []bool{true, false, false, true})
	assert.Len(t, marks, 4)
	for i, mark := range marks {
		path := mark.(Path)
		sumX, sumY := path.From.X, path.From.Y
		for _, step := range path.Steps {
			sumX, sumY = sumX+step.To.X, sumY+step.To.Y
		}
		angle := math.Mod(math.Atan2(sumX, -sumY)*180/math.Pi+360, 360) // clockwise from the top
		assert.InDelta(t, 45+90*float64(i), angle, 6)
		assert.Equal(t, i == 0 || i == 3, path.Fill == black)
	}
}

// More numbers than two rows of discs take are refused, not crowded.
func TestTooManyCalloutsAreRefused(t *testing.T) {
	look, _ := Look{}.settled()
	s := newSetter(look, plan.Words{}, nil)
	body := piece{width: 60, height: 30}
	for n, fits := range map[int]bool{0: true, 8: true, 200: false} {
		var callouts []plan.Callout
		for i := range n {
			callouts = append(callouts, plan.Callout{Number: i + 1})
		}
		_, ok := s.pinned(body, 60, callouts, func(plan.Spot) Point { return Point{30, 15} }, func(Point) bool { return true })
		assert.Equal(t, fits, ok, "%d callouts", n)
	}
}

// What has no room says which stock has, and there it has.
func TestTooManyCalloutsNameTheStockThatTakesThem(t *testing.T) {
	card := plan.Card{Title: "Plugs", Map: &plan.Drawing{Outline: []plan.Spot{{}, {X: 9}, {X: 9, Y: 4}}}}
	for i := range 44 {
		card.Map.Callouts = append(card.Map.Callouts, plan.Callout{Number: i + 1, Spot: plan.Spot{X: 1, Y: 1}})
	}
	stock, err := FindStock("a6")
	require.NoError(t, err)
	_, problems := LayCard(card, Look{Stock: stock, DistanceMM: 400})
	require.Len(t, problems, 1)
	assert.Contains(t, problems[0].Text, "44 numbers")
	_, after, told := strings.Cut(problems[0].Text, "--stock ")
	require.True(t, told, problems[0].Text)
	name, _, _ := strings.Cut(after, " ")
	larger, err := FindStock(name)
	require.NoError(t, err)
	_, problems = LayCard(card, Look{Stock: larger, DistanceMM: 400})
	assert.Empty(t, problems)
}
