package compose

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
)

func amount(t *testing.T, text string) model.Amount {
	t.Helper()
	parsed, problems := quantity.Parse(text, quantity.Any)
	require.Empty(t, problems, text)
	return model.Amount{Amount: parsed, OK: true}
}

// Packs to take are the need over the pack, rounded up (1 US qt = 0.946 353 L, 1 US
// gal = 3.785 412 L, NIST Handbook 44 App. C): 1.2 L is 1.27 qt, 5.7 L is 6.02 qt, 20 L is 5.28 gal.
func TestPacksToTake(t *testing.T) {
	w := &writer{system: quantity.Metric, words: plan.Words{Labels: plan.Labels{Left: "left"}}}
	for _, c := range []struct {
		need  string
		packs []string
		want  string
	}{
		{"1.2 L", []string{"1 US qt"}, "2 × 1 US qt, 0.69\u00a0L left"},
		{"5.7 L", []string{"1 US qt"}, "7 × 1 US qt, 0.92\u00a0L left"},
		{"5.7 L", []string{"5 US qt"}, "2 × 5 US qt, 3.76\u00a0L left"},
		{"20 L", []string{"5 US gal"}, "2 × 5 US gal, 17.85\u00a0L left"},
		{"60 g", []string{"397 g"}, "1 × 397 g, 337\u00a0g left"},
		{"42 L", []string{"5 L", "20 L"}, "2 × 20 L + 1 × 5 L, 3\u00a0L left"},
		{"2 L", []string{"1 L", "5 L"}, "2 × 1 L"},
		{"300 L", []string{"1 L", "20 L"}, "15 × 20 L"},
		{"1 L", []string{"1 kg"}, ""},
		{"1 L", nil, ""},
	} {
		var packs []model.Amount
		for _, pack := range c.packs {
			packs = append(packs, amount(t, pack))
		}
		got := w.packs(needs.Total{Amounts: []quantity.Amount{amount(t, c.need).Amount}}, packs)
		assert.Equal(t, c.want, got, "%s from %v", c.need, c.packs)
	}
}

func TestCommonMarkOfAStep(t *testing.T) {
	assert.Equal(t, []plan.Block{
		{Runs: []plan.Run{{Text: "Hold it "}, {Text: "square", Bold: true}, {Text: "."}}},
		{Bullet: "•", Runs: []plan.Run{{Text: "Look for drips & dust."}}},
		{Bullet: "•", Runs: []plan.Run{{Text: "Wipe "}, {Text: "twice", Italic: true}, {Text: "."}}},
		{Bullet: "3.", Runs: []plan.Run{{Text: "Third"}}},
	}, blocks("Hold it **square**.\n\n- Look for drips \\& dust.\n- Wipe *twice*.\n\n3. Third\n"))
	assert.Empty(t, blocks("  \n"))
}

func TestTitlesInsideASentence(t *testing.T) {
	for title, want := range map[string]string{"Gear oil PG": "gear oil PG", "O-ring 98": "O-ring 98", "V-belts": "V-belts", "SPB belts": "SPB belts", "drain pan": "drain pan"} {
		assert.Equal(t, want, lowerTitle(title), title)
	}
}
