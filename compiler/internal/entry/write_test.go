package entry_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"benchleaf/compiler/internal/entry"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hostile are texts that a person, a phone or an enemy may put into an entry.
var hostile = []string{
	"", " ", "R. A.", "Log-deck conveyor", "34.5 mm", "20 to 30\u00a0mm", `"`, `\`, `\"`, `"""`, `'''`, "a\nb", "a\r\nb", "\t", "\x00", "\x7f", "\u0085", "\u2028",
	"[[entry]]", "\n[[entry]]\nnumber = 9\n", "\n# end of entry 1\n\n# entry 2\n[[entry]]\n", "# no comment", "done = [1]", `\u0041`, "\uFEFF", "\u202Eleft", "\uFFFD",
	"größer als 6 °C · ½", "油", "🔧", "\U0010FFFF", "true", "2026-11-27", "}", "]", "= 1", strings.Repeat("long ", 60), strings.Repeat("x", 64), strings.Repeat("x", 65),
}

func text(random *rand.Rand) string {
	out := hostile[random.IntN(len(hostile))]
	for random.IntN(3) == 0 {
		out += hostile[random.IntN(len(hostile))] + string(rune(random.IntN(0xD7FF)))
	}
	return out
}

func wholes(random *rand.Rand) (out []int) {
	for range random.IntN(4) {
		out = append(out, random.IntN(40)-2)
	}
	return out
}

func tables[T any](random *rand.Rand, one func() T) (out []T) {
	for range max(0, random.IntN(5)-2) {
		out = append(out, one())
	}
	return out
}

// anyEntry is an entry of every kind that can be written and read again.
func anyEntry(random *rand.Rand) entry.Entry {
	some := func() string {
		if random.IntN(2) == 0 {
			return ""
		}
		return text(random)
	}
	moved := func() entry.Moved { return entry.Moved{What: text(random), Amount: text(random)} }
	e := entry.Entry{
		Number: random.IntN(1000), Corrects: random.IntN(3) * random.IntN(1<<50), Unit: some(), Procedure: some(), Revision: some(), Machine: some(), Variant: some(),
		Who: some(), Meter: some(), NewMeter: some(), Done: wholes(random), Open: wholes(random), Remarks: some(),
		Readings: tables(random, func() entry.Reading {
			return entry.Reading{Step: random.IntN(3), What: text(random), Value: text(random), Limit: some(), Outside: random.IntN(2) == 0}
		}),
		LeftOut: tables(random, func() entry.LeftOut { return entry.LeftOut{Step: random.IntN(9), Why: some()} }),
		Used:    tables(random, moved), Received: tables(random, moved),
	}
	if random.IntN(5) > 0 {
		e.Date = entry.Day(fmt.Sprintf("%04d-%02d-%02d", random.IntN(10000), 1+random.IntN(12), 1+random.IntN(28)))
	}
	return e
}

func TestAnEntryIsWrittenAsItIsRead(t *testing.T) {
	e := entry.Entry{Number: 17, Unit: "deck-2", Procedure: "deck-chain", Date: "2026-11-27", Who: "R. \"Bob\" A.", Done: []int{1, 2}, Remarks: "Worn.\nOrder\x1f one.",
		Readings: []entry.Reading{{Step: 2, What: "Chain slack", Value: "34 mm", Outside: true}, {What: "Oil filled"}}, LeftOut: []entry.LeftOut{{}},
		Used: []entry.Moved{{What: "chain-oil", Amount: "1.1 L"}}}
	assert.Equal(t, `
# entry 17
[[entry]]
number = 17
unit = "deck-2"
procedure = "deck-chain"
date = 2026-11-27
who = "R. \"Bob\" A."
done = [1, 2]
remarks = "Worn.\nOrder\u001F one."

[[entry.reading]]
step = 2
what = "Chain slack"
value = "34 mm"
outside = true

[[entry.reading]]
what = "Oil filled"
value = ""

[[entry.left-out]]
step = 0

[[entry.used]]
what = "chain-oil"
amount = "1.1 L"
# end of entry 17
`, string(e.Text()))
	assert.Equal(t, "\n[[entry]]\nwho = \"R. A.\"\n", string(entry.Entry{Who: "R. A."}.Text()), "without its number it has no frame")
}

func TestEveryEntryIsReadAsItWasWritten(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 1500 {
		e := anyEntry(random)
		written := e.Text()
		got, err := entry.Read(written)
		require.NoError(t, err, "%s", written)
		require.Equal(t, []entry.Entry{e}, got, "%s", written)
		assert.Equal(t, len(written), entry.Torn(written))
		if e.Number > 0 {
			last, plain := entry.Last(written)
			assert.True(t, plain, "%s", written)
			assert.Equal(t, e.Number, last)
		}
	}
}

// The day is the one key whose text is not in quotes.
func TestADayThatIsNoneDoesNoHarm(t *testing.T) {
	for _, day := range []entry.Day{"today", "2026-02-30", "2100-02-29", "2026-11-27\nnumber = 9", "2026-13-01", "2026-00-01", "2026-1-1", "202a-01-01", "2026-11-27 "} {
		e := entry.Entry{Number: 3, Date: day}
		_, err := entry.Read(e.Text())
		assert.ErrorContains(t, err, "no day", string(day))
	}
	for _, day := range []entry.Day{"2000-02-29", "2024-02-29", "0000-01-01", "9999-12-31"} {
		got, err := entry.Read(entry.Entry{Number: 3, Date: day}.Text())
		require.NoError(t, err, string(day))
		assert.Equal(t, day, got[0].Date)
	}
}

func FuzzText(f *testing.F) {
	for i, one := range hostile {
		f.Add(i, one, hostile[(i*7)%len(hostile)], i%2 == 0)
	}
	f.Fuzz(func(t *testing.T, number int, one, other string, flag bool) {
		number = min(max(number, -number, 0), 1<<50)
		e := entry.Entry{Number: number, Who: one, Remarks: other, Done: []int{number}, Readings: []entry.Reading{{What: other, Value: one, Outside: flag}}, LeftOut: []entry.LeftOut{{Why: one}}}
		got, err := entry.Read(e.Text())
		require.NoError(t, err)
		e.Who, e.Remarks = strings.ToValidUTF8(one, "\uFFFD"), strings.ToValidUTF8(other, "\uFFFD")
		e.Readings[0].What, e.Readings[0].Value, e.LeftOut[0].Why = e.Remarks, e.Who, e.Who
		require.Equal(t, []entry.Entry{e}, got)
	})
}
