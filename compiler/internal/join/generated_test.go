package join

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/sequence"
	"benchleaf/compiler/source"
)

// generated makes a machine with guards, cavities and a second pose, and procedures on it:
// each makes it ready, takes guards off, works, waits for a drain here and there, closes up
// and tries the machine.
func generated(seed uint64, procedures int) []*source.File {
	dice := rand.New(rand.NewPCG(seed, 6))
	more := rand.New(rand.NewPCG(seed, 7)) // by itself, so that the rest stays what it was
	const guards, cavities = 5, 3
	var machine strings.Builder
	line := func(out *strings.Builder, format string, args ...any) { fmt.Fprintf(out, format+"\n", args...) }
	line(&machine, "benchleaf = 1\n[machine]\nname = \"rig\"\ntitle = \"Rig\"\nmanual = \"Plate\"")
	line(&machine, "[energy.mains]\nkind = \"electric\"\nisolate = \"Switch off.\"\nprove = \"Press START.\"\nrestore = \"Switch on.\"")
	line(&machine, "[energy.spring]\nkind = \"spring\"\nisolate = \"Drop the stop in.\"\nprove = \"Pull.\"\nrestore = \"Lift the stop.\"")
	line(&machine, "[pose.tipped]\ntitle = \"tipped\"\n[pose.level]\ntitle = \"level\"")
	line(&machine, "[area.side-0]\napart = [\"side-1\", \"side-2\"]\n[area.side-1]\n[area.side-2]")
	for i := range guards {
		line(&machine, "[cover.guard-%d]\nguards = [\"mains\"]\ncount = %d\nthread = \"M8\"", i, 2+dice.IntN(5))
	}
	for i := range cavities {
		line(&machine, "[cavity.box-%d]\nfluid = \"oil-%d\"\ncapacity = \"1 L\"\ndrain = \"drain-%d\"\nfill = \"fill-%d\"\narea = [\"side-%d\"]", i, i%2, i, i, i)
		line(&machine, "[cover.lid-%d]\nhead = \"wing\"", i)
		line(&machine, "[part.drain-%d]\nthread = \"M18x1.5\"\narea = [\"side-%d\"]\n[part.fill-%d]\nthread = \"M18x1.5\"\narea = [\"side-%d\"]", i, i, i, i)
		line(&machine, "[fluid.oil-%d]\nkind = \"gear-oil\"", i)
	}
	for i := range 12 {
		line(&machine, "[part.bolt-%d]\ncount = %d\nthread = \"M%d\"\narea = [\"side-%d\"]", i, 1+dice.IntN(6), []int{8, 10, 12, 16}[dice.IntN(4)], i%3)
		line(&machine, "[limit.gap-%d]\nlimit = \"2 to 4 mm\"\noutside = \"Set it again.\"\nanew-after = [\"bolt-%d\"]", i, i)
	}
	files := []*source.File{source.New("rig.toml", []byte(machine.String()))}
	boxes := dice.Perm(cavities)
	bolts := dice.Perm(12)
	for n := range procedures {
		var out strings.Builder
		line(&out, "benchleaf = 1\nuse = [\"rig.toml\"]\n[procedure]\nname = \"job-%d\"\ntitle = \"Job %d\"\nmachine = \"rig\"\nrevision = \"A\"\ndate = 2026-01-01\nauthor = \"R\"\nwho = \"R\"\nhands-on = \"%d min\"\ntools = []\nsupplies = []\nspares = []\nwear = []", n, n, 20+dice.IntN(40))
		step := func(section, format string, args ...any) { line(&out, "[["+section+"]]\n"+format, args...) }
		step("prepare", "isolate = \"mains\"")
		step("prepare", "prove = \"mains\"")
		spring := dice.IntN(2) == 0
		if spring {
			step("prepare", "isolate = \"spring\"")
		}
		guard := dice.IntN(guards)
		looks := func(n int) {
			for range n {
				switch dice.IntN(4) {
				case 0:
					place := dice.IntN(9)
					step("step", "clean = \"place %d of job %d\"\narea = [\"side-%d\"]", place, n, place%3)
				case 1:
					place := dice.IntN(9)
					step("step", "inspect = \"place %d of job %d\"\narea = [\"side-%d\"]", place, n, place%3)
				case 2:
					place := dice.IntN(9)
					step("step", "measure = \"place %d of job %d\"\narea = [\"side-%d\"]", place, n, place%3)
				default:
					step("step", "lubricate = \"place %d of job %d\"\nfluid = \"oil-%d\"", dice.IntN(9), n, dice.IntN(2))
				}
			}
		}
		looks(dice.IntN(3))
		step("step", "remove = \"guard-%d\"", guard)
		looks(1 + dice.IntN(3))
		if bolt := bolts[n%12]; dice.IntN(2) == 0 {
			step("step", "loosen = \"bolt-%d\"", bolt)
			looks(1 + dice.IntN(2))
			step("step", "tighten = \"bolt-%d\"", bolt)
		}
		if more.IntN(3) == 0 { // a setting that hangs on what another tightens
			step("step", "adjust = \"gap-%d\"", bolts[more.IntN(procedures)%12])
		}
		tipped := dice.IntN(4) == 0
		if tipped {
			step("step", "turn-over = \"the rig\"\npose = \"tipped\"")
			looks(1 + dice.IntN(2))
			step("step", "turn-over = \"the rig\"\npose = \"level\"")
		}
		if n < cavities && dice.IntN(3) > 0 {
			box, lid := boxes[n], more.IntN(2) == 0
			if lid {
				step("step", "open = \"lid-%d\"", box)
			}
			step("step", "remove = \"fill-%d\"", box)
			step("step", "remove = \"drain-%d\"", box)
			step("step", "drain = \"box-%d\"", box)
			wait := 10 + 5*dice.IntN(5)
			step("step", "wait = \"%d min\"", wait)
			if n%2 == 1 {
				line(&out, "most = \"%d min\"", wait+3)
			}
			step("step", "refit = \"drain-%d\"", box)
			step("step", "tighten = \"drain-%d\"", box)
			step("step", "fill = \"box-%d\"", box)
			step("step", "refit = \"fill-%d\"", box)
			step("step", "tighten = \"fill-%d\"", box)
			if lid {
				step("step", "close = \"lid-%d\"", box)
			}
		}
		looks(dice.IntN(4))
		step("step", "refit = \"guard-%d\"", guard)
		step("step", "tighten = \"guard-%d\"", guard)
		if spring {
			step("close", "restore = [\"spring\", \"mains\"]")
		} else {
			step("close", "restore = \"mains\"")
		}
		step("close", "run = \"the rig %s\"\nleast = \"%d min\"", []string{"without load", "with its own load"}[dice.IntN(2)], 1+dice.IntN(4))
		files = append(files, source.New(fmt.Sprintf("job-%d.toml", n), []byte(out.String())))
	}
	return files
}

