package pages

import (
	"strconv"

	"benchleaf/compiler/internal/plan"
)

// inFront lays out the cover, the table of revisions and the contents. It comes when the
// text has its pages; the text begins on the front of a sheet.
func (m *manual) inFront() {
	labels := m.words.Labels
	told := m.outline
	m.layFront(m.cover(), nil)
	m.layFront(append([]item{m.opener("", labels.Revisions)}, m.revisions()...), m.roman(labels.Revisions))
	m.layFront(append([]item{m.opener("", labels.Contents)}, m.contents()...), m.roman(labels.Contents))
	m.outline = append([]chapterLine{{"", labels.Revisions, 0, "chapter/" + labels.Revisions}, {"", labels.Contents, 0, "chapter/" + labels.Contents}}, told...)
	if m.look.Stock.Sides == 2 && len(m.front)%2 == 1 {
		m.layFront([]item{{}}, m.roman(""))
	}
}

// roman is running that counts in small Roman numerals.
func (m *manual) roman(title string) *running {
	run := m.runs(title, "")
	run.foot = func(number int) piece { return m.foot(number, roman(number)) }
	return run
}

func (m *manual) layFront(items []item, run *running) {
	if run == nil {
		run = &running{foot: func(int) piece { return piece{} }}
	}
	frame := frame{s: m.setter, width: m.width, height: m.look.Stock.safe(1).Height, again: m.again, filled: true, before: len(m.front), run: run}
	sides := frame.share(items)
	for i, side := range sides {
		m.goalsOf(side.Boxes, "front", goal{front: true, side: len(m.front) + i})
		sides[i].Label = roman(len(m.front) + i + 1)
	}
	m.front = append(m.front, sides...)
}

// cover says whose manual it is, of which machines, and what stands above it.
func (m *manual) cover() []item {
	em, labels := m.size.main, m.words.Labels
	m.where = "cover"
	items := []item{{piece: m.coverBand()}}
	label := m.say(m.small().with(Bold).inked(grey), m.width, labels.Machines)
	label.width = m.width
	label.height += 0.25 * em
	label.mark(band(0, label.height-0.35, m.width, 0.35, slate))
	items = append(items, item{piece: label.named("heading", "machines"), above: em * 2.2})
	for i, machine := range m.plan.Machines {
		key := m.chapterOf(i)
		style := m.main().with(Bold)
		name := m.say(style, m.width-m.room(style)-em, machine.Title)
		about := ""
		for _, fact := range machine.Facts {
			if fact.Label == labels.Maker || fact.Label == labels.Model {
				about = joined(" · ", about, fact.Text)
			}
		}
		row := column(0, name, m.say(m.small().inked(grey), m.width-m.room(style)-em, about))
		row.width = m.width
		row = m.leading(row, key, m.main())
		row.height += em * 0.3
		row.mark(band(0, row.height-0.2, m.width, 0.2, rule))
		items = append(items, item{piece: row.named("row", strconv.Itoa(i+1)), above: em * 0.35, stays: i == 0, dear: costList})
	}
	return append(items, m.first())
}

// chapterOf is the key of a machine's chapter.
func (m *manual) chapterOf(machine int) string {
	if len(m.plan.Messages) > 0 {
		machine++
	}
	return "chapter/" + strconv.Itoa(machine+1)
}

func (m *manual) coverBand() piece {
	em, labels := m.size.main, m.words.Labels
	pad := 1.6 * em
	high := m.look.Stock.safe(1).Height * 0.36
	big := kind{m.size.title * 1.75, 1.15, Bold, white, slate}
	upper := m.say(m.main().inked(white).lying(slate), m.width-2*pad, m.plan.Shop)
	title := m.say(big, m.width-2*pad, m.plan.Title)
	day := m.say(m.text().inked(white).lying(slate), m.width-2*pad, joined(" ", labels.Latest, m.plan.Date))
	out := piece{width: m.width, height: max(high, upper.height+title.height+day.height+3*pad)}
	out.mark(Panel{Rectangle{0, 0, out.width, out.height}, corners(em * 0.5), Paint{Fill: slate}})
	out.put(upper, pad, pad)
	bottom := out.height - pad
	if m.plan.Date != "" {
		bottom -= day.height
		out.put(day, pad, bottom)
		bottom -= 0.5 * em
	}
	out.put(title, pad, bottom-title.height)
	return out.named("head", "")
}

