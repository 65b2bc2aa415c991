package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

func printCommand(by *caller) *cobra.Command {
	var look compiler.Look
	var out, variant string
	cmd := &cobra.Command{
		Use:   "print [PATH…]",
		Short: "Print bench cards and the pick list",
		Long: `Print checks the procedures at or below the paths, this folder when none is given,
and writes a card as PDF for each of them and each version of its machine, with
the pick list of all of them as PDF and CSV. A procedure with an error against it,
or against a file it takes names from, is held back. A file that would come out
the same is left as it is. With several shops each has its own folder in out.

It ends with status 0 when every card was printed, 1 when one was held back, and
2 when it could not run.`,
		Example: `  benchleaf print                                  everything in this folder, into out
  benchleaf print gearbox-oil.toml --out cards     one card, into cards
  benchleaf print --stock letter --units inch      on Letter sheets, in inch units
  benchleaf print --variant nine-metre             for one version of the machines
  benchleaf print --language de                    with the fixed words in German
  benchleaf print --distance "700 mm"              type for a card that hangs 0.7 m away
  benchleaf print --stock a6 --sheet a4            small cards, four to a sheet
  benchleaf print --svg                            each side as a picture too`,
		RunE: func(_ *cobra.Command, paths []string) error { return by.print(paths, out, variant, look) },
	}
	cmd.Flags().StringVar(&out, "out", defaultOut, "folder to write into")
	variantFlag(cmd, &variant)
	lookFlags(cmd, &look)
	cmd.Flags().StringVar(&look.Sheet, "sheet", "", "write all cards several to a sheet too, with cut marks; print on both sides, turned over the long edge: a4, letter")
	return cmd
}

// lookFlags are the flags on how pages look; what is not given is as the shop file says.
func lookFlags(cmd *cobra.Command, look *compiler.Look) {
	choiceFlag(cmd, &look.Stock, "stock", "what is printed on", compiler.Stocks())
	unitsFlag(cmd, look)
	languageFlag(cmd, look)
	cmd.Flags().StringVar(&look.Distance, "distance", "", `how far the eye is from the page, such as "500 mm"`)
	cmd.Flags().BoolVar(&look.Pictures, "svg", false, "write each side as an SVG picture too")
}

// languageFlag is the flag on the language of the fixed words.
func languageFlag(cmd *cobra.Command, look *compiler.Look) {
	choiceFlag(cmd, &look.Language, "language", "language of the fixed words", compiler.Languages())
}

func unitsFlag(cmd *cobra.Command, look *compiler.Look) {
	choiceFlag(cmd, &look.Units, "units", "units the pages print; a torque keeps the author's figure beside it", compiler.Units())
}

func choiceFlag(cmd *cobra.Command, into *string, name, text string, words []string) {
	cmd.Flags().StringVar(into, name, "", text+": "+strings.Join(words, ", "))
	_ = cmd.RegisterFlagCompletionFunc(name, cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp)) // fails only for a flag that is not there
}

func variantFlag(cmd *cobra.Command, into *string) {
	cmd.Flags().StringVar(into, "variant", "", "the version to print for, of machines that have it; all when left out")
}

func (by *caller) print(paths []string, out, variant string, look compiler.Look) error {
	run, err := by.begin(order{Command: "print", Out: out, Variant: variant, Look: look}, paths)
	if run == nil {
		return err
	}
	look.Ready()
	check := (*shop).inspect // a card is drawn and written, and gone
	if look.Sheet != "" {
		check = (*shop).check // all are put on sheets
	}
	builds, held, err := by.checkShops(run.shops, out, variant, check)
	if err != nil {
		return err
	}
	for _, b := range builds {
		b.printing = newDelivery(b.folder, b.shown)
		defer b.printing.drop()
		if err := by.cards(b, look, run.kept()); err != nil {
			return err
		}
	}
	return run.end(builds, by.deliver(builds, held))
}

// cards makes the cards of one shop, and its pick list.
func (by *caller) cards(b *build, look compiler.Look, keep compiler.Keep) error {
	line := watch(by.err)
	defer line.end()
	taken := map[string]string{}
	lists, troubles, err := b.result.Print(look, keep, func(card compiler.Output) error {
		if err := b.clash(card, taken); err != nil {
			return err
		}
		return b.printing.add(card)
	}, line.step)
	b.listed(lists)
	b.troubles = append(b.troubles, troubles...)
	return err
}

// clash finds a card that would be written over another of those that are taken, or over another
// page of the shop.
func (b *build) clash(card compiler.Output, taken map[string]string) error {
	name, path := strings.ToLower(card.Name), b.shop.shown(card.Jobs[0].Path)
	other := taken[name]
	if other == "" && b.isCardOf(card.Name, card.Jobs[0]) {
		other = b.result.Beside(name)
	}
	if other != "" {
		return fmt.Errorf("the card of %s and %s would both be written to %s; give the procedure another name = \"…\"", path, other, card.Name)
	}
	taken[name] = "that of " + path
	return nil
}
