package compiler

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
)

func TestEachVersionHasItsPhonePage(t *testing.T) {
	result := Compile(Input{Files: shopFiles(t)})
	pages, err := result.Phones(Look{})
	require.NoError(t, err)
	require.Len(t, pages, len(result.Jobs))
	names := map[string]bool{}
	for _, page := range pages {
		names[page.Name] = true
		require.Len(t, page.Jobs, 1)
	}
	assert.Len(t, names, len(pages))
	assert.True(t, names["log-deck-gearbox-oil-six-metre.html"] && names["log-deck-gearbox-oil-nine-metre.html"])
	again, err := Compile(Input{Files: shopFiles(t)}).Phones(Look{})
	require.NoError(t, err)
	for i := range pages {
		assert.Equal(t, string(pages[i].Bytes), string(again[i].Bytes), "%s: same input, same bytes", pages[i].Name)
	}
}

// A reading is held against figures in the unit it is typed in, in each system of units.
func TestEveryReadingOfTheShopCanBeHeldAgainstItsLimit(t *testing.T) {
	for _, units := range Units() {
		cards, err := Compile(Input{Files: shopFiles(t)}).composeEach(Look{Units: units})
		require.NoError(t, err)
		limits, waits := 0, 0
		for _, card := range cards {
			var blanks []plan.Blank
			for _, section := range card.content.Sections {
				for _, step := range section.Steps {
					blanks = append(blanks, step.Readings...)
					if step.Seconds > 0 {
						waits++
					}
				}
			}
			for _, blank := range append(blanks, card.content.Blanks...) {
				if blank.Unit == "" {
					assert.Empty(t, blank.Low+blank.High)
					continue
				}
				unit, known := quantity.FindUnit(blank.Unit)
				assert.True(t, known, blank.Unit)
				if blank.Limit == "" {
					continue
				}
				limits++
				assert.NotEmpty(t, blank.Low+blank.High, blank.Limit)
				for _, bound := range []string{blank.Low, blank.High} {
					if bound == "" {
						continue
					}
					value, ok := new(big.Rat).SetString(bound)
					require.True(t, ok, bound)
					read, problems := quantity.Parse(bound+" "+blank.Unit, unit.Dimension)
					assert.Empty(t, problems, "%s %s", bound, blank.Unit)
					least, _ := read.Min()
					assert.Zero(t, least.Cmp(unit.ToBase(value)), "%s %s", bound, blank.Unit)
				}
			}
		}
		assert.GreaterOrEqual(t, limits, 15, units)
		assert.GreaterOrEqual(t, waits, 15, units)
	}
}
