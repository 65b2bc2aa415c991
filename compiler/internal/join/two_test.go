package join

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/sequence"
)

// sides are the sides of a generated machine at which a step is done, by its text; nil where it
// does not say. Side 0 is apart from 1 and from 2, and those are not apart.
func sides(step *model.Step) (out []string) {
	if step.Area.Given {
		return step.Area.Names()
	}
	for _, object := range step.Objects {
		var n int
		for _, form := range []string{"bolt-%d", "drain-%d", "fill-%d", "box-%d"} {
			if _, err := fmt.Sscanf(object.Text.Text, form, &n); err == nil {
				out = append(out, fmt.Sprintf("side-%d", n%3))
			}
		}
	}
	return out
}

// abreast reports whether two steps may be done at once.
func abreast(one, other *model.Step) bool {
	a, b := sides(one), sides(other)
	if len(a) != 1 || len(b) != 1 || one.Verb.Key == "run" || other.Verb.Key == "run" {
		return false
	}
	return (a[0] == "side-0") != (b[0] == "side-0")
}

// Whatever each step of a plan for two really takes, as long as each person does theirs in
// order, waits for what once names and for the gates: nobody works while the machine is set
// otherwise or runs, two steps are at once only at sides that are apart and with all cut off,
// each procedure keeps its order and its waits. By the times of the plan the two are never at
// two things, and the plan is between its bound and the plan for one.
func TestPlansForTwo(t *testing.T) {
	if testing.Short() {
		t.Skip("one thing after the other: nothing that race could find")
	}
	dice := rand.New(rand.NewPCG(2, 7))
	atOnce, saved, gaps := 0, 0, []int64{}
	for n := range 60 {
		in, _ := generatedInputs(t, uint64(n+1), 2+n%6)
		one, err := Of(in, sequence.Budget{})
		require.NoError(t, err)
		two, err := OfTwo(in, sequence.Budget{})
		require.NoError(t, err)
		require.GreaterOrEqual(t, two.Length, two.Bound)
		if two.Workers == 0 {
			assert.NotEmpty(t, two.ForOne)
			two.ForOne = ""
			assert.Equal(t, one, two, "seed %d", n+1)
			continue
		}
		assert.False(t, two.Proved)
		require.Less(t, two.Length, one.Length)
		saved++
		gaps = append(gaps, 100*(two.Length-two.Bound)/two.Bound)
		for round := range 40 {
			slow := func(int) float64 { return 1 }
			if round > 0 {
				factors := make([]float64, len(two.Deeds))
				for d := range factors {
					factors[d] = 0.2 + 3*dice.Float64()*dice.Float64()
				}
				slow = func(d int) float64 { return factors[d] }
			}
			atOnce += done(t, two, slow, fmt.Sprintf("seed %d, round %d", n+1, round))
		}
		if t.Failed() {
			return
		}
	}
	slices.Sort(gaps)
	t.Logf("%d plans of %d jobs, %d pairs of steps at once; above the bound: median %d %%, most %d %%", saved, 60, atOnce, gaps[len(gaps)/2], gaps[len(gaps)-1])
	assert.Positive(t, saved)
	assert.Positive(t, atOnce)
}

// done does a plan with steps that take more or less than it lists, and counts the pairs that
// were done at once.
func done(t *testing.T, plan *Plan, slow func(int) float64, which string) (pairs int) {
	begin, end := make([]float64, len(plan.Deeds)), make([]float64, len(plan.Deeds))
	free := map[int]float64{}
	for d, deed := range plan.Deeds {
		begin[d] = free[deed.Worker]
		if deed.Worker == 0 {
			begin[d] = max(free[1], free[2])
		}
		for _, e := range deed.Once {
			require.Less(t, e, d, which)
			begin[d] = max(begin[d], end[e])
		}
		if deed.Gate >= 0 {
			wait := plan.Waits[deed.Gate]
			begin[d] = max(begin[d], end[wait.From]+float64(wait.Least))
		}
		end[d] = begin[d] + float64(deed.Seconds)*slow(d)
		free[deed.Worker] = end[d]
		if deed.Worker == 0 {
			free[1], free[2] = end[d], end[d]
		}
	}
	cut := 0 // energies that are cut off somewhere
	for _, deed := range plan.Deeds {
		cut = max(cut, len(deed.State.Cut))
	}
	number := map[int]int{}
	ended := map[int]float64{}
	for d, deed := range plan.Deeds {
		if !deed.Change {
			require.Greater(t, deed.Step.Number, number[deed.Input], which)
			require.GreaterOrEqual(t, begin[d], ended[deed.Input], which)
			number[deed.Input], ended[deed.Input] = deed.Step.Number, end[d]
		}
		for e, other := range plan.Deeds[:d] {
			if other.Worker == deed.Worker || end[e] <= begin[d] || end[d] <= begin[e] {
				continue
			}
			pairs++
			say := func(deed Deed) string {
				return fmt.Sprintf("%s %v of %d", deed.Step.Verb.Key, strings.Join(sides(deed.Step), ","), deed.Input)
			}
			require.True(t, !deed.Change && !other.Change && abreast(deed.Step, other.Step), "%s: %s and %s at once", which, say(other), say(deed))
			require.Len(t, deed.State.Cut, cut, which)
			require.Len(t, other.State.Cut, cut, which)
		}
	}
	return pairs
}
