package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/cmd/internal/cache"
	"benchleaf/compiler"
)

// with runs a command in a folder with a cache, or without one: cache.Off.
func with(kept, folder string, args ...string) said {
	var out, err bytes.Buffer
	status := run(args, caller{strings.NewReader(""), &out, &err, folder, keptIn(kept)})
	return said{out.String(), err.String(), status}
}

func keptIn(kept string) func(string) string {
	return func(name string) string {
		if name == cache.Variable {
			return kept
		}
		return ""
	}
}

// done reports whether a print of a folder into out would find all there.
func done(t *testing.T, kept, folder string) bool {
	t.Helper()
	var out, told bytes.Buffer
	r, err := (&caller{strings.NewReader(""), &out, &told, folder, keptIn(kept)}).begin(order{Command: "print", Out: defaultOut}, nil)
	if r != nil {
		require.NoError(t, err)
		assert.Empty(t, out.String()+told.String(), "nothing is said before it is known")
	}
	return r == nil
}

// settle waits until no file was changed only now.
func settle() { time.Sleep(mark{Changed: 1}.step() + 5*time.Millisecond) }

// tree is all files below a folder.
func tree(t *testing.T, folder string) map[string]string {
	t.Helper()
	out := map[string]string{}
	require.NoError(t, filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := os.ReadFile(path)
		short, _ := filepath.Rel(folder, path)
		out[short] = string(text)
		return err
	}))
	return out
}

// sample is a part of the demonstration shop: machines in versions, pictures, second readings, files that are used.
var sample = []string{"shop.toml", "shop/cautions.toml", "shop/fluids.toml", "shop/fluids-hydraulic.toml", "shop/second/fluids-hydraulic.toml", "shop/spares.toml", "shop/spares-hydraulic.toml", "shop/supplies.toml", "shop/tools.toml", "shop/tools-hydraulic.toml", "machines/chipper.toml", "machines/log-deck.toml", "machines/second/chipper.toml", "machines/second/log-deck.toml",
	"chipper-knife-turn.toml", "log-deck-gearbox-oil.toml", "log-deck-bearing-grease.toml", "second/chipper-knife-turn.toml", "second/log-deck-gearbox-oil.toml", "second/log-deck-bearing-grease.toml", "pictures/chipper-knife.jpg", "pictures/gearbox-plugs.png"}

func sampleShop(t *testing.T, folder string) {
	t.Helper()
	for _, name := range sample {
		require.NoError(t, filepath.WalkDir(filepath.Join("../../procedures", name), func(path string, entry fs.DirEntry, err error) error {
			if err != nil || entry.IsDir() {
				return err
			}
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			short, _ := filepath.Rel("../../procedures", path)
			write(t, folder, short, string(text))
			return nil
		}))
	}
}

func TestNothingIsDoneTwice(t *testing.T) {
	folder, kept := t.TempDir(), t.TempDir()
	sampleShop(t, folder)
	settle() // the program too
	for _, command := range [][]string{{"print"}, {"print", "--svg", "--sheet", "a4", "--out", "small", "--stock", "a6"}, {"phone"}, {"manual", "--machine", "chipper"}} {
		first := with(kept, folder, command...)
		require.Equal(t, statusClean, first.status, first.err)
		require.Contains(t, first.out, "wrote ")
		at := tree(t, kept)
		want := with(cache.Off, folder, command...)
		assert.Equal(t, want, with(kept, folder, command...))
		settle()
		assert.Equal(t, want, with(kept, folder, command...))
		assert.Equal(t, slices.Sorted(maps.Keys(at)), slices.Sorted(maps.Keys(tree(t, kept))), "%v is the same build, and its record was found", command)
	}
	assert.True(t, done(t, kept, folder))
}

