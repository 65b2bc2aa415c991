package compiler

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/source"
)

func shopFiles(t *testing.T) []*source.File { return ReadFolder(t, "../procedures") }

// What the card of a procedure says to bring is what its own pick list says to take: for
// every procedure of the shop, and for those of the cases that get a card.
func TestThePickListOfOneProcedureHoldsTheToolsOfItsCard(t *testing.T) {
	shop := shopFiles(t)
	var cases [][]*source.File
	for _, file := range append(ReadFolder(t, "../testdata/clean"), ReadFolder(t, "../testdata/broken")...) {
		cases = append(cases, []*source.File{file})
	}
	held := 0
	for _, files := range append(cases, shop) {
		cards, err := Compile(Input{Files: files}).compose(Look{})
		require.NoError(t, err)
		for _, card := range cards {
			held++
			list, err := compose.Pick([]compose.Asked{{Work: card.jobs[0].work, Variant: card.content.Variant}}, quantity.Both, nil)
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
