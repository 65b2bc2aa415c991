package main

import (
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// lie are the files and links below a folder, with what stands in them.
func lie(t testing.TB, folder string) map[string]string {
	t.Helper()
	out := map[string]string{}
	require.NoError(t, filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := os.Readlink(path)
		if entry.Type()&fs.ModeSymlink == 0 {
			var read []byte
			read, err = os.ReadFile(path)
			text = string(read)
		}
		out[path] = text
		return err
	}))
	return out
}

// Whatever a procedure says of files to use, of its picture and of its own name, nothing outside the
// shop folder is read or written, nothing within it changes but the folder of what is printed, and an
// error is told as one.
func FuzzFolder(f *testing.F) {
	outer, err := filepath.EvalSymlinks(f.TempDir())
	require.NoError(f, err)
	shop := filepath.Join(outer, "shop")
	require.NoError(f, os.MkdirAll(filepath.Join(shop, "tools"), 0o777))
	const secret = "nobodys-business"
	for path, text := range map[string]string{"secret.toml": "benchleaf = 1\n[tool." + secret + "]\nkind = \"hammer\"\n", "secret.png": secret, "shop/shop.toml": "benchleaf = 1\n", "shop/tools/hammer.toml": "benchleaf = 1\n[tool.hammer]\nkind = \"hammer\"\n"} {
		require.NoError(f, os.WriteFile(filepath.Join(outer, path), []byte(text), 0o666))
	}
	require.NoError(f, os.Symlink("..", filepath.Join(shop, "tools", "door")))
	require.NoError(f, os.Symlink("../secret.toml", filepath.Join(shop, "link.tml")))
	f.Add("tools/*.toml", "a.png", "look", false)
	f.Add("../secret.toml", "../secret.png", "../look", true)
	f.Add("link.tml", "tools/door/../secret.png", "c:look", true)
	f.Add("tools/door/../*.toml", outer+"/secret.png", ".look", false)
	f.Add("tools/door/door/shop/../../*.t?ml", "a\x00b.png", "a/b", true)
	f.Add("[", "\\\\?\\x", "pick-list", false)
	f.Add("*/*/*/*/*/*/*/*.toml", ".", strings.Repeat("n", 300), true)
	f.Fuzz(func(t *testing.T, use, picture, name string, whole bool) {
		quoted := func(text string) string {
			out, err := json.Marshal(text)
			require.NoError(t, err)
			return string(out)
		}
		text := strings.Replace(job, "[procedure]\n", "use = ["+quoted(use)+"]\n[procedure]\nname = "+quoted(name)+"\npictures = [{ file = "+quoted(picture)+", title = \"x\" }]\n", 1)
		require.NoError(t, os.WriteFile(filepath.Join(shop, "look.toml"), []byte(text), 0o666))
		before := lie(t, outer)
		args := []string{"print", "look.toml"}
		if whole {
			args = args[:1]
		}
		got := in(shop, args...)
		switch got.status {
		case statusClean, statusFindings:
		case statusFailed:
			assert.True(t, strings.HasPrefix(got.err, "benchleaf: "), got.err)
		default:
			t.Errorf("it ends with %d", got.status)
		}
		assert.NotContains(t, got.out+got.err, "fault of benchleaf")
		if !strings.Contains(use+picture+name, secret) {
			assert.NotContains(t, got.out+got.err, secret)
		}
		for path, text := range lie(t, outer) {
			if old, there := before[path]; there {
				assert.Equal(t, old, text, "%s is changed", path)
				continue
			}
			assert.Equal(t, filepath.Join(shop, defaultOut), filepath.Dir(path))
			assert.False(t, strings.HasPrefix(filepath.Base(path), "."), "%s is left", path)
		}
		require.NoError(t, os.RemoveAll(filepath.Join(shop, defaultOut)))
	})
}
