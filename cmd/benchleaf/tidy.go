package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/rogpeppe/go-internal/diff"
	"github.com/spf13/cobra"

	"benchleaf/cmd/internal/disk"
	"benchleaf/compiler"
	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

func tidyCommand(by *caller) *cobra.Command {
	var check, changes bool
	cmd := &cobra.Command{
		Use:   "tidy [PATH…]",
		Short: "Lay files out in the one layout",
		Long: `Tidy lays every .toml file at or below the paths out in one way, this folder when
none is given: spacing, blank lines, quotes, long lists, and amounts in the
spelling of the pages, so that "25Nm" becomes "25 N·m" and "35-40 ft-lb" becomes
"35 to 40 lbf·ft". Order, comments, values and units stay as they are. An amount
that lint has something to say about is left.

With - it reads from standard input and writes to standard output. A file in
which a fault of the syntax stands is left as it is, and the faults are told.

It ends with status 0 when all is tidy, 1 when a fault stands in a file or, with
--check, when a file is not tidy, and 2 when it could not run.`,
		Example: `  benchleaf tidy                       everything in this folder
  benchleaf tidy gearbox-oil.toml      one file
  benchleaf tidy --diff procedures     show what would change, and write nothing
  benchleaf tidy --check               name the files that are not tidy
  benchleaf tidy - < rough.toml        from standard input to standard output`,
		RunE: func(_ *cobra.Command, paths []string) error { return by.tidy(paths, check, changes) },
	}
	cmd.Flags().BoolVar(&check, "check", false, "name the files that are not tidy, and write nothing")
	cmd.Flags().BoolVar(&changes, "diff", false, "show what would change, and write nothing")
	return cmd
}

// untidy is a file that is to be laid out anew.
type untidy struct {
	path, shown string
	read, text  []byte
}

func (by *caller) tidy(paths []string, check, changes bool) error {
	for _, path := range paths {
		if path == "-" && len(paths) > 1 {
			return fmt.Errorf("- is standard input, and no other path goes with it")
		}
	}
	if len(paths) == 1 && paths[0] == "-" {
		return by.tidyInput(check, changes)
	}
	shops, away, err := group(by.folder, paths)
	if err != nil || len(shops) == 0 {
		return errors.Join(told(away), err)
	}
	var list []untidy
	var faults []error
	files, faulty := 0, 0
	for _, s := range shops {
		var found []finding.Finding
		for _, path := range s.targets {
			text, err := s.open(path, mostBytes, "a procedure file")
			if err != nil {
				faults = append(faults, err)
				continue
			}
			if compiler.IsForm(text) { // entries of a service book
				continue
			}
			files++
			tidied, wrong := compiler.Tidy(source.New(path, text))
			switch {
			case len(wrong) > 0:
				found = append(found, wrong...)
				faulty++
			case len(tidied) > mostBytes:
				faults = append(faults, fmt.Errorf("%s would be more than %d MiB when it is laid out, and could not be read again; split it", s.shown(path), mostBytes>>20))
			case !bytes.Equal(tidied, text):
				list = append(list, untidy{filepath.Join(s.folder, filepath.FromSlash(path)), s.shown(path), text, tidied})
			}
		}
		if err := by.draw(by.err, s, found); err != nil {
			return err
		}
	}
	if err := told(faults); err != nil {
		return err // before anything is written
	}
	if err := by.lay(list, check, changes); err != nil {
		return err
	}
	if !changes {
		fmt.Fprintln(by.out, tidied(files, len(list), faulty, check))
	}
	if len(away) > 0 {
		return told(away)
	}
	if faulty > 0 || check && len(list) > 0 {
		return errFindings
	}
	return nil
}

// lay writes the files anew, or says which they are and how they would change.
func (by *caller) lay(list []untidy, check, changes bool) error {
	for _, one := range list {
		if changes {
			if _, err := by.out.Write(diff.Diff(one.shown, one.read, one.shown+" (tidy)", one.text)); err != nil {
				return err
			}
			continue
		}
		if !check {
			if err := replace(one.path, one.read, one.text); err != nil {
				return fmt.Errorf("%s cannot be laid out: %w", one.shown, err)
			}
		}
		fmt.Fprintln(by.out, one.shown)
	}
	return nil
}

// tidied sums up what became of the files.
func tidied(files, untidy, faulty int, check bool) string {
	if untidy == 0 && faulty == 0 {
		return many(files, "file", "files") + ": all tidy"
	}
	became := "laid out"
	if check {
		became = "not tidy"
	}
	var parts []string
	for _, part := range []struct {
		n    int
		what string
	}{{untidy, became}, {files - untidy - faulty, "tidy"}, {faulty, "left as it is, with faults"}} {
		if part.n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", part.n, part.what))
		}
	}
	return many(files, "file", "files") + ": " + strings.Join(parts, ", ")
}

// inputName is what standard input is called in findings.
const inputName = "standard-input.toml"

// tidyInput lays out what is read from standard input.
func (by *caller) tidyInput(check, changes bool) error {
	text, err := io.ReadAll(io.LimitReader(by.in, mostBytes+1))
	if err != nil {
		return fmt.Errorf("standard input cannot be read: %w", disk.Reason(err))
	}
	if len(text) > mostBytes {
		return fmt.Errorf("standard input is more than %d MiB; a procedure file is at most that", mostBytes>>20)
	}
	out, found := compiler.Tidy(source.New(inputName, text))
	for i := range found {
		found[i].Fixes = nil // there is no file to mend
	}
	if len(found) > 0 {
		if err := by.draw(by.err, &shop{shown: func(path string) string { return path }}, found); err != nil {
			return err
		}
		return errFindings
	}
	same := bytes.Equal(out, text)
	switch {
	case changes:
		out = diff.Diff(inputName, text, inputName+" (tidy)", out)
	case check && same:
		out = nil
	case check:
		out = []byte(inputName + "\n")
	}
	if _, err := by.out.Write(out); err != nil {
		return err
	}
	if check && !same {
		return errFindings
	}
	return nil
}
