package main

import (
	"bytes"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
)

// shell runs a line with the real command as "benchleaf", in a folder.
func shell(t *testing.T, folder, line string) said {
	t.Helper()
	if _, err := exec.LookPath("sh"); err != nil {
		t.Skip("sh is not installed")
	}
	program, err := os.Executable()
	require.NoError(t, err)
	names := t.TempDir()
	require.NoError(t, os.Symlink(program, filepath.Join(names, "benchleaf")))
	var out, told bytes.Buffer
	run := exec.Command("sh", "-c", line)
	run.Dir, run.Stdout, run.Stderr = folder, &out, &told
	run.Env = append(os.Environ(), "PATH="+names+":"+os.Getenv("PATH"))
	err = run.Run()
	var ended *exec.ExitError
	if err != nil {
		require.ErrorAs(t, err, &ended)
	}
	return said{out.String(), told.String(), run.ProcessState.ExitCode()}
}

// onDisk are the files of a folder with what stands in them; what is in the making is a fault.
func onDisk(t *testing.T, folder string) map[string]string {
	t.Helper()
	out := lie(t, folder)
	for path := range out {
		assert.False(t, strings.HasPrefix(filepath.Base(path), ".benchleaf"), "%s is left behind", path)
	}
	delete(out, filepath.Join(folder, bookLock)) // is made once, and holds nothing
	return out
}

// faulty is a shop with what each command takes, and with earlier outputs.
func faulty(t *testing.T) string {
	folder := t.TempDir()
	write(t, folder, "look.toml", job)
	write(t, folder, "rough.toml", strings.Replace(strings.Replace(job, "chain oiler", "guard", 1), "title = ", "title   =   ", 1))
	write(t, folder, "notes.txt", "Drain the gearbox. Tighten the drain plug to 45 Nm.\n")
	for _, name := range []string{"look.pdf", "look.html", "pick-list.pdf", "manual.pdf", "history.csv"} {
		write(t, folder, "out/"+name, "an earlier build")
	}
	write(t, folder, compiler.Bookfile, compiler.BookHead)
	_, err := appendEntries(folder, folder, []compiler.Entry{{Date: "2026-02-15", Remarks: "The deck is new.", Procedure: "look", Done: []int{1}}})
	require.NoError(t, err)
	return folder
}

// everyWriter are the commands that write files.
var everyWriter = []string{"print look.toml", "phone look.toml", "manual look.toml", "pick --out out look.toml", "approve look.toml", "record look.toml", "chart look.toml", "gauge look.toml", "contact look.toml",
	"due --calendar due.ics", "due --print", "history", "join --on 2026-03-01 look.toml rough.toml", "join --keep --on 2026-03-01 look.toml rough.toml", "draft notes.txt --out draft.toml", "draft notes.txt --out look.toml --over",
	"new fresh.toml", "tidy rough.toml", "lint --fix wrong.toml", "log --remarks Oiled --as-it-is"}

// A disk that takes nothing more is told in one line, and every file is as it was.
func TestAFullDiskChangesNothing(t *testing.T) {
	told := 0
	for _, line := range everyWriter {
		folder := faulty(t)
		if strings.Contains(line, "wrong.toml") {
			write(t, folder, "wrong.toml", strings.Replace(strings.Replace(job, "chain oiler", "frame", 1), "benchleaf = 1\n", "", 1))
		}
		before := onDisk(t, folder)
		got := shell(t, folder, "ulimit -f 0; benchleaf "+line)
		after := onDisk(t, folder)
		assert.Equal(t, before, after, line)
		if assert.NotZero(t, got.status, "%s: %s%s", line, got.out, got.err) && assert.Contains(t, got.err, "file too large", line) {
			assert.Equal(t, statusFailed, got.status, line)
			assert.Equal(t, 1, strings.Count(got.err, "benchleaf: "), "%s: %s", line, got.err)
			told++
		}
	}
	assert.Equal(t, len(everyWriter), told)
}

// The same with a real disk that is full: where one can be mounted.
func TestASmallDiskChangesNothing(t *testing.T) {
	folder := faulty(t)
	small := filepath.Join(folder, "small")
	require.NoError(t, os.Mkdir(small, 0o777))
	if out, err := exec.Command("mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", small).CombinedOutput(); err != nil {
		t.Skipf("no small disk can be mounted: %s", bytes.TrimSpace(out))
	}
	defer func() { assert.NoError(t, exec.Command("umount", small).Run()) }()
	for name, text := range map[string]string{"look.toml": job, "shop.toml": "benchleaf = 1\n", "out/look.pdf": "an earlier build"} {
		write(t, small, name, text)
	}
	require.Equal(t, statusClean, shell(t, small, "benchleaf log --remarks One --as-it-is").status)
	require.Equal(t, statusFindings, shell(t, small, "dd if=/dev/zero of=filler bs=1k 2>/dev/null").status)
	before := onDisk(t, small)
	for _, line := range []string{"print", "phone", "draft ../notes.txt --out draft.toml", "tidy", "log --as-it-is --remarks " + strings.Repeat("long", 2000)} {
		got := shell(t, small, "benchleaf "+line)
		if line != "tidy" { // there is nothing to lay out
			assert.Equal(t, statusFailed, got.status, "%s: %s%s", line, got.out, got.err)
			assert.Contains(t, got.err, "no space left on device", line)
		}
		assert.Equal(t, before, onDisk(t, small), line)
	}
}

