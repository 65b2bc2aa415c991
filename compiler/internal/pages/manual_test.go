package pages_test

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"testing"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// linked finds links that leave their side, that lead to no side, or, where no line was
// parted, whose printed number is not that of the side they lead to.
func linked(doc pages.Document, whole bool) (faults []string) {
	for _, side := range doc.Sides {
		for _, link := range side.Links {
			if err := pagestest.Inside(link.Rectangle, side.Safe); err != "" {
				faults = append(faults, fmt.Sprintf("side %d: link %s", side.Number, err))
			}
			if link.To.Side < 1 || link.To.Side > len(doc.Sides) || link.To.Y < 0 || link.To.Y > side.Height {
				faults = append(faults, fmt.Sprintf("side %d: a link leads to %v", side.Number, link.To))
				continue
			}
			number := ""
			for _, mark := range side.Marks {
				if text, ok := mark.(pages.Text); ok && pagestest.Inside(pagestest.InkOf(text), link.Rectangle) == "" {
					number, _, _ = strings.Cut(strings.TrimSuffix(text.Text, ","), "–")
				}
			}
			if to := doc.Sides[link.To.Side-1]; whole && number != to.Label {
				faults = append(faults, fmt.Sprintf("side %d: a link says %q and leads to the page %q", side.Number, number, to.Label))
			}
		}
	}
	return faults
}

func TestNothingCollidesInAManualOnAnyStock(t *testing.T) {
	for name, look := range looks(t, 400, 500, 680) {
		doc, problems := pages.LayManual(pagestest.Manual(), look)
		assert.Empty(t, problems, name)
		report(t, name, pagestest.Walk(doc, look))
		report(t, name, linked(doc, true))
	}
}

func TestNothingCollidesInManualsNoShopWouldHave(t *testing.T) {
	all := looks(t, 350, 500, 900)
	names := slices.Sorted(maps.Keys(all))
	for seed := range rounds(24) {
		look := all[names[int(seed)%len(names)]]
		name := fmt.Sprintf("seed %d, %s", seed, names[int(seed)%len(names)])
		content := pagestest.RandomManual(seed)
		doc, problems := pages.LayManual(content, look)
		report(t, name, pagestest.Walk(doc, effective(look, problems)))
		report(t, name, linked(doc, false))
		rows, lines := 0, 0
		for _, side := range doc.Sides {
			for _, row := range pagestest.Find(side.Boxes, "row") {
				if strings.HasPrefix(row.ID, "t") {
					rows++
				}
			}
		}
		for _, machine := range content.Machines {
			for _, table := range machine.Tables {
				lines += len(table.Rows)
			}
		}
		assert.GreaterOrEqual(t, rows, lines, name)
		if t.Failed() {
			return
		}
	}
}

// Each line of the outline leads to the box of its heading, on the side it says.
func TestEveryBookmarkLeadsToItsHeading(t *testing.T) {
	for name, look := range looks(t, 500) {
		doc, _ := pages.LayManual(pagestest.Manual(), look)
		var titles []string
		for _, entry := range doc.Outline {
			titles = append(titles, strconv.Itoa(entry.Level)+" "+entry.Title)
			side := doc.Sides[entry.To.Side-1]
			stands := false
			for _, kind := range []string{"chapter", "head", "table"} {
				for _, box := range pagestest.Find(side.Boxes, kind) {
					stands = stands || box.Place.Y >= entry.To.Y && box.Place.Y-entry.To.Y < 6
				}
			}
			assert.True(t, stands, "%s: %q", name, entry.Title)
		}
		assert.Equal(t, []string{"0 Revisions", "0 Contents", "0 1 Safety", "0 2 Log-deck conveyor", "1 Figures", "2 Torques", "1 2.1 Change the worm gearbox oil, 9 m, head drive", "1 2.2 Set the chain, 9 m, head drive",
			"0 3 Edger", "1 Figures", "2 Torques", "2 Intervals", "1 3.1 Look over the edger", "0 4 Pick list", "0 5 Index"}, titles)
	}
}

// The text is counted from 1 on the front of a sheet, what stands before it in Roman numerals.
func TestPagesAreCounted(t *testing.T) {
	for name, look := range looks(t, 500) {
		doc, _ := pages.LayManual(pagestest.Manual(), look)
		require.Len(t, doc.Numbering, 2, name)
		first := doc.Numbering[1].Side
		assert.Equal(t, pages.Numbering{Side: 1, Roman: true}, doc.Numbering[0])
		assert.Equal(t, []string{"i", "ii", "iii"}, []string{doc.Sides[0].Label, doc.Sides[1].Label, doc.Sides[2].Label})
		assert.Equal(t, "1", doc.Sides[first-1].Label, name)
		assert.Equal(t, strconv.Itoa(len(doc.Sides)-first+1), doc.Sides[len(doc.Sides)-1].Label, name)
		if look.Stock.Sides == 2 {
			assert.Equal(t, 1, first%2, "%s: the text begins on side %d", name, first)
		}
		for i, side := range doc.Sides {
			assert.Equal(t, i+1, side.Number)
			if i > 0 {
				assert.True(t, says(pages.Document{Sides: doc.Sides[i : i+1]}, side.Label), "%s: side %d does not say its number", name, side.Number)
			}
		}
	}
}

// A table that goes on overleaf has its headings there again, no heading ends a side, and no
// row of a table stands alone.
func TestTablesOfAManualBreakWell(t *testing.T) {
	for name, look := range looks(t, 400, 500) {
		doc, _ := pages.LayManual(pagestest.Manual(), look)
		parted := 0
		for i, side := range doc.Sides {
			boxes := side.Boxes
			for k, box := range boxes {
				switch box.Kind {
				case "chapter", "section", "table", "columns", "stage", "heading", "again":
					assert.NotContains(t, []string{"foot", "record"}, boxes[k+1].Kind, "%s, side %d: %s %q", name, side.Number, box.Kind, box.ID)
				}
			}
			if i == 0 || len(boxes) < 4 || boxes[1].Kind != "again" || boxes[2].Kind != "row" || !strings.HasPrefix(boxes[2].ID, "torque ") {
				continue
			}
			parted++
			rows := pagestest.Find(boxes, "row")
			assert.Greater(t, len(rows), 1, "%s, side %d", name, side.Number)
			assert.True(t, says(pages.Document{Sides: doc.Sides[i : i+1]}, "Fastener"), "%s, side %d", name, side.Number)
		}
		assert.Positive(t, parted, name)
	}
}

// What is punched for a folder stays clear: holes of 6 mm, 12 mm from the edge (ISO 838).
func TestHolesOfAFolderStayClear(t *testing.T) {
	for _, size := range []string{"a4", "letter", "a5"} {
		stock, err := pages.FindStock(size)
		require.NoError(t, err)
		doc, _ := pages.LayManual(pagestest.Manual(), pages.Look{Stock: stock})
		for _, side := range doc.Sides {
			left, right := side.Safe.X, side.Width-side.Safe.Right()
			if side.Number%2 == 0 {
				left, right = right, left
			}
			assert.GreaterOrEqual(t, left, 12.0+3, "%s, side %d", size, side.Number)
			assert.InDelta(t, stock.Border, right, 0.01)
		}
	}
}

func TestAManualOfNothing(t *testing.T) {
	content := pagestest.Manual()
	content.Machines, content.Messages, content.Index, content.Pick.Groups, content.Date = nil, nil, nil, nil, ""
	doc, problems := pages.LayManual(content, pages.Look{})
	assert.Empty(t, problems)
	report(t, "empty", pagestest.Walk(doc, pages.Look{DistanceMM: 500}))
}
