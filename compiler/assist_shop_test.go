package compiler_test

import (
	"cmp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// edited are the files with some edits made.
func edited(files []*source.File, edits []finding.Edit) []*source.File {
	out := make([]*source.File, len(files))
	for i, file := range files {
		text := string(file.Text)
		for _, edit := range slices.Backward(edits) { // they come in order of place
			if edit.Place.File.Path == file.Path {
				text = text[:edit.Place.Span.Start] + edit.Text + text[edit.Place.Span.End:]
			}
		}
		out[i] = source.New(file.Path, []byte(text))
	}
	return out
}

// told are findings without places, which move when a name gets longer.
func told(findings []finding.Finding) []string {
	var out []string
	for _, found := range findings {
		out = append(out, found.Rule+" "+found.Place.File.Path)
	}
	return out
}

// nameable lists one place for each thing that has a name in some files: where it is described.
// Wherever a name leads to, from there it is among the references.
func nameable(t *testing.T, result *compiler.Result, files []*source.File) []source.Place {
	seen := map[source.Place]bool{}
	var out []source.Place
	for _, file := range files {
		for offset := range file.Text {
			if offset > 0 && word(file.Text[offset-1]) || !word(file.Text[offset]) {
				continue
			}
			found := result.Definition(file.Path, offset)
			if len(found) > 0 && found[0].Span.Len() > 0 {
				holds := func(at source.Place) bool {
					return at.File == file && at.Span.Start <= offset && offset <= at.Span.End
				}
				all := result.References(file.Path, offset, true)
				assert.True(t, slices.ContainsFunc(all, holds), "%s:%d", file.Path, offset)
				assert.Equal(t, all, result.References(found[0].File.Path, found[0].Span.Start, true))
				assert.Contains(t, all, found[0])
			}
			for _, at := range found {
				if !seen[at] && at.Span.Len() > 0 {
					seen[at] = true
					out = append(out, at)
				}
			}
		}
	}
	return out
}

func word(b byte) bool { return b >= 'a' && b <= 'z' || b >= '0' && b <= '9' || b == '-' }

// Whatever is renamed in the demonstration shop, the same is found as before: nothing.
func TestARenamedThingIsRenamedEverywhere(t *testing.T) {
	if testing.Short() {
		t.Skip("one thing after the other: nothing that race could find")
	}
	files := compiler.ReadFolder(t, demonstration)
	pictures := compiler.ReadPictures(t, demonstration, files)
	result := compiler.Compile(compiler.Input{Files: files, Pictures: pictures, Whole: true})
	before := told(result.Findings)
	places := nameable(t, result, files)
	require.Greater(t, len(places), 250)
	refused := map[string]bool{}
	var kept []source.Place
	for _, at := range places {
		_, old, err := result.RenameRange(at.File.Path, at.Span.Start)
		if err != nil {
			refused[old+err.Error()] = true
			assert.Regexp(t, "is the name of a hazard|knows the machine by its short name .*change its title", err.Error())
			continue
		}
		kept = append(kept, at)
	}
	assert.Less(t, len(refused), len(places)/10)
	// Several things are renamed before each lint; edits of different things never meet.
	const lots = 12
	for lot := range lots {
		var edits []finding.Edit
		var names []string
		for i, at := range kept {
			if i%lots != lot {
				continue
			}
			_, old, err := result.RenameRange(at.File.Path, at.Span.Start)
			require.NoError(t, err)
			more, err := result.Rename(at.File.Path, at.Span.Start, "other-"+old)
			require.NoError(t, err, old)
			require.NotEmpty(t, more)
			names, edits = append(names, old), append(edits, more...)
		}
		slices.SortFunc(edits, func(a, b finding.Edit) int {
			return cmp.Or(cmp.Compare(a.Place.File.Path, b.Place.File.Path), cmp.Compare(a.Place.Span.Start, b.Place.Span.Start))
		})
		edits = slices.Compact(edits) // a part and the spare that goes in for it are renamed together
		after := compiler.Compile(compiler.Input{Files: edited(files, edits), Pictures: pictures, Whole: true})
		assert.Equal(t, before, told(after.Findings), "%s\n%s", strings.Join(names, " "), describe(after.Findings))
		assert.Len(t, after.Jobs, len(result.Jobs))
	}
}
