package assist

import (
	"bytes"
	"slices"
	"strings"

	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
)

// spot is what kind of place the cursor is at.
type spot int

const (
	nowhere  spot = iota // in a comment, behind a value
	inKey                // where a key is written, or can be
	inHeader             // between the brackets of a header
	inText               // between quotes
	inBare               // in a value without quotes, or where a value can stand
)

// cursor is what stands around an offset of a text, which need not be whole: while somebody
// writes there is nearly always a text that is not closed or a key without a value.
type cursor struct {
	spot  spot
	path  []string    // keys from the top of the file down to here; lists leave no trace
	token source.Span // what is written at the cursor: a key, a part of a header, or a value without its quotes
	quote byte        // of inText
	shut  bool        // the text is closed, the header has its brackets, or a key has its =
	long  bool        // the text is in three quotes
	list  bool        // in a list of values; of a header, in two brackets
	depth int         // braces and brackets around
	whole source.Span // of a header, all that is written of it; of inKey, the line up to its end

	table  *frame // the keys that stand beside it
	values *frame // the values that stand beside it in its list
}

// frame is what stands side by side in a table or a list.
type frame struct {
	keys  []string
	items []string
}

// deepest is how far lists and tables are followed into each other.
const deepest = 60

type reader struct {
	text  []byte
	at    int // where the cursor is
	pos   int
	path  []string
	frame *frame // of the header above
	found *cursor

	tables []headed
}

// headed is a header with what stands under it.
type headed struct {
	path  []string
	frame *frame
}

// look reads a text for what stands around an offset.
func look(text []byte, at int) cursor {
	at = max(0, min(at, len(text)))
	r := &reader{text: text, at: at, frame: &frame{}}
	r.tables = append(r.tables, headed{frame: r.frame})
	if bytes.HasPrefix(text, []byte("\uFEFF")) {
		r.pos = 3
	}
	for r.pos < len(text) {
		r.statement()
	}
	if r.found == nil && (len(text) == 0 || text[len(text)-1] == '\n') && at == len(text) {
		r.find(cursor{spot: inKey, path: r.path, token: source.Span{Start: at, End: at}, table: r.frame, whole: source.Span{Start: at, End: at}})
	}
	if r.found == nil {
		return cursor{}
	}
	r.addBelow()
	return *r.found
}

// addBelow adds to the keys of the cursor's table those that headers below it make: of a
// [step.picture] the picture, up to the next [[step]].
func (r *reader) addBelow() {
	at := slices.IndexFunc(r.tables, func(t headed) bool { return t.frame == r.found.table })
	if at < 0 {
		return
	}
	own := r.tables[at].path
	below := at == 0 // at the top of a file every header counts
	for _, other := range r.tables[at+1:] {
		inside := len(other.path) > len(own) && slices.Equal(other.path[:len(own)], own)
		if !inside && !below {
			return
		}
		if inside {
			r.found.table.keys = append(r.found.table.keys, other.path[len(own)])
		}
	}
}

func (r *reader) find(c cursor) {
	if r.found == nil {
		c.path = slices.Clone(c.path)
		r.found = &c
	}
}

func (r *reader) peek() byte {
	if r.pos < len(r.text) {
		return r.text[r.pos]
	}
	return 0
}

func (r *reader) blanks() {
	for c := r.peek(); c == ' ' || c == '\t'; c = r.peek() {
		r.pos++
	}
}

func (r *reader) lineEnd(from int) int {
	end := bytes.IndexByte(r.text[from:], '\n')
	if end < 0 {
		return len(r.text)
	}
	end += from
	if end > from && r.text[end-1] == '\r' {
		end--
	}
	return end
}

// nextLine goes to the next line; whatever is left of this one is nowhere.
func (r *reader) nextLine() {
	if r.at >= r.pos && r.at <= r.lineEnd(r.pos) && r.pos > 0 {
		r.find(cursor{})
	}
	end := bytes.IndexByte(r.text[r.pos:], '\n')
	if end < 0 {
		r.pos = len(r.text)
		return
	}
	r.pos += end + 1
}

func (r *reader) atLineEnd() bool {
	return r.pos >= len(r.text) || r.text[r.pos] == '\n' || r.text[r.pos] == '\r' && r.pos+1 < len(r.text) && r.text[r.pos+1] == '\n'
}

