package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAnEarlierCardIsNamedWhenItsProcedureIsHeldBack(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "look.toml", job)
	require.Equal(t, statusClean, in(folder, "print").status)
	write(t, folder, "look.toml", wrongJob)
	got := in(folder, "print")
	assert.Equal(t, statusFindings, got.status)
	assert.Contains(t, got.err, "do not use "+filepath.FromSlash("out/look.pdf")+": it is from an earlier build")
	assert.FileExists(t, filepath.Join(folder, "out/look.pdf"))
}

func TestCardsAreNotWrittenOverEachOther(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "deck/look.toml", job)
	write(t, folder, "hoist/look.toml", job)
	got := in(folder, "print")
	assert.Equal(t, statusFindings, got.status, got.out+got.err)
	assert.Contains(t, got.err, "held back: "+filepath.FromSlash("hoist/look.toml"))

	for name, what := range map[string]string{"pick-list": "the pick list", "manual": "the manual", "contact": "the contact sheet", "due-list": "the list of what is due", "bring": "the list of what to bring",
		"gauge": "the page of true sizes", "cards-on-a4": "the cards on a4", "log-deck-conveyor-planner": "the planner of Log-deck conveyor", "log-deck-conveyor-history": "the history of Log-deck conveyor", "log-deck-conveyor-slack-trend": "a trend of Log-deck conveyor"} {
		folder = t.TempDir()
		write(t, folder, name+".toml", job)
		got = in(folder, "print")
		assert.Equal(t, statusFailed, got.status, got.out+got.err)
		assert.Contains(t, got.err, name+".toml and "+what+" would both be written to "+name+".pdf")
		assert.NoDirExists(t, filepath.Join(folder, "out"))
	}
	for name, what := range map[string]string{"look-approval": "the approval sheet of look", "look-record": "the record sheet of look"} {
		folder = t.TempDir()
		write(t, folder, "look.toml", job)
		write(t, folder, name+".toml", strings.Replace(job, "the chain oiler", "the guard", 1))
		got = in(folder, "print")
		assert.Equal(t, statusFailed, got.status, got.out+got.err)
		assert.Contains(t, got.err, name+".toml and "+what+" would both be written to "+name+".pdf")
	}
}

func TestNoNameLeadsOutOfTheFolder(t *testing.T) {
	for _, name := range []string{"../look", "a/b", ".look", `a\\b`, "c:look", "pick-list"} {
		folder := t.TempDir()
		write(t, folder, "shop/look.toml", strings.Replace(job, "[procedure]", "[procedure]\nname = \""+name+"\"", 1))
		got := in(filepath.Join(folder, "shop"), "print")
		assert.NotEqual(t, statusClean, got.status, name)
		assert.NotEmpty(t, got.err, name)
		entries, err := os.ReadDir(folder)
		require.NoError(t, err)
		assert.Len(t, entries, 1, name)
	}
}

func TestFixKeepsRightsAndLinks(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("rights and links are of another kind there")
	}
	folder := t.TempDir()
	write(t, folder, "store/look.toml", strings.Replace(job, "benchleaf = 1\n", "# by R. Aldous\n", 1))
	real := filepath.Join(folder, "store/look.toml")
	require.NoError(t, os.Chmod(real, 0o640))
	require.NoError(t, os.Symlink("store/look.toml", filepath.Join(folder, "look.toml")))
	got := in(folder, "lint", "--fix", "look.toml")
	assert.Equal(t, statusClean, got.status, got.out+got.err)
	assert.Contains(t, got.out, "mended 1 finding in 1 file")
	text, err := os.ReadFile(real)
	require.NoError(t, err)
	assert.True(t, strings.HasPrefix(string(text), "benchleaf = 1\n# by R. Aldous\n"), string(text[:40]))
	info, err := os.Lstat(filepath.Join(folder, "look.toml"))
	require.NoError(t, err)
	assert.NotZero(t, info.Mode()&os.ModeSymlink, "the link is still a link")
	info, err = os.Stat(real)
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o640), info.Mode().Perm())
	again := in(folder, "lint", "--fix", "look.toml")
	assert.Contains(t, again.out, "nothing can be mended for certain")
}

