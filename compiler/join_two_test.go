package compiler

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/source"
)

// blocks are the steps of a procedure, as they are written.
func blocks(text string) []string { return strings.Split(text, "\n\n[[")[1:] }

// Where an energy has a lock, each of two has one of their own; where it has none, nothing is
// said of one. That the other is clear is looked at wherever something is given back.
func TestLocksOfTwoAreSaidWhereThereAreLocks(t *testing.T) {
	result := Compile(Input{Files: ReadFolder(t, "../procedures")})
	two, err := result.Join(Look{}, Joining{Procedures: []string{"log-deck-chain-tension", "log-deck-gearbox-oil", "log-deck-bearing-grease"}, Unit: "deck", On: "2026-05-01", People: 2})
	require.NoError(t, err)
	require.Equal(t, 2, two.People, two.ForOne)
	seen := map[string][]bool{}
	for _, block := range blocks(string(two.Source)) {
		energy := regexp.MustCompile(`(isolate|restore) = (.*)`).FindStringSubmatch(block)
		if energy == nil {
			continue
		}
		locked := strings.Contains(energy[2], `"mains"`)
		seen[energy[1]] = append(seen[energy[1]], locked)
		assert.Equal(t, locked, strings.Contains(block, "their own"), block)
		assert.Equal(t, energy[1] == "restore", strings.Contains(block, "First look that the other is clear of the machine."), block)
		assert.NotContains(t, block, "person = ")
	}
	assert.ElementsMatch(t, []bool{true, false}, seen["isolate"], "%s", two.Source)
	assert.Equal(t, []bool{true}, seen["restore"], "both are given back at one step:\n%s", two.Source)
}

// Who may do the job is what each procedure asks for, with its letter where they differ.
func TestWhoOfAJoinedJob(t *testing.T) {
	who := func(text string) string { return regexp.MustCompile(`(?m)^who = "(.*)"$`).FindStringSubmatch(text)[1] }
	rear := drip("rear", "tray", "10 min", "[]")
	made, _, err := joinAt(t, "front", drip("front", "pan", "30 min", `["ring"]`), "rear", rear)
	require.NoError(t, err)
	assert.Equal(t, "Mechanic", who(string(made.Source)))
	made, _, err = joinAt(t, "front", drip("front", "pan", "30 min", `["ring"]`), "rear", strings.Replace(rear, `who = "Mechanic"`, `who = "Anyone who runs the winch"`, 1))
	require.NoError(t, err)
	assert.Equal(t, "A: Mechanic; B: Anyone who runs the winch", who(string(made.Source)))
	assert.Empty(t, loud(made.Result.Findings))
}

// press is a machine with two energies that are locked off with one kind of lock, and a job
// on it; {n} stands for who does a step.
const press = `benchleaf = 1
[procedure]
title = "Clean the rollers"
machine = "Press"
revision = "A"
date = 2026-03-02
author = "T. Okafor"
who = "Mechanic"
hands-on = "20 min"
every = "50 h"
manual = "Plate on the frame"
people = PEOPLE
tools = ["padlock", "tag"]
supplies = []
spares = []
wear = ["gloves"]
cautions = ["start", "air", "pinch"]
[tool.padlock]
title = "Padlock"
kind = "lock"
[tool.tag]
title = "Tag"
kind = "tag"
[energy.mains]
title = "mains"
kind = "electric"
isolate = "Turn Q4 to OFF. Put your own lock and tag on it."
prove = "Press START. Nothing moves."
restore = "Take your lock and tag off, and turn Q4 to ON."
tools = ["padlock", "tag"]
[energy.air]
title = "compressed air"
kind = "pneumatic"
pressure = "6 bar"
isolate = "Close the ball valve. Put your own lock on it."
prove = "Press GATE. Nothing moves."
restore = "Take your lock off, and open the ball valve."
tools = ["padlock"]
[area.front]
apart = ["rear"]
[area.rear]
[part.front-rollers]
hazards = ["pinch"]
area = ["front"]
[part.rear-rollers]
hazards = ["pinch"]
area = ["rear"]
[[prepare]]
isolate = "mains"
[[prepare]]
prove = "mains"
[[prepare]]
isolate = "air"
[[prepare]]
prove = "air"
[[step]]
clean = "front-rollers"
PERSON = 1
[[step]]
clean = "rear-rollers"
PERSON = 2
[[close]]
restore = "air"
[[close]]
restore = "mains"
`