func (r *reader) statement() {
	start := r.pos
	r.blanks()
	switch {
	case r.atLineEnd():
		if start <= r.at && r.at <= r.pos {
			r.find(cursor{spot: inKey, path: r.path, token: source.Span{Start: r.at, End: r.at}, table: r.frame, whole: source.Span{Start: start, End: r.pos}})
		}
	case r.peek() == '#':
		if start <= r.at && r.at < r.pos {
			r.find(cursor{})
		}
	case r.peek() == '[':
		r.header()
	default:
		if start <= r.at && r.at < r.pos {
			r.find(cursor{})
		}
		r.pair(r.path, r.frame, 0)
	}
	r.nextLine()
}

func (r *reader) header() {
	start := r.pos
	end := r.lineEnd(start)
	r.pos++
	list := r.peek() == '['
	if list {
		r.pos++
	}
	var parts []string
	var here cursor
	for {
		from := r.pos
		r.blanks()
		text, span := r.key()
		if span.Len() == 0 && from <= r.at && r.at <= r.pos {
			span = source.Span{Start: r.at, End: r.at}
		}
		if within(span, r.at) && here.spot == nowhere {
			here = cursor{spot: inHeader, path: slices.Clone(parts), token: span, list: list}
		}
		parts = append(parts, text)
		r.blanks()
		if r.peek() != '.' {
			break
		}
		r.pos++
	}
	shut := false
	if r.peek() == ']' {
		r.pos++
		shut = !list
		if list && r.peek() == ']' {
			r.pos++
			shut = true
		}
	}
	if here.spot == inHeader {
		here.shut, here.table = shut, &frame{}
		here.whole = source.Span{Start: start, End: max(r.pos, start)}
		r.find(here)
	}
	r.pos = min(r.pos, end)
	r.path, r.frame = parts, &frame{}
	r.tables = append(r.tables, headed{parts, r.frame})
}

// key reads one part of a key; its span holds the quotes.
func (r *reader) key() (string, source.Span) {
	start := r.pos
	if c := r.peek(); c == '"' || c == '\'' {
		end := r.lineEnd(start)
		r.pos++
		for r.pos < end && r.text[r.pos] != c {
			r.pos++
		}
		text := string(r.text[start+1 : r.pos])
		if r.pos < end {
			r.pos++
		}
		return text, source.Span{Start: start, End: r.pos}
	}
	for r.pos < len(r.text) && bareKey(r.text[r.pos]) {
		r.pos++
	}
	return string(r.text[start:r.pos]), source.Span{Start: start, End: r.pos}
}

func bareKey(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '-'
}

// pair reads a key with its value, as far as they are written. It reports whether it got
// anywhere.
func (r *reader) pair(path []string, beside *frame, depth int) bool {
	start := r.pos
	var parts []string
	var here *cursor
	first := ""
	for {
		r.blanks()
		text, span := r.key()
		if within(span, r.at) && here == nil && (span.Len() > 0 || len(parts) > 0) {
			here = &cursor{spot: inKey, path: append(slices.Clone(path), parts...), token: span, depth: depth, table: beside}
			if len(parts) > 0 {
				here.table = &frame{}
			}
		}
		parts = append(parts, text)
		if len(parts) == 1 {
			first = text
		}
		before := r.pos
		r.blanks()
		if r.peek() != '.' {
			r.pos = before
			break
		}
		r.pos++
	}
	end := r.pos
	r.blanks()
	assigned := r.peek() == '='
	if here != nil {
		here.shut = assigned
		here.whole = source.Span{Start: start, End: r.lineEnd(end)}
		r.find(*here)
	} else if first != "" {
		beside.keys = append(beside.keys, first)
	}
	if !assigned {
		r.pos = end
		return end > start
	}
	r.pos++
	r.value(append(slices.Clone(path), parts...), &frame{}, false, depth)
	return true
}

// value reads one value, with the blanks before it.
func (r *reader) value(path []string, beside *frame, list bool, depth int) {
	start := r.pos
	r.blanks()
	c := r.peek()
	here := func(spot spot, token source.Span) cursor {
		return cursor{spot: spot, path: path, token: token, list: list, depth: depth, table: &frame{}, values: beside}
	}
	if start <= r.at && (r.at < r.pos || r.at == r.pos && (r.atLineEnd() || strings.IndexByte(",]}#", c) >= 0)) {
		r.find(here(inBare, source.Span{Start: r.at, End: r.at}))
	}
	switch {
	case r.atLineEnd() || c == '#':
	case c == '"' || c == '\'':
		r.quoted(c, here, beside)
	case depth >= deepest && (c == '[' || c == '{'):
		r.pos = r.lineEnd(r.pos)
	case c == '[':
		r.list(path, depth+1)
	case c == '{':
		r.braces(path, depth+1)
	default:
		from := r.pos
		for r.pos < len(r.text) && strings.IndexByte(",]}#\n\r", r.text[r.pos]) < 0 {
			r.pos++
		}
		span := source.Span{Start: from, End: from + len(bytes.TrimRight(r.text[from:r.pos], " \t"))}
		if within(span, r.at) {
			r.find(here(inBare, span))
			return
		}
		beside.items = append(beside.items, string(r.text[span.Start:span.End]))
	}
}

