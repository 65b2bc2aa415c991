package entry

import (
	"bytes"
	"errors"
	"io"
	"strings"
)

// tornTail is how much of the end of a book is looked at first.
const tornTail = 64 << 10

// TornAt gives what Torn gives of a book of some size. It looks at the end alone: from the
// last whole entry on nothing matters that stands before it. A book in which no entry
// stands as Text writes it is looked through from its beginning.
func TornAt(book io.ReaderAt, size int64) (whole int64, err error) {
	for long := int64(tornTail); long < size; long *= 4 {
		text, err := piece(book, size-long, long)
		if err != nil {
			return 0, err
		}
		if at := bytes.Index(text, []byte("\n"+opening)); at >= 0 {
			text = text[at+1:]
			if whole, sure := torn(text); sure {
				return size - int64(len(text)-whole), nil
			}
		}
		// Where nothing opens an entry, only what follows the last header can be unfinished.
		at := nextHeader(text, 1)
		if at < 0 {
			continue
		}
		framed, err := hasFrames(book, size-int64(len(text)-at))
		if err != nil {
			return 0, err
		}
		if whole, _ := torn(text[at:]); !framed && whole > 0 {
			return size - int64(len(text)-at-whole), nil
		}
	}
	text, err := piece(book, 0, size)
	return int64(Torn(text)), err
}

// piece reads a piece of a book.
func piece(book io.ReaderAt, from, long int64) ([]byte, error) {
	text := make([]byte, long)
	n, err := book.ReadAt(text, from)
	if errors.Is(err, io.EOF) {
		err = nil
	}
	return text[:n], err
}

// hasFrames reports whether the beginning of a book has what may open an entry, or a byte
// that is zero.
func hasFrames(book io.ReaderAt, size int64) (bool, error) {
	const overlap = len(opening)
	for from := int64(0); from < size; from += atOnce {
		text, err := piece(book, from, min(atOnce+int64(overlap), size-from))
		if err != nil {
			return false, err
		}
		if bytes.IndexByte(text, 0) >= 0 || bytes.Contains(text, []byte(opening)) {
			return true, nil
		}
	}
	return false, nil
}

// Torn gives how many bytes from the start of a book are whole; what follows was torn in
// writing: an entry between whose two lines the second is missing, bytes that are zero,
// the beginning of a line that nothing can read. A whole entry behind makes whole what
// lies before it: then a person has been at it, and no writing was broken off there.
func Torn(text []byte) (whole int) {
	whole, _ = torn(text)
	if whole < len(Head) && strings.HasPrefix(Head, string(text[:whole])) {
		return 0
	}
	return whole
}

// torn is Torn of a text that need not begin a book; sure reports whether what stands
// before it can change nothing, since a whole entry comes first.
func torn(text []byte) (whole int, sure bool) {
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
				torn, sure = -1, true
			}
			open = -1
		case open >= 0 && isHeader(line):
			if headers++; headers > 1 {
				open = -1
				if !zero {
					torn, sure = -1, true
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
	return torn, sure
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
	if len(block) > mostOfOne {
		return len(text)-at > mostOfOne // nothing reads so long a line
	}
	_, _, wrong := decode(block)
	return wrong != nil && wrong.syntax
}
