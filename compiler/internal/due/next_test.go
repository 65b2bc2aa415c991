package due

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// done is times a job was done, on days, without a reading.
func done(t *testing.T, days ...string) []Done {
	t.Helper()
	var out []Done
	for _, text := range days {
		out = append(out, Done{Day: day(t, text)})
	}
	return out
}

func monthly(n int) Interval { return Interval{Months: n} }

func TestTheCalendarAlone(t *testing.T) {
	start := Start{Day: day(t, "2024-02-29")}
	for name, c := range map[string]struct {
		job   Job
		today string
		want  string
		state State
	}{
		"never done, a year from service":    {Job{Every: monthly(12), Start: start}, "2024-06-01", "2025-02-28", Later},
		"on its day":                         {Job{Every: monthly(12), Start: start}, "2025-02-28", "2025-02-28", Due},
		"the day before, no window":          {Job{Every: monthly(12), Start: start}, "2025-02-27", "2025-02-28", Later},
		"a window of one day":                {Job{Every: monthly(12), Start: start, Soon: 1}, "2025-02-27", "2025-02-28", Soon},
		"a day before the window":            {Job{Every: monthly(12), Start: start, Soon: 1}, "2025-02-26", "2025-02-28", Later},
		"the day after":                      {Job{Every: monthly(12), Start: start}, "2025-03-01", "2025-02-28", Overdue},
		"overdue stays so for years":         {Job{Every: monthly(12), Start: start}, "2031-03-01", "2025-02-28", Overdue},
		"the first time is sooner":           {Job{Every: monthly(12), First: monthly(1), Start: start}, "2024-03-01", "2024-03-29", Later},
		"a first time that is later":         {Job{Every: monthly(1), First: monthly(12), Start: start}, "2024-03-01", "2024-03-29", Later},
		"having been done, first is over":    {Job{Every: monthly(12), First: monthly(1), Start: start, Done: done(t, "2024-03-10")}, "2024-04-01", "2025-03-10", Later},
		"from the last time, not the first":  {Job{Every: monthly(1), Done: done(t, "2026-03-31", "2026-01-31")}, "2026-04-01", "2026-04-30", Later},
		"days after today do not count":      {Job{Every: monthly(1), Done: done(t, "2026-03-31", "2026-05-31")}, "2026-04-01", "2026-04-30", Later},
		"months and days":                    {Job{Every: Interval{Months: 1, Days: 14}, Done: done(t, "2026-01-31")}, "2026-02-01", "2026-03-14", Later},
		"weeks":                              {Job{Every: Interval{Days: 42}, Done: done(t, "2026-01-01")}, "2026-02-01", "2026-02-12", Later},
		"schedule, never done":               {Job{Every: monthly(12), From: FromSchedule, Start: start}, "2030-06-01", "2025-02-28", Overdue},
		"schedule, done on its day":          {Job{Every: monthly(12), From: FromSchedule, Start: start, Done: done(t, "2025-02-28")}, "2025-03-01", "2026-02-28", Later},
		"schedule, done early":               {Job{Every: monthly(12), From: FromSchedule, Start: start, Done: done(t, "2024-12-24")}, "2025-03-01", "2026-02-28", Later},
		"schedule, much too early":           {Job{Every: monthly(12), From: FromSchedule, Start: start, Done: done(t, "2024-07-01")}, "2024-08-01", "2025-02-28", Later},
		"schedule, done late":                {Job{Every: monthly(12), From: FromSchedule, Start: start, Done: done(t, "2025-07-01")}, "2025-08-01", "2026-02-28", Later},
		"schedule, so late it is early":      {Job{Every: monthly(12), From: FromSchedule, Start: start, Done: done(t, "2025-09-30")}, "2025-10-01", "2027-02-28", Later},
		"schedule, leap day comes back":      {Job{Every: monthly(12), From: FromSchedule, Start: start, Done: done(t, "2027-03-01")}, "2027-03-02", "2028-02-29", Later},
		"schedule, month ends":               {Job{Every: monthly(1), From: FromSchedule, Start: Start{Day: day(t, "2026-12-31")}, Done: done(t, "2027-02-28")}, "2027-03-01", "2027-03-31", Later},
		"schedule from the first time":       {Job{Every: monthly(12), First: monthly(2), From: FromSchedule, Start: start, Done: done(t, "2024-05-02")}, "2024-06-01", "2025-04-29", Later},
		"schedule, before the first time":    {Job{Every: monthly(12), First: monthly(2), From: FromSchedule, Start: start, Done: done(t, "2024-03-02")}, "2024-03-03", "2024-04-29", Later},
		"schedule, service not known":        {Job{Every: monthly(1), From: FromSchedule, Done: done(t, "2026-01-31", "2026-02-20")}, "2026-02-21", "2026-03-31", Later},
		"schedule, half an interval is done": {Job{Every: Interval{Days: 10}, From: FromSchedule, Start: Start{Day: day(t, "2026-01-01")}, Done: done(t, "2026-01-06")}, "2026-01-07", "2026-01-21", Later},
		"a first time and no other":          {Job{First: monthly(2), Start: start}, "2024-03-03", "2024-04-29", Later},
		"never ends":                         {Job{Every: monthly(1_000_000), Start: start}, "2024-03-03", "9999-12-31", Later},
		"schedule, never ends":               {Job{Every: monthly(60_000), From: FromSchedule, Start: start, Done: done(t, "2024-03-03")}, "2024-03-03", "7024-02-29", Later},
	} {
		got := Next(c.job, Use{}, day(t, c.today))
		assert.Equal(t, c.want, got.Day.String(), name)
		assert.Equal(t, c.state.String(), got.State.String(), name)
		assert.Equal(t, ByCalendar, got.Limit, name)
		assert.Equal(t, got.Day, got.Calendar, name)
		assert.Equal(t, Span{got.Day, got.Day, got.Day}, got.Span, name)
		assert.Empty(t, got.Reason, name)
		assert.False(t, got.Metered, name)
	}
}

