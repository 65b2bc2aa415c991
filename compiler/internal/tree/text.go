package tree

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// speller gathers the decoded bytes of a string and where they stand.
type speller struct {
	out  []byte
	runs []run
}

// put adds bytes that stand in the file as they are.
func (s *speller) put(text []byte, at int) {
	if n := len(s.runs); n == 0 || s.runs[n-1].written+len(s.out)-s.runs[n-1].decoded != at {
		s.runs = append(s.runs, run{len(s.out), at})
	}
	s.out = append(s.out, text...)
}

// escaped adds what an escape at a place means.
func (s *speller) escaped(text string, at int) {
	s.runs = append(s.runs, run{len(s.out), at})
	s.out = append(s.out, text...)
}

func (s *speller) value(start, end int) *Value {
	s.runs = append(s.runs, run{len(s.out), end})
	return &Value{Kind: StringKind, Text: string(s.out), spelt: &s.runs}
}

// simple reads a string on one line that stands in the file as it is, without the look at each of
// its bytes that others need; nil where it is another.
func (p *parser) simple(quote byte) *Value {
	start := p.pos + 1
	if uint64(start) > math.MaxUint32 {
		return nil
	}
	for end := start; end < len(p.src); end++ {
		switch c := p.src[end]; {
		case c == quote:
			p.pos = end + 1
			return p.kept(Value{Kind: StringKind, Text: p.written[start:end], Span: source.Span{Start: start - 1, End: p.pos}, from: uint32(start)})
		case c == '\\' && quote == '"' || control(c):
			return nil
		}
	}
	return nil
}

// text reads a string on one line: "basic" or 'literal'.
func (p *parser) text(quote byte, isValue bool) *Value {
	if value := p.simple(quote); value != nil {
		return value
	}
	start := p.pos
	s := &speller{}
	p.pos++
	for {
		if p.pos >= len(p.src) || p.src[p.pos] == '\n' || p.src[p.pos] == '\r' && bytes.HasPrefix(p.src[p.pos:], []byte("\r\n")) {
			p.unclosedText(start, quote, isValue)
		}
		switch c := p.src[p.pos]; {
		case c == quote:
			value := s.value(start, p.pos)
			p.pos++
			value.Span = source.Span{Start: start, End: p.pos}
			return value
		case c == '\\' && quote == '"':
			p.escape(s, false)
		case control(c):
			p.controlFault()
		default:
			p.plain(s)
		}
	}
}

// plain takes a stretch without quotes, escapes, controls and line breaks.
func (p *parser) plain(s *speller) {
	start := p.pos
	for p.pos < len(p.src) {
		c := p.src[p.pos]
		if c == '"' || c == '\'' || c == '\\' || c == '\n' || c == '\r' || control(c) {
			break
		}
		p.pos++
	}
	if p.pos == start {
		p.pos++ // a quote of the other kind, or a backslash in a literal
	}
	s.put(p.src[start:p.pos], start)
}

func (p *parser) controlFault() {
	at := p.pos
	p.pos++
	p.fail(controlCharacter, source.Span{Start: at, End: at + 1}, fmt.Sprintf("a control character, %#02x, stands in the text", p.src[at]), "Delete it.")
}

func (p *parser) unclosedText(start int, quote byte, isValue bool) {
	p.pos = start
	rest := p.restOfLine()
	end := start
	for end < len(p.src) && p.src[end] != '\n' && p.src[end] != '\r' {
		end++
	}
	p.pos = end
	span := source.Span{Start: start, End: start + 1}
	text := string(p.src[start:end])
	help := fmt.Sprintf("Write %c where the text ends.", quote)
	other := map[byte]string{'"': "'", '\'': `"`}[quote]
	if isValue && p.depth == 0 && strings.HasSuffix(strings.TrimRight(text, " \t"), other) && strings.Count(text, other) == 1 {
		closing := source.Span{Start: start + len(strings.TrimRight(text, " \t")) - 1, End: start + len(strings.TrimRight(text, " \t"))}
		found := p.note(unclosedText, span, fmt.Sprintf("the text %s begins with one kind of quote and ends with the other", p.at(rest)), "Write the same quote on both sides.")
		found.Fixes = []finding.Fix{{Title: fmt.Sprintf("Write %c at its end", quote), Certain: true, Edits: []finding.Edit{{Place: p.place(closing), Text: string(quote)}}}}
		panic(fault{})
	}
	if isValue && p.depth == 0 {
		certain := !strings.Contains(text[1:], string(quote)) && !strings.Contains(text, "#")
		p.mendAt(unclosedText, span, fmt.Sprintf("the text %s is not closed", p.at(rest)), help, "Close the text at the end of the line", rest.End, string(quote), certain)
	}
	p.fail(unclosedText, span, fmt.Sprintf("the text %s is not closed", p.at(rest)), help)
}

