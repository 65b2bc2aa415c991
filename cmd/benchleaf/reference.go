package main

import (
	"io"

	"github.com/spf13/cobra"

	"benchleaf/schema"
)

func referenceCommand(by *caller) *cobra.Command {
	return &cobra.Command{
		Use:   "reference",
		Short: "Write the language reference: every table, key and verb",
		Long:  "Reference writes every table, key and verb of the language, with examples, as Markdown.",
		Example: `  benchleaf reference | less
  benchleaf reference > reference.md`,
		Args: noPaths,
		RunE: func(*cobra.Command, []string) error {
			_, err := io.WriteString(by.out, schema.Reference())
			return err
		},
	}
}