func TestARecordHoldsOnlyWhileAllIsAsItWas(t *testing.T) {
	kept := t.TempDir()
	for _, c := range []struct {
		what   string
		change func(folder string)
	}{
		{"an output was deleted", func(folder string) {
			require.NoError(t, os.Remove(filepath.Join(folder, "out/look.pdf")))
		}},
		{"an output is shorter", func(folder string) {
			require.NoError(t, os.Truncate(filepath.Join(folder, "out/look.pdf"), 1000))
		}},
		{"an output has other bytes", func(folder string) { spoil(t, filepath.Join(folder, "out/look.pdf")) }},
		{"a folder is in the place of an output", func(folder string) {
			require.NoError(t, os.Remove(filepath.Join(folder, "out/pick-list.csv")))
			require.NoError(t, os.Mkdir(filepath.Join(folder, "out/pick-list.csv"), 0o777))
		}},
		{"a file was changed", func(folder string) { write(t, folder, "look.toml", job+"# more\n") }},
		{"a file came to it", func(folder string) { write(t, folder, "tools.toml", libraries) }},
		{"a file is used", func(folder string) { write(t, folder, "shop.toml", mill) }},
		{"a shop file is above", func(folder string) { write(t, filepath.Dir(folder), "shop.toml", mill) }},
		{"a file went", func(folder string) { require.NoError(t, os.Remove(filepath.Join(folder, "bare.toml"))) }},
		{"a file has another name", func(folder string) {
			require.NoError(t, os.Rename(filepath.Join(folder, "bare.toml"), filepath.Join(folder, "rare.toml")))
		}},
		{"the records are gone", func(string) { require.NoError(t, os.RemoveAll(kept)) }},
		{"the records are damaged", func(string) {
			for name := range tree(t, kept) {
				spoil(t, filepath.Join(kept, name))
			}
		}},
	} {
		folder := filepath.Join(t.TempDir(), "shop")
		write(t, folder, "look.toml", job)
		write(t, folder, "bare.toml", libraries)
		require.Equal(t, statusClean, with(kept, folder, "print").status)
		settle()
		require.True(t, done(t, kept, folder), c.what)
		require.True(t, done(t, kept, folder), c.what)
		c.change(folder)
		assert.False(t, done(t, kept, folder), c.what)
		got := with(kept, folder, "print")
		assert.Equal(t, strings.Contains(c.what, "folder is in the place"), got.status == statusFailed, "%s: %s", c.what, got.err)
		if got.status != statusFailed {
			assert.True(t, done(t, kept, folder), "%s: and it is as it should be again", c.what)
		}
	}
}

// spoil changes a byte of a file, and puts back when it was last written.
func spoil(t *testing.T, path string) {
	t.Helper()
	info, err := os.Stat(path)
	require.NoError(t, err)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	text[len(text)/2] ^= 1
	require.NoError(t, os.WriteFile(path, text, 0o666))
	require.NoError(t, os.Chtimes(path, info.ModTime(), info.ModTime()))
}

// What was written at the very moment it was looked at is told by its bytes, for as long as it needs.
func TestADiskWhoseClockIsSlowIsNotBelieved(t *testing.T) {
	folder, kept := t.TempDir(), t.TempDir()
	write(t, folder, "look.toml", job)
	for range 20 {
		require.Equal(t, statusClean, with(kept, folder, "print").status)
		spoil(t, filepath.Join(folder, "out/look.pdf"))
		assert.False(t, done(t, kept, folder))
	}
	for _, m := range []mark{{Changed: 5e9}, {Changed: 5e9 + 1}} {
		assert.Equal(t, m.Changed%1e9 == 0, m.step() > time.Second)
	}
}

func TestWhatIsHeldBackIsToldAgain(t *testing.T) {
	folder, kept := t.TempDir(), t.TempDir()
	write(t, folder, "look.toml", job)
	write(t, folder, "other.toml", strings.Replace(job, "chain oiler", "guard", 1))
	require.Equal(t, statusClean, with(kept, folder, "print").status)
	write(t, folder, "look.toml", wrongJob)
	with(kept, folder, "print")
	for range 3 {
		want := with(cache.Off, folder, "print")
		require.Equal(t, statusFindings, want.status)
		require.Contains(t, want.err, "do not use "+filepath.FromSlash("out/look.pdf"))
		assert.Equal(t, want, with(kept, folder, "print"))
	}
	assert.True(t, done(t, kept, folder))
	require.NoError(t, os.Rename(filepath.Join(folder, "out/look.pdf"), filepath.Join(folder, "out/look.html")))
	assert.False(t, done(t, kept, folder), "another old card is there")
	assert.Equal(t, with(cache.Off, folder, "print"), with(kept, folder, "print"))

	// Of the manual of one machine, what is held back of all is told.
	write(t, folder, "hoist.toml", strings.Replace(wrongJob, "Log-deck conveyor", "Hoist", 1))
	with(kept, folder, "manual", "--machine", "Hoist")
	for range 3 {
		want := with(cache.Off, folder, "manual", "--machine", "Hoist")
		require.Contains(t, want.err, "held back: look.toml")
		assert.Equal(t, want, with(kept, folder, "manual", "--machine", "Hoist"))
	}
}

