package compiler_test

import (
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
)

const helpShop = `benchleaf = 1
use = ["tools.toml", "*-machine.toml"]
[shop]
title = "Fernhollow Sawmill"
`

const helpTools = `benchleaf = 1
[tool.socket-18]
kind = "socket"
sizes = "18 mm"
drive = "1/2"
[tool.ratchet]
kind = "ratchet"
drive = "1/2"
[tool.wrench-100]
kind = "torque-wrench"
drive = "1/2"
range = "20 to 100 N·m"
[tool.drain-pan]
kind = "container"
holds = "8 L"
[fluid.gear-220]
kind = "gear-oil"
grade = "ISO VG 220"
[supply.rags]
[spare.drain-washer]
[spare.filter]
[caution.hot-oil]
signal = "warning"
against = ["hot"]
hazard = "Hot oil"
consequence = "It can scald your hands."
avoid = "Let it cool."
[caution.start]
signal = "danger"
hazard = "Start"
consequence = "It kills."
avoid = "Lock it."
`

const helpDeck = `benchleaf = 1
[machine]
name = "deck"
title = "Log deck"
manual = "Operator's manual"
variants = ["short", "long"]
[part.drain-plug]
title = "drain plug"
thread = "M12"
across = "18 mm"
torque = "42 to 48 N·m"
condition = "dry"
seals = ["drain-washer"]
[part.filter]
head = "none"
[cover.belt-guard]
title = "belt guard"
guards = ["mains"]
held-by = ["drain-plug"]
[cavity.gearbox]
title = "gearbox"
fluid = "gear-220"
capacity = "1.1 L"
drain = "drain-plug"
[cavity.gearbox.variant.long]
capacity = "1.6 L"
[energy.mains]
kind = "electric"
isolate = "Turn Q1 off and lock it."
prove = "Press START. Nothing moves."
restore = "Turn Q1 on."
[area.tail]
apart = ["head"]
[area.head]
[pose.side]
[limit.slack]
limit = "20 to 30 mm"
outside = "Set it."
`

const helpEdger = `benchleaf = 1
[machine]
title = "Edger"
manual = "Operator's manual"
[part.drain-plug]
thread = "M10"
`

const helpJob = `benchleaf = 1
[procedure]
title = "Change the oil"
machine = "deck"
revision = "A"
date = 2026-02-14
author = "R. Aldous"
who = "Mechanic"
hands-on = "30 min"
tools = ["socket-18", "ratchet"]
[[prepare]]
isolate = "mains"
[[prepare]]
prove = "mains"
[[step]]
remove = "belt-guard"
[[step]]
remove = "drain-plug"
into = "drain-pan"
id = "oil-out"
[[step]]
drain = "gearbox"
into = "drain-pan"
once = ["oil-out"]
for = "long"
[[step]]
refit = "drain-plug"
`

const helpTrim = `benchleaf = 1
[procedure]
title = "Look at the edger"
machine = "edger-machine"
revision = "A"
[[step]]
inspect = "drain-plug"
[[step]]
follow = "job"
`

// help compiles the small shop with one of its files written otherwise; | in it is the cursor.
func help(path, text string) (result *compiler.Result, file *source.File, offset int) {
	offset = strings.Index(text, "|")
	texts := map[string]string{"shop.toml": helpShop, "tools.toml": helpTools, "deck-machine.toml": helpDeck, "edger-machine.toml": helpEdger, "job.toml": helpJob, "trim.toml": helpTrim}
	texts[path] = strings.Replace(text, "|", "", 1)
	var files []*source.File
	for _, name := range []string{"shop.toml", "tools.toml", "deck-machine.toml", "edger-machine.toml", "job.toml", "trim.toml"} {
		files = append(files, source.New(name, []byte(texts[name])))
	}
	if i := slices.IndexFunc(files, func(f *source.File) bool { return f.Path == path }); i < 0 {
		files = append(files, source.New(path, []byte(texts[path])))
	}
	file = files[slices.IndexFunc(files, func(f *source.File) bool { return f.Path == path })]
	return compiler.Compile(compiler.Input{Files: files}), file, offset
}

// taken is a file with a completion put in, the cursor as |.
func taken(file *source.File, one compiler.Completion) string {
	text, span := string(file.Text), one.Replace.Span
	insert := strings.Replace(one.Insert, "$0", "|", 1)
	return text[:span.Start] + insert + text[span.End:]
}

