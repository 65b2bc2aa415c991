package entry

import (
	"bytes"
	"strings"
)

// Torn gives how many bytes from the start of a book are whole; what follows was torn in
// writing: an entry between whose two lines the second is missing, bytes that are zero,
// the beginning of a line that nothing can read. A whole entry behind makes whole what
// lies before it: then a person has been at it, and no writing was broken off there.
func Torn(text []byte) (whole int) {
	torn := -1 // where the first torn thing begins
	number := []byte(nil)
	open, headers, zero := -1, 0, false // the entry between whose lines we are
	for at := 0; at < len(text); {
		end := lineEnd(text, at)
		line, next := bytes.TrimSuffix(text[at:end], []byte{'\r'}), min(end+1, len(text))
		switch {
		case bytes.IndexByte(line, 0) >= 0:
			zero = true
			if torn < 0 {
				torn = at
			}
		case isOpening(line, text[next:], end < len(text)):
			open, headers, zero = at, 0, false
			number, _ = bytes.CutPrefix(line, []byte(opening))
			if torn < 0 {
				torn = at
			}
		case open >= 0 && bytes.HasPrefix(line, []byte(closing)) && bytes.Equal(line[len(closing):], number):
			if !zero {
				torn = -1
			}
			open = -1
		case open >= 0 && isHeader(line):
			if headers++; headers > 1 {
				open = -1
				if !zero {
					torn = -1
				}
			}
		case end == len(text) && torn < 0 && isUnfinished(text, at):
			torn = at
		}
		at = next
	}
	if torn < 0 {
		torn = len(text)
	}
	for torn < len(text) { // a blank line, and a line that opens, belong to what followed them
		if bytes.HasSuffix(text[:torn], []byte("\n\n")) {
			torn--
		}
		last := bytes.LastIndexByte(text[:max(0, torn-1)], '\n') + 1
		if torn == 0 || !isOpening(bytes.TrimRight(text[last:torn], "\r\n"), nil, true) {
			break
		}
		torn = last
	}
	if torn < len(Head) && strings.HasPrefix(Head, string(text[:torn])) {
		return 0
	}
	return torn
}

// isOpening reports whether a line opens an entry: the header follows it, as far as the
// text goes.
func isOpening(line, rest []byte, ended bool) bool {
	number, is := bytes.CutPrefix(line, []byte(opening))
	switch {
	case !ended && !is:
		return len(line) > 0 && strings.HasPrefix(opening, string(line))
	case !is || len(bytes.Trim(number, "0123456789")) > 0 || ended && len(number) == 0:
		return false
	}
	if zero := bytes.IndexByte(rest[:min(len(rest), len(header)+2)], 0); zero >= 0 {
		rest = rest[:zero]
	}
	below := bytes.TrimSuffix(rest[:lineEnd(rest, 0)], []byte{'\r'})
	return bytes.Equal(below, header) || len(below) == len(rest) && bytes.HasPrefix(header, below)
}

// isUnfinished reports whether the last line of a text, which does not end, cannot be
// read as it stands. A person's editor may well leave out the end of a line.
func isUnfinished(text []byte, at int) bool {
	block := text[max(0, bytes.LastIndex(text[:at], header)):]
	if isHeader(text[at:]) {
		block = text[at:]
	}
	_, _, wrong := decode(block)
	return wrong != nil && wrong.syntax
}
