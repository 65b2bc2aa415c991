package join

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/sequence"
)

// A plan for two is never below its bound nor longer than the plan for one, keeps the order of
// each procedure and its waits, changes the machine while nobody works at it, and has nobody
// at two things at once.
func TestPlansForTwo(t *testing.T) {
	for n := range 12 {
		in, _ := generatedInputs(t, uint64(n+1), 3+n%6)
		one, err := Of(in, sequence.Budget{})
		require.NoError(t, err)
		two, err := OfTwo(in, sequence.Budget{})
		require.NoError(t, err)
		assert.GreaterOrEqual(t, two.Length, two.Bound)
		assert.LessOrEqual(t, two.Length, one.Length)
		assert.False(t, two.Proved)
		last := map[int]int64{}  // end of what each person did
		number := map[int]int{}  // the last step of each procedure that was work
		ended := map[int]int64{} // and when
		for i, deed := range two.Deeds {
			assert.GreaterOrEqual(t, deed.Start, last[deed.Worker], "deed %d", i)
			last[deed.Worker] = deed.Start + deed.Seconds
			if deed.Change {
				for k, other := range two.Deeds {
					if k != i && !other.Change {
						assert.True(t, other.Start+other.Seconds <= deed.Start || other.Start >= deed.Start+deed.Seconds, "deed %d works while %d changes the machine", k, i)
					}
				}
				continue
			}
			assert.Greater(t, deed.Step.Number, number[deed.Input])
			assert.GreaterOrEqual(t, deed.Start, ended[deed.Input])
			number[deed.Input], ended[deed.Input] = deed.Step.Number, deed.Start+deed.Seconds
		}
		for _, wait := range two.Waits {
			from, to := two.Deeds[wait.From], two.Deeds[wait.To]
			assert.GreaterOrEqual(t, to.Start-from.Start-from.Seconds, wait.Least)
		}
		t.Logf("one %d, two %d, bound %d: at most %d %% above", one.Length, two.Length, two.Bound, two.Percent())
	}
}
