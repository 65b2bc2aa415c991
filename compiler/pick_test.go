package compiler

import (
	"io/fs"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/source"
)

// filesIn reads the procedure files of a folder, with paths from there.
func filesIn(t *testing.T, folder string) []*source.File {
	t.Helper()
	var out []*source.File
	root := os.DirFS(folder)
	require.NoError(t, fs.WalkDir(root, ".", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, ".toml") {
			return err
		}
		text, err := fs.ReadFile(root, path)
		out = append(out, source.New(path, text))
		return err
	}))
	return out
}

func shopFiles(t *testing.T) []*source.File { return filesIn(t, "../procedures") }

// What the card of a procedure says to bring is what its own pick list says to take: for
// every procedure of the shop, and for those of the cases that get a card.
func TestThePickListOfOneProcedureHoldsTheToolsOfItsCard(t *testing.T) {
	shop := shopFiles(t)
	var cases [][]*source.File
	for _, file := range append(filesIn(t, "../testdata/clean"), filesIn(t, "../testdata/broken")...) {
		cases = append(cases, []*source.File{file})
	}
	held := 0
	for _, files := range append(cases, shop) {
		cards, err := Compile(Input{Files: files}).compose(Look{})
		require.NoError(t, err)
		for _, card := range cards {
			held++
			list, err := compose.Pick([]compose.Asked{{Work: card.jobs[0].work, Variant: card.content.Variant}}, quantity.Both)
			require.NoError(t, err)
			var onCard, onList []string
			for _, item := range card.content.Tools {
				onCard = append(onCard, item.Quantity+" "+item.Name)
			}
			for _, group := range list.Groups {
				for _, line := range group.Lines {
					if group.Kind == "tools" {
						onList = append(onList, line.Quantity+" "+line.Name)
						assert.NotEmpty(t, line.For, line.Name)
					}
				}
			}
			assert.ElementsMatch(t, onCard, onList, card.name())
		}
	}
	assert.Greater(t, held, 150)
}
