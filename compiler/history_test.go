package compiler

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"
	"benchleaf/compiler/internal/quantity"
)

// A book of four entries, read by eye: a job with two things out of order, a reading of the
// meter, an entry that was wrong and the one that stands for it.
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
	} {
		e.Number = i + 1
		book.Write(e.Text())
	}
	outputs, troubles, err := result.Histories(Look{}, Asked{On: "2026-03-01"}, strings.NewReader(book.String()))
	require.NoError(t, err)
	assert.Empty(t, troubles)
	table := outputs[len(outputs)-1]
	require.Equal(t, "history.csv", table.Name)
	rows, err := csv.NewReader(strings.NewReader(string(table.Bytes))).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 5)
	assert.Equal(t, []string{"1", "2026-01-05", "chipper", "chipper-knife-turn", "Turn or change the chipper knives", "B", "900 h", "R. A.", "2", "3: no light; 4: no light; 9; 20", "Gap, worst knife 1.4 mm", "Gap, worst knife 1.4 mm", "", "", "yes"}, rows[1])
	assert.Equal(t, "no", rows[3][14])
	assert.Equal(t, []string{"'=A day later.", "3", "yes"}, rows[4][12:])

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
		content, err := compose.History(works, unit, entries, f.book.Replaced(), quantity.Both)
		require.NoError(t, err)
		var done, open [][]string
		for _, row := range content.Done.Rows {
			done = append(done, row.Cells)
		}
		for _, row := range content.Open.Rows {
			open = append(open, row.Cells)
		}
		assert.Equal(t, [][]string{
			{"2026-01-05", "900 h", "Turn or change the chipper knives", "B", "R. A.", "Outside the limit: Gap, worst knife 1.4 mm"},
			{"2026-02-03", "926 h", "Turn or change the chipper knives", "", "T. O.", "=A day later."},
		}, done)
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
