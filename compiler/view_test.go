package compiler_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
)

// The view of each card of the demonstration shop shows every step once or more, has its
// pictures, and names for each step the table it is written in.
func TestAViewShowsEveryStepWhereItIsWritten(t *testing.T) {
	result := compiler.Compile(compiler.Input{Files: compiler.ReadFolder(t, "../procedures"), Whole: true})
	seen := 0
	for _, job := range result.Jobs {
		view, err := result.View(job.Path, job.Variant, compiler.Look{})
		require.NoError(t, err)
		require.NotNil(t, view)
		assert.Equal(t, job.Name, view.Job.Name)
		assert.Equal(t, job.Variant, view.Job.Variant)
		shown := map[int]bool{}
		for _, side := range view.Sides {
			assert.Contains(t, string(side.SVG[:80]), "<svg")
			for _, spot := range side.Spots {
				shown[spot.Step] = true
				assert.True(t, spot.X >= 0 && spot.Y >= 0 && spot.X+spot.Width <= side.Width+0.01 && spot.Y+spot.Height <= side.Height+0.01, "%s, step %d", job.Name, spot.Step)
				assert.Contains(t, string(side.SVG), fmt.Sprintf(`data-id="%d"`, spot.Step))
			}
		}
		for _, step := range view.Steps {
			assert.True(t, shown[step.Number], "%s, step %d", job.Name, step.Number)
			assert.NotEmpty(t, step.Words)
			assert.Regexp(t, `^\[\[(prepare|step|close)\]\]`, step.Place.Text())
			assert.Equal(t, job.Path, step.Place.File.Path)
			seen++
		}
		require.NotEmpty(t, view.Phases)
		assert.Equal(t, len(view.Steps), view.Phases[len(view.Phases)-1].To)
		for _, strip := range view.Strips {
			for _, bar := range strip.Bars {
				assert.True(t, 1 <= bar.From && bar.From <= bar.To && bar.To <= len(view.Steps) && bar.Word != "", "%s, %s", job.Name, strip.Name)
			}
		}
	}
	assert.Greater(t, seen, 200)
	again, err := result.View(result.Jobs[0].Path, "no such version", compiler.Look{})
	require.NoError(t, err)
	assert.Equal(t, result.Jobs[0].Path, again.Job.Path, "the first version stands for one that is not there")
}

// A procedure that an error holds back is shown all the same; one whose text cannot be read is not.
func TestAViewIsShownWhereACardIsHeldBack(t *testing.T) {
	files := compiler.ReadFolder(t, "../procedures")
	path := "log-deck-gearbox-oil.toml"
	put := func(old, text string) *compiler.Result {
		t.Helper()
		var out []*source.File
		for _, file := range files {
			if file.Path == path {
				require.Contains(t, string(file.Text), old)
				file = source.New(path, []byte(strings.Replace(string(file.Text), old, text, 1)))
			}
			out = append(out, file)
		}
		return compiler.Compile(compiler.Input{Files: out, Targets: []string{path}})
	}
	view, err := put(`hands-on = "40 min"`, `hands-on = "40"`).View(path, "", compiler.Look{})
	require.NoError(t, err)
	assert.True(t, view.Job.Blocked)
	assert.NotEmpty(t, view.Sides)
	broken := put("[procedure]", "[procedure")
	view, err = broken.View(path, "", compiler.Look{})
	require.NoError(t, err)
	assert.Nil(t, view)
	at := slices.IndexFunc(broken.Listing(), func(one compiler.Listed) bool { return one.Path == path })
	require.GreaterOrEqual(t, at, 0)
}

// What holds a card back is told with its places, also where it stands in another file; and where
// the steps were not checked, that is told.
func TestItIsToldWhatHoldsACardBack(t *testing.T) {
	const path, machine = "log-deck-gearbox-oil.toml", "machines/log-deck.toml"
	files := compiler.ReadFolder(t, "../procedures")
	put := func(at, old, text string) *compiler.Result {
		t.Helper()
		var out []*source.File
		for _, file := range files {
			if file.Path == at {
				require.Contains(t, string(file.Text), old)
				file = source.New(at, []byte(strings.Replace(string(file.Text), old, text, 1)))
			}
			out = append(out, file)
		}
		return compiler.Compile(compiler.Input{Files: out, Targets: []string{path}, Whole: true})
	}
	for _, one := range []struct {
		at, old, text, rule string
		unchecked           bool
	}{
		{path, "[procedure]", "[procedure]", "", false},
		{path, `hands-on = "40 min"`, `hands-on = "40"`, "units/missing", false},
		{path, `title = `, `titel = `, "language/unknown-key", true},
		{path, `revision = "`, `revision = `, "syntax/unquoted-text", true},
		{machine, `torque = "8 to 10 N·m"`, `torque = "8 N·m (300 lbf·ft)"`, "units/disagree", false},
		{machine, "[part.drain-plug]", "[part.drain-plug", "syntax/bad-header", true},
	} {
		holding, unchecked := put(one.at, one.old, one.text).Holding(path, "nine-metre")
		assert.Equal(t, one.unchecked, unchecked, one.text)
		if one.rule == "" {
			assert.Empty(t, holding)
			continue
		}
		var told []string
		for _, found := range holding {
			told = append(told, found.Rule+" "+found.Place.File.Path)
		}
		assert.Contains(t, told, one.rule+" "+one.at, one.text)
	}
	broken := put(machine, `torque = "8 to 10 N·m"`, "torqe = 1\nmass = \"8\"")
	holding, unchecked := broken.Holding(path, "")
	assert.True(t, unchecked)
	var rules []string
	for _, found := range holding {
		rules = append(rules, found.Rule)
	}
	assert.Subset(t, rules, []string{"language/unknown-key", "units/missing"}, "amounts are told with what stands in their way")
	holding, unchecked = put(path, `title = `, `titel = `).Holding("shop/tools.toml", "")
	assert.Empty(t, holding)
	assert.False(t, unchecked, "there are no steps in it")
}

