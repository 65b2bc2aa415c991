package main

import (
	"bufio"
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

// A test that needs another program runs its own again, as a writer into a book.
const writerEnv = "BENCHLEAF_TEST_WRITER"

func init() {
	if folder, is := os.LookupEnv(writerEnv); is {
		writer(folder, os.Args[1], os.Args[2], os.Args[3])
		os.Exit(0)
	}
}

// writer writes entries, some at a time, and tells of each number when it is safe.
func writer(folder, who, many, most string) {
	count, _ := strconv.Atoi(many)
	atOnce, _ := strconv.Atoi(most)
	fmt.Println("ready")
	for told := 0; told < count; {
		var entries []compiler.Entry
		for len(entries) < 1+told%atOnce && told+len(entries) < count {
			entries = append(entries, anEntry(who, told+len(entries)))
		}
		done, err := appendEntries(folder, folder, entries)
		if err != nil {
			fmt.Println(err)
			os.Exit(1)
		}
		for i, number := range done.numbers {
			fmt.Printf("%d %s %d\n", number, who, told+i)
		}
		told += len(done.numbers)
	}
}

func anEntry(who string, count int) compiler.Entry {
	return compiler.Entry{Unit: "deck-2", Procedure: "deck-chain", Date: "2026-11-27", Who: who, Meter: strconv.Itoa(count), Done: []int{1, 2, 3},
		Remarks: "The chain is \"worn\".\n\n[[entry]]\n# end of entry 1\nOrder one." + strings.Repeat(" Soon.", count%50)}
}

func startWriter(t *testing.T, folder, who string, many, atOnce int) (*exec.Cmd, *bufio.Scanner) {
	program, err := os.Executable()
	require.NoError(t, err)
	child := &exec.Cmd{Path: program, Args: []string{program, who, strconv.Itoa(many), strconv.Itoa(atOnce)}, Env: append(os.Environ(), writerEnv+"="+folder)}
	out, err := child.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, child.Start())
	return child, bufio.NewScanner(out)
}

// asTold is an acknowledged entry: by whom, and which of theirs.
func asTold(e compiler.Entry) string { return fmt.Sprintf("%d %s %s", e.Number, e.Who, e.Meter) }

// readBook reads what is whole of a book.
func readBook(t *testing.T, folder string) (text []byte, entries []string) {
	text, err := os.ReadFile(filepath.Join(folder, compiler.Bookfile))
	if os.IsNotExist(err) {
		return nil, nil
	}
	require.NoError(t, err)
	whole, err := compiler.TornBook(bytes.NewReader(text))
	require.NoError(t, err)
	text = text[:whole]
	require.NoError(t, compiler.ScanBook(bytes.NewReader(text), func(e compiler.Entry, _ int) error {
		require.Equal(t, len(entries)+1, e.Number)
		entries = append(entries, asTold(e))
		return nil
	}), "%s", text)
	return text, entries
}

// Whenever a writer is killed, every entry it told of is in the book, once, and nothing
// above is changed. The book of a machine that lost its power is made by hand: a kill
// leaves no write half done.
func TestAKilledWriterLosesNothing(t *testing.T) {
	rounds := 1000
	if testing.Short() || raced {
		rounds = 60
	}
	random := rand.New(rand.NewPCG(1, uint64(time.Now().UnixNano())))
	var folder, torn string
	var before []byte
	var acknowledged []string
	cuts := 0
	for round := range rounds {
		if round%25 == 0 {
			folder, torn, before, acknowledged = t.TempDir(), "", nil, nil
		}
		child, lines := startWriter(t, folder, fmt.Sprint("round-", round), 1<<30, 3)
		if random.IntN(20) > 0 {
			require.True(t, lines.Scan())
			require.Equal(t, "ready", lines.Text())
			time.Sleep(time.Duration(random.IntN(6000)) * time.Microsecond)
		}
		require.NoError(t, child.Process.Kill())
		for lines.Scan() {
			if lines.Text() != "ready" {
				acknowledged = append(acknowledged, lines.Text())
			}
		}
		require.Error(t, child.Wait(), "it ended by itself: %v", acknowledged)

		text, entries := readBook(t, folder)
		require.True(t, bytes.HasPrefix(text, before), "what stood in the book was changed")
		has := map[string]int{}
		for _, entry := range entries {
			has[entry]++
		}
		for _, entry := range acknowledged {
			require.Equal(t, 1, has[entry], "%s, round %d", entry, round)
		}
		aside, err := os.ReadFile(filepath.Join(folder, bookTorn))
		require.True(t, err == nil || os.IsNotExist(err))
		if len(text) > len(before) {
			require.Contains(t, string(aside), torn, "what was torn is nowhere")
			torn = ""
		}
		if before = text; len(text) > 0 && torn == "" && random.IntN(4) == 0 {
			next := anEntry("nobody", round)
			next.Number = len(entries) + 1
			tail := next.Text()
			torn = string(tail[:2+random.IntN(len(tail)-3)]) + strings.Repeat("\x00", random.IntN(2)*random.IntN(5000))
			require.NoError(t, os.WriteFile(filepath.Join(folder, compiler.Bookfile), append(bytes.Clone(text), torn...), 0o666))
			torn = strings.TrimPrefix(torn, "\n")
			cuts++
		}
	}
	t.Logf("%d kills, %d of them with a torn end; %d entries acknowledged in the last book", rounds, cuts, len(acknowledged))
}

