package finding

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"

	"benchleaf/compiler/source"
)

const (
	gutter  = 8 // columns of the line number and the space after it
	tabStop = 4
	usual   = 100 // columns of an excerpt where the width has no end
)

// cell is one character of a line as it is drawn.
type cell struct {
	text    string
	columns int
	marked  bool
}

// excerpt draws the line a place begins on, with marks under the place. A blank
// line is not drawn: the place says all there is.
func (p *pen) excerpt(place source.Place, mark rune, colour string) {
	if !place.Known() {
		return
	}
	room := usual - gutter
	if p.style.Width > 0 {
		room = max(narrow, p.style.Width-gutter)
	}
	cells, cutBefore, cutAfter := cellsAround(place, room)
	if blank(cells) {
		return
	}
	first, last := frame(cells, room)
	var text, marks strings.Builder
	if cutBefore || first > 0 {
		text.WriteString("…")
		marks.WriteString(" ")
	}
	for _, c := range cells[first:last] {
		text.WriteString(c.text)
		sign := " "
		if c.marked {
			sign = string(mark)
		}
		marks.WriteString(strings.Repeat(sign, c.columns))
	}
	if cutAfter || last < len(cells) {
		text.WriteString("…")
	}
	number := fmt.Sprintf("%*d  ", gutter-2, place.Start().Line)
	fmt.Fprintf(&p.out, "%s%s\n", p.ink(faint, number), strings.TrimRight(text.String(), " "))
	under := strings.TrimRight(marks.String(), " ")
	bare := strings.TrimLeft(under, " ")
	fmt.Fprintf(&p.out, "%s%s%s\n", strings.Repeat(" ", gutter), under[:len(under)-len(bare)], p.ink(colour, bare))
}

// cellsAround cuts the first line of a place into cells. Of a line that is far
// longer than the room only the part around the place is looked at.
func cellsAround(place source.Place, room int) (cells []cell, cutBefore, cutAfter bool) {
	text := place.File.Text
	start := max(0, min(place.Span.Start, len(text)))
	lineStart := bytes.LastIndexByte(text[:start], '\n') + 1
	lineEnd := len(text)
	if n := bytes.IndexByte(text[start:], '\n'); n >= 0 {
		lineEnd = start + n
	}
	if lineEnd > start && text[lineEnd-1] == '\r' {
		lineEnd--
	}
	end := max(start, min(place.Span.End, lineEnd))
	reach := 8 * room
	from, to := lineStart, lineEnd
	if start-from > reach {
		from, cutBefore = boundary(text, start-reach), true
	}
	if to-start > 2*reach {
		to, cutAfter = boundary(text, start+2*reach), true
	}
	column := 0
	for at := from; at < to; {
		r, size := utf8.DecodeRune(text[at:to])
		c := draw(r, column)
		c.marked = at >= start && at < end
		cells, column, at = append(cells, c), column+c.columns, at+size
	}
	return markSome(cells, start-from, text[from:to]), cutBefore, cutAfter
}

// boundary is the first start of a character at or after an offset.
func boundary(text []byte, at int) int {
	for at < len(text) && !utf8.RuneStart(text[at]) {
		at++
	}
	return at
}

// markSome makes sure that at least one column is marked: of an empty span the
// character it stands before, or the place after the end of the line.
func markSome(cells []cell, offset int, text []byte) []cell {
	for _, c := range cells {
		if c.marked && c.columns > 0 {
			return cells
		}
	}
	at := utf8.RuneCount(text[:min(offset, len(text))])
	for ; at < len(cells); at++ {
		if cells[at].columns > 0 {
			cells[at].marked = true
			return cells
		}
	}
	return append(cells, cell{" ", 1, true})
}

func blank(cells []cell) bool {
	for _, c := range cells {
		if strings.TrimSpace(c.text) != "" {
			return false
		}
	}
	return true
}

// frame chooses which cells are drawn: all where there is room, else a third of
// the room before the mark and the rest from it on.
func frame(cells []cell, room int) (first, last int) {
	total, mark := 0, -1
	for i, c := range cells {
		if c.marked && mark < 0 {
			mark = i
		}
		total += c.columns
	}
	if total <= room {
		return 0, len(cells)
	}
	markEnd := mark
	for markEnd < len(cells) && cells[markEnd].marked {
		markEnd++
	}
	room -= 2 // for the signs that something is left out
	if last = fill(cells, 0, room); last >= markEnd {
		return 0, last
	}
	first = mark
	for before := 0; first > 0 && before+cells[first-1].columns <= room/3; first-- {
		before += cells[first-1].columns
	}
	return first, fill(cells, first, room)
}

func fill(cells []cell, from, room int) int {
	for columns := 0; from < len(cells); from++ {
		if columns += cells[from].columns; columns > room {
			break
		}
	}
	return from
}

// draw is how one character stands on the terminal from a column on.
func draw(r rune, column int) cell {
	switch {
	case r == '\t':
		wide := tabStop - column%tabStop
		return cell{strings.Repeat(" ", wide), wide, false}
	case !shown(r):
		return cell{"\uFFFD", 1, false}
	default:
		return cell{string(r), columnsOfRune(r), false}
	}
}

// shown reports whether a character may go to a terminal: one that moves the
// cursor, gives orders or turns the direction of writing may not.
func shown(r rune) bool {
	return !unicode.IsControl(r) && !unicode.Is(unicode.Bidi_Control, r) && r != '\u2028' && r != '\u2029'
}

// clean makes a line that quotes an author fit for a terminal.
func clean(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
			return ' '
		case shown(r):
			return r
		}
		return '\uFFFD'
	}, text)
}

func columnsOf(text string) int {
	columns := 0
	for _, r := range text {
		columns += columnsOfRune(r)
	}
	return columns
}

// columnsOfRune is the width of a character by Unicode Standard Annex 11; marks
// that stand on another character have none.
func columnsOfRune(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf) {
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}
