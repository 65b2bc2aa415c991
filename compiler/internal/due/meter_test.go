package due

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

func totals(m Meter) []float64 {
	var out []float64
	for _, point := range m.Points {
		out = append(out, point.Total)
	}
	return out
}

func TestAnotherMeterGoesOnCounting(t *testing.T) {
	begin := day(t, "2026-01-05")
	m, faults := Join(Start{begin, 200}, HoursADay, []Reading{
		{Day: begin.AddDays(100), Value: 45}, // in any order
		{Day: begin.AddDays(30), Value: 350},
		{Day: begin.AddDays(60), Value: 500, Other: true, New: 10},
		{Day: begin.AddDays(60), Value: 12},
		{Day: begin.AddDays(120), Value: 60, Other: true},
		{Day: begin.AddDays(130), Value: 5.5},
	})
	assert.Empty(t, faults)
	assert.Equal(t, []float64{200, 350, 500, 502, 535, 550, 555.5}, totals(m))
	total, known := m.Total(3)
	assert.True(t, known)
	assert.Equal(t, 502.0, total)
	assert.Equal(t, 25.5, m.Shows(575.5), "what the meter shows at 575.5 h of running")
	_, known = m.Total(9)
	assert.False(t, known)
}

func TestReadingsThatCannotBeAreRefused(t *testing.T) {
	begin := day(t, "2026-01-05")
	at := func(days int, value float64) Reading { return Reading{Day: begin.AddDays(days), Value: value} }
	for name, c := range map[string]struct {
		start    Start
		most     float64
		readings []Reading
		want     []Fault
	}{
		"backwards":                       {Start{}, 24, []Reading{at(0, 100), at(10, 99)}, []Fault{{1, Backwards, 0}}},
		"below service":                   {Start{begin, 100}, 24, []Reading{at(10, 99)}, []Fault{{0, Backwards, -1}}},
		"before service":                  {Start{begin, 0}, 24, []Reading{at(-1, 5), at(1, 5)}, []Fault{{0, TooEarly, -1}}},
		"a day has 24 hours":              {Start{begin, 0}, 24, []Reading{at(10, 264), at(20, 528.1)}, []Fault{{1, TooFast, 0}}},
		"that of both days":               {Start{begin, 0}, 24, []Reading{at(0, 24)}, nil},
		"one figure too high":             {Start{begin, 0}, 24, []Reading{at(30, 120), at(60, 640), at(90, 200), at(120, 290)}, []Fault{{1, TooHigh, 2}}},
		"one figure too low":              {Start{begin, 0}, 24, []Reading{at(30, 600), at(60, 70), at(90, 2000), at(120, 2500)}, []Fault{{1, Backwards, 0}}},
		"too low, and nothing before":     {Start{}, 24, []Reading{at(30, 6), at(31, 1000), at(60, 1100)}, []Fault{{0, TooLow, 1}}},
		"the later of two":                {Start{}, 24, []Reading{at(30, 600), at(60, 500)}, []Fault{{1, Backwards, 0}}},
		"no amount":                       {Start{}, 24, []Reading{at(1, math.NaN()), at(2, -1), at(3, math.Inf(1)), {Value: 4}, {Day: begin, Value: 1, Other: true, New: -1}}, []Fault{{0, NoReading, -1}, {1, NoReading, -1}, {2, NoReading, -1}, {3, NoReading, -1}, {4, NoReading, -1}}},
		"nothing bounds it":               {Start{begin, 0}, 0, []Reading{at(1, 1e6)}, nil},
		"two of a day in the other order": {Start{}, 24, []Reading{at(0, 106), at(0, 101)}, nil},
		"other meter of a higher stand":   {Start{}, 24, []Reading{{Day: begin, Value: 100, Other: true, New: 4000}, at(10, 4050)}, nil},
		"below the other meter":           {Start{}, 24, []Reading{{Day: begin, Value: 100, Other: true, New: 4000}, at(10, 150)}, []Fault{{1, Backwards, 0}}},
	} {
		_, faults := Join(c.start, c.most, c.readings)
		assert.Equal(t, c.want, faults, name)
	}
	m, faults := Join(Start{}, 24, nil)
	assert.Empty(t, m.Points)
	assert.Empty(t, faults)
}

// One figure damaged in a row of good ones is the one refused, or does no harm.
func TestOneWrongFigureCostsNoOther(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	for range 3000 {
		d, value := Day(700000), 0.0
		readings := []Reading{}
		for range 6 + r.IntN(10) {
			gap := 5 + r.IntN(60)
			d, value = d.AddDays(gap), value+float64(gap)*(1+9*r.Float64())
			readings = append(readings, Reading{Day: d, Value: value})
		}
		_, faults := Join(Start{700000, 0}, HoursADay, readings)
		assert.Empty(t, faults)
		wrong := 1 + r.IntN(len(readings)-3) // two good ones on either side, service counts
		readings[wrong].Value *= []float64{0.01, 0.1, 10, 100}[r.IntN(4)]
		_, faults = Join(Start{700000, 0}, HoursADay, readings)
		for _, fault := range faults {
			assert.Equal(t, wrong, fault.Index)
		}
	}
}
