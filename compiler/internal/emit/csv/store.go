package csv

import "benchleaf/compiler/internal/plan"

// storeHeader names the columns; they stay as they are.
var storeHeader = []string{"state", "name", "item", "number", "where", "supplier", "on_hand", "counted", "need", "missing", "buy", "cost", "runs_out", "runs_out_at", "order_by", "used_in_a_year", "foreseen_for_a_year", "procedures", "keep"}

// Store writes one row a thing on the shelves.
func Store(content plan.Store) ([]byte, error) {
	var rows [][]string
	for _, row := range content.Rows {
		rows = append(rows, []string{row.State, row.Name, row.Title, row.Number, row.Where, row.Supplier, row.OnHand, row.Counted, row.Need, row.Missing, row.Buy, row.Cost, row.RunsOut, row.At, row.OrderBy, row.Used, row.Year, several(row.Works), row.Keep})
	}
	return table(storeHeader, rows)
}
