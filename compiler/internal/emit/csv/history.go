package csv

import (
	"strconv"

	"benchleaf/compiler/internal/plan"
)

// historyHeader names the columns; they stay as they are, and new ones come at the end.
var historyHeader = []string{"entry", "date", "unit", "procedure", "title", "revision", "meter", "who", "steps_done", "left_out", "readings", "outside", "remarks", "corrects", "counts", "new_meter", "used", "received", "open"}

// History writes one row an entry of the service book.
func History(histories []plan.History) ([]byte, error) {
	var rows [][]string
	number := func(n int) string {
		if n == 0 {
			return ""
		}
		return strconv.Itoa(n)
	}
	for _, history := range histories {
		for _, one := range history.Entries {
			counts := "yes"
			if one.Put || len(one.Open) > 0 {
				counts = "no"
			}
			rows = append(rows, []string{number(one.Number), one.Date, one.Unit, one.Procedure, one.Title, one.Revision, one.Meter, one.Who, number(one.Done), several(one.LeftOut), several(one.Readings), several(one.Outside), one.Remarks, number(one.Corrects), counts, one.NewMeter, several(one.Used), several(one.Received), several(one.Open)})
		}
	}
	return table(historyHeader, rows)
}
