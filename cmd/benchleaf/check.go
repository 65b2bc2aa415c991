package main

import (
	"fmt"
	"io"
	"strings"
	"time"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
)

// check compiles a shop.
func (s *shop) check() *compiler.Result {
	return compiler.Compile(s.input())
}

// inspect checks a shop of which cards are printed one after the other, or nothing is.
func (s *shop) inspect() *compiler.Result {
	in := s.input()
	in.Lean = true
	return compiler.Compile(in)
}

func (s *shop) input() compiler.Input {
	return compiler.Input{Files: s.files, Targets: s.targets, Whole: s.whole, Pictures: s.pictures, Today: today()}
}

// draw writes findings of a shop to a stream as fits it.
func (by *caller) draw(to io.Writer, s *shop, list []finding.Finding) error {
	style := finding.Style{Width: 100, Path: s.shown}
	if width, yes := terminal(to); yes {
		style.Colour, style.Width = by.env("NO_COLOR") == "", width
	}
	return finding.Draw(to, list, style)
}

// many writes a number of things: "1 card", "3 cards".
func many(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}

// tally counts what a compile looked at and what it found.
type tally struct {
	files, procedures, machines, allowed int
	by                                   [finding.Error + 1]int
}

func (t *tally) add(s *shop, result *compiler.Result) {
	procedures, machines := map[string]bool{}, map[string]bool{}
	for _, job := range result.Jobs {
		procedures[job.Path], machines[job.Machine] = true, true
	}
	t.files += len(s.targets)
	t.procedures += len(procedures)
	t.machines += len(machines)
	t.allowed += len(result.Allowed)
	for _, found := range result.Findings {
		t.by[found.Severity]++
	}
}

// found writes how many findings there are, by severity.
func (t *tally) found() string {
	var parts []string
	for severity := finding.Error; severity >= finding.Note; severity-- {
		if n := t.by[severity]; n > 0 {
			parts = append(parts, many(n, severity.String(), severity.String()+"s"))
		}
	}
	if len(parts) == 0 {
		parts = append(parts, "no findings")
	}
	if t.allowed > 0 {
		parts = append(parts, fmt.Sprintf("%d allowed", t.allowed))
	}
	return strings.Join(parts, ", ")
}

func (t *tally) String() string {
	parts := []string{many(t.files, "file", "files")}
	if t.procedures > 0 {
		parts = append(parts, many(t.procedures, "procedure", "procedures"), many(t.machines, "machine", "machines"))
	}
	return strings.Join(parts, ", ") + ": " + t.found()
}

// today is the day of this computer, such as 2026-05-01.
func today() string { return time.Now().Format(time.DateOnly) }