func TestTwoShopsAreDoneOnce(t *testing.T) {
	folder, kept := t.TempDir(), t.TempDir()
	for _, shop := range []string{"upper", "lower"} {
		write(t, folder, shop+"/shop.toml", mill)
		write(t, folder, shop+"/look.toml", job)
	}
	for range 2 {
		with(kept, folder, "print")
	}
	want := with(cache.Off, folder, "print")
	assert.Equal(t, want, with(kept, folder, "print"))
	assert.True(t, done(t, kept, folder))
	write(t, folder, "lower/look.toml", wrongJob)
	with(cache.Off, folder, "print")
	assert.Equal(t, with(cache.Off, folder, "print"), with(kept, folder, "print"))
}

func TestACacheThatCannotBeWrittenIsNone(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "look.toml", job)
	write(t, folder, "file", "")
	for _, kept := range []string{filepath.Join(folder, "file"), filepath.Join(folder, "file/below")} {
		with(cache.Off, folder, "print")
		assert.Equal(t, with(cache.Off, folder, "print"), with(kept, folder, "print"))
		assert.False(t, done(t, kept, folder))
	}
}

func TestTheKeyOfARecordHoldsEveryFlag(t *testing.T) {
	by := &caller{strings.NewReader(""), new(bytes.Buffer), new(bytes.Buffer), t.TempDir(), keptIn(cache.Off)}
	var a, b cache.Key
	b[5] = 1
	orders := []order{{}, {Command: "print"}, {Out: "print"}, {Variant: "print"}, {Machine: "print"},
		{Look: compiler.Look{Stock: "a5"}}, {Look: compiler.Look{Units: "a5"}}, {Look: compiler.Look{Distance: "a5"}}, {Look: compiler.Look{Language: "a5"}}, {Look: compiler.Look{Sheet: "a5"}}, {Look: compiler.Look{Pictures: true}}}
	seen := map[cache.Key]bool{}
	for _, o := range orders {
		for _, program := range []cache.Key{a, b} {
			r := &rebuild{by: by}
			key, err := r.keyOf(program, o)
			require.NoError(t, err)
			seen[key] = true
		}
	}
	assert.Len(t, seen, 2*len(orders))
}

// The same edits, losses and damage on two shops, of which one has a cache: nobody sees a difference.
func TestACacheIsNotSeen(t *testing.T) {
	rounds := 60
	if testing.Short() {
		rounds = 15
	}
	plain, cached, kept := filepath.Join(t.TempDir(), "shop"), filepath.Join(t.TempDir(), "shop"), t.TempDir()
	sampleShop(t, plain)
	sampleShop(t, cached)
	random := rand.New(rand.NewPCG(3, 14))
	pick := func(list []string) string { return list[random.IntN(len(list))] }
	both := func(name, text string) { write(t, plain, name, text); write(t, cached, name, text) }
	texts := []string{"chipper-knife-turn.toml", "log-deck-gearbox-oil.toml", "log-deck-bearing-grease.toml", "machines/chipper.toml", "shop/cautions.toml", "shop.toml", "second/chipper-knife-turn.toml"}
	originals := tree(t, plain)
	commands := []string{"print", "print", "print", "print", "print", "print --stock a4", "print --units inch --svg", "print --variant nine-metre", "print log-deck-gearbox-oil.toml", "print --out cards", "phone", "manual --machine chipper", "manual --out books"}
	command := "print"
	found := 0
	for round := range rounds {
		what := random.IntN(16)
		switch what {
		case 0, 1, 2, 3: // nothing
		case 4:
			name := pick(texts)
			both(name, originals[name]+fmt.Sprintf("# %d\n", round))
		case 5:
			name := pick(texts[:3])
			both(name, strings.Replace(originals[name], "hands-on = \"", "hands-on = \"x", 1))
		case 6:
			name := pick(texts[:3])
			both(name, strings.Replace(originals[name], "revision = \"", "revision = \"Z", 1))
		case 7:
			name := pick(texts)
			both(name, originals[name])
		case 8: // a file that a pattern takes in
			if random.IntN(2) == 0 {
				both("shop/more.toml", libraries)
			} else {
				os.Remove(filepath.Join(plain, "shop/more.toml"))
				os.Remove(filepath.Join(cached, "shop/more.toml"))
			}
		case 9:
			both("pictures/chipper-knife.jpg", originals[filepath.FromSlash("pictures/chipper-knife.jpg")]+pick([]string{"", "x"}))
		case 10: // outputs that are lost or damaged
			outs, _ := filepath.Glob(filepath.Join(plain, "out/*"))
			if len(outs) > 0 {
				name, cut := filepath.Base(pick(outs)), random.IntN(3)
				for _, folder := range []string{plain, cached} {
					path := filepath.Join(folder, "out", name)
					switch info, err := os.Stat(path); {
					case err != nil || info.Size() == 0:
					case cut == 0:
						os.Remove(path)
					case cut == 1:
						spoil(t, path)
					default:
						require.NoError(t, os.Truncate(path, info.Size()/2))
					}
				}
			}
		case 11: // a card of earlier days
			both("out/"+pick([]string{"chipper-knife-turn.html", "log-deck-gearbox-oil-nine-metre.pdf", "other.pdf"}), "old")
		case 12: // entries of the cache that are lost or damaged
			for name := range tree(t, kept) {
				if path := filepath.Join(kept, name); random.IntN(2) == 0 {
					spoil(t, path)
				} else {
					require.NoError(t, os.Remove(path))
				}
			}
		case 13:
			for _, folder := range []string{plain, cached} {
				require.NoError(t, os.RemoveAll(filepath.Join(folder, "out")))
			}
		case 14:
			command = pick(commands)
		case 15:
			settle()
		}
		if done(t, kept, cached) {
			found++
		}
		args := strings.Fields(command)
		want, got := with(cache.Off, plain, args...), with(kept, cached, args...)
		require.Equal(t, want, got, "round %d: %s after %d", round, command, what)
		a, b := tree(t, plain), tree(t, cached)
		for name := range a {
			require.True(t, a[name] == b[name], "round %d: %s differs", round, name)
		}
		require.Equal(t, len(a), len(b), "round %d", round)
	}
	assert.Greater(t, found, rounds/10, "the cache was of use")
	t.Logf("%d of %d rounds found all there", found, rounds)
}