func generatedInputs(t testing.TB, seed uint64, procedures int) (out []Input, steps int) {
	t.Helper()
	set := model.Read(generated(seed, procedures), func(n int, do func(int)) {
		for i := range n {
			do(i)
		}
	})
	for _, found := range set.Findings {
		require.Fail(t, found.Summary)
	}
	for _, file := range set.Files {
		for _, job := range set.Jobs(file) {
			out = append(out, Input{Job: job, Needs: needs.Of(job)})
			steps += len(job.Steps)
		}
	}
	require.Len(t, out, procedures)
	return out, steps
}

// Twenty generated jobs of 40 to 130 steps out of three to eight procedures: the gap of each
// between the plan and the bound that is proved.
func TestGeneratedJobs(t *testing.T) {
	var gaps []float64
	var times []time.Duration
	t.Log("procedures  steps  one after the other  plan  bound  gap  seconds on one core")
	for n := range 20 {
		procedures := 3 + n%6
		in, steps := generatedInputs(t, uint64(n+1), procedures)
		begin := time.Now()
		plan, err := Of(in, sequence.Budget{})
		took := time.Since(begin)
		require.NoError(t, err)
		gap := 100 * float64(plan.Length-plan.Bound) / float64(plan.Bound)
		gaps, times = append(gaps, gap), append(times, took)
		proved := ""
		if plan.Proved {
			proved = "proved"
		}
		t.Logf("%10d %6d %20d %5d %6d %4.1f %% %8.3f %s", procedures, steps, plan.Apart, plan.Length, plan.Bound, gap, took.Seconds(), proved)
		assert.LessOrEqual(t, plan.Length, plan.Apart)
		assert.LessOrEqual(t, gap, 3.0)
	}
	slices.Sort(gaps)
	slices.Sort(times)
	t.Logf("medians: gap %.1f %%, %.3f seconds", gaps[len(gaps)/2], times[len(times)/2].Seconds())
	assert.Zero(t, gaps[len(gaps)/2], "the median gap")
}