// Of a lock as many go to the machine as are on at once: one for each energy and each of two
// people. A message stands at the first step of each person whom it concerns.
func TestLocksAndMessagesOfEachPerson(t *testing.T) {
	one := strings.NewReplacer("PEOPLE", "1", "PERSON = 1\n", "", "PERSON = 2\n", "").Replace(press)
	after, _, _ := strings.Cut(one, "[[close]]")
	apart := strings.Replace(after, "[[prepare]]\nisolate = \"air\"", "[[prepare]]\nrestore = \"mains\"\n[[prepare]]\nisolate = \"air\"", 1)
	for name, c := range map[string]struct {
		text          string
		padlock, tag  string
		again         []int
		padlockInPick string
	}{
		"one":   {one, "2", "", []int{5}, "2"},
		"two":   {strings.NewReplacer("PEOPLE", "2", "PERSON", "person").Replace(press), "4", "2", []int{5, 6}, "4"},
		"apart": {apart, "", "", []int{6}, ""},
	} {
		result := Compile(Input{Files: []*source.File{source.New("press.toml", []byte(c.text))}})
		require.Len(t, result.Jobs, 1, "%s: %v", name, loud(result.Findings))
		card, err := compose.Card(result.Jobs[0].work, quantity.Metric, nil)
		require.NoError(t, err)
		counts := map[string]string{}
		for _, tool := range card.Tools {
			counts[tool.Name] = tool.Quantity
		}
		assert.Equal(t, map[string]string{"Padlock": c.padlock, "Tag": c.tag}, counts, name)
		for _, caution := range card.Cautions {
			if strings.Contains(strings.ToLower(caution.Hazard), "pinch") {
				assert.Equal(t, c.again, caution.Steps, "%s: %s", name, caution.Hazard)
			}
		}
		list, err := compose.Pick([]compose.Asked{{Work: result.Jobs[0].work}, {Work: result.Jobs[0].work}}, quantity.Metric, nil)
		require.NoError(t, err)
		for _, line := range list.Groups[0].Lines {
			if line.Name == "Padlock" {
				assert.Equal(t, plan.Pick{Name: "Padlock", Quantity: c.padlockInPick, For: []string{"A", "B"}}, line, name)
			}
		}
	}
}

// A spare is renewed in the areas of the parts that it seals; nobody knows where, if one of them
// has none.
func TestASpareIsWhereItSeals(t *testing.T) {
	one := strings.NewReplacer("PEOPLE", "1", "PERSON = 1\n", "", "PERSON = 2\n", "", "spares = []", `spares = ["ring"]`).Replace(press) + "[spare.ring]\n[part.plug]\narea = [\"rear\"]\nseals = [\"ring\"]\n[part.cap]\nseals = [\"ring\"]\narea = [\"front\"]\n"
	one = strings.Replace(one, "[[close]]", "[[step]]\nreplace = \"ring\"\n[[close]]", 1)
	areas := func(text string) []string {
		result := Compile(Input{Files: []*source.File{source.New("press.toml", []byte(text))}})
		require.Len(t, result.Jobs, 1, "%v", loud(result.Findings))
		job := result.Jobs[0].work.Job
		return job.Areas(job.Steps[6])
	}
	assert.ElementsMatch(t, []string{"front", "rear"}, areas(one))
	assert.Nil(t, areas(strings.TrimSuffix(one, "area = [\"front\"]\n")))
}

// A kept job for two in which the words about the locks are taken out is told.
func TestLocksOfAKeptJob(t *testing.T) {
	files := ReadFolder(t, "../procedures")
	result := Compile(Input{Files: files})
	two, err := result.Join(Look{}, Joining{Procedures: []string{"log-deck-chain-tension", "log-deck-gearbox-oil", "log-deck-bearing-grease"}, Unit: "deck", On: "2026-05-01", People: 2})
	require.NoError(t, err)
	for _, words := range []string{"Each of the two puts on a lock of their own and keeps its key.", "First look that the other is clear of the machine. Each takes off their own lock."} {
		cut := regexp.MustCompile(`say = "`+regexp.QuoteMeta(words)+"\"\n").ReplaceAllString(string(two.Source), "")
		require.NotEqual(t, string(two.Source), cut)
		text := source.New(two.Name+".toml", []byte(cut))
		again := Compile(Input{Files: append(slices.Clone(files), text), Targets: []string{text.Path}})
		assert.Contains(t, strings.Join(worst(again), "\n"), "people/locks", words)
	}
}

// Why a plan is for one names the step beside which nobody can work for longest.
func TestWhatKeepsTwoFromWorkingAtOnce(t *testing.T) {
	shop := winch + "[area.front]\napart = [\"rear\"]\n[area.rear]\n[part.front-drum]\narea = [\"front\"]\n[part.rear-drum]\narea = [\"rear\"]\n"
	lists := "tools = []\nsupplies = []\nspares = []\n"
	flat := card("Front", lists, "[[step]]\nclean = \"front-drum\"\n[[step]]\ninspect = \"the rope, turned over by hand\"\ntime = \"9 min\"\nexpect = \"no broken strand\"\noutside = \"Renew it.\"\n")
	up := card("Rear", lists, "[[step]]\nraise = \"the frame\"\ncautions = [\"crushing\"]\n[[step]]\nsupport = \"the frame\"\n[[step]]\nclean = \"rear-drum\"\n[[step]]\nlower = \"the frame\"\ncautions = [\"crushing\"]\n")
	result := Compile(Input{Files: []*source.File{source.New("shop.toml", []byte(shop)), source.New("flat.toml", []byte(flat)), source.New("up.toml", []byte(up))}})
	two, err := result.Join(Look{}, Joining{Procedures: []string{"flat", "up"}, On: "2026-05-01", People: 2})
	require.NoError(t, err, "%v", loud(result.Findings))
	assert.Equal(t, 1, two.People)
	assert.Equal(t, `no plan for two that was found saves a minute, and one part in twenty; what keeps two from working at once longest is step 2 of flat (9 min): its words tell of something that moves ("turned over by hand"); area = [...] at the step says where it is done`, two.ForOne)
}
