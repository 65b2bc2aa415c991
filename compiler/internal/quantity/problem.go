package quantity

import (
	"strings"
	"unicode/utf8"
)

// Kind is what is wrong with an amount.
type Kind int

const (
	Missing    Kind = iota // no unit
	Wrong                  // a unit of another dimension
	Ambiguous              // may be read in several ways
	Unknown                // no unit we know
	Reversed               // a range from high to low
	Disagree               // two figures that should be the same amount and are not
	Malformed              // no amount
	Deprecated             // read, but written in a way that misleads
	Unusual                // read, but unlikely in its unit
)

func (k Kind) String() string {
	return [...]string{"missing", "wrong", "ambiguous", "unknown", "reversed", "disagree", "malformed", "deprecated", "unusual"}[k]
}

// Problem is one fault of an amount, at the very characters.
type Problem struct {
	Kind       Kind
	Start, End int    // bytes of the text
	Message    string // lower case, no full stop; quotes the text
	Help       string // what to write
	Replace    string // text to put at Start:End, empty where there is none to propose
	Certain    bool   // no other repair is possible
	Warning    bool   // the amount was read all the same
}

// quoted is text in quotation marks, cut where it is long and on one line.
func quoted(text string) string {
	text = strings.Join(strings.FieldsFunc(clip(text, 40), func(r rune) bool { return r < ' ' || isSpace(r) }), " ")
	return `"` + strings.ToValidUTF8(text, "\uFFFD") + `"`
}

// clip cuts text to a number of bytes at a character.
func clip(text string, most int) string {
	if len(text) <= most {
		return text
	}
	for most > 0 && !utf8.RuneStart(text[most]) {
		most--
	}
	return text[:most] + "…"
}

// either lists texts as "a, b or c".
func either(texts []string) string {
	if len(texts) < 2 {
		return strings.Join(texts, "")
	}
	return strings.Join(texts[:len(texts)-1], ", ") + " or " + texts[len(texts)-1]
}

// whichever ends a help that offers some units.
func whichever(symbols []string) string {
	if len(symbols) == 1 {
		return " if that is meant."
	}
	return ", whichever is meant."
}

// inUnits is a figure in each of some units, quoted: `"42 N·m" or "42 lbf·ft"`.
func inUnits(figure string, symbols []string) string {
	out := make([]string, len(symbols))
	for i, symbol := range symbols {
		out[i] = quoted(withUnit(clip(figure, 24), symbol, " "))
	}
	return either(out)
}

// writeOne is the help that shows an amount of the wanted dimension.
func writeOne(want Dimension) string {
	row := want.row()
	if len(row.usual) == 0 {
		return "Write a figure and its unit."
	}
	return "Write " + row.article + " " + row.name + " as a figure and a unit, such as " + quoted(withUnit(row.example, row.usual[0], " ")) + "."
}

// withUnit puts a unit behind a figure; only ° follows at once.
func withUnit(figure, symbol, space string) string {
	if symbol == "°" {
		return figure + symbol
	}
	return figure + space + symbol
}
