package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A shop or a procedure that was just written has one finding for each blank, at
// the blank, and no other.
func TestScaffoldsHaveOneFindingForEachBlank(t *testing.T) {
	for _, line := range []string{"new oil.toml", "new --shop mill"} {
		folder := t.TempDir()
		require.Equal(t, statusClean, in(folder, strings.Fields(line)...).status)
		blanks := map[string]int{}
		require.NoError(t, filepath.WalkDir(folder, func(path string, entry os.DirEntry, err error) error {
			require.NoError(t, err)
			if entry.IsDir() {
				return nil
			}
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			for i, written := range strings.Split(string(text), "\n") {
				if strings.Contains(written, `""`) && !strings.HasPrefix(written, "#") {
					assert.Regexp(t, blank, written, "a blank without an example")
					blanks[fmt.Sprintf("%s:%d", filepath.Base(path), i+1)]++
				}
			}
			return nil
		}))
		words := strings.Fields(line)
		got := in(folder, "lint", "--json", words[len(words)-1])
		var report struct {
			Findings []struct {
				Rule  string
				Place struct {
					File string
					Line int
				}
			}
		}
		require.NoError(t, json.Unmarshal([]byte(got.out), &report))
		require.NotEmpty(t, blanks, line)
		found := map[string]int{}
		for _, one := range report.Findings {
			if one.Rule == "language/not-checked" { // what comes of the blanks
				continue
			}
			assert.Equal(t, "language/empty-text", one.Rule)
			found[fmt.Sprintf("%s:%d", filepath.Base(one.Place.File), one.Place.Line)]++
		}
		assert.Equal(t, blanks, found, line)
	}
}

func TestNewWritesOverNothing(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "mill/machines/machine.toml", "mine")
	got := in(folder, "new", "--shop", "mill")
	assert.Equal(t, statusFailed, got.status)
	assert.Contains(t, got.err, filepath.FromSlash("mill/machines/machine.toml")+" is there already")
	assert.NoFileExists(t, filepath.Join(folder, "mill/shop.toml"), "nothing is written when one is there")
	text, err := os.ReadFile(filepath.Join(folder, "mill/machines/machine.toml"))
	require.NoError(t, err)
	assert.Equal(t, "mine", string(text))
}
