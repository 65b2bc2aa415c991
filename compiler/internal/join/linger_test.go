package join

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/sequence"
	"benchleaf/compiler/source"
)

const (
	offAndProved = "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n"
	onAgain      = "[[close]]\nrestore = \"mains\"\n"
)

// verbs are the verbs of a plan, with whose steps they are.
func verbs(plan *Plan) (out []string) {
	for _, deed := range plan.Deeds {
		out = append(out, string(rune('A'+deed.Input))+" "+deed.Step.Verb.Key)
	}
	return out
}

// A wait between cutting off and proving is waited out there, whoever's work comes next; two
// authors with the same wait wait once.
func TestAWaitBeforeProvingStaysThere(t *testing.T) {
	discharged := "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nwait = \"10 min\"\nuntil = \"the inverter has discharged\"\n[[prepare]]\nprove = \"mains\"\n"
	waits := discharged + "[[step]]\nclean = \"the belt\"\n" + onAgain
	not := offAndProved + "[[step]]\nremove = \"lid\"\n[[step]]\nclean = \"the pan\"\n[[step]]\nrefit = \"lid\"\n" + onAgain
	for _, jobs := range [][]string{{waits, not}, {not, waits}} {
		plan, written := joinedOf(t, jobs...)
		said := verbs(plan)
		for i, verb := range said[:3] {
			assert.Contains(t, verb, []string{"isolate", "wait", "prove"}[i], "%s", written)
		}
		assert.Equal(t, int64(600), plan.Deeds[1].Seconds)
		assert.Equal(t, plan.Deeds[1].Start+600, plan.Deeds[2].Start)
	}
	plan, written := joinedOf(t, waits, waits)
	count := 0
	for _, deed := range plan.Deeds {
		if deed.Step.Verb.Key == "wait" {
			count++
			assert.Len(t, deed.Also, 1, written)
		}
	}
	assert.Equal(t, 1, count)
}

// What cools down behind a run is waited for with nothing in between: neither the work of others
// nor the cover that its author takes off when it is cold.
func TestAWaitBehindAChangeIsWaitedOut(t *testing.T) {
	hot := offAndProved + "[[step]]\nclean = \"the pulley\"\n[[step]]\nrestore = \"mains\"\n[[step]]\nrun = \"the rig\"\nleast = \"5 min\"\n[[step]]\nisolate = \"mains\"\n[[step]]\nprove = \"mains\"\n" +
		"[[step]]\nwait = \"15 min\"\nuntil = \"the guard is cold\"\n[[step]]\nremove = \"guard\"\n[[step]]\nmark = \"the belt\"\n[[step]]\nrefit = \"guard\"\n" + onAgain
	other := offAndProved + "[[step]]\nremove = \"guard\"\n[[step]]\nclean = \"the seat\"\n[[step]]\nrefit = \"guard\"\n" + onAgain
	for _, jobs := range [][]string{{hot, other}, {other, hot}} {
		plan, written := joinedOf(t, jobs...)
		run := slices.IndexFunc(plan.Deeds, func(deed Deed) bool { return deed.Step.Verb.Key == "run" })
		require.Positive(t, run)
		var said []string
		for _, deed := range plan.Deeds[run : run+5] {
			said = append(said, deed.Step.Verb.Key)
		}
		assert.Equal(t, []string{"run", "isolate", "prove", "wait", "remove"}, said, written)
		wait := plan.Deeds[run+3]
		assert.GreaterOrEqual(t, plan.Deeds[run+4].Start, wait.Start+900)
		assert.NotContains(t, wait.State.Off, "guard")
	}
}

// What is put back or taken off behind a wait stays as it is while it runs; what is wet or turned
// over does not fill a wait in which something sets.
func TestWhatIsLeftAloneWhileAWaitRuns(t *testing.T) {
	drying := offAndProved + "[[step]]\nremove = \"lid\"\n[[step]]\nclean = \"the pan\"\n[[step]]\nwait = \"30 min\"\nuntil = \"the pan is dry\"\n[[step]]\nrefit = \"lid\"\n[[step]]\nmark = \"the lid\"\n" + onAgain
	within := func(words string) bool {
		plan, written := joinedOf(t, drying, offAndProved+"[[step]]\ninspect = \""+words+"\"\ntime = \"3 min\"\n"+onAgain)
		require.Len(t, plan.Waits, 1, written)
		at := slices.IndexFunc(plan.Deeds, func(deed Deed) bool { return deed.Step.Verb.Key == "inspect" })
		lid := slices.IndexFunc(plan.Deeds, func(deed Deed) bool { return deed.Change && deed.Step.Verb.Key == "refit" })
		wait := plan.Waits[0]
		assert.GreaterOrEqual(t, plan.Deeds[lid].Start, plan.Deeds[wait.From].Start+plan.Deeds[wait.From].Seconds+wait.Least, "the lid waits: %s", written)
		return at > wait.From && at < wait.To
	}
	assert.True(t, within("the fuse"))
	assert.False(t, within("the bearings, turned by hand"))
	assert.False(t, within("the drain with the water hose"))
}

