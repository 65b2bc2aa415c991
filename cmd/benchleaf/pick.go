package main

import (
	"fmt"
	"path"
	"strings"

	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

func pickCommand(by *caller) *cobra.Command {
	var look compiler.Look
	var out, variant string
	var asCSV bool
	cmd := &cobra.Command{
		Use:   "pick [PATH…]",
		Short: "Write the pick list alone: tools, supplies and spares to bring",
		Long: `Pick checks the procedures at or below the paths, this folder when none is given,
and writes one list of what to bring for all of them, as PDF and CSV. Procedures
that are held back, as print says, are not in the list, and are named.`,
		Example: `  benchleaf pick gearbox-oil.toml belt.toml    what to bring for two jobs, into out
  benchleaf pick --csv > monday.csv            as a table for a spreadsheet`,
		RunE: func(cmd *cobra.Command, paths []string) error {
			if asCSV && cmd.Flags().Changed("out") {
				return fmt.Errorf("--csv writes to the screen and --out to a folder; give one of them")
			}
			return by.pick(paths, out, variant, look, asCSV)
		},
	}
	cmd.Flags().StringVar(&out, "out", defaultOut, "folder to write into")
	variantFlag(cmd, &variant)
	cmd.Flags().BoolVar(&asCSV, "csv", false, "write the table to standard output and no files")
	lookFlags(cmd, &look)
	return cmd
}

func (by *caller) pick(paths []string, out, variant string, look compiler.Look, asCSV bool) error {
	builds, held, err := by.prepare(paths, out, variant, look)
	if err != nil {
		return err
	}
	var names []string
	for _, b := range builds {
		names = append(names, b.shop.name)
	}
	if asCSV && len(builds) > 1 {
		return fmt.Errorf("--csv writes one shop at a time; give one of: %s", strings.Join(names, ", "))
	}
	for _, b := range builds {
		if err := b.lists(look); err != nil {
			return err
		}
	}
	if !asCSV {
		return by.deliver(builds, held)
	}
	for _, list := range builds[0].outputs {
		if path.Ext(list.Name) == ".csv" {
			if _, err := by.out.Write(list.Bytes); err != nil {
				return err
			}
		}
	}
	if held {
		return errFindings
	}
	return nil
}
