package compiler

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// winch is a shop with one machine of two gearboxes, for jobs that are joined in a test.
const winch = `benchleaf = 1
[shop]
title = "Two Sheds"
[machine]
name = "winch"
title = "Hand winch"
manual = "Plate on the frame"
[tool.pan]
kind = "container"
holds = "5 L"
[tool.tray]
kind = "container"
holds = "5 L"
[fluid.oil]
kind = "gear-oil"
grade = "85W-140"
[spare.ring]
[part.front-drain]
head = "wing"
[part.front-filler]
head = "wing"
seals = ["ring"]
[part.rear-drain]
head = "wing"
[part.rear-filler]
head = "wing"
[cavity.front-gearbox]
fluid = "oil"
capacity = "1 L"
drain = "front-drain"
fill = "front-filler"
[cavity.rear-gearbox]
fluid = "oil"
capacity = "1 L"
drain = "rear-drain"
fill = "rear-filler"
`

// card is a procedure of the winch out of its lists and its steps.
func card(title, more, steps string) string {
	return `benchleaf = 1
[procedure]
title = "` + title + `"
machine = "winch"
revision = "A"
date = 2026-03-02
author = "T. Okafor"
who = "Mechanic"
hands-on = "20 min"
every = "50 h"
wear = ["gloves"]
no-isolation = "The winch lies on the bench"
no-close = "Nothing is opened"
` + more + steps
}

// drip is an oil change of one of the gearboxes.
func drip(which, into, wait, spares string) string {
	return card("Change the oil of the "+which+" gearbox", "elapsed = \"1 h\"\ntools = [\""+into+"\"]\nsupplies = [\"oil\"]\nspares = "+spares+"\ncautions = [\"used-oil\"]\n",
		strings.NewReplacer("WHICH", which, "INTO", into, "WAIT", wait).Replace(`[[step]]
remove = "WHICH-filler"
[[step]]
remove = "WHICH-drain"
[[step]]
drain = "WHICH-gearbox"
into = "INTO"
[[step]]
wait = "WAIT"
[[step]]
refit = "WHICH-drain"
[[step]]
fill = "WHICH-gearbox"
until = "it stands at the mark"
[[step]]
refit = "WHICH-filler"
`))
}

// joinAt joins all procedures of a shop with the winch; files are their names and texts in turn.
func joinAt(t *testing.T, named ...string) (*Joined, *Result, error) {
	t.Helper()
	files := []*source.File{source.New("shop.toml", []byte(winch))}
	var names []string
	for i := 0; i < len(named); i += 2 {
		names = append(names, named[i])
		files = append(files, source.New(named[i]+".toml", []byte(named[i+1])))
	}
	shop := Compile(Input{Files: files})
	require.Empty(t, loud(shop.Findings))
	made, err := shop.Join(Look{}, Joining{Procedures: names, On: "2026-05-01", Name: "joined"})
	return made, shop, err
}

// loud are findings that are more than a note.
func loud(found []finding.Finding) []string {
	var out []string
	for _, one := range found {
		if one.Severity > finding.Note {
			out = append(out, fmt.Sprintf("%s:%d: %s %s", one.Place.File.Path, one.Place.Start().Line, one.Rule, one.Summary))
		}
	}
	return out
}

// Two gearboxes drip at the same time: the plug of one does not break the wait of the other,
// and each goes back in when its own wait is over, which its gate says.
func TestTwoWaitsOverlap(t *testing.T) {
	made, _, err := joinAt(t, "front", drip("front", "pan", "30 min", `["ring"]`), "rear", drip("rear", "tray", "10 min", "[]"))
	require.NoError(t, err)
	assert.Empty(t, loud(made.Result.Findings), "%s", made.Source)
	gates := regexp.MustCompile(`gate = "Not before (\d+) min`).FindAllStringSubmatch(string(made.Source), -1)
	require.Len(t, gates, 2, "%s", made.Source)
	assert.Less(t, made.Length, made.Apart-9*60)
	_, rest, _ := strings.Cut(string(made.Source), `wait = "10 min"`)
	assert.Contains(t, strings.SplitN(rest, "[[", 3)[1], "gate = ", "meanwhile of the long wait, and not of its own:\n%s", made.Source)
}

// A plug that two procedures open takes two seals, and the second is named where it goes back
// the second time.
func TestAPlugOpenedTwiceTakesTwoSeals(t *testing.T) {
	level := card("Look at the level", "tools = []\nsupplies = []\nspares = [\"ring\"]\n", `[[step]]
remove = "front-filler"
[[step]]
inspect = "the level in the front gearbox"
expect = "oil at the lower edge of the hole"
outside = "Fill up."
[[step]]
refit = "front-filler"
`)
	made, _, err := joinAt(t, "front", drip("front", "pan", "30 min", `["ring"]`), "level", level)
	require.NoError(t, err)
	assert.Empty(t, loud(made.Result.Findings), "%s", made.Source)
	var refits []string
	for _, block := range strings.Split(string(made.Source), "\n\n[[") {
		if strings.Contains(block, `refit = "front-filler"`) {
			refits = append(refits, block)
		}
	}
	require.Len(t, refits, 2)
	assert.NotContains(t, refits[0], "spares")
	assert.Contains(t, refits[1], `spares = ["ring"]`)
	rings := 0
	for _, use := range made.Result.Jobs[0].work.Needs.Spares {
		if use.Name == "ring" {
			rings += use.Count
		}
	}
	assert.Equal(t, 2, rings)
}

// A job that is refused tells what the rule would tell, by the steps as their authors count
// them, and what to do about it.
func TestWhyAJobIsRefused(t *testing.T) {
	shut := card("Put the front drain back", "start = [\"The front drain is off and lies on the bench.\"]\ntools = []\nsupplies = []\nspares = []\n", `[[step]]
clean = "front-drain"
[[step]]
refit = "front-drain"
`)
	_, _, err := joinAt(t, "front", drip("front", "pan", "30 min", `["ring"]`), "shut", shut)
	var fight *Conflict
	require.ErrorAs(t, err, &fight)
	assert.Equal(t, "as one job: step 2 of front takes off more of the front drain than is on, and shut begins with \"The front drain is off and lies on the bench.\"", fight.Text)
	assert.Contains(t, fight.Help, "one after the other, each when what it begins with is so")
	require.Len(t, fight.Related, 2)
	assert.Equal(t, "front.toml", fight.Related[0].Place.File.Path)
	assert.Equal(t, "step 2 of front", fight.Related[0].Text)
	assert.Equal(t, "shut.toml", fight.Related[1].Place.File.Path)
}