func TestCompletions(t *testing.T) {
	const job = helpJob
	for _, c := range []struct {
		name, path, text string
		label            string // that must be offered
		line             string // the line, when it is taken
		not              string // that must not be
	}{
		{"a verb first in a step", "job.toml", job + "[[step]]\n|", "remove", `remove = "|"`, "title"},
		{"a half-written verb", "job.toml", job + "[[step]]\nrem|", "remove", `remove = "|"`, ""},
		{"no second verb", "job.toml", job + "|", "count", `count = |`, "remove"},
		{"a key not yet written", "job.toml", strings.Replace(job, "revision", "|\nrevision", 1), "elapsed", `elapsed = "|"`, "hands-on"},
		{"a key before its value", "job.toml", strings.Replace(job, "hands-on =", "hand|s-on =", 1), "hands-on", `hands-on = "30 min"`, ""},
		{"a header on a new line", "job.toml", job + "|", "[[step]]", `[[step]]`, ""},
		{"a header half written", "deck-machine.toml", helpDeck + "[par|", "[part.NAME]", `[part.|]`, "[shop"},
		{"a header in brackets", "job.toml", job + "[[st|]]", "[[step]]", `[[step]]`, ""},
		{"a name used and not described", "deck-machine.toml", strings.Replace(helpDeck, "seals = [", "held-by = [\"lock-nut\"]\nseals = [", 1) + "[part.|]", "lock-nut", `[part.lock-nut]`, "drain-plug"},
		{"a name of the right kind", "job.toml", job + "[[step]]\nremove = \"|\"", "belt-guard", `remove = "belt-guard"`, "mains"},
		{"a name in a text that is not closed", "job.toml", job + "[[step]]\nremove = \"bel|\n", "belt-guard", `remove = "belt-guard"`, ""},
		{"a name without quotes", "job.toml", job + "[[step]]\nremove = bel|\n", "belt-guard", `remove = "belt-guard"`, ""},
		{"a name where nothing is", "job.toml", job + "[[step]]\nremove = |\n", "belt-guard", `remove = "belt-guard"`, ""},
		{"the energies of the machine", "job.toml", job + "[[close]]\nrestore = \"|\"", "mains", `restore = "mains"`, "belt-guard"},
		{"no things of another machine", "trim.toml", helpTrim + "[[step]]\nclean = \"|\"", "drain-plug", `clean = "drain-plug"`, "belt-guard"},
		{"a tool not yet in a list", "job.toml", strings.Replace(job, `"ratchet"]`, `"ratchet", "|"]`, 1), "wrench-100", `tools = ["socket-18", "ratchet", "wrench-100"]`, "ratchet"},
		{"a tool before a lost quote", "job.toml", strings.Replace(job, `"socket-18", "ratchet"]`, `"wre|, "ratchet"]`, 1), "wrench-100", `tools = ["wrench-100", "ratchet"]`, ""},
		{"a tool in an open list", "job.toml", strings.Replace(job, `"ratchet"]`, `|`, 1), "wrench-100", `tools = ["socket-18", "wrench-100"`, "socket-18"},
		{"a fluid", "deck-machine.toml", strings.Replace(helpDeck, `"gear-220"`, `"|"`, 1), "gear-220", `fluid = "gear-220"`, "rags"},
		{"a supply with how many", "job.toml", job + "supplies = { | }", "rags", `supplies = { rags = | }`, ""},
		{"a version", "job.toml", strings.Replace(job, `for = "long"`, `for = "|"`, 1), "short", `for = "short"`, ""},
		{"a version as a key", "deck-machine.toml", helpDeck + "variant = { | }", "short", `variant = { short = { | } }`, ""},
		{"a key for a version", "deck-machine.toml", helpDeck + "variant = { short = { | } }", "limit", `variant = { short = { limit = "|" } }`, ""},
		{"a step by its id", "job.toml", strings.Replace(job, `once = ["oil-out"]`, `once = ["|"]`, 1), "oil-out", `once = ["oil-out"]`, ""},
		{"a machine", "job.toml", strings.Replace(job, `"deck"`, `"|"`, 1), "edger-machine", `machine = "edger-machine"`, ""},
		{"a procedure", "trim.toml", strings.Replace(helpTrim, `"job"`, `"|"`, 1), "job", `follow = "job"`, "trim"},
		{"a word of a list", "tools.toml", helpTools + "[tool.x]\nkind = \"|\"", "crowfoot", `kind = "crowfoot"`, ""},
		{"words of a list", "job.toml", job + "wear = |", "gloves", `wear = ["gloves"]`, ""},
		{"a unit behind a figure", "deck-machine.toml", strings.Replace(helpDeck, `"42 to 48 N·m"`, `"42 to 48|"`, 1), "lbf·ft", `torque = "42 to 48 lbf·ft"`, "mm"},
		{"a unit half written", "deck-machine.toml", strings.Replace(helpDeck, `"42 to 48 N·m"`, `"42 N|`, 1), "N·m", `torque = "42 N·m"`, ""},
		{"a unit behind a bare figure", "deck-machine.toml", strings.Replace(helpDeck, `"42 to 48 N·m"`, `42|`, 1), "N·m", `torque = "42 N·m"`, ""},
		{"a bound", "deck-machine.toml", strings.Replace(helpDeck, `"20 to 30 mm"`, `"|"`, 1), "max", `limit = "max |"`, ""},
		{"a flag", "job.toml", job + "meanwhile = |", "true", `meanwhile = true`, ""},
		{"a rule", "job.toml", job + "allow = [{ rule = \"tool/nev|\" }]", "tool/never-used", `allow = [{ rule = "tool/never-used" }]`, ""},
		{"a key in braces", "job.toml", job + "adapter = { | }", "wrench", `adapter = { wrench = "|" }`, "torque"},
		{"a file that is used", "job.toml", strings.Replace(job, "[procedure]", "use = [\"|\"]\n[procedure]", 1), "tools.toml", `use = ["tools.toml"]`, "job.toml"},
		{"what is to be read again", "second/deck-machine.toml", "benchleaf = 1\n[second-reading]\n[second-reading.part.|]\n", "drain-plug", `[second-reading.part.drain-plug]`, ""},
		{"a message for a hazard", "tools.toml", helpTools + "[caution.|]", "shock", `[caution.shock]`, "start"},
		{"what is on no shelf", "tools.toml", helpTools + "[store.|]", "gear-220", `[store.gear-220]`, "socket-18"},
	} {
		t.Run(c.name, func(t *testing.T) {
			result, file, offset := help(c.path, c.text)
			list := result.Complete(c.path, offset)
			at := slices.IndexFunc(list, func(one compiler.Completion) bool { return one.Label == c.label })
			require.GreaterOrEqual(t, at, 0, "%v", list)
			text := taken(file, list[at])
			assert.Contains(t, strings.Split(text, "\n"), c.line)
			if c.not != "" {
				assert.False(t, slices.ContainsFunc(list, func(one compiler.Completion) bool { return one.Label == c.not }))
			}
		})
	}
}

