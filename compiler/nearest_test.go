package compiler_test

import (
	"regexp"
	"strings"
	"testing"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// likely are the words of a finding that name what was likely meant.
var likely = regexp.MustCompile(`the nearest is "|did you mean|; write "|[Ww]rite "[^"]*" if that is|[Tt]he nearest file there is`)

// A finding that says what was likely meant offers to write it.
func TestWhatIsLikelyMeantCanBeWrittenByAKey(t *testing.T) {
	named := 0
	for name, files := range cases(t) {
		for _, found := range compiler.Compile(compiler.Input{Files: files, Pictures: compiler.Imagined(files)}).Findings {
			if likely.MatchString(found.Summary + "\n" + found.Help) {
				named++
				assert.NotEmpty(t, found.Fixes, "%s: %s; %s", name, found.Summary, found.Help)
			}
		}
	}
	assert.Greater(t, named, 10)
}

// Each slip of the pen is mended by the fix that its finding offers.
func TestASlipOfThePenIsMendedByItsFix(t *testing.T) {
	const work = "tools/work.toml"
	texts := map[string]string{
		"shop.toml":  "benchleaf = 1\nuse = [\"parts.toml\"]\n\n[shop]\ntitle = \"Shop\"\n",
		"parts.toml": "benchleaf = 1\n\n[spare.seal]\n\n[fluid.oil]\nkind = \"gear-oil\"\ngrade = \"SAE 80W-90\"\n",
		"stock.toml": "benchleaf = 1\n",
		work: "benchleaf = 1\nuse = [\"../stock.toml\"]\n\n[procedure]\ntitle = \"Look at it\"\nmachine = \"Press\"\nrevision = \"A\"\ndate = 2026-02-14\nauthor = \"R. Aldous\"\nwho = \"Mechanic\"\nhands-on = \"5 min\"\nevery = \"50 h\"\n" +
			"tools = [\"wrench\"]\nsupplies = [\"oil\"]\nspares = []\nwear = [\"gloves\"]\ncautions = []\nno-isolation = \"Nothing is touched.\"\nno-close = \"Nothing is opened.\"\nmanual = \"1\"\n\n" +
			"[tool.wrench]\nkind = \"wrench\"\nsizes = [\"16 mm\"]\n\n[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\n\n[part.plug]\nthread = \"M10x1.25\"\nclass = \"8.8\"\nacross = \"16 mm\"\n\n" +
			"[[allow]]\nrule = \"tool/idle\"\nreason = \"It is kept.\"\n\n[[step]]\nloosen = \"plug\"\npicture = { file = \"plug.png\", title = \"Plug\" }\n\n[[step]]\nfill = \"gearbox\"\n",
	}
	compiled := func(file, old, slip string) *compiler.Result {
		var files []*source.File
		for path, text := range texts {
			if path == file {
				require.Contains(t, text, old)
				text = strings.Replace(text, old, slip, 1)
			}
			files = append(files, source.New(path, []byte(text)))
		}
		return compiler.Compile(compiler.Input{Files: files, Whole: true, Pictures: []source.Picture{{Path: "tools/plugg.png", Near: "plug.png", Fault: "is not there; did you mean \"plug.png\"?"}}})
	}
	for _, slip := range []struct{ file, rule, right, wrong string }{
		{work, "reference/unknown-name", `loosen = "plug"`, `loosen = "plgu"`},
		{work, "reference/unknown-name", `tools = ["wrench"]`, `tools = ["wrenhc"]`},
		{work, "reference/unknown-name", `supplies = ["oil"]`, `supplies = ["oli"]`},
		{work, "reference/missing-file", `"../stock.toml"`, `"../stok.toml"`},
		{work, "language/unknown-key", `loosen =`, `losen =`},
		{work, "language/unknown-word", `"gloves"`, `"glove"`},
		{work, "reference/unknown-rule", `"tool/idle"`, `"tool/idel"`},
		{work, "picture/unreadable", `"plug.png"`, `"plugg.png"`},
		{work, "fastener/unknown-thread", `"M10x1.25"`, `"M10x1,25"`},
		{work, "fastener/unknown-class", `"8.8"`, `"8.9"`},
		{"parts.toml", "fluid/unknown-grade", `"SAE 80W-90"`, `"SAE 80W-91"`},
	} {
		var found *finding.Finding
		for _, one := range compiled(slip.file, slip.right, slip.wrong).Findings {
			if one.Place.File.Path == slip.file && len(one.Fixes) > 0 && !one.Fixes[0].Certain && strings.Contains(slip.wrong, strings.Trim(one.Place.Text(), `"`)) {
				found = &one
			}
		}
		if !assert.NotNil(t, found, "%s: %v", slip.wrong, describe(compiled(slip.file, slip.right, slip.wrong).Findings)) {
			continue
		}
		assert.Equal(t, slip.rule, found.Rule)
		fix := found.Fixes[0]
		require.Len(t, fix.Edits, 1)
		assert.Contains(t, found.Place.File.Path+" "+slip.right, strings.Trim(strings.ReplaceAll(fix.Edits[0].Text, "×", "x"), `"`), "%s: %s", slip.wrong, fix.Title)
	}
}

// The fix for a name that was changed where it is described writes the new one in every file.
func TestARenamedPartIsMendedEverywhereByOneFix(t *testing.T) {
	files := cases(t)["part-renamed-in-one-place"]
	result := compiler.Compile(compiler.Input{Files: files, Whole: true})
	var renamed []finding.Finding
	for _, found := range result.Findings {
		if found.Rule == "reference/unknown-name" {
			renamed = append(renamed, found)
		}
	}
	require.Len(t, renamed, 2, "one a file: %s", describe(renamed))
	for _, found := range renamed {
		require.Len(t, found.Fixes, 1)
		require.Len(t, found.Fixes[0].Edits, 4)
		assert.False(t, found.Fixes[0].Certain)
		assert.Equal(t, "machines/winch.toml", found.Related[0].Place.File.Path)
		after := compiler.Compile(compiler.Input{Files: edited(files, found.Fixes[0].Edits), Whole: true})
		assert.NotContains(t, describe(after.Findings), "unknown-name")
	}
}

// Where it may be another, or a slip of the pen, each place is told for itself.
func TestWhatMayBeAnotherIsNotCalledRenamed(t *testing.T) {
	told := func(parts string) int {
		t.Helper()
		n := 0
		for _, found := range compile("benchleaf = 1\n\n[procedure]\ntitle = \"Look at it\"\nmachine = \"Press\"\n" + parts + "\n[[step]]\nloosen = \"drum-screws\"\n\n[[step]]\ntighten = \"drum-screws\"\n") {
			if found.Rule == "reference/unknown-name" {
				n++
			}
		}
		return n
	}
	assert.Equal(t, 1, told("[part.drum-bolts]\n"))
	assert.Equal(t, 1, told("[part.hook]\n"), "nothing else can be meant")
	assert.Equal(t, 1, told("[part.drum-bolts]\n[part.hook]\n"), "it has a word of the name")
	assert.Equal(t, 2, told("[part.drum-bolts]\n[part.drum-nuts]\n"))
	assert.Equal(t, 2, told("[part.hook]\n[part.pawl]\n"))
	assert.Equal(t, 2, told("[tool.drum-bolts]\nkind = \"wrench\"\n"), "of another kind")
	assert.Equal(t, 2, told("[part.drum-screw]\nheld-by = [\"drum-screw\"]\n[part.hook]\n"), "a slip of the pen")
	assert.Equal(t, 4, told("[part.hook]\n\n[[step]]\ninspect = \"pawls\"\n\n[[step]]\ninspect = \"pawls\"\n"), "two names, and one thing for both")
}
