package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"benchleaf/cmd/internal/disk"
	"benchleaf/compiler"
)

// drafted is what was asked of draft.
type drafted struct {
	out               string
	over              bool
	questions, asJSON bool
}

func draftCommand(by *caller) *cobra.Command {
	var asked drafted
	cmd := &cobra.Command{
		Use:   "draft NOTES",
		Short: "Make the draft of a procedure out of spoken or typed notes",
		Long: `Draft reads a person's notes on a job, plain text as it was typed or as a recording was
written down, with or without times at the starts of lines, and writes the draft of
a procedure. By rules, and with nothing but the words themselves, it finds sizes,
torques, ranges, fluids and grades, counts, intervals, tools, parts, hazards, waits
and what is done, in order. Each sentence stands as a comment over what was taken
from it. What the notes leave open is a gap, "", with the question beside it, and
benchleaf lint names every gap that is left.

A draft is read and put right by whoever did the work, before anybody works by it.
With - the notes come from standard input. The draft goes to standard output, or into
the file of --out, which is never written over unless --over says so.`,
		Example: `  benchleaf draft notes.txt                      the draft, on the terminal
  benchleaf draft notes.txt --out tiller.toml    into a file
  benchleaf draft notes.txt --questions          only what the notes leave open
  benchleaf draft - < notes.txt                  from standard input`,
		RunE: func(_ *cobra.Command, paths []string) error {
			switch {
			case len(paths) == 0:
				return fmt.Errorf("draft needs notes, such as notes.txt, or - for standard input\n  see: benchleaf draft --help")
			case len(paths) > 1:
				return fmt.Errorf("draft reads one file of notes at a time, not %d\n  see: benchleaf draft --help", len(paths))
			}
			return by.draft(paths[0], asked)
		},
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return []string{"txt", "md"}, cobra.ShellCompDirectiveFilterFileExt
		},
	}
	cmd.Flags().StringVar(&asked.out, "out", "", "file to write the draft into, such as tiller.toml; standard output when left out")
	cmd.Flags().BoolVar(&asked.over, "over", false, "write over the file of --out where it is there already")
	cmd.Flags().BoolVar(&asked.questions, "questions", false, "write only what the notes leave open, each with its line")
	cmd.Flags().BoolVar(&asked.asJSON, "json", false, "write what was taken as JSON, each thing with its place in the notes")
	cmd.MarkFlagsMutuallyExclusive("questions", "json", "out")
	return cmd
}

func (by *caller) draft(path string, asked drafted) error {
	if asked.over && asked.out == "" {
		return fmt.Errorf("--over goes with --out, which names the file")
	}
	shown, notes, err := by.notes(path)
	if err != nil {
		return err
	}
	made, err := compiler.Draft(notes)
	if err != nil {
		return fmt.Errorf("%s cannot be read: %w", shown, err)
	}
	switch {
	case asked.questions:
		for _, one := range made.Questions {
			fmt.Fprintf(by.out, "%s:%d: %s\n", shown, one.Line, one.Text)
		}
		return nil
	case asked.asJSON:
		_, err = by.out.Write(made.JSON())
		return err
	case asked.out == "":
		_, err = by.out.Write(made.Text)
		return err
	}
	if err := by.keepDraft(asked.out, made.Text, asked.over); err != nil {
		return err
	}
	fmt.Fprintf(by.out, "%s left open; answer in the file, then: benchleaf lint %s\n", many(len(made.Questions), "question is", "questions are"), asked.out)
	return nil
}

// notes reads the notes, and says how they are called.
func (by *caller) notes(path string) (shown string, notes []byte, err error) {
	shown, from := path, by.in
	if path == "-" {
		shown = "standard input"
	} else {
		info, err := os.Stat(by.from(path))
		if err == nil && !info.Mode().IsRegular() {
			return shown, nil, fmt.Errorf("%s is no file of notes", path)
		}
		file, err := os.Open(by.from(path))
		if err != nil {
			return shown, nil, fmt.Errorf("%s cannot be read: %w", path, disk.Reason(err))
		}
		defer file.Close()
		from = file
	}
	notes, err = io.ReadAll(io.LimitReader(from, compiler.MostNotes+4)) // and a byte order mark
	if err != nil {
		return shown, nil, fmt.Errorf("%s cannot be read: %w", shown, disk.Reason(err))
	}
	return shown, notes, nil
}

// keepDraft writes a draft into a file that is not there yet, or over it where that was said.
func (by *caller) keepDraft(asked string, text []byte, over bool) error {
	path := by.from(asked)
	if filepath.Ext(asked) != ".toml" {
		return fmt.Errorf("the name of a procedure file ends in .toml, not %q", filepath.Ext(asked))
	}
	if _, err := os.Lstat(path); err == nil && over {
		old, err := readPlain(path, asked, mostShop)
		if err != nil {
			return err
		}
		if err := replace(path, old, text); err != nil {
			return fmt.Errorf("%s cannot be written: %w", asked, disk.Reason(err))
		}
		fmt.Fprintf(by.out, "wrote  %s\n", asked)
		return nil
	} else if err == nil {
		return fmt.Errorf("%s is there already; give another name, or write over it with --over", asked)
	} else if !errors.Is(err, os.ErrNotExist) {
		return fmt.Errorf("%s cannot be written: %w", asked, disk.Reason(err))
	}
	return by.create(asked, text)
}
