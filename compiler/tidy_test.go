package compiler_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
)

// Laid out, a file raises the same rules as before, as often: nothing that is read of it is
// another. Every broken and every clean case that is one file.
func TestALaidOutFileRaisesTheSame(t *testing.T) {
	if testing.Short() {
		t.Skip("one thing after the other: nothing that race could find")
	}
	said := func(name string, text []byte) []string {
		var out []string
		for _, found := range compiler.Compile(compiler.Input{Files: []*source.File{source.New(name, text)}}).Findings {
			out = append(out, found.Rule)
		}
		slices.Sort(out)
		return out
	}
	changed := 0
	for _, folder := range []string{"../testdata/broken", "../testdata/clean"} {
		files, err := fs.Glob(os.DirFS(folder), "*.toml")
		require.NoError(t, err)
		for _, name := range files {
			text, err := os.ReadFile(filepath.Join(folder, name))
			require.NoError(t, err)
			laid, faults := compiler.Tidy(source.New(name, text))
			if len(faults) > 0 {
				assert.Equal(t, text, laid, name)
				continue
			}
			if string(laid) != string(text) {
				changed++
			}
			assert.Equal(t, said(name, text), said(name, laid), name)
		}
	}
	assert.Greater(t, changed, 100)
}
