package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const mill = "benchleaf = 1\n[shop]\ntitle = \"Fernhollow Sawmill\"\n"

func TestTwoShops(t *testing.T) {
	folder := t.TempDir()
	for _, shop := range []string{"upper", "lower", "other/lower"} {
		write(t, folder, shop+"/shop.toml", mill)
		write(t, folder, shop+"/look.toml", job)
	}
	write(t, folder, "lower/look.toml", wrongJob)

	got := in(folder, "lint", "upper", "lower")
	assert.Equal(t, statusFindings, got.status)
	assert.Contains(t, got.out, filepath.FromSlash("lower/look.toml")+":10:13: error:")
	assert.Contains(t, got.out, "4 files, 2 procedures, 2 machines: 1 error\n")
	assert.Equal(t, got, in(folder, "lint", "lower", "upper"), "the order of the paths leaves no trace")
	assert.Equal(t, got, in(folder, "lint", "upper", "lower", "upper/look.toml"), "a file is checked once")

	from := in(filepath.Join(folder, "upper"), "lint", "../lower")
	assert.Contains(t, from.out, filepath.FromSlash("../lower/look.toml")+":10:13: error:", "paths are told from the working folder")

	got = in(folder, "print", "upper", "lower")
	assert.Equal(t, statusFindings, got.status, got.err)
	assert.FileExists(t, filepath.Join(folder, "out/upper/look.pdf"))
	assert.NoFileExists(t, filepath.Join(folder, "out/lower/look.pdf"))
	assert.Contains(t, got.err, "held back: "+filepath.FromSlash("lower/look.toml"))

	for _, line := range []string{"lint --json upper lower", "pick --csv upper lower", "print lower other/lower"} {
		got = in(folder, strings.Fields(line)...)
		assert.Equal(t, statusFailed, got.status, line)
		assert.Contains(t, got.err, "one", line)
	}
}

func TestAFileBelongsToTheNearestShop(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "shop.toml", mill+libraries[len("benchleaf = 1\n"):])
	write(t, folder, "cards/deck/look.toml", doubtful[:strings.Index(doubtful, "[tool.mallet]")]+"tools = [\"mallet\"]\n")
	for _, path := range []string{".", "cards", "cards/deck/look.toml"} {
		got := in(folder, "lint", path)
		assert.Equal(t, statusClean, got.status, "%s: %s%s", path, got.out, got.err)
	}
	assert.Equal(t, statusClean, in(filepath.Join(folder, "cards"), "lint").status, "the shop above the working folder")
	write(t, folder, "cards/shop.toml", mill)
	got := in(folder, "lint", "cards")
	assert.Equal(t, statusFindings, got.status, "a nearer shop has no mallet")
	assert.Contains(t, got.out, `"mallet"`)
}

func TestWhatIsPassedOver(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "look.toml", job)
	for _, name := range []string{"out/wrong.toml", ".git/wrong.toml", "deck/.hidden/wrong.toml", "deck/out/wrong.toml", ".#look.toml"} {
		write(t, folder, name, "wrong")
	}
	got := in(folder, "lint")
	assert.Equal(t, "1 file, 1 procedure, 1 machine: no findings\n", got.out+got.err)
	assert.Equal(t, statusFindings, in(folder, "lint", "out").status, "but not when it is asked for")
}

func TestAFaultInAUsedFileHoldsTheCardBack(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "shop.toml", mill+"use = [\"tools.toml\"]\n")
	write(t, folder, "tools.toml", "benchleaf = 1\n[tool.lamp]\nkind = \"lihgt\"\n")
	write(t, folder, "look.toml", strings.Replace(job, "[procedure]", "use = [\"tools.toml\"]\n[procedure]", 1))
	got := in(folder, "print", "look.toml")
	assert.Equal(t, statusFindings, got.status, got.out+got.err)
	assert.Contains(t, got.err, "tools.toml:3:8: error:")
	assert.Contains(t, got.err, "held back: look.toml")
	assert.NoFileExists(t, filepath.Join(folder, "out/look.pdf"))
}

func TestTooManyFilesAreRefused(t *testing.T) {
	if testing.Short() {
		t.Skip("writes 20,001 files")
	}
	folder := t.TempDir()
	for i := range mostFiles + 1 {
		require.NoError(t, os.WriteFile(filepath.Join(folder, fmt.Sprintf("f%d.toml", i)), nil, 0o666))
	}
	got := in(folder, "lint")
	assert.Equal(t, statusFailed, got.status)
	assert.Contains(t, got.err, "more than 20000 procedure files")
}

func TestAFileThatCannotBeReadIsNamed(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("root may read everything")
	}
	folder := t.TempDir()
	write(t, folder, "look.toml", job)
	require.NoError(t, os.Chmod(filepath.Join(folder, "look.toml"), 0))
	got := in(folder, "lint")
	assert.Equal(t, statusFailed, got.status)
	assert.Contains(t, got.err, "look.toml cannot be read: permission denied")
}
