package pages

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"benchleaf/compiler/internal/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// costOf adds up what a way of sharing out costs; it is infinite when a side overflows.
func costOf(items []item, starts []int, free room) float64 {
	sum := 0.0
	for i, first := range starts {
		end := len(items)
		if i+1 < len(starts) {
			end = starts[i+1]
		}
		height := 0.0
		for k := first; k < end; k++ {
			height += items[k].height
			if k > first {
				height += items[k].above
			}
		}
		if height > free(first, end)+tiny {
			return math.Inf(1)
		}
		sum += costSide + turnCost(items, first) + blankCost(free(first, end)-height, free(first, end), blankOf(end == len(items), costLast))
	}
	return sum
}

// The search is held against trying every way there is.
func TestTurnsAreTheCheapestThereAre(t *testing.T) {
	dice := rand.New(rand.NewPCG(3, 5))
	for range 300 {
		n := 1 + dice.IntN(9)
		items := make([]item, n)
		for i := range items {
			items[i] = item{piece: piece{height: 1 + 9*dice.Float64()}, above: dice.Float64(), stays: i > 0 && dice.IntN(4) == 0, dear: []float64{costPart, costStage, costStep, costMeanwhile}[dice.IntN(4)]}
		}
		free := func(first, end int) float64 {
			if first == 0 || end == n {
				return 14
			}
			return 16
		}
		starts, _ := turns(items, free, costLast)
		require.Equal(t, 0, starts[0])
		best := math.Inf(1)
		for mask := range 1 << (n - 1) {
			way := []int{0}
			for i := 1; i < n; i++ {
				if mask&(1<<(i-1)) != 0 {
					way = append(way, i)
				}
			}
			best = min(best, costOf(items, way, free))
		}
		assert.InDelta(t, best, costOf(items, starts, free), 1e-6)
	}
}

func TestWhatStaysIsPartedOnlyWhenNoSideHoldsIt(t *testing.T) {
	free := func(int, int) float64 { return 10 }
	heading, step := item{piece: piece{height: 2}}, item{piece: piece{height: 7}, stays: true}
	starts, parted := turns([]item{{piece: piece{height: 4}}, heading, step}, free, costLast)
	assert.Equal(t, []int{0, 1}, starts)
	assert.False(t, parted)
	step.height = 9
	starts, parted = turns([]item{heading, step}, free, costLast)
	assert.Equal(t, []int{0, 1}, starts)
	assert.True(t, parted)
}

func TestACutHurtsNoLine(t *testing.T) {
	s := newSetter(Look{DistanceMM: 500}, plainWords(), nil)
	text := s.say(s.main(), 40, "One two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen")
	whole := piece{}
	whole.put(text, 0, 0)
	whole.mark(Panel{Rectangle: Rectangle{0, 0, 40, text.height}, Paint: Paint{Stroke: black, Line: 1}})
	whole = whole.named("frame", "")
	head, tail := whole.cut(text.height * 0.4)
	assert.Equal(t, len(whole.marks)+1, len(head.marks)+len(tail.marks), "every line once, the panel twice")
	for _, part := range []piece{head, tail} {
		require.Len(t, part.boxes, 1)
		assert.InDelta(t, part.height, part.boxes[0].Place.Height, 1e-9)
		for _, mark := range part.marks {
			top, bottom := mark.extent()
			assert.GreaterOrEqual(t, top, -1e-9)
			assert.LessOrEqual(t, bottom, part.height+1e-9)
		}
	}
}

// A sheet that is only read fills its first side; a long table goes over with three rows at least.
func TestALongTableGoesOverTheSide(t *testing.T) {
	rows := []item{{piece: piece{height: 4}}}
	for i := range 8 {
		rows = append(rows, item{piece: piece{height: 1}, stays: i == 0, dear: costTable})
	}
	keepTogether(rows[1:])
	free := func(_, _ int) float64 { return 11 }
	starts, parted := turns(rows, free, 0)
	assert.False(t, parted)
	assert.Equal(t, []int{0, 6}, starts)
}

// A card turns over between two things and not between refitting a plug and tightening it,
// but where every side is full.
func TestACardTurnsWhereTheHandsAreFree(t *testing.T) {
	stock, err := FindStock(DefaultStock)
	require.NoError(t, err)
	turned, within := 0, 0
	for pairs := 14; pairs <= 40; pairs++ {
		section := plan.Section{Title: "Work"}
		for i := range 2 * pairs {
			section.Steps = append(section.Steps, plan.Step{Number: i + 1, Action: []plan.Run{{Text: "Turn the plug."}}, GoesOn: i%2 == 1})
		}
		document, _ := LayCard(plan.Card{Title: "Plugs", Sections: []plan.Section{section}}, Look{Stock: stock})
		for _, side := range document.Sides[1:] {
			first := slices.IndexFunc(side.Boxes, func(box Box) bool { return box.Kind == "step" })
			number, err := strconv.Atoi(side.Boxes[first].ID)
			require.NoError(t, err)
			turned++
			if number%2 == 0 {
				within++
			}
		}
	}
	assert.Greater(t, turned, 50)
	assert.Less(t, within, turned/10, "turns between two steps at one thing, of %d", turned)
}
