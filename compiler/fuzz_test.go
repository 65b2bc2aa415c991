package compiler_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
)

var again = regexp.MustCompile(`(?m)^(\[\[?)([a-z])`)

// Whatever a file holds, a compile of it, beside itself as its second reading, ends
// without a panic and without a rule that fails, points into the files it read, and
// draws what it does not hold back. The second input moves lines about, so that much
// of what is tried is TOML.
func FuzzCompile(f *testing.F) {
	for _, rule := range compiler.Rules() {
		f.Add(rule.Setting+rule.Bad, []byte{2, 9, 0, 14})
		f.Add(rule.Setting+rule.Good, []byte{3, 21})
	}
	for _, folder := range []string{"../testdata/clean", "../testdata/broken", "../procedures", "../procedures/machines", "../procedures/second"} {
		paths, err := filepath.Glob(filepath.Join(folder, "*.toml"))
		require.NoError(f, err)
		for i, path := range paths {
			if filepath.Base(path) == compiler.Bookfile || testing.Short() && i%10 > 0 {
				continue
			}
			text, err := os.ReadFile(path)
			require.NoError(f, err)
			f.Add(string(text), []byte{1, 30, 3, 44})
		}
	}
	f.Fuzz(func(t *testing.T, text string, moves []byte) {
		text = moved(text, moves)
		files := []*source.File{source.New("job.toml", []byte(text)), source.New("second/job.toml", []byte(again.ReplaceAllString(text, "${1}second-reading.$2")))}
		if len(moves)%2 == 1 {
			files = files[:1]
		}
		result := compiler.Compile(compiler.Input{Files: files})
		for _, found := range result.Findings {
			assert.NotEqual(t, "internal/rule-failed", found.Rule, found.Summary)
			assert.True(t, slices.Contains(files, found.Place.File), found.Summary)
			assert.LessOrEqual(t, found.Place.Span.End, len(found.Place.File.Text), found.Summary)
		}
		result.JSON()
		result.SARIF("")
		result.Model()
		result.Fix()
		if _, _, err := result.Cards(compiler.Look{}, nil); err != nil {
			t.Fatal(err)
		}
		if _, _, err := result.Manual(compiler.Look{}); err != nil {
			t.Fatal(err)
		}
		compiler.SecondReading(files[0])
	})
}

// moved leaves lines out, doubles them, and gives them the place or the value of others.
func moved(text string, moves []byte) string {
	lines := strings.Split(text, "\n")
	for ; len(moves) > 1 && len(lines) > 1; moves = moves[2:] {
		at := int(moves[1]) % (len(lines) - 1)
		switch moves[0] % 4 {
		case 0:
			lines = slices.Delete(lines, at, at+1)
		case 1:
			lines = slices.Insert(lines, at, lines[at])
		case 2:
			lines[at], lines[at+1] = lines[at+1], lines[at]
		case 3:
			key, _, first := strings.Cut(lines[at], " = ")
			_, value, second := strings.Cut(lines[(at*7+3)%len(lines)], " = ")
			if first && second {
				lines[at] = key + " = " + value
			}
		}
	}
	return strings.Join(lines, "\n")
}
