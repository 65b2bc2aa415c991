package join

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/sequence"
	"benchleaf/compiler/source"
)

// shop reads the demonstration shop.
func shop(t testing.TB) *model.Set {
	t.Helper()
	var files []*source.File
	root := "../../../procedures"
	require.NoError(t, filepath.WalkDir(root, func(path string, entry os.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, ".toml") || entry.Name() == "service-book.toml" {
			return err
		}
		text, err := os.ReadFile(path)
		name, _ := filepath.Rel(root, path)
		files = append(files, source.New(filepath.ToSlash(name), text))
		return err
	}))
	return model.Read(files, func(n int, do func(int)) {
		for i := range n {
			do(i)
		}
	})
}

func inputs(t testing.TB, set *model.Set, variant string, names ...string) []Input {
	t.Helper()
	var out []Input
	for _, name := range names {
		file := set.Procedure(name)
		require.NotNil(t, file, name)
		for _, job := range set.Jobs(file) {
			if job.Variant == variant {
				out = append(out, Input{Job: job, Needs: needs.Of(job)})
			}
		}
	}
	require.Len(t, out, len(names))
	return out
}

// By hand: the oil change of the six-metre deck waits 15 minutes while it drains. The chain and
// the bearings are behind the same guard and the same locks, so that these are taken off and put
// back once, and there is more than enough to do while it drains. Both jobs that end with a run
// both ways share one.
func TestADayAtTheDeck(t *testing.T) {
	set := shop(t)
	plan, err := Of(inputs(t, set, "six-metre", "log-deck-gearbox-oil", "log-deck-chain-tension", "log-deck-bearing-grease"), sequence.Budget{})
	require.NoError(t, err)
	assert.True(t, plan.Proved)
	assert.Equal(t, Changes{Isolations: 2, Covers: 1, Tools: plan.Changes.Tools, Seconds: plan.Changes.Seconds}, plan.Changes)
	assert.Equal(t, 6, plan.Without.Isolations, "two in each of three")
	assert.Equal(t, 3, plan.Without.Covers)
	require.Len(t, plan.Waits, 1)
	assert.EqualValues(t, 15*60, plan.Waits[0].Least)
	assert.Zero(t, plan.Waits[0].Idle)
	assert.EqualValues(t, 600, plan.Deeds[0].Seconds, "the deck runs warm before anything is locked")
	assert.Equal(t, "run", plan.Deeds[0].Step.Verb.Key)
	runs := 0
	for _, deed := range plan.Deeds {
		if deed.Step.Verb.Key == "run" {
			runs++
		}
	}
	assert.Equal(t, 3, runs, "to warm it, both ways for two, and for the bearings")
	assert.True(t, plan.Tools.Proved)
	assert.Len(t, plan.Tools.Tools, 21)
}

// Conditions of the start that cannot both be true are found, with both texts; a choice is let be.
func TestConditionsThatFight(t *testing.T) {
	set := shop(t)
	_, err := Of(inputs(t, set, "", "band-mill-weekly-clean-and-grease", "band-mill-guide-rollers"), sequence.Budget{})
	var fight *Conflict
	require.ErrorAs(t, err, &fight)
	assert.Equal(t, "The blade is off and hangs in the rack.", fight.Start.Text)
	assert.Equal(t, "A sharp blade is on and under tension.", fight.Than.Text)
	_, err = Of(inputs(t, set, "", "band-mill-drive-belt", "band-mill-guide-rollers"), sequence.Budget{})
	assert.NoError(t, err, "off or slack leaves a choice")
	_, err = Of(append(inputs(t, set, "", "band-mill-drive-belt"), inputs(t, set, "", "chipper-knife-turn")...), sequence.Budget{})
	assert.ErrorContains(t, err, "one job is of one machine")
}
