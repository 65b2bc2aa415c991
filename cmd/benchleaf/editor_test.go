package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A file that lies in no shop is taken alone, whatever lies beside and below it; so is one that is
// not there, and one whose folder is not.
func TestTheEditorTakesAFileOutsideAnyShopAlone(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.MkdirAll(filepath.Join(folder, "below"), 0o755))
	for _, name := range []string{"settings.toml", "other.toml", "below/more.toml"} {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte("a = 1\n"), 0o644))
	}
	for name, read := range map[string]int{"settings.toml": 1, "new.toml": 0, "not/yet/made.toml": 0} {
		got, err := openShop(filepath.ToSlash(filepath.Join(folder, name)))
		require.NoError(t, err, name)
		assert.True(t, got.Lone, name)
		assert.Equal(t, filepath.ToSlash(filepath.Dir(filepath.Join(folder, name))), got.Folder)
		assert.Len(t, got.Files, read, name)
	}
}

// A file whose folder is not made yet belongs to the shop above it, and what changes on the disk
// is noticed with no word of the editor.
func TestTheEditorNoticesWhatChangesOnTheDisk(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.CopyFS(folder, os.DirFS("../../procedures")))
	got, err := openShop(filepath.ToSlash(filepath.Join(folder, "drafts", "new", "oil.toml")))
	require.NoError(t, err)
	require.False(t, got.Lone)
	assert.Equal(t, filepath.ToSlash(folder), got.Folder)
	assert.Greater(t, len(got.Files), 20)
	require.False(t, got.Stale())

	require.NoError(t, os.WriteFile(filepath.Join(folder, "machines", "winch.toml"), []byte("benchleaf = 1\n"), 0o644))
	assert.True(t, got.Stale(), "a new file")
	got, err = openShop(filepath.ToSlash(filepath.Join(folder, "machines", "winch.toml")))
	require.NoError(t, err)
	require.False(t, got.Stale())
	require.NoError(t, os.WriteFile(filepath.Join(folder, "shop", "units.toml"), []byte("benchleaf = 1\n"), 0o644))
	assert.True(t, got.Stale(), "another text")
}

// What the service book names is known.
func TestTheEditorKnowsWhatTheServiceBookNames(t *testing.T) {
	got, err := openShop(filepath.ToSlash(mustAbs(t, "../../procedures/shop/fluids.toml")))
	require.NoError(t, err)
	require.NotNil(t, got.Booked)
	for name, want := range map[string]bool{"deck": true, "log-deck-gearbox-oil": true, "gear-460": true, "drain-plug": false} {
		found, err := got.Booked(name)
		require.NoError(t, err)
		assert.Equal(t, want, found, name)
	}
}

func mustAbs(t *testing.T, path string) string {
	full, err := filepath.Abs(path)
	require.NoError(t, err)
	return full
}