func TestWhatBeginsAsWrittenComesFirst(t *testing.T) {
	result, _, offset := help("job.toml", helpJob+"[[step]]\ntor|")
	assert.Equal(t, "torque", result.Complete("job.toml", offset)[0].Label)
	result, _, offset = help("job.toml", helpJob+"[[step]]\nisolate = \"mains\"\n|")
	assert.Equal(t, "expect", result.Complete("job.toml", offset)[0].Label)
	result, _, offset = help("job.toml", helpJob+"[[step]]\n|")
	first := result.Complete("job.toml", offset)[0]
	assert.Equal(t, "verb", first.Kind)
	assert.Contains(t, first.Doc, "needs: the machine is stopped")
	assert.Contains(t, first.Doc, "makes true: the energy is isolated")
	for _, nothing := range []string{"# a |note\n", "say = \"Turn |it.\"\n", "count = 2 |# two\n"} {
		result, _, offset = help("job.toml", helpJob+"[[step]]\n"+nothing)
		assert.Empty(t, result.Complete("job.toml", offset), nothing)
	}
}

func TestTheSameIsAnsweredTwice(t *testing.T) {
	for _, text := range []string{helpJob + "[[step]]\n|", helpJob + "[[step]]\nremove = \"|", strings.Replace(helpJob, `refit = "`, `refit = "|`, 1)} {
		one, _, offset := help("job.toml", text)
		other, _, _ := help("job.toml", text)
		here, there := one.Complete("job.toml", offset), other.Complete("job.toml", offset)
		require.Equal(t, len(here), len(there))
		for i := range here {
			assert.Equal(t, here[i].Label+here[i].Doc+here[i].Insert, there[i].Label+there[i].Doc+there[i].Insert)
		}
		assert.Equal(t, whereabouts(one.References("job.toml", offset, true)), whereabouts(other.References("job.toml", offset, true)))
	}
}

