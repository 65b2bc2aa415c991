package entry

import "bytes"

// cut is where the first block of a text ends: at the next header of an entry that stands
// in no text, list or comment. It is not closed where the text ends first, inside a value
// or before it ends for good.
func cut(text []byte, ended bool) (end int, closed bool) {
	start := mark(text)
	for at := start; at < len(text); {
		switch begin(text[at:]) {
		case isTable:
			if at > start && (isHeader(text[at:]) || isSingle(text[at:])) {
				return at, true
			}
			fallthrough
		case isPair:
			var whole bool
			if at, whole = statementEnd(text, at); !whole {
				return len(text), false
			}
		default:
			next := bytes.IndexByte(text[at:], '\n')
			if next < 0 {
				return len(text), ended
			}
			at += next + 1
		}
	}
	return len(text), ended
}

// mark is how long the byte order mark is that a text begins with.
func mark(text []byte) int {
	for _, mark := range []string{"\uFEFF", "\xFF\xFE", "\xFE\xFF"} {
		if bytes.HasPrefix(text, []byte(mark)) {
			return len(mark)
		}
	}
	return 0
}

// What a line begins.
type beginning int

const (
	saysNothing beginning = iota // blank, or a comment
	isTable
	isPair
)

func begin(line []byte) beginning {
	for _, c := range line {
		switch c {
		case ' ', '\t', '\r':
		case '\n', '#':
			return saysNothing
		case '[':
			return isTable
		default:
			return isPair
		}
	}
	return saysNothing
}

// statementEnd is where the statement that begins in a line ends, with its line end. It
// is not whole where the text ends inside a value of several lines. What no TOML may hold
// ends a statement with its line: from there on nobody can tell what is a text.
func statementEnd(text []byte, at int) (end int, whole bool) {
	table := begin(text[at:]) == isTable
	depth := 0
	for at < len(text) {
		switch c := text[at]; {
		case c == '\n':
			at++
			if depth == 0 || table || isInner(text[at:]) {
				return at, true
			}
			continue
		case c == '#':
			if at = lineEnd(text, at); at == len(text) {
				return at, depth == 0
			}
			continue
		case c == '"' || c == '\'':
			next, closed := quoted(text, at)
			if !closed {
				return next, next < len(text)
			}
			at = next
			continue
		case table:
		case c == '[' || c == '{':
			depth++
		case c == ']' || c == '}':
			depth = max(0, depth-1)
		case !isWritten(c):
			if at = lineEnd(text, at); at < len(text) {
				at++
			}
			return at, true
		}
		at++
	}
	return at, depth == 0
}

// isInner reports whether a line is the header of an entry: inside a list it is a fault.
func isInner(text []byte) bool { return nextHeader(text[:min(len(text), len(header)+1)], 0) == 0 }

// isWritten reports whether a byte may stand outside quotes and comments.
func isWritten(c byte) bool {
	return 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || '0' <= c && c <= '9' || bytes.IndexByte([]byte(" \t\r=.,:+-_"), c) >= 0
}

func lineEnd(text []byte, at int) int {
	if next := bytes.IndexByte(text[at:], '\n'); next >= 0 {
		return at + next
	}
	return len(text)
}

// quoted goes over a text in quotes. Where one of a single line is not closed it ends
// behind that line.
func quoted(text []byte, at int) (end int, closed bool) {
	quote := text[at]
	three := []byte{quote, quote, quote}
	long := bytes.HasPrefix(text[at:], three)
	if long {
		at += 2
	}
	for at++; at < len(text); at++ {
		switch c := text[at]; {
		case c == '\\' && quote == '"':
			at++
			if !long && at < len(text) && text[at] == '\n' {
				return at + 1, false
			}
		case c == '\n' && !long:
			return at + 1, false
		case c != quote:
		case !long:
			return at + 1, true
		case bytes.HasPrefix(text[at:], three):
			at += 3
			for more := 0; more < 2 && at < len(text) && text[at] == quote; more++ {
				at++
			}
			return at, true
		}
	}
	return len(text), false
}
