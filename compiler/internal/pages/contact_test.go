package pages_test

import (
	"fmt"
	"testing"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAContactSheetHoldsEverySideOnce(t *testing.T) {
	stocks, err := pages.Stocks()
	require.NoError(t, err)
	var groups []pages.Laid
	var want []string
	for _, stock := range stocks {
		group := pages.Laid{Stock: stock}
		for seed := range uint64(3) {
			document, _ := pages.LayCard(pagestest.Random(seed), pages.Look{Stock: stock})
			for i := range document.Sides {
				want = append(want, fmt.Sprintf("%s %d", document.Title, i+1))
			}
			group.Documents = append(group.Documents, document)
		}
		groups = append(groups, group)
	}
	document, err := pages.LayContact(groups, "Harrow Lane Mill", pagestest.Words())
	require.NoError(t, err)
	var there []string
	for _, side := range document.Sides {
		for i, box := range side.Boxes {
			assert.Empty(t, pagestest.Inside(box.Place, side.Safe), "sheet %d: %s", side.Number, box.ID)
			for _, other := range side.Boxes[:i] {
				assert.False(t, pagestest.Overlap(box.Place, other.Place), "sheet %d: %s lies over %s", side.Number, box.ID, other.ID)
			}
			if box.Kind == "side" {
				there = append(there, box.ID)
			}
		}
		for _, mark := range side.Marks { // what lies on a small side stays on the sheet
			if text, is := mark.(pages.Text); is {
				assert.Empty(t, pagestest.Inside(pagestest.InkOf(text), side.Safe), "sheet %d: %q", side.Number, text.Text)
			}
		}
	}
	assert.Equal(t, want, there)
}

// A small side is the side: each letter stands where it stood, and is as much smaller as the side is.
func TestASmallSideIsTheSide(t *testing.T) {
	stock, err := pages.FindStock("a5")
	require.NoError(t, err)
	card, _ := pages.LayCard(pagestest.Card(), pages.Look{Stock: stock})
	document, err := pages.LayContact([]pages.Laid{{Stock: stock, Documents: []pages.Document{card}}}, "", pagestest.Words())
	require.NoError(t, err)
	require.Len(t, document.Sides, 1)
	texts := func(side pages.Side) (out []pages.Text) {
		for _, mark := range side.Marks {
			if text, is := mark.(pages.Text); is {
				out = append(out, text)
			}
		}
		return out
	}
	small := texts(document.Sides[0])[1:] // behind the head
	for _, side := range card.Sides {
		small = small[1:] // behind what stands over the side
		all := texts(side)
		for i, text := range all {
			by := 80 / side.Height
			assert.Equal(t, text.Text, small[i].Text)
			assert.InDelta(t, text.Size*by, small[i].Size, 1e-9)
			assert.InDelta(t, (text.X-all[0].X)*by, small[i].X-small[0].X, 1e-9)
			assert.InDelta(t, (text.Y-all[0].Y)*by, small[i].Y-small[0].Y, 1e-9)
		}
		small = small[len(all):]
	}
}
