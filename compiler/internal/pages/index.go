package pages

import (
	"slices"
	"strconv"

	"benchleaf/compiler/internal/plan"
)

// index lists terms with their pages, in columns that are read downwards.
func (m *manual) index() []item {
	em := m.size.text
	var items []item
	for _, group := range m.plan.Index {
		items = append(items, item{piece: m.bandOf(group.Title, "").named("section", group.Title), above: m.size.main * 1.1, dear: costPart})
		for i, block := range m.blocksOf(group.Entries) {
			items = append(items, item{piece: block.named("entries", strconv.Itoa(i+1)), above: 0.7 * em, part: group.Title, stays: i == 0, dear: costTable})
		}
	}
	return items
}

// indexBlock is how much of a side the columns of an index may be high, so that two go on one.
const indexBlock = 0.4

// blocksOf sets the entries in columns, block by block.
func (m *manual) blocksOf(list []plan.IndexEntry) []piece {
	style := m.small()
	gap := 1.6 * style.size
	columns := max(1, min(3, int(m.width/(17*style.size))))
	width := (m.width - gap*float64(columns-1)) / float64(columns)
	entries := make([]piece, len(list))
	whole := 0.0
	for i, entry := range list {
		entries[i] = m.entry(entry, style, width)
		whole += entries[i].height
	}
	most := m.look.Stock.safe(1).Height * indexBlock
	blocks := max(1, int(whole/(most*float64(columns)))+1)
	var out []piece
	for b := range blocks {
		from, to := b*len(entries)/blocks, (b+1)*len(entries)/blocks
		if from < to {
			out = append(out, level(entries[from:to], columns, width+gap))
		}
	}
	return out
}

// level stacks pieces in columns as even as they can be: the least height at which they
// fit into so many.
func level(pieces []piece, columns int, step float64) piece {
	whole, tallest := 0.0, 0.0
	for _, p := range pieces {
		whole += p.height
		tallest = max(tallest, p.height)
	}
	at := func(most float64) [][]piece {
		var out [][]piece
		y := most + 1
		for _, p := range pieces {
			if y+p.height > most+tiny {
				out, y = append(out, nil), 0
			}
			out[len(out)-1] = append(out[len(out)-1], p)
			y += p.height
		}
		return out
	}
	most := max(tallest, whole/float64(columns))
	for len(at(most)) > columns {
		most += tallest / 8
	}
	var out piece
	for i, stack := range at(most) {
		out.put(column(0, stack...), float64(i)*step, 0)
	}
	return out
}

// entry is a term with the pages it stands on, each once, each leading there; three or more in
// a row are told by the first, which is led to, and the last.
func (m *manual) entry(entry plan.IndexEntry, style kind, width float64) piece {
	spans := []span{{entry.Term, Regular, black}}
	if entry.Of != "" {
		spans = append(spans, span{", " + entry.Of, Regular, grey})
	}
	indent := style.size * 0.9
	term := m.set(style, width, spans)
	var pages []goal
	keys := map[int]string{}
	for _, at := range entry.At {
		key := m.key(at)
		if goal, known := m.goals[key]; known && keys[goal.side] == "" {
			keys[goal.side] = key
			pages = append(pages, goal)
		}
	}
	slices.SortFunc(pages, func(a, b goal) int { return a.side - b.side })
	var numbers []piece
	for first := 0; first < len(pages); {
		end := first + 1
		for end < len(pages) && pages[end].side == pages[end-1].side+1 {
			end++
		}
		text := m.label(pages[first])
		if end-first > 2 { // a run of pages
			text += "–" + m.label(pages[end-1])
		} else {
			end = first + 1
		}
		if end < len(pages) {
			text += ","
		}
		number := m.say(style.with(Bold), width-indent, text).named("to", keys[pages[first].side])
		number.width += style.size * 0.35
		numbers = append(numbers, number)
		first = end
	}
	out := piece{width: width}
	out.put(term, 0, 0)
	after := m.lastWidth(term) + style.size*0.6
	row := flow(width-indent+style.size*0.35, 0, numbers)
	if len(numbers) > 0 && row.height <= style.line()+tiny && after+row.width <= width {
		out.put(row, after, max(0, term.height-style.line()))
	} else {
		out.put(row, indent, term.height)
	}
	out.height += style.size * 0.12
	return out.named("entry", joined(", ", entry.Term, entry.Of))
}
