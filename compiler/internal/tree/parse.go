package tree

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/source"
)

// mostFaults is how many faults of one file are told.
const mostFaults = 20

// What is read of a file. A procedure stays far below; what lies above is damaged, or is meant to
// keep the program busy. The command limits how long a file is.
const (
	deepest    = 100     // lists and tables inside each other, and parts of a key: they are read by calls inside each other
	longest    = 10_000  // bytes of one text, some three sides of a card: it takes longer to lay out than it is long
	widest     = 100_000 // bytes of one line: a place in it is told by counting from its beginning
	mostValues = 50_000  // keys, headers and items of lists in one file: each may bring a finding
)

type parser struct {
	file     *source.File
	src      []byte
	written  string // the same, of which the texts are parts
	pos      int
	doc      *Document
	current  *Table
	findings []finding.Finding
	depth    int
	count    int       // of values and headers
	open     bool      // the statement is inside a value that may span lines
	parts    []keyPart // of the last key

	// Room for what comes next, so that many are made at once.
	values  []Value
	entries []Entry
	items   []*Value
}

// block is how many values or entries are made at once: few in a short file.
func (p *parser) block() int { return min(max(len(p.src)/512, 4), 32) }

// kept is a value in its room.
func (p *parser) kept(value Value) *Value {
	if len(p.values) == 0 {
		p.values = make([]Value, p.block())
	}
	out := &p.values[0]
	p.values = p.values[1:]
	*out = value
	return out
}

// entry is an entry in its room.
func (p *parser) entry(key keyPart, value *Value) *Entry {
	if len(p.entries) == 0 {
		p.entries = make([]Entry, p.block())
	}
	out := &p.entries[0]
	p.entries = p.entries[1:]
	*out = Entry{Key: key.text, KeySpan: key.span, Value: value}
	return out
}

// listed are the items of a list in their room.
func (p *parser) listed(items []*Value) []*Value {
	n := len(items)
	if n == 0 {
		return nil
	}
	if len(p.items) < n {
		p.items = make([]*Value, max(n, 2*p.block()))
	}
	out := p.items[:n:n]
	p.items = p.items[n:]
	copy(out, items)
	return out
}

// fault is the panic by which a statement is given up; Parse always recovers it.
type fault struct{}

// Parse reads a file. The tree holds what could be read; each fault is one finding.
func Parse(file *source.File) (*Document, []finding.Finding) {
	p := &parser{file: file, src: file.Text, written: string(file.Text), doc: &Document{File: file, Root: &Table{made: headed}}}
	p.current = p.doc.Root
	if !p.readable() {
		return p.doc, p.findings
	}
	for p.pos < len(p.src) && len(p.findings) < mostFaults {
		p.statement()
	}
	if p.pos < len(p.src) && len(p.findings) == mostFaults {
		p.note(tooMany, source.Span{Start: p.pos, End: p.pos}, "more faults are not shown", "Mend the first ones, and look again.")
	}
	return p.doc, p.findings
}

// readable reports whether the file is text in UTF-8, and skips its byte order mark.
func (p *parser) readable() bool {
	switch {
	case bytes.HasPrefix(p.src, []byte{0xFF, 0xFE}), bytes.HasPrefix(p.src, []byte{0xFE, 0xFF}):
		p.note(notUTF8, source.Span{Start: 0, End: 2}, "the file is in UTF-16", "Save it as UTF-8.")
		return false
	case bytes.IndexByte(p.src, 0) >= 0:
		at := bytes.IndexByte(p.src, 0)
		p.note(notText, source.Span{Start: at, End: at + 1}, "the file is not text", "A procedure is plain text; take the right file.")
		return false
	case !utf8.Valid(p.src):
		at := firstInvalid(p.src)
		p.note(notUTF8, source.Span{Start: at, End: at + 1}, fmt.Sprintf("the file is not in UTF-8: byte %#02x", p.src[at]), "Save it as UTF-8; in an old code page, letters like ° and · are other bytes.")
		return false
	}
	for line := 1; line <= p.file.Lines(); line++ {
		if start, long := p.file.Extent(line); long > widest {
			p.note(tooLong, source.Span{Start: start, End: start}, fmt.Sprintf("the line is %d bytes long, and at most %d are read", long, widest), "Break it into several lines.")
			return false
		}
	}
	if bytes.HasPrefix(p.src, []byte("\uFEFF")) {
		p.pos = 3
	}
	return true
}