func TestTwoWritersLoseNothing(t *testing.T) {
	each := 5000
	if testing.Short() || raced {
		each = 300
	}
	folder := t.TempDir()
	acknowledged := map[string]bool{}
	var children []*exec.Cmd
	var outs []*bufio.Scanner
	for _, who := range []string{"R. A.", "M. Ö."} {
		child, lines := startWriter(t, folder, who, each, 15)
		children, outs = append(children, child), append(outs, lines)
	}
	all := make(chan string)
	for _, lines := range outs {
		go func() {
			for lines.Scan() {
				all <- lines.Text()
			}
			all <- ""
		}()
	}
	for open := len(outs); open > 0; {
		switch line := <-all; line {
		case "":
			open--
		case "ready":
		default:
			acknowledged[line] = true
		}
	}
	for _, child := range children {
		require.NoError(t, child.Wait())
	}
	_, entries := readBook(t, folder)
	require.Len(t, entries, 2*each)
	require.Len(t, acknowledged, 2*each)
	turns := 0
	for i, entry := range entries {
		require.True(t, acknowledged[entry], entry)
		if i > 0 && strings.Contains(entry, "R. A.") != strings.Contains(entries[i-1], "R. A.") {
			turns++
		}
	}
	t.Logf("%d entries, the writers took turns %d times", len(entries), turns)
}

func TestATornEndIsPutAside(t *testing.T) {
	folder := t.TempDir()
	path, aside := filepath.Join(folder, compiler.Bookfile), filepath.Join(folder, bookTorn)
	_, err := appendEntries(folder, folder, []compiler.Entry{anEntry("R. A.", 1), anEntry("R. A.", 2)})
	require.NoError(t, err)
	whole, _ := readBook(t, folder)
	last := anEntry("M. Ö.", 3)
	last.Number = 3
	text := last.Text()
	for cut := range len(text) + 1 {
		write(t, folder, compiler.Bookfile, string(whole)+string(text[:cut]))
		require.NoError(t, os.RemoveAll(aside))
		done, err := appendEntries(folder, folder, []compiler.Entry{anEntry("K. T.", 4)})
		require.NoError(t, err)
		_, entries := readBook(t, folder)
		now, err := os.ReadFile(path)
		require.NoError(t, err)
		require.True(t, bytes.HasPrefix(now, whole))
		if cut >= len(text)-1 { // nothing is missing but the end of the last line
			require.Equal(t, []string{"1 R. A. 1", "2 R. A. 2", "3 M. Ö. 3", "4 K. T. 4"}, entries)
			require.NoFileExists(t, aside)
			continue
		}
		require.Equal(t, []string{"1 R. A. 1", "2 R. A. 2", "3 K. T. 4"}, entries, "%q", text[:cut])
		require.Equal(t, []int{3}, done.numbers)
		if cut > 1 {
			put, err := os.ReadFile(aside)
			require.NoError(t, err)
			require.Equal(t, cut, done.torn)
			require.Equal(t, fmt.Sprintf("# %d bytes, torn in writing from the end of service-book.toml:\n%s\n", cut, text[:cut]), string(put))
		}
	}
	for _, cut := range []int{0, 1, len(compiler.BookHead) - 1} {
		write(t, folder, compiler.Bookfile, compiler.BookHead[:cut])
		_, err := appendEntries(folder, folder, []compiler.Entry{anEntry("R. A.", 1)})
		require.NoError(t, err)
		now, _ := readBook(t, folder)
		require.True(t, strings.HasPrefix(string(now), compiler.BookHead+"\n# entry 1\n"))
	}
}

