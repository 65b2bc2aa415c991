package compiler

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// machinesOf are the machines of a shop with the procedures of each.
func machinesOf(r *Result) map[string][]string {
	out := map[string][]string{}
	for _, unit := range r.units() {
		if names := r.Procedures(unit.Name); len(names) > 1 {
			out[unit.Name] = names
		}
	}
	return out
}

// subsets are all choices of two or more.
func subsets(names []string) [][]string {
	var out [][]string
	for bits := 1; bits < 1<<len(names); bits++ {
		var one []string
		for i, name := range names {
			if bits&(1<<i) != 0 {
				one = append(one, name)
			}
		}
		if len(one) > 1 {
			out = append(out, one)
		}
	}
	return out
}

// Every job that can be joined out of the procedures of one machine of the demonstration shop
// is walked through without a finding of the walk or of the rules, keeps every step of every
// procedure in its order, and is never longer than the procedures one after the other.
func TestEveryJoinedJobOfTheShopWalks(t *testing.T) {
	if testing.Short() {
		t.Skip("one thing after the other: nothing that race could find")
	}
	files := ReadFolder(t, "../procedures")
	result := Compile(Input{Files: files})
	joined, forTwo, refused := 0, 0, []string{}
	for unit, names := range machinesOf(result) {
		for _, some := range subsets(names) {
			made, err := result.Join(Look{}, Joining{Procedures: some, Unit: unit, On: "2026-05-01"})
			var fight *Conflict
			if errors.As(err, &fight) {
				refused = append(refused, strings.Join(some, "+"))
				assert.GreaterOrEqual(t, len(fight.Related), 2, "both places: %s", fight.Text)
				continue
			}
			require.NoError(t, err, "%s: %v", unit, some)
			joined++
			assert.Empty(t, made.Result.Jobs[0].walk.Breaches, "%s: %v", unit, some)
			assert.True(t, made.Proved, "%s: %v", unit, some)
			assert.LessOrEqual(t, made.Length, made.Apart, "%s: %v", unit, some)
			assert.Empty(t, worst(made.Result), "%s: %v\n%s", unit, some, made.Source)
			keepsOrder(t, made, result, some)
			laid, _ := Tidy(source.New("joined.toml", made.Source))
			assert.Equal(t, string(laid), string(made.Source), "is written tidy")
			two, err := result.Join(Look{}, Joining{Procedures: some, Unit: unit, On: "2026-05-01", People: 2})
			require.NoError(t, err, "%s: %v", unit, some)
			if two.People == 1 {
				assert.NotEmpty(t, two.ForOne)
				assert.Equal(t, made.Source, two.Source)
				continue
			}
			forTwo++
			assert.Empty(t, two.Result.Jobs[0].walk.Breaches, "%s for two: %v", unit, some)
			assert.False(t, two.Proved)
			assert.Less(t, two.Length, made.Length)
			assert.GreaterOrEqual(t, two.Length, two.Bound)
			assert.Empty(t, worst(two.Result), "%s for two: %v\n%s", unit, some, two.Source)
			keepsOrder(t, two, result, some)
			waitsForNobody(t, files, two)
		}
	}
	assert.Greater(t, joined, 12)
	assert.Positive(t, forTwo, "the deck has two ends that are apart")
	for _, name := range refused {
		assert.Contains(t, name, "band-mill-", "only the mill has conditions that fight: a blade on and a blade off")
	}
}

// worst are the findings of a job above notes.
func worst(result *Result) (out []string) {
	for _, found := range result.Findings {
		if found.Severity > finding.Note {
			out = append(out, fmt.Sprintf("%d: %s %s", found.Place.Start().Line, found.Rule, found.Summary))
		}
	}
	return out
}

