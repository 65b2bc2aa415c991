package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

func manualCommand(by *caller) *cobra.Command {
	var look compiler.Look
	var out, variant, machine string
	cmd := &cobra.Command{
		Use:   "manual [PATH…]",
		Short: "Write the manual: all procedures of a shop in one PDF",
		Long: `Manual checks the procedures at or below the paths, this folder when none is given,
and writes one PDF to keep in a folder or on a screen: every safety message with the
procedures it stands in; for each machine its torques, fluids, lubrication, limits,
intervals and wrench sizes, then its procedures in full; the pick list of all; and an
index of parts, fluids and tools. Contents, index and bookmarks lead to their pages.
Procedures that are held back, as print says, are not in it, and are named.

It is on A4, or on Letter for a shop that prints its cards on that family, with room
for the holes of a folder.`,
		Example: `  benchleaf manual                          the manual of this folder, into out
  benchleaf manual --machine "Chipper"      of one machine alone`,
		RunE: func(_ *cobra.Command, paths []string) error { return by.manual(paths, out, variant, machine, look) },
	}
	cmd.Flags().StringVar(&out, "out", defaultOut, "folder to write into")
	cmd.Flags().StringVar(&machine, "machine", "", "the machine to write of, by its name or title; all when left out")
	variantFlag(cmd, &variant)
	lookFlags(cmd, &look)
	return cmd
}

func (by *caller) manual(paths []string, out, variant, machine string, look compiler.Look) error {
	run, err := by.begin(order{Command: "manual", Out: out, Variant: variant, Machine: machine, Look: look}, paths)
	if run == nil {
		return err
	}
	builds, held, err := by.checkShops(run.shops, out, variant, (*shop).check)
	if err != nil {
		return err
	}
	if err := onlyMachine(builds, machine); err != nil {
		return err
	}
	for _, b := range builds {
		made, troubles, err := b.result.Manual(look)
		if err != nil {
			return err
		}
		b.outputs, b.troubles = append(b.outputs, made...), append(b.troubles, troubles...)
	}
	return run.end(builds, by.deliver(builds, held))
}

// onlyMachine keeps the jobs of one machine, by its name or its title.
func onlyMachine(builds []*build, machine string) error {
	if machine == "" {
		return nil
	}
	var known []string
	found := false
	is := func(job compiler.Job) bool {
		return strings.EqualFold(job.Machine, machine) || job.MachineName != "" && job.MachineName == machine
	}
	for _, b := range builds {
		for _, job := range b.result.Jobs {
			if found = found || is(job); !slices.Contains(known, job.Machine) {
				known = append(known, job.Machine)
			}
		}
	}
	if !found {
		return fmt.Errorf("there is no machine %q here%s; there are: %s", machine, didYouMean(nearest(machine, known, 1)), strings.Join(known, ", "))
	}
	for _, b := range builds {
		only := *b.result
		only.Jobs = slices.DeleteFunc(slices.Clone(only.Jobs), func(job compiler.Job) bool { return !is(job) })
		b.result = &only
	}
	return nil
}
