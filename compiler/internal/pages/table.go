package pages

import (
	"slices"
	"strconv"

	"benchleaf/compiler/internal/plan"
)

// columnsOf shares a width out to the columns of a table: each as wide as its widest
// cell, or where that is too much, the widest no wider than all can have, nor narrower than
// its widest word.
func (c *sheet) columnsOf(width float64, heads []string, rows []plan.Row) []float64 {
	gap := c.size.text * 0.7
	least, wish := make([]float64, len(heads)), make([]float64, len(heads))
	hold := func(i int, style kind, text string) {
		least[i] = max(least[i], min(c.widestWord(style, text), width/3)+gap)
		wish[i] = min(width, max(wish[i], c.wideAs(style, text)+gap+tiny))
	}
	for i, text := range heads {
		hold(i, c.small(), text)
	}
	for _, row := range rows {
		for i, text := range row.Cells {
			style := c.text()
			if i == 0 {
				style = style.with(Bold)
			}
			hold(i, style, text)
		}
	}
	sum := func(most float64) (all float64) {
		for i := range wish {
			wish[i] = max(wish[i], least[i])
			all += max(least[i], min(wish[i], most))
		}
		return all
	}
	whole := sum(width)
	if whole <= width { // what is left goes to all alike
		for i := range wish {
			wish[i] *= width / whole
		}
		return wish
	}
	most := width
	for step := width / 2; step > tiny; step /= 2 { // the greatest width of a column at which all fit
		if sum(most) > width {
			most -= step
		} else if sum(most+step) <= width {
			most += step
		}
	}
	most = max(0, most-tiny)
	scale := min(1, width/sum(most))
	for i := range wish {
		wish[i] = max(least[i], min(wish[i], most)) * scale
	}
	return wish
}

// tableHead is the row of a table's headings; that of the pages stands over their right edge.
func (m *manual) tableHead(widths []float64, heads []string) piece {
	style := m.small().inked(grey)
	last := len(heads) - 1
	if heads[last] != m.words.Labels.Page {
		return m.cells(style, widths, heads, true)
	}
	out := m.cells(style, widths, append(slices.Clone(heads[:last]), ""), true)
	page := m.say(style, widths[last], heads[last])
	out.put(page, m.width-page.width, m.size.text*0.12)
	return out
}

// table lays a table of a machine out: its band, its headings, and a row an item. A side
// that begins with a row has the headings again.
func (m *manual) table(table plan.Table, prefix string) []item {
	em := m.size.text
	m.where = table.Title
	name := prefix + table.Title // of the heading of a side that goes on
	widths := m.columnsOf(m.width, table.Columns, table.Rows)
	head := m.tableHead(widths, table.Columns)
	again := column(0.3*em, m.quietBand([]span{{table.Title, Bold, slate}, {" · " + m.words.Labels.Continued, Regular, slate}}, m.text()), head)
	if again.height > m.look.Stock.safe(1).Height/3 {
		name = "" // the rows would have no room below it
	}
	m.headings[name] = again
	items := []item{
		{piece: m.bandOf(table.Title, "").named("table", table.Key), above: m.size.main * 1.1, dear: costPart},
		{piece: head.named("columns", table.Key), above: 0.35 * em, stays: true},
	}
	for i, row := range table.Rows {
		line := m.cells(m.text(), widths, row.Cells, false)
		line.width = m.width
		if row.To != (plan.Mention{}) {
			line = m.leading(line, m.key(row.To), m.text())
		}
		items = append(items, item{piece: line.named("row", table.Key+" "+strconv.Itoa(i+1)), above: 0.22 * em, part: name, stays: i == 0, dear: costTable})
	}
	keepTogether(items[2:])
	return items
}