// waitsForNobody damages a job for two: wherever one waits for the other no more, it is told
// that they can be in each other's way.
func waitsForNobody(t *testing.T, files []*source.File, two *Joined) {
	t.Helper()
	lines := strings.Split(string(two.Source), "\n")
	for i, line := range lines {
		if !strings.HasPrefix(line, "once = ") {
			continue
		}
		text := source.New(two.Name+".toml", []byte(strings.Join(slices.Delete(slices.Clone(lines), i, i+1), "\n")))
		again := Compile(Input{Files: append(slices.Clone(files), text), Targets: []string{two.Name + ".toml"}})
		assert.True(t, slices.ContainsFunc(again.Findings, func(found finding.Finding) bool { return found.Rule == "people/at-once" }), "line %d of %s", i+1, two.Source)
	}
}

// keepsOrder wants each step of a procedure in the joined job once, in its order; those that
// only make the machine ready may stand in for one another.
func keepsOrder(t *testing.T, made *Joined, shop *Result, names []string) {
	t.Helper()
	steps := made.Result.Jobs[0].work.Job.Steps
	for i, name := range names {
		var numbers []int
		all := map[int]bool{}
		for _, step := range steps {
			for k, part := range strings.Split(step.Origin.Text, ", ") {
				var letter string
				var number int
				_, err := fmt.Sscanf(part, "%s %d", &letter, &number)
				require.NoError(t, err, step.Origin.Text)
				if letter != string(rune('A'+i)) {
					continue
				}
				all[number] = true
				if k == 0 && work(step.Verb.Key) {
					numbers = append(numbers, number)
				}
			}
		}
		assert.True(t, slices.IsSorted(numbers), "%s: %v", name, numbers)
		var safe []int // steps that make safe, as they come first
		for _, step := range steps {
			for _, origin := range step.Origins() {
				if origin.Letter != string(rune('A'+i)) || slices.Contains(safe, origin.Number) {
					continue
				}
				for _, job := range shop.Jobs {
					if job.Name == name && job.Variant == made.Result.Jobs[0].Variant && slices.Contains([]string{"isolate", "prove", "relieve"}, job.work.Job.Steps[origin.Number-1].Verb.Key) && job.work.Job.Steps[origin.Number-1].Section == "prepare" {
						safe = append(safe, origin.Number)
					}
				}
			}
		}
		assert.True(t, slices.IsSorted(safe), "%s is made safe in the order of its author: %v", name, safe)
		for _, job := range shop.Jobs {
			if job.Name != name || job.Variant != made.Result.Jobs[0].Variant {
				continue
			}
			for _, step := range job.work.Job.Steps {
				assert.True(t, all[step.Number] || !work(step.Verb.Key), "step %d of %s is in the job", step.Number, name)
			}
		}
	}
}

// work reports whether a verb is no change of the state of the machine.
func work(verb string) bool {
	return !slices.Contains([]string{"isolate", "prove", "relieve", "restore", "remove", "open", "loosen", "refit", "close", "tighten", "raise", "support", "lower", "turn-over"}, verb)
}