func (r *reader) quoted(quote byte, here func(spot, source.Span) cursor, beside *frame) {
	marks := bytes.Repeat([]byte{quote}, 3)
	if bytes.HasPrefix(r.text[r.pos:], marks) {
		start := r.pos + 3
		end := bytes.Index(r.text[start:], marks)
		shut := end >= 0
		if !shut {
			end = len(r.text) - start
		}
		end += start
		if start <= r.at && r.at <= end {
			found := here(inText, source.Span{Start: start, End: end})
			found.quote, found.long, found.shut = quote, true, shut
			r.find(found)
		}
		r.pos = min(end+3, len(r.text))
		return
	}
	start, limit := r.pos+1, r.lineEnd(r.pos)
	end := start
	for end < limit && r.text[end] != quote {
		if r.text[end] == '\\' && quote == '"' && end+1 < limit {
			end++
		}
		end++
	}
	shut := end < limit
	r.pos = end
	if shut {
		r.pos++
	}
	if start <= r.at && r.at <= end {
		found := here(inText, source.Span{Start: start, End: end})
		found.quote, found.shut = quote, shut
		r.find(found)
		return
	}
	beside.items = append(beside.items, string(r.text[start:end]))
}

// list reads a list, up to its bracket or to a line that begins a statement.
func (r *reader) list(path []string, depth int) {
	r.pos++
	beside := &frame{}
	for {
		for !r.ended() && r.atLineEnd() || r.peek() == '#' {
			if r.peek() == '#' {
				end := r.lineEnd(r.pos)
				if r.pos < r.at && r.at <= end {
					r.find(cursor{})
				}
				r.pos = end
				continue
			}
			next := r.pos + bytes.IndexByte(r.text[r.pos:], '\n') + 1
			if tree.Begins(r.text[next:]) {
				return // the list was never closed
			}
			r.pos = next
			if r.blankLine(path, beside, depth) {
				continue
			}
		}
		if r.ended() {
			return
		}
		start := r.pos
		r.blanks()
		if r.peek() == ']' {
			if start <= r.at && r.at <= r.pos {
				r.find(cursor{spot: inBare, path: path, token: source.Span{Start: r.at, End: r.at}, list: true, depth: depth, table: &frame{}, values: beside})
			}
			r.pos++
			return
		}
		r.pos = start
		r.value(path, beside, true, depth)
		r.blanks()
		switch {
		case r.peek() == ',':
			r.pos++
		case r.pos == start:
			if !r.atLineEnd() && r.peek() != '#' {
				r.pos++ // what cannot be read
			}
		}
	}
}

// blankLine takes the blanks at the start of a line of a list.
func (r *reader) blankLine(path []string, beside *frame, depth int) bool {
	start := r.pos
	r.blanks()
	if !r.atLineEnd() {
		r.pos = start
		return false
	}
	if start <= r.at && r.at <= r.pos {
		r.find(cursor{spot: inBare, path: path, token: source.Span{Start: r.at, End: r.at}, list: true, depth: depth, table: &frame{}, values: beside})
	}
	return true
}

func (r *reader) ended() bool { return r.pos >= len(r.text) }

// braces reads a table in braces, up to its brace or the end of its line.
func (r *reader) braces(path []string, depth int) {
	r.pos++
	beside := &frame{}
	for {
		start := r.pos
		r.blanks()
		if start <= r.at && r.at <= r.pos && (r.atLineEnd() || r.peek() == '}' || r.peek() == ',' || r.at < r.pos) {
			r.find(cursor{spot: inKey, path: path, token: source.Span{Start: r.at, End: r.at}, depth: depth, table: beside, whole: source.Span{Start: start, End: r.pos}})
		}
		switch {
		case r.atLineEnd():
			return
		case r.peek() == '}':
			r.pos++
			return
		case r.peek() == ',':
			r.pos++
			continue
		}
		before := r.pos
		if !r.pair(path, beside, depth) && r.pos == before {
			r.pos++
		}
		r.blanks()
	}
}
