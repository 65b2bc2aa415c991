package compiler

import (
	"testing"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every card of the demonstration shop on every stock and in every language, walked box by
// box: nothing lies over anything, nothing leaves the safe area, no letter is smaller than
// 15 minutes of arc or paler than 4.5 : 1, no message is parted, each stands whole before its
// step.
func TestTheWalkOverEveryCardOnEveryStock(t *testing.T) {
	const folder = "../procedures"
	files := ReadFolder(t, folder)
	result := Compile(Input{Files: files, Pictures: ReadPictures(t, folder, files)})
	sides, pictures := 0, 0
	stocks := Stocks()
	if testing.Short() {
		stocks = stocks[:1]
	}
	for _, stock := range stocks {
		for _, language := range Languages() {
			composed, err := result.compose(Look{Stock: stock, Language: language})
			require.NoError(t, err)
			require.NotEmpty(t, composed)
			for _, card := range composed {
				document, problems := pages.LayCard(card.content, card.look)
				name := stock + ", " + language + ", " + card.name()
				assert.Empty(t, problems, name)
				look := card.look
				if look.DistanceMM == 0 {
					look.DistanceMM = 500
				}
				assert.Empty(t, pagestest.Walk(document, look), name)
				assert.Empty(t, pagestest.Every(document, card.content), name)
				want, there := len(card.content.Cautions), 0
				for _, section := range card.content.Sections {
					for _, step := range section.Steps {
						want += len(step.Cautions)
					}
				}
				for _, side := range document.Sides {
					there += len(pagestest.Find(side.Boxes, "caution"))
					pictures += len(pagestest.Find(side.Boxes, "picture")) + len(pagestest.Find(side.Boxes, "map"))
				}
				assert.Equal(t, want, there, "%s: messages, a parted one counted twice", name)
				sides += len(document.Sides)
			}
		}
	}
	assert.Greater(t, sides, 350*len(stocks))
	assert.Greater(t, pictures, 60*len(stocks))
}