// What stands in the way of the folder of what is printed is told with its name.
func TestWhatIsNoFolderToPrintInto(t *testing.T) {
	for name, make := range map[string]func(folder, out string) error{
		"a file":                func(_, out string) error { return os.WriteFile(out, []byte("notes"), 0o666) },
		"a link to nothing":     func(_, out string) error { return os.Symlink("nowhere", out) },
		"a link in a circle":    func(_, out string) error { return os.Symlink("out", out) },
		"a link to a file":      func(_, out string) error { return os.Symlink("look.toml", out) },
		"a pipe":                func(_, out string) error { return syscall.Mkfifo(out, 0o666) },
		"below a file":          func(_, out string) error { return os.Symlink("look.toml/out", out) },
		"a folder that is read": func(_, out string) error { return os.Mkdir(out, 0o555) },
	} {
		if name == "a folder that is read" && os.Geteuid() == 0 {
			t.Logf("%s: rights do not hold for the administrator", name)
			continue
		}
		folder := t.TempDir()
		write(t, folder, "look.toml", job)
		require.NoError(t, make(folder, filepath.Join(folder, "out")), name)
		before, err := os.ReadDir(folder)
		require.NoError(t, err)
		got := shell(t, folder, "timeout 20 benchleaf print")
		assert.Equal(t, statusFailed, got.status, "%s: %s", name, got.err)
		assert.Regexp(t, `^benchleaf: .*\bout\b.* cannot be (made|written|followed): .*\n$`, got.err, name)
		after, err := os.ReadDir(folder)
		require.NoError(t, err)
		assert.Len(t, after, len(before), name)
	}
}

// What cannot be read is told, and nothing waits for it or breaks at it.
func TestWhatCannotBeReadIsTold(t *testing.T) {
	for name, make := range map[string]func(at string) error{
		"a link to nothing":  func(at string) error { return os.Symlink("nowhere.toml", at) },
		"a link in a circle": func(at string) error { return os.Symlink("bad.toml", at) },
		"a pipe":             func(at string) error { return syscall.Mkfifo(at, 0o666) },
		"a device":           func(at string) error { return os.Symlink("/dev/zero", at) },
		"no rights":          func(at string) error { return os.WriteFile(at, []byte(job), 0) },
	} {
		if name == "no rights" && os.Geteuid() == 0 {
			t.Logf("%s: rights do not hold for the administrator", name)
			continue
		}
		folder := faulty(t)
		require.NoError(t, make(filepath.Join(folder, "bad.toml")), name)
		for _, line := range []string{"lint", "lint bad.toml", "print", "tidy bad.toml", "log --shop out bad.toml", "draft bad.toml", "draft notes.txt --out bad.toml --over", "due", "store", "join . --on 2026-03-01"} {
			if line == "log --shop out bad.toml" {
				write(t, folder, "out/shop.toml", "benchleaf = 1\n")
			}
			got := shell(t, folder, "timeout 20 benchleaf "+line)
			assert.Equal(t, statusFailed, got.status, "%s, %s: %s%s", name, line, got.out, got.err)
			assert.Contains(t, got.err, "bad.toml", "%s, %s", name, line)
			assert.NotContains(t, got.err, "fault of benchleaf", "%s, %s", name, line)
		}
		assert.NoFileExists(t, filepath.Join(folder, "nowhere.toml"))
	}
}

