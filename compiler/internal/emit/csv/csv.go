// Package csv writes lists as comma-separated values for a spreadsheet. It
// must not know what the values mean.
package csv

import (
	"bytes"
	"encoding/csv"
	"strings"

	"benchleaf/compiler/internal/plan"
)

// header names the columns; they are part of what other programs read and stay as they are.
var header = [...]string{"group", "item", "quantity", "take", "serves", "into", "stand_ins", "instead_of", "where", "procedures"}

// Pick writes one row a line of the list.
func Pick(list plan.PickList) ([]byte, error) {
	var rows [][]string
	for _, group := range list.Groups {
		for _, line := range group.Lines {
			rows = append(rows, []string{group.Title, line.Name, line.Quantity, line.Take, several(line.Serves), line.Into, several(line.StandIns), several(line.Instead), line.Where, several(line.For)})
		}
	}
	return table(header[:], rows)
}

// table writes rows under a header (RFC 4180, UTF-8). Lists within a cell are parted by "; ";
// a line end within one becomes a space. A cell that a spreadsheet would run as a formula
// gets an apostrophe before it.
func table(header []string, rows [][]string) ([]byte, error) {
	var out bytes.Buffer
	writer := csv.NewWriter(&out)
	writer.UseCRLF = true
	if err := writer.Write(header); err != nil {
		return nil, err
	}
	for _, row := range rows {
		for i, cell := range row {
			row[i] = inert(lineEnds.Replace(cell))
		}
		if err := writer.Write(row); err != nil {
			return nil, err
		}
	}
	writer.Flush()
	return out.Bytes(), writer.Error()
}

var lineEnds = strings.NewReplacer("\r\n", " ", "\r", " ", "\n", " ")

func several(texts []string) string { return strings.Join(texts, "; ") }

// inert keeps a cell from being run: spreadsheets take a leading = + - @ for a
// formula, also behind a tab (OWASP, "CSV Injection").
func inert(cell string) string {
	if strings.IndexAny(strings.TrimLeft(cell, " "), "=+-@\t") == 0 {
		return "'" + cell
	}
	return cell
}