func TestANameIsOfferedWithWhatIsKnownOfIt(t *testing.T) {
	result, _, offset := help("job.toml", helpJob+"[[step]]\ntighten = \"dr|\"")
	first := result.Complete("job.toml", offset)[0]
	assert.Equal(t, "drain plug, M12, 18 mm hex, 42 to 48 N·m (31 to 35 lbf·ft), dry", first.Detail)
	assert.Contains(t, first.Doc, "**drain plug** – part")
	result, _, offset = help("job.toml", helpJob+"[[step]]\nfill = \"|\"")
	assert.Equal(t, "gearbox, 1.1 L (1.2 US qt), gear 220 ISO VG 220", result.Complete("job.toml", offset)[0].Detail)
}

// A fault of the syntax elsewhere in the file, or in the machine's, takes no names away.
func TestNamesAreKnownBesideFaults(t *testing.T) {
	result, _, offset := help("deck-machine.toml", strings.Replace(helpDeck, `"drain-plug"`, `"|`, 1))
	assert.True(t, slices.ContainsFunc(result.Complete("deck-machine.toml", offset), func(one compiler.Completion) bool { return one.Label == "drain-plug" }))
	result, _, _ = help("deck-machine.toml", helpDeck+"torq\n")
	job := strings.Index(helpJob, "belt-guard")
	assert.True(t, slices.ContainsFunc(result.Complete("job.toml", job), func(one compiler.Completion) bool { return one.Label == "drain-plug" && one.Detail != "part" }))
	hover, ok := result.Hover("job.toml", job)
	require.True(t, ok)
	assert.Contains(t, hover.Text, "belt guard")
	assert.Len(t, result.Definition("job.toml", job), 1)
}

func TestHovers(t *testing.T) {
	for _, c := range []struct{ path, text, place, want string }{
		{"job.toml", strings.Replace(helpJob, "remove =", "re|move =", 1), "remove", "needs: what hides it is off"},
		{"job.toml", strings.Replace(helpJob, `remove = "drain`, `remove = "dr|ain`, 1), "drain-plug", "tool: `socket-18`, `wrench-100`"},
		{"job.toml", strings.Replace(helpJob, `remove = "drain`, `remove = "dr|ain`, 1), "drain-plug", "M12, 18 mm hex, 42 to 48 N·m (31 to 35 lbf·ft)"},
		{"job.toml", strings.Replace(helpJob, `prove = "`, `prove = "|`, 1), "mains", "isolate: Turn Q1 off and lock it."},
		{"job.toml", strings.Replace(helpJob, `drain = "`, `drain = "|`, 1), "gearbox", "1.1 L (1.2 US qt), gear 220 ISO VG 220"},
		{"job.toml", strings.Replace(helpJob, "hands-on =", "hands-|on =", 1), "hands-on", "Time with hands on the machine."},
		{"job.toml", strings.Replace(helpJob, "[[prepare]]", "[[prep|are]]", 1), "prepare", "One action."},
		{"job.toml", strings.Replace(helpJob, "once = [\"", "once = [\"|", 1), "oil-out", "remove drain-plug"},
		{"job.toml", helpJob + "cautions = [\"sho|ck\"]\n", "shock", "built-in safety message"},
		{"job.toml", helpJob + "wear = [\"gl|oves\"]\n", `"gloves"`, "protective gloves, M009"},
		{"deck-machine.toml", strings.Replace(helpDeck, `"42 to`, `"42| to`, 1), `"42 to 48 N·m"`, "= 31 to 35 lbf·ft"},
		{"deck-machine.toml", strings.Replace(helpDeck, `"42 to`, `"42| to`, 1), `"42 to 48 N·m"`, "= 380 to 420 lbf·in"},
		{"deck-machine.toml", helpDeck + "new = \"max 2|5 mm\"\n", `"max 25 mm"`, "= max 0.984 in"},
		{"deck-machine.toml", strings.Replace(helpDeck, "[part.filter", "[pa|rt.filter", 1), "part", "A part, or a set of like fasteners."},
		{"deck-machine.toml", strings.Replace(helpDeck, "variant.long", "variant.lo|ng", 1), "long", "version of Log deck"},
	} {
		result, file, offset := help(c.path, c.text)
		hover, ok := result.Hover(c.path, offset)
		require.True(t, ok, c.text)
		assert.Contains(t, hover.Text, c.want)
		assert.Equal(t, c.place, hover.Place.Text())
		assert.Equal(t, file, hover.Place.File)
		assert.LessOrEqual(t, hover.Place.Span.Start, offset)
		assert.GreaterOrEqual(t, hover.Place.Span.End, offset)
	}
	result, _, offset := help("job.toml", helpJob+"say = \"Turn |it.\"\n")
	_, ok := result.Hover("job.toml", offset)
	assert.False(t, ok)
}

