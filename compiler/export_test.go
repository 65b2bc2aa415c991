package compiler

import (
	"bytes"
	"image"
	"image/png"
	"io/fs"
	"os"
	"path"
	"path/filepath"
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
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, ".toml") || entry.Name() == Bookfile {
			return err
		}
		text, err := fs.ReadFile(root, path)
		out = append(out, source.New(path, text))
		return err
	}))
	return out
}

// ReadPictures reads the pictures that the files of a folder show.
func ReadPictures(t testing.TB, folder string, files []*source.File) []source.Picture {
	t.Helper()
	out := []source.Picture{}
	for _, file := range files {
		_, pictures := Uses(file)
		for _, path := range pictures {
			data, err := os.ReadFile(filepath.Join(folder, path))
			require.NoError(t, err)
			out = append(out, source.Picture{Path: path, Bytes: data})
		}
	}
	return out
}

// Imagined makes up the pictures that some files show: one whose name begins with
// "missing" is not there, with "torn" is cut off, with "coarse" has few pixels.
func Imagined(files []*source.File) []source.Picture {
	out := []source.Picture{}
	for _, file := range files {
		_, pictures := Uses(file)
		for _, place := range pictures {
			name, width := path.Base(place), 800
			if strings.HasPrefix(name, "coarse") {
				width = 60
			}
			var data bytes.Buffer
			_ = png.Encode(&data, image.NewGray(image.Rect(0, 0, width, width*3/4))) // a buffer takes everything
			if strings.HasPrefix(name, "torn") {
				data.Truncate(data.Len() / 2)
			}
			if !strings.HasPrefix(name, "missing") {
				out = append(out, source.Picture{Path: place, Bytes: data.Bytes()})
			}
		}
	}
	return out
}
