package main

import (
	"bytes"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
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

// A command that is killed at any moment leaves of each file the old one or the new one, and a book
// with every entry that it told of. BENCHLEAF_KILLS says how many are killed, half of them print and
// half log; 30 where it says nothing.
func TestKilledCommandsLeaveWholeFiles(t *testing.T) {
	if testing.Short() {
		t.Skip("kills thirty commands")
	}
	kills := 30
	if asked := os.Getenv("BENCHLEAF_KILLS"); asked != "" {
		var err error
		kills, err = strconv.Atoi(asked)
		require.NoError(t, err)
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
	whole := map[string][]byte{}
	for _, name := range names {
		whole[name], err = os.ReadFile(filepath.Join(folder, "whole", name))
		require.NoError(t, err)
	}
	// The moments are spread over the time a command takes here, and a little longer; on a
	// machine that is busy they go on until one build has written something.
	takes := func(args ...string) time.Duration {
		begun := time.Now()
		undisturbed := exec.Cmd{Path: program, Args: append([]string{"benchleaf"}, args...), Dir: folder}
		require.NoError(t, undisturbed.Run())
		return time.Since(begun)
	}
	printing, logging := takes("print", "--out", "timed"), takes("log", "--remarks", "Oiled")
	random := rand.New(rand.NewPCG(7, uint64(time.Now().UnixNano())))
	killed := func(most time.Duration, args ...string) (out string) {
		var told bytes.Buffer
		run := exec.Cmd{Path: program, Args: append([]string{"benchleaf"}, args...), Dir: folder, Stdout: &told, Stderr: io.Discard}
		require.NoError(t, run.Start())
		time.Sleep(time.Duration(random.Int64N(int64(most) * 3 / 2)))
		_ = run.Process.Kill() // it may have ended by itself
		_ = run.Wait()
		return told.String()
	}
	old := []byte("an earlier build")
	builds, changed, mixed, logs, told, kept, left := 0, 0, 0, 0, 0, 0, 0
	book, err := os.ReadFile(filepath.Join(folder, compiler.Bookfile))
	require.NoError(t, err)
	for i := 0; i < kills || changed == 0 && i < kills+600; i++ {
		if i%2 == 1 {
			logs++
			words := fmt.Sprintf("round %d ends", i)
			answer := killed(logging, "log", "--remarks", words)
			text, err := os.ReadFile(filepath.Join(folder, compiler.Bookfile))
			require.NoError(t, err)
			require.True(t, bytes.HasPrefix(text, book), "what stood in the book was changed")
			whole, err := compiler.TornBook(bytes.NewReader(text))
			require.NoError(t, err)
			count := 0
			require.NoError(t, compiler.ScanBook(bytes.NewReader(text[:whole]), func(e compiler.Entry, _ int) error {
				count++
				assert.Equal(t, count, e.Number)
				return nil
			}))
			if strings.HasPrefix(answer, "entry ") {
				told++
				require.Contains(t, string(text[:whole]), words, "it was told of, and is not in the book")
			}
			if bytes.Contains(text[:whole], []byte(words)) {
				kept++
			}
			book = text[:whole]
			continue
		}
		builds++
		for _, name := range names {
			write(t, folder, "out/"+name, string(old))
		}
		killed(printing, "print")
		anew := 0
		for _, name := range names {
			text, err := os.ReadFile(filepath.Join(folder, "out", name))
			require.NoError(t, err)
			if bytes.Equal(text, whole[name]) {
				anew++
			} else {
				assert.Equal(t, string(old), string(text), "%s is neither the old file nor the new one", name)
			}
		}
		if changed += min(anew, 1); anew > 0 && anew < len(names) {
			mixed++
		}
		drafts, err := filepath.Glob(filepath.Join(folder, "out", ".benchleaf-*")) // a kill leaves no time to take them away
		require.NoError(t, err)
		if len(drafts) > 0 {
			left++
		}
		for _, draft := range drafts {
			require.NoError(t, os.Remove(draft))
		}
	}
	assert.Positive(t, changed, "no build came far enough to prove anything")
	t.Logf("%d builds killed: %d had written, %d of them some files and not yet others, %d left drafts with names of their own; %d logs killed: %d had told of their entry, %d were in the book", builds, changed, mixed, left, logs, told, kept)
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

// What a killed build left beside its places goes with the next build after an hour; what another
// is just writing stays.
func TestLeftTextsAreSweptOut(t *testing.T) {
	folder := t.TempDir()
	old, new := filepath.Join(folder, ".benchleaf-1-2"), filepath.Join(folder, ".benchleaf-3-4")
	for _, path := range []string{old, new} {
		require.NoError(t, os.WriteFile(path, []byte("x"), 0o600))
	}
	then := time.Now().Add(-2 * stale)
	require.NoError(t, os.Chtimes(old, then, then))
	_, err := writeAll(folder, "out", []compiler.Output{{Name: "a.pdf", Bytes: []byte("a")}})
	require.NoError(t, err)
	assert.NoFileExists(t, old)
	assert.FileExists(t, new)
	assert.FileExists(t, filepath.Join(folder, "a.pdf"))
}
