package main

import (
	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

func approveCommand(by *caller) *cobra.Command {
	var look compiler.Look
	var out, variant string
	cmd := &cobra.Command{
		Use:   "approve [PATH…]",
		Short: "Write the approval sheets: state, findings, departures, figures",
		Long: `Approve checks the procedures at or below the paths, this folder when none is given,
and writes for each of them a sheet to read before somebody puts their name to it:
how the machine stands after each step, all findings, what the author stands by and
why, and every figure with the source that is written beside it. A procedure that is
held back has a sheet too, which says so.

A figure's source is the comment behind it on its line, or the one above it:

  torque = "42 to 48 N·m"  # operator's manual, page 31

Sheets are on A4, or on Letter for a shop that prints its cards on that family.`,
		Example: `  benchleaf approve                     all sheets of this folder, into out
  benchleaf approve gearbox-oil.toml    one sheet`,
		RunE: func(_ *cobra.Command, paths []string) error {
			return by.sheets(paths, out, variant, look, (*compiler.Result).Approvals)
		},
	}
	cmd.Flags().StringVar(&out, "out", defaultOut, "folder to write into")
	variantFlag(cmd, &variant)
	lookFlags(cmd, &look)
	return cmd
}

// sheets writes what one way of drawing makes of each shop.
func (by *caller) sheets(paths []string, out, variant string, look compiler.Look, drawn func(*compiler.Result, compiler.Look) ([]compiler.Output, []compiler.Trouble, error)) error {
	builds, held, err := by.prepare(paths, out, variant, look)
	if err != nil {
		return err
	}
	for _, b := range builds {
		sheets, troubles, err := drawn(b.result, look)
		if err != nil {
			return err
		}
		b.outputs, b.troubles = append(b.outputs, sheets...), append(b.troubles, troubles...)
	}
	return by.deliver(builds, held)
}