// A file that goes between the look into its folder and its reading is told, and the next run is well.
func TestAFileThatGoesMeanwhile(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "look.toml", job)
	write(t, folder, "gone.toml", strings.Replace(job, "chain oiler", "guard", 1))
	found, _, err := group(folder, []string{"."})
	require.NoError(t, err)
	require.NoError(t, os.Remove(filepath.Join(folder, "gone.toml")))
	faults := found[0].read(compiler.Uses)
	require.Len(t, faults, 1)
	assert.EqualError(t, faults[0], "gone.toml cannot be read: no such file or directory")

	stop, stopped := make(chan struct{}), make(chan struct{})
	go func() { // somebody else is at it
		defer close(stopped)
		here, there := filepath.Join(folder, "gone.toml"), filepath.Join(folder, "gone.txt")
		_ = os.WriteFile(there, []byte(strings.Replace(job, "chain oiler", "guard", 1)), 0o666)
		for {
			select {
			case <-stop:
				return
			default:
				_ = os.Rename(there, here)
				_ = os.Rename(here, there)
			}
		}
	}()
	missed := 0
	for range 30 {
		got := in(folder, "print")
		if got.status != statusClean {
			missed++
			assert.Equal(t, statusFailed, got.status)
			assert.Equal(t, "benchleaf: gone.toml cannot be read: no such file or directory\n", got.err)
		}
	}
	close(stop)
	<-stopped
	t.Logf("of 30 builds %d missed the file", missed)
}

// Who reads the answer goes: the command ends, and the files are whole.
func TestWhoReadsTheAnswerGoes(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "look.toml", job)
	require.Equal(t, statusClean, in(folder, "print", "--out", "whole").status)
	program, err := os.Executable()
	require.NoError(t, err)
	for _, line := range []string{"reference", "lint", "print", "lint --json", "model", "due --json", "why", "draft -"} {
		near, far, err := os.Pipe()
		require.NoError(t, err)
		require.NoError(t, near.Close())
		var told bytes.Buffer
		run := exec.Cmd{Path: program, Args: append([]string{"benchleaf"}, strings.Fields(line)...), Dir: folder, Stdin: strings.NewReader("Drain it."), Stdout: far, Stderr: &told}
		require.Error(t, run.Run(), line)
		far.Close()
		assert.True(t, run.ProcessState.Sys().(syscall.WaitStatus).Signal() == syscall.SIGPIPE || strings.HasPrefix(told.String(), "benchleaf: the answer could not be written"), "%s: %v %s", line, run.ProcessState, told.String())
	}
	for _, name := range []string{"look.pdf", "pick-list.pdf", "pick-list.csv"} {
		want, err := os.ReadFile(filepath.Join(folder, "whole", name))
		require.NoError(t, err)
		text, err := os.ReadFile(filepath.Join(folder, "out", name))
		require.NoError(t, err)
		assert.True(t, bytes.Equal(want, text), name)
	}
	for _, line := range []string{"reference", "lint", "lint --json", "model", "due", "print", "tidy --diff", "log --form --procedure look"} {
		got := shell(t, folder, "benchleaf "+line+" >/dev/full")
		if line == "tidy --diff" { // there is nothing to tell
			continue
		}
		assert.Equal(t, statusFailed, got.status, "%s: %s", line, got.err)
		assert.Equal(t, "benchleaf: the answer could not be written: no space left on device\n", got.err, line)
	}
	onDisk(t, folder)
}

// What comes slowly is waited for, and a command that is stopped now and then goes on: it writes the same.
func TestASlowDisk(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "look.toml", job)
	require.Equal(t, statusClean, in(folder, "print", "--out", "whole").status)
	program, err := os.Executable()
	require.NoError(t, err)
	var out bytes.Buffer
	slow, feed := io.Pipe()
	go func() {
		for i := 0; i < len(job); i += 40 {
			time.Sleep(5 * time.Millisecond)
			_, _ = io.WriteString(feed, job[i:min(len(job), i+40)])
		}
		feed.Close()
	}()
	tidy := exec.Cmd{Path: program, Args: []string{"benchleaf", "tidy", "-"}, Dir: folder, Stdin: slow, Stdout: &out}
	require.NoError(t, tidy.Run())
	assert.Equal(t, job, out.String())

	random := rand.New(rand.NewPCG(3, 4))
	for round := range 5 {
		build := exec.Cmd{Path: program, Args: []string{"benchleaf", "print", "--out", fmt.Sprint("slow-", round)}, Dir: folder}
		require.NoError(t, build.Start())
		ended := make(chan error, 1)
		go func() { ended <- build.Wait() }()
		for going := true; going; {
			_ = build.Process.Signal(syscall.SIGSTOP) // it may have ended
			time.Sleep(time.Duration(random.IntN(10)) * time.Millisecond)
			_ = build.Process.Signal(syscall.SIGCONT)
			select {
			case err := <-ended:
				require.NoError(t, err)
				going = false
			case <-time.After(time.Duration(1+random.IntN(10)) * time.Millisecond):
			}
		}
		for name, text := range onDisk(t, filepath.Join(folder, "whole")) {
			now, err := os.ReadFile(filepath.Join(folder, fmt.Sprint("slow-", round), filepath.Base(name)))
			require.NoError(t, err)
			assert.Equal(t, text, string(now), name)
		}
	}
}
