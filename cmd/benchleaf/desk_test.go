package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/source"
)

// The desk reads a shop as the command does, with the texts that are not saved in place of the
// files, and goes on where something cannot be read.
func TestTheDeskReadsAShopWithWhatIsNotSaved(t *testing.T) {
	real, err := filepath.EvalSymlinks(t.TempDir())
	require.NoError(t, err)
	write(t, real, "shop.toml", strings.Replace(mill, "benchleaf = 1\n", "benchleaf = 1\nuse = [\"machines/*.toml\"]\n", 1))
	write(t, real, "look.toml", job)
	write(t, real, "deep/inner/other.toml", job)
	write(t, real, "annexe/shop.toml", mill)
	write(t, real, "annexe/look.toml", job)
	write(t, real, "out/old.toml", job)
	by := &caller{folder: real}
	shop, err := by.deskShop("deep/inner")
	require.NoError(t, err)
	assert.Equal(t, real, shop.Folder(), "the shop lies above")
	text := func(files []*source.File, path string) string {
		for _, file := range files {
			if file.Path == path {
				return string(file.Text)
			}
		}
		return ""
	}
	in, faults := shop.Read(map[string][]byte{"look.toml": []byte(wrongJob), "machines/saw.toml": []byte("benchleaf = 1\n[machine]\ntitle = \"Saw\"\nmanual = \"Its own\"\n")})
	assert.Empty(t, faults)
	assert.True(t, in.Whole)
	assert.Equal(t, []string{"deep/inner/other.toml", "look.toml", "machines/saw.toml", "shop.toml"}, in.Targets, "and no other shop")
	assert.Equal(t, wrongJob, text(in.Files, "look.toml"))
	assert.NotEmpty(t, text(in.Files, "machines/saw.toml"), "a file that is not there yet is used")
	assert.Equal(t, job, string(must(os.ReadFile(filepath.Join(real, "look.toml")))))

	require.NoError(t, os.Symlink("/etc/hostname", filepath.Join(real, "door.toml")))
	in, faults = shop.Read(nil)
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Error(), "outside the shop folder")
	assert.Len(t, in.Files, 3, "the others are read all the same")

	bare, err := filepath.EvalSymlinks(t.TempDir())
	require.NoError(t, err)
	shop, err = (&caller{folder: bare}).deskShop(".")
	require.NoError(t, err)
	in, faults = shop.Read(nil)
	assert.Empty(t, faults, "a folder to begin in")
	assert.Empty(t, in.Files)
}

func must(text []byte, err error) []byte {
	if err != nil {
		panic(err)
	}
	return text
}