// A plan that is damaged is caught by the walk: a step is left out, or two change places, and
// the joined procedure is read again.
func TestDamagedPlansAreCaught(t *testing.T) {
	if testing.Short() {
		t.Skip("one thing after the other: nothing that race could find")
	}
	files := ReadFolder(t, "../procedures")
	result := Compile(Input{Files: files})
	tried, caught := map[string]int{}, map[string]int{}
	for unit, names := range machinesOf(result) {
		made, err := result.Join(Look{}, Joining{Procedures: names[:2], Unit: unit, On: "2026-05-01"})
		var fight *Conflict
		if errors.As(err, &fight) {
			continue
		}
		require.NoError(t, err, unit)
		blocks := strings.Split(string(made.Source), "\n\n[[")
		verb := func(block string) string {
			for _, line := range strings.Split(block, "\n")[1:] {
				if key, _, found := strings.Cut(line, " = "); found && key != "stage" {
					return key
				}
			}
			return ""
		}
		try := func(kind string, damaged []string) {
			tried[kind]++
			text := source.New(made.Name+".toml", []byte(strings.Join(damaged, "\n\n[[")))
			again := Compile(Input{Files: append(slices.Clone(files), text), Targets: []string{made.Name + ".toml"}})
			if len(again.Jobs) == 1 && len(again.Jobs[0].walk.Breaches) > 0 {
				caught[kind]++
			}
		}
		for i := 1; i < len(blocks); i++ {
			switch verb(blocks[i]) {
			case "refit", "restore":
				try("left out: "+verb(blocks[i]), slices.Delete(slices.Clone(blocks), i, i+1))
			case "remove": // what a new part takes the place of need not be taken off by itself
				_, object, _ := strings.Cut(blocks[i], "remove = ")
				object, _, _ = strings.Cut(object, "\n")
				if !strings.Contains(string(made.Source), "refit = "+object) {
					continue
				}
				try("left out: remove", slices.Delete(slices.Clone(blocks), i, i+1))
			case "fill":
				for k := i - 1; k > 0; k-- { // the fill goes before what shuts the drain
					if verb(blocks[k]) == "drain" {
						moved := slices.Delete(slices.Clone(blocks), i, i+1)
						try("filled too early", slices.Insert(moved, k+1, blocks[i]))
						break
					}
				}
			case "run":
				for k := i - 1; k > 0; k-- { // the machine runs before it is closed
					if verb(blocks[k]) == "refit" {
						moved := slices.Delete(slices.Clone(blocks), i, i+1)
						try("runs too early", slices.Insert(moved, k, blocks[i]))
						break
					}
				}
			}
		}
	}
	t.Log(tried, caught)
	for kind, n := range tried {
		assert.Equal(t, n, caught[kind], kind)
	}
	assert.Greater(t, len(tried), 3)
}

// A procedure joined with nothing but itself is what it was: it walks as before, and no rule
// finds in it what it did not find in the procedure.
func TestOneProcedureAloneIsItself(t *testing.T) {
	paths, err := filepath.Glob("../testdata/clean/*.toml")
	require.NoError(t, err)
	joined := 0
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		file := source.New(filepath.Base(path), text)
		result := Compile(Input{Files: []*source.File{file}})
		for _, job := range result.Jobs {
			units := result.units()
			unit := ""
			if len(units) == 1 {
				unit = units[0].Name
			}
			made, err := result.Join(Look{}, Joining{Procedures: []string{job.Name}, Unit: unit, On: "2026-05-01", Name: "alone"})
			require.NoError(t, err, path)
			joined++
			assert.Empty(t, worst(made.Result), "%s\n%s", path, made.Source)
			assert.Equal(t, made.Apart, made.Length, path)
		}
	}
	assert.Greater(t, joined, 60)
}

// What an author tries once he has given an energy back is tried when it is back, whatever else
// is done at the machine; and the gate of a wait that is lost in a kept job is told.
func TestATrialComesWhenTheEnergyIsBack(t *testing.T) {
	const machine = "benchleaf = 1\n[shop]\ntitle = \"Two Sheds\"\n[machine]\nname = \"saw\"\ntitle = \"Firewood saw\"\nmanual = \"Plate\"\n" +
		"[energy.mains]\nkind = \"electric\"\nisolate = \"Pull the plug.\"\nprove = \"Press START. Nothing moves.\"\nrestore = \"Plug it in.\"\n" +
		"[fluid.solvent]\nkind = \"cleaner\"\n"
	procedure := func(name, work, trial string) *source.File {
		return source.New(name+".toml", []byte("benchleaf = 1\n[procedure]\ntitle = \"Look after the "+name+"\"\nmachine = \"saw\"\nrevision = \"A\"\ndate = 2026-03-01\nauthor = \"R. A.\"\nwho = \"Mechanic\"\n"+
			"hands-on = \"20 min\"\nevery = \"50 h\"\ntools = []\nsupplies = []\nspares = []\nwear = []\ncautions = [\"start\"]\n[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n"+
			work+"[[close]]\nrestore = \"mains\"\n"+trial))
	}
	files := []*source.File{source.New("shop.toml", []byte(machine)),
		procedure("lamp", "[[step]]\nclean = \"the lamp\"\n[[step]]\nwait = \"10 min\"\nkeep = [\"The lamp stays off.\"]\n[[step]]\ninspect = \"the lamp\"\nexpect = \"no drops\"\noutside = \"Wipe it.\"\n", "[[close]]\ncheck = \"the lamp by its switch\"\nexpect = \"it lights\"\noutside = \"Renew it.\"\n"),
		procedure("table", "[[step]]\nclean = \"the table\"\n[[step]]\nclean = \"the rail\"\n[[step]]\nmeasure = \"the table\"\nlimit = \"max 2 mm\"\noutside = \"Renew it.\"\n", "[[close]]\nrun = \"the saw\"\nleast = \"1 min\"\nexpect = \"no noise\"\noutside = \"Stop.\"\n")}
	result := Compile(Input{Files: files, Whole: true})
	made, err := result.Join(Look{}, Joining{Procedures: []string{"lamp", "table"}, On: "2026-05-01"})
	require.NoError(t, err)
	order := map[string]int{}
	for i, step := range made.Result.Jobs[0].work.Job.Steps {
		order[step.Verb.Key] = i
	}
	assert.Greater(t, order["check"], order["restore"], "%s", made.Source)
	text := string(made.Source)
	require.Contains(t, text, "\ngate = ")
	lines := slices.DeleteFunc(strings.Split(text, "\n"), func(line string) bool { return strings.HasPrefix(line, "gate = ") })
	again := Compile(Input{Files: append(slices.Clone(files), source.New(made.Name+".toml", []byte(strings.Join(lines, "\n")))), Whole: true})
	assert.True(t, slices.ContainsFunc(again.Findings, func(found finding.Finding) bool {
		return found.Rule == "joined/step" && strings.Contains(found.Summary, "has no gate")
	}))
}

