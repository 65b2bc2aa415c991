package main

import (
	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

func phoneCommand(by *caller) *cobra.Command {
	var look compiler.Look
	var out, variant string
	cmd := &cobra.Command{
		Use:   "phone [PATH…]",
		Short: "Write the cards as pages for a phone or a tablet at the bench",
		Long: `Phone checks the procedures at or below the paths, this folder when none is given,
and writes each of them as one HTML file, and one for each version of its machine.
Copy the file to the phone and open it there: it needs no network and asks for none.

A page shows one step at a time or all of them. Steps are ticked or left out with a
reason, readings are held against their limits as they are typed, waits have timers.
What is ticked and written stays on the device until "Start again". At the end the
page gives an entry in TOML for the machine's service book:

  [[entry]]
  procedure = "gearbox-oil"
  revision = "C"
  machine = "Log-deck conveyor"
  date = 2026-11-27
  done = [1, 2, 3]

A procedure with an error against it is held back.`,
		Example: `  benchleaf phone                     all pages of this folder, into out
  benchleaf phone gearbox-oil.toml    one page`,
		RunE: func(_ *cobra.Command, paths []string) error { return by.phone(paths, out, variant, look) },
	}
	cmd.Flags().StringVar(&out, "out", defaultOut, "folder to write into")
	variantFlag(cmd, &variant)
	unitsFlag(cmd, &look)
	languageFlag(cmd, &look)
	return cmd
}

func (by *caller) phone(paths []string, out, variant string, look compiler.Look) error {
	run, err := by.begin(order{Command: "phone", Out: out, Variant: variant, Look: look}, paths)
	if run == nil {
		return err
	}
	builds, held, err := by.checkShops(run.shops, out, variant, (*shop).check)
	if err != nil {
		return err
	}
	for _, b := range builds {
		pages, err := b.result.Phones(look)
		if err != nil {
			return err
		}
		b.outputs = append(b.outputs, pages...)
		taken := map[string]string{}
		for _, page := range pages {
			if err := b.clash(page, taken); err != nil {
				return err
			}
		}
	}
	return run.end(builds, by.deliver(builds, held))
}
