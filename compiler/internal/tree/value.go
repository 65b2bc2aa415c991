package tree

import (
	"bytes"
	"fmt"
	"strings"

	"benchleaf/compiler/source"
)

// value reads one value.
func (p *parser) value() *Value {
	p.counted()
	switch c := p.peek(); c {
	case '"', '\'':
		if bytes.HasPrefix(p.src[p.pos:], []byte{c, c, c}) {
			return p.bounded(p.longText(c))
		}
		return p.bounded(p.text(c, true))
	case '[':
		return p.array()
	case '{':
		return p.inlineTable()
	default:
		return p.scalar()
	}
}

func (p *parser) deeper(start int) {
	if p.depth++; p.depth > deepest {
		p.open = false
		p.fail(tooDeep, source.Span{Start: start, End: start + 1}, fmt.Sprintf("lists and tables stand more than %d deep inside each other", deepest), "Take the outer ones away.")
	}
}

func (p *parser) array() *Value {
	start, wasOpen := p.pos, p.open
	p.deeper(start)
	if p.depth == 1 {
		p.lostQuote(start)
	}
	p.open = true
	p.pos++
	var room [16]*Value
	items := room[:0]
	for {
		p.space()
		if p.peek() == ']' {
			break
		}
		if p.pos >= len(p.src) || p.newStatement() {
			p.unclosed(unclosedList, start, "[", "]")
		}
		if p.peek() == ',' {
			p.fail(missingItem, source.Span{Start: p.pos, End: p.pos + 1}, "a comma stands where a value is wanted", "Take the comma out, or write the value.")
		}
		items = append(items, p.value())
		p.space()
		if p.peek() == ',' {
			p.pos++
		} else if p.peek() != ']' {
			if p.pos >= len(p.src) || p.newStatement() {
				p.unclosed(unclosedList, start, "[", "]")
			}
			p.noComma(items[len(items)-1].Span.End)
		}
	}
	p.pos++
	p.depth--
	p.open = wasOpen
	return p.kept(Value{Kind: ArrayKind, Span: source.Span{Start: start, End: p.pos}, Items: p.listed(items)})
}

// newStatement reports whether the line, up to here blank, begins a statement:
// then a list above it was never closed.
func (p *parser) newStatement() bool {
	line := p.pos
	for line > 0 && (p.src[line-1] == ' ' || p.src[line-1] == '\t') {
		line--
	}
	return (line == 0 || p.src[line-1] == '\n') && Begins(p.src[line:])
}

// Begins reports whether a line inside an open list looks like the beginning of a statement:
// a key with =, or a header that is no list in the list.
func Begins(rest []byte) bool { return begins(rest) && !startsList(bytes.TrimLeft(rest, " \t")) }

// startsList reports whether what looks like a header may be a list in a list: [1, 2] or ["a"].
func startsList(rest []byte) bool {
	if len(rest) == 0 || rest[0] != '[' {
		return false
	}
	end := bytes.IndexByte(rest, '\n')
	if end < 0 {
		end = len(rest)
	}
	line := bytes.TrimRight(rest[:end], " \t\r")
	return bytes.HasSuffix(line, []byte(",")) || bytes.ContainsAny(line, ",\"'") || !bytes.ContainsAny(line, "abcdefghijklmnopqrstuvwxyz")
}

func (p *parser) unclosed(kind *rule, start int, opening, closing string) {
	p.fail(kind, source.Span{Start: start, End: start + len(opening)}, fmt.Sprintf("%s is never closed", opening), fmt.Sprintf("Write %s where it ends.", closing))
}

func (p *parser) noComma(end int) {
	rest := p.restOfLine()
	place := source.Span{Start: end, End: end}
	if c := p.peek(); c == '"' || c == '\'' || c == '{' || c == '[' {
		p.mend(missingComma, place, fmt.Sprintf("no comma stands before %q", p.at(rest)), "Write a comma between two values.", "Write a comma", ",", true)
	}
	p.fail(missingComma, rest, fmt.Sprintf("%q stands where a comma or the closing bracket is wanted", p.at(rest)), "Write a comma between two values, or close the bracket.")
}

func (p *parser) inlineTable() *Value {
	start, wasOpen := p.pos, p.open
	p.deeper(start)
	p.pos++
	table := &Table{Inline: true, made: dotted}
	p.blanks()
	for p.peek() != '}' {
		p.tableBreak(start)
		p.pair(table)
		p.blanks()
		switch c := p.peek(); {
		case c == ',':
			comma := p.pos
			p.pos++
			p.blanks()
			if p.peek() == '}' {
				p.mend(missingItem, source.Span{Start: comma, End: comma + 1}, "a comma stands before the closing }", "Take the comma out.", "Take the comma out", "", true)
			}
		case c != '}':
			p.tableBreak(start)
			last := table.Entries[len(table.Entries)-1]
			p.noComma(last.Value.Span.End)
		}
	}
	p.pos++
	p.depth--
	p.open = wasOpen
	table.Header = source.Span{Start: start, End: p.pos}
	close(table)
	return p.kept(Value{Kind: TableKind, Span: table.Header, Table: table})
}