func firstInvalid(text []byte) int {
	at := 0
	for {
		r, size := utf8.DecodeRune(text[at:])
		if r == utf8.RuneError && size <= 1 {
			return at
		}
		at += size
	}
}

// statement reads one line, or a value over several; after a fault it goes on at
// the next line that may begin a statement.
func (p *parser) statement() {
	start := p.pos
	p.depth, p.open = 0, false
	defer func() {
		if r := recover(); r != nil {
			if _, ours := r.(fault); !ours {
				panic(r)
			}
			p.resume(start)
		}
	}()
	p.blanks()
	switch c := p.peek(); {
	case c == '#' || c == '\n' || c == '\r' || p.pos >= len(p.src):
	case c == '[':
		p.counted()
		p.header()
	default:
		p.pair(p.current)
	}
	p.lineEnd()
}

// counted counts a value or a header, and ends the reading where there are too many.
func (p *parser) counted() {
	if p.count++; p.count <= mostValues {
		return
	}
	at := p.pos
	p.pos, p.open = len(p.src), false
	p.fail(tooLong, source.Span{Start: at, End: at + 1}, fmt.Sprintf("the file holds more than %d values, and is read up to here", mostValues), "Split it into several files.")
}

// bounded cuts a text that is longer than is read, and tells of it.
func (p *parser) bounded(value *Value) *Value {
	if len(value.Text) <= longest {
		return value
	}
	p.note(tooLong, source.Span{Start: value.Span.Start, End: value.Span.Start + 1}, fmt.Sprintf("the text is %d bytes long, and at most %d are read", len(value.Text), longest), "Make several steps or notes of it, or take out what is not meant to stand there.")
	end := longest
	for !utf8.RuneStart(value.Text[end]) {
		end--
	}
	value.Text = value.Text[:end]
	return value
}

// resume goes to the next line after a fault, or, out of an open list or text,
// to the next that looks like the beginning of a statement.
func (p *parser) resume(start int) {
	at := max(start, p.pos)
	if p.open {
		at = p.opened()
	}
	for {
		next := bytes.IndexByte(p.src[min(at, len(p.src)):], '\n')
		if next < 0 {
			p.pos = len(p.src)
			return
		}
		at += next + 1
		if !p.open || begins(p.src[at:]) {
			p.pos = at
			return
		}
	}
}

// opened is where the last finding points: from there the rest of the file is looked at again.
func (p *parser) opened() int { return p.findings[len(p.findings)-1].Place.Span.Start }

var beginning = pattern.MustCompile(`^[ \t]*(\[\[?[ \t]*[A-Za-z0-9_"'-][^\n=,]*\]|[A-Za-z0-9_-]+[ \t]*=|"[^"\n]*"[ \t]*=|[A-Za-z0-9_-]+(\.[A-Za-z0-9_-]+)+[ \t]*=)`)

// begins reports whether a line looks like the beginning of a statement.
func begins(rest []byte) bool {
	if end := bytes.IndexByte(rest, '\n'); end >= 0 {
		rest = rest[:end]
	}
	if len(rest) > 400 {
		rest = rest[:400]
	}
	return beginning.Match(rest)
}

func (p *parser) peek() byte {
	if p.pos < len(p.src) {
		return p.src[p.pos]
	}
	return 0
}

func (p *parser) blanks() {
	for p.pos < len(p.src) && (p.src[p.pos] == ' ' || p.src[p.pos] == '\t') {
		p.pos++
	}
}

// lineEnd takes a comment and the line break; anything else is a fault.
func (p *parser) lineEnd() {
	p.blanks()
	p.comment()
	switch {
	case p.pos >= len(p.src):
	case p.src[p.pos] == '\n':
		p.pos++
	case p.src[p.pos] == '\r' && p.pos+1 < len(p.src) && p.src[p.pos+1] == '\n':
		p.pos += 2
	default:
		rest := p.restOfLine()
		p.quoteInside(rest)
		p.fail(extraText, rest, fmt.Sprintf("%q stands after the value", p.at(rest)), "Begin a new line, or put a # before it.")
	}
}

