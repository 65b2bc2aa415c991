package main

import (
	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

func ditaCommand(by *caller) *cobra.Command {
	var look compiler.Look
	var out, variant string
	cmd := &cobra.Command{
		Use:   "dita [PATH…]",
		Short: "Write the procedures as machinery tasks of DITA, for manuals",
		Long: `Dita checks the procedures at or below the paths, this folder when none is given,
and writes each of them, and one for each version of its machine, as a machinery
task of DITA, an open standard of OASIS for technical manuals: what must be so
before, who does it, tools, supplies, spares and safety messages, the steps with
their values, and what must be so at the end. It is valid by the grammars of
DITA 1.2 and DITA 1.3. Pictures, drawings and signs are left out.

A procedure with an error against it is held back.`,
		Example: `  benchleaf dita                     all procedures of this folder, into out
  benchleaf dita gearbox-oil.toml    one procedure`,
		RunE: func(_ *cobra.Command, paths []string) error { return by.dita(paths, out, variant, look) },
	}
	cmd.Flags().StringVar(&out, "out", defaultOut, "folder to write into")
	variantFlag(cmd, &variant)
	unitsFlag(cmd, &look)
	languageFlag(cmd, &look)
	return cmd
}

func (by *caller) dita(paths []string, out, variant string, look compiler.Look) error {
	builds, held, err := by.prepare(paths, out, variant, look)
	if err != nil {
		return err
	}
	for _, b := range builds {
		tasks, err := b.result.Dita(look)
		if err != nil {
			return err
		}
		b.outputs = append(b.outputs, tasks...)
		if err := b.clash(tasks); err != nil {
			return err
		}
	}
	return by.deliver(builds, held)
}