// Tiny jobs, two or three procedures of a few tasks, with waits, poses, guards and tools: every
// order there is is replayed one by one, and none is shorter than the plan.
func TestNoOrderOfATinyJobIsShorter(t *testing.T) {
	rounds := 2000
	if testing.Short() {
		rounds = 200
	}
	waits, turns, shared, anew, lids := 0, 0, 0, 0, 0
	for seed := uint64(1); rounds > 0; seed++ {
		in, _ := generatedInputs(t, 1000+seed, 2+int(seed%2))
		p := newProblem(in)
		if orders(p, 3000) > 3000 {
			continue
		}
		rounds--
		best := int64(-1)
		for _, asked := range []sequence.Problem{p.warm(), p.roomy(), p.asked()} { // with something in hand at the end of a wait; with nothing, where that is the only way
			p.merge(func(order []int) {
				if plan, err := sequence.Replay(asked, order); err == nil && (best < 0 || plan.Length < best) {
					best = plan.Length
				}
			})
			if best >= 0 {
				break
			}
		}
		plan, err := p.solve(sequence.Budget{})
		if best < 0 {
			assert.Error(t, err, "seed %d: no order is possible", seed)
			continue
		}
		require.NoError(t, err, "seed %d", seed)
		assert.True(t, plan.Proved, "seed %d", seed)
		assert.Equal(t, best, plan.Length, "seed %d", seed)
		waits += len(p.waits)
		anew += len(p.anews)
		lids += p.keptFromDirt(t, plan)
		for _, one := range p.anews {
			assert.LessOrEqual(t, plan.Starts[one.before]+p.tasks[one.before].time, plan.Starts[one.after], "seed %d", seed)
		}
		if len(p.machine.poses) > 0 {
			turns++
		}
		for _, one := range p.tasks {
			if one.within >= 0 {
				shared++
			}
		}
	}
	t.Logf("%d waits, %d jobs with turns, %d runs that another does, %d settings behind another's part, %d tasks with dirt beside a vessel", waits, turns, shared, anew, lids)
	assert.Positive(t, waits)
	assert.Positive(t, turns)
	assert.Positive(t, anew)
	assert.Positive(t, lids)
}

// keptFromDirt wants no vessel of one procedure open while another makes dirt, and counts the
// tasks that do while a procedure is at its vessel.
func (p *problem) keptFromDirt(t *testing.T, plan sequence.Plan) int {
	n, at := 0, p.state(vector{pose: p.resting})
	begun := make([]bool, len(p.inputs))
	for _, k := range plan.Order {
		one := &p.tasks[k]
		to, _, ok := p.move(at, k)
		require.True(t, ok)
		at = to
		begun[one.input] = one.need.off&p.lids[one.input] != 0
		if !slices.ContainsFunc(one.steps, func(step *model.Step) bool { return makesDirt(p.inputs[one.input].Job, step) }) {
			continue
		}
		for input, lids := range p.lids {
			if input == one.input {
				continue
			}
			assert.Zero(t, p.states[at].off&lids&^one.need.off)
			if begun[input] {
				n++
			}
		}
	}
	return n
}

// orders counts the ways to merge the procedures, up to a number.
func orders(p *problem, most int) int {
	total, n := 1, 0
	for c := range len(p.chains) - 1 {
		for k := range p.chains[c+1] - p.chains[c] {
			n++
			total = total * n / (k + 1)
			if total > most*1000 {
				return total
			}
		}
	}
	return total
}

// merge goes through all orders that keep the order of each procedure.
func (p *problem) merge(each func([]int)) {
	heads := slices.Clone(p.chains[:len(p.chains)-1])
	var order []int
	var on func()
	on = func() {
		if len(order) == len(p.tasks) {
			each(order)
			return
		}
		for c := range heads {
			if heads[c] < p.chains[c+1] {
				order = append(order, heads[c])
				heads[c]++
				on()
				heads[c]--
				order = order[:len(order)-1]
			}
		}
	}
	on()
}