func TestWhatIsNotKnownIsSaid(t *testing.T) {
	today := day(t, "2026-06-01")
	start := Start{Day: day(t, "2026-01-01")}
	hours := Interval{Hours: 100}
	use := Forecast(even(start.Day, 2, 30, 5), Pattern{})
	for name, c := range map[string]struct {
		job    Job
		use    Use
		state  State
		reason Reason
	}{
		"never done and no service":           {Job{Every: monthly(1)}, use, Unknown, NeverDone},
		"never done and no service, by meter": {Job{Every: hours}, use, Unknown, NeverDone},
		"the same by the schedule":            {Job{Every: hours, From: FromSchedule}, use, Unknown, NeverDone},
		"no reading":                          {Job{Every: hours, Start: start}, Forecast(nil, Pattern{}), Unknown, NoReadings},
		"one reading":                         {Job{Every: hours, Start: start}, Forecast([]Point{{start.Day, 0, -1}}, Pattern{}), Unknown, FewReadings},
		"standing still":                      {Job{Every: hours, Start: start}, Forecast([]Point{{start.Day, 0, -1}, {today, 0, 0}}, Pattern{}), Unknown, Idle},
		"done before there was a reading":     {Job{Every: hours, Done: []Done{{Day: today}}}, Forecast(nil, Pattern{}), Unknown, NoReadings},
		"no interval":                         {Job{Start: start}, use, OnCondition, ""},
		"no interval, done":                   {Job{Start: start, Done: []Done{{Day: today}}}, use, OnCondition, ""},
		"a first time only, and it is done":   {Job{Start: start, First: Interval{Hours: 10, Months: 1}, Done: []Done{{Day: today, Total: 60, Read: true}}}, use, OnCondition, ""},
		"the same by the schedule, done":      {Job{Start: start, From: FromSchedule, First: Interval{Hours: 10, Months: 1}, Done: []Done{{Day: today, Total: 60, Read: true}}}, use, OnCondition, ""},
	} {
		got := Next(c.job, c.use, today)
		assert.Equal(t, c.state.String(), got.State.String(), name)
		assert.Equal(t, c.reason, got.Reason, name)
		assert.Zero(t, got.Day, name)
		assert.Empty(t, got.Limit, name)
	}
	// The calendar still counts where the meter is not known, and the reason is told.
	got := Next(Job{Every: Interval{Hours: 100, Months: 12}, Start: start}, Forecast(nil, Pattern{}), today)
	assert.Equal(t, Later, got.State)
	assert.Equal(t, "2027-01-01", got.Day.String())
	assert.Equal(t, NoReadings, got.Reason)
	assert.Equal(t, Value{100, 100, 100}, got.Meter, "it is due at 100 h, whenever that is")
	assert.True(t, got.Metered)
	// What has been read is known without any forecast.
	got = Next(Job{Every: hours, Start: start}, Forecast([]Point{{start.Day + 30, 80, 0}, {start.Day + 33, 120, 1}}, Pattern{}), today)
	assert.Equal(t, Overdue, got.State)
	assert.Equal(t, start.Day+32, got.Day)
}