// An author who leaves the machine cut off or open is not joined with others: his last steps would
// be lost.
func TestWhoLeavesTheMachineOpenIsNotJoined(t *testing.T) {
	leaves := offAndProved + "[[step]]\nclean = \"the belt\"\n[[step]]\nremove = \"lid\"\n"
	whole := offAndProved + "[[step]]\nclean = \"the pan\"\n" + onAgain
	var in []Input
	for _, job := range jobsOf(t, leaves, whole) {
		in = append(in, Input{Job: job, Needs: needs.Of(job)})
	}
	_, err := Of(in, sequence.Budget{})
	var fight *Conflict
	require.True(t, errors.As(err, &fight), "%v", err)
	assert.Equal(t, "job-0 leaves the mains cut off, the lid off at its end, and a job out of several is closed up as the machine was before", fight.Text)
	require.NotNil(t, fight.One)
	assert.Equal(t, 2, fight.One.Number)
	_, err = Of(in[:1], sequence.Budget{})
	assert.NoError(t, err, "alone it may")
}

// jobsOf are procedures on the rig, each given by its steps.
func jobsOf(t *testing.T, steps ...string) (jobs []*model.Job) {
	t.Helper()
	var files []*source.File
	for i, text := range steps {
		files = append(files, source.New(headed(i, text)))
	}
	return filesOf(t, files...)
}

// filesOf are the procedures of some files on the rig.
func filesOf(t *testing.T, some ...*source.File) (jobs []*model.Job) {
	t.Helper()
	files := append([]*source.File{source.New("rig.toml", []byte(rig))}, some...)
	set := model.Read(files, func(n int, do func(int)) {
		for i := range n {
			do(i)
		}
	})
	for _, found := range set.Findings {
		require.Fail(t, found.Summary)
	}
	for _, file := range set.Files {
		jobs = append(jobs, set.Jobs(file)...)
	}
	require.Len(t, jobs, len(some))
	return jobs
}

// Who wants the machine cold is done before others run it warm.
func TestWhatWantsItColdComesBeforeTheRunsOfOthers(t *testing.T) {
	runs := "[[prepare]]\nrun = \"the rig\"\nleast = \"10 min\"\n" + offAndProved + "[[step]]\nclean = \"the seat\"\n" + onAgain
	work := offAndProved + "[[step]]\nclean = \"the belt\"\n" + onAgain
	first := func(start string) string {
		path, text := headed(1, work)
		jobs := filesOf(t, source.New(headed(0, runs)), source.New(path, []byte(strings.Replace(string(text), "[procedure]\n", "[procedure]\nstart = [\""+start+"\"]\n", 1))))
		var in []Input
		for _, job := range jobs {
			in = append(in, Input{Job: job, Needs: needs.Of(job)})
		}
		plan, err := Of(in, sequence.Budget{})
		require.NoError(t, err)
		for _, deed := range plan.Deeds {
			if deed.Step.Verb.Key == "run" || deed.Step.Verb.Key == "clean" && deed.Input == 1 {
				return deed.Step.Verb.Key
			}
		}
		return ""
	}
	assert.Equal(t, "clean", first("The rig is cold."))
	assert.Equal(t, "run", first("The rig is empty."))
}

// A wait names the one step that fills it, or the first and the last of several.
func TestAWaitNamesWhatFillsIt(t *testing.T) {
	waits := offAndProved + "[[step]]\nclean = \"the pan\"\n[[step]]\nwait = \"20 min\"\n[[step]]\nmark = \"the pan\"\n" + onAgain
	one := offAndProved + "[[step]]\nclean = \"the belt\"\n" + onAgain
	two := offAndProved + "[[step]]\nclean = \"the belt\"\n[[step]]\nmark = \"the belt\"\n" + onAgain
	_, written := joinedOf(t, waits, one)
	assert.Contains(t, written, `notes = ["Meanwhile 5"]`)
	_, written = joinedOf(t, waits, two)
	assert.Contains(t, written, `notes = ["Meanwhile 5 to 6"]`)
}
