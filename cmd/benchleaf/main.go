// Benchleaf checks service procedures written by mechanics and prints them as
// bench cards and pick lists. This is the command; it reads the files and writes
// what comes back, and must not know what either means.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"strings"
	"sync/atomic"

	"benchleaf/cmd/internal/disk"
	"benchleaf/compiler"

	"golang.org/x/term"
)

// The statuses the command ends with.
const (
	statusClean    = 0
	statusFindings = 1
	statusFailed   = 2
)

// caller is all the command knows of the world: who called it, from where, with
// what to read from and write to.
type caller struct {
	in       io.Reader
	out, err io.Writer
	folder   string // working folder
	env      func(name string) string
}

// errFindings ends a command with statusFindings; what is wrong has been said.
var errFindings = errors.New("findings stand against the files")

func main() {
	collectLate()
	folder, err := os.Getwd()
	if err != nil {
		fmt.Fprintln(os.Stderr, "benchleaf: the working folder cannot be read:", err)
		os.Exit(statusFailed)
	}
	os.Exit(run(os.Args[1:], caller{os.Stdin, os.Stdout, os.Stderr, folder, os.Getenv}))
}

// garbage is how much garbage there is to be, in percent of what is in use, before it is
// collected, behind the first collection.
var garbage atomic.Int64

// roof is how much memory is to be taken at most while less is in use, and leastGarbage how much
// garbage there may be in any case, in percent of what is in use.
const (
	roof         = 700 << 20
	leastGarbage = 25
)

// collectLate puts off the first collection of garbage until some 30 MB are in use: most commands
// are over before that. From then on it goes as usual, or as the environment says, and sooner where
// a very large shop comes near the roof.
func collectLate() {
	if os.Getenv("GOGC") != "" {
		return
	}
	const late = 800 // percent of the least heap, 4 MB
	garbage.Store(int64(debug.SetGCPercent(late)))
	afterCollection()
}

// afterCollection says after each collection when the next is to be.
func afterCollection() {
	runtime.AddCleanup(new([64]byte), func(int) {
		used := []metrics.Sample{{Name: "/gc/heap/live:bytes"}}
		metrics.Read(used)
		percent := garbage.Load()
		if live := int64(used[0].Value.Uint64()); live > 0 {
			percent = max(leastGarbage, min(percent, (roof-live)*100/live))
		}
		debug.SetGCPercent(int(percent))
		afterCollection()
	}, 0)
}

// collectSeldom has garbage collected less often, for a command that answers while somebody types:
// a key that a collection falls on takes longest.
func collectSeldom() {
	if os.Getenv("GOGC") == "" {
		garbage.Store(compiler.SessionGarbage)
		debug.SetGCPercent(compiler.SessionGarbage)
	}
}

// run does one command and returns the status to end with.
func run(args []string, by caller) (status int) {
	defer func() {
		if fault := recover(); fault != nil {
			fmt.Fprintf(by.err, "benchleaf: this is a fault of benchleaf, not of your files: %v\nPlease send the files to the people who carry on benchleaf.\n", fault)
			status = statusFailed
		}
	}()
	out := &sticky{to: by.out}
	root := command(&caller{by.in, out, by.err, by.folder, by.env})
	root.SetArgs(append([]string{}, args...))
	root.SetIn(by.in)
	root.SetOut(out)
	root.SetErr(by.err)
	shells(root)
	err := root.Execute()
	if out.fault != nil {
		err = fmt.Errorf("the answer could not be written: %w", disk.Reason(out.fault))
	}
	switch {
	case err == nil:
		return statusClean
	case errors.Is(err, errFindings):
		return statusFindings
	}
	for line := range strings.SplitSeq(strings.TrimRight(err.Error(), "\n"), "\n") {
		if strings.HasPrefix(line, " ") { // goes on from the line above
			fmt.Fprintln(by.err, line)
		} else {
			fmt.Fprintln(by.err, "benchleaf:", line)
		}
	}
	return statusFailed
}

// sticky keeps the first fault of writing, so that a full disk is told.
type sticky struct {
	to    io.Writer
	fault error
}

func (s *sticky) Write(text []byte) (int, error) {
	n, err := s.to.Write(text)
	if err != nil && s.fault == nil {
		s.fault = err
	}
	return n, err
}

// terminal reports whether a stream is a terminal, and how wide it is.
func terminal(stream io.Writer) (width int, yes bool) {
	if c, ok := stream.(*copied); ok {
		stream = c.of
	}
	if s, ok := stream.(*sticky); ok {
		stream = s.to
	}
	file, ok := stream.(*os.File)
	if !ok || !term.IsTerminal(int(file.Fd())) {
		return 0, false
	}
	width, _, err := term.GetSize(int(file.Fd()))
	return width, err == nil
}
