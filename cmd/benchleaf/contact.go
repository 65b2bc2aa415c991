package main

import (
	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

func contactCommand(by *caller) *cobra.Command {
	var look compiler.Look
	var out, variant string
	var stocks []string
	cmd := &cobra.Command{
		Use:   "contact [PATH…]",
		Short: "Write a contact sheet: every side of every card, small, on every stock",
		Long: `Contact checks the procedures at or below the paths, this folder when none is given,
and writes one PDF to look the cards over before they are printed: every side of every
card, small, on each stock, with the edge and the hole of the stock. It says what does
not go on a stock in type for its distance.`,
		Example: `  benchleaf contact                        all stocks, into out
  benchleaf contact --stocks a5,a6         two of them`,
		RunE: func(_ *cobra.Command, paths []string) error {
			return by.sheets(paths, out, variant, look, func(r *compiler.Result, look compiler.Look) ([]compiler.Output, []compiler.Trouble, error) {
				return r.Contact(look, stocks)
			})
		},
	}
	cmd.Flags().StringVar(&out, "out", defaultOut, "folder to write into")
	cmd.Flags().StringSliceVar(&stocks, "stocks", nil, "the stocks to show, with commas between; all when left out")
	variantFlag(cmd, &variant)
	unitsFlag(cmd, &look)
	languageFlag(cmd, &look)
	cmd.Flags().StringVar(&look.Distance, "distance", "", `how far the eye is from the page, such as "500 mm"`)
	return cmd
}
