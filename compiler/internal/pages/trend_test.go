package pages_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"
	"benchleaf/compiler/internal/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestATrendCollidesInNoLanguageOnAnyStock(t *testing.T) {
	for _, language := range plan.Languages() {
		words, err := plan.LoadWords(language)
		require.NoError(t, err)
		for name, look := range looks(t, 400, 500, 680) {
			sheet := pagestest.Trend()
			sheet.Words = words
			doc, problems := pages.LayTrend(sheet, look)
			assert.Empty(t, problems, name)
			report(t, language+", "+name, pagestest.Walk(doc, look))
			rows := 0
			for _, side := range doc.Sides {
				rows += len(pagestest.Find(side.Boxes, "row"))
			}
			assert.Equal(t, len(sheet.Points), rows, name)
			assert.Len(t, pagestest.Find(doc.Sides[0].Boxes, "plot"), 1, name)
		}
	}
}

func TestNothingCollidesInTrendsNoMachineWouldHave(t *testing.T) {
	strewn(t, 200, func(seed uint64, look pages.Look) (pages.Document, []pages.Problem) {
		sheet := pagestest.RandomTrend(seed)
		doc, problems := pages.LayTrend(sheet, look)
		assert.GreaterOrEqual(t, count(doc, "row"), len(sheet.Points), "seed %d", seed)
		return doc, problems
	})
}

// Limits, the place where the line meets one, and each reading outside are told in words or
// figures on every stock, beside what they are of or below the picture.
func TestATrendTellsItsFigures(t *testing.T) {
	for name, look := range looks(t, 400, 500, 680) {
		sheet := pagestest.Trend()
		sheet.Points[3].Outside, sheet.Points[4].Outside = true, true
		doc, _ := pages.LayTrend(sheet, look)
		all, outside := "", 0
		for _, side := range doc.Sides {
			for _, mark := range side.Marks {
				if text, ok := mark.(pages.Text); ok {
					all += text.Text + "\n"
				}
			}
			for _, row := range pagestest.Find(side.Boxes, "row") {
				for _, mark := range side.Marks {
					if text, ok := mark.(pages.Text); ok && strings.HasSuffix(text.Text, sheet.Words.Labels.TrendOutside) && pagestest.Inside(pagestest.InkOf(text), row.Place) == "" {
						outside++
					}
				}
			}
		}
		for _, words := range []string{"max 30", "min 20", "2480 h (2160", "27.5", "250"} {
			assert.Contains(t, all, words, name)
		}
		assert.Equal(t, 2, outside, name)
	}
}

// Where the line meets its limit, the mark stands on the dashed line and between the
// readings and the end of the axis.
func TestTheMarkOfAMeetingPointsAtItsLimit(t *testing.T) {
	for name, look := range looks(t, 500) {
		sheet := pagestest.Trend()
		doc, _ := pages.LayTrend(sheet, look)
		plot := pagestest.Find(doc.Sides[0].Boxes, "plot")[0].Place
		var marks, lines []pages.Point
		for _, mark := range doc.Sides[0].Marks {
			path, ok := mark.(pages.Path)
			if !ok || path.From.Y > plot.Bottom() {
				continue
			}
			switch {
			case path.Closed && len(path.Steps) == 2:
				marks = append(marks, path.From)
			case !path.Closed && !path.Fill.On() && len(path.Steps) == 1 && path.From.Y == path.Steps[0].To.Y:
				lines = append(lines, path.From)
			}
		}
		require.Len(t, marks, 1, name)
		assert.True(t, slices.ContainsFunc(lines, func(at pages.Point) bool { return math.Abs(at.Y-marks[0].Y) < 0.01 }), name)
		assert.Greater(t, marks[0].X, plot.X+plot.Width*2/3, name)
	}
}

func TestATrendWithNothingToShow(t *testing.T) {
	doc, problems := pages.LayTrend(plan.Trend{Words: pagestest.Words()}, pages.Look{})
	assert.Empty(t, problems)
	require.Len(t, doc.Sides, 1)
	report(t, "empty", pagestest.Walk(doc, pages.Look{DistanceMM: 500}))
	assert.True(t, says(doc, "None."))
	sheet := pagestest.Trend()
	sheet.Points[0].Y = math.NaN()
	_, problems = pages.LayTrend(sheet, pages.Look{})
	assert.Equal(t, []pages.Problem{{Where: "Trend", Text: "a reading that is no number is left out of the picture"}}, problems)
}
