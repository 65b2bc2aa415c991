// Benchreport measures benchleaf on this computer and writes the figures as Markdown: what was
// measured, the figure, what it is held against in the same run, and the ratio of both. It runs
// the benchmarks of the project, the command as a whole process, and other programs as far as
// they are installed; it knows nothing of what the files mean.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"syscall"
	"time"
)

func main() {
	until, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if err := run(until, os.Args[1:], os.Stdout, os.Stderr); err != nil {
		if !errors.Is(err, flag.ErrHelp) {
			fmt.Fprintln(os.Stderr, "benchreport:", err)
		}
		os.Exit(1)
	}
}

// bench is what a part of the report measures with.
type bench struct {
	until   context.Context // what is run ends with it
	root    string          // folder of the project
	work    string          // folder for everything that is made, gone at the end
	command string          // the command, built
	quick   bool            // small sizes and few rounds
	most    int             // procedures of the largest shop
	said    io.Writer
	outside *programs
}

// part is a part of the report: rows that are measured together.
type part struct {
	name, title string
	measure     func(*bench) (section, error)
}

var parts = []part{
	{"stages", "The stages of a compile", stages},
	{"due", "What is due", due},
	{"join", "One job out of several", join},
	{"keystroke", "A key in the editor", keystroke},
	{"desk", "A key at the desk", desk},
	{"card", "One card", card},
	{"manual", "A manual", manual},
	{"batch", "A batch of cards", batch},
	{"lint", "Checking many files", lint},
	{"growth-plain", "Growth of a plain shop", func(b *bench) (section, error) { return growth(b, shapes[0]) }},
	{"growth-typical", "Growth of a typical shop", func(b *bench) (section, error) { return growth(b, shapes[1]) }},
	{"rebuild", "Printing again where nothing changed", rebuild},
}

func partNames() string {
	var all []string
	for _, part := range parts {
		all = append(all, part.name)
	}
	return strings.Join(all, ", ")
}

func run(until context.Context, args []string, out, said io.Writer) (err error) {
	flags := flag.NewFlagSet("benchreport", flag.ContinueOnError)
	flags.SetOutput(said)
	file := flags.String("out", "", "write the report into this `file`, and not to standard output")
	only := flags.String("only", "", "measure only the parts whose names this regular `expression` finds: "+partNames())
	quick := flags.Bool("quick", false, "small sizes and few rounds")
	most := flags.Int("most", 10_000, "procedures of the largest shop, `number` from 10 to 10000")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		return fmt.Errorf("%q is asked for, and only flags are; --help tells them", flags.Arg(0))
	}
	if *most < 10 || *most > 10_000 {
		return fmt.Errorf("--most is %d; give a number from 10 to 10000", *most)
	}
	wanted, err := chosen(*only)
	if err != nil {
		return err
	}
	b := &bench{until: until, quick: *quick, most: *most, said: said}
	if b.root, err = projectFolder(); err != nil {
		return err
	}
	if b.work, err = os.MkdirTemp("", "benchreport-"); err != nil {
		return fmt.Errorf("no folder for what is made: %w", err)
	}
	defer func() { err = errors.Join(err, os.RemoveAll(b.work)) }()
	b.outside = &programs{folder: filepath.Join(b.work, "programs")}
	b.command = filepath.Join(b.work, "benchleaf")
	if runtime.GOOS == "windows" {
		b.command += ".exe"
	}
	build := exec.CommandContext(until, "go", "build", "-o", b.command, "./cmd/benchleaf")
	build.Dir = b.root
	if told, err := build.CombinedOutput(); err != nil {
		return fmt.Errorf("the command cannot be built: %w\n%s", err, told)
	}
	r := report{facts: b.facts()}
	var failed []error
	for _, part := range wanted {
		start := time.Now()
		fmt.Fprintf(said, "%s …\n", part.name)
		made, fault := part.measure(b)
		if until.Err() != nil {
			failed = append(failed, fmt.Errorf("ended by hand at %s", part.name))
			break
		}
		if fault != nil {
			failed = append(failed, fmt.Errorf("%s: %w", part.name, fault))
			made.note("failed: " + firstLine(fault.Error()))
		}
		fmt.Fprintf(said, "%s: %s\n", part.name, time.Since(start).Round(time.Second))
		made.title, made.command = part.title, "go run ./cmd/benchreport --only "+part.name
		r.sections = append(r.sections, made)
		if *file != "" { // what is there already is not lost with what comes
			if err := write(*file, out, r.markdown()); err != nil {
				return err
			}
		}
	}
	r.facts = append(r.facts, b.outside.facts()...)
	if load := loadAverage(); load != "" {
		r.facts = append(r.facts, fact{"Load at the end", load})
	}
	if err := write(*file, out, r.markdown()); err != nil {
		return err
	}
	return errors.Join(failed...)
}

// chosen are the parts that an expression finds, all where it is empty.
func chosen(only string) (out []part, err error) {
	pattern, err := regexp.Compile(only)
	if err != nil {
		return nil, fmt.Errorf("--only is no regular expression: %w", err)
	}
	for _, part := range parts {
		if pattern.MatchString(part.name) {
			out = append(out, part)
		}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("--only %q finds none of %s", only, partNames())
	}
	return out, nil
}

// projectFolder is the folder of the project that the report is run in.
func projectFolder() (string, error) {
	told, err := exec.Command("go", "list", "-m", "-f", "{{.Path}}\t{{.Dir}}").Output()
	name, folder, _ := strings.Cut(strings.TrimSpace(string(told)), "\t")
	if err != nil || name != "benchleaf" {
		return "", fmt.Errorf("this is not the folder of benchleaf; run go run ./cmd/benchreport in it")
	}
	return folder, nil
}

// write writes the report into a file, as a whole or not at all, or to where it is shown.
func write(file string, out io.Writer, text string) error {
	if file == "" {
		_, err := io.WriteString(out, text)
		return err
	}
	made, err := os.CreateTemp(filepath.Dir(file), ".benchreport-*")
	if err != nil {
		return fmt.Errorf("the report cannot be written: %w", err)
	}
	_, err = made.WriteString(text)
	err = errors.Join(err, made.Chmod(0o644), made.Close())
	if err == nil {
		err = os.Rename(made.Name(), file)
	}
	if err != nil {
		return errors.Join(fmt.Errorf("the report cannot be written: %w", err), os.Remove(made.Name()))
	}
	return nil
}

func firstLine(text string) string {
	line, _, _ := strings.Cut(strings.TrimSpace(text), "\n")
	return line
}