var escapes = map[byte]string{'b': "\b", 't': "\t", 'n': "\n", 'f': "\f", 'r': "\r", '"': `"`, '\\': `\`}

// escape reads one escape; in a long text a backslash at the end of a line joins lines.
func (p *parser) escape(s *speller, long bool) {
	at := p.pos
	p.pos++
	c := p.peek()
	if text, ok := escapes[c]; ok {
		p.pos++
		s.escaped(text, at)
		return
	}
	if digits := map[byte]int{'u': 4, 'U': 8}[c]; digits > 0 && p.pos+1+digits <= len(p.src) {
		code, err := strconv.ParseUint(string(p.src[p.pos+1:p.pos+1+digits]), 16, 32)
		if err == nil && utf8.ValidRune(rune(code)) {
			p.pos += 1 + digits
			s.escaped(string(rune(code)), at)
			return
		}
	}
	if long && p.joins(s) {
		return
	}
	end := min(p.pos+1, len(p.src))
	for end < len(p.src) && !utf8.RuneStart(p.src[end]) {
		end++
	}
	span := source.Span{Start: at, End: end}
	p.skipText(long)
	p.mend(badEscape, span, fmt.Sprintf("%s is no escape", p.at(span)), `Write \\ for a backslash, or put the text in single quotes. In a path write /.`, `Write \\`, `\`+p.at(span), false)
}

// skipText leaves the rest of a text on its line, so that its end is not told as a second fault.
func (p *parser) skipText(long bool) { p.open = p.open || long }

// joins takes a line break behind a backslash with the blanks after it.
func (p *parser) joins(s *speller) bool {
	at := p.pos
	for at < len(p.src) && (p.src[at] == ' ' || p.src[at] == '\t') {
		at++
	}
	if !bytes.HasPrefix(p.src[at:], []byte("\n")) && !bytes.HasPrefix(p.src[at:], []byte("\r\n")) {
		return false
	}
	for at < len(p.src) && (p.src[at] == ' ' || p.src[at] == '\t' || p.src[at] == '\n' || p.src[at] == '\r' && bytes.HasPrefix(p.src[at:], []byte("\r\n"))) {
		at++
	}
	p.pos = at
	return true
}

// Unquote is what a key says that is written in quotes, without a fault.
func Unquote(key string) string {
	p := &parser{src: []byte(key), written: key}
	return p.key().text
}

// longText reads a string over several lines, in three quotes.
func (p *parser) longText(quote byte) *Value {
	start, wasOpen := p.pos, p.open
	s := &speller{}
	p.open = true
	p.pos += 3
	if bytes.HasPrefix(p.src[p.pos:], []byte("\r\n")) {
		p.pos += 2
	} else if p.peek() == '\n' {
		p.pos++
	}
	for {
		if p.pos >= len(p.src) {
			marks := strings.Repeat(string(quote), 3)
			p.fail(unclosedText, source.Span{Start: start, End: start + 3}, fmt.Sprintf("the text begun with %s is never closed", marks), fmt.Sprintf("Write %s where it ends.", marks))
		}
		switch c := p.src[p.pos]; {
		case c == quote:
			n := 0
			for n < 5 && p.pos+n < len(p.src) && p.src[p.pos+n] == quote {
				n++
			}
			if n >= 3 {
				s.put(p.src[p.pos:p.pos+n-3], p.pos)
				value := s.value(start, p.pos+n-3)
				p.pos += n
				p.open = wasOpen
				value.Span = source.Span{Start: start, End: p.pos}
				return value
			}
			s.put(p.src[p.pos:p.pos+n], p.pos)
			p.pos += n
		case c == '\\' && quote == '"':
			p.escape(s, true)
		case c == '\n':
			s.put(p.src[p.pos:p.pos+1], p.pos)
			p.pos++
		case c == '\r' && bytes.HasPrefix(p.src[p.pos:], []byte("\r\n")):
			s.put([]byte("\n"), p.pos+1)
			p.pos += 2
		case control(c):
			p.controlFault()
		default:
			p.plain(s)
		}
	}
}
