package due

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/teambition/rrule-go"
)

func ofTime(t time.Time) Day { return Date(t.Year(), int(t.Month()), t.Day()) }

func day(t testing.TB, text string) Day {
	t.Helper()
	d, err := ParseDay(text)
	require.NoError(t, err)
	return d
}

// Go's package time is proleptic Gregorian too, and shares no code with this one.
func TestDaysAreThoseOfPackageTime(t *testing.T) {
	at := time.Date(1, 1, 1, 0, 0, 0, 0, time.UTC)
	for d := firstDay; d <= Never; {
		year, month, inMonth := d.Date()
		isoYear, isoWeek := d.Week()
		wantYear, wantWeek := at.ISOWeek()
		if year != at.Year() || month != int(at.Month()) || inMonth != at.Day() || d.String() != at.Format(time.DateOnly) ||
			Date(year, month, inMonth) != d || isoYear != wantYear || isoWeek != wantWeek || d.Weekday()%7 != int(at.Weekday()) {
			require.Fail(t, "another day", "%d is %s, week %d of %d; %s, week %d of %d", d, d, isoWeek, isoYear, at.Format(time.DateOnly), wantWeek, wantYear)
		}
		step := 11 // no divisor of a week, a month or a year
		if 1895 < year && year < 2110 || d > Never-11 {
			step = 1
		}
		d, at = d+Day(step), at.AddDate(0, 0, step)
	}
	assert.Equal(t, "9999-12-31", Never.String())
}

func TestADayIsReadOrRefused(t *testing.T) {
	for _, text := range []string{"0001-01-01", "1900-02-28", "2000-02-29", "2024-02-29", "2026-12-31", "9999-12-31"} {
		assert.Equal(t, text, day(t, text).String())
	}
	for _, text := range []string{"", "2026-2-28", "2026-02-29", "1900-02-29", "2100-02-29", "2026-13-01", "2026-00-01", "2026-01-00", "2026-04-31",
		"0000-01-01", "2026-02-28T", "+026-02-28", "2026-+2-28", "2026/02/28", "20260228", "２026-02-2"} {
		d, err := ParseDay(text)
		assert.Error(t, err, text)
		assert.Zero(t, d)
	}
}

func FuzzParseDay(f *testing.F) {
	for _, text := range []string{"2026-02-28", "2024-02-29", "2023-02-29", "0000-12-31", "9999-12-31", "2026-1--1"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		d, err := ParseDay(text)
		at, wrong := time.Parse(time.DateOnly, text)
		require.Equal(t, wrong == nil && at.Year() > 0, err == nil, text)
		if err == nil {
			require.Equal(t, ofTime(at), d)
			require.Equal(t, text, d.String())
		}
	})
}

func TestNoDayStaysNoDay(t *testing.T) {
	var none Day
	year, week := none.Week()
	assert.Empty(t, none.String())
	assert.Zero(t, none.AddDays(1)+none.AddMonths(1)+none.AddYears(1))
	assert.Zero(t, none.Weekday()+year+week)
}

func TestDaysStayOnTheCalendar(t *testing.T) {
	const far = 1 << 62
	for _, d := range []Day{firstDay, day(t, "2026-07-01"), Never} {
		assert.Equal(t, Never, d.AddDays(far))
		assert.Equal(t, firstDay, d.AddDays(-far))
		assert.Equal(t, Never, d.AddMonths(far))
		assert.Equal(t, firstDay, d.AddMonths(-far))
		assert.Equal(t, Never, d.AddYears(far))
		assert.Equal(t, firstDay, d.AddYears(-far))
	}
	assert.Equal(t, 59, DaysBetween(day(t, "2025-12-31"), day(t, "2026-02-28")))
	assert.Equal(t, -1, DaysBetween(day(t, "2026-03-01"), day(t, "2026-02-28")))
}

func TestMonthsEndWhereTheyEnd(t *testing.T) {
	begin := day(t, "2027-01-31")
	var got []string
	for n := range 14 {
		got = append(got, begin.AddMonths(n).String())
	}
	assert.Equal(t, []string{"2027-01-31", "2027-02-28", "2027-03-31", "2027-04-30", "2027-05-31", "2027-06-30", "2027-07-31", "2027-08-31",
		"2027-09-30", "2027-10-31", "2027-11-30", "2027-12-31", "2028-01-31", "2028-02-29"}, got)
	assert.Equal(t, "2024-02-29", day(t, "2024-03-31").AddMonths(-1).String())
	assert.Equal(t, "2025-02-28", day(t, "2024-02-29").AddYears(1).String())
	assert.Equal(t, "2028-02-29", day(t, "2024-02-29").AddYears(4).String())
}

// A plain rule of RFC 5545 leaves out a month that lacks the day: monthly from 31 January
// skips February, yearly from 29 February skips three years of four. A service is not left
// out for want of a day, so it falls on the last day of such a month. RFC 5545 says that
// too: the last (BYSETPOS=-1) of the days up to the one meant, which is BYMONTHDAY=-1 for
// the 31st.
func TestRepeatsAreThoseOfRFC5545(t *testing.T) {
	expand := func(rule string, begin time.Time, count int) []Day {
		r, err := rrule.StrToRRule(fmt.Sprintf("%s;COUNT=%d", rule, count))
		require.NoError(t, err)
		r.DTStart(begin)
		var out []Day
		for _, at := range r.All() {
			out = append(out, ofTime(at))
		}
		require.Len(t, out, count, rule)
		return out
	}
	upTo := func(last int) string {
		text := "BYMONTHDAY=28"
		for d := 29; d <= last; d++ {
			text += fmt.Sprintf(",%d", d)
		}
		return text + ";BYSETPOS=-1"
	}
	const count = 60
	for _, year := range []int{1896, 1999, 2000, 2023, 2026, 2028, 2096} {
		for month := 1; month <= 12; month++ {
			for d := 1; d <= lastOf(year, month); d += 1 + 4*min(1, max(0, 27-d)) {
				begin := time.Date(year, time.Month(month), d, 0, 0, 0, 0, time.UTC)
				from := ofTime(begin)
				for _, every := range []int{1, 2, 3, 6, 12, 18} {
					plain := fmt.Sprintf("FREQ=MONTHLY;INTERVAL=%d", every)
					kept := plain
					if d > 28 {
						kept += ";" + upTo(d)
					}
					for k, want := range expand(kept, begin, count) {
						require.Equal(t, want, from.AddMonths(k*every), "%s from %s", kept, from)
					}
					if d == 31 {
						assert.Equal(t, expand(kept, begin, count), expand(plain+";BYMONTHDAY=-1", begin, count))
					}
					ours := map[Day]bool{}
					for k := range 20 * count {
						ours[from.AddMonths(k*every)] = true
					}
					if d < 31 || every%12 != 0 || lastOf(2001, month) == 31 { // the rule comes up at all
						for _, each := range expand(plain, begin, count/4) {
							require.True(t, ours[each], "%s from %s: %s", plain, from, each)
						}
					}
				}
				yearly := "FREQ=YEARLY"
				if month == 2 && d == 29 {
					yearly += ";BYMONTH=2;" + upTo(d)
				}
				for k, want := range expand(yearly, begin, count) {
					require.Equal(t, want, from.AddYears(k), "%s from %s", yearly, from)
				}
				for k, want := range expand("FREQ=WEEKLY;INTERVAL=6", begin, count) {
					require.Equal(t, want, from.AddDays(k*42), "weeks from %s", from)
				}
			}
		}
	}
}
