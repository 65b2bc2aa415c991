package compiler

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/source"
)

// The guide rollers are set behind the blade: in the joined job of both cards they are set
// only when the sharp blade is on and under tension, whichever card is named first.
func TestRollersAreSetBehindTheNewBlade(t *testing.T) {
	result := Compile(Input{Files: ReadFolder(t, "../procedures")})
	for _, some := range [][]string{
		{"band-mill-blade-change", "band-mill-guide-rollers"},
		{"band-mill-guide-rollers", "band-mill-blade-change"},
	} {
		made, err := result.Join(Look{}, Joining{Procedures: some, Unit: "mill", On: "2026-05-20"})
		require.NoError(t, err, some)
		steps := made.Result.Jobs[0].work.Job.Steps
		at := func(verb, object string) int {
			return slices.IndexFunc(steps, func(step *model.Step) bool {
				return step.Verb.Key == verb && slices.ContainsFunc(step.Objects, func(o model.Object) bool { return o.Text.Text == object })
			})
		}
		tension, adjust := at("tension", "blade"), at("adjust", "roller-gap")
		require.Positive(t, tension)
		assert.Less(t, tension, adjust, "%v\n%s", some, made.Source)
		assert.True(t, made.Proved)
		assert.Less(t, made.Length, made.Apart)
	}
}

const rig = `benchleaf = 1
[shop]
title = "Shed"
[machine]
name = "rig"
title = "Rig"
manual = "Plate"
in-service = 2026-01-01
[part.band]
head = "none"
[part.shoe]
head = "none"
[limit.band-gap]
title = "gap of the band"
limit = "2 to 4 mm"
outside = "Set it again."
anew-after = ["band"]
[limit.shoe-gap]
title = "gap of the shoe"
limit = "2 to 4 mm"
outside = "Set it again."
anew-after = ["shoe"]
`

func onRig(name, steps string) *source.File {
	return source.New(name+".toml", []byte(`benchleaf = 1

[procedure]
title = "`+name+`"
machine = "rig"
revision = "A"
date = 2026-01-10
author = "R. A."
who = "Anyone"
hands-on = "20 min"
every = "30 days"
tools = []
supplies = []
spares = []
wear = []
no-isolation = "On the bench"
no-close = "Nothing is opened"
end = ["The work goes on by the next card."]
`+steps))
}

// Two procedures that each renew what the other has set already cannot be one job, and the
// refusal names the four steps.
func TestSettingsThatWaitForEachOther(t *testing.T) {
	result := Compile(Input{Files: []*source.File{source.New("shop.toml", []byte(rig)),
		onRig("bands", "[[step]]\nadjust = \"shoe-gap\"\n[[step]]\nremove = \"band\"\n[[step]]\nrefit = \"band\"\n"),
		onRig("shoes", "[[step]]\nadjust = \"band-gap\"\n[[step]]\nremove = \"shoe\"\n[[step]]\nrefit = \"shoe\"\n"),
	}})
	_, err := result.Join(Look{}, Joining{Procedures: []string{"bands", "shoes"}, On: "2026-05-01"})
	var fight *Conflict
	require.ErrorAs(t, err, &fight)
	assert.Equal(t, "step 1 of shoes sets the gap of the band, and wants to come after step 3 of bands, which puts the band on or tight; "+
		"step 1 of bands sets the gap of the shoe, and wants to come after step 3 of shoes, which puts the shoe on or tight", fight.Text)
	assert.Len(t, fight.Related, 4)
	assert.Equal(t, "Do them one after the other, each by its own card. Where the gap of the band does not hang on the band, take it out of anew-after. "+
		"Where the gap of the shoe does not hang on the shoe, take it out of anew-after.", fight.Help)
}

// What was measured before is as it was found, and waits for nobody.
func TestWhatWasFoundIsNotMeasuredAnew(t *testing.T) {
	result := Compile(Input{Files: []*source.File{source.New("shop.toml", []byte(rig)),
		onRig("bands", "[[step]]\nmeasure = \"band-gap\"\nreading = \"Found\"\n[[step]]\nremove = \"band\"\n[[step]]\nrefit = \"band\"\n[[step]]\nmeasure = \"band-gap\"\nreading = \"Left\"\n"),
		onRig("again", "[[step]]\nmeasure = \"band-gap\"\nreading = \"Found too\"\n[[step]]\nremove = \"band\"\n[[step]]\nrefit = \"band\"\n[[step]]\nadjust = \"band-gap\"\n"),
	}})
	made, err := result.Join(Look{}, Joining{Procedures: []string{"bands", "again"}, On: "2026-05-01"})
	require.NoError(t, err)
	require.NotEmpty(t, made.Result.Jobs, "%v\n%s", made.Result.Findings, made.Source)
	var origins []string
	for _, step := range made.Result.Jobs[0].work.Job.Steps {
		origins = append(origins, step.Origin.Text)
	}
	place := func(origin string) int { return slices.Index(origins, origin) }
	assert.Less(t, place("A 3"), place("B 4"), "%v", origins)
	assert.Less(t, place("B 3"), place("A 4"), "%v", origins)
}