// The number comes after every other, however the book was changed by hand.
func TestTheNextNumber(t *testing.T) {
	numbered := func(from, to int) (out string) {
		for n := from; n <= to; n++ {
			e := anEntry("R. A.", n)
			e.Number = n
			out += string(e.Text())
		}
		return out
	}
	long := numbered(1, 200)
	require.Greater(t, len(long), 2*bookTail)
	for name, c := range map[string]struct {
		text string
		next int
	}{
		"none":                  {"", 1},
		"a head":                {compiler.BookHead, 1},
		"one by hand":           {"[[entry]]\nwho = \"B.\"\n", 2},
		"one by hand, numbered": {"[[entry]]\nnumber = 0x10\n", 17},
		"long":                  {long, 201},
		"long, then by hand":    {long + "\n[[entry]]\nwho = \"B.\"\n", 202},
		"long, then numbered":   {long + "\n[[entry]]\nnumber = 300 # mine\n", 301},
		"no line end":           {long + "\n[[entry]]\nnumber = 300", 301},
		"a fault":               {long + "\n[[entry]]\nnumber = 300\nwho = B.\n", 301},
		"two branches merged":   {long + numbered(150, 160), 201},
		"merged, then went on":  {long + numbered(150, 160) + numbered(201, 201), 202},
		"Windows":               {strings.ReplaceAll(long, "\n", "\r\n"), 201},
		"torn":                  {long + "\n# entry 201\n[[entry]]\nnumber = 201\n", 201},
	} {
		folder := t.TempDir()
		write(t, folder, compiler.Bookfile, c.text)
		done, err := appendEntries(folder, folder, []compiler.Entry{anEntry("R. A.", 0), anEntry("R. A.", 1)})
		require.NoError(t, err, name)
		assert.Equal(t, []int{c.next, c.next + 1}, done.numbers, name)
		text, err := os.ReadFile(filepath.Join(folder, compiler.Bookfile))
		require.NoError(t, err)
		whole, err := compiler.TornBook(bytes.NewReader(text))
		require.NoError(t, err)
		assert.Equal(t, int64(len(text)), whole, name)
		if name != "torn" {
			assert.True(t, strings.HasPrefix(string(text), c.text), name)
		}
	}
}

func TestWhereNoBookCanBeWritten(t *testing.T) {
	one := []compiler.Entry{anEntry("R. A.", 1)}
	fails := func(folder, says string) {
		t.Helper()
		done, err := appendEntries(folder, "shop", one)
		require.ErrorContains(t, err, filepath.FromSlash(says))
		assert.Empty(t, done.numbers)
	}
	folder := t.TempDir()
	require.NoError(t, os.MkdirAll(filepath.Join(folder, compiler.Bookfile), 0o777))
	fails(folder, "shop/service-book.toml is a folder")
	fails(filepath.Join(folder, "nowhere"), "shop/service-book.toml cannot be opened")

	folder = t.TempDir()
	_, err := appendEntries(folder, "shop", []compiler.Entry{{Date: "yesterday"}})
	require.ErrorContains(t, err, "an entry that nobody could read again is not written")
	left, err := os.ReadDir(folder)
	require.NoError(t, err)
	assert.Empty(t, left)

	write(t, folder, compiler.Bookfile, "[[entry]]\nnumber = "+strconv.Itoa(int(^uint(0)>>1))+"\n")
	fails(folder, "none comes after it")

	require.NoError(t, os.MkdirAll(filepath.Join(folder, bookTorn), 0o777))
	write(t, folder, compiler.Bookfile, "\n# entry 1\n[[entry]]\n")
	fails(folder, "cannot be put aside into shop/service-book.torn: it is not a plain file")
	text, err := os.ReadFile(filepath.Join(folder, compiler.Bookfile))
	require.NoError(t, err)
	assert.Equal(t, "\n# entry 1\n[[entry]]\n", string(text))
}

