package main

import (
	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

func chartCommand(by *caller) *cobra.Command {
	var look compiler.Look
	var out, variant string
	cmd := &cobra.Command{
		Use:   "chart [PATH…]",
		Short: "Write wall charts: what is due on a machine at which interval",
		Long: `Chart checks the procedures at or below the paths, this folder when none is given,
and writes a chart for the wall for each of their machines: every job with an interval
and every lubrication point, with a mark under each interval.

Charts are on A3, or on Tabloid for a shop that prints its cards on Letter or half
Letter, with type to be read from 1 m.`,
		Example: `  benchleaf chart                      all machines of this folder, into out
  benchleaf chart --stock a4           on A4, to be read from nearer`,
		RunE: func(_ *cobra.Command, paths []string) error {
			return by.sheets(paths, out, variant, look, (*compiler.Result).Charts)
		},
	}
	cmd.Flags().StringVar(&out, "out", defaultOut, "folder to write into")
	variantFlag(cmd, &variant)
	lookFlags(cmd, &look)
	return cmd
}
