package pages_test

import (
	"testing"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"
	"benchleaf/compiler/internal/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func count(doc pages.Document, kind string) (n int) {
	for _, side := range doc.Sides {
		n += len(pagestest.Find(side.Boxes, kind))
	}
	return n
}

func TestDueListsAndPlannersCollideInNoLanguageOnAnyStock(t *testing.T) {
	for _, language := range plan.Languages() {
		words, err := plan.LoadWords(language)
		require.NoError(t, err)
		for name, look := range looks(t, 400, 500, 680) {
			name = language + ", " + name
			list, year := pagestest.DueList(), pagestest.Planner()
			list.Words, year.Words = words, words
			doc, problems := pages.LayDueList(list, look)
			assert.Empty(t, problems, name)
			report(t, name+", due list", pagestest.Walk(doc, look))
			assert.Equal(t, len(list.Rows), count(doc, "row"), name)
			assert.Equal(t, len(list.Rows), count(doc, "tick"), name)
			doc, problems = pages.LayPlanner(year, look)
			assert.Empty(t, problems, name)
			report(t, name+", planner", pagestest.Walk(doc, look))
			assert.Equal(t, len(year.Months), count(doc, "month"), name)
			assert.Equal(t, len(year.Marks), count(doc, "tick"), name)
			assert.Equal(t, len(year.Jobs), count(doc, "job"), name)
		}
	}
}

func TestNothingCollidesOnDueListsNoShopWouldHave(t *testing.T) {
	strewn(t, 200, func(seed uint64, look pages.Look) (pages.Document, []pages.Problem) {
		list := pagestest.RandomDueList(seed)
		doc, problems := pages.LayDueList(list, look)
		assert.GreaterOrEqual(t, count(doc, "row"), len(list.Rows), "seed %d", seed)
		return doc, problems
	})
}

func TestNothingCollidesOnPlannersNoMachineWouldHave(t *testing.T) {
	strewn(t, 200, func(seed uint64, look pages.Look) (pages.Document, []pages.Problem) {
		year := pagestest.RandomPlanner(seed)
		doc, problems := pages.LayPlanner(year, look)
		inside := 0
		for _, mark := range year.Marks {
			if mark.At >= 0 && mark.At < len(year.Weeks) {
				inside++
			}
		}
		assert.GreaterOrEqual(t, count(doc, "tick"), inside, "seed %d", seed)
		return doc, problems
	})
}

// What is overdue lies on black, whatever the colours of a copy.
func TestTheDayOfWhatIsOverdueLiesOnBlack(t *testing.T) {
	doc, _ := pages.LayDueList(pagestest.DueList(), pages.Look{})
	on := map[string]pages.Ink{}
	for _, side := range doc.Sides {
		for _, mark := range side.Marks {
			if text, ok := mark.(pages.Text); ok {
				on[text.Text] = text.On
			}
		}
	}
	const white = pages.InkOn | 0xFFFFFF
	assert.NotEqual(t, white, on["2026-03-02"])
	assert.Greater(t, pagestest.Contrast(on["2026-03-02"], white), 15.0)
	assert.Equal(t, white, on["2026-05-07"])
}

// The box of a job stands in the week it is expected in.
func TestABoxStandsInItsWeek(t *testing.T) {
	year := pagestest.Planner()
	year.Marks = []plan.PlannerMark{{Key: "A", At: 2, Early: 0, Late: 6, Times: 1}}
	look := pages.Look{}
	look.Stock, _ = pages.FindStock("a4")
	doc, _ := pages.LayPlanner(year, look)
	months := pagestest.Find(doc.Sides[0].Boxes, "month")
	require.Len(t, months, 12)
	box := pagestest.Find(months[0].Boxes, "tick")
	require.Len(t, box, 1)
	width := months[0].Place.Width
	assert.InDelta(t, 0.46, (box[0].Place.X-months[0].Place.X)/width, 0.1)
	assert.Empty(t, pagestest.Find(months[1].Boxes, "tick"), "only its bar goes on")
	assert.Len(t, pagestest.Find(months[1].Boxes, "mark"), 1)
	assert.Empty(t, pagestest.Find(months[2].Boxes, "mark"))
}

func TestADueListAndAPlannerWithNothingToShow(t *testing.T) {
	doc, problems := pages.LayDueList(plan.DueList{Words: pagestest.Words()}, pages.Look{})
	assert.Empty(t, problems)
	require.Len(t, doc.Sides, 1)
	report(t, "due list", pagestest.Walk(doc, pages.Look{DistanceMM: 500}))
	assert.True(t, says(doc, "Nothing is due."))
	doc, problems = pages.LayPlanner(plan.Planner{Words: pagestest.Words()}, pages.Look{})
	assert.Empty(t, problems)
	require.Len(t, doc.Sides, 1)
	report(t, "planner", pagestest.Walk(doc, pages.Look{DistanceMM: 500}))
}
