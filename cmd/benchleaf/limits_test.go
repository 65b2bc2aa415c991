package main

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
)

// What is more than is read is told soon, with a way out. What one file may hold is tested where it is read.
func TestWhatIsTooMuchIsTold(t *testing.T) {
	deep := strings.Repeat("d/", mostDeep-1)
	for name, c := range map[string]struct {
		make func(folder string)
		line string
		says string
	}{
		"a deep tree": {func(folder string) { write(t, folder, deep+"x/y/look.toml", job) }, "lint", "lies more than 100 folders deep; nothing is read there, give the folder of the shop"},
		"a long form": {func(folder string) { write(t, folder, "entry.txt", strings.Repeat("#", mostBytes+1)) }, "log entry.txt", "entry.txt is 4 MiB, and at most 4 MiB are read"},
		"many joined": {func(folder string) {
			for i := range 53 {
				write(t, folder, fmt.Sprintf("look-%d.toml", i), strings.Replace(job, "chain oiler", fmt.Sprintf("chain oiler %d", i), 1))
			}
		}, "join . --on 2026-03-01", "53 procedures are asked for, and at most 52 are joined at once; name fewer"},
		"a long line": {func(folder string) {
			write(t, folder, "look.toml", strings.Replace(job, "[procedure]", "# "+strings.Repeat("x", 100_000)+"\n[procedure]", 1))
		}, "lint", "look.toml:3:1: error: the line is 100002 bytes long, and at most 100000 are read"},
		"a long text": {func(folder string) {
			write(t, folder, "look.toml", strings.Replace(job, "the oil level", strings.Repeat("the oil level ", 1500), 1))
		}, "lint", "look.toml:21:11: error: the text is 21019 bytes long, and at most 10000 are read"},
	} {
		folder := t.TempDir()
		write(t, folder, "shop.toml", "benchleaf = 1\n")
		c.make(folder)
		begun := time.Now()
		got := in(folder, strings.Fields(c.line)...)
		assert.NotEqual(t, statusClean, got.status, name)
		assert.Contains(t, got.out+got.err, c.says, name)
		assert.Less(t, time.Since(begun), 10*time.Second, name)
	}
}

// Links that lead back, and uses that go through them again and again, come to an end.
func TestUsesThatGoRoundInCircles(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("links are of another kind there")
	}
	folder := t.TempDir()
	write(t, folder, "look.toml", strings.Replace(job, "benchleaf = 1\n", "benchleaf = 1\nuse = [\""+strings.Repeat("*/", 40)+"*.toml\"]\n", 1))
	for _, name := range []string{"back", "again"} {
		require.NoError(t, os.Symlink(".", filepath.Join(folder, name)))
	}
	got := in(folder, "lint", "look.toml")
	assert.Equal(t, statusFailed, got.status)
	assert.Contains(t, got.err, "more than 20000 folders would be looked through; write fewer * into use")
}

// The README lists what is read at most as it is.
func TestTheReadmeListsWhatIsReadAtMost(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	for _, row := range []string{
		fmt.Sprintf("| a procedure file, entries to log | %d MiB |", mostBytes>>20),
		fmt.Sprintf("| notes for `draft` | %d KiB |", compiler.MostNotes>>10),
		fmt.Sprintf("| procedure files of a shop | %d,%03d, %d MiB together |", mostFiles/1000, mostFiles%1000, mostShop>>20),
		fmt.Sprintf("| files and folders that are looked at | %d,%03d, folders %d deep |", mostEntries/1000, mostEntries%1000, mostDeep),
		fmt.Sprintf("| folders that are looked through for the `*` of `use` | %d,%03d |", mostLooks/1000, mostLooks%1000),
		fmt.Sprintf("| a picture | %d MiB,", mostPicture>>20),
		fmt.Sprintf("| the pictures of a shop | %d MiB together |", mostAlbum>>20),
	} {
		assert.Contains(t, string(text), row)
	}
}
