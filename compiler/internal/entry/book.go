package entry

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/pattern"

	"github.com/BurntSushi/toml"
)

// mostOfOne is how many bytes one entry may be long: what is longer has a text in it
// that is not closed.
const mostOfOne = 1 << 20

// atOnce is how much of a book is read at a time.
const atOnce = 256 << 10

// Fault is what is wrong with one entry of a book.
type Fault struct {
	Line    int
	Number  int // of the entry, as far as it can be told; 0 otherwise
	Summary string
	Help    string
}

func (f Fault) Error() string { return fmt.Sprintf("line %d: %s; %s", f.Line, f.Summary, f.Help) }

// Faults are the faults of a book in their order, one for each entry that cannot be read.
type Faults []Fault

func (f Faults) Error() string {
	lines := make([]string, len(f))
	for i, one := range f {
		lines[i] = one.Error()
	}
	return strings.Join(lines, "\n")
}

// Scan reads a service book of any length and hands over each entry with the line it
// begins on. It keeps none of them. An entry that cannot be read is left out, and told
// of at the end as one of Faults. An error of each ends the reading.
//
// It takes what Read takes and gives the same entries; only keys in capital letters, and
// an entry of more than 1 MiB, are faults here and none there.
func Scan(text io.Reader, each func(e Entry, line int) error) error {
	s := &scanner{from: text, line: 1, each: each}
	for {
		n, err := s.block()
		if err != nil {
			return err
		}
		if n == 0 {
			break
		}
		s.take(n)
	}
	if len(s.faults) > 0 {
		return s.faults
	}
	return nil
}

// Last is the number of the last entry of a text in which every entry stands as Text
// writes it, each with a higher number than the one before; false for any other text.
func Last(text []byte) (number int, ok bool) {
	s := &scanner{}
	for at := 0; at < len(text); {
		n, form := s.plain(text[at:], true)
		if form != isPlain || s.headed && s.entry.Number <= number || !s.headed && at > 0 {
			return 0, false
		}
		number, at = s.entry.Number, at+n
	}
	return number, number > 0
}

// scanner reads a book block by block: what stands before the first entry, and then each
// entry up to the next.
type scanner struct {
	from   io.Reader
	held   []byte // what is read and not yet taken
	store  []byte // what held lies in
	ended  bool
	line   int // of the first byte held
	each   func(Entry, int) error
	faults Faults
	inline bool // the entries stand in one list, so no header may follow

	entry  Entry // being read
	headed bool  // it has its header
	words  [1024]string
}

var header = []byte("[[entry]]")

// block reads the first block of what is held; 0 at the end of the book.
func (s *scanner) block() (n int, err error) {
	for {
		if len(s.held) > 0 || s.ended {
			n, form := s.plain(s.held, s.ended)
			if form == isPlain && n <= mostOfOne {
				if s.headed {
					err = s.hand(s.entry, s.line)
				}
				return n, err
			}
			if form != isShort || len(s.held) > mostOfOne {
				if end, closed := cut(s.held, s.ended); closed || s.ended || len(s.held) > mostOfOne {
					return s.odd(end, closed)
				}
			}
		}
		if err := s.more(); err != nil {
			return 0, err
		}
	}
}

// more reads on, behind what is held: as much again, so that no byte is looked at often.
func (s *scanner) more() error {
	if long := 2*len(s.held) + atOnce; len(s.store) < long {
		store := make([]byte, long)
		copy(store, s.held)
		s.store = store
	} else {
		copy(s.store, s.held)
	}
	n, err := io.ReadAtLeast(s.from, s.store[len(s.held):], max(1, len(s.held)))
	s.held = s.store[:len(s.held)+n]
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		s.ended, err = true, nil
	}
	return err
}

func (s *scanner) take(n int) {
	s.line += bytes.Count(s.held[:n], []byte{'\n'})
	s.held = s.held[n:]
}

func (s *scanner) hand(e Entry, line int) error {
	if s.inline {
		s.fault(line, e.Number, "the entries stand in one list, and here in tables of their own", "write each below a line [[entry]]")
		s.inline = false
	}
	return s.each(e, line)
}

func (s *scanner) fault(line, number int, summary, help string) {
	s.faults = append(s.faults, Fault{line, number, summary, help})
}

