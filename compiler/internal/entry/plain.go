package entry

import (
	"bytes"
	"strings"
	"unicode/utf8"
)

// form is what a block of a book looks like.
type form int

const (
	isPlain form = iota // as Text writes it: one key a line, in any order
	isOdd               // any other
	isShort             // its end is not there yet
)

// plain reads the first block of a text into s.entry, where it stands as Text writes it.
// The block ends before the next header of an entry, or where the text ends for good.
func (s *scanner) plain(text []byte, ended bool) (n int, is form) {
	s.entry, s.headed = Entry{}, false
	in, had := byte(0), uint32(0) // the table that is open, its keys so far
	for at := 0; at < len(text); {
		switch c := text[at]; {
		case c == '\n':
			at++
			continue
		case c == '#':
			length := bytes.IndexByte(text[at:], '\n')
			if length < 0 {
				return end(ended)
			}
			if !isComment(text[at : at+length]) {
				return 0, isOdd
			}
			at += length + 1
			continue
		case c == '[':
			length := bytes.IndexByte(text[at:], '\n')
			if length < 0 {
				return end(ended)
			}
			line := text[at : at+length]
			if bytes.Equal(line, header) {
				if at > 0 {
					return at, isPlain
				}
				s.headed, in = true, 'e'
			} else if in = s.below(line); in == 0 {
				return 0, isOdd
			}
			had = 0
			at += length + 1
			continue
		case in == 0:
			return 0, isOdd
		}
		length := bytes.IndexByte(text[at:], ' ')
		if length < 0 || length+3 > len(text[at:]) {
			return end(ended)
		}
		place, bit := s.place(in, text[at:at+length])
		if place == nil || had&bit != 0 || text[at+length+1] != '=' || text[at+length+2] != ' ' {
			return 0, isOdd
		}
		had |= bit
		at += length + len(" = ")
		read := 0
		switch place := place.(type) {
		case *string:
			read = s.text(text[at:], place)
		case *int:
			read = whole(text[at:], place)
		case *[]int:
			read = wholes(text[at:], place)
		case *bool:
			read = flag(text[at:], place)
		case *Day:
			read = s.day(text[at:], place)
		}
		if at += read; read == 0 || at < len(text) && text[at] != '\n' {
			if bytes.IndexByte(text[at:], '\n') < 0 {
				return end(ended)
			}
			return 0, isOdd
		}
		if at == len(text) { // no line end: what follows may belong to the value
			return end(ended)
		}
		at++
	}
	if !ended {
		return 0, isShort
	}
	return len(text), isPlain
}

// end is the form of a block whose last line is not finished.
func end(ended bool) (int, form) {
	if ended {
		return 0, isOdd
	}
	return 0, isShort
}

// below begins a table of the entry, and gives its mark; 0 for a line that begins none.
func (s *scanner) below(line []byte) byte {
	if !s.headed {
		return 0
	}
	switch string(line) {
	case "[[entry.reading]]":
		s.entry.Readings = append(s.entry.Readings, Reading{})
		return 'r'
	case "[[entry.left-out]]":
		s.entry.LeftOut = append(s.entry.LeftOut, LeftOut{})
		return 'l'
	case "[[entry.used]]":
		s.entry.Used = append(s.entry.Used, Moved{})
		return 'u'
	case "[[entry.received]]":
		s.entry.Received = append(s.entry.Received, Moved{})
		return 'v'
	}
	return 0
}

// place is where the value of a key goes, and the bit that stands for the key; nil for
// a key that the table does not have.
func (s *scanner) place(in byte, key []byte) (any, uint32) {
	e := &s.entry
	switch in {
	case 'e':
		switch string(key) {
		case "number":
			return &e.Number, 1 << 0
		case "corrects":
			return &e.Corrects, 1 << 1
		case "unit":
			return &e.Unit, 1 << 2
		case "procedure":
			return &e.Procedure, 1 << 3
		case "revision":
			return &e.Revision, 1 << 4
		case "machine":
			return &e.Machine, 1 << 5
		case "variant":
			return &e.Variant, 1 << 6
		case "date":
			return &e.Date, 1 << 7
		case "who":
			return &e.Who, 1 << 8
		case "meter":
			return &e.Meter, 1 << 9
		case "new-meter":
			return &e.NewMeter, 1 << 10
		case "done":
			return &e.Done, 1 << 11
		case "open":
			return &e.Open, 1 << 12
		case "remarks":
			return &e.Remarks, 1 << 13
		}
	case 'r':
		of := &e.Readings[len(e.Readings)-1]
		switch string(key) {
		case "step":
			return &of.Step, 1 << 0
		case "what":
			return &of.What, 1 << 1
		case "value":
			return &of.Value, 1 << 2
		case "limit":
			return &of.Limit, 1 << 3
		case "outside":
			return &of.Outside, 1 << 4
		}
	case 'l':
		of := &e.LeftOut[len(e.LeftOut)-1]
		switch string(key) {
		case "step":
			return &of.Step, 1 << 0
		case "why":
			return &of.Why, 1 << 1
		}
	case 'u':
		return e.Used[len(e.Used)-1].place(key)
	case 'v':
		return e.Received[len(e.Received)-1].place(key)
	}
	return nil, 0
}