// quoteInside tells of a text that a quote in it ended too soon: "Take the 1/2" ratchet."
func (p *parser) quoteInside(rest source.Span) {
	line := bytes.LastIndexByte(p.src[:p.pos], '\n') + 1
	equals := bytes.IndexByte(p.src[line:p.pos], '=')
	if equals < 0 {
		return
	}
	start := line + equals + 1
	for start < p.pos && (p.src[start] == ' ' || p.src[start] == '\t') {
		start++
	}
	end := rest.End
	for end < len(p.src) && p.src[end] != '\n' && p.src[end] != '\r' {
		end++
	}
	if p.src[start] != '"' || bytes.HasPrefix(p.src[start:], []byte(`"""`)) {
		return
	}
	comment := bytes.Index(p.src[start:end], []byte(" #"))
	if comment >= 0 && start+comment < p.pos { // the quotes behind it are those of the comment
		before := strings.TrimRight(string(p.src[start+1:start+comment]), " \t")
		p.mendAt(unclosedText, source.Span{Start: start, End: start + 1}, fmt.Sprintf("the text %s is not closed before the comment", p.at(source.Span{Start: start, End: start + 1 + len(before)})),
			"Write a quote where the text ends, before the #.", "Close the text before the comment", start+1+len(before), `"`, true)
	}
	if comment >= 0 {
		end = start + comment
	}
	last := bytes.LastIndexByte(p.src[start:end], '"')
	if last < p.pos-start {
		return
	}
	text := string(p.src[start+1 : start+last])
	whole := source.Span{Start: start, End: start + last + 1}
	written := quoted(text)
	if !strings.Contains(text, "'") && !strings.Contains(text, `\`) {
		written = "'" + text + "'"
	}
	p.pos = whole.End
	found := p.note(extraText, rest, "a quote inside the text ends it", "Write "+written+", or another word for the mark, such as in for inches.")
	found.Fixes = []finding.Fix{{Title: "Write " + written, Certain: true, Edits: []finding.Edit{{Place: p.place(whole), Text: written}}}}
	panic(fault{})
}

func (p *parser) comment() {
	if p.peek() != '#' {
		return
	}
	start := p.pos
	for p.pos < len(p.src) && p.src[p.pos] != '\n' && !(p.src[p.pos] == '\r' && p.pos+1 < len(p.src) && p.src[p.pos+1] == '\n') {
		if p.src[p.pos] == '\r' && p.pos+1 == len(p.src) {
			half := source.Span{Start: p.pos, End: p.pos + 1}
			found := p.note(controlCharacter, half, "the last line ends in a carriage return with no line feed behind it", "Delete it.")
			found.Fixes = []finding.Fix{{Title: "Delete it", Certain: true, Edits: []finding.Edit{{Place: p.place(half)}}}}
			p.pos++
			return
		}
		if control(p.src[p.pos]) {
			p.fail(controlCharacter, source.Span{Start: p.pos, End: p.pos + 1}, fmt.Sprintf("a control character, %#02x, stands in a comment", p.src[p.pos]), "Delete it.")
		}
		p.pos++
	}
	p.doc.Comments = append(p.doc.Comments, Comment{source.Span{Start: start, End: p.pos}, p.written[start:p.pos]})
}

// control reports whether a byte may stand in no text: controls other than the tab.
func control(c byte) bool { return c < ' ' && c != '\t' || c == 0x7F }

// space takes blanks, comments and line breaks inside a list.
func (p *parser) space() {
	for p.pos < len(p.src) {
		switch c := p.src[p.pos]; {
		case c == ' ' || c == '\t' || c == '\n':
			p.pos++
		case c == '\r' && p.pos+1 < len(p.src) && p.src[p.pos+1] == '\n':
			p.pos += 2
		case c == '#':
			p.comment()
		default:
			return
		}
	}
}

// restOfLine is what stands on the line from here, without a comment and blanks at its end.
func (p *parser) restOfLine() source.Span {
	end := p.pos
	for end < len(p.src) && p.src[end] != '\n' {
		end++
	}
	text := string(p.src[p.pos:end])
	if i := strings.Index(text, " #"); i > 0 {
		text = text[:i]
	}
	text = strings.TrimRight(text, " \t\r")
	return source.Span{Start: p.pos, End: max(p.pos+len(text), min(p.pos+1, len(p.src)))}
}

// at is what is written at a span, cut where it is long.
func (p *parser) at(span source.Span) string {
	text := string(p.src[span.Start:span.End])
	if runes := []rune(text); len(runes) > 40 {
		return string(runes[:40]) + "…"
	}
	return text
}

// keyPart is one part of a dotted key.
type keyPart struct {
	text string
	span source.Span
}

// keys reads a dotted key. Its parts are there until the next key is read.
func (p *parser) keys() []keyPart {
	out := p.parts[:0]
	for {
		p.blanks()
		out = append(out, p.key())
		p.parts = out
		if len(out) > deepest {
			p.fail(tooDeep, out[0].span, fmt.Sprintf("a dotted key has more than %d parts", deepest), "Write the outer parts as a header.")
		}
		p.blanks()
		if p.peek() != '.' {
			return out
		}
		p.pos++
	}
}

func bare(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '-'
}

func (p *parser) key() keyPart {
	start := p.pos
	if c := p.peek(); c == '"' || c == '\'' {
		value := p.text(c, false)
		return keyPart{value.Text, value.Span}
	}
	for p.pos < len(p.src) && bare(p.src[p.pos]) {
		p.pos++
	}
	if p.pos == start {
		p.noKey()
	}
	return keyPart{p.written[start:p.pos], source.Span{Start: start, End: p.pos}}
}

// unseen are letters that show as a space or not at all; text copied from a page brings them along.
const unseen = "\u00a0\u2007\u202f\u200b\u2060\ufeff"

func (p *parser) noKey() {
	rest := p.restOfLine()
	if r, size := utf8.DecodeRune(p.src[p.pos:]); strings.ContainsRune(unseen, r) {
		p.mend(badKey, source.Span{Start: p.pos, End: p.pos + size}, fmt.Sprintf("a letter that does not show (%U) stands before the key", r),
			"Delete it, or type a plain space; it came along when the text was copied.", "Write a plain space", " ", true)
	}
	if p.peek() == '=' {
		p.fail(badKey, source.Span{Start: p.pos, End: p.pos + 1}, "there is no key before the =", "Write the key: key = value")
	}
	if bytes.HasPrefix(p.src[p.pos:], []byte("//")) && p.depth == 0 {
		p.mend(badKey, source.Span{Start: p.pos, End: p.pos + 2}, "a comment begins with # and not with //", "Write # in front of it.", "Write #", "#", true)
	}
	help := "Write a key in letters, figures, - and _: key = value"
	if p.depth > 0 {
		help = "Write key = value, and close the table with }"
	}
	p.fail(badKey, rest, fmt.Sprintf("%q is not a key", p.at(rest)), help)
}

// pair reads key = value into a table.
func (p *parser) pair(table *Table) {
	start := p.pos
	keys := p.keys()
	if p.peek() != '=' {
		p.noEquals(start, keys)
	}
	p.pos++
	p.blanks()
	last := keys[len(keys)-1]
	target := p.dottedTable(table, keys[:len(keys)-1])
	if other := target.Get(last.text); other != nil {
		help := "Keep one of the two."
		if header := p.src[table.Header.Start:table.Header.End]; bytes.HasPrefix(header, []byte("[[")) {
			help = fmt.Sprintf("Keep one of the two; or where another begins, write %s above it.", header)
		}
		p.twice(keyTwice, last.span, other.KeySpan, fmt.Sprintf("%q is written twice", last.text), help)
	}
	if c := p.peek(); c == '\n' || c == '\r' || c == '#' || p.pos >= len(p.src) {
		p.fail(noValue, source.Span{Start: last.span.Start, End: p.lastMark(start)}, fmt.Sprintf("%q has no value", last.text), fmt.Sprintf("Write the value after the =, or take %q out.", last.text))
	}
	value := p.value()
	target.add(p.entry(last, value))
}

// lastMark is the end of what is written before here, blanks left out.
func (p *parser) lastMark(start int) int {
	end := p.pos
	for end > start && (p.src[end-1] == ' ' || p.src[end-1] == '\t') {
		end--
	}
	return end
}

func (p *parser) noEquals(start int, keys []keyPart) {
	if r, size := utf8.DecodeRune(p.src[p.pos:]); strings.ContainsRune(unseen, r) && size > 0 && p.pos < len(p.src) {
		p.mend(noEquals, source.Span{Start: p.pos, End: p.pos + size}, fmt.Sprintf("a letter that does not show (%U) stands behind the key", r),
			"Delete it, or type a plain space; it came along when the text was copied.", "Write a plain space", " ", true)
	}
	end := keys[len(keys)-1].span.End
	span := source.Span{Start: start, End: end}
	if p.peek() == ':' && p.depth == 0 {
		colon := source.Span{Start: p.pos, End: p.pos + 1}
		p.mend(noEquals, colon, fmt.Sprintf("%q is followed by : and not by =", p.at(span)), "Write = after the key.", "Write = after the key", " =", true)
	}
	if c := p.peek(); c == '\n' || c == '\r' || c == '#' || p.pos >= len(p.src) {
		if len(keys) == 2 && p.depth == 0 {
			p.current = &Table{Header: span, made: headed} // a header is meant, so what follows is not of the table above
			header := "[" + p.at(span) + "]"
			p.mend(noEquals, span, fmt.Sprintf("%q has no = and no value", p.at(span)), "Write "+header+" if it begins a table.", "Write "+header, header, false)
		}
		p.fail(noEquals, span, fmt.Sprintf("%q has no = and no value", p.at(span)), fmt.Sprintf("Write %s = and the value, or take it out.", p.at(span)))
	}
	rest := source.Span{Start: start, End: p.restOfLine().End}
	p.fail(noEquals, rest, fmt.Sprintf("%q has no = after its key", p.at(rest)), "Write key = value; a key of two words is joined by a hyphen.")
}

// header reads [a.b] or [[a.b]].
func (p *parser) header() {
	start := p.pos
	p.pos++
	list := p.peek() == '['
	if list {
		p.pos++
	}
	p.blanks()
	if p.peek() == ']' {
		p.fail(badHeader, source.Span{Start: start, End: p.pos + 1}, "the header has no name", "Write the name of the table between the brackets.")
	}
	keys := p.keys()
	closing := "]"
	if list {
		closing = "]]"
	}
	if bytes.HasPrefix(p.src[p.pos:], []byte(closing)) {
		p.pos += len(closing)
	} else {
		p.openHeader(start, closing)
	}
	span := source.Span{Start: start, End: p.pos}
	p.current = &Table{Header: span, made: headed} // what follows a faulty header is read all the same
	if list {
		p.current = p.listTable(keys, span)
	} else {
		p.current = p.headTable(keys, span)
	}
}

// openHeader tells of a header that is not closed after its name. A closing bracket
// that is missing is taken for written; after any other fault what follows goes
// into a table of its own, and not into the one above.
func (p *parser) openHeader(start int, closing string) {
	rest := source.Span{Start: start, End: p.restOfLine().End}
	p.current = &Table{Header: rest, made: headed}
	written := string(p.src[p.pos:rest.End])
	summary := fmt.Sprintf("the header %q is not closed with %s", strings.TrimRight(p.at(rest), "\r\n"), closing)
	if written == closing[1:] {
		found := p.note(badHeader, rest, summary, fmt.Sprintf("Write %s.", string(p.src[start:p.pos])+closing))
		place := p.place(source.Span{Start: p.pos, End: p.pos})
		found.Fixes = []finding.Fix{{Title: "Write " + closing, Certain: true, Edits: []finding.Edit{{Place: place, Text: closing[len(written):]}}}}
		p.pos = rest.End
		return
	}
	if name, closed := strings.CutSuffix(written, closing); closed && len(strings.Fields(name)) > 0 && !strings.ContainsAny(name, "[]\"'#") {
		from := p.lastMark(start)
		joined := "-" + strings.Join(strings.Fields(name), "-")
		span := source.Span{Start: from, End: rest.End - len(closing)}
		found := p.note(badHeader, rest, fmt.Sprintf("the header %q has a name of several words", p.at(rest)), "Join the words of the name by hyphens.")
		found.Fixes = []finding.Fix{{Title: "Join the words by hyphens", Certain: true, Edits: []finding.Edit{{Place: p.place(span), Text: joined}}}}
		panic(fault{})
	}
	p.fail(badHeader, rest, summary, fmt.Sprintf("Write %s after the name, and nothing else on the line.", closing))
}
