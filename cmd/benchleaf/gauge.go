package main

import (
	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

func gaugeCommand(by *caller) *cobra.Command {
	var look compiler.Look
	var out string
	cmd := &cobra.Command{
		Use:   "gauge [PATH…]",
		Short: "Write a page of true sizes: a ruler and the widths of the wrenches",
		Long: `Gauge writes one page to hold a bolt head against: a ruler in millimetres and in
inches, and a hexagon for each width across flats that the sockets and wrenches of
the shop have. Print it at 100 %, not fitted to the page.`,
		Example: `  benchleaf gauge                      for the tools of this folder, into out`,
		RunE: func(_ *cobra.Command, paths []string) error {
			return by.sheets(paths, out, "", look, (*compiler.Result).Gauge)
		},
	}
	cmd.Flags().StringVar(&out, "out", defaultOut, "folder to write into")
	lookFlags(cmd, &look)
	return cmd
}
