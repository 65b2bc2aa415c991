package compiler_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// factKinds are what can be taken from spoken notes.
var factKinds = []string{"action", "amount", "count", "fluid", "hazard", "interval", "part", "question", "range", "size", "tool", "torque", "wait"}

// The spoken notes were written before anything reads them; what they hold is written beside
// each, and rests on its very words.
func TestFactsOfSpokenNotesRestOnTheirWords(t *testing.T) {
	paths, err := filepath.Glob("../testdata/draft/*.txt")
	require.NoError(t, err)
	require.Len(t, paths, 5)
	later, err := filepath.Glob("../testdata/draft/*/*.txt")
	require.NoError(t, err)
	require.Len(t, later, 13)
	paths = append(paths, later...)
	for _, path := range paths {
		notes, err := os.ReadFile(path)
		require.NoError(t, err)
		words := len(strings.Fields(string(notes)))
		assert.True(t, words >= 300 && words <= 900, "%s has %d words", path, words)
		type fact struct{ Kind, Text, Value, About, Why string }
		var facts struct{ Fact, Not []fact }
		_, err = toml.DecodeFile(strings.TrimSuffix(path, ".txt")+".facts.toml", &facts)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, len(facts.Fact), 50, path)
		assert.NotEmpty(t, facts.Not, path)
		for _, one := range slices.Concat(facts.Fact, facts.Not) {
			assert.Contains(t, factKinds, one.Kind, path)
			assert.NotEmpty(t, one.Text, path)
			assert.Contains(t, string(notes), one.Text, path)
		}
	}
}