// whereabouts are places as file:line:text.
func whereabouts(places []source.Place) []string {
	var out []string
	for _, at := range places {
		out = append(out, at.File.Path+" "+strings.TrimSpace(at.File.Line(at.Start().Line)))
	}
	return out
}

func TestDefinitionsAndReferences(t *testing.T) {
	result, _, offset := help("job.toml", strings.Replace(helpJob, `refit = "`, `refit = "|`, 1))
	assert.Equal(t, []string{"deck-machine.toml [part.drain-plug]"}, whereabouts(result.Definition("job.toml", offset)))
	want := []string{`deck-machine.toml held-by = ["drain-plug"]`, `deck-machine.toml drain = "drain-plug"`, `job.toml remove = "drain-plug"`, `job.toml refit = "drain-plug"`}
	assert.Equal(t, want, whereabouts(result.References("job.toml", offset, false)))
	assert.Len(t, result.References("job.toml", offset, true), 5)
	assert.Equal(t, []string{"edger-machine.toml [part.drain-plug]"}, whereabouts(result.Definition("trim.toml", strings.Index(helpTrim, "drain-plug"))))
}

func TestDefinitionsOfNamesThatAreNoTables(t *testing.T) {
	for _, c := range []struct{ path, text, want string }{
		{"job.toml", strings.Replace(helpJob, `machine = "`, `machine = "|`, 1), `deck-machine.toml name = "deck"`},
		{"job.toml", strings.Replace(helpJob, `for = "`, `for = "|`, 1), `deck-machine.toml variants = ["short", "long"]`},
		{"job.toml", strings.Replace(helpJob, `once = ["`, `once = ["|`, 1), `job.toml id = "oil-out"`},
		{"trim.toml", strings.Replace(helpTrim, `machine = "`, `machine = "|`, 1), `edger-machine.toml [machine]`},
		{"trim.toml", strings.Replace(helpTrim, `follow = "`, `follow = "|`, 1), `job.toml [procedure]`},
		{"shop.toml", strings.Replace(helpShop, `"tools`, `"|tools`, 1), `tools.toml benchleaf = 1`},
		{"second/deck-machine.toml", "benchleaf = 1\n[second-reading.part.drain-pl|ug]\n", `deck-machine.toml [part.drain-plug]`},
	} {
		result, _, offset := help(c.path, c.text)
		assert.Equal(t, []string{c.want}, whereabouts(result.Definition(c.path, offset)), c.text)
	}
}

// changed are the lines of all files that an edit is in, as they are afterwards.
func changed(t *testing.T, path, text, name string) []string {
	t.Helper()
	result, _, offset := help(path, text)
	edits, err := result.Rename(path, offset, name)
	require.NoError(t, err)
	var out []string
	for _, edit := range edits {
		file := edited([]*source.File{edit.Place.File}, edits)[0]
		line := edit.Place.Start().Line
		if strings.HasPrefix(edit.Text, "\n") {
			line++
		}
		out = append(out, file.Path+" "+file.Line(line))
	}
	return out
}

