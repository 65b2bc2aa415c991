package pages_test

import (
	"testing"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func stock(t *testing.T, name string) pages.Stock {
	t.Helper()
	found, err := pages.FindStock(name)
	require.NoError(t, err)
	return found
}

// Every side of the cards is on a sheet once; a back lies behind its front when the
// sheet is turned over its long edge, and no card lies on another or off the sheet.
func TestSmallCardsMeetOnTheBackOfTheirSheet(t *testing.T) {
	for _, turn := range []string{"long", "short"} {
		card, sheet := stock(t, "a6"), stock(t, "a4")
		card.Turn = turn
		document, problems := pages.LayCard(pagestest.Card(), pages.Look{Stock: card})
		require.Empty(t, problems)
		sheets, err := pages.Impose([]pages.Document{document, document}, card, sheet)
		require.NoError(t, err)
		leaves := (len(document.Sides) + 1) / 2 * 2
		assert.Len(t, sheets.Sides, (leaves+3)/4*2, "four to a sheet, both sides")
		fronts, backs := 0, 0
		for i := 0; i < len(sheets.Sides); i += 2 {
			front, back := sheets.Sides[i], sheets.Sides[i+1]
			places := map[string]pages.Rectangle{}
			for k, box := range front.Boxes {
				places[box.ID] = box.Place
				assert.GreaterOrEqual(t, box.Place.X, 0.0)
				assert.LessOrEqual(t, box.Place.Right(), sheet.Width+1e-9)
				assert.LessOrEqual(t, box.Place.Bottom(), sheet.Height+1e-9)
				for _, other := range front.Boxes[:k] {
					apart := box.Place.X >= other.Place.Right()-1e-9 || other.Place.X >= box.Place.Right()-1e-9 || box.Place.Y >= other.Place.Bottom()-1e-9 || other.Place.Y >= box.Place.Bottom()-1e-9
					assert.True(t, apart, "two cards lie on each other")
				}
			}
			for _, box := range back.Boxes {
				there, ok := places[box.ID]
				require.True(t, ok, "a back with no front")
				assert.InDelta(t, sheet.Width-there.Right(), box.Place.X, 1e-9, turn)
				assert.InDelta(t, there.Y, box.Place.Y, 1e-9, turn)
			}
			turned := 0
			for _, mark := range back.Marks {
				if _, ok := mark.(pages.Turned); ok {
					turned++
				}
			}
			if turn == "short" {
				assert.Equal(t, len(back.Boxes), turned)
			} else {
				assert.Zero(t, turned)
			}
			fronts, backs = fronts+len(front.Boxes), backs+len(back.Boxes)
		}
		assert.Equal(t, leaves, fronts)
		assert.Equal(t, 2*len(document.Sides)-leaves, backs)
	}
}

func TestACardLargerThanItsSheetIsRefused(t *testing.T) {
	document, _ := pages.LayCard(pagestest.Card(), pages.Look{})
	_, err := pages.Impose([]pages.Document{document}, stock(t, "a4"), stock(t, "a5"))
	assert.EqualError(t, err, "A4 sheet does not fit on A5 card")
}
