package main

import (
	"fmt"
	"math"
	"strings"
	"time"
	"unicode/utf8"
)

// report is what is written: what it was measured on, and the parts.
type report struct {
	facts    []fact
	sections []section
}

type fact struct{ label, text string }

// section is a part of the report as it is written.
type section struct {
	title, command string
	method         []string // sentences on what was done
	columns        []string // heads of the table; the usual where it is empty
	rows           [][]string
	notes          []string
}

// usual are the columns of a table in which each row is held against a floor.
var usual = []string{"what", "figure", "floor", "of the floor", "ratio"}

func (s *section) row(cells ...string)          { s.rows = append(s.rows, cells) }
func (s *section) note(text string)             { s.notes = append(s.notes, text) }
func (s *section) tell(sentences ...string)     { s.method = append(s.method, sentences...) }
func (s *section) missing(what, why string)     { s.row(what, why) }
func notInstalled(program string) string        { return program + " is not installed" }
func ratioOf(figure, floor float64) string      { return times(figure / floor) }
func perThousand(d time.Duration, n int) string { return spell(d * 1000 / time.Duration(n)) }

// markdown is the report as Markdown: for each part what was done, and a table.
func (r report) markdown() string {
	var out strings.Builder
	out.WriteString("# How fast benchleaf is\n\n")
	rows := [][]string{}
	for _, fact := range r.facts {
		rows = append(rows, []string{fact.label, fact.text})
	}
	table(&out, []string{"measured on", ""}, rows)
	for _, s := range r.sections {
		fmt.Fprintf(&out, "\n## %s\n\n`%s`\n", s.title, s.command)
		if len(s.method) > 0 {
			fmt.Fprintf(&out, "\n%s\n", strings.Join(s.method, " "))
		}
		columns := s.columns
		if len(columns) == 0 {
			columns = usual
		}
		if len(s.rows) > 0 {
			out.WriteString("\n")
			table(&out, columns, s.rows)
		}
		for _, note := range s.notes {
			fmt.Fprintf(&out, "\n%s\n", note)
		}
	}
	return out.String()
}

// table writes a table whose columns stand under each other in plain text too. A row that has
// fewer cells than the table ends in empty ones.
func table(out *strings.Builder, columns []string, rows [][]string) {
	widths := make([]int, len(columns))
	cells := func(row []string) []string {
		all := make([]string, len(columns))
		copy(all, row)
		for i, cell := range all {
			all[i] = strings.NewReplacer("|", `\|`, "\r", "", "\n", " ").Replace(cell)
		}
		return all
	}
	lines := [][]string{cells(columns)}
	for _, row := range rows {
		lines = append(lines, cells(row))
	}
	for _, line := range lines {
		for i, cell := range line {
			widths[i] = max(widths[i], utf8.RuneCountInString(cell), 3)
		}
	}
	for n, line := range lines {
		for i, cell := range line {
			out.WriteString("| " + cell + strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell)) + " ")
		}
		out.WriteString("|\n")
		if n == 0 {
			for i := range line {
				out.WriteString("|" + strings.Repeat("-", widths[i]+2))
			}
			out.WriteString("|\n")
		}
	}
}

// three spells a figure with three digits that count.
func three(value float64) string {
	if value == 0 || math.IsNaN(value) || math.IsInf(value, 0) {
		return fmt.Sprint(value)
	}
	places := max(0, 2-int(math.Floor(math.Log10(math.Abs(value)))))
	return fmt.Sprintf("%.*f", places, value)
}

// times spells a ratio.
func times(ratio float64) string { return three(ratio) + "×" }

// spell spells a time in the unit that suits it.
func spell(d time.Duration) string {
	switch {
	case d >= time.Second:
		return three(d.Seconds()) + " s"
	case d >= time.Millisecond:
		return three(float64(d)/float64(time.Millisecond)) + " ms"
	default:
		return three(float64(d)/float64(time.Microsecond)) + " µs"
	}
}

// size spells an amount of memory.
func size(bytes int64) string {
	const mib = 1 << 20
	if bytes >= 1<<30 {
		return three(float64(bytes)/(1<<30)) + " GiB"
	}
	return three(float64(bytes)/mib) + " MiB"
}
