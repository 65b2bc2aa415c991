package entry

import (
	"bytes"
	"reflect"
	"strconv"
	"strings"
	"unicode"
)

// Head is what a new service book begins with.
const Head = "# Service book. New entries come at the end; nothing above is changed. A wrong one is put right by a new one that says corrects = its number.\n"

// Text is the entry as it stands in a service book, the keys in the order of Layout, a
// blank line before it. An entry that has its number stands between two lines that say
// it, so that one that was torn in writing is seen. Bytes that are no UTF-8 come out as
// U+FFFD. A day that is none comes out as text, which no reader takes.
func (e Entry) Text() []byte {
	var out bytes.Buffer
	out.WriteByte('\n')
	if e.Number > 0 {
		out.WriteString(opening + strconv.Itoa(e.Number) + "\n")
	}
	table(&out, "entry", written, reflect.ValueOf(e))
	if e.Number > 0 {
		out.WriteString(closing + strconv.Itoa(e.Number) + "\n")
	}
	return out.Bytes()
}

// The lines round an entry, before its number.
const (
	opening = "# entry "
	closing = "# end of entry "
)

// written is the layout, which never changes.
var written = Layout()

func table(out *bytes.Buffer, name string, fields []Field, of reflect.Value) {
	out.WriteString("[[" + name + "]]\n")
	for i, field := range fields {
		if value := of.Field(i); field.Kind != "tables" && !(value.IsZero() && (field.May || field.Kind == "day")) && !(field.Kind == "wholes" && value.Len() == 0) {
			out.WriteString(field.Key + " = ")
			flat(out, field.Kind, value)
			out.WriteByte('\n')
		}
	}
	for i, field := range fields {
		for j := 0; field.Kind == "tables" && j < of.Field(i).Len(); j++ {
			out.WriteByte('\n')
			table(out, name+"."+field.Key, field.Fields, of.Field(i).Index(j))
		}
	}
}

func flat(out *bytes.Buffer, kind string, value reflect.Value) {
	switch {
	case kind == "whole":
		out.WriteString(strconv.FormatInt(value.Int(), 10))
	case kind == "flag":
		out.WriteString(strconv.FormatBool(value.Bool()))
	case kind == "wholes":
		for i := range value.Len() {
			out.WriteString([]string{"[", ", "}[min(i, 1)] + strconv.FormatInt(value.Index(i).Int(), 10))
		}
		out.WriteByte(']')
	case kind == "day" && isDay([]byte(value.String())):
		out.WriteString(value.String())
	default:
		quote(out, value.String())
	}
}

// quote writes a text as a basic string. What does not show, or turns the line round, is
// written as its number.
func quote(out *bytes.Buffer, text string) {
	out.WriteByte('"')
	for _, r := range strings.ToValidUTF8(text, "\uFFFD") {
		short := strings.IndexRune("\"\\\b\t\n\f\r", r)
		switch {
		case short >= 0:
			out.WriteString(`\` + `"\btnfr`[short:short+1])
		case unicode.IsControl(r), unicode.In(r, unicode.Bidi_Control, unicode.Zl, unicode.Zp), r == '\uFEFF':
			digits := strconv.FormatInt(int64(r), 16)
			out.WriteString(`\u` + strings.ToUpper(strings.Repeat("0", 4-len(digits))+digits))
		default:
			out.WriteRune(r)
		}
	}
	out.WriteByte('"')
}

// isDay reports whether a text is a day that can be, as TOML writes it.
func isDay(text []byte) bool {
	if len(text) != len("2026-11-27") || text[4] != '-' || text[7] != '-' {
		return false
	}
	for i, c := range text {
		if i != 4 && i != 7 && (c < '0' || c > '9') {
			return false
		}
	}
	two := func(at int) int { return int(text[at]-'0')*10 + int(text[at+1]-'0') }
	century, year, month, day := two(0), two(2), two(5), two(8)
	most := 31
	switch month {
	case 4, 6, 9, 11:
		most = 30
	case 2:
		most = 28
		if leap := year; leap%4 == 0 && (leap != 0 || century%4 == 0) {
			most = 29
		}
	}
	return 1 <= month && month <= 12 && 1 <= day && day <= most
}