func TestAFileChangedMeanwhileIsNotMended(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "look.toml", "saved by an editor")
	path := filepath.Join(folder, "look.toml")
	require.ErrorContains(t, replace(path, []byte("as it was read"), []byte("mended")), "changed meanwhile")
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "saved by an editor", string(text))
}

func TestProgressLine(t *testing.T) {
	var line bytes.Buffer
	p := &progress{to: &line, begun: time.Now().Add(-time.Minute)}
	p.step(3, 10)
	p.step(2, 10) // told late by another hand
	p.step(4, 10)
	p.end()
	assert.Equal(t, "\r3 of 10 cards \r4 of 10 cards \r\x1b[K", line.String())

	line.Reset()
	early := &progress{to: &line, begun: time.Now()}
	early.step(1, 10)
	early.end()
	assert.Empty(t, line.String(), "a short build says nothing")

	silent := watch(&line)
	silent.begun = time.Now().Add(-time.Minute)
	silent.step(1, 10)
	silent.end()
	assert.Empty(t, line.String(), "nor does one that does not write to a terminal")
}

// A build that is killed at any moment leaves of each file the old one or the new one.
func TestAKilledBuildLeavesWholeFiles(t *testing.T) {
	if testing.Short() {
		t.Skip("kills thirty builds")
	}
	program, err := os.Executable()
	require.NoError(t, err)
	folder := t.TempDir()
	names := []string{"pick-list.pdf", "pick-list.csv"}
	for i := range 6 {
		write(t, folder, fmt.Sprintf("look-%d.toml", i), strings.Replace(job, "chain oiler", fmt.Sprintf("chain oiler %d", i), 1))
		names = append(names, fmt.Sprintf("look-%d.pdf", i))
	}
	require.Equal(t, statusClean, in(folder, "print", "--out", "whole").status)
	// The moments are spread over the time a build takes here, and a little longer; on a
	// machine that is busy they go on until one build has written something.
	begun := time.Now()
	undisturbed := exec.Cmd{Path: program, Args: []string{"benchleaf", "print", "--out", "timed"}, Dir: folder}
	require.NoError(t, undisturbed.Run())
	whole := time.Since(begun)
	old, changed := []byte("an earlier build"), 0
	for i := time.Duration(0); i < 30 || changed == 0 && i < 600; i++ {
		delay := i * whole * 3 / 2 / 30
		for _, name := range names {
			write(t, folder, "out/"+name, string(old))
		}
		build := exec.Cmd{Path: program, Args: []string{"benchleaf", "print"}, Dir: folder, Stdout: io.Discard, Stderr: io.Discard}
		require.NoError(t, build.Start())
		time.Sleep(delay)
		_ = build.Process.Kill() // it may have ended by itself
		_ = build.Wait()
		for _, name := range names {
			text, err := os.ReadFile(filepath.Join(folder, "out", name))
			require.NoError(t, err)
			want, err := os.ReadFile(filepath.Join(folder, "whole", name))
			require.NoError(t, err)
			if bytes.Equal(text, want) {
				changed++
			} else {
				assert.Equal(t, string(old), string(text), "%s is neither the old file nor the new one", name)
			}
		}
	}
	assert.Positive(t, changed, "no build came far enough to prove anything")
}

func TestAFolderInThePlaceOfAFile(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "look.toml", job)
	require.NoError(t, os.MkdirAll(filepath.Join(folder, "out/look.pdf/full"), 0o777))
	got := in(folder, "print")
	assert.Equal(t, statusFailed, got.status)
	assert.Contains(t, got.err, filepath.FromSlash("out/look.pdf")+" cannot be written")
	left, err := filepath.Glob(filepath.Join(folder, "out/.benchleaf*"))
	require.NoError(t, err)
	assert.Empty(t, left, "no draft is left behind")
}
