package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

func trendCommand(by *caller) *cobra.Command {
	return by.bookCommand(&cobra.Command{
		Use:   "trend [PATH…]",
		Short: "Draw what was read against its limit, and say when the limit comes",
		Long: `Trend reads the service book of the shop and draws a sheet for each thing that was
measured on a machine: its readings over the meter, the limit, the straight line
through them and where it meets the limit, with how far that may be out. Where the
readings do not bear it, it says so and draws no line.`,
		Example: `  benchleaf trend                       everything that is read, into out
  benchleaf trend chain-tension.toml    what is read at one procedure`,
	}, "no reading in the service book can be drawn", (*compiler.Result).Trends)
}

func historyCommand(by *caller) *cobra.Command {
	return by.bookCommand(&cobra.Command{
		Use:   "history [PATH…]",
		Short: "Write what was done to each machine, for a sale or an inspection",
		Long: `History reads the service book of the shop and writes for each machine what was done to
it, when, by whom and to which revision, what was left out and what was found outside
of its limit; and all entries as one CSV for a spreadsheet, also those that a later one
stands for, what came into the store, and those of a machine that is described no more.`,
		Example: `  benchleaf history                       every machine, into out
  benchleaf history --on 2026-05-01       as it stood on a day`,
	}, "the service book tells of nothing here", func(result *compiler.Result, look compiler.Look, asked compiler.Asked, book compiler.BookText) ([]compiler.Output, []compiler.Trouble, error) {
		outputs, troubles, told, err := result.Histories(look, asked, book)
		for _, problem := range told {
			fmt.Fprintln(by.err, problem)
		}
		return outputs, troubles, err
	})
}

// bookDrawn is what is drawn of a service book.
type bookDrawn func(*compiler.Result, compiler.Look, compiler.Asked, compiler.BookText) ([]compiler.Output, []compiler.Trouble, error)

// bookCommand makes a command write what is drawn of the service books of shops; none is said
// where that is nothing.
func (by *caller) bookCommand(cmd *cobra.Command, none string, drawn bookDrawn) *cobra.Command {
	var look compiler.Look
	var asked compiler.Asked
	var out string
	cmd.RunE = func(_ *cobra.Command, paths []string) error { return by.booked(paths, out, none, look, asked, drawn) }
	cmd.Flags().StringVar(&out, "out", defaultOut, "folder to write into")
	cmd.Flags().StringVar(&asked.On, "on", "", "the day up to which entries count, such as 2026-05-01; today when left out")
	lookFlags(cmd, &look)
	return cmd
}

// booked writes what is drawn of the service books of shops.
func (by *caller) booked(paths []string, out, none string, look compiler.Look, asked compiler.Asked, drawn bookDrawn) error {
	if asked.On == "" {
		asked.On = today()
	}
	builds, held, err := by.prepare(paths, out, "", look)
	if err != nil {
		return err
	}
	for _, b := range builds {
		if err := b.shop.reading(func(book compiler.BookText) error {
			made, troubles, err := drawn(b.result, look, asked, book)
			b.outputs, b.troubles = append(b.outputs, made...), append(b.troubles, troubles...)
			return err
		}); err != nil {
			return err
		}
		if len(b.outputs) == 0 {
			fmt.Fprintln(by.out, none)
		}
	}
	return by.deliver(builds, held)
}
