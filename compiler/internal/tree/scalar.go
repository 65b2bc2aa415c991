package tree

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/source"
)

var (
	integerForm = pattern.MustCompile(`^([+-]?(0|[1-9](_?[0-9])*)|0x[0-9A-Fa-f](_?[0-9A-Fa-f])*|0o[0-7](_?[0-7])*|0b[01](_?[01])*)$`)
	floatForm   = pattern.MustCompile(`^[+-]?(0|[1-9](_?[0-9])*)(\.[0-9](_?[0-9])*)?([eE][+-]?[0-9](_?[0-9])*)?$`)
	dateForm    = pattern.MustCompile(`^\d{4}-\d{2}-\d{2}$`)
	timeForm    = pattern.MustCompile(`^\d{2}:\d{2}:\d{2}(\.\d+)?$`)
	dateTime    = pattern.MustCompile(`^(\d{4}-\d{2}-\d{2})[Tt ](\d{2}:\d{2}:\d{2}(?:\.\d+)?)([Zz]|[+-]\d{2}:\d{2})?$`)
	looksDate   = pattern.MustCompile(`^[+-]?\d+-\d|^\d+:\d|^\d{1,4}[/.]\d{1,2}[/.]\d{1,4}$`)
	shortDate   = pattern.MustCompile(`^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$`)
	looksNumber = pattern.MustCompile(`^[+-]?[0-9._]*[0-9][0-9a-fA-Fxob._+-]*$|^[+-]?\.[0-9]`)
)

// scalar reads a number, a boolean or a date.
func (p *parser) scalar() *Value {
	start := p.pos
	end := start
	for end < len(p.src) && !strings.ContainsRune(",]}#\n\r \t", rune(p.src[end])) {
		end++
	}
	if word := p.written[start:end]; dateForm.MatchString(word) && end+3 <= len(p.src) && p.src[end] == ' ' && p.src[end+1] >= '0' && p.src[end+1] <= '9' && p.src[end+2] >= '0' && p.src[end+2] <= '9' {
		for end++; end < len(p.src) && !strings.ContainsRune(",]}#\n\r \t", rune(p.src[end])); {
			end++
		}
	}
	value, known := read(p.written[start:end])
	if known && p.complete(end) {
		p.pos = end
		value.Span = source.Span{Start: start, End: end}
		return p.kept(value)
	}
	if !known && p.complete(end) && end > start {
		p.misspelt(source.Span{Start: start, End: end})
	}
	p.unquoted()
	return nil
}

// complete reports whether nothing but the end of the value's place follows.
func (p *parser) complete(end int) bool {
	for end < len(p.src) && (p.src[end] == ' ' || p.src[end] == '\t') {
		end++
	}
	return end >= len(p.src) || strings.ContainsRune("#\n\r", rune(p.src[end])) || p.depth > 0 && strings.ContainsRune(",]}", rune(p.src[end]))
}

// misspelt tells of what looks like a number or a date and is none.
func (p *parser) misspelt(span source.Span) {
	text := p.at(span)
	switch {
	case strings.EqualFold(text, "true"), strings.EqualFold(text, "false"):
		p.pos = span.End
		p.mend(badNumber, span, fmt.Sprintf("%s is not written in small letters", text), "Write "+strings.ToLower(text)+".", "Write "+strings.ToLower(text), strings.ToLower(text), true)
	case slices.Contains([]string{"yes", "no", "on", "off"}, strings.ToLower(text)):
		p.pos = span.End
		meant := strconv.FormatBool(strings.EqualFold(text, "yes") || strings.EqualFold(text, "on"))
		p.mend(badNumber, span, fmt.Sprintf("%s is no value", text), fmt.Sprintf("Write %s; words stand in quotes: %s", meant, quoted(text)), "Write "+meant, meant, false)
	case looksDate.MatchString(text):
		p.pos = span.End
		if m := shortDate.FindStringSubmatch(text); m != nil {
			meant := fmt.Sprintf("%s-%02s-%02s", m[1], m[2], m[3])
			if _, is := day(meant); is {
				p.mend(badDate, span, fmt.Sprintf("%s is not a day as it is written here", text), "Write year-month-day, with two figures each: "+meant, "Write "+meant, meant, true)
			}
		}
		p.fail(badDate, span, fmt.Sprintf("%s is not a day or a time that can be", text), "Write the day as year-month-day, with two figures each: 2026-02-14")
	case looksNumber.MatchString(text):
		p.pos = span.End
		p.fail(badNumber, span, fmt.Sprintf("%s is not a number", text), "Write figures with a point, and no zero before them: 2.5. An amount with its unit stands in quotes.")
	}
}

// read makes a value of a word; false where it is none.
func read(word string) (Value, bool) {
	switch word {
	case "true", "false":
		return Value{Kind: BooleanKind, Text: word, Bool: word == "true"}, true
	case "inf", "+inf":
		return Value{Kind: FloatKind, Text: word, Float: math.Inf(1)}, true
	case "-inf":
		return Value{Kind: FloatKind, Text: word, Float: math.Inf(-1)}, true
	case "nan", "+nan", "-nan":
		return Value{Kind: FloatKind, Text: word, Float: math.NaN()}, true
	}
	plain := strings.ReplaceAll(word, "_", "")
	if integerForm.MatchString(word) {
		n, err := strconv.ParseInt(plain, 0, 64)
		if err != nil {
			return Value{}, false
		}
		return Value{Kind: IntegerKind, Text: word, Int: n}, true
	}
	if floatForm.MatchString(word) {
		f, err := strconv.ParseFloat(plain, 64)
		if err != nil && math.IsInf(f, 0) {
			return Value{}, false
		}
		return Value{Kind: FloatKind, Text: word, Float: f}, true
	}
	return day(word)
}

func day(word string) (Value, bool) {
	switch {
	case dateForm.MatchString(word):
		if _, err := time.Parse("2006-01-02", word); err == nil {
			return Value{Kind: LocalDateKind, Text: word}, true
		}
	case timeForm.MatchString(word):
		if _, err := time.Parse("15:04:05", word); err == nil {
			return Value{Kind: LocalTimeKind, Text: word}, true
		}
	}
	m := dateTime.FindStringSubmatch(word)
	if m == nil {
		return Value{}, false
	}
	if _, err := time.Parse("2006-01-02 15:04:05", m[1]+" "+m[2]); err != nil {
		return Value{}, false
	}
	if m[3] == "" {
		return Value{Kind: LocalDateTimeKind, Text: word}, true
	}
	if zone := m[3]; len(zone) == 6 && (zone[1:3] > "23" || zone[4:] > "59") {
		return Value{}, false
	}
	return Value{Kind: DateTimeKind, Text: word}, true
}