// odd reads a block of any other form by the general decoder. Where a text in it is not
// closed, the block ends at the next line that looks like the header of an entry.
func (s *scanner) odd(end int, closed bool) (n int, err error) {
	block := s.held[:end]
	entries, listed, wrong := decode(block)
	if inner := nextHeader(block, 1); wrong != nil && inner > 0 &&
		(!closed || wrong.syntax && wrong.line > bytes.Count(block[:inner], []byte{'\n'})) {
		block, closed = block[:inner], true
		if _, _, alone := decode(block); alone != nil {
			wrong = alone
		}
	}
	if len(block) > mostOfOne {
		wrong = &flaw{line: 1, summary: "the entry is longer than 1 MiB", help: "make it shorter, or close the text in it"}
	}
	if wrong != nil {
		number := 0
		if found := numbered.FindSubmatch(block); found != nil {
			number, _ = strconv.Atoi(string(found[1]))
		}
		s.fault(s.line+wrong.line-1, number, wrong.summary, wrong.help)
		if closed || s.ended {
			return len(block), nil
		}
		return s.pass()
	}
	for _, e := range entries {
		if err := s.hand(e, s.line+leading(block)); err != nil {
			return 0, err
		}
	}
	s.inline = s.inline || listed
	return len(block), nil
}

// pass goes to the next line that looks like the header of an entry, and keeps nothing
// of what lies before.
func (s *scanner) pass() (n int, err error) {
	for {
		if inner := nextHeader(s.held, 1); inner >= 0 && inner+len(header) < len(s.held) {
			return inner, nil
		}
		if s.ended {
			return len(s.held), nil
		}
		s.take(max(0, len(s.held)-len(header)-3)) // a header may stand across the end
		if err := s.more(); err != nil {
			return 0, err
		}
	}
}

// numbered finds the number of an entry that cannot be read.
var numbered = pattern.MustCompile(`(?m)^[ \t]*number[ \t]*=[ \t]*([0-9]{1,15})[ \t]*\r?$`)

// leading counts the lines before the first that says something.
func leading(block []byte) (lines int) {
	for line := range bytes.Lines(block[mark(block):]) {
		if told := bytes.TrimSpace(line); len(told) > 0 && told[0] != '#' {
			return lines
		}
		lines++
	}
	return 0
}

// nextHeader is where the first line that is the header of an entry begins, from an
// offset on; -1 where there is none.
func nextHeader(text []byte, from int) int {
	for {
		at := bytes.Index(text[min(from, len(text)):], header)
		if at < 0 {
			return -1
		}
		at += from
		if rest := text[at+len(header):]; (at == 0 || text[at-1] == '\n') && (len(rest) == 0 || rest[0] == '\n' || rest[0] == '\r') {
			return at
		}
		from = at + 1
	}
}

// isHeader reports whether a line is the header of an entry, in any form that is usual.
func isHeader(line []byte) bool {
	line = bytes.TrimLeft(line[:min(len(line), 80)], " \t")
	return bytes.HasPrefix(line, header[:2]) && anyHeader.Match(line)
}

var anyHeader = pattern.MustCompile(`^\[\[[ \t]*(entry|"entry"|'entry')[ \t]*\]\]`)

// flaw is why a block cannot be read.
type flaw struct {
	line          int // of the block, from 1
	syntax        bool
	summary, help string
}

// decode reads a block by the general decoder; listed reports whether its entries stand
// in one list.
func decode(block []byte) (entries []Entry, listed bool, wrong *flaw) {
	var book struct {
		Entries []Entry `toml:"entry"`
	}
	meta, err := toml.Decode(string(block), &book)
	var parse toml.ParseError
	switch {
	case errors.As(err, &parse) && len(meta.Keys()) == 0:
		wrong = &flaw{max(1, parse.Position.Line), true, parse.Message, "mend it as TOML wants it; until then the entry does not count"}
	case err != nil:
		wrong = locate(block, &flaw{1, false, strings.TrimPrefix(err.Error(), "toml: "), "mend it; until then the entry does not count"})
	default:
		if strange := slices.IndexFunc(meta.Keys(), func(key toml.Key) bool { return !isKey(key) }); strange >= 0 {
			wrong = locate(block, unknown(meta.Keys()[strange]))
		} else if left := meta.Undecoded(); len(left) > 0 {
			wrong = locate(block, unknown(left[0]))
		}
	}
	if at := leading(block); wrong != nil && isSingle(skipLines(block, at)) {
		wrong.line = 1 + at
		wrong.summary, wrong.help = "an entry stands below two brackets on each side", "write [[entry]]; until then it does not count"
	}
	return book.Entries, meta.Type("entry") == "Array", wrong
}