// A pattern alone tells of a job that was done at a meter nobody reads.
func TestAPatternStandsForReadings(t *testing.T) {
	use := Forecast(nil, pattern(t, Season{1, 1, 12, 31, 7}))
	got := Next(Job{Every: Interval{Hours: 100}, Done: done(t, "2026-01-01")}, use, day(t, "2026-01-10"))
	assert.Equal(t, Span{day(t, "2026-01-01") + 80, day(t, "2026-01-01") + 100, day(t, "2026-01-01") + 134}, got.Span, "80·1.25, 100, and 134·0.75 is over 100")
	assert.False(t, got.Metered)
}

func TestTheMeterAlone(t *testing.T) {
	begin := day(t, "2026-01-01")
	use := Forecast(even(begin, 2, 25, 5), Pattern{}) // 200 h on day 100
	read := func(days int) Done { return Done{Day: begin.AddDays(days), Total: 2 * float64(days), Read: true} }
	hours := func(n float64) Interval { return Interval{Hours: n} }
	start := Start{Day: begin}
	for name, c := range map[string]struct {
		job   Job
		meter float64
		days  int
		state State // on day 100
	}{
		"never done":                       {Job{Every: hours(250), Start: start}, 250, 125, Later},
		"never done, soon":                 {Job{Every: hours(250), Start: start, Soon: 30}, 250, 125, Soon},
		"never done, overdue":              {Job{Every: hours(100), Start: start}, 100, 50, Overdue},
		"reached today":                    {Job{Every: hours(200), Start: start}, 200, 100, Due},
		"first":                            {Job{Every: hours(250), First: hours(50), Start: start}, 50, 25, Overdue},
		"first is done":                    {Job{Every: hours(250), First: hours(50), Start: start, Done: []Done{read(25)}}, 300, 150, Later},
		"first was done early":             {Job{Every: hours(250), First: hours(50), Start: start, Done: []Done{read(5)}}, 260, 130, Later},
		"from what the meter had":          {Job{Every: hours(250), Start: Start{begin, 40}}, 290, 145, Later},
		"schedule":                         {Job{Every: hours(100), From: FromSchedule, Start: start, Done: []Done{read(50)}}, 200, 100, Due},
		"schedule, early":                  {Job{Every: hours(250), From: FromSchedule, Start: start, Done: []Done{read(75)}}, 500, 250, Later},
		"schedule, half away":              {Job{Every: hours(100), From: FromSchedule, Start: start, Done: []Done{read(75)}}, 300, 150, Later},
		"schedule, half to the first":      {Job{Every: hours(100), From: FromSchedule, Start: start, Done: []Done{read(25)}}, 200, 100, Due},
		"schedule, more than half":         {Job{Every: hours(100), From: FromSchedule, Start: start, Done: []Done{read(74)}}, 200, 100, Due},
		"schedule, much too early":         {Job{Every: hours(250), From: FromSchedule, Start: start, Done: []Done{read(25)}}, 250, 125, Later},
		"schedule behind the first":        {Job{Every: hours(100), First: hours(50), From: FromSchedule, Start: start, Done: []Done{read(25)}}, 150, 75, Overdue},
		"schedule before the first":        {Job{Every: hours(100), First: hours(50), From: FromSchedule, Start: start, Done: []Done{read(12)}}, 50, 25, Overdue},
		"schedule from what the meter had": {Job{Every: hours(100), From: FromSchedule, Start: Start{begin, 30}, Done: []Done{read(100)}}, 330, 165, Later},
		"two times on a day":               {Job{Every: hours(100), Done: []Done{{Day: begin + 50, Total: 100, Read: true}, {Day: begin + 50}, {Day: begin + 50, Total: 99, Read: true}}}, 200, 100, Due},
	} {
		got := Next(c.job, use, begin.AddDays(100))
		assert.Equal(t, Value{c.meter, c.meter, c.meter}, got.Meter, name)
		assert.Equal(t, begin.AddDays(c.days), got.Day, name)
		assert.Equal(t, c.state.String(), got.State.String(), name)
		assert.Equal(t, ByMeter, got.Limit, name)
		assert.Zero(t, got.Calendar, name)
	}
}

