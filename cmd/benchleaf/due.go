package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"text/tabwriter"
	"time"

	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

func dueCommand(by *caller) *cobra.Command {
	var look compiler.Look
	var asked compiler.Asked
	var calendar string
	var asJSON bool
	var sheets dueSheets
	cmd := &cobra.Command{
		Use:   "due [PATH…]",
		Short: "Say what is due at which machine",
		Long: `Due reads the procedures at or below the paths, this folder when none is given, and the
service book of the shop, and says when each job is due at each machine: by its meter
or by the calendar, whichever comes first. Meters are reckoned on from their readings,
and where the day is not certain the days it may come on are told.

What is done and read stands in ` + compiler.Bookfile + ` at the top of the shop folder; the machines
that stand in the shop are described with [unit.NAME].

It ends with status 0 when nothing is due, 1 when something is, and 2 when it could not
run.`,
		Example: `  benchleaf due                                 what is due today, and what comes
  benchleaf due --by 2026-06-30                 only what is due by then
  benchleaf due --on 2026-05-01                 as it will stand on a day
  benchleaf due --meter log-deck="2100 h"       with a meter read just now
  benchleaf due --calendar due.ics              as a calendar besides
  benchleaf due --print                         as pages besides, into out
  benchleaf due --print --stock a3              for the wall`,
		RunE: func(_ *cobra.Command, paths []string) error {
			return by.due(paths, look, asked, calendar, asJSON, sheets)
		},
	}
	cmd.Flags().StringVar(&asked.On, "on", "", "the day it is asked for, such as 2026-05-01; today when left out")
	cmd.Flags().StringVar(&asked.By, "by", "", "only what is due by this day")
	cmd.Flags().StringToStringVar(&asked.Meters, "meter", nil, "what a meter stands at, by the short name of its machine")
	cmd.Flags().StringVar(&calendar, "calendar", "", "write the days as a calendar (RFC 5545) into this file")
	cmd.Flags().BoolVar(&asJSON, "json", false, "write it as JSON for other programs")
	sheets.flags(cmd)
	lookFlags(cmd, &look)
	return cmd
}

// mostBook is what is read of a service book at most.
const mostBook = 512 << 20

func (by *caller) due(paths []string, look compiler.Look, asked compiler.Asked, calendar string, asJSON bool, sheets dueSheets) error {
	builds, _, err := by.prepare(paths, sheets.out, "", look)
	if err != nil {
		return err
	}
	if asked.On == "" {
		asked.On = time.Now().Format(time.DateOnly)
	}
	if len(builds) > 1 && (calendar != "" || len(asked.Meters) > 0 || asJSON) {
		return fmt.Errorf("there are %d shops; ask for one at a time", len(builds))
	}
	pressing := false
	for _, b := range builds {
		book, err := b.shop.book()
		if err != nil {
			return err
		}
		due, err := b.result.Due(look, asked, book)
		if err != nil {
			return err
		}
		for _, problem := range due.Problems {
			fmt.Fprintln(by.err, problem)
		}
		if calendar != "" {
			text, err := due.Calendar()
			if err != nil {
				return err
			}
			path := by.from(calendar)
			if _, err := writeAll(filepath.Dir(path), filepath.Dir(calendar), []compiler.Output{{Name: filepath.Base(path), Bytes: text}}); err != nil {
				return err
			}
		}
		if sheets.wanted {
			if err := by.printDue(b, due, look, asJSON); err != nil {
				return err
			}
		}
		if asJSON {
			if _, err := by.out.Write(due.JSON()); err != nil {
				return err
			}
		} else if err := by.tellDue(due); err != nil {
			return err
		}
		for _, row := range due.Rows {
			pressing = pressing || row.State == "overdue" || row.State == "due"
		}
	}
	if pressing {
		return errFindings
	}
	return nil
}

// book is the text of the service book of the shop; empty where there is none.
func (s *shop) book() ([]byte, error) {
	if _, err := os.Lstat(filepath.Join(s.folder, compiler.Bookfile)); os.IsNotExist(err) {
		return nil, nil
	}
	return s.open(compiler.Bookfile, mostBook, "a service book")
}

// tellDue draws what is due as a table, state by state.
func (by *caller) tellDue(due *compiler.Due) error {
	if len(due.Rows) == 0 {
		fmt.Fprintln(by.out, "nothing is due")
		return nil
	}
	table := tabwriter.NewWriter(by.out, 0, 0, 2, ' ', 0)
	before := ""
	for _, row := range due.Rows {
		if row.State != before {
			if before != "" {
				fmt.Fprintln(table)
			}
			fmt.Fprintln(table, row.Word)
			before = row.State
		}
		day := row.Day
		if row.Early != "" || row.Late != "" {
			day += " ±"
		}
		last := ""
		if row.LastDay != "" {
			last = "last " + strings.TrimSpace(row.LastDay+" "+row.LastMeter)
		}
		fmt.Fprintf(table, "  %s\t%s\t%s\t%s\t%s\t%s\n", day, row.Machine, row.Title, row.Meter, last, row.Note)
	}
	return table.Flush()
}
