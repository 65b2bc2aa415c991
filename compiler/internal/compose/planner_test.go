package compose

import (
	"strings"
	"testing"

	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/standing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func planned(t *testing.T, on due.Day) *planner {
	words, err := plan.LoadWords("en")
	require.NoError(t, err)
	p := &planner{plan: plan.Planner{Words: words}}
	p.weeks(on)
	return p
}

// Every day of four years: the months follow each other, no week is missing or there twice,
// each is of the month its Thursday lies in, and the first month holds this week.
func TestTheWeeksOfAYear(t *testing.T) {
	for on := due.Date(2024, 1, 1); on < due.Date(2028, 1, 1); on++ {
		p := planned(t, on)
		require.Len(t, p.plan.Months, 12)
		require.Contains(t, []int{52, 53}, len(p.plan.Weeks), on)
		require.Equal(t, 1, p.from.Weekday(), on)
		now, first := 0, 0
		for _, month := range p.plan.Months {
			require.Equal(t, first, month.First, on)
			require.Contains(t, []int{4, 5}, month.Weeks, on)
			for n := first; n < first+month.Weeks; n++ {
				monday := p.from.AddDays(7 * n)
				year, of, _ := monday.AddDays(3).Date()
				require.Equal(t, month.Name, p.plan.Words.Labels.MonthNames()[of-1], on)
				require.Equal(t, month.Year, monday.AddDays(3).String()[:4], on, year)
				_, number := monday.Week()
				require.Equal(t, number, p.plan.Weeks[n].Number, on)
				if p.plan.Weeks[n].Now {
					now = n
				}
			}
			first += month.Weeks
		}
		require.Equal(t, len(p.plan.Weeks), first)
		require.Less(t, now, p.plan.Months[0].Weeks)
		require.Equal(t, now, p.week(on))
	}
	planned(t, due.Never)
}

func TestMarksComeThroughTheYear(t *testing.T) {
	on := due.Date(2026, 5, 5) // a Tuesday
	p := planned(t, on)
	ask := due.Job{Every: due.Interval{Months: 3}, Done: []due.Done{{Day: due.Date(2026, 1, 10)}}}
	p.marks("A", standing.Standing{Ask: ask, Answer: due.Next(ask, due.Use{}, on)}, 20)
	require.Len(t, p.plan.Marks, 4)
	assert.Equal(t, plan.PlannerMark{Key: "A", At: 0, Early: 0, Late: 0, Times: 1, Overdue: true}, p.plan.Marks[0])
	assert.Equal(t, 13, p.plan.Marks[1].At) // 5 August
	assert.InDelta(t, 20, p.work[0], 0)
	assert.InDelta(t, 20, p.work[3], 0)

	p = planned(t, on)
	daily := due.Job{Every: due.Interval{Days: 2}, Done: []due.Done{{Day: on}}}
	p.marks("B", standing.Standing{Ask: daily, Answer: due.Next(daily, due.Use{}, on)}, 10)
	require.Len(t, p.plan.Marks, len(p.plan.Weeks))
	assert.Equal(t, 2, p.plan.Marks[0].Times) // Thursday and Saturday
	assert.Equal(t, 4, p.plan.Marks[1].Times)
}

// Bars of one job lie over no week twice, and hold the week it is expected in; only the next
// time has one.
func TestBarsOfOneJobDoNotMeet(t *testing.T) {
	on := due.Date(2026, 5, 5)
	points := []due.Point{{Day: due.Date(2026, 1, 5), Total: 0}, {Day: due.Date(2026, 2, 5), Total: 200, Index: 1}, {Day: on, Total: 400, Index: 2}}
	use := due.Forecast(points, due.Pattern{})
	for hours := 20.0; hours < 400; hours += 13 {
		p := planned(t, on)
		ask := due.Job{Every: due.Interval{Hours: hours}, Start: due.Start{Day: due.Date(2026, 1, 5)}}
		p.marks("A", standing.Standing{Ask: ask, Use: use, Answer: due.Next(ask, use, on)}, 0)
		last := -1
		for i, mark := range p.plan.Marks {
			if i > 0 {
				require.Equal(t, [2]int{mark.At, mark.At}, [2]int{mark.Early, mark.Late}, hours)
			}
			require.Greater(t, mark.Early, last, hours)
			require.LessOrEqual(t, mark.Early, mark.At, hours)
			require.GreaterOrEqual(t, mark.Late, mark.At, hours)
			last = mark.Late
		}
		require.NotEmpty(t, p.plan.Marks, hours)
	}
}

func TestWorkTime(t *testing.T) {
	for minutes, text := range map[float64]string{0: "", 20: "20 min", 60: "1 h", 65.4: "1 h 5 min", 3000: "50 h"} {
		assert.Equal(t, text, strings.ReplaceAll(workTime(minutes), "\u00a0", " "))
	}
}
