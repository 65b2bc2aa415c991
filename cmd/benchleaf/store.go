package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

func storeCommand(by *caller) *cobra.Command {
	var look compiler.Look
	var asked compiler.Asked
	var asJSON bool
	var sheets dueSheets
	cmd := &cobra.Command{
		Use:   "store [PATH…]",
		Short: "Say what is on the shelf, what runs out and what to buy",
		Long: `Store holds what is on the shelves against what the work takes: what is due now, or by a
day with --by, and what is foreseen for the twelve months to come, or up to that day. It says what is missing,
what is to be ordered within two weeks, when each thing runs out, and which packs to buy.

What was counted stands in the files as [store.NAME]. What was used and received since then
comes from the service book; an entry that does not say what was used counts as its card
says. Jobs that are done when needed are not foreseen; one whose card an error holds back is.

It ends with status 0 when nothing is to be bought, 1 when something is, and 2 when it could
not run or the list is not whole, since a procedure could not be read.`,
		Example: `  benchleaf store                               what is missing today
  benchleaf store --by 2026-06-30               for all that is due by then
  benchleaf store --print                       a shopping list and a table besides, into out
  benchleaf store --json                        for other programs`,
		RunE: func(_ *cobra.Command, paths []string) error {
			return by.store(paths, look, asked, asJSON, sheets)
		},
	}
	cmd.Flags().StringVar(&asked.On, "on", "", "the day it is asked for, such as 2026-05-01; today when left out")
	cmd.Flags().StringVar(&asked.By, "by", "", "for all that is due by this day, ten years ahead at the most")
	cmd.Flags().BoolVar(&asJSON, "json", false, "write it as JSON for other programs")
	cmd.Flags().BoolVar(&sheets.wanted, "print", false, "write a shopping list (PDF) and all of the store (CSV) too")
	cmd.Flags().StringVar(&sheets.out, "out", defaultOut, "folder to write the pages into")
	lookFlags(cmd, &look)
	return cmd
}

func (by *caller) store(paths []string, look compiler.Look, asked compiler.Asked, asJSON bool, sheets dueSheets) error {
	builds, _, err := by.prepare(paths, sheets.out, "", look)
	if err != nil {
		return err
	}
	if asked.On == "" {
		asked.On = today()
	}
	if len(builds) > 1 && asJSON {
		return fmt.Errorf("there are %d shops; ask for one at a time", len(builds))
	}
	lacking, unread := false, 0
	for _, b := range builds {
		var store *compiler.Store
		err := b.shop.reading(func(book compiler.BookText) (err error) {
			store, err = b.result.Store(look, asked, book)
			return err
		})
		if err != nil {
			return err
		}
		unread += len(store.Unread)
		for _, problem := range store.Problems {
			fmt.Fprintln(by.err, problem)
		}
		if sheets.wanted {
			outputs, troubles, err := store.Shopping(look)
			if err != nil {
				return err
			}
			if err := by.writeSheets(b, outputs, troubles, asJSON); err != nil {
				return err
			}
		}
		if asJSON {
			if _, err := by.out.Write(store.JSON()); err != nil {
				return err
			}
		} else if len(store.Rows) > 0 || len(store.Unread) == 0 {
			by.tellStore(store, asked.On)
		}
		for _, row := range store.Rows {
			lacking = lacking || row.State == "missing" || row.State == "order"
		}
	}
	switch {
	case unread > 0:
		return notWhole(unread)
	case lacking:
		return errFindings
	}
	return nil
}

// tellStore draws the shelves as a table, state by state.
func (by *caller) tellStore(store *compiler.Store, on string) {
	if len(store.Rows) == 0 {
		fmt.Fprintln(by.out, "nothing is used up here")
		return
	}
	rows := make([]tableRow, len(store.Rows))
	for i, row := range store.Rows {
		there, need, keep, last := "not counted", "", "", ""
		if row.OnHand != "" {
			there = row.OnHand + " there"
		}
		if row.Need != "" {
			need = row.Need + " needed"
		}
		if row.Buy != "" {
			last = "buy " + row.Buy
			if row.Cost != "" {
				last += ", " + row.Cost
			}
		} else if row.Missing != "" {
			last = "buy " + row.Missing
		}
		if row.Keep != "" && last != "" {
			keep = row.Keep + " to keep"
		}
		out := ""
		if row.RunsOut != "" {
			out = "runs out " + row.RunsOut
			switch row.OrderBy {
			case row.RunsOut:
			case on:
				out += ", order now"
			default:
				out += ", order by " + row.OrderBy
			}
		}
		rows[i] = tableRow{under: row.Word, cells: []string{row.Title, there, need, keep, last, out}}
	}
	by.table(rows)
	fmt.Fprintln(by.out)
	if store.Cost != "" {
		note := ""
		if store.Unpriced > 0 {
			note = fmt.Sprintf("; %s without a price", many(store.Unpriced, "thing", "things"))
		}
		fmt.Fprintf(by.out, "together %s%s\n", store.Cost, note)
	}
	if store.Reckoned > 0 {
		said := "%d entries of the service book do not say what was used, and count as their cards say\n"
		if store.Reckoned == 1 {
			said = "%d entry of the service book does not say what was used, and counts as its card says\n"
		}
		fmt.Fprintf(by.out, said, store.Reckoned)
	}
}
