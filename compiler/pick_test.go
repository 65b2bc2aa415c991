package compiler

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/source"
)

// What the card of a procedure says to bring is what its own pick list says to take: for
// every procedure of the shop, and for those of the cases that get a card.
func TestThePickListOfOneProcedureHoldsTheToolsOfItsCard(t *testing.T) {
	var shop []*source.File
	cases := [][]*source.File{}
	for _, folder := range []string{"../procedures", "../testdata/clean", "../testdata/broken"} {
		root := os.DirFS(folder)
		require.NoError(t, fs.WalkDir(root, ".", func(path string, entry fs.DirEntry, err error) error {
			if err != nil || entry.IsDir() || !strings.HasSuffix(path, ".toml") {
				return err
			}
			text, err := fs.ReadFile(root, path)
			if file := source.New(path, text); filepath.Base(folder) == "procedures" {
				shop = append(shop, file)
			} else {
				cases = append(cases, []*source.File{file})
			}
			return err
		}))
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