// Done without a reading, what the meter stood at lies between two readings, and so does
// what it is due at.
func TestATimeDoneWithoutAReadingWidensTheSpan(t *testing.T) {
	begin := day(t, "2026-01-01")
	use := Forecast(even(begin, 2, 30, 5), Pattern{})
	with := Next(Job{Every: Interval{Hours: 250}, Done: []Done{{Day: begin + 45, Total: 90, Read: true}}}, use, begin+120)
	without := Next(Job{Every: Interval{Hours: 250}, Done: []Done{{Day: begin + 45}}}, use, begin+120)
	assert.Equal(t, Value{340, 340, 340}, with.Meter)
	assert.Equal(t, Value{310, 340, 370}, without.Meter)
	assert.Equal(t, with.Day, without.Day)
	assert.Less(t, without.Span.Early, with.Span.Early)
	assert.Greater(t, without.Span.Late, with.Span.Late)
}

func TestAsSoonAsItMayBeReachedItIsDue(t *testing.T) {
	begin := day(t, "2026-01-01")
	use := Forecast(even(begin, 2, 30, 5), Pattern{})
	job := Job{Every: Interval{Hours: 400}, Start: Start{Day: begin}, Soon: 14}
	span := Next(job, use, begin+120).Span
	require.Less(t, span.Early, span.Expected)
	require.Less(t, span.Expected, span.Late)
	for today, want := range map[Day]State{span.Early - 15: Later, span.Early - 14: Soon, span.Early - 1: Soon, span.Early: Due, span.Expected: Due, span.Late: Due, span.Late + 1: Overdue} {
		assert.Equal(t, want.String(), Next(job, use, today).State.String(), today.String())
	}
}

// someJob is a job of any kind on a meter read at odd times; its times done are half of
// them readings.
func someJob(r *rand.Rand) (Job, Use, []Done) {
	use, points := someUse(r)
	some := func() Interval {
		return Interval{[]float64{0, 50, 100, 250, 500}[r.IntN(5)], []int{0, 0, 1, 3, 12}[r.IntN(5)], []int{0, 0, 0, 7, 30}[r.IntN(5)]}
	}
	job := Job{Every: some(), From: From(r.IntN(2)), Soon: r.IntN(40)}
	if r.IntN(2) == 0 {
		job.First = some()
	}
	from := Day(710000)
	if len(points) > 0 {
		from = points[0].Day
		if r.IntN(4) > 0 {
			job.Start = Start{from, points[0].Total}
		}
	}
	var times []Done
	for range 8 {
		if len(points) > 0 && r.IntN(2) == 0 {
			p := points[r.IntN(len(points))]
			value, _ := use.On(p.Day)
			times = append(times, Done{p.Day, value.Expected, true})
		} else {
			times = append(times, Done{Day: from.AddDays(r.IntN(900) - 20)})
		}
	}
	return job, use, times
}

func known(a Answer) bool { return a.State != Unknown && a.State != OnCondition }

func TestDoneLaterIsNeverDueEarlier(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	compared := 0
	for range 1500 {
		job, use, times := someJob(r)
		a, b := times[0], times[1]
		if a.Day > b.Day || a.Day == b.Day && a.after(b) {
			a, b = b, a
		}
		today := b.Day.AddDays(r.IntN(300))
		job.Done = []Done{a}
		if times[2].Day < a.Day {
			job.Done = append(job.Done, times[2])
		}
		earlier := Next(job, use, today)
		job.Done = append(append([]Done{}, job.Done...), b)
		later := Next(job, use, today)
		if !known(earlier) || !known(later) || earlier.Reason != later.Reason {
			continue
		}
		compared++
		require.True(t, earlier.Day <= later.Day && earlier.Span.Early <= later.Span.Early && earlier.Span.Late <= later.Span.Late,
			"%+v done %s and then %s: %+v, then %+v", job, a.Day, b.Day, earlier, later)
		require.True(t, later.Span.Early <= later.Day && later.Day <= later.Span.Late && later.Day == later.Span.Expected, "%+v", later)
	}
	assert.Greater(t, compared, 500)
}