func TestRenames(t *testing.T) {
	assert.Equal(t, []string{"deck-machine.toml [part.oil-plug]", `deck-machine.toml held-by = ["oil-plug"]`, `deck-machine.toml drain = "oil-plug"`, `job.toml remove = "oil-plug"`, `job.toml refit = "oil-plug"`},
		changed(t, "job.toml", strings.Replace(helpJob, `refit = "`, `refit = "|`, 1), "oil-plug"))
	assert.Equal(t, []string{"edger-machine.toml [part.oil-plug]", `trim.toml inspect = "oil-plug"`},
		changed(t, "trim.toml", strings.Replace(helpTrim, `inspect = "`, `inspect = "|`, 1), "oil-plug"))
	assert.Equal(t, []string{"deck-machine.toml [cavity.box]", "deck-machine.toml [cavity.box.variant.long]", `job.toml drain = "box"`},
		changed(t, "deck-machine.toml", strings.Replace(helpDeck, `[cavity.gearbox.`, `[cavity.gear|box.`, 1), "box"))
	assert.Equal(t, []string{`deck-machine.toml variants = ["short", "nine-metre"]`, "deck-machine.toml [cavity.gearbox.variant.nine-metre]", `job.toml for = "nine-metre"`},
		changed(t, "job.toml", strings.Replace(helpJob, `for = "`, `for = "|`, 1), "nine-metre"))
	assert.Equal(t, []string{`job.toml id = "empty"`, `job.toml once = ["empty"]`}, changed(t, "job.toml", strings.Replace(helpJob, `once = ["`, `once = ["|`, 1), "empty"))
	assert.Equal(t, []string{`deck-machine.toml guards = ["power"]`, "deck-machine.toml [energy.power]", `job.toml isolate = "power"`, `job.toml prove = "power"`},
		changed(t, "job.toml", strings.Replace(helpJob, `prove = "`, `prove = "|`, 1), "power"))
	assert.Equal(t, []string{`deck-machine.toml name = "log-deck"`, `job.toml machine = "log-deck"`}, changed(t, "job.toml", strings.Replace(helpJob, `machine = "`, `machine = "|`, 1), "log-deck"))
	assert.Equal(t, []string{`edger-machine.toml name = "edger"`, `trim.toml machine = "edger"`}, changed(t, "trim.toml", strings.Replace(helpTrim, `machine = "`, `machine = "|`, 1), "edger"))
	assert.Equal(t, []string{`job.toml name = "deck-oil"`, `trim.toml follow = "deck-oil"`}, changed(t, "trim.toml", strings.Replace(helpTrim, `follow = "`, `follow = "|`, 1), "deck-oil"))
	assert.Equal(t, []string{`job.toml tools = ["socket-18-deep", "ratchet"]`, "tools.toml [tool.socket-18-deep]"}, changed(t, "job.toml", strings.Replace(helpJob, `["socket`, `["|socket`, 1), "socket-18-deep"))
	assert.Equal(t, []string{`deck-machine.toml drain = 'oil-plug'`}, changed(t, "deck-machine.toml", strings.Replace(helpDeck, `drain = "drain-plug"`, `drain = '|drain-plug'`, 1), "oil-plug")[2:3])
	assert.Equal(t, []string{"deck-machine.toml [part.oil-plug]", "second/deck-machine.toml [second-reading.part.oil-plug]"},
		ends(changed(t, "second/deck-machine.toml", "benchleaf = 1\n[second-reading.part.drain-pl|ug]\n", "oil-plug")))
	// A part that is replaced by the spare of its name takes that along.
	assert.Equal(t, []string{"deck-machine.toml [part.oil-filter]", `job.toml replace = "oil-filter"`, "tools.toml [spare.oil-filter]"},
		changed(t, "job.toml", helpJob+"[[step]]\nreplace = \"|filter\"\n", "oil-filter"))
	assert.Equal(t, []string{"deck-machine.toml [part.oil-filter]", `job.toml replace = "oil-filter"`},
		changed(t, "job.toml", helpJob+"[[step]]\nreplace = \"|filter\"\nspares = [\"filter\"]\n", "oil-filter"))
}

func ends(list []string) []string { return []string{list[0], list[len(list)-1]} }

