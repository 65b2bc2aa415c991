package main

import (
	"io"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"benchleaf/cmd/internal/editor"
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
			return editor.Serve(cmd.Context(), pipe{by.in, by.out}, openShop)
		},
	}
}

// pipe is standard input and output as one stream.
type pipe struct {
	io.Reader
	io.Writer
}

func (pipe) Close() error { return nil }

// openShop reads the whole shop that a file lies in.
func openShop(file string) (editor.Shop, error) {
	file = filepath.FromSlash(file)
	f := &finder{shops: map[string]string{}}
	folder := f.above(filepath.Dir(file))
	if folder == "" {
		folder = filepath.Dir(file)
	}
	resolved, err := filepath.EvalSymlinks(folder)
	if err != nil {
		return editor.Shop{}, err
	}
	out := editor.Shop{Folder: filepath.ToSlash(folder)} // as the editor calls it
	shops, err := load(resolved, []string{resolved})
	for _, one := range shops {
		if one.folder == resolved {
			out.Files, out.Pictures, err = one.files, one.pictures, nil // as far as it can be read
		}
	}
	if _, missing := os.Stat(file); missing != nil {
		err = nil // a new file, which may be the first
	}
	return out, err
}