func TestWhicheverComesFirst(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 8))
	both := 0
	for range 1500 {
		job, use, times := someJob(r)
		job.Done = times[:r.IntN(3)]
		today := Day(710000 + r.IntN(20000))
		if use.Read > 0 {
			today = use.Read.AddDays(r.IntN(400))
		}
		together := Next(job, use, today)
		dated, metered := job, job
		dated.Every.Hours, dated.First.Hours = 0, 0
		metered.Every.Months, metered.First.Months, metered.Every.Days, metered.First.Days = 0, 0, 0, 0
		byDay, byMeter := Next(dated, use, today), Next(metered, use, today)
		switch {
		case known(byDay) && known(byMeter):
			both++
			require.Equal(t, min(byDay.Day, byMeter.Day), together.Day)
			require.Equal(t, Span{min(byDay.Span.Early, byMeter.Span.Early), together.Day, min(byDay.Span.Late, byMeter.Span.Late)}, together.Span)
			require.Equal(t, min(byDay.State, byMeter.State), together.State)
			require.Equal(t, byMeter.Day < byDay.Day, together.Limit == ByMeter)
		case known(byDay):
			require.Equal(t, byDay.Span, together.Span)
			require.Equal(t, byMeter.Reason, together.Reason)
		case known(byMeter):
			require.Equal(t, byMeter.Span, together.Span)
		default:
			require.False(t, known(together))
		}
	}
	assert.Greater(t, both, 150)
}

// A job that is done whenever it is due, early and late by less than half an interval,
// comes once for each point of the schedule.
func TestTheScheduleNeitherDoublesNorSkips(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 6))
	for range 300 {
		begin := Day(730000 + r.IntN(3000))
		job := Job{Every: Interval{Months: 1 + r.IntN(12)}, From: FromSchedule, Start: Start{Day: begin}}
		for k := 1; k < 20; k++ {
			point := begin.AddMonths(k * job.Every.Months)
			if len(job.Done) > 0 {
				require.Equal(t, point, Next(job, Use{}, job.Done[len(job.Done)-1].Day).Day)
			}
			job.Done = append(job.Done, Done{Day: point.AddDays(r.IntN(27) - 13)})
		}
		hours := float64(50 * (1 + r.IntN(10)))
		job = Job{Every: Interval{Hours: hours}, From: FromSchedule, Start: Start{Day: begin, Meter: 17.5}}
		use := Forecast(even(begin, 5, 10, 800), Pattern{})
		for k := 1; k < 20; k++ {
			point := 17.5 + float64(k)*hours
			if len(job.Done) > 0 {
				require.InDelta(t, point, Next(job, use, Never).Meter.Expected, 1e-6)
			}
			total := point + (r.Float64()-0.5)*0.98*hours
			on, ok := use.Reached(total)
			require.True(t, ok)
			job.Done = append(job.Done, Done{on.Expected, total, true})
		}
	}
}

// The due day of an even meter, found by running it day by day.
func TestNextIsThatOfAMachineRunDayByDay(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	for range 300 {
		begin, aDay := Day(730000+r.IntN(3000)), float64(1+r.IntN(20))/4
		use := Forecast(even(begin, aDay, 20, 5), Pattern{})
		did := r.IntN(60)
		job := Job{Every: Interval{Hours: float64(10 + r.IntN(500)), Days: 1 + r.IntN(150)}, Done: []Done{{begin.AddDays(did), aDay * float64(did), true}}}
		got := Next(job, use, begin.AddDays(80))
		ran := did
		for aDay*float64(ran-did) < job.Every.Hours && ran-did < job.Every.Days {
			ran++
		}
		require.Equal(t, begin.AddDays(ran), got.Day, "%+v at %v a day", job, aDay)
	}
}
