package pages_test

import (
	"fmt"
	"iter"
	"maps"
	"math"
	"slices"
	"strconv"
	"testing"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"
	"benchleaf/compiler/internal/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func looks(t *testing.T, distances ...float64) map[string]pages.Look {
	t.Helper()
	stocks, err := pages.Stocks()
	require.NoError(t, err)
	out := map[string]pages.Look{}
	for _, stock := range stocks {
		for _, distance := range distances {
			distance = min(distance, math.Floor(stock.Farthest()))
			out[fmt.Sprintf("%s at %.0f mm", stock.Name, distance)] = pages.Look{Stock: stock, DistanceMM: distance}
		}
		stock.Sides, stock.Binding = 1, 10
		out[stock.Name+" bound"] = pages.Look{Stock: stock, DistanceMM: min(450, math.Floor(stock.Farthest()))}
	}
	return out
}

func TestNothingCollidesOnAnyStock(t *testing.T) {
	for name, look := range looks(t, 400, 500, 680) {
		doc, problems := pages.LayCard(pagestest.Card(), look)
		assert.Empty(t, problems, name)
		report(t, name, pagestest.Walk(doc, look))
		list, problems := pages.LayPick(pagestest.PickList(), look)
		assert.Empty(t, problems, name)
		report(t, name+", list", pagestest.Walk(list, look))
		record, problems := pages.LayRecordSheet(pagestest.RecordSheet(), look)
		assert.Empty(t, problems, name)
		report(t, name+", record", pagestest.Walk(record, look))
		chart, _ := pages.LayWallChart(pagestest.WallChart(), look) // on small stock its intervals are said to be squeezed
		report(t, name+", chart", pagestest.Walk(chart, look))
		gauge, problems := pages.LayGauge(pagestest.Gauge(), look)
		assert.Empty(t, problems, name)
		report(t, name+", gauge", pagestest.Walk(gauge, look))
	}
}

func TestNothingCollidesOnCardsNoAuthorWouldWrite(t *testing.T) {
	strewn(t, 80, func(seed uint64, look pages.Look) (pages.Document, []pages.Problem) {
		card := pagestest.Random(seed)
		doc, problems := pages.LayCard(card, look)
		for _, problem := range problems {
			assert.NotEmpty(t, problem.Where, "seed %d", seed)
		}
		report(t, fmt.Sprintf("seed %d", seed), pagestest.Every(doc, card))
		return doc, problems
	})
}

func TestNothingCollidesOnListsNoShopWouldHave(t *testing.T) {
	strewn(t, 60, func(seed uint64, look pages.Look) (pages.Document, []pages.Problem) {
		list := pagestest.RandomList(seed)
		doc, problems := pages.LayPick(list, look)
		lines := 0
		for _, group := range list.Groups {
			lines += len(group.Lines)
		}
		assert.GreaterOrEqual(t, count(doc, "row"), lines, "seed %d", seed)
		return doc, problems
	})
}

func TestNothingCollidesOnApprovalSheetsNoJobWouldHave(t *testing.T) {
	strewn(t, 60, func(seed uint64, look pages.Look) (pages.Document, []pages.Problem) {
		sheet := pagestest.RandomApproval(seed)
		doc, problems := pages.LayApproval(sheet, look)
		assert.GreaterOrEqual(t, count(doc, "figure"), len(sheet.Figures), "seed %d", seed)
		last := doc.Sides[len(doc.Sides)-1]
		assert.Len(t, pagestest.Find(last.Boxes, "record"), 1, "the names stand on the last side, seed %d", seed)
		return doc, problems
	})
}

// strewn lays pages as nobody would write them out, on one stock after the other, and walks them.
func strewn(t *testing.T, n uint64, lay func(seed uint64, look pages.Look) (pages.Document, []pages.Problem)) {
	t.Helper()
	all := looks(t, 350, 500, 900)
	names := slices.Sorted(maps.Keys(all))
	for seed := range rounds(n) {
		name := names[int(seed)%len(names)]
		doc, problems := lay(seed, all[name])
		report(t, fmt.Sprintf("seed %d, %s", seed, name), pagestest.Walk(doc, effective(all[name], problems)))
		if t.Failed() {
			return
		}
	}
}

// effective is the look a document was laid out for: when the distance asked for
// does not fit, the problem says so.
func effective(look pages.Look, problems []pages.Problem) pages.Look {
	for _, problem := range problems {
		if problem.Where == "reading distance" {
			var most float64
			fmt.Sscanf(problem.Text[len(look.Stock.Title)+1:], "is read from no more than %f mm,", &most)
			look.DistanceMM = most - 1
		}
	}
	return look
}

