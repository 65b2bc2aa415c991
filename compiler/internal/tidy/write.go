package tidy

import (
	"bytes"
	"strings"
	"unicode/utf8"
)

// writer writes lines and values in the one layout.
type writer struct{ out bytes.Buffer }

const indent = "  "

func (w *writer) lines(list []line) {
	opens := leads(list)
	columns := lined(list)
	for i, one := range list {
		if i > 0 && (opens[i] || one.blank && !(one.kind == pair && list[i-1].kind == header)) {
			w.out.WriteByte('\n')
		}
		w.out.WriteString(one.name)
		if one.kind == pair {
			w.out.WriteString(" = ")
			w.value(one.value, "", utf8.RuneCountInString(one.name)+len(" = "), 0)
		}
		if one.comment != "" {
			if one.kind != remark {
				w.out.WriteString(strings.Repeat(" ", max(1, columns[i])))
			}
			w.out.WriteString(one.comment)
		}
		w.out.WriteByte('\n')
	}
}

// leads tells which lines have a blank line before them because a table begins there: its
// header, or the first of the comments right above it. Comments right below another header
// are of that one. A table inside one of a list, as [[step.caution]] below [[step]], may stand
// close below it.
func leads(list []line) []bool {
	out := make([]bool, len(list))
	one := "" // [[step]] above, as step.
	for i := range list {
		if list[i].kind != header {
			continue
		}
		name := strings.Trim(list[i].name, "[]")
		if one != "" && strings.HasPrefix(name, one) {
			continue
		}
		if one = ""; strings.HasPrefix(list[i].name, "[[") {
			one = name + "."
		}
		first := i
		for first > 0 && list[first-1].kind == remark && !list[first].blank {
			first--
		}
		if first > 0 && list[first-1].kind == header && !list[first].blank {
			first = i
		}
		out[first] = true
	}
	return out
}

// shortest is how wide a line may be for the comment behind it to be lined up with others.
const shortest = 60

// lined tells how many blanks stand before the comments that their author has set apart from
// short lines, one line below the other: they begin in one column. Other comments have one.
func lined(list []line) []int {
	out := make([]int, len(list))
	for i := 0; i < len(list); i++ {
		end, widest := i, 0
		for ; end < len(list); end++ {
			one := list[end]
			if one.kind != pair || one.comment == "" || !one.apart || one.blank && end > i || one.width() < 0 || one.width() > shortest {
				break
			}
			widest = max(widest, one.width())
		}
		if end-i < 2 {
			continue
		}
		for ; i < end; i++ {
			out[i] = widest + 2 - list[i].width()
		}
		i--
	}
	return out
}

// width is how many characters a pair has on one line; less than none where it does not go on one.
func (l line) width() int {
	if l.value.width < 0 {
		return -1
	}
	return utf8.RuneCountInString(l.name) + len(" = ") + l.value.width
}

// value writes a value behind so many characters of its line; so many more stand behind it.
func (w *writer) value(n *node, margin string, before, behind int) {
	switch {
	case n.open == 0:
		w.out.WriteString(n.text)
	case n.width >= 0 && (before+n.width+behind <= Width || n.open == '{' || n.helpless(margin)):
		w.onLine(n, margin)
	case n.open == '{':
		w.onLine(n, margin) // a list in it that has comments goes over several
	default:
		w.broken(n, margin)
	}
}

// helpless reports whether a list is no better over several lines: its one item is too wide for one.
func (n *node) helpless(margin string) bool {
	return len(n.items) == 0 || len(n.items) == 1 && n.items[0].value.open != '[' && len(margin)+len(indent)+n.items[0].value.width+1 > Width
}

// onLine writes a value on one line; only what cannot be there is broken.
func (w *writer) onLine(n *node, margin string) {
	switch {
	case n.open == 0:
		w.out.WriteString(n.text)
		return
	case n.open == '[' && n.width < 0:
		w.broken(n, margin)
		return
	}
	closing := "]"
	w.out.WriteByte(n.open)
	if n.open == '{' {
		closing = "}"
		if len(n.items) > 0 {
			w.out.WriteByte(' ')
			closing = " }"
		}
	}
	for i, one := range n.items {
		if i > 0 {
			w.out.WriteString(", ")
		}
		if one.key != "" {
			w.out.WriteString(one.key + " = ")
		}
		w.onLine(one.value, margin)
	}
	w.out.WriteString(closing)
}

// broken writes a list with an item on each line. Figures stay in the rows in which their
// author wrote them where every row goes on a line; or else rows are filled.
func (w *writer) broken(n *node, margin string) {
	inner := margin + indent
	written := n.rows && n.fits(len(inner))
	w.out.WriteByte('[')
	if n.head != "" {
		w.out.WriteString(" " + n.head)
	}
	column := 0 // 0 where nothing more goes on the line
	for i, one := range n.items {
		goes := n.rows && column > 0 && one.value.width >= 0 && column+1+one.value.width+1 <= Width
		if goes && !(written && one.row) && !one.blank && len(one.notes) == 0 {
			w.out.WriteByte(' ')
			column++
		} else {
			w.out.WriteByte('\n')
			w.notes(one.notes, inner, i > 0)
			if one.blank && (i > 0 || len(one.notes) > 0) {
				w.out.WriteByte('\n')
			}
			w.out.WriteString(inner)
			column = len(inner)
		}
		w.value(one.value, inner, column, 1)
		w.out.WriteByte(',')
		column += one.value.width + 1
		if one.comment != "" {
			w.out.WriteString(" " + one.comment)
		}
		if one.comment != "" || one.value.width < 0 || column > Width {
			column = 0
		}
	}
	w.out.WriteByte('\n')
	w.notes(n.last, inner, len(n.items) > 0)
	w.out.WriteString(margin + "]")
}

// fits reports whether every row of figures, as its author wrote it, goes on a line. One item
// that is too wide by itself is broken further, and says nothing of the others.
func (n *node) fits(margin int) bool {
	column := 0
	for i, one := range n.items {
		if i == 0 || one.row || one.value.width < 0 || n.items[i-1].value.width < 0 || n.items[i-1].comment != "" {
			column = margin - 1
		}
		if column += 1 + max(0, one.value.width) + 1; column > Width && column > margin+one.value.width+1 {
			return false
		}
	}
	return true
}

// notes writes comments on lines of their own; a blank line stays before the first only where
// something stands above.
func (w *writer) notes(list []note, margin string, below bool) {
	for i, one := range list {
		if one.blank && (below || i > 0) {
			w.out.WriteByte('\n')
		}
		w.out.WriteString(margin + one.text + "\n")
	}
}
