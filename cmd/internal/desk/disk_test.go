package desk

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestASaveNeverWritesOverAChange(t *testing.T) {
	at := empty(t)
	put(t, at, "oil.toml", "first\n")
	require.NoError(t, os.Chmod(filepath.Join(at, "oil.toml"), 0o640))
	p := visited(t, at)
	_, opened := p.send("GET", "api/file?path=oil.toml", "", nil)
	require.Equal(t, "first\n", opened["text"])

	put(t, at, "oil.toml", "theirs\n")
	status, answer := p.save("oil.toml", "mine\n", opened["hash"].(string))
	assert.Equal(t, 409, status)
	assert.Equal(t, "theirs\n", answer["text"])
	assert.Equal(t, digest([]byte("theirs\n")), answer["hash"])
	assert.Equal(t, "theirs\n", onDisk(t, at, "oil.toml"))

	status, saved := p.save("oil.toml", "both\n", answer["hash"].(string))
	assert.Equal(t, 200, status)
	assert.Equal(t, "both\n", onDisk(t, at, "oil.toml"))
	info, err := os.Stat(filepath.Join(at, "oil.toml"))
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o640), info.Mode().Perm(), "it keeps its rights")
	status, _ = p.save("oil.toml", "again\n", saved["hash"].(string))
	assert.Equal(t, 200, status)

	status, answer = p.save("oil.toml", "new\n", "")
	assert.Equal(t, 409, status, "a new file is not written over one that is there")
	assert.Equal(t, "again\n", answer["text"])

	require.NoError(t, os.Remove(filepath.Join(at, "oil.toml")))
	status, answer = p.save("oil.toml", "mine\n", digest([]byte("again\n")))
	assert.Equal(t, 409, status)
	assert.Equal(t, true, answer["gone"])
	assert.NoFileExists(t, filepath.Join(at, "oil.toml"))
	status, _ = p.save("machines/deep/saw.toml", "new\n", "")
	assert.Equal(t, 200, status, "with its folders")
	assert.Equal(t, "new\n", onDisk(t, at, "machines/deep/saw.toml"))
	assertNoDrafts(t, at)
}

// Many save one file at once: each is told, one after the other wins, and no text is torn.
func TestOfManySavesOneWins(t *testing.T) {
	at := empty(t)
	p := visited(t, at)
	var hands sync.WaitGroup
	statuses := make([]int, 24)
	for i := range statuses {
		hands.Go(func() {
			statuses[i], _ = p.save("oil.toml", strings.Repeat(fmt.Sprintf("# %d\n", i), 2000), "")
		})
	}
	hands.Wait()
	won := -1
	for i, status := range statuses {
		if status == 200 {
			assert.Equal(t, -1, won, "only one makes the file")
			won = i
		} else {
			assert.Equal(t, 409, status)
		}
	}
	require.GreaterOrEqual(t, won, 0)
	assert.Equal(t, strings.Repeat(fmt.Sprintf("# %d\n", won), 2000), onDisk(t, at, "oil.toml"))
	assertNoDrafts(t, at)
}

func TestAFolderThatCannotBeWrittenIsTold(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("the administrator may write everywhere")
	}
	at := empty(t)
	p := visited(t, at)
	require.NoError(t, os.Chmod(at, 0o555))
	defer os.Chmod(at, 0o777)
	status, answer := p.save("oil.toml", "x", "")
	assert.Equal(t, 403, status)
	assert.Contains(t, answer["error"], "permission denied")
}

func assertNoDrafts(t *testing.T, at string) {
	t.Helper()
	require.NoError(t, filepath.WalkDir(at, func(path string, entry os.DirEntry, err error) error {
		assert.False(t, strings.HasPrefix(entry.Name(), ".benchleaf"), "%s is left", path)
		return err
	}))
}
