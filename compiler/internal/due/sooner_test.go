package due

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAReadingBringsAJobForward(t *testing.T) {
	today, quarter := Date(2026, 5, 4), Sooner{Every: monthly(3), Day: Date(2026, 1, 10)}
	once := Sooner{Day: Date(2026, 4, 20)}
	done := []Done{{Day: Date(2026, 1, 10)}}
	for name, c := range map[string]struct {
		job    Job
		want   string
		state  State
		limit  Limit
		sooner int
	}{
		"none":                          {Job{Every: monthly(12), Done: done}, "2027-01-10", Later, ByCalendar, 0},
		"three months":                  {Job{Every: monthly(12), Done: done, Sooner: []Sooner{quarter}}, "2026-04-10", Overdue, ByCalendar, 1},
		"no sooner than the job's own":  {Job{Every: monthly(3), Done: done, Sooner: []Sooner{quarter}}, "2026-04-10", Overdue, ByCalendar, 0},
		"at once":                       {Job{Every: monthly(12), Done: done, Sooner: []Sooner{once}}, "2026-04-20", Overdue, ByReading, 1},
		"at once, today":                {Job{Every: monthly(12), Done: done, Sooner: []Sooner{{Day: today}}}, "2026-05-04", Due, ByReading, 1},
		"the soonest":                   {Job{Every: monthly(12), Done: done, Sooner: []Sooner{once, quarter}}, "2026-04-10", Overdue, ByCalendar, 2},
		"of two alike the first":        {Job{Every: monthly(12), Done: done, Sooner: []Sooner{quarter, quarter}}, "2026-04-10", Overdue, ByCalendar, 1},
		"on condition":                  {Job{Sooner: []Sooner{once}}, "2026-04-20", Overdue, ByReading, 1},
		"never done, since service":     {Job{Every: monthly(12), Start: Start{Day: Date(2026, 3, 1)}, Sooner: []Sooner{quarter}}, "2026-06-01", Later, ByCalendar, 1},
		"never done, the first is less": {Job{Every: monthly(12), First: monthly(1), Start: Start{Day: Date(2026, 3, 1)}, Sooner: []Sooner{quarter}}, "2026-04-01", Overdue, ByCalendar, 0},
		"not by the schedule":           {Job{Every: monthly(12), From: FromSchedule, Start: Start{Day: Date(2025, 3, 1)}, Done: []Done{{Day: Date(2026, 3, 20)}}, Sooner: []Sooner{quarter}}, "2026-06-20", Later, ByCalendar, 1},
		"what is not known counts not":  {Job{Every: monthly(12), Done: done, Sooner: []Sooner{{Every: Interval{Hours: 50}}}}, "2027-01-10", Later, ByCalendar, 0},
	} {
		got := Next(c.job, Use{Why: NoReadings}, today)
		assert.Equal(t, c.want, got.Day.String(), name)
		assert.Equal(t, c.state.String(), got.State.String(), name)
		assert.Equal(t, c.limit, got.Limit, name)
		assert.Equal(t, c.sooner, got.Sooner, name)
	}
	unknown := Next(Job{Done: done, Sooner: []Sooner{{Every: Interval{Hours: 50}}}}, Use{Why: NoReadings}, today)
	assert.Equal(t, Unknown, unknown.State)
	assert.Equal(t, NoReadings, unknown.Reason)
	assert.Equal(t, 1, unknown.Sooner)
}

// At 2 h a day, a fourth more or less, 100 h take 40 to 67 days, 50 as expected. 45 days by a
// reading come sooner than those, and the meter may come sooner still.
func TestTheSpanIsOfBoth(t *testing.T) {
	pattern, err := NewPattern([]Season{{FromMonth: 1, FromDay: 1, ToMonth: 12, ToDay: 31, AWeek: 14}})
	require.NoError(t, err)
	day := Date(2026, 1, 1)
	use := Forecast([]Point{{day, 0, 0}}, pattern)
	job := Job{Every: Interval{Hours: 100}, Done: []Done{{Day: day, Read: true}}}
	own := Next(job, use, day)
	assert.Equal(t, Span{day.AddDays(40), day.AddDays(50), day.AddDays(67)}, own.Span)
	job.Sooner = []Sooner{{Every: Interval{Days: 45}, Day: day}}
	got := Next(job, use, day.AddDays(42))
	assert.Equal(t, Span{day.AddDays(40), day.AddDays(45), day.AddDays(45)}, got.Span)
	assert.Equal(t, Due, got.State, "the meter may be there")
	assert.Equal(t, 1, got.Sooner)
	assert.Equal(t, own.Meter, got.Meter)
}

// What is due at once is done today; what a reading asks for again and again goes on.
func TestAReadingIsFollowed(t *testing.T) {
	today, until := Date(2026, 5, 4), Date(2026, 12, 31)
	job := Job{Every: monthly(6), Done: []Done{{Day: Date(2026, 1, 10)}}, Sooner: []Sooner{{Day: Date(2026, 4, 20)}}}
	first := Next(job, Use{}, today)
	assert.Equal(t, "2026-04-20", first.Day.String())
	assert.Equal(t, []string{"2026-11-04"}, days(Following(job, Use{}, first, today, until)))
	job.Sooner = append(job.Sooner, Sooner{Every: monthly(3), Day: Date(2026, 1, 10)})
	first = Next(job, Use{}, today)
	assert.Equal(t, "2026-04-10", first.Day.String())
	assert.Equal(t, []string{"2026-08-04", "2026-11-04"}, days(Following(job, Use{}, first, today, until)))
	assert.Len(t, job.Sooner, 2)
}
