package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
)

func lintCommand(by *caller) *cobra.Command {
	var asJSON, asSARIF, fix bool
	cmd := &cobra.Command{
		Use:   "lint [PATH…]",
		Short: "Check procedures, machines and libraries",
		Long: `Lint checks every .toml file at or below the paths, this folder when none is
given, and draws what is wrong or missing: the place, why it matters at the
machine and what to write. Hidden folders and folders named out are passed over.

Files that a file uses, and shop.toml, are read too, but never from outside the
shop folder: the nearest folder that holds shop.toml, or else the folder given.

It ends with status 0 when nothing stands against the files or only notes do,
1 when a warning or an error does, and 2 when it could not run.`,
		Example: `  benchleaf lint                       everything in this folder
  benchleaf lint procedures            one folder
  benchleaf lint gearbox-oil.toml      one file
  benchleaf lint --fix                 mend what can be mended for certain
  benchleaf lint --json > lint.json    for other programs
  benchleaf lint --sarif > lint.sarif  for programs that show findings of many tools`,
		RunE: func(_ *cobra.Command, paths []string) error {
			switch {
			case asJSON:
				return by.lint(paths, fix, "--json", (*compiler.Result).JSON)
			case asSARIF:
				return by.lint(paths, fix, "--sarif", func(r *compiler.Result) []byte { return r.SARIF(version()) })
			}
			return by.lint(paths, fix, "", nil)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "write the findings as JSON, with paths from the shop folder")
	cmd.Flags().BoolVar(&asSARIF, "sarif", false, "write the findings as a SARIF 2.1.0 log, with paths from the shop folder")
	cmd.MarkFlagsMutuallyExclusive("json", "sarif")
	cmd.Flags().BoolVar(&fix, "fix", false, "mend what can be mended for certain, and check again")
	return cmd
}

// lint checks and tells what was found: to people, or, where a flag asks for it, to programs,
// with what writes that.
func (by *caller) lint(paths []string, fix bool, flag string, written func(*compiler.Result) []byte) error {
	shops, away, err := loadBut(by.folder, paths, compiler.Uses)
	if err != nil || len(shops) == 0 {
		return errors.Join(away, err)
	}
	if written != nil && len(shops) > 1 {
		return fmt.Errorf("%s writes one shop at a time; give one of: %s", flag, strings.Join(shopNames(shops), ", "))
	}
	if fix {
		if shops, err = by.mend(shops, paths, written != nil); err != nil {
			return err
		}
	}
	var all tally
	for i, s := range shops {
		result := s.inspect()
		all.add(s, result)
		if written != nil {
			_, err = by.out.Write(written(result))
		} else {
			if i > 0 && len(result.Findings) > 0 {
				fmt.Fprintln(by.out)
			}
			err = by.draw(by.out, s, result.Findings)
		}
		if err != nil {
			return err
		}
	}
	notes := by.out
	if written != nil {
		notes = by.err
	}
	apart := all.by != [finding.Error + 1]int{} && written == nil
	for _, s := range shops {
		for _, path := range s.passed {
			if apart {
				fmt.Fprintln(notes)
				apart = false
			}
			fmt.Fprintln(notes, passedOver(path))
		}
	}
	if written == nil {
		if all.by != [finding.Error + 1]int{} {
			fmt.Fprintln(by.out)
		}
		fmt.Fprintln(by.out, all.String())
	}
	if away != nil {
		return away
	}
	if all.by[finding.Warning]+all.by[finding.Error] > 0 {
		return errFindings
	}
	return nil
}

func shopNames(shops []*shop) []string {
	var names []string
	for _, s := range shops {
		names = append(names, s.name)
	}
	return names
}

// mostRounds is how often files are mended and checked again: a mended file can
// show faults that were hidden behind the first ones.
const mostRounds = 10

// mend applies the certain fixes until nothing changes, and reads the files again.
func (by *caller) mend(shops []*shop, paths []string, quiet bool) ([]*shop, error) {
	mended, files := 0, map[string]bool{}
	for range mostRounds {
		changed := 0
		before := map[string]int{}
		for _, s := range shops {
			result := s.inspect()
			outputs, mends := result.Fix()
			for _, output := range outputs {
				if _, asked := slices.BinarySearch(s.targets, output.Name); !asked {
					continue
				}
				for _, mend := range mends {
					if mend.Place.File.Path == output.Name && !quiet {
						fmt.Fprintf(by.out, "%s:%d: %s\n", s.shown(output.Name), mend.Place.Start().Line, lowerFirst(mend.Title))
					}
				}
				path := filepath.Join(s.folder, filepath.FromSlash(output.Name))
				if err := replace(path, s.text(output.Name), output.Bytes); err != nil {
					return nil, fmt.Errorf("%s cannot be mended: %w", s.shown(output.Name), err)
				}
				changed++
				files[path] = true
			}
			countCertain(s, result, before)
		}
		if changed == 0 {
			break
		}
		again, _, err := loadBut(by.folder, paths, compiler.Uses)
		if err != nil {
			return nil, err
		}
		shops = again
		after := map[string]int{}
		for _, s := range shops {
			countCertain(s, s.inspect(), after)
		}
		for key, n := range before {
			mended += max(0, n-after[key])
		}
	}
	if !quiet {
		switch {
		case mended == 0:
			fmt.Fprintln(by.out, "nothing can be mended for certain")
		default:
			fmt.Fprintf(by.out, "mended %s in %s\n", many(mended, "finding", "findings"), many(len(files), "file", "files"))
		}
		fmt.Fprintln(by.out)
	}
	return shops, nil
}

// countCertain counts the findings a certain fix is known for.
func countCertain(s *shop, result *compiler.Result, into map[string]int) {
	for _, found := range result.Findings {
		if slices.ContainsFunc(found.Fixes, func(fix finding.Fix) bool { return fix.Certain }) {
			into[strings.Join([]string{s.folder, found.Place.File.Path, found.Rule, found.Summary}, "\x00")]++
		}
	}
}

// text is what was read of a file.
func (s *shop) text(path string) []byte {
	for _, file := range s.files {
		if file.Path == path {
			return file.Text
		}
	}
	return nil
}

func lowerFirst(text string) string {
	if text == "" {
		return text
	}
	return strings.ToLower(text[:1]) + text[1:]
}