func TestRenamesThatCannotBe(t *testing.T) {
	const plug = `refit = "|drain-plug"`
	job := strings.Replace(helpJob, `refit = "drain-plug"`, plug, 1)
	for _, c := range []struct{ path, text, name, want string }{
		{"job.toml", job, "belt-guard", `a cover is named "belt-guard" in deck-machine.toml:16; take another name`},
		{"job.toml", job, "mains", `an energy is named "mains"`},
		{"job.toml", job, "drain-washer", `a spare is named "drain-washer" in tools.toml`},
		{"job.toml", job, "Drain Plug", `"Drain Plug" is not a short name; write it in lower case letters and figures, words joined by hyphens`},
		{"job.toml", job + "[[step]]\nclean = \"the floor\"\n", "the-floor", `"the floor" stands in words in job.toml`},
		{"job.toml", job + "[[step\n", "x", "job.toml:28 cannot be read, so its names are not known; mend it first"},
		{"job.toml", strings.Replace(helpJob, `refit = "drain-plug"`, `refit = "|dran-plug"`, 1), "x", `nothing is described by the name "dran-plug"; describe it first`},
		{"job.toml", strings.Replace(helpJob, `title = "C`, `title = "|C`, 1), "x", "no name stands here"},
		{"job.toml", helpJob + "cautions = [\"|shock\"]\n", "x", `"shock" is a built-in safety message`},
		{"job.toml", helpJob + "cautions = [\"|start\"]\n", "x", `"start" is the name of a hazard`},
		{"job.toml", helpJob + "cautions = [\"|hot-oil\"]\n", "shock", `"shock" is the name of a built-in safety message`},
		{"job.toml", strings.Replace(helpJob, `for = "`, `for = "|`, 1), "short", `a variant is named "short" in deck-machine.toml`},
		{"job.toml", strings.Replace(helpJob, `"deck"`, `"|Log deck"`, 1), "x", `the machine is called by its title here; write its name "deck" to rename it`},
		{"job.toml", strings.Replace(helpJob, `"deck"`, `"|deck"`, 1), "edger-machine", `a machine is named "edger-machine"`},
		{"trim.toml", strings.Replace(helpTrim, `"job"`, `"|job"`, 1), "trim", `a procedure is named "trim"`},
	} {
		result, _, offset := help(c.path, c.text)
		_, err := result.Rename(c.path, offset, c.name)
		require.Error(t, err, c.want)
		assert.Contains(t, err.Error(), c.want)
	}
	result, _, offset := help("job.toml", job+"[[step\n")
	_, _, err := result.RenameRange("job.toml", offset)
	assert.Error(t, err)
	result, _, offset = help("job.toml", job)
	place, name, err := result.RenameRange("job.toml", offset)
	require.NoError(t, err)
	assert.Equal(t, "drain-plug", name)
	assert.Equal(t, "drain-plug", place.Text())
}

// The parts of two machines that take one spare by its name cannot be told apart from it.
func TestASpareOfTwoMachinesIsNotRenamedWithOne(t *testing.T) {
	texts := map[string]string{"shop.toml": helpShop, "tools.toml": helpTools, "deck-machine.toml": helpDeck, "edger-machine.toml": helpEdger + "[part.filter]\nhead = \"none\"\n",
		"job.toml": helpJob + "[[step]]\nreplace = \"filter\"\n", "trim.toml": helpTrim + "[[step]]\nreplace = \"filter\"\n"}
	var files []*source.File
	for _, path := range slices.Sorted(maps.Keys(texts)) {
		files = append(files, source.New(path, []byte(texts[path])))
	}
	result := compiler.Compile(compiler.Input{Files: files})
	_, err := result.Rename("job.toml", strings.LastIndex(texts["job.toml"], "filter"), "oil-filter")
	require.Error(t, err)
	assert.Contains(t, err.Error(), `write spares = ["filter"] into the step at job.toml:29 first`)
}

// A file that cannot be read and does not hold the name stands in nobody's way.
func TestARenameIsNotStoppedByAFaultElsewhere(t *testing.T) {
	result, _, _ := help("trim.toml", strings.ReplaceAll(helpTrim, "drain-plug", "plug")+"[[step\n")
	edits, err := result.Rename("job.toml", strings.Index(helpJob, "belt-guard"), "guard")
	require.NoError(t, err)
	assert.Len(t, edits, 2)
}

func outlined(list []compiler.Symbol, indent string) string {
	out := ""
	for _, one := range list {
		out += indent + one.Name + "\n" + outlined(one.Children, indent+"  ")
	}
	return out
}

