package due

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func days(answers []Answer) (out []string) {
	for _, answer := range answers {
		out = append(out, answer.Day.String())
	}
	return out
}

func TestAJobFollowsByTheCalendar(t *testing.T) {
	today, until := Date(2026, 5, 4), Date(2027, 4, 30)
	job := Job{Every: Interval{Months: 3}, Done: []Done{{Day: Date(2026, 2, 28)}}}
	first := Next(job, Use{}, today)
	assert.Equal(t, "2026-05-28", first.Day.String())
	assert.Equal(t, []string{"2026-08-28", "2026-11-28", "2027-02-28"}, days(Following(job, Use{}, first, today, until)))
	assert.Len(t, job.Done, 1)
	job.Done[0].Day = Date(2026, 1, 10) // overdue: taken to be done today
	first = Next(job, Use{}, today)
	assert.Equal(t, Overdue, first.State)
	assert.Equal(t, []string{"2026-08-04", "2026-11-04", "2027-02-04"}, days(Following(job, Use{}, first, today, until)))
}

func TestAJobFollowsByItsMeter(t *testing.T) {
	today, until := Date(2026, 5, 4), Date(2026, 9, 1)
	points := []Point{{Date(2025, 5, 4), 0, 0}, {Date(2025, 11, 4), 184 * 2, 1}, {today, 365 * 2, 2}}
	use := Forecast(points, Pattern{})
	job := Job{Every: Interval{Hours: 100}, Done: []Done{{Day: today, Total: 730, Read: true}}}
	first := Next(job, use, today)
	assert.Equal(t, "2026-06-23", first.Day.String())
	next := Following(job, use, first, today, until)
	assert.Equal(t, []string{"2026-08-12"}, days(next))
	assert.Equal(t, DaysBetween(first.Span.Early, first.Span.Late), DaysBetween(next[0].Span.Early, next[0].Span.Late), "the span is that of one interval")
	assert.Len(t, use.points, 3)
}

func TestAGridIsFollowedPointByPoint(t *testing.T) {
	today := Date(2026, 5, 4)
	job := Job{Every: Interval{Months: 1}, From: FromSchedule, Start: Start{Day: Date(2025, 1, 15)}, Done: []Done{{Day: Date(2026, 4, 20)}}}
	first := Next(job, Use{}, today)
	assert.Equal(t, "2026-05-15", first.Day.String())
	assert.Equal(t, []string{"2026-06-15", "2026-07-15"}, days(Following(job, Use{}, first, today, Date(2026, 8, 1))))
}

func TestNothingFollowsWhatIsOnNoDay(t *testing.T) {
	today, until := Date(2026, 5, 4), Date(2027, 4, 30)
	assert.Empty(t, Following(Job{}, Use{}, Next(Job{}, Use{}, today), today, until))
	once := Job{First: Interval{Days: 30}, Start: Start{Day: today}}
	assert.Empty(t, Following(once, Use{}, Next(once, Use{}, today), today, until))
	daily := Job{Every: Interval{Days: 1}, Done: []Done{{Day: today}}}
	assert.Len(t, Following(daily, Use{}, Next(daily, Use{}, today), today, until), 360)
}
