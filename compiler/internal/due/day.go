package due

import (
	"fmt"
	"strconv"
)

// Day is a calendar day (proleptic Gregorian): 1 is 0001-01-01, and 0 is no day. What is
// counted stays within 0001-01-01 and Never; no day stays no day.
type Day int

const (
	firstDay Day = 1       // 0001-01-01
	Never    Day = 3652059 // 9999-12-31, the last day there is: for what comes on no day
)

const (
	monthsAYear  = 12
	daysAWeek    = 7
	daysACentury = 36524
	daysAnEra    = 146097 // of 400 years, after which the calendar repeats
	lastYear     = 9999
	marchFirst   = 306 // days from 1 March of the year 0 to 0001-01-01
)

// monthDays is the length of each month of a common year, from January.
var monthDays = [monthsAYear + 1]int{1: 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

func leap(year int) bool { return year%4 == 0 && (year%100 != 0 || year%400 == 0) }

// lastOf is the last day of a month.
func lastOf(year, month int) int {
	if month == 2 && leap(year) {
		return 29
	}
	return monthDays[month]
}

// Date is the day of a year (1 to 9999), a month (1 to 12) and a day of the month; 0 where
// there is none such.
func Date(year, month, day int) Day {
	if year < 1 || year > lastYear || month < 1 || month > monthsAYear || day < 1 || day > lastOf(year, month) {
		return 0
	}
	return date(year, month, day)
}

// date counts from March, so that the odd day of a leap year comes last (Richards,
// "Calendars", in: Explanatory Supplement to the Astronomical Almanac, 3rd ed., 2013).
func date(year, month, day int) Day {
	y, m := year, month-3
	if m < 0 {
		y, m = y-1, m+monthsAYear
	}
	return Day(y*365 + y/4 - y/100 + y/400 + (153*m+2)/5 + day - marchFirst)
}

// ParseDay reads a day as ISO 8601 writes it: "2026-02-28", years 0001 to 9999. Anything
// else, and a day that no calendar has, is an error.
func ParseDay(text string) (Day, error) {
	if len(text) != len("2026-02-28") || text[4] != '-' || text[7] != '-' {
		return 0, fmt.Errorf("%q is no day such as 2026-02-28", text)
	}
	var parts [3]int
	for i, part := range [3]string{text[:4], text[5:7], text[8:]} {
		n, err := strconv.ParseUint(part, 10, 16)
		if err != nil {
			return 0, fmt.Errorf("%q is no day such as 2026-02-28", text)
		}
		parts[i] = int(n)
	}
	day := Date(parts[0], parts[1], parts[2])
	if day == 0 {
		return 0, fmt.Errorf("there is no day %s", text)
	}
	return day, nil
}

// Date is the year, the month and the day of the month; zeros for no day.
func (d Day) Date() (year, month, day int) {
	if d == 0 {
		return 0, 0, 0
	}
	n := int(d) + marchFirst - 1 // from 1 March of the year 0
	era := n / daysAnEra
	n -= era * daysAnEra
	century := min(n/daysACentury, 3)
	n -= century * daysACentury
	four := n / 1461
	n -= four * 1461
	single := min(n/365, 3)
	n -= single * 365
	m := (5*n + 2) / 153
	year, month, day = era*400+century*100+four*4+single, m+3, n-(153*m+2)/5+1
	if month > monthsAYear {
		year, month = year+1, month-monthsAYear
	}
	return year, month, day
}

// String is the day as ISO 8601 writes it, empty for no day.
func (d Day) String() string {
	if d == 0 {
		return ""
	}
	year, month, day := d.Date()
	return fmt.Sprintf("%04d-%02d-%02d", year, month, day)
}

// within keeps a count of days on the calendar.
func within(n int) Day { return Day(min(max(n, int(firstDay)), int(Never))) }

// AddDays is n days later, earlier where n is negative.
func (d Day) AddDays(n int) Day {
	if d == 0 {
		return 0
	}
	return within(int(d) + min(max(n, -int(Never)), int(Never)))
}

// AddMonths is the same day n months later, earlier where n is negative; the last day of
// a month that is too short for it. Months of a repeated interval are counted from where
// it began: 31 January, 28 February, 31 March.
func (d Day) AddMonths(n int) Day {
	if d == 0 {
		return 0
	}
	const most = lastYear * monthsAYear
	year, month, day := d.Date()
	count := year*monthsAYear + month - 1 + min(max(n, -most), most)
	year, month = count/monthsAYear, count%monthsAYear+1
	switch {
	case count < monthsAYear:
		return firstDay
	case year > lastYear:
		return Never
	}
	return date(year, month, min(day, lastOf(year, month)))
}

// AddYears is the same day n years later: 29 February becomes 28 February in a common year.
func (d Day) AddYears(n int) Day {
	return d.AddMonths(min(max(n, -lastYear), lastYear) * monthsAYear)
}

// DaysBetween counts the days from one day to another, negative where it is earlier.
func DaysBetween(from, to Day) int { return int(to - from) }

// Weekday is 1 for Monday to 7 for Sunday (ISO 8601); 0 for no day.
func (d Day) Weekday() int {
	if d == 0 {
		return 0
	}
	return int(d-1)%daysAWeek + 1 // 0001-01-01 was a Monday
}

// Week is the week of ISO 8601 and the year it belongs to, which around New Year may be
// another than that of the day; zeros for no day.
func (d Day) Week() (year, week int) {
	if d == 0 {
		return 0, 0
	}
	thursday := int(d) + 4 - d.Weekday() // the year of a week is that of its Thursday
	year, _, _ = Day(thursday).Date()
	return year, (thursday-int(date(year, 1, 1)))/daysAWeek + 1
}
