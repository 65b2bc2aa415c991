package join

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/sequence"
)

const rig = `benchleaf = 1
[machine]
name = "rig"
title = "Rig"
manual = "Plate"
[energy.mains]
kind = "electric"
isolate = "Switch off."
prove = "Press START."
restore = "Switch on."
[cover.guard]
guards = ["mains"]
count = 2
thread = "M8"
[cover.lid]
count = 1
thread = "M8"
[tool.hook]
kind = "special"
[tool.lamp]
kind = "special"
[supply.rags]
[supply.cleaner]
`

// headed is the file of a procedure on the rig, given by its steps.
func headed(i int, steps string) (path string, text []byte) {
	head := fmt.Sprintf("benchleaf = 1\nuse = [\"rig.toml\"]\n[procedure]\nname = \"job-%d\"\ntitle = \"Job %d\"\nmachine = \"rig\"\nrevision = \"A\"\ndate = 2026-01-01\nauthor = \"R\"\nwho = \"R\"\nhands-on = \"20 min\"\ntools = []\nsupplies = []\nspares = []\nwear = []\n", i, i)
	return fmt.Sprintf("job-%d.toml", i), []byte(head + steps)
}

// joinedOf joins procedures on the rig, each given by its steps, and gives the plan and the
// procedure it is written as.
func joinedOf(t *testing.T, steps ...string) (*Plan, string) {
	t.Helper()
	var in []Input
	for _, job := range jobsOf(t, steps...) {
		in = append(in, Input{Job: job, Needs: needs.Of(job)})
	}
	plan, err := Of(in, sequence.Budget{})
	require.NoError(t, err)
	return plan, plan.Source(Look{Name: "joined", Day: "2026-01-01"}, Words{Off: "{things} off", Up: "{things} raised", Locked: "{things} locked off", Minutes: "min", Hours: "h", Gate: "{time}, {n}", Between: "{time}, {most}, {n}", Why: "Here: {setting}", Held: "Held: {n}", Fill: "Meanwhile {from} to {to}", FillOne: "Meanwhile {from}"})
}

// stepsWith are the steps of a written procedure that hold a line.
func stepsWith(written, line string) (out []string) {
	for _, step := range strings.Split(written, "\n[[")[1:] {
		if strings.Contains(step, "\n"+line+"\n") {
			out = append(out, step)
		}
	}
	return out
}

// A cover that comes off once for two keeps the words of both: each sentence once, what must be
// worn and the cautions of both, and the most of what is used up.
func TestAStepOfTwoAuthorsKeepsTheWordsOfBoth(t *testing.T) {
	_, written := joinedOf(t, `
[[step]]
remove = "guard"
say = "Take the upper screw first. Hold the guard."
tools = ["hook"]
wear = ["gloves"]
supplies = { rags = 1 }
notes = ["It is heavy."]
[[step]]
inspect = "the belt"
[[step]]
refit = "guard"
`, `
[[step]]
remove = "guard"
say = "Hold the guard. It drops to the left"
expect = "no chip behind it"
outside = "Sweep it out."
tools = ["hook", "lamp"]
wear = ["gloves", "face-shield"]
supplies = { rags = 3, cleaner = "0.2 L" }
notes = ["It is heavy", "The left screw is longer."]
people = 2
[[step.caution]]
signal = "warning"
against = ["edge"]
hazard = "Sharp edge."
consequence = "It cuts."
avoid = "Take it by the handle."
[[step]]
inspect = "the pulley"
[[step]]
refit = "guard"
`)
	off := stepsWith(written, `remove = "guard"`)
	require.Len(t, off, 1)
	for _, line := range []string{
		`say = "Take the upper screw first. Hold the guard. It drops to the left"`,
		`expect = "no chip behind it"`,
		`outside = "Sweep it out."`,
		`tools = ["hook", "lamp"]`,
		`wear = ["gloves", "face-shield"]`,
		`supplies = { rags = 3, cleaner = "0.2 L" }`,
		`notes = ["It is heavy.", "The left screw is longer."]`,
		`people = 2`,
		`origin = "A 1, B 1"`,
	} {
		assert.Contains(t, off[0], "\n"+line+"\n")
	}
	assert.Equal(t, 1, strings.Count(off[0], "Take it by the handle."))
}