func TestTwoBuildsAtOnceDoNotMeet(t *testing.T) {
	path, err := os.Executable()
	require.NoError(t, err)
	folder, kept := t.TempDir(), t.TempDir()
	write(t, folder, "look.toml", job)
	orders := [][]string{{"print"}, {"print", "--units", "inch", "--language", "en"}, {"print", "--units", "metric", "--language", "de"}, {"print"}}
	for range 3 {
		require.NoError(t, os.RemoveAll(filepath.Join(folder, "out")))
		var hands sync.WaitGroup
		for _, args := range orders {
			hands.Go(func() {
				for range 3 {
					build := exec.Cmd{Path: path, Args: append([]string{"benchleaf"}, args...), Dir: folder, Env: append(os.Environ(), cache.Variable+"="+kept)}
					said, err := build.CombinedOutput()
					assert.NoError(t, err, string(said))
				}
			})
		}
		hands.Wait()
		for range 2 { // whoever comes last has its own
			for _, args := range orders {
				with(kept, folder, args...)
				text, err := os.ReadFile(filepath.Join(folder, "out/look.pdf"))
				require.NoError(t, err)
				require.Equal(t, statusClean, with(cache.Off, folder, append(slices.Clip(args), "--out", "want")...).status)
				want, err := os.ReadFile(filepath.Join(folder, "want/look.pdf"))
				require.NoError(t, err)
				assert.True(t, bytes.Equal(want, text), "%v", args)
			}
		}
	}
}

// Another program with the same cache finds none of its records, and the first one finds them again.
func TestAnotherProgramHasItsOwnRecords(t *testing.T) {
	path, err := os.Executable()
	require.NoError(t, err)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	programs, kept, folder := t.TempDir(), t.TempDir(), t.TempDir()
	place := filepath.Join(programs, "benchleaf")
	if runtime.GOOS == "windows" {
		place += ".exe"
	}
	write(t, folder, "look.toml", job)
	build := func(more string) int {
		t.Helper()
		require.NoError(t, os.WriteFile(place+"-next", append(slices.Clip(text), more...), 0o777))
		require.NoError(t, os.Rename(place+"-next", place))
		program := exec.Command(place, "print")
		program.Dir, program.Env = folder, append(os.Environ(), cache.Variable+"="+kept)
		said, err := program.CombinedOutput()
		if err != nil && runtime.GOOS != "linux" {
			t.Skip("a program with something behind it does not run here")
		}
		require.NoError(t, err, string(said))
		return len(tree(t, kept))
	}
	settle()
	first := build("")
	settle()
	again := build("") // the digest of the program may be kept only now
	second := build("another")
	assert.GreaterOrEqual(t, second, again+2, "its own uses and its own record")
	assert.LessOrEqual(t, again, first+1)
	assert.LessOrEqual(t, build(""), second+1, "the first one is known by what it is, not by its place")
}