// close ends an inline table and the dotted tables in it: nothing may be added.
func close(table *Table) {
	table.made = closed
	for _, entry := range table.Entries {
		if inner := entry.Value.Table; entry.Value.Kind == TableKind && inner.made == dotted {
			close(inner)
		}
	}
}

// tableBreak tells of an inline table that goes over the end of its line.
func (p *parser) tableBreak(start int) {
	c := p.peek()
	if c != '\n' && c != '\r' && c != '#' && p.pos < len(p.src) {
		return
	}
	p.open = true
	p.skipTable()
	p.fail(unclosedTable, source.Span{Start: start, End: start + 1}, "{ is not closed on its line", "Write } on the same line; a table over several lines has a header of its own.")
}

// skipTable goes behind the closing brace of a table over several lines, where
// one stands before the next header, so that its inner lines are not told as well.
func (p *parser) skipTable() {
	for at := p.pos; at < len(p.src); {
		end := at + bytes.IndexByte(p.src[at:], '\n')
		if end < at {
			end = len(p.src)
		}
		line := bytes.TrimSpace(p.src[at:end])
		if bytes.HasPrefix(line, []byte("[")) {
			return
		}
		if bytes.ContainsRune(line, '}') {
			p.pos, p.open = end, false
			return
		}
		at = end + 1
	}
}

// unquoted ends a value that is none of the kinds: most often text without quotes.
func (p *parser) unquoted() {
	rest := p.restOfLine()
	text := string(p.src[rest.Start:rest.End])
	if p.depth > 0 {
		if end := strings.IndexAny(text, ",]}"); end > 0 {
			text = strings.TrimRight(text[:end], " \t")
		}
		rest.End = rest.Start + max(len(text), 1)
	}
	p.pos = rest.End
	for _, quote := range []string{"“", "”", "„", "‘", "’", "«"} {
		if inner, ok := strings.CutPrefix(text, quote); ok {
			p.curly(rest, inner)
		}
	}
	if inner, last := text[:max(0, len(text)-1)], text[max(0, len(text)-1):]; (last == `"` || last == "'") && !strings.ContainsAny(inner, `"'`) {
		p.mend(unquotedText, rest, fmt.Sprintf("%s has a quote at its end and none before it", p.at(rest)), "Write a quote on both sides: "+quoted(inner), "Write the quote before it", quoted(inner), true)
	}
	if inner, ok := strings.CutPrefix(text, "="); ok {
		inner = strings.TrimLeft(inner, "= \t")
		mended := inner
		if rest.Start > 0 && p.src[rest.Start-1] == '=' {
			mended = " " + inner
		}
		p.mend(unquotedText, rest, "= stands there twice", "One = is enough: = "+inner, "Write one =", mended, inner != "")
	}
	if inner, ok := strings.CutPrefix(text, "("); ok && strings.HasSuffix(inner, ")") {
		list := "[" + strings.TrimSuffix(inner, ")") + "]"
		p.mend(unquotedText, rest, fmt.Sprintf("%s stands in round brackets", p.at(rest)), "A list stands in square brackets: "+list, "Write square brackets", list, strings.Count(list, `"`)%2 == 0 && strings.Contains(list, `"`))
	}
	help := "Write text in straight quotes: " + quoted(text)
	p.mend(unquotedText, rest, fmt.Sprintf("%s is text without quotes", p.at(rest)), help, "Put it in quotes", quoted(text), !strings.ContainsAny(text, `"\'`))
}

func (p *parser) curly(span source.Span, inner string) {
	for _, quote := range []string{"”", "“", "’", "‘", "»", `"`} {
		if text, ok := strings.CutSuffix(inner, quote); ok && !strings.ContainsAny(text, `"\“”`) {
			p.mend(curlyQuotes, span, fmt.Sprintf("%s is in curly quotes", p.at(span)), "Write straight quotes: "+quoted(text), "Write straight quotes", quoted(text), true)
		}
	}
	p.fail(curlyQuotes, span, fmt.Sprintf("%s begins with a curly quote", p.at(span)), `Write straight quotes: "…"`)
}

var marks = strings.NewReplacer(`\`, `\\`, `"`, `\"`)

func quoted(text string) string { return `"` + marks.Replace(text) + `"` }
