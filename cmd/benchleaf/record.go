package main

import (
	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

func recordCommand(by *caller) *cobra.Command {
	var look compiler.Look
	var out, variant string
	cmd := &cobra.Command{
		Use:   "record [PATH…]",
		Short: "Write record sheets to fill in by hand",
		Long: `Record checks the procedures at or below the paths, this folder when none is given,
and writes for each of them a sheet for the folder of the machine: a row for every
reading with its limit and what to do outside it, a column for every time the job is
done. A procedure with an error against it is held back.

Sheets are on A4, or on Letter for a shop that prints its cards on that family.`,
		Example: `  benchleaf record                     all sheets of this folder, into out
  benchleaf record gearbox-oil.toml    one sheet`,
		RunE: func(_ *cobra.Command, paths []string) error {
			return by.sheets(paths, out, variant, look, (*compiler.Result).Records)
		},
	}
	cmd.Flags().StringVar(&out, "out", defaultOut, "folder to write into")
	variantFlag(cmd, &variant)
	lookFlags(cmd, &look)
	return cmd
}
