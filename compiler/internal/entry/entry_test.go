package entry_test

import (
	"strings"
	"testing"

	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var card = plan.Card{
	Name: "deck-chain", Revision: "C", Machine: "Log-deck conveyor", Variant: "nine-metre",
	Sections: []plan.Section{{Steps: []plan.Step{
		{Number: 1},
		{Number: 2, Readings: []plan.Blank{{Label: "Chain slack", Unit: "mm", Limit: "20 to 30\u00a0mm", Low: "20", High: "30"}}},
		{Number: 3, Readings: []plan.Blank{{Label: "Colour of the oil"}}},
	}}},
	Blanks: []plan.Blank{{Label: "Oil filled"}, {Label: "Hour meter", Unit: "h", Of: plan.Meter}, {Label: "Date", Of: plan.Day}, {Label: "Initials", Of: plan.Worker}},
}

const book = `[[entry]]
procedure = "deck-chain"
revision = "C"
machine = "Log-deck conveyor"
variant = "nine-metre"
date = 2026-11-27
who = "R. A."
meter = "1234 h"
done = [1, 2]
remarks = "The chain is worn.\nOrder one."

[[entry.reading]]
step = 2
what = "Chain slack"
value = "34.5 mm"
limit = "20 to 30 mm"
outside = true

[[entry.reading]]
what = "Oil filled"
value = "1.6 L"

[[entry.left-out]]
step = 3
why = "no oil came"
`

func TestABookIsRead(t *testing.T) {
	entries, err := entry.Read([]byte(book + "\n" + strings.Replace(book, "2026-11-27", "2027-01-02", 1)))
	require.NoError(t, err)
	require.Len(t, entries, 2)
	assert.Equal(t, entry.Entry{Procedure: "deck-chain", Revision: "C", Machine: "Log-deck conveyor", Variant: "nine-metre", Date: "2026-11-27",
		Who: "R. A.", Meter: "1234 h", Done: []int{1, 2}, Remarks: "The chain is worn.\nOrder one.",
		Readings: []entry.Reading{{Step: 2, What: "Chain slack", Value: "34.5 mm", Limit: "20 to 30 mm", Outside: true}, {What: "Oil filled", Value: "1.6 L"}},
		LeftOut:  []entry.LeftOut{{Step: 3, Why: "no oil came"}}}, entries[0])
	assert.Equal(t, entry.Day("2027-01-02"), entries[1].Date)
	assert.Empty(t, entries[0].Check(card))

	for text, says := range map[string]string{
		"[[entry]]\ncolour = 1\n":       `no entry has a key "entry.colour"`,
		"[[entry]\n":                    "service book",
		"[[entry]]\ndate = \"today\"\n": "no day such as",
	} {
		_, err := entry.Read([]byte(text))
		assert.ErrorContains(t, err, says)
	}
}

func TestAnEntryIsHeldAgainstItsCard(t *testing.T) {
	for name, c := range map[string]struct{ old, new, says string }{
		"another procedure": {`"deck-chain"`, `"deck-oil"`, `procedure is "deck-oil", and "deck-chain" on the card`},
		"another revision":  {`revision = "C"`, `revision = "B"`, `revision is "B"`},
		"no variant":        {"variant = \"nine-metre\"\n", "", `variant is ""`},
		"no date":           {"date = 2026-11-27\n", "", "date is missing"},
		"meter without h":   {`"1234 h"`, `"1234"`, "meter: value"},
		"meter in metres":   {`"1234 h"`, `"1234 m"`, "meter: value"},
		"step left away":    {"[1, 2]", "[1]", "step 2 is neither done, nor open, nor left out"},
		"step twice":        {"[1, 2]", "[1, 2, 3]", "step 3 is told more than once"},
		"step that is none": {"[1, 2]", "[1, 2, 9]", "the card has no step 9"},
		"other step":        {"step = 2\nwhat", "step = 1\nwhat", "asks for none of that name there"},
		"other limit":       {"20 to 30 mm", "20 to 40 mm", `limit is "20 to 40 mm", and "20 to 30 mm" on the card`},
		"inside after all":  {"34.5 mm", "29 mm", "outside is true, and false by its value"},
		"below":             {"outside = true\n", "", "outside is false, and true by its value"},
		"other unit":        {"34.5 mm", "34.5 N", `value "34.5 N"`},
		"no end":            {"34.5 mm", "max 34.5 mm", "no amount with a lower and an upper end"},
		"a range":           {"34.5 mm", "28 to 30 mm", `value "28 to 30 mm" is a range, and one figure is wanted`},
		"read twice":        {"[[entry.reading]]\nwhat", "[[entry.reading]]\nstep = 2\nwhat = \"Chain slack\"\nvalue = \"35 mm\"\n\n[[entry.reading]]\nwhat", `step 2: reading "Chain slack" is there more than once`},
		"no step at all":    {"done = [1, 2]\n", "", "steps 1 and 2 are neither done, nor open, nor left out"},
		"nothing read":      {"1.6 L", "", "value is empty"},
	} {
		damaged := strings.Replace(book, c.old, c.new, 1)
		require.NotEqual(t, book, damaged, name)
		entries, err := entry.Read([]byte(damaged))
		require.NoError(t, err, name)
		assert.Contains(t, strings.Join(entries[0].Check(card), "\n"), c.says, name)
	}
	converted, err := entry.Read([]byte(strings.Replace(book, "34.5 mm", "1.36 in", 1)))
	require.NoError(t, err)
	assert.Empty(t, converted[0].Check(card), "a reading in another unit of the same kind")
}

func TestTheLayoutIsThatOfTheReader(t *testing.T) {
	fields := entry.Layout()
	var keys []string
	for _, field := range fields {
		keys = append(keys, field.Key)
	}
	assert.Equal(t, []string{"number", "corrects", "unit", "procedure", "revision", "machine", "variant", "date", "who", "meter", "new-meter", "done", "open", "remarks", "reading", "left-out", "used", "received"}, keys)
	assert.Equal(t, []entry.Field{{Key: "procedure", Kind: "text", May: true}, {Key: "revision", Kind: "text", May: true}, {Key: "machine", Kind: "text", May: true}, {Key: "variant", Kind: "text", May: true}, {Key: "date", Kind: "day"}}, fields[3:8])
	assert.Equal(t, entry.Field{Key: "left-out", Kind: "tables", May: true, Fields: []entry.Field{{Key: "step", Kind: "whole"}, {Key: "why", Kind: "text", May: true}}}, fields[15])
}