func (m *Moved) place(key []byte) (any, uint32) {
	switch string(key) {
	case "what":
		return &m.What, 1 << 0
	case "amount":
		return &m.Amount, 1 << 1
	}
	return nil, 0
}

// isComment reports whether nothing in a line is what no comment may hold.
func isComment(line []byte) bool {
	high := false
	for _, c := range line {
		if c < ' ' && c != '\t' || c == 0x7F {
			return false
		}
		high = high || c >= utf8.RuneSelf
	}
	return !high || utf8.Valid(line)
}

// special are the bytes that a basic string does not hold as they are, and those that
// need a second look.
var special = func() (out [256]bool) {
	for c := range out {
		out[c] = c < ' ' && c != '\t' || c == '"' || c == '\\' || c >= 0x7F
	}
	return out
}()

// text reads a basic string of one line. This and the readers below give how many bytes
// a value takes, 0 where it is none of the plain form.
func (s *scanner) text(from []byte, into *string) int {
	if len(from) == 0 || from[0] != '"' {
		return 0
	}
	high, bent := false, false
	for at := 1; at < len(from); at++ {
		c := from[at]
		if !special[c] {
			continue
		}
		switch {
		case c >= utf8.RuneSelf:
			high = true
		case c == '\\':
			at++
			bent = true
		case c != '"':
			return 0
		case high && !utf8.Valid(from[1:at]):
			return 0
		case bent:
			var ok bool
			if *into, ok = straight(from[1:at]); !ok {
				return 0
			}
			return at + 1
		default:
			*into = s.word(from[1:at])
			return at + 1
		}
	}
	return 0
}

// word is a text as a string; one that came lately is not made again.
func (s *scanner) word(text []byte) string {
	if len(text) == 0 {
		return ""
	}
	if len(text) > 64 {
		return string(text)
	}
	n := len(text)
	hash := uint32(n)*31 + uint32(text[0])
	hash = hash*31 + uint32(text[n/2])
	hash = hash*31 + uint32(text[n-1])
	hash = hash*31 + uint32(text[n*3/4])
	hash = hash*31 + uint32(text[n/4])
	at := &s.words[hash*2654435761>>22]
	if *at != string(text) {
		*at = string(text)
	}
	return *at
}

// straight undoes the escapes of a basic string; false where one is none that Text writes.
func straight(text []byte) (string, bool) {
	var out strings.Builder
	for at := 0; at < len(text); at++ {
		if text[at] != '\\' {
			out.WriteByte(text[at])
			continue
		}
		at++
		if short := strings.IndexByte(`"\btnfr`, text[at]); short >= 0 {
			out.WriteByte("\"\\\b\t\n\f\r"[short])
			continue
		}
		if text[at] != 'u' || at+4 >= len(text) {
			return "", false
		}
		r := rune(0)
		for _, c := range text[at+1 : at+5] {
			digit := strings.IndexByte("0123456789ABCDEF", c)
			if digit < 0 {
				return "", false
			}
			r = r<<4 + rune(digit)
		}
		if !utf8.ValidRune(r) {
			return "", false
		}
		out.WriteRune(r)
		at += 4
	}
	return out.String(), true
}

// whole reads a whole number of at most eighteen digits.
func whole(from []byte, into *int) int {
	at, value := 0, 0
	if len(from) > 0 && from[0] == '-' {
		at++
	}
	first := at
	for ; at < len(from) && '0' <= from[at] && from[at] <= '9'; at++ {
		if at-first == 18 {
			return 0
		}
		value = value*10 + int(from[at]-'0')
	}
	if at == first || from[first] == '0' && at > 1 {
		return 0
	}
	if first > 0 {
		value = -value
	}
	*into = value
	return at
}

// wholes reads a list of whole numbers on one line, at least one.
func wholes(from []byte, into *[]int) int {
	if len(from) == 0 || from[0] != '[' {
		return 0
	}
	long := bytes.IndexByte(from, ']')
	if long < 0 {
		return 0
	}
	out := make([]int, 0, 1+bytes.Count(from[:long], []byte{','}))
	for at := 1; at < len(from); {
		var one int
		n := whole(from[at:], &one)
		if n == 0 {
			return 0
		}
		out = append(out, one)
		switch at += n; {
		case at < len(from) && from[at] == ']':
			*into = out
			return at + 1
		case at+1 < len(from) && from[at] == ',' && from[at+1] == ' ':
			at += 2
		default:
			return 0
		}
	}
	return 0
}

func flag(from []byte, into *bool) int {
	for value, word := range []string{"false", "true"} {
		if len(from) >= len(word) && string(from[:len(word)]) == word {
			*into = value == 1
			return len(word)
		}
	}
	return 0
}

func (s *scanner) day(from []byte, into *Day) int {
	const long = len("2026-11-27")
	if len(from) < long || !isDay(from[:long]) {
		return 0
	}
	*into = Day(s.word(from[:long]))
	return long
}