// isSingle reports whether a line is the header of an entry with too few brackets.
func isSingle(line []byte) bool {
	return singleHeader.Match(bytes.TrimLeft(line[:min(len(line), 80)], " \t"))
}

var singleHeader = pattern.MustCompile(`^\[[ \t]*(entry|"entry"|'entry')[ \t]*\]`)

// skipLines is a text from behind some lines on.
func skipLines(text []byte, lines int) []byte {
	for range lines {
		text = text[min(len(text), lineEnd(text, 0)+1):]
	}
	return text
}

// fieldsOf are the fields of the table that a path leads to; nil where it leads to none.
func fieldsOf(path []string) []Field {
	fields := []Field{{Key: "entry", Kind: "tables", Fields: written}}
	for _, key := range path {
		at := slices.IndexFunc(fields, func(field Field) bool { return field.Key == key })
		if at < 0 {
			return nil
		}
		fields = fields[at].Fields
	}
	return fields
}

func isKey(key toml.Key) bool {
	return slices.ContainsFunc(fieldsOf(key[:len(key)-1]), func(field Field) bool { return field.Key == key[len(key)-1] })
}

func unknown(key toml.Key) *flaw {
	for len(key) > 1 && fieldsOf(key[:len(key)-1]) == nil {
		key = key[:len(key)-1]
	}
	var names []string
	for _, field := range fieldsOf(key[:len(key)-1]) {
		names = append(names, field.Key)
	}
	return &flaw{1, false, fmt.Sprintf("no entry has a key %q", key.String()), "take it out, or write one of " + strings.Join(names, ", ")}
}

// locate finds the line of a flaw that is none of the syntax: the first statement that
// cannot be read alone.
func locate(block []byte, wrong *flaw) *flaw {
	above := ""
	for at := 0; at < len(block); {
		end, statement := at, block[at:]
		if kind := begin(statement); kind != saysNothing {
			end, _ = statementEnd(block, at)
			statement = bytes.Trim(block[at:end], " \t\r\n")
			if kind == isTable {
				above = "[[entry]]\n"
				if isHeader(statement) {
					statement = nil
				}
			}
			var book struct {
				Entries []Entry `toml:"entry"`
			}
			meta, err := toml.Decode(above+string(statement), &book)
			if kind == isTable {
				above += string(statement) + "\n"
			}
			keys := meta.Keys()
			strange := slices.IndexFunc(keys, func(key toml.Key) bool { return !isKey(key) })
			if err != nil || strange >= 0 {
				wrong.line = 1 + bytes.Count(block[:at], []byte{'\n'})
				if err != nil && len(keys) > 0 {
					mistaken(wrong, keys[len(keys)-1])
				} else if strange >= 0 {
					from := unknown(keys[strange])
					wrong.summary, wrong.help = from.summary, from.help
				}
				return wrong
			}
		} else if next := bytes.IndexByte(statement, '\n'); next >= 0 {
			end = at + next + 1
		} else {
			end = len(block)
		}
		at = max(end, at+1)
	}
	return wrong
}

// mistaken says what a key takes.
func mistaken(wrong *flaw, key toml.Key) {
	fields := fieldsOf(key[:len(key)-1])
	at := slices.IndexFunc(fields, func(field Field) bool { return field.Key == key[len(key)-1] })
	if at < 0 {
		return
	}
	name := fields[at].Key
	takes := map[string][2]string{
		"text": {"text", name + ` = "…", in quotes`}, "day": {"a day", name + " = 2026-11-27"},
		"whole": {"a whole number", name + " = 17"}, "wholes": {"a list of whole numbers", name + " = [1, 2, 3]"},
		"flag": {"true or false", name + " = true"}, "tables": {"a table of its own", "its keys below a line [[" + key.String() + "]]"},
	}[fields[at].Kind]
	wrong.summary, wrong.help = fmt.Sprintf("%q takes %s", key.String(), takes[0]), "write "+takes[1]
}