func TestNamesAreWhatAFileMayWrite(t *testing.T) {
	result := compiler.Compile(compiler.Input{Files: compiler.ReadFolder(t, "../procedures"), Whole: true})
	names := result.Names("log-deck-gearbox-oil.toml")
	for _, want := range []compiler.Nameable{
		{"machine", "log-deck", "Log-deck conveyor", ""}, {"variant", "nine-metre", "nine metre", ""}, {"energy", "mains", "mains, 400 V", ""},
		{"procedure", "log-deck-gearbox-oil", "Change the worm gearbox oil", ""}, {"tool", "drain-pan-8", "Drain pan, 8 L", "container"},
	} {
		at := slices.IndexFunc(names, func(one compiler.Nameable) bool { return one.Kind == want.Kind && one.Name == want.Name })
		if assert.GreaterOrEqual(t, at, 0, want.Name) && want.Kind != "energy" {
			assert.Equal(t, want.Words, names[at].Words)
			assert.Equal(t, want.Sort, names[at].Sort)
		}
	}
	kinds := map[string]bool{}
	for _, one := range names {
		kinds[one.Kind] = true
		assert.NotEmpty(t, one.Words, "%s %s", one.Kind, one.Name)
	}
	for _, kind := range []string{"part", "cover", "cavity", "limit", "tool", "fluid", "supply", "spare", "caution", "stock"} {
		assert.True(t, kinds[kind], kind)
	}
	kinds = map[string]bool{}
	for _, one := range result.Names("sheds/not-yet.toml") {
		kinds[one.Kind] = true
	}
	for _, kind := range []string{"machine", "tool", "fluid", "supply", "spare", "caution", "procedure"} {
		assert.True(t, kinds[kind], "a file that is not there yet knows the shop: %s", kind)
	}
	listed := map[string]string{}
	for _, one := range result.Listing() {
		listed[one.Path] = one.Kind
	}
	assert.Equal(t, "machine", listed["machines/log-deck.toml"])
	assert.Equal(t, "second", listed["second/log-deck-gearbox-oil.toml"])
	assert.Equal(t, "shop", listed["shop.toml"])
	assert.Equal(t, "library", listed["shop/tools.toml"])
	assert.Equal(t, "procedure", listed["log-deck-gearbox-oil.toml"])
}

// While a procedure is being written much is missing or not yet described; it is drawn all
// the same: each case of broken input, and the demonstration shop with its lines left out
// one at a time or its names changed.
func TestAViewIsDrawnOfWhatIsNotWholeYet(t *testing.T) {
	if testing.Short() {
		t.Skip("one thing after the other: nothing that race could find")
	}
	drawn, readable := 0, 0
	look := func(files []*source.File, path, says string) {
		t.Helper()
		result := compiler.Compile(compiler.Input{Files: files, Targets: []string{path}})
		for _, variant := range append(result.Variants(path), "") {
			view, err := result.View(path, variant, compiler.Look{})
			require.NoError(t, err, says)
			readable++
			if view != nil {
				drawn++
				assert.NotEmpty(t, view.Sides, says)
			}
		}
	}
	for _, folder := range []string{"../testdata/broken", "../testdata/clean", "../templates/scaffold"} {
		for _, file := range compiler.ReadFolder(t, folder) {
			look([]*source.File{file}, file.Path, file.Path)
		}
	}
	whole := drawn
	assert.Greater(t, whole, 300)
	shop := compiler.ReadFolder(t, "../procedures")
	for i, path := range []string{"log-deck-gearbox-oil.toml", "log-trailer-hub-grease.toml", "machines/log-deck.toml"} {
		at := slices.IndexFunc(shop, func(file *source.File) bool { return file.Path == path })
		lines := strings.SplitAfter(string(shop[at].Text), "\n")
		for n := i; n < len(lines); n += 29 {
			files := slices.Clone(shop)
			target := "log-deck-gearbox-oil.toml"
			if i == 1 {
				target = path
			}
			files[at] = source.New(path, []byte(strings.Join(slices.Delete(slices.Clone(lines), n, n+1), "")))
			look(files, target, fmt.Sprintf("%s without line %d", path, n+1))
			files[at] = source.New(path, []byte(strings.Join(lines[:n], "")+strings.Replace(lines[n], "\"", "\"x-", 1)+strings.Join(lines[n+1:], "")))
			look(files, target, fmt.Sprintf("%s with another word in line %d", path, n+1))
			files[at] = source.New(path, []byte(strings.Join(lines[:n], "")))
			look(files, target, fmt.Sprintf("%s up to line %d", path, n))
		}
	}
	assert.Greater(t, drawn-whole, 40)
	assert.Greater(t, 10*drawn, 8*readable, "nearly all of it is drawn")
}