// A setting waits for the parts of others that it hangs on, though its own author tightens what
// holds his part behind it; and for the wait behind that part, in which it settles.
func TestASettingWaitsThoughItsHolderIsTightenedBehindIt(t *testing.T) {
	shop := strings.Replace(strings.Replace(rig, "anew-after = [\"band\"]", "anew-after = [\"band\", \"shoe\"]", 1), "[part.shoe]\n", "[part.band-bolts]\nhead = \"wing\"\n[part.shoe]\n", 1)
	shop = strings.Replace(shop, "[part.band]\n", "[part.band]\nheld-by = [\"band-bolts\"]\n", 1)
	result := Compile(Input{Files: []*source.File{source.New("shop.toml", []byte(shop)),
		onRig("bands", "[[step]]\nloosen = \"band-bolts\"\n[[step]]\nremove = \"band\"\n[[step]]\nrefit = \"band\"\n[[step]]\nadjust = \"band-gap\"\n[[step]]\ntighten = \"band-bolts\"\nby-hand = \"finger-tight\"\n[[step]]\nmeasure = \"band-gap\"\n"),
		onRig("shoes", "[[step]]\nremove = \"shoe\"\n[[step]]\nrefit = \"shoe\"\n[[step]]\nwait = \"10 min\"\n[[step]]\nadjust = \"shoe-gap\"\n[[step]]\nmeasure = \"band-gap\"\n"),
	}})
	made, err := result.Join(Look{}, Joining{Procedures: []string{"bands", "shoes"}, On: "2026-05-01"})
	require.NoError(t, err, "%v", loud(result.Findings))
	var origins []string
	for _, step := range made.Result.Jobs[0].work.Job.Steps {
		origins = append(origins, step.Origin.Text)
	}
	for _, behind := range []string{"A 4", "A 6"} {
		assert.Less(t, slices.Index(origins, "B 4"), slices.Index(origins, behind), "%v", origins)
	}
}

// What a procedure has wrong by itself is told as its own, with the way out of the rule.
func TestFaultOfOneProcedureByItself(t *testing.T) {
	whole := func(name, steps string) *source.File {
		file := onRig(name, steps)
		return source.New(file.Path, []byte(strings.Replace(string(file.Text), "end = [\"The work goes on by the next card.\"]\n", "", 1)))
	}
	result := Compile(Input{Files: []*source.File{source.New("shop.toml", []byte(rig)),
		whole("bands", "[[step]]\nremove = \"band\"\n[[step]]\nrefit = \"band\"\n"),
		whole("looks", "[[step]]\ninspect = \"shoe\"\nexpect = \"no crack\"\noutside = \"Renew it.\"\n"),
	}})
	_, err := result.Join(Look{}, Joining{Procedures: []string{"bands", "looks"}, On: "2026-05-01"})
	var fight *Conflict
	require.ErrorAs(t, err, &fight)
	assert.Equal(t, "the band comes on at step 2 of bands, and no later step sets or measures the gap of the band, and that is so in bands by itself", fight.Text)
	assert.Contains(t, fight.Help, "adjust = \"band-gap\"")
	made, err := result.Join(Look{}, Joining{Procedures: []string{"looks"}, On: "2026-05-01"})
	require.NoError(t, err)
	assert.Empty(t, made.Result.Jobs[0].walk.Breaches)
}

// The tank of the power pack is shut while the hose and the filter are cleaned beside it, and
// open while its own card cleans it; that costs nothing.
func TestTankIsShutWhileOthersClean(t *testing.T) {
	result := Compile(Input{Files: ReadFolder(t, "../procedures")})
	made, err := result.Join(Look{}, Joining{Procedures: []string{"power-pack-hose-replace", "power-pack-oil-change", "power-pack-return-filter"}, On: "2026-05-20"})
	require.NoError(t, err)
	const tank = "B "
	open, own := map[string]bool{}, 0
	for _, step := range made.Result.Jobs[0].work.Job.Steps {
		for _, object := range step.Objects {
			switch step.Verb.Key {
			case "remove", "open":
				open[object.Text.Text] = true
			case "refit", "close":
				delete(open, object.Text.Text)
			}
		}
		switch {
		case step.Verb.Key != "clean":
		case strings.HasPrefix(step.Origin.Text, tank) && open["tank-cover"]:
			own++
		case !strings.HasPrefix(step.Origin.Text, tank):
			assert.False(t, open["filler"] || open["tank-cover"], "step %d\n%s", step.Number, made.Source)
		}
	}
	assert.Equal(t, 1, own)
	assert.True(t, made.Proved)
	assert.Equal(t, 3, made.Changes.Covers)
}

// What its author runs warm and drains is drained while it is warm, for one and for two.
func TestWarmOilIsDrainedWarm(t *testing.T) {
	result := Compile(Input{Files: ReadFolder(t, "../procedures")})
	for people := 1; people <= 2; people++ {
		made, err := result.Join(Look{}, Joining{Procedures: []string{"log-deck-bearing-grease", "log-deck-chain-tension", "log-deck-gearbox-oil"}, Unit: "deck", On: "2026-05-20", People: people})
		require.NoError(t, err)
		steps := made.Result.Jobs[0].work.Job.Steps
		require.Len(t, made.steps, len(steps))
		warm, drained := int64(-1), int64(-1)
		for i, step := range steps {
			switch {
			case step.Verb.Key == "run" && warm < 0:
				warm = made.steps[i].Start + made.steps[i].Seconds
			case step.Verb.Key == "drain":
				drained = made.steps[i].Start
			}
		}
		require.Positive(t, warm)
		assert.Greater(t, drained, warm)
		assert.LessOrEqual(t, drained-warm, int64(30*60), "for %d:\n%s", people, made.Source)
	}
}
