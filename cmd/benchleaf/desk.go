package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"slices"
	"syscall"

	"github.com/spf13/cobra"

	"benchleaf/cmd/internal/desk"
	"benchleaf/compiler"
)

func deskCommand(by *caller) *cobra.Command {
	port := 0
	cmd := &cobra.Command{
		Use:   "desk [FOLDER]",
		Short: "Write procedures in the browser, checked and drawn as you type",
		Long: `Desk serves a page to the browser of this computer and to nobody else: the files of
the shop, an editor that says what is wrong while you type, the printed card beside it,
and forms for a new machine, a new procedure and a step. Open the address it prints. It
needs no network, writes nothing but .toml files of the shop folder, and those only when
you save. The shop folder is the nearest at or above the folder that holds shop.toml, or
else the folder itself. Stop it with Ctrl+C.`,
		Example: `  benchleaf desk                  the shop of this folder
  benchleaf desk procedures       another shop
  benchleaf desk --port 8123      always at the same port`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, paths []string) error {
			collectSeldom()
			folder := "."
			if len(paths) > 0 {
				folder = paths[0]
			}
			return by.desk(folder, port)
		},
	}
	cmd.Flags().IntVar(&port, "port", 0, "port of this computer to serve at; any that is free when left out")
	return cmd
}

func (by *caller) desk(asked string, port int) error {
	if port < 0 || port > 65535 {
		return fmt.Errorf("there is no port %d; a port is from 1 to 65535", port)
	}
	shop, err := by.deskShop(asked)
	if err != nil {
		return err
	}
	served, err := desk.Open(shop, port)
	if err != nil {
		return err
	}
	until, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	fmt.Fprintf(by.out, "The writing desk of %s is open. Open this address in the browser of this computer:\n\n  %s\n\nStop it with Ctrl+C.\n", shop.folder, served.Address())
	return served.Serve(until)
}

// deskShop is a shop folder for the writing desk.
type deskShop struct{ folder string }

// deskShop finds the shop folder at or above a folder.
func (by *caller) deskShop(asked string) (deskShop, error) {
	folder, err := filepath.EvalSymlinks(by.from(asked))
	if err != nil {
		return deskShop{}, fmt.Errorf("there is no folder %s", asked)
	}
	if info, err := os.Stat(folder); err != nil || !info.IsDir() {
		return deskShop{}, fmt.Errorf("%s is no folder; give the folder it lies in", asked)
	}
	f := finder{shops: map[string]string{}}
	if above := f.above(folder); above != "" {
		folder = above
	}
	return deskShop{folder}, nil
}

func (d deskShop) Folder() string { return d.folder }

// Read reads the shop anew, texts that are not saved in place of the files.
func (d deskShop) Read(unsaved map[string][]byte) (compiler.Input, []error) {
	f, err := gather(d.folder, []string{"."})
	if err != nil {
		return compiler.Input{}, []error{err}
	}
	s := &shop{folder: d.folder, name: ".", whole: true, unsaved: unsaved, shown: filepath.FromSlash}
	for _, file := range f.files {
		if short, err := filepath.Rel(d.folder, file); err == nil && f.shop(file) == d.folder {
			s.targets = append(s.targets, filepath.ToSlash(short))
		}
	}
	for path := range unsaved {
		if !slices.Contains(s.targets, path) {
			s.targets = append(s.targets, path)
		}
	}
	slices.Sort(s.targets)
	faults := append(append(f.faults, f.away...), s.read(compiler.Uses)...)
	return compiler.Input{Files: s.files, Targets: s.targets, Whole: s.whole, Pictures: s.pictures, Today: today()}, faults
}
