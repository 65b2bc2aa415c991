package compiler_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
)

// Whatever notes hold, a draft of them is the same twice over, is read as a procedure, is tidy,
// and lint tells of it nothing but what a person left open: no fault of the syntax, no unknown
// key, verb, word or name, nothing of a wrong kind, and no rule that fails.
func FuzzDraft(f *testing.F) {
	paths, err := filepath.Glob("../testdata/draft/*.txt")
	require.NoError(f, err)
	for _, path := range paths {
		notes, err := os.ReadFile(path)
		require.NoError(f, err)
		f.Add(notes)
		for paragraph := range strings.SplitSeq(string(notes), "\n\n") {
			f.Add([]byte(paragraph))
		}
	}
	for _, hostile := range []string{"drain \"the\" plug\\ '''", "\xff\xfe", "fill the \u2028 \u0085 gearbox", "one and one and one hundred thousand thousand", "m m m m ten by by ten", "3/0 in 0/0 999999999999999999 Nm",
		"take take take it off off off", "the the the " + strings.Repeat("drain plug ", 500), "12:34 12:34 12:34", "tighten the [[step]] = \"x\" # y", "same same again same 85 same thread", "every every other other year"} {
		f.Add([]byte(hostile))
	}
	f.Fuzz(func(t *testing.T, notes []byte) {
		made, err := compiler.Draft(notes)
		again, _ := compiler.Draft(notes)
		if err != nil {
			assert.NotContains(t, err.Error(), "\n")
			return
		}
		assert.Equal(t, string(made.Text), string(again.Text))
		assert.Equal(t, string(made.JSON()), string(again.JSON()))
		file := source.New("draft.toml", made.Text)
		tidied, faults := compiler.Tidy(file)
		assert.Empty(t, faults)
		assert.Equal(t, string(tidied), string(made.Text))
		for _, found := range compiler.Compile(compiler.Input{Files: []*source.File{file}}).Findings {
			family, _, _ := strings.Cut(found.Rule, "/")
			switch {
			case found.Rule == "language/empty-text" || found.Rule == "language/not-checked":
			case family == "syntax" || family == "language" || family == "internal" || family == "reference" || family == "units":
				t.Errorf("%s: %s\n%s", found.Rule, found.Summary, made.Text)
			}
		}
		for _, one := range drafted(t, notes) {
			assert.True(t, one.start >= 0 && one.start < one.end && one.end <= len(notes), "%v", one)
			assert.NotEmpty(t, one.Value)
		}
	})
}
