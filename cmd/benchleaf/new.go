package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"github.com/spf13/cobra"

	"benchleaf/cmd/internal/disk"
	"benchleaf/compiler"
	"benchleaf/schema"
	"benchleaf/templates"
)

func newCommand(by *caller) *cobra.Command {
	var asShop, second bool
	cmd := &cobra.Command{
		Use:   "new PATH",
		Short: "Write a procedure, a whole shop or a second reading, to fill in",
		Long: `New writes a procedure with blanks. Beside each blank stands what to write there,
with an example; benchleaf lint names every blank that is left. With --shop it
writes a shop folder: the shop, its tools, a machine and a first procedure. With
--second it writes the figures of a file as blanks, for another person to read in
the manual again; lint then holds the two readings against each other.
It never writes over a file.`,
		Example: `  benchleaf new gearbox-oil.toml     one procedure that needs no other file
  benchleaf new --shop workshop      a shop folder to build on
  benchleaf new --second mill.toml   blanks for a second reading, as second/mill.toml`,
		RunE: func(cmd *cobra.Command, paths []string) error {
			switch {
			case len(paths) == 0:
				return fmt.Errorf("new needs a path, such as gearbox-oil.toml\n  see: benchleaf new --help")
			case len(paths) > 1:
				return fmt.Errorf("new writes one path at a time, not %d\n  see: benchleaf new --help", len(paths))
			case asShop && second:
				return fmt.Errorf("give --shop or --second, not both\n  see: benchleaf new --help")
			case second:
				return by.newSecond(paths[0])
			case asShop:
				return by.newShop(paths[0])
			}
			return by.newProcedure(paths[0])
		},
	}
	cmd.Flags().BoolVar(&asShop, "shop", false, "write a shop folder with tools, a machine and a first procedure")
	cmd.Flags().BoolVar(&second, "second", false, "write the blanks of a second reading of the file")
	return cmd
}

// from makes a path the caller gave a path of the disk.
func (by *caller) from(path string) string {
	if filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(by.folder, path)
}

var shortName = regexp.MustCompile(schema.NamePattern)

func (by *caller) newProcedure(asked string) error {
	if filepath.Ext(asked) == "" {
		asked += ".toml"
	}
	stem, isTOML := strings.CutSuffix(filepath.Base(asked), ".toml")
	if !isTOML {
		return fmt.Errorf("the name of a procedure file ends in .toml, not %s", filepath.Ext(asked))
	}
	if !shortName.MatchString(stem) {
		return fmt.Errorf("%q is not a short name; write it in lower case letters and figures, words joined by hyphens, such as gearbox-oil.toml", stem)
	}
	if filepath.Base(asked) == compiler.Shopfile {
		return fmt.Errorf("%s is the name of the shop's own file; give the procedure another, or write a shop with --shop", compiler.Shopfile)
	}
	text, err := templates.Files.ReadFile("scaffold/procedure.toml")
	if err != nil {
		return err
	}
	if err := by.create(asked, text); err != nil {
		return err
	}
	fmt.Fprintf(by.out, "\nFill in the blanks, then: benchleaf lint %s\n", asked)
	return nil
}

// newSecond writes the blanks of a second reading of a file, beside it.
func (by *caller) newSecond(asked string) error {
	path, ok := compiler.SecondPath(filepath.ToSlash(asked))
	if !ok || filepath.Ext(asked) != ".toml" {
		return fmt.Errorf("%s is no file of first readings; give a procedure, a machine or a library, such as log-deck.toml", asked)
	}
	shops, err := load(by.folder, []string{asked})
	if err != nil {
		return err
	}
	var blanks string
	for _, s := range shops {
		for _, file := range s.files {
			if file.Path == s.targets[0] {
				if blanks, ok = compiler.SecondReading(file); !ok {
					return fmt.Errorf("%s cannot be read yet\n  see: benchleaf lint %s", asked, asked)
				}
			}
		}
	}
	if blanks == "" {
		return fmt.Errorf("%s has no figures to read a second time", asked)
	}
	text, err := templates.Files.ReadFile("scaffold/second.toml")
	if err != nil {
		return err
	}
	if err := by.create(filepath.FromSlash(path), append(text, blanks...)); err != nil {
		return err
	}
	fmt.Fprintf(by.out, "\nHave another person fill in the blanks, then: benchleaf lint %s\n", asked)
	return nil
}

func (by *caller) newShop(asked string) error {
	shop, err := fs.Sub(templates.Files, "scaffold/shop")
	if err != nil {
		return err
	}
	var names []string
	err = fs.WalkDir(shop, ".", func(name string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() {
			names = append(names, name)
		}
		return err
	})
	if err != nil {
		return err
	}
	for _, name := range names {
		path := filepath.Join(asked, filepath.FromSlash(name))
		if _, err := os.Lstat(by.from(path)); err == nil {
			return standing(path)
		}
	}
	for _, name := range names {
		text, err := fs.ReadFile(shop, name)
		if err != nil {
			return err
		}
		if err := by.create(filepath.Join(asked, filepath.FromSlash(name)), text); err != nil {
			return err
		}
	}
	fmt.Fprintf(by.out, "\nFill in the blanks, then: benchleaf lint %s\n", asked)
	return nil
}

func standing(path string) error {
	return fmt.Errorf("%s is there already, and benchleaf new never writes over a file", path)
}

// create writes a file that is not there yet, with the folders above it.
func (by *caller) create(asked string, text []byte) error {
	path := by.from(asked)
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		return fmt.Errorf("the folder %s cannot be made: %w", filepath.Dir(asked), disk.Reason(err))
	}
	file, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o666)
	if errors.Is(err, fs.ErrExist) {
		return standing(asked)
	}
	if err == nil {
		err = errors.Join(second(file.Write(text)), file.Sync(), file.Close())
		if err != nil {
			os.Remove(path)
		}
	}
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", asked, disk.Reason(err))
	}
	fmt.Fprintf(by.out, "wrote  %s\n", asked)
	return nil
}

func second(_ int, err error) error { return err }
