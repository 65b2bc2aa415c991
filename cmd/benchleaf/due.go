package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
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

A job whose card an error holds back is told all the same, and that it is so. What cannot be
read at all is named.

It ends with status 0 when nothing is due, 1 when something is, and 2 when it could not run
or the list is not whole, since a procedure could not be read.`,
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

func (by *caller) due(paths []string, look compiler.Look, asked compiler.Asked, calendar string, asJSON bool, sheets dueSheets) error {
	builds, _, err := by.prepare(paths, sheets.out, "", look)
	if err != nil {
		return err
	}
	if asked.On == "" {
		asked.On = today()
	}
	if at, err := os.Stat(by.from(calendar)); calendar != "" && err == nil && at.IsDir() {
		return fmt.Errorf("--calendar %s is a folder; give the name of a file, such as %s", calendar, filepath.Join(calendar, "due.ics"))
	}
	if len(builds) > 1 && (calendar != "" || len(asked.Meters) > 0 || asJSON) {
		return fmt.Errorf("there are %d shops; ask for one at a time", len(builds))
	}
	pressing, unread := false, 0
	for _, b := range builds {
		var due *compiler.Due
		err := b.shop.reading(func(book compiler.BookText) (err error) {
			if due, err = b.result.Due(look, asked, book); err != nil {
				return err
			}
			for _, problem := range due.Problems {
				fmt.Fprintln(by.err, problem)
			}
			if sheets.wanted { // what to bring is held against the shelves, which the book tells of too
				return by.printDue(b, due, look, asJSON)
			}
			return nil
		})
		if err != nil {
			return err
		}
		unread += len(due.Unread)
		switch {
		case calendar != "" && len(due.Unread) > 0: // what is not in it would go from the calendars of people
			fmt.Fprintf(by.err, "%s is not written, since the list is not whole\n", calendar)
		case calendar != "":
			text, err := due.Calendar()
			if err != nil {
				return err
			}
			path := by.from(calendar)
			if _, err := writeAll(filepath.Dir(path), filepath.Dir(calendar), []compiler.Output{{Name: filepath.Base(path), Bytes: text}}); err != nil {
				return err
			}
		}
		if asJSON {
			if _, err := by.out.Write(due.JSON()); err != nil {
				return err
			}
		} else if len(due.Rows) > 0 || len(due.Unread) == 0 {
			by.tellDue(due)
		}
		for _, row := range due.Rows {
			pressing = pressing || row.State == "overdue" || row.State == "due"
		}
	}
	switch {
	case unread > 0:
		return notWhole(unread)
	case pressing:
		return errFindings
	}
	return nil
}

// notWhole says that a list lacks procedures, which have been named.
func notWhole(unread int) error {
	return fmt.Errorf("the list is not whole: it lacks %s", many(unread, "procedure", "procedures"))
}

// reading opens the service book of the shop, if there is one, for as long as something reads
// in it. What another program adds meanwhile is left aside.
func (s *shop) reading(do func(book compiler.BookText) error) error {
	if _, err := os.Lstat(filepath.Join(s.folder, compiler.Bookfile)); os.IsNotExist(err) {
		return do(nil)
	}
	file, size, err := s.reach(compiler.Bookfile)
	if err != nil {
		return err
	}
	defer file.Close()
	return do(io.NewSectionReader(file, 0, size))
}

// tellDue draws what is due as a table, state by state, what there is to note of a row below
// it.
func (by *caller) tellDue(due *compiler.Due) {
	if len(due.Rows) == 0 {
		fmt.Fprintln(by.out, "nothing is due")
		return
	}
	rows := make([]tableRow, len(due.Rows))
	uncertain := false
	for i, row := range due.Rows {
		day := row.Day
		if days := between(row.Day, row.Early, row.Late); days != "" && row.State != "overdue" {
			day += " (" + days + ")"
			uncertain = true
		}
		meter, last := "", "never done"
		switch {
		case row.Meter != "" && row.By == "calendar":
			meter = "or at " + row.Meter
		case row.Meter != "":
			meter = "at " + row.Meter
		}
		if row.LastDay != "" {
			last = "last " + row.LastDay
		}
		if row.LastMeter != "" {
			last += " at " + row.LastMeter
			if row.OldMeter {
				last += " on the meter before"
			}
		}
		rows[i] = tableRow{under: row.Word, cells: []string{day, due.Called(row), row.Title, meter, last}, note: row.Note}
	}
	by.table(rows)
	if uncertain {
		fmt.Fprintln(by.out, "\nin brackets the days it may come on, by how the meter has run")
	}
}

// between says between which days a job may come, without the year where it is that of the day;
// empty where its day is certain.
func between(day, early, late string) string {
	sameYear := func(other string) bool {
		return other == "" || len(other) == len(time.DateOnly) && len(day) == len(other) && other[:5] == day[:5]
	}
	short := func(other string) string {
		if sameYear(early) && sameYear(late) {
			return other[5:]
		}
		return other
	}
	switch {
	case early != "" && late != "":
		return short(early) + " to " + short(late)
	case early != "":
		return "from " + short(early)
	case late != "":
		return "to " + short(late)
	}
	return ""
}
