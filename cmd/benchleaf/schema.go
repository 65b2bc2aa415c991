package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"benchleaf/schema"
)

func schemaCommand(by *caller) *cobra.Command {
	var model bool
	cmd := &cobra.Command{
		Use:   "schema",
		Short: "Write the language as a JSON Schema, for editors",
		Long: `Schema writes the language as a JSON Schema of draft 2020-12. An editor that knows
TOML can complete keys and words with it; only benchleaf lint checks the work.
With --model it writes the form of what benchleaf model writes.`,
		Example: `  benchleaf schema > benchleaf.schema.json
  benchleaf schema --model > benchleaf-model.schema.json`,
		Args: noPaths,
		RunE: func(*cobra.Command, []string) error {
			write := schema.JSON
			if model {
				write = schema.ModelJSON
			}
			text, err := write()
			if err != nil {
				return err
			}
			_, err = by.out.Write(text)
			return err
		},
	}
	cmd.Flags().BoolVar(&model, "model", false, "write the form of benchleaf model instead")
	return cmd
}

// noPaths refuses words after a command that takes none.
func noPaths(cmd *cobra.Command, args []string) error {
	if len(args) > 0 {
		return fmt.Errorf("%s takes no %q\n  see: %s --help", cmd.CommandPath(), args[0], cmd.CommandPath())
	}
	return nil
}
