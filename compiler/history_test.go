package compiler

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
)

// A book of eight entries, read by eye: a job with two things out of order, a reading of the
// meter, an entry that was wrong and the one that stands for it, a meter that was replaced and
// written down late, a delivery, and a machine that nothing describes any more.
func TestTheHistoryOfAMachine(t *testing.T) {
	files := ReadFolder(t, "../procedures")
	result := Compile(Input{Files: files})
	var book strings.Builder
	for i, e := range []entry.Entry{
		{Unit: "chipper", Procedure: "chipper-knife-turn", Revision: "B", Date: "2026-01-05", Who: "R. A.", Meter: "900 h", Done: []int{1, 2},
			LeftOut: []entry.LeftOut{{Step: 3, Why: "no light"}, {Step: 4, Why: "no light"}, {Step: 9}}, Open: []int{20},
			Readings: []entry.Reading{{Step: 18, What: "Gap, worst knife", Value: "1.4 mm", Outside: true}}},
		{Unit: "chipper", Date: "2026-02-01", Meter: "920 h"},
		{Unit: "chipper", Procedure: "chipper-knife-turn", Date: "2026-02-02", Meter: "925 h", Who: "T. O."},
		{Unit: "chipper", Procedure: "chipper-knife-turn", Date: "2026-02-03", Meter: "926 h", Who: "T. O.", Corrects: 3, Remarks: "=A day later."},
		{Unit: "chipper", Date: "2026-01-20", Meter: "910 h", NewMeter: "905 h", Remarks: "Written late."},
		{Date: "2026-02-10", Received: []entry.Moved{{What: "gear-460", Amount: "5 L"}}},
		{Unit: "old-saw", Procedure: "saw", Date: "2025-01-02", Meter: "5 h"},
		{Unit: "old-saw", Date: "2025-01-02", Used: []entry.Moved{{What: "gear-460", Amount: "1 L"}}},
	} {
		e.Number = i + 1
		book.Write(e.Text())
	}
	outputs, troubles, told, err := result.Histories(Look{}, Asked{On: "2026-03-01"}, strings.NewReader(book.String()))
	require.NoError(t, err)
	assert.Empty(t, troubles)
	assert.Equal(t, []string{`2 entries of the service book, the last of them entry 8: no machine here is named "old-saw"; there are: chipper, compressor, deck, edger, long-deck, mill, power-pack, trailer`}, told)
	table := outputs[len(outputs)-1]
	require.Equal(t, "history.csv", table.Name)
	rows, err := csv.NewReader(strings.NewReader(string(table.Bytes))).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 9)
	assert.Equal(t, []string{"counts", "new_meter", "used", "received", "open"}, rows[0][14:])
	assert.Equal(t, []string{"1", "2026-01-05", "chipper", "chipper-knife-turn", "Turn or change the chipper knives", "B", "900 h", "R. A.", "2", "3: no light; 4: no light; 9", "Gap, worst knife 1.4 mm", "Gap, worst knife 1.4 mm", "", "", "no", "", "", "", "20"}, rows[1])
	var numbers []string
	for _, row := range rows[1:] {
		numbers = append(numbers, row[0])
	}
	assert.Equal(t, []string{"1", "5", "2", "3", "4", "7", "8", "6"}, numbers, "by day, and by place in the book")
	assert.Equal(t, []string{"910 h", "905 h"}, []string{rows[2][6], rows[2][15]})
	assert.Equal(t, "no", rows[4][14])
	assert.Equal(t, []string{"'=A day later.", "3", "yes", "", "", "", ""}, rows[5][12:])
	assert.Equal(t, []string{"old-saw", "gear-460 1 L", ""}, []string{rows[7][2], rows[7][16], rows[7][17]})
	assert.Equal(t, []string{"", "", "gear-460 5 L"}, []string{rows[8][2], rows[8][16], rows[8][17]})

	f, err := result.fleet(Asked{On: "2026-03-01"}, strings.NewReader(book.String()))
	require.NoError(t, err)
	var works []compose.Work
	for _, job := range result.Jobs {
		if job.Machine == "Drum chipper" {
			works = append(works, job.work)
		}
	}
	for _, unit := range f.units {
		if unit.Name != "chipper" {
			continue
		}
		entries, err := entry.Read([]byte(book.String()))
		require.NoError(t, err)
		entries = slices.DeleteFunc(entries, func(e entry.Entry) bool { return e.Unit != "chipper" })
		content, err := compose.History(works, unit, entries, f.book.Replaced(), "2026-03-01", quantity.Both)
		require.NoError(t, err)
		var done, open [][]string
		for _, row := range content.Done.Rows {
			done = append(done, row.Cells)
		}
		for _, row := range content.Open.Rows {
			open = append(open, row.Cells)
		}
		assert.Equal(t, [][]string{
			{"2026-01-05", "900 h", "Turn or change the chipper knives", "B", "R. A.", "not finished; steps open: 1 · steps left out: 3 · Outside the limit: Gap, worst knife 1.4 mm"},
			{"2026-01-20", "910 h", "", "", "", "Written late. · new meter at 905 h"},
			{"2026-02-03", "926 h", "Turn or change the chipper knives", "", "T. O.", "=A day later."},
		}, done)
		assert.Equal(t, "2026-03-01", content.To)
		assert.Contains(t, content.Facts, plan.Fact{Label: content.Words.Labels.Hours, Text: "926 h"})
		assert.Equal(t, [][]string{{"2026-01-05", "Turn or change the chipper knives", "3–4", "no light"}, {"2026-01-05", "Turn or change the chipper knives", "9", ""}, {"2026-01-05", "Turn or change the chipper knives", "20", "not done"}}, open)
		for _, name := range Stocks() {
			stock, err := pages.FindStock(name)
			require.NoError(t, err)
			document, problems := pages.LayHistory(content, pages.Look{Stock: stock})
			assert.Empty(t, problems, name)
			distance := stock.Distance
			if distance == 0 {
				distance = 500
			}
			assert.Empty(t, pagestest.Walk(document, pages.Look{Stock: stock, DistanceMM: distance}), name)
		}
	}
}

// A long history is drawn to its end, and its table has all; a book that is longer than that is told.
func TestALongHistory(t *testing.T) {
	if testing.Short() {
		t.Skip("writes a book of a million entries")
	}
	result := Compile(Input{Files: ReadFolder(t, "../procedures"), Whole: true})
	book := func(n int) []byte {
		var out bytes.Buffer
		for i := range n {
			fmt.Fprintf(&out, "\n# entry %d\n[[entry]]\nnumber = %d\nunit = \"deck\"\ndate = 2026-03-01\nremarks = \"r%d\"\n# end of entry %d\n", i+1, i+1, i, i+1)
		}
		return out.Bytes()
	}
	outputs, _, told, err := result.Histories(Look{}, Asked{On: "2026-05-01"}, bytes.NewReader(book(mostDrawn+5)))
	require.NoError(t, err)
	assert.Contains(t, told, fmt.Sprintf("the history of deck is drawn with the last %d of %d rows; history.csv has all", mostDrawn, mostDrawn+5))
	for _, output := range outputs {
		if output.Name == "history.csv" {
			assert.Contains(t, string(output.Bytes), "r0")
			assert.Contains(t, string(output.Bytes), fmt.Sprint("r", mostDrawn+4))
		}
	}
	_, _, _, err = result.Histories(Look{}, Asked{On: "2026-05-01"}, bytes.NewReader(book(mostTabled+1)))
	assert.ErrorContains(t, err, "ask for an earlier day")
}
