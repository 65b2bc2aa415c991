package main

import (
	"cmp"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
)

// joined is what is asked of a job out of several.
type joined struct {
	compiler.Joining
	asked compiler.Asked
	due   bool
	keep  bool
	json  bool
	out   string

	without []string // what is due and has no card
}

func joinCommand(by *caller) *cobra.Command {
	var look compiler.Look
	var said joined
	cmd := &cobra.Command{
		Use:   "join PATH…",
		Short: "Make one job out of several procedures on one machine",
		Long: `Join makes one job out of the procedures at or below the paths, or with --due out of what is
due at one machine. The machine is made ready once and closed up once, what waits is filled
with other work, and the order is the shortest there is under the times it lists; where that
cannot be proved, it says how far from it the order may be. The order within each procedure
stays as its author wrote it. With --people 2 it is a good plan for two, with a bound, and
never called the shortest: two are at the machine at once only in areas that its file describes
as apart.

It writes the bench card and the list of what to bring. The joined procedure is one like any
other, and goes the same way: --keep writes it into the shop folder, where it can be changed
and printed again.`,
		Example: `  benchleaf join gearbox-oil.toml chain-tension.toml bearing-grease.toml
  benchleaf join . --unit deck --due                     what is overdue, due and soon at the deck
  benchleaf join . --unit deck --due --by 2026-05-08     all that is due by Friday
  benchleaf join . --unit deck --due --people 2          for two
  benchleaf join . --unit deck --due --keep              and keep it as a procedure`,
		Args: cobra.MinimumNArgs(1),
		RunE: func(_ *cobra.Command, paths []string) error { return by.join(paths, look, said) },
	}
	flags := cmd.Flags()
	flags.StringVar(&said.Unit, "unit", "", "short name of the machine it is for")
	flags.BoolVar(&said.due, "due", false, "join what is due at the machine")
	flags.StringVar(&said.asked.By, "by", "", "with --due: all that is due by this day")
	flags.StringVar(&said.On, "on", "", "the day it is for, such as 2026-05-01; today when left out")
	flags.StringVar(&said.Name, "name", "", "short name of the job; the machine and the day when left out")
	flags.StringVar(&said.Title, "title", "", "title of the job as it prints")
	flags.IntVar(&said.People, "people", 1, "how many do it, one or two")
	flags.BoolVar(&said.json, "json", false, "write the plan with its times as JSON for other programs")
	flags.BoolVar(&said.keep, "keep", false, "write the joined procedure into the shop folder too")
	flags.StringVar(&said.out, "out", defaultOut, "folder to write into")
	lookFlags(cmd, &look)
	return cmd
}

func (by *caller) join(paths []string, look compiler.Look, said joined) error {
	if said.People < 1 {
		return fmt.Errorf("a job can be joined for one or for two people, and not for %d", said.People)
	}
	builds, _, err := by.prepare(paths, said.out, "", look)
	if err != nil {
		return err
	}
	if len(builds) > 1 {
		return fmt.Errorf("there are %d shops; join the procedures of one at a time", len(builds))
	}
	if said.On == "" {
		said.On = today()
	}
	b := builds[0]
	if err := by.choose(b, paths, look, &said); err != nil {
		return err
	}
	made, err := b.result.Join(look, said.Joining)
	var fight *compiler.Conflict
	if errors.As(err, &fight) {
		fmt.Fprintf(by.err, "these cannot be one job: %s\n", fight.Text)
		for _, one := range fight.Related {
			at := one.Place.Start()
			fmt.Fprintf(by.err, "  %s:%d:%d: %s\n", b.shop.shown(one.Place.File.Path), at.Line, at.Column, one.Text)
		}
		if fight.Help != "" {
			fmt.Fprintf(by.err, "  write: %s\n", fight.Help)
		}
		return errFindings
	}
	if err != nil {
		return err
	}
	if said.keep {
		if _, err := os.Lstat(filepath.Join(b.shop.folder, made.Name+".toml")); err == nil {
			return fmt.Errorf("%s is there already; give the job another --name", filepath.Join(b.shop.name, made.Name+".toml"))
		}
	}
	result := &build{shop: b.shop, result: made.Result, folder: b.folder, shown: b.shown}
	if slices.ContainsFunc(made.Result.Findings, finding.Finding.Holds) {
		if err := by.draw(by.err, b.shop, made.Result.Findings); err != nil {
			return err
		}
		return fmt.Errorf("as one job there are errors that the procedures by themselves have not; nothing is written")
	}
	outputs, troubles, err := made.Pages(look)
	if err != nil {
		return err
	}
	if err := by.writeSheets(result, outputs, troubles, said.json); err != nil {
		return err
	}
	if said.keep {
		files, err := writeAll(b.shop.folder, b.shop.name, []compiler.Output{{Name: made.Name + ".toml", Bytes: made.Source}})
		if err != nil {
			return err
		}
		to := by.out
		if said.json {
			to = by.err
		}
		fmt.Fprintf(to, "wrote      %s\n", files[0].path)
	}
	if said.json {
		if _, err := by.out.Write(made.JSON()); err != nil {
			return err
		}
	} else {
		by.tellJoined(made, said)
	}
	if len(said.without) > 0 {
		return errFindings
	}
	return nil
}