// What is opened for one change of the machine is opened, and shut again, in the order of those
// who wrote it: the doors and the guard, and then the tension of the blade is let go.
func TestAChangeHasTheOrderOfItsAuthors(t *testing.T) {
	result := Compile(Input{Files: ReadFolder(t, "../procedures")})
	made, err := result.Join(Look{}, Joining{Procedures: []string{"band-mill-blade-change", "band-mill-guide-rollers"}, On: "2026-05-01"})
	require.NoError(t, err)
	at := map[string]int{}
	for i, step := range made.Result.Jobs[0].work.Job.Steps {
		for _, object := range step.Objects {
			if key := step.Verb.Key + " " + object.Text.Text; at[key] == 0 {
				at[key] = i + 1
			}
		}
	}
	for _, pair := range [][2]string{{"open wheel-doors", "relieve blade-tension"}, {"remove blade-guard", "relieve blade-tension"}, {"refit blade-guard", "close wheel-doors"}} {
		require.Positive(t, at[pair[0]], "%v", at)
		assert.Less(t, at[pair[0]], at[pair[1]], pair)
	}
	// The head says no longer that the tension is locked off once the blade is tight.
	for _, step := range made.steps {
		let := strings.Contains(strings.ToLower(step.Setting), "blade tension")
		assert.Equal(t, step.Number >= at["relieve blade-tension"] && step.Number <= at["tension blade"], let, "step %d: %s", step.Number, step.Setting)
	}
}

// What is due at one machine and cannot be one job is told with the most of it that can.
func TestARefusalNamesTheMostThatIsOneJob(t *testing.T) {
	result := Compile(Input{Files: ReadFolder(t, "../procedures")})
	names := result.Procedures("mill")
	_, err := result.Join(Look{}, Joining{Procedures: names, Unit: "mill", On: "2026-05-01"})
	var fight *Conflict
	require.ErrorAs(t, err, &fight)
	_, said, told := strings.Cut(fight.Help, "One job can be: ")
	require.True(t, told, fight.Help)
	some := strings.Split(strings.TrimSuffix(said, "."), ", ")
	_, err = result.Join(Look{}, Joining{Procedures: some, Unit: "mill", On: "2026-05-01"})
	require.NoError(t, err)
	for _, more := range subsets(names) {
		if len(more) > len(some) {
			_, err := result.Join(Look{}, Joining{Procedures: more, Unit: "mill", On: "2026-05-01"})
			assert.ErrorAs(t, err, &fight, "%v", more)
		}
	}
}