func TestMessagesStandWithTheirStep(t *testing.T) {
	card := pagestest.Card()
	for name, look := range looks(t, 300, 500, 650) {
		doc, _ := pages.LayCard(card, look)
		found := map[string]int{}
		for _, side := range doc.Sides {
			for _, step := range pagestest.Find(side.Boxes, "step") {
				require.Len(t, pagestest.Find(step.Boxes, "action"), 1, "%s, step %s", name, step.ID)
				found[step.ID] = len(pagestest.Find(step.Boxes, "caution"))
			}
		}
		for _, section := range card.Sections {
			for _, step := range section.Steps {
				assert.Equal(t, len(step.Cautions), found[strconv.Itoa(step.Number)], "%s, step %d", name, step.Number)
			}
		}
	}
}

func TestNoHeadingEndsASide(t *testing.T) {
	for name, look := range looks(t, 300, 400, 500, 650) {
		doc, _ := pages.LayCard(pagestest.Card(), look)
		for _, side := range doc.Sides {
			for i, box := range side.Boxes {
				switch box.Kind {
				case "section", "stage", "heading", "again":
					after := side.Boxes[i+1]
					assert.NotContains(t, []string{"foot", "record", "condition"}, after.Kind, "%s, side %d: %s %q", name, side.Number, box.Kind, box.ID)
				}
			}
		}
	}
}

func TestWorstMessageComesFirst(t *testing.T) {
	doc, _ := pages.LayCard(pagestest.Card(), pages.Look{})
	var signals []string
	for _, box := range doc.Sides[0].Boxes {
		if box.Kind == "caution" {
			signals = append(signals, box.ID)
		}
	}
	assert.Equal(t, []string{"danger", "warning", "caution", "caution", "notice"}, signals)
}

func TestWordsOfAStepKeepTwentyMinutesOfArc(t *testing.T) {
	const distance = 640
	stock, err := pages.FindStock("a4")
	require.NoError(t, err)
	doc, _ := pages.LayCard(pagestest.Card(), pages.Look{Stock: stock, DistanceMM: distance})
	n := 0
	for _, side := range doc.Sides {
		for _, action := range pagestest.Find(side.Boxes, "action") {
			for _, mark := range side.Marks {
				text, ok := mark.(pages.Text)
				if !ok || text.Y < action.Place.Y || text.Y > action.Place.Bottom() || text.X < action.Place.X {
					continue
				}
				n++
				// NUREG-0700 rev. 3, 11.4.1.5-1: preferred height is distance × 0.006.
				assert.GreaterOrEqual(t, text.Face.CapHeight(text.Size), 0.006*distance-1e-9, text.Text)
			}
		}
	}
	assert.Greater(t, n, 18)
}

func TestEdges(t *testing.T) {
	words := pagestest.Words()
	t.Run("nothing to say", func(t *testing.T) {
		doc, problems := pages.LayCard(plan.Card{Words: words}, pages.Look{})
		assert.Empty(t, problems)
		require.Len(t, doc.Sides, 1)
		report(t, "empty", pagestest.Walk(doc, pages.Look{DistanceMM: 500}))
	})
	t.Run("a message taller than a side is said", func(t *testing.T) {
		card := pagestest.Card()
		card.Sections[1].Steps[0].Cautions = []plan.Caution{{Signal: "danger", Word: "DANGER", Hazard: "Chain", Consequence: words1000(), Avoid: "Stop."}}
		doc, problems := pages.LayCard(card, pages.Look{})
		require.NotEmpty(t, problems)
		assert.Contains(t, problems[0].Text, "taller than a side")
		report(t, "tall", pagestest.Walk(doc, pages.Look{DistanceMM: 500}))
		assert.Empty(t, pagestest.Every(doc, card))
	})
	t.Run("a rune without a glyph is shown by its number and said", func(t *testing.T) {
		card := pagestest.Card()
		card.Sections[0].Steps[0].Action = []plan.Run{{Text: "Turn ⚙ round."}}
		doc, problems := pages.LayCard(card, pages.Look{})
		assert.Equal(t, []pages.Problem{{Where: "step 1", Text: `no type for "⚙" (U+2699)`}}, problems)
		assert.True(t, says(doc, "Turn [U+2699] round."))
	})
	t.Run("too far for the stock", func(t *testing.T) {
		doc, problems := pages.LayCard(pagestest.Card(), pages.Look{DistanceMM: 5000})
		require.Len(t, problems, 1)
		assert.Equal(t, "reading distance", problems[0].Where)
		assert.NotEmpty(t, doc.Sides)
	})
}

func words1000() (text string) {
	for i := range 1000 {
		text += strconv.Itoa(i) + " crushing "
	}
	return text
}

func says(doc pages.Document, words string) bool {
	for _, side := range doc.Sides {
		for _, mark := range side.Marks {
			if text, ok := mark.(pages.Text); ok && text.Text == words {
				return true
			}
		}
	}
	return false
}

// rounds counts up to a number; up to a fifth of it where little time is to be taken.
func rounds(n uint64) iter.Seq[uint64] {
	if testing.Short() {
		n = (n + 4) / 5
	}
	return func(yield func(uint64) bool) {
		for i := range n {
			if !yield(i) {
				return
			}
		}
	}
}
