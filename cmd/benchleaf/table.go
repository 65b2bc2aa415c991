package main

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// tableRow is a row of a table that stands under a heading.
type tableRow struct {
	under string // heading; the same for rows that follow each other
	cells []string
	note  string // below the row; may be empty
}

// table writes rows heading by heading, their cells under each other; a column without words
// takes no room.
func (by *caller) table(rows []tableRow) {
	var widths []int
	for _, row := range rows {
		for k, cell := range row.cells {
			if k == len(widths) {
				widths = append(widths, 0)
			}
			row.cells[k] = strings.ReplaceAll(cell, "\u00a0", " ")
			widths[k] = max(widths[k], utf8.RuneCountInString(cell))
		}
	}
	for i, row := range rows {
		if i == 0 || row.under != rows[i-1].under {
			if i > 0 {
				fmt.Fprintln(by.out)
			}
			fmt.Fprintln(by.out, row.under)
		}
		line := ""
		for k, cell := range row.cells {
			if widths[k] > 0 {
				line += "  " + cell + strings.Repeat(" ", widths[k]-utf8.RuneCountInString(cell))
			}
		}
		fmt.Fprintln(by.out, strings.TrimRight(line, " "))
		if row.note != "" {
			fmt.Fprintln(by.out, "      "+strings.ReplaceAll(row.note, "\u00a0", " "))
		}
	}
}
