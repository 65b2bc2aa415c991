package main

import (
	"fmt"
	"io"
	"path/filepath"

	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

// dueSheets is what is asked of the pages of what is due.
type dueSheets struct {
	wanted bool
	out    string
}

func (s *dueSheets) flags(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&s.wanted, "print", false, "write a list to hang at the bench, what to bring for it, and a planner of each machine too")
	cmd.Flags().StringVar(&s.out, "out", defaultOut, "folder to write the pages into")
}

// printDue writes the pages of what is due in one shop.
func (by *caller) printDue(b *build, due *compiler.Due, look compiler.Look, asJSON bool) error {
	outputs, troubles, err := due.Pages(look)
	if err != nil {
		return err
	}
	bring, more, err := due.Bring(look)
	if err != nil {
		return err
	}
	return by.writeSheets(b, append(outputs, bring...), append(troubles, more...), asJSON)
}

// writeSheets writes pages, and says each file: beside what is told to other programs, where
// that goes out.
func (by *caller) writeSheets(b *build, outputs []compiler.Output, troubles []compiler.Trouble, asJSON bool) error {
	for _, trouble := range troubles {
		fmt.Fprintf(by.err, "%s: %s: %s\n", filepath.Join(b.shown, trouble.Output), trouble.Where, trouble.Text)
	}
	if len(outputs) == 0 {
		return nil
	}
	files, err := writeAll(b.folder, b.shown, outputs)
	if err != nil {
		return err
	}
	var to io.Writer = by.out
	if asJSON {
		to = by.err
	}
	for _, file := range files {
		did := "unchanged"
		if file.changed {
			did = "wrote"
		}
		fmt.Fprintf(to, "%-9s  %s\n", did, file.path)
	}
	return nil
}