// first is the line on what comes before the manual, at the foot of the cover.
func (m *manual) first() item {
	em, labels := m.size.main, m.words.Labels
	pad, line := em*0.7, em*0.12
	words := column(em*0.25, m.say(m.main().with(Bold), m.width-2*pad, labels.OwnFirst), m.say(m.text(), m.width-2*pad, labels.Local))
	out := piece{width: m.width, height: words.height + 2*pad}
	out.mark(Panel{Rectangle{line / 2, line / 2, m.width - line, out.height - line}, corners(em * 0.3), Paint{Stroke: black, Line: line}})
	out.put(words, pad, pad)
	return item{piece: out.named("first", ""), above: em * 1.5, low: true, dear: costList}
}

// revisions is the table of every procedure with its revision and its people.
func (m *manual) revisions() []item {
	labels, em := m.words.Labels, m.size.text
	m.where = labels.Revisions
	heads := []string{labels.Procedure, labels.Revision, labels.Date, labels.Author, labels.Checked, labels.Page}
	var all []plan.Row
	for i, machine := range m.plan.Machines {
		for k, card := range machine.Procedures {
			all = append(all, plan.Row{Cells: []string{joined(", ", card.Title, card.Variant), card.Revision, card.Date, card.Author, card.Checked, ""}, To: plan.Mention{Machine: i + 1, Procedure: k + 1}})
		}
	}
	widths := m.columnsOf(m.width, heads, all)
	head := m.tableHead(widths, heads)
	m.headings[labels.Revisions] = head
	items := []item{{piece: head.named("columns", ""), above: em}}
	n := 0
	for i, machine := range m.plan.Machines {
		band := m.quietBand([]span{{machine.Title, Bold, slate}}, m.text())
		items = append(items, item{piece: band.named("section", machine.Title), above: 0.9 * em, part: labels.Revisions, stays: i == 0, dear: costPart})
		first := len(items)
		for k := range machine.Procedures {
			line := m.leading(m.cells(m.text(), widths, all[n].Cells, false), m.key(all[n].To), m.text())
			items = append(items, item{piece: line.named("row", all[n].Cells[0]), above: 0.22 * em, part: labels.Revisions, stays: k == 0, dear: costTable})
			n++
		}
		keepTogether(items[first:])
	}
	return items
}

// contents lists the chapters and the procedures with their pages.
func (m *manual) contents() []item {
	labels, em := m.words.Labels, m.size.text
	m.where = labels.Contents
	var items []item
	numbers := 0.0
	for _, line := range m.outline {
		numbers = max(numbers, m.wideAs(m.text().with(Bold), line.number))
	}
	numbers = min(numbers+0.9*em, m.width*0.2)
	for i, line := range m.outline {
		style, above, dear := m.text(), 0.2*em, costTable
		switch line.level {
		case 0:
			style, above, dear = m.main().with(Bold), 0.85*em, costPart
		case 1:
		default:
			continue
		}
		title := m.say(style, m.width-numbers-m.room(style)-2*em, line.title)
		row := piece{width: m.width, height: title.height}
		if line.number != "" {
			row.put(m.say(style.with(Bold), numbers, line.number), 0, 0)
		}
		row.put(title, numbers, 0)
		y := title.height - style.line() + style.baseline()
		last := numbers + m.lastWidth(title) + 0.6*em
		if end := m.width - m.room(style) - 0.6*em; line.level > 0 && end > last {
			row.mark(band(last, y-0.2, end-last, 0.2, rule))
		}
		row = m.leading(row, line.key, style)
		if line.level == 0 {
			row.height += 0.2 * em
			row.mark(band(0, row.height-0.35, m.width, 0.35, slate))
		}
		items = append(items, item{piece: row.named("row", joined(" ", line.number, line.title)), above: above, part: labels.Contents, stays: i > 0 && line.level > 0 && m.outline[i-1].level == 0, dear: dear})
	}
	return items
}

// lastWidth is how far the last line of a piece reaches.
func (m *manual) lastWidth(p piece) float64 {
	last, right := -1.0, 0.0
	for _, mark := range p.marks {
		if text, ok := mark.(Text); ok {
			if text.Y > last+tiny {
				last, right = text.Y, 0
			}
			right = max(right, text.X+text.Face.Width(text.Text, text.Size))
		}
	}
	return right
}