func TestABookThatIsALink(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("links are of another kind there")
	}
	away, folder := t.TempDir(), t.TempDir()
	write(t, away, "book.toml", "# theirs\n")
	link := filepath.Join(folder, compiler.Bookfile)
	require.NoError(t, os.Symlink(filepath.Join(away, "book.toml"), link))
	one := []compiler.Entry{anEntry("R. A.", 1)}
	_, err := appendEntries(folder, "shop", one)
	require.ErrorContains(t, err, "which is outside the shop folder; nothing is written there")

	require.NoError(t, os.Remove(link))
	require.NoError(t, os.Symlink("nothing.toml", link))
	_, err = appendEntries(folder, "shop", one)
	require.ErrorContains(t, err, "is a link to nothing")

	write(t, folder, "books/deck.toml", compiler.BookHead)
	require.NoError(t, os.Remove(link))
	require.NoError(t, os.Symlink("books/deck.toml", link))
	_, err = appendEntries(folder, "shop", one)
	require.NoError(t, err)
	assert.FileExists(t, filepath.Join(folder, "books", bookLock), "who comes by another name waits for the same lock")
	info, err := os.Lstat(link)
	require.NoError(t, err)
	assert.NotZero(t, info.Mode()&os.ModeSymlink)
	text, _ := readBook(t, folder)
	assert.Contains(t, string(text), "# entry 1\n")
}

func TestAFolderThatOnlyLetsItselfBeRead(t *testing.T) {
	if runtime.GOOS == "windows" || os.Geteuid() == 0 {
		t.Skip("rights do not hold here")
	}
	folder := t.TempDir()
	require.NoError(t, os.Chmod(folder, 0o555))
	defer os.Chmod(folder, 0o777)
	_, err := appendEntries(folder, "shop", []compiler.Entry{anEntry("R. A.", 1)})
	require.ErrorContains(t, err, "cannot be locked: permission denied; its folder must let itself be written into")

	require.NoError(t, os.Chmod(folder, 0o777))
	write(t, folder, compiler.Bookfile, compiler.BookHead)
	require.NoError(t, os.Chmod(filepath.Join(folder, compiler.Bookfile), 0o444))
	_, err = appendEntries(folder, "shop", []compiler.Entry{anEntry("R. A.", 1)})
	require.ErrorContains(t, err, "cannot be opened: permission denied")
}

// A disk that is full takes nothing, and a book on it stays as it was.
func TestAFullDisk(t *testing.T) {
	folder := t.TempDir()
	if out, err := exec.Command("mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", folder).CombinedOutput(); err != nil {
		t.Skipf("no small disk can be mounted: %s", bytes.TrimSpace(out))
	}
	defer func() { assert.NoError(t, exec.Command("umount", folder).Run()) }()
	path := filepath.Join(folder, compiler.Bookfile)
	for n := range 1000 {
		before, _ := os.ReadFile(path) // none at first
		var err error
		if _, err = appendEntries(folder, "shop", []compiler.Entry{anEntry("R. A.", n), anEntry("R. A.", n)}); err == nil {
			continue
		}
		require.ErrorContains(t, err, "no space left on device; it is as it was")
		after, fault := os.ReadFile(path)
		require.NoError(t, fault)
		require.Equal(t, string(before), string(after))
		_, entries := readBook(t, folder)
		require.Len(t, entries, 2*n)
		break
	}
	require.NoError(t, os.Remove(path))
	filler, err := os.Create(filepath.Join(folder, "filler"))
	require.NoError(t, err)
	_, err = io.Copy(filler, strings.NewReader(strings.Repeat("x", 1<<20)))
	require.Error(t, err)
	require.NoError(t, filler.Close())
	_, err = appendEntries(folder, "shop", []compiler.Entry{anEntry("R. A.", 1)})
	require.ErrorContains(t, err, "no space left on device")
	assert.NoFileExists(t, path, "a book that could not be begun is not there")
}
