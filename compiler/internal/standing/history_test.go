package standing

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/entry"
)

// plainly gathers a book the simple way: in one list, with every reading and every time done.
func plainly(entries []entry.Entry, units []Unit, on due.Day) *Book {
	book := &Book{units: map[string]*history{}, put: map[int]bool{}}
	for _, e := range entries {
		if e.Corrects > 0 {
			book.put[e.Corrects] = true
		}
	}
	for _, e := range entries {
		day, err := due.ParseDay(string(e.Date))
		unit, why := Owner(e, units)
		if err != nil || day > on || why != "" || book.put[e.Number] {
			continue
		}
		kept := book.of(unit.Name)
		done := Done{Entry: e.Number, Day: day, Who: e.Who}
		if reading, is, _ := readingOf(e, unit, day); is {
			done.read = read{reading, e.Number, len(kept.reads) + 1}
			kept.reads = append(kept.reads, done.read)
		}
		if e.Procedure != "" {
			kept.done[e.Procedure] = append(kept.done[e.Procedure], done)
		}
	}
	return book
}

func scanOf(entries []entry.Entry) func(func(entry.Entry) error) error {
	return func(each func(entry.Entry) error) error {
		for _, e := range entries {
			if err := each(e); err != nil {
				return err
			}
		}
		return nil
	}
}

// anyBook is a book of two machines over some years: several readings a day, entries that come
// late, meters that are replaced, times done with and without a reading, entries put right, and
// in some books a reading that is mistyped.
func anyBook(random *rand.Rand, units []Unit, mistyped bool) []entry.Entry {
	var out []entry.Entry
	shows := map[string]float64{}
	day := due.Date(2019, 1, 1+random.IntN(20))
	most := 1 + random.IntN(400)
	for len(out) < most {
		day = day.AddDays(random.IntN(1 + random.IntN(12)))
		for range random.IntN(6) {
			unit := units[random.IntN(len(units))]
			e := entry.Entry{Number: len(out) + 1, Unit: unit.Name, Date: entry.Day(day.String()), Who: []string{"R. A.", "K. T."}[random.IntN(2)]}
			shows[unit.Name] += random.Float64() * 2 * float64(random.IntN(2))
			e.Meter = fmt.Sprintf("%.1f %s", shows[unit.Name], unit.Meter)
			switch random.IntN(30) {
			case 0:
				shows[unit.Name] = float64(random.IntN(50))
				e.NewMeter = fmt.Sprintf("%.1f %s", shows[unit.Name], unit.Meter)
			case 1, 2:
				e.Meter = ""
			case 3:
				if mistyped {
					e.Meter = fmt.Sprintf("%.1f %s", shows[unit.Name]*float64(random.IntN(12)), unit.Meter)
				}
			case 4:
				if n := len(out); n > 0 {
					e.Corrects = 1 + random.IntN(n)
				}
			}
			if random.IntN(3) == 0 || e.Meter == "" {
				e.Procedure = []string{"grease", "oil"}[random.IntN(2)]
			}
			out = append(out, e)
		}
	}
	for range random.IntN(1 + len(out)/5) { // a phone gives its entries later
		from := random.IntN(len(out))
		to := min(len(out)-1, from+random.IntN(40))
		late := out[from]
		out = slices.Insert(slices.Delete(out, from, from+1), to, late)
	}
	return out
}

