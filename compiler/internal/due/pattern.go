package due

import (
	"fmt"
	"math"
)

// Season is a part of every year and the use in it. It takes in both its days, and goes
// over New Year where its end is before its begin.
type Season struct {
	FromMonth, FromDay int // 1 to 12, 1 to 31
	ToMonth, ToDay     int
	AWeek              float64 // use a week, in the unit of the meter
}

// Pattern is how use is spread over the year. The zero value is no pattern.
type Pattern struct {
	share []float64 // of each day of a year, by slot; 1 is the mean
	aDay  float64   // use on a mean day
}

// slot is where a day of the year stands: every month has room for 31.
func slot(month, day int) int { return (month-1)*31 + day - 1 }

// NewPattern makes a pattern of seasons; a day in none of them has no use. 29 February is
// taken as 28 February where no season names it. It is an error where a season has a day
// that no year has, a use that is no amount from 0, or a day of another season, and where
// there is no use at all.
func NewPattern(seasons []Season) (Pattern, error) {
	of := make([]int, slot(12, 31)+1) // season of each day, from 1
	aDay := make([]float64, len(of))
	for i, season := range seasons {
		if !inYear(season.FromMonth, season.FromDay) || !inYear(season.ToMonth, season.ToDay) {
			return Pattern{}, fmt.Errorf("season %d: no year has such a day", i+1)
		}
		if !amount(season.AWeek) {
			return Pattern{}, fmt.Errorf("season %d: its use is no amount from 0", i+1)
		}
		last := slot(season.ToMonth, season.ToDay)
		for at := slot(season.FromMonth, season.FromDay); ; at = (at + 1) % len(of) {
			if of[at] > 0 {
				return Pattern{}, fmt.Errorf("season %d has a day of season %d", i+1, of[at])
			}
			of[at], aDay[at] = i+1, season.AWeek/daysAWeek
			if at == last {
				break
			}
		}
	}
	if odd := slot(2, 29); of[odd] == 0 {
		aDay[odd] = aDay[odd-1]
	}
	// Over the 400 years after which the calendar repeats, 29 February comes 97 times.
	var sum float64
	for month := 1; month <= monthsAYear; month++ {
		for day := 1; day <= monthDays[month]; day++ {
			sum += 400 * aDay[slot(month, day)]
		}
	}
	mean := (sum + 97*aDay[slot(2, 29)]) / daysAnEra
	if mean <= 0 || math.IsInf(mean, 1) {
		return Pattern{}, fmt.Errorf("the seasons have no use")
	}
	for at := range aDay {
		aDay[at] /= mean
	}
	return Pattern{share: aDay, aDay: mean}, nil
}

func inYear(month, day int) bool { return Date(2000, month, day) > 0 }

// weight is the share of a day in the use of a year, 1 for a mean day.
func (p Pattern) weight(d Day) float64 {
	if p.share == nil {
		return 1
	}
	_, month, day := d.Date()
	return p.share[slot(month, day)]
}

// between adds up the days after one day, up to another.
func (p Pattern) between(from, to Day) float64 {
	if p.share == nil {
		return math.Max(0, float64(DaysBetween(from, to)))
	}
	var sum float64
	for day := from + 1; day <= to; day++ {
		sum += p.weight(day)
	}
	return sum
}