func TestSymbols(t *testing.T) {
	result, file, _ := help("job.toml", helpJob+"tor|\n")
	symbols := result.Symbols("job.toml")
	assert.Equal(t, `Change the oil
make ready
  1 · isolate mains
  2 · prove mains
work
  3 · remove belt-guard
  4 · remove drain-plug
  – · drain gearbox
  5 · refit drain-plug
`, outlined(symbols, ""))
	for _, one := range symbols {
		assert.LessOrEqual(t, one.Whole.Span.Start, one.Place.Span.Start)
		assert.GreaterOrEqual(t, one.Whole.Span.End, one.Place.Span.End)
		assert.Equal(t, file, one.Place.File)
	}
	assert.Equal(t, "Log deck\nparts\n  drain-plug\n  filter\ncovers\n  belt-guard\ncavities\n  gearbox\nenergies\n  mains\nareas\n  tail\n  head\nposes\n  side\nlimits\n  slack\n", outlined(result.Symbols("deck-machine.toml"), ""))
	assert.Equal(t, "Fernhollow Sawmill\n", outlined(result.Symbols("shop.toml"), ""))
}

func TestHints(t *testing.T) {
	result, _, _ := help("job.toml", helpJob)
	var out []string
	for _, hint := range result.Hints("job.toml") {
		out = append(out, strings.TrimSpace(helpJob[strings.LastIndex(helpJob[:hint.At], "\n")+1:hint.At])+" → "+hint.Text)
	}
	assert.Equal(t, []string{
		`isolate = "mains" → isolated: mains`,
		`prove = "mains" → proved dead: mains`,
		`remove = "belt-guard" → off: belt guard, drain plug`, // which holds it
		`remove = "drain-plug" → empty: gearbox`,
		`refit = "drain-plug" → loose: drain plug`,
	}, out)
	out = nil
	for _, hint := range result.Hints("deck-machine.toml") {
		out = append(out, hint.Text)
	}
	assert.Equal(t, "Now: mains proved dead; belt guard off; drain plug off.", result.Hints("job.toml")[2].Tip)
	assert.Equal(t, []string{"= 31 to 35 lbf·ft", "= 1.2 US qt", "= 1.7 US qt", "= 0.788 to 1.181 in"}, out)
}

// Whatever is typed, and wherever the cursor is, the answers are of the text.
func FuzzAssist(f *testing.F) {
	for i, text := range []string{helpJob, helpDeck, helpTools, helpTrim, helpShop} {
		for offset := i; offset < len(text); offset += 97 {
			f.Add(text, uint16(offset), uint16(offset/2), "x", []byte{1, 30})
			f.Add(text, uint16(offset), uint16(3), "\"[{", []byte{})
		}
	}
	f.Fuzz(func(t *testing.T, text string, at, drop uint16, typed string, moves []byte) {
		text = moved(text, moves)
		start := min(int(at), len(text))
		text = text[:start] + typed + text[min(len(text), start+int(drop%64)):]
		for _, path := range []string{"job.toml", "deck-machine.toml"} {
			result, file, _ := help(path, strings.ReplaceAll(text, "|", "")+"|")
			random := rand.New(rand.NewPCG(uint64(at), uint64(drop)))
			for _, offset := range []int{start, start + len(typed), random.IntN(len(file.Text) + 1), len(file.Text)} {
				answers(t, result, file, min(offset, len(file.Text)))
			}
		}
	})
}

// answers asks everything of one offset.
func answers(t *testing.T, result *compiler.Result, file *source.File, offset int) {
	for _, one := range result.Complete(file.Path, offset) {
		span := one.Replace.Span
		if one.Replace.File != file || span.Start < 0 || span.Start > span.End || span.End > len(file.Text) {
			t.Fatalf("%q takes the place of %v", one.Label, span)
		}
	}
	if hover, ok := result.Hover(file.Path, offset); ok && (hover.Place.Span.Start > offset || hover.Place.Span.End < offset || hover.Text == "") {
		t.Fatalf("a hover at %d is of %v", offset, hover.Place.Span)
	}
	result.Definition(file.Path, offset)
	places := result.References(file.Path, offset, true)
	if place, _, err := result.RenameRange(file.Path, offset); err == nil {
		require.Contains(t, places, place)
		_, _ = result.Rename(file.Path, offset, "another-name")
	}
	for _, one := range result.Symbols(file.Path) {
		if one.Whole.Span.Start > one.Place.Span.Start || one.Whole.Span.End < one.Place.Span.End {
			t.Fatalf("%q lies at %v and its name at %v", one.Name, one.Whole.Span, one.Place.Span)
		}
	}
	for _, hint := range result.Hints(file.Path) {
		if hint.At < 0 || hint.At > len(file.Text) {
			t.Fatalf("a hint at %d", hint.At)
		}
	}
}
