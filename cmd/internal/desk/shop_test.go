package desk

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
)

// folder is a shop folder, read as it lies; the command's own reading is tested with the command.
type folder string

func (f folder) Folder() string { return string(f) }

func (f folder) Read(unsaved map[string][]byte) (compiler.Input, []error) {
	texts := map[string][]byte{}
	var faults []error
	err := fs.WalkDir(os.DirFS(string(f)), ".", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || !entry.Type().IsRegular() || filepath.Ext(path) != ".toml" || entry.Name() == compiler.Bookfile {
			return err
		}
		texts[path], err = os.ReadFile(filepath.Join(string(f), path))
		return err
	})
	if err != nil {
		faults = append(faults, err)
	}
	for path, text := range unsaved {
		texts[path] = text
	}
	in := compiler.Input{Whole: true}
	for path, text := range texts {
		in.Files = append(in.Files, source.New(path, text))
		in.Targets = append(in.Targets, path)
	}
	slices.SortFunc(in.Files, func(a, b *source.File) int { return strings.Compare(a.Path, b.Path) })
	slices.Sort(in.Targets)
	return in, faults
}

// demonstration copies the demonstration shop, without its pictures, into a folder of the test.
func demonstration(t *testing.T) string {
	t.Helper()
	to := empty(t)
	from := os.DirFS("../../../procedures")
	require.NoError(t, fs.WalkDir(from, ".", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || filepath.Ext(path) != ".toml" {
			return err
		}
		text, err := fs.ReadFile(from, path)
		require.NoError(t, err)
		put(t, to, path, string(text))
		return nil
	}))
	return to
}

func empty(t *testing.T) string {
	t.Helper()
	real, err := filepath.EvalSymlinks(t.TempDir())
	require.NoError(t, err)
	return real
}

func put(t *testing.T, folder, path, text string) {
	t.Helper()
	at := filepath.Join(folder, filepath.FromSlash(path))
	require.NoError(t, os.MkdirAll(filepath.Dir(at), 0o777))
	require.NoError(t, os.WriteFile(at, []byte(text), 0o666))
}

func onDisk(t *testing.T, folder, path string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(folder, filepath.FromSlash(path)))
	require.NoError(t, err)
	return string(text)
}

// served is a desk of a folder that answers until the test ends.
func served(t *testing.T, at string) *Desk {
	t.Helper()
	d, err := Open(folder(at), 0)
	require.NoError(t, err)
	ended := make(chan error, 1)
	go func() { ended <- d.Serve(t.Context()) }()
	t.Cleanup(func() { require.NoError(t, <-ended) })
	return d
}
