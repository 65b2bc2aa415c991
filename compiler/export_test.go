package compiler

import (
	"io/fs"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"benchleaf/compiler/source"
)

// ReadFolder reads every procedure file below a folder, with paths from there.
func ReadFolder(t testing.TB, folder string) []*source.File {
	t.Helper()
	var out []*source.File
	root := os.DirFS(folder)
	require.NoError(t, fs.WalkDir(root, ".", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, ".toml") {
			return err
		}
		text, err := fs.ReadFile(root, path)
		out = append(out, source.New(path, text))
		return err
	}))
	return out
}
