package quantity

import (
	"cmp"
	"math/big"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Parse reads an amount of a wanted dimension, or of one of several, the likeliest
// first; Any takes the dimension of whatever unit is written. Each fault is one
// problem, in the order of the text. The amount is zero when one of them is more
// than a warning.
func Parse(text string, want Dimension, or ...Dimension) (Amount, []Problem) {
	wants := append([]Dimension{want}, or...)
	first, problems := parse(text, want, wants)
	for _, other := range or {
		if len(problems) == 0 || problems[0].Kind == Ambiguous {
			break // what may be meant in one dimension is not settled by another: "8 oz"
		}
		if amount, wrong := parse(text, other, wants); nearer(wrong, problems) {
			first, problems = amount, wrong
		}
	}
	return first, problems
}

// grade reports whether a grade, a thread or a class stands where an amount is wanted, and says so.
func (p *parser) grade(trimmed string) bool {
	what := gradeOf(clip(trimmed, 48), p.want)
	if what != "" {
		p.fail(Malformed, p.pos, p.pos+len(trimmed), quoted(trimmed)+" is "+what+", not an amount", p.writeOne())
	}
	return what != ""
}

// nearer prefers a reading with no unit of a wrong dimension, then one that was
// read, then the one with the fewest faults.
func nearer(a, b []Problem) bool {
	rank := func(list []Problem) int {
		out := len(list)
		for _, problem := range list {
			if problem.Kind == Wrong {
				out += 10_000
			}
			if !problem.Warning {
				out += 100
			}
		}
		return out
	}
	return rank(a) < rank(b)
}

func parse(text string, want Dimension, wants []Dimension) (Amount, []Problem) {
	p := &parser{text: text, want: want, wants: wants}
	p.skip()
	trimmed := strings.TrimRightFunc(text[p.pos:], isSpace)
	if trimmed == "" {
		p.fail(Malformed, 0, len(text), "the amount is empty", p.writeOne())
		return Amount{}, p.problems
	}
	if want == Any && p.grade(trimmed) { // as an amount, 10W-40 is a range of watts
		return Amount{}, p.problems
	}
	if m := clockTime.FindStringSubmatch(trimmed); m != nil && want == Time {
		meant := trimZeros(m[1]) + " h " + trimZeros(m[2]) + " min"
		p.failWith(Malformed, p.pos, p.pos+len(trimmed), quoted(trimmed)+" is a time of the clock, or hours and minutes", "Write "+quoted(meant)+" if hours and minutes are meant.", meant)
		return Amount{}, p.problems
	}
	begin := p.pos
	amount, ok := p.amount()
	end := p.pos
	if ok || p.unitless {
		p.dual(&amount)
	}
	if ok && amount.Dual == nil {
		p.unlikely(amount, begin, end)
	}
	p.finish(ok)
	slices.SortStableFunc(p.problems, func(a, b Problem) int { return cmp.Compare(a.Start, b.Start) })
	if p.failed {
		if want != Any {
			q := &parser{text: text, pos: spaces(text), want: want, wants: wants}
			if q.grade(trimmed) {
				return Amount{}, q.problems
			}
		}
		return Amount{}, p.problems
	}
	amount.Written = trimmed
	amount.keep()
	return amount, p.problems
}

// parser goes through the text once. A fault does not stop it where it can see
// what was meant, so that two faults are both told.
type parser struct {
	text     string
	pos      int
	want     Dimension   // of Any, the dimension once a unit was read
	wants    []Dimension // every dimension that would do
	problems []Problem
	failed   bool
	unitless bool            // a figure without a unit was reported
	told     map[string]bool // spellings of units already reported
}

func (p *parser) rest() string { return p.text[p.pos:] }

func (p *parser) skip() { p.pos += spaces(p.rest()) }

func (p *parser) add(problem Problem) {
	p.problems = append(p.problems, problem)
	p.failed = p.failed || !problem.Warning
}

func (p *parser) fail(kind Kind, start, end int, message, help string) {
	p.failWith(kind, start, end, message, help, "")
}

func (p *parser) failWith(kind Kind, start, end int, message, help, replace string) {
	p.add(Problem{Kind: kind, Start: start, End: end, Message: message, Help: help, Replace: replace})
}

func (p *parser) warn(kind Kind, start, end int, message, help, replace string, certain bool) {
	p.add(Problem{Kind: kind, Start: start, End: end, Message: message, Help: help, Replace: replace, Certain: certain, Warning: true})
}

// amount reads everything but a dual figure.
func (p *parser) amount() (Amount, bool) {
	p.skip()
	begin := p.pos
	word, prefixed := readShape(p.rest(), prefixes)
	if prefixed {
		p.pos += len(word.word)
		if r, size := utf8.DecodeRuneInString(p.rest()); (r == '.' && !digitAt(p.rest(), 1)) || r == ':' {
			p.pos += size
		}
		p.skip()
	}
	separator := p.opening()
	if p.sign("±", "+/-", "+-", "+/−") {
		return p.aroundNothing(begin, prefixed)
	}
	first, ok := p.term()
	if !ok {
		p.noFigure(begin)
		return Amount{}, false
	}
	a, ok := p.bounded(first, separator)
	if !ok {
		return Amount{}, false
	}
	if suffix, found := p.suffix(); found && !prefixed {
		word, prefixed = suffix, true
	}
	if prefixed && !a.shaped(word.shape) {
		p.fail(Malformed, begin, p.pos, quoted(p.text[begin:p.pos])+" bounds what already has two bounds", "Leave out "+quoted(word.word)+", or write one figure.")
		return Amount{}, false
	}
	return a, true
}

// shaped gives an amount the shape a word asks for, if it can have it.
func (a *Amount) shaped(shape Shape) bool {
	switch {
	case a.Shape == Exact:
		a.Shape = shape
	case shape == About && a.Shape == Range:
		a.loose = true
	default:
		return false
	}
	return true
}

// opening reads "from" and "between"; it returns the word that must follow the first figure.
func (p *parser) opening() string {
	for _, row := range [...][2]string{{"from", "to"}, {"between", "and"}} {
		if hasWord(p.rest(), row[0]) {
			p.pos += len(row[0])
			p.skip()
			return row[1]
		}
	}
	return ""
}

// bounded reads what follows the first figure: the other bound, a tolerance, or nothing.
func (p *parser) bounded(first term, separator string) (Amount, bool) {
	at := p.pos
	if a, found, ok := p.tolerance(first); found {
		return a, ok
	}
	p.pos = at
	if p.separator(separator) {
		if second, ok := p.term(); ok {
			return p.span(first, second)
		}
		p.pos = at
	}
	if !p.unify(&first) {
		return Amount{}, false
	}
	p.checkValue(first)
	return Amount{Dimension: first.unit.Dimension, Unit: first.unit, parts: &parts{first: first.figure()}}, true
}

func (p *parser) separator(only string) bool {
	p.skip()
	if only != "" {
		if hasWord(p.rest(), only) {
			p.pos += len(only)
			p.skip()
			return true
		}
		return false
	}
	for _, word := range separators {
		if hasWord(p.rest(), word) {
			p.pos += len(word)
			p.skip()
			return true
		}
	}
	return false
}

// span makes a range of two figures.
func (p *parser) span(first, second term) (Amount, bool) {
	if !p.unify(&first, &second) {
		return Amount{}, false
	}
	p.checkValue(first)
	p.checkValue(second)
	a := Amount{Dimension: second.unit.Dimension, Unit: second.unit, Shape: Range, parts: &parts{first: first.figure(), second: second.figure()}}
	if !first.unit.Converts(second.unit) {
		p.fail(Malformed, first.start, second.end, quoted(p.text[first.start:second.end])+" counts two different things", "Write both figures in one unit.")
		return a, false
	}
	if a.first().base().Cmp(a.second().base()) <= 0 {
		return a, true
	}
	swapped := p.text[second.start:second.end] + p.text[first.end:second.start] + p.text[first.start:first.end]
	if first.unit == second.unit && !first.compound && !second.compound {
		swapped = p.text[second.start:second.numberEnd] + p.text[first.numberEnd:second.start] + p.text[first.start:first.numberEnd] + p.text[second.numberEnd:second.end]
	}
	help := "Write " + quoted(swapped) + ", if both figures are right."
	if !first.fraction && second.fraction {
		help += " One and a fraction is written with a hyphen and no spaces: \"1-3/16\"."
	}
	p.failWith(Reversed, first.start, second.end, quoted(p.text[first.start:second.end])+" runs from high to low", help, swapped)
	return a, true
}

// A figure is refused beyond these, in base units: a trillion metres is a slip.
var largest, smallest = powerOfTen(12), powerOfTen(-12)

// checkValue refuses a figure that cannot be one of its dimension.
func (p *parser) checkValue(t term) bool {
	row := t.unit.Dimension.row()
	switch {
	case beyond(new(big.Rat).Mul(t.value, t.unit.scale.factor)):
		p.tooFar(t.start, t.end)
	case t.value.Sign() < 0 && !row.negative:
		p.fail(Malformed, t.start, t.numberEnd, quoted(p.text[t.start:t.numberEnd])+" is below zero, and "+row.article+" "+row.name+" is not", "Write the figure without the sign.")
	default:
		return true
	}
	return false
}

func beyond(value *big.Rat) bool {
	size := new(big.Rat).Abs(value)
	return size.Cmp(largest) > 0 || size.Sign() > 0 && size.Cmp(smallest) < 0
}

func (p *parser) tooFar(start, end int) {
	p.fail(Malformed, start, end, quoted(p.text[start:end])+" is beyond anything a shop measures", "Write a figure that can be set or measured.")
}

func (p *parser) suffix() (shapeWord, bool) {
	at := p.pos
	p.skip()
	word, found := readShape(p.rest(), suffixes)
	if !found {
		p.pos = at
		return word, false
	}
	p.pos = pastDot(p.text, p.pos+len(word.word))
	return word, true
}

func (p *parser) noFigure(begin int) {
	end := len(strings.TrimRightFunc(p.text, isSpace))
	if strings.HasPrefix(p.rest(), "#") {
		p.hash(p.pos)
		return
	}
	if begin >= end {
		begin = spaces(p.text)
	}
	// Words before a figure are told alone.
	if at := strings.IndexAny(clip(p.text[begin:end], 64), "0123456789"); at > 0 {
		if words := strings.TrimRightFunc(p.text[begin:begin+at], isSpace); words != "" {
			p.fail(Malformed, begin, begin+len(words), quoted(words)+" does not belong to the amount", alone)
			return
		}
	}
	p.fail(Malformed, begin, end, quoted(p.text[begin:end])+" has no figure", p.writeOne())
}

const alone = "Write the amount alone; words belong into the text."

func (p *parser) hash(at int) {
	p.fail(Malformed, at, at+1, "\"#\" is pounds, a screw gauge or a grease grade", p.writeOne())
}

// finish reports what stands behind the amount.
func (p *parser) finish(read bool) {
	p.skip()
	left := strings.TrimRightFunc(p.rest(), isSpace)
	if left == "" || p.failed && !(read && !p.unitless) {
		return
	}
	help := alone
	if p.interval() && (hasWord(left, "or") || hasWord(left, "and") || strings.HasPrefix(left, "/") || strings.HasPrefix(left, ",") || strings.HasPrefix(left, ";")) {
		help = "Write each of them as a text of its own in a list, such as [\"250 h\", \"12 months\"]; whichever comes first is due."
	} else if r, _ := utf8.DecodeRuneInString(left); unicode.IsDigit(r) {
		help = "Write a range with \"to\", and thousands in groups of three."
	}
	p.fail(Malformed, p.pos, p.pos+len(left), quoted(left)+" does not belong to the amount", help)
}