// choose fills in which procedures are joined.
func (by *caller) choose(b *build, paths []string, look compiler.Look, said *joined) error {
	if err := b.result.CheckUnit(said.Unit); err != nil {
		return err
	}
	if !said.due && said.asked.By != "" {
		return fmt.Errorf("--by says by when something is due, and goes with --due")
	}
	if !said.due {
		if len(b.result.Unchecked) > 0 {
			return fmt.Errorf("%s cannot be read, and nothing is joined; see benchleaf lint", strings.Join(b.result.Unchecked, ", "))
		}
		for _, job := range b.result.Jobs {
			named := slices.ContainsFunc(paths, func(name string) bool { return filepath.Base(name) == filepath.Base(job.Path) })
			if !slices.Contains(said.Procedures, job.Name) && (named || slices.Contains(b.result.Procedures(said.Unit), job.Name) || said.Unit == "" && !job.Joined()) {
				said.Procedures = append(said.Procedures, job.Name)
			}
		}
		if len(said.Procedures) == 1 {
			return fmt.Errorf("%s alone is one job already; print its card", said.Procedures[0])
		}
		return nil
	}
	if said.Unit == "" {
		return fmt.Errorf("--due wants to know at which machine; say --unit")
	}
	said.asked.On = said.On
	err := b.shop.reading(func(book compiler.BookText) error {
		due, err := b.result.Due(look, said.asked, book)
		if err != nil {
			return err
		}
		said.Procedures, said.without = due.Joins(said.Unit)
		return nil
	})
	for _, name := range said.without {
		fmt.Fprintf(by.err, "left out: %s\n", b.result.HeldBack(name))
	}
	for _, path := range b.result.Unchecked {
		fmt.Fprintf(by.err, "left out: %s cannot be read; see benchleaf lint\n", b.shop.shown(path))
		said.without = append(said.without, path)
	}
	if err == nil && len(said.Procedures) < 2 {
		return fmt.Errorf("fewer than two procedures are due at %q then: %s; do it by its own card (benchleaf print), or say --by a later day", said.Unit, cmp.Or(strings.Join(said.Procedures, ", "), "none"))
	}
	return err
}

// tellJoined says what was joined and what it saves.
func (by *caller) tellJoined(made *compiler.Joined, said joined) {
	fmt.Fprintf(by.out, "%s: %s\n", made.Name, strings.Join(said.Procedures, ", "))
	if made.ForOne != "" {
		fmt.Fprintf(by.out, "planned for one: %s\n", made.ForOne)
	}
	claim := "proved shortest under the listed times"
	if !made.Proved {
		claim = fmt.Sprintf("at most %d %% above a proved bound", made.Percent)
	}
	fmt.Fprintf(by.out, "%s instead of %s one after the other, %s\n", spanOf(made.Length), spanOf(made.Apart), claim)
	fmt.Fprintf(by.out, "energies cut off %d instead of %d, covers off %d instead of %d, turned or raised %d instead of %d, other tools taken %d instead of %d\n",
		made.Changes.Isolations, made.Without.Isolations, made.Changes.Covers, made.Without.Covers, made.Changes.Turns, made.Without.Turns, made.Changes.Tools, made.Without.Tools)
}

// spanOf writes seconds as hours and minutes, up to the whole minute.
func spanOf(seconds int64) string {
	minutes := (seconds + 59) / 60
	if minutes < 60 {
		return fmt.Sprintf("%d min", minutes)
	}
	return fmt.Sprintf("%d h %02d min", minutes/60, minutes%60)
}