// Who wants the rig on stands elsewhere, or higher, has it raised anew; who says less has it as
// the other does.
func TestWaysToRaise(t *testing.T) {
	raised := func(support, more string) string {
		return "[[step]]\nraise = \"the front\"\n" + more + "[[step]]\nsupport = \"" + support + "\"\n[[step]]\ninspect = \"the belly\"\n[[step]]\nlower = \"the front\"\n"
	}
	plan, written := joinedOf(t, raised("the frame", ""), raised("the frame", "say = \"Lift until it swings free.\"\n"))
	assert.Equal(t, 1, plan.Changes.Turns)
	assert.Contains(t, written, "say = \"Lift until it swings free.\"\norigin = \"A 1, B 1\"")
	for _, other := range []string{raised("the axle", ""), raised("the frame", "set = \"300 mm\"\n")} {
		plan, written = joinedOf(t, raised("the frame", "set = \"50 mm\"\n"), other)
		assert.Equal(t, 2, plan.Changes.Turns)
		assert.Len(t, stepsWith(written, `raise = "the front"`), 2)
		assert.Len(t, stepsWith(written, `lower = "the front"`), 2)
		assert.Contains(t, written, `stage = "The front raised"`)
		assert.NotContains(t, written, `\u0000`)
		assert.Less(t, strings.Index(written, `lower = "the front"`), strings.LastIndex(written, `raise = "the front"`), "down before it goes up the other way")
	}
}

// A step that makes ready is its procedure's where the work behind it begins, and not sooner.
func TestMakingReadyIsToldWhereItServes(t *testing.T) {
	plan, _ := joinedOf(t, `
[[prepare]]
isolate = "mains"
[[step]]
remove = "guard"
[[step]]
inspect = "the belt"
[[step]]
refit = "guard"
[[step]]
restore = "mains"
[[step]]
run = "the rig"
least = "5 min"
[[step]]
isolate = "mains"
[[step]]
inspect = "the warm belt"
[[close]]
restore = "mains"
`, `
[[step]]
run = "the rig backwards"
least = "5 min"
[[step]]
isolate = "mains"
[[step]]
inspect = "the lamp"
[[close]]
restore = "mains"
`)
	seen := map[*model.Step]int{}
	for d, deed := range plan.Deeds {
		seen[deed.Step] = d
		for _, step := range deed.Also {
			seen[step] = d
		}
	}
	for i, input := range plan.Inputs {
		for n, step := range input.Job.Steps[1:] {
			at, told := seen[step]
			require.True(t, told, "step %d of %d", n+2, i)
			assert.GreaterOrEqual(t, at, seen[input.Job.Steps[n]], "step %d of %d", n+2, i)
		}
	}
}

// What only one author does to an energy is done, and in his order.
func TestEveryAuthorsWayToMakeAnEnergySafe(t *testing.T) {
	_, written := joinedOf(t, "[[step]]\nisolate = \"mains\"\n[[step]]\nprove = \"mains\"\n[[step]]\ninspect = \"the belt\"\n[[close]]\nrestore = \"mains\"\n",
		"[[step]]\nisolate = \"mains\"\n[[step]]\nrelieve = \"mains\"\n[[step]]\ninspect = \"the pulley\"\n[[close]]\nrestore = \"mains\"\n")
	isolate, relieve, prove := strings.Index(written, "isolate = "), strings.Index(written, "relieve = "), strings.Index(written, "prove = ")
	assert.Less(t, isolate, relieve)
	assert.Less(t, relieve, prove)
	assert.Less(t, prove, strings.Index(written, "inspect = "))
	assert.Contains(t, written, `origin = "A 1, B 1"`)
	assert.Contains(t, written, `origin = "B 2"`)
	assert.Contains(t, written, `origin = "A 2"`)
}

// A wait with a most is filled with what fits between its least and its most, and with nothing
// that does not.
func TestAWaitWithAMostIsFilledWhereItFits(t *testing.T) {
	patient := func(wait string) string {
		return "[[step]]\nclean = \"the seat\"\n[[step]]\n" + wait + "\n[[step]]\nmark = \"the seat\"\n"
	}
	between := func(time string) string {
		return "[[step]]\ninspect = \"the belt\"\ntime = \"" + time + "\"\n"
	}
	for _, one := range []struct {
		wait, time string
		filled     bool
	}{
		{"wait = \"10 min\"\nmost = \"12 min\"", "9 min", true},
		{"wait = \"10 min\"\nmost = \"12 min\"", "10 min", true},  // 30 s to go there, 30 s back
		{"wait = \"10 min\"\nmost = \"12 min\"", "11 min", false}, // a quarter of what lies between stays in hand
		{"wait = \"10 min\"\nmost = \"12 min\"", "12 min", false},
		{"wait = \"10 to 12 min\"", "12 min", true},
		{"wait = \"10 min\"", "12 min", true},
		{"wait = \"10 min\"\nmost = \"12 min\"\nkeep = [\"Nobody leaves it\"]", "5 min", false},
		{"wait = \"10 min\"\nkeep = [\"The plug stays out.\"]", "5 min", true}, // a plan keeps that
		{"wait = \"10 min\"\nkeep = [\"The rotor stands still.\"]", "5 min", false},
		{"wait = \"10 min\"\nkeep = [\"Do not turn the rotor.\"]", "5 min", false},
		{"wait = \"10 min\"\nkeep = [\"Der Stopfen bleibt draußen.\"]", "5 min", false}, // it is not read
	} {
		plan, written := joinedOf(t, patient(one.wait), between(one.time))
		assert.True(t, plan.Proved)
		at := slices.IndexFunc(plan.Deeds, func(deed Deed) bool { return deed.Input == 1 })
		assert.Equal(t, one.filled, at == 1, "%s, %s", one.wait, one.time)
		assert.Equal(t, one.filled && strings.Contains(one.wait, "most"), strings.Contains(written, `gate = "10 min, 12 min, 1"`), written)
	}
	// Where the machine has to be changed behind such a wait, nobody comes between either.
	plan, _ := joinedOf(t, "[[step]]\nisolate = \"mains\"\n[[step]]\nclean = \"the seat\"\n[[step]]\nwait = \"10 min\"\nmost = \"11 min\"\nkeep = [\"Nobody leaves it\"]\n[[step]]\nremove = \"guard\"\n[[step]]\nmark = \"the seat\"\n[[step]]\nrefit = \"guard\"\n[[close]]\nrestore = \"mains\"\n", between("5 min"))
	at := slices.IndexFunc(plan.Deeds, func(deed Deed) bool { return deed.Step.Verb.Key == "mark" })
	assert.Equal(t, 0, plan.Deeds[at-1].Input)
}

