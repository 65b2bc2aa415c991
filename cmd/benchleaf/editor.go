package main

import (
	"cmp"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"time"

	"github.com/spf13/cobra"

	"benchleaf/cmd/internal/editor"
	"benchleaf/compiler"
)

func editorCommand(by *caller) *cobra.Command {
	return &cobra.Command{
		Use:   "editor",
		Short: "Help an editor while a procedure is written",
		Long: `Editor speaks the Language Server Protocol 3.17 on standard input and output: an editor
starts it, and shows what is wrong as you type, with fixes, completion, help under the cursor,
renaming over the whole shop, an outline and the file in its one layout. What is not saved
counts. It writes no file; the editor does.`,
		Example: `  benchleaf editor        an editor starts it; see the README for how two of them are told to`,
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			collectSeldom()
			err := editor.Serve(cmd.Context(), pipe{by.in, by.out}, openShop)
			if errors.Is(err, editor.ErrNotShutDown) {
				return errFindings // the protocol wants this status
			}
			return err
		},
	}
}

// pipe is standard input and output as one stream.
type pipe struct {
	io.Reader
	io.Writer
}

func (pipe) Close() error { return nil }

// openShop reads the whole shop that a file lies in; where it lies in none, that file and what it
// uses. Neither the file nor its folder need be there.
func openShop(file string) (editor.Shop, error) {
	file = filepath.FromSlash(file)
	f := &finder{shops: map[string]string{}}
	folder := f.above(filepath.Dir(file))
	out := editor.Shop{Folder: filepath.ToSlash(cmp.Or(folder, filepath.Dir(file))), Lone: folder == "", Today: today()} // as the editor calls it
	of := cmp.Or(folder, file)
	resolved, err := filepath.EvalSymlinks(of)
	if errors.Is(err, fs.ErrNotExist) && out.Lone {
		out.Stale = stamped(nil, []string{file})
		return out, nil // a new file
	}
	if err != nil {
		return editor.Shop{}, err
	}
	root := resolved
	if out.Lone {
		root = filepath.Dir(resolved)
	}
	shops, err := load(root, []string{resolved})
	var read *shop
	for _, one := range shops {
		if one.folder == root {
			read, out.Files, out.Pictures, err = one, one.files, one.pictures, nil // as far as it can be read
		}
	}
	if read != nil && !out.Lone {
		out.Booked = read.booked
	}
	out.Stale = stamped(read, []string{file, of})
	if _, missing := os.Stat(file); missing != nil || out.Lone {
		err = nil // a new file, which may be the first, or one whose text the editor has
	}
	return out, err
}

// booked reports whether entries of the service book name a machine, a procedure or something of
// the store so.
func (s *shop) booked(name string) (found bool, err error) {
	err = s.reading(func(book compiler.BookText) error {
		if book == nil {
			return nil
		}
		return compiler.ScanBook(io.NewSectionReader(book, 0, book.Size()), func(e compiler.Entry, _ int) error {
			found = found || e.Unit == name || e.Procedure == name || slices.ContainsFunc(slices.Concat(e.Used, e.Received), func(m compiler.Moved) bool { return m.What == name })
			return nil
		})
	})
	if found {
		return true, nil // whatever else cannot be read
	}
	return false, err
}

// stamped tells whether files, those of a shop, their folders and the shop file above have changed since.
func stamped(s *shop, names []string) func() bool {
	names = append(names, filepath.Join(filepath.Dir(names[0]), compiler.Shopfile))
	if s != nil {
		for _, file := range s.files {
			name := filepath.Join(s.folder, filepath.FromSlash(file.Path))
			names = append(names, name, filepath.Dir(name))
		}
		for _, picture := range s.pictures {
			names = append(names, filepath.Join(s.folder, filepath.FromSlash(picture.Path)))
		}
	}
	slices.Sort(names)
	names = slices.Compact(names)
	stamps := func() []stamp {
		out := make([]stamp, len(names))
		for i, name := range names {
			if info, err := os.Stat(name); err == nil {
				out[i] = stamp{true, info.Size(), info.ModTime()}
			}
		}
		return out
	}
	before := stamps()
	return func() bool { return !slices.Equal(before, stamps()) }
}

// stamp is what tells that a file was written anew.
type stamp struct {
	there bool
	size  int64
	when  time.Time
}
