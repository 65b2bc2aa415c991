package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

func modelCommand(by *caller) *cobra.Command {
	return &cobra.Command{
		Use:   "model [PATH…]",
		Short: "Write what the files mean as JSON, for other programs",
		Long: `Model writes as JSON what the files at or below the paths mean, this folder when
none is given, with all files that they use: the shop, its machines with their
parts, cavities and energies, its libraries, and its procedures with their steps.
For each version of a machine every name is looked up, and every amount is told
as it prints and as numbers, in its unit and in the SI. Each step tells what
stands otherwise behind it, each job what it takes. Findings stand at the end.

The form is described by benchleaf schema --model. It ends with status 0 when the
model was written, whatever was found, and 2 when it could not run.`,
		Example: `  benchleaf model > shop.json                  everything in this folder
  benchleaf model procedures > shop.json       one folder
  benchleaf schema --model                     the form, as a JSON Schema`,
		RunE: func(_ *cobra.Command, paths []string) error {
			shops, err := load(by.folder, paths)
			if err != nil {
				return err
			}
			if len(shops) > 1 {
				return fmt.Errorf("model writes one shop at a time; give one of: %s", strings.Join(shopNames(shops), ", "))
			}
			_, err = by.out.Write(shops[0].check().Model())
			return err
		},
	}
}