func TestWhatIsKeptOfABookTellsWhatAllOfItDoes(t *testing.T) {
	units := []Unit{
		{Name: "deck", Title: "Deck", Meter: "h", Start: due.Start{Day: due.Date(2018, 6, 1)}},
		{Name: "mill", Title: "Mill", Meter: "cycles"},
	}
	random := rand.New(rand.NewPCG(21, 22))
	fit, unfit, dropped := 0, 0, 0
	for range 300 {
		entries := anyBook(random, units, random.IntN(4) == 0)
		last, err := due.ParseDay(string(entries[len(entries)-1].Date))
		require.NoError(t, err)
		on := last.AddDays(random.IntN(200) - 50)
		book, err := Gather(units, nil, on, scanOf(entries))
		require.NoError(t, err)
		want := plainly(entries, units, on)
		for _, unit := range units {
			kept, full := book.of(unit.Name), want.of(unit.Name)
			meter, faults, reads := kept.join(unit)
			fullMeter, fullFaults, fullReads := full.join(unit)
			require.Len(t, faults, len(fullFaults))
			for i, fault := range faults {
				require.Equal(t, fullReads[fullFaults[i].Index].entry, reads[fault.Index].entry)
				require.Equal(t, fullFaults[i].Why, fault.Why)
			}
			if len(faults) > 0 {
				unfit++
			} else if fit++; len(reads) < len(fullReads) {
				dropped++
			}
			require.Equal(t, fullMeter.Ahead, meter.Ahead)
			pattern := due.Pattern{}
			if random.IntN(2) == 0 {
				pattern, err = due.NewPattern([]due.Season{{FromMonth: 4, FromDay: 1, ToMonth: 10, ToDay: 31, AWeek: 20}, {FromMonth: 11, FromDay: 1, ToMonth: 3, ToDay: 31, AWeek: 5}})
				require.NoError(t, err)
			}
			use, fullUse := due.Forecast(meter.Points, pattern), due.Forecast(fullMeter.Points, pattern)
			require.Equal(t, []any{fullUse.Basis, fullUse.Why, fullUse.AWeek, fullUse.Read}, []any{use.Basis, use.Why, use.AWeek, use.Read})
			for range 8 {
				day, hours := due.Date(2018, 9, 1).AddDays(random.IntN(1500)), random.Float64()*400
				if n := len(fullMeter.Points); n > 0 && random.IntN(2) == 0 {
					hours = fullMeter.Points[random.IntN(n)].Total
				}
				then, known := use.On(day)
				fullThen, fullKnown := fullUse.On(day)
				require.Equal(t, []any{fullThen, fullKnown}, []any{then, known})
				span, known := use.Reached(hours)
				fullSpan, fullKnown := fullUse.Reached(hours)
				require.Equal(t, []any{fullSpan, fullKnown}, []any{span, known})
			}
			for _, procedure := range []string{"grease", "oil"} {
				for _, from := range []due.From{due.FromDone, due.FromSchedule} {
					ask := due.Job{Every: due.Interval{Hours: float64(10 + random.IntN(200)), Months: random.IntN(2) * 6}, From: from, Start: unit.Start, Soon: 14}
					ask.Done = timesOf(kept, procedure, meter, reads)
					answer := due.Next(ask, use, on)
					fullAsk := ask
					fullAsk.Done = timesOf(full, procedure, fullMeter, fullReads)
					require.Equal(t, due.Next(fullAsk, fullUse, on), answer)
					require.Equal(t, due.Following(fullAsk, fullUse, answer, on, on.AddDays(365)), due.Following(ask, use, answer, on, on.AddDays(365)))
				}
			}
		}
	}
	assert.Greater(t, dropped, 100, "books of which something was left away")
	assert.Greater(t, unfit, 20, "books with readings that are refused")
	assert.Greater(t, fit, unfit)
}

func timesOf(kept *history, procedure string, meter due.Meter, reads []read) []due.Done {
	var out []due.Done
	for _, one := range kept.done[procedure] {
		total, known := total(meter, reads, one.read)
		out = append(out, due.Done{Day: one.Day, Total: total, Read: known})
	}
	return out
}

// However many entries there are, what is kept grows with the days alone.
func TestWhatIsKeptGrowsWithDays(t *testing.T) {
	unit := Unit{Name: "deck", Title: "Deck", Meter: "h"}
	day := due.Date(2026, 1, 1)
	kept := func(aDay int) int {
		var entries []entry.Entry
		for i := range 100 * aDay {
			entries = append(entries, entry.Entry{Number: i + 1, Unit: "deck", Procedure: "grease", Date: entry.Day(day.AddDays(i / aDay).String()), Meter: fmt.Sprintf("%.4f h", float64(i)/float64(aDay))})
		}
		book, err := Gather([]Unit{unit}, nil, day.AddDays(200), scanOf(entries))
		require.NoError(t, err)
		_, faults, _ := book.of("deck").join(unit)
		require.Empty(t, faults)
		return len(book.of("deck").reads)
	}
	assert.Equal(t, 100, kept(1))
	assert.Equal(t, 200, kept(2))
	assert.Equal(t, 200, kept(50))
}
