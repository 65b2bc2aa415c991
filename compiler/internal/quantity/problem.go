package quantity

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"benchleaf/compiler/internal/pattern"
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
	if strings.Contains(text, `"`) {
		return `'` + strings.ToValidUTF8(text, "\uFFFD") + `'`
	}
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

// byHand are words for what no wrench tightens.
var byHand = pattern.MustCompile(`(?i)\b(?:by[- ]hand|hand|finger)\b|\bsnug\b`)

// writeOne is the help that shows an amount of each wanted dimension.
func (p *parser) writeOne() string {
	if len(p.wants[0].row().usual) == 0 {
		return "Write a figure and its unit."
	}
	if len(p.wants) == 1 {
		row := p.want.row()
		if p.want == Torque && byHand.MatchString(p.text) {
			return "What is tightened by hand has no torque: take it out, and write by-hand with the reason in the step that tightens it."
		}
		return "Write " + row.article + " " + row.name + " as a figure and a unit, such as " + quoted(p.sample(p.want)) + "."
	}
	return "Write a figure and a unit, such as " + p.samples() + "."
}

// samples is an example of each wanted dimension: `"500 h", "12 months" or "5000 km"`.
func (p *parser) samples() string {
	var out []string
	for _, want := range p.wants {
		out = append(out, quoted(p.sample(want)))
	}
	return either(out)
}

func (p *parser) sample(want Dimension) string {
	row := want.row()
	if want == Time && p.interval() {
		return "500 h" // machines fall due by hours, not by minutes
	}
	return withUnit(row.example, symbolOf(row), " ")
}

// interval reports whether running or calendar time is wanted, and not a short time.
func (p *parser) interval() bool { return slices.Contains(p.wants, Calendar) }

// names are the wanted dimensions in words: "torque", "volume, mass or count".
func (p *parser) names() string {
	var out []string
	for _, want := range p.wants {
		out = append(out, want.row().name)
	}
	return either(out)
}

// usual are the units a shop would use of the wanted dimensions.
func (p *parser) usual() []string {
	if len(p.wants) == 1 {
		return p.want.row().usual
	}
	var out []string
	for _, want := range p.wants {
		usual := want.row().usual
		switch {
		case want == Time && p.interval():
			out = append(out, "h")
		case want == Mass || want == Volume:
			out = append(out, usual[:2]...)
		case len(usual) > 0:
			out = append(out, usual[0])
		}
	}
	return out
}

// whole is the text with something else in place of a stretch of it, and of the
// same unit elsewhere: what to write in full.
func (p *parser) whole(start, end int, text string) string {
	before, after := p.text[:start], p.text[end:]
	if replaced := strings.TrimSpace(p.text[start:end]); len([]rune(replaced)) > 1 {
		before, after = strings.ReplaceAll(before, replaced, text), strings.ReplaceAll(after, replaced, text)
	}
	if r, _ := utf8.DecodeLastRuneInString(before); unicode.IsDigit(r) && (letterFollows(text) || strings.HasPrefix(text, "°") && text != "°") {
		text = " " + text
	}
	return quoted(strings.TrimFunc(before+text+after, isSpace))
}

// wholes offers one text for each of some units.
func (p *parser) wholes(start, end int, texts []string) string {
	out := make([]string, len(texts))
	for i, text := range texts {
		out[i] = p.whole(start, end, text)
	}
	return either(out)
}

// withUnit puts a unit behind a figure; only ° follows at once.
func withUnit(figure, symbol, space string) string {
	if symbol == "°" {
		return figure + symbol
	}
	return figure + space + symbol
}
