package tidy

import (
	"bytes"
	"strings"
	"unicode/utf8"
)

// reader goes through a text once.
type reader struct {
	src     []byte
	pos     int
	amounts map[int]string
}

func (r *reader) peek() byte {
	if r.pos < len(r.src) {
		return r.src[r.pos]
	}
	return 0
}

// blanks passes over spaces and tabs, and says how many there were.
func (r *reader) blanks() int {
	start := r.pos
	for r.peek() == ' ' || r.peek() == '\t' {
		r.pos++
	}
	return r.pos - start
}

// breaks passes over blanks and line breaks, and says how many lines ended.
func (r *reader) breaks() int {
	lines := 0
	for r.blanks(); r.peek() == '\n'; r.blanks() {
		lines++
		r.pos++
	}
	return lines
}

// comment takes a comment to the end of its line; empty where none stands here.
func (r *reader) comment() string {
	if r.peek() != '#' {
		return ""
	}
	start := r.pos
	if end := bytes.IndexByte(r.src[start:], '\n'); end >= 0 {
		r.pos = start + end
	} else {
		r.pos = len(r.src)
	}
	return tidyComment(string(r.src[start:r.pos]))
}

func (r *reader) lines() []line {
	var out []line
	for {
		one := line{blank: r.breaks() > 1}
		if r.pos >= len(r.src) {
			return out
		}
		switch r.peek() {
		case '#':
			one.kind, one.comment = remark, r.comment()
			out = append(out, one)
			continue
		case '[':
			one.kind, one.name = header, r.header()
		default:
			one.kind, one.name = pair, r.key()
			r.pos++ // =
			r.blanks()
			one.value = r.value()
		}
		one.apart = r.blanks() > 1
		one.comment = r.comment()
		out = append(out, one)
	}
}

// header takes [a.b] or [[a.b]].
func (r *reader) header() string {
	brackets := 1
	if r.src[r.pos+1] == '[' {
		brackets = 2
	}
	r.pos += brackets
	name := r.key()
	r.pos += brackets
	return strings.Repeat("[", brackets) + name + strings.Repeat("]", brackets)
}

// key takes a key with its dots, and the blanks behind it.
func (r *reader) key() string {
	var parts []string
	for {
		r.blanks()
		start := r.pos
		if c := r.peek(); c == '"' || c == '\'' {
			r.quoted(c)
		} else {
			for bare(r.peek()) {
				r.pos++
			}
		}
		parts = append(parts, tidyKey(string(r.src[start:r.pos])))
		r.blanks()
		if r.peek() != '.' {
			return strings.Join(parts, ".")
		}
		r.pos++
	}
}

// quoted takes a text on one line.
func (r *reader) quoted(quote byte) {
	for r.pos++; r.src[r.pos] != quote; r.pos++ {
		if quote == '"' && r.src[r.pos] == '\\' {
			r.pos++
		}
	}
	r.pos++
}

// long takes a text in three quotes; up to two more may stand before the three that end it.
func (r *reader) long(quote byte) {
	marks := []byte{quote, quote, quote}
	for r.pos += 3; !bytes.HasPrefix(r.src[r.pos:], marks); r.pos++ {
		if quote == '"' && r.src[r.pos] == '\\' {
			r.pos++
		}
	}
	for r.pos += 3; r.peek() == quote; r.pos++ {
	}
}

func (r *reader) value() *node {
	start := r.pos
	switch c := r.peek(); c {
	case '[':
		return r.list()
	case '{':
		return r.table()
	case '"', '\'':
		if bytes.HasPrefix(r.src[r.pos:], []byte{c, c, c}) {
			r.long(c)
			return leaf(string(r.src[start:r.pos]), false)
		}
		r.quoted(c)
		if amount, ok := r.amounts[start]; ok {
			return leaf(`"`+amount+`"`, false)
		}
		return leaf(tidyQuotes(string(r.src[start:r.pos])), false)
	}
	for r.pos < len(r.src) && !strings.ContainsRune(",]}#\n", rune(r.src[r.pos])) { // a day and its time may have a space between
		r.pos++
	}
	text := strings.TrimRight(string(r.src[start:r.pos]), " \t")
	r.pos = start + len(text)
	return leaf(text, true)
}

func leaf(text string, rows bool) *node {
	n := &node{text: text, width: utf8.RuneCountInString(text), rows: rows}
	if strings.Contains(text, "\n") {
		n.width = -1
	}
	return n
}

// gap is what stands between two items of a list.
type gap struct {
	notes []note
	lines int  // that ended since the last note, the comma or the item
	row   bool // a line has ended
	away  bool // a line has ended since the item, or since the comma behind it
}

// take passes over blanks, line breaks and comments; a comment on the line of what stands
// before goes to it, where it has none and nothing stands between.
func (g *gap) take(r *reader, behind *string) {
	for {
		if lines := r.breaks(); lines > 0 {
			g.lines, g.row, g.away = g.lines+lines, true, true
		}
		if r.peek() != '#' {
			return
		}
		text := r.comment()
		if !g.away && len(g.notes) == 0 && *behind == "" {
			*behind = text
			continue
		}
		g.notes = append(g.notes, note{g.lines > 1, text})
		g.lines = 0
	}
}

func (r *reader) list() *node {
	n := &node{open: '[', rows: true}
	r.pos++
	var before gap
	before.take(r, &n.head)
	for r.peek() != ']' {
		one := item{notes: before.notes, blank: before.lines > 1, row: before.row, value: r.value()}
		before = gap{}
		before.take(r, &one.comment)
		if r.peek() == ',' {
			r.pos++
			before.lines, before.away = 0, false
			before.take(r, &one.comment)
		}
		n.items = append(n.items, one)
	}
	r.pos++
	n.last = before.notes
	n.measure()
	return n
}

func (r *reader) table() *node {
	n := &node{open: '{'}
	r.pos++
	for r.blanks(); r.peek() != '}'; r.blanks() {
		one := item{key: r.key()}
		r.pos++ // =
		r.blanks()
		one.value = r.value()
		r.blanks()
		if r.peek() == ',' {
			r.pos++
		}
		n.items = append(n.items, one)
	}
	r.pos++
	n.measure()
	return n
}

// measure works out how wide a value with an inside is on one line.
func (n *node) measure() {
	n.width = 2
	if n.open == '{' && len(n.items) > 0 {
		n.width = 4
	}
	whole := n.head == "" && len(n.last) == 0
	for i, one := range n.items {
		whole = whole && len(one.notes) == 0 && one.comment == "" && one.value.width >= 0
		n.width += one.value.width
		if i > 0 {
			n.width += 2
		}
		if one.key != "" {
			n.width += utf8.RuneCountInString(one.key) + 3
		}
		n.rows = n.rows && one.value.rows
	}
	if !whole {
		n.width = -1
	}
}