// A lid comes off once: what is done before it by the second, and what is done after it by the
// first, stands elsewhere than its author has it, and says why. What stands right behind the
// change, or where its author has it, says nothing.
func TestWhyAStepStandsHere(t *testing.T) {
	under := func(name string) string {
		return "[[step]]\nclean = \"the top of " + name + "\"\n[[step]]\nremove = \"lid\"\n[[step]]\ninspect = \"the inside of " + name + "\"\n[[step]]\nrefit = \"lid\"\n"
	}
	plan, written := joinedOf(t, under("one"), under("two"))
	var told []string
	for _, deed := range plan.Deeds {
		if deed.Between {
			told = append(told, fmt.Sprint(deed.Input, deed.Step.Number))
		}
	}
	require.Len(t, plan.Deeds, 6)
	first, second := plan.Deeds[0].Input, plan.Deeds[1].Input
	assert.NotEqual(t, first, second)
	assert.Equal(t, []string{fmt.Sprint(second, 1), fmt.Sprint(first, 3)}, told)
	assert.Contains(t, written, `notes = ["Here: lid off"]`)
	plan, written = joinedOf(t, under("one"), "[[step]]\nclean = \"the frame\"\n")
	assert.NotContains(t, written, "Here")
	assert.Len(t, plan.Deeds, 5)
}

// Somebody stands idle at a drain, and the rig is raised only behind it: that is said.
func TestWhyNothingFillsAWait(t *testing.T) {
	plan, written := joinedOf(t, `
[[step]]
remove = "lid"
[[step]]
clean = "the drain"
[[step]]
wait = "20 min"
[[step]]
mark = "the drain"
[[step]]
refit = "lid"
`, `
[[step]]
remove = "lid"
[[step]]
clean = "the inside"
[[step]]
refit = "lid"
[[step]]
raise = "the front"
[[step]]
inspect = "the belly"
[[step]]
lower = "the front"
`)
	at := slices.IndexFunc(plan.Deeds, func(deed Deed) bool { return deed.Step.Verb.Key == "inspect" })
	require.Len(t, plan.Waits, 1)
	assert.Positive(t, plan.Waits[0].Idle)
	assert.Equal(t, plan.Waits[0].To < at, plan.Deeds[at].Held == 0)
	require.Less(t, plan.Waits[0].To, at)
	assert.Contains(t, written, `notes = ["Held: 2"]`)
}

// A guard that one procedure has off is on while another, whose author had it on, has the works
// turned over by hand; who turns with it off himself keeps it so.
func TestAGuardIsOnWhileOthersTurnTheWorksByHand(t *testing.T) {
	isolated := "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n"
	restored := "[[close]]\nrestore = \"mains\"\n"
	off := isolated + "[[step]]\nremove = \"guard\"\n[[step]]\ninspect = \"the belt\"\n"
	on := "[[step]]\nclean = \"the pulley\"\n[[step]]\nrefit = \"guard\"\n" + restored
	guardedAt := func(inspect string, jobs ...string) bool {
		plan, written := joinedOf(t, jobs...)
		at := slices.IndexFunc(plan.Deeds, func(deed Deed) bool {
			return len(deed.Step.Objects) > 0 && deed.Step.Objects[0].Words() == inspect
		})
		require.GreaterOrEqual(t, at, 0, "%s", written)
		return !slices.Contains(plan.Deeds[at].State.Off, "guard")
	}
	turning := isolated + "[[step]]\ninspect = \"the bearings, turned by hand\"\n" + restored
	assert.True(t, guardedAt("the bearings, turned by hand", off+on, turning))
	assert.False(t, guardedAt("the belt, turned over by hand", off+"[[step]]\ninspect = \"the belt, turned over by hand\"\n"+on, turning))
}
