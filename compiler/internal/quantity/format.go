package quantity

import (
	"math/big"
	"slices"
	"strings"
)

const noBreak = "\u00a0" // between a figure and its unit, so that no line ends there

var asciiFigures = strings.NewReplacer(noBreak, " ", "−", "-")

// Writing is how a language writes amounts.
type Writing struct {
	To, AtLeast, AtMost, About string            // words between and before figures
	Units                      map[string]string // units that are words, by the English ones: "months"
	Comma                      bool              // decimal comma, in figures that were worked out; what the author wrote stays
}

// English is how amounts are written in English, and in the files.
var English = Writing{To: "to", AtLeast: "min", AtMost: "max", About: "about"}

// Format prints an amount in English; see Writing.Format.
func (a Amount) Format(s System) string { return English.Format(a, s) }

// Also is the figure that Format puts in parentheses, in English; see Writing.Also.
func (a Amount) Also(s System) string { return English.Also(a, s) }

// Plain is the author's figure alone as a file may hold it; see Writing.Plain.
func (a Amount) Plain() string { return English.Plain(a) }

// Format prints an amount for readers of a system: for Both the author's figure and
// the other system's in parentheses, for Metric and Inch that system's alone. A
// dual figure the author wrote wins over a converted one.
func (w Writing) Format(a Amount, s System) string {
	switch s {
	case Both:
		if also := w.Also(a, Both); also != "" {
			return w.print(a) + " (" + also + ")"
		}
	case Metric, Inch:
		return w.print(a.to(s))
	}
	return w.print(a)
}

// Also is the figure that Format puts in parentheses, without them; empty when there is none.
func (w Writing) Also(a Amount, s System) string {
	if s != Both || a.none() {
		return ""
	}
	if a.Dual != nil {
		return w.bare(*a.Dual)
	}
	if unit, ok := a.partner(); ok {
		return w.bare(a.In(unit))
	}
	return ""
}

// Plain is the author's figure alone, with the spelling of units and ranges settled, in plain spaces.
func (w Writing) Plain(a Amount) string { return asciiFigures.Replace(w.print(a)) }

// WorkedOut is the amount with its figures no longer taken for the author's own.
func (a Amount) WorkedOut() Amount {
	figures := a.all()
	figures.first.made, figures.second.made, figures.third.made = true, true, true
	a.parts = &figures
	return a
}

// Shown is the unit in which Format prints the figure that stands first.
func (a Amount) Shown(s System) Unit {
	if s == Both {
		return a.Unit
	}
	return a.to(s).Unit
}

// Bounds are the lower and the upper bound in the unit of Shown, as Format prints them
// first, as decimals with a point; empty where there is none. An amount that is only
// about right has none.
func (a Amount) Bounds(s System) (low, high string) {
	a = a.to(s)
	if a.none() || a.Shape == About || a.loose {
		return "", ""
	}
	lowest, bounded := a.Min()
	highest, topped := a.Max()
	switch a.Shape {
	case Range:
		lowest, highest = a.first().unit.ToBase(shown(a.first())), a.second().unit.ToBase(shown(a.second()))
	case Exact, AtLeast, AtMost:
		base := a.first().unit.ToBase(shown(a.first()))
		lowest, highest = base, base
	}
	if bounded {
		low = asciiFigures.Replace(decimalText(a.Unit.FromBase(lowest), 0))
	}
	if topped {
		high = asciiFigures.Replace(decimalText(a.Unit.FromBase(highest), 0))
	}
	return low, high
}

// to is the amount for readers of one system; itself where there is nothing to convert.
func (a Amount) to(s System) Amount {
	if a.none() || a.Unit.System == s || a.Unit.System == Neutral {
		return a
	}
	if a.Dual != nil && a.Dual.Unit.System == s {
		return *a.Dual
	}
	if unit, ok := a.partner(); ok && unit.System == s {
		return a.In(unit)
	}
	return a
}

// partner is the unit of the other system an amount is told in.
func (a Amount) partner() (Unit, bool) {
	size, bounded := a.Max()
	if !bounded {
		size, bounded = a.Min()
	}
	if !bounded {
		return Unit{}, false
	}
	size.Mul(size.Abs(size), big.NewRat(100, 1))
	for _, p := range partners {
		if p.dimension != a.Dimension || p.system != a.Unit.System || len(p.from) > 0 && !slices.Contains(p.from, a.Unit.Symbol) {
			continue
		}
		symbol := p.to[0].symbol
		for _, c := range p.to {
			if size.Cmp(big.NewRat(c.from, 1)) >= 0 {
				symbol = c.symbol
			}
		}
		return unitOf(p.dimension, symbol), true
	}
	return Unit{}, false
}

// print writes the amount with the word that bounds it.
func (w Writing) print(a Amount) string {
	switch {
	case a.Shape == AtLeast:
		return w.AtLeast + " " + w.bare(a)
	case a.Shape == AtMost:
		return w.AtMost + " " + w.bare(a)
	case a.Shape == About || a.loose:
		return w.About + " " + w.bare(a)
	}
	return w.bare(a)
}

func (w Writing) bare(a Amount) string {
	if a.none() {
		return ""
	}
	switch a.Shape {
	case Range:
		if shareUnit(a.first(), a.second()) {
			return w.figure(a.first()) + " " + w.To + " " + w.withUnit(a.second())
		}
		return w.withUnit(a.first()) + " " + w.To + " " + w.withUnit(a.second())
	case Tolerance:
		return w.bareTolerance(a)
	}
	return w.withUnit(a.first())
}

func (w Writing) bareTolerance(a Amount) string {
	middle := w.figure(a.first())
	if middle != "" && !(shareUnit(a.first(), a.second()) && shareUnit(a.first(), a.third())) {
		middle = w.withUnit(a.first())
	}
	if a.second().value.Cmp(a.third().value) == 0 && a.second().unit.Symbol == a.third().unit.Symbol {
		return strings.TrimSpace(middle + " ± " + w.withUnit(a.second()))
	}
	if shareUnit(a.first(), a.second()) && shareUnit(a.first(), a.third()) {
		return middle + " +" + w.figure(a.second()) + "/−" + w.withUnit(a.third())
	}
	return middle + " +" + w.withUnit(a.second()) + "/−" + w.withUnit(a.third())
}

// shareUnit reports whether one unit behind two figures says it of both.
func shareUnit(a, b figure) bool {
	return a.unit.Symbol == b.unit.Symbol && !a.compound && !b.compound
}

// figure is a figure without its unit; one of several units has the larger ones in it.
func (w Writing) figure(f figure) string {
	text := f.text
	if f.made && w.Comma {
		text = strings.ReplaceAll(text, ".", ",")
	}
	if !f.compound || len(w.Units) == 0 {
		return text
	}
	words := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\u00a0' })
	for i, word := range words {
		words[i] = w.unit(word)
	}
	return strings.Join(words, noBreak)
}

func (w Writing) unit(symbol string) string {
	if word := w.Units[symbol]; word != "" {
		return word
	}
	return symbol
}

func (w Writing) withUnit(f figure) string {
	return withUnit(w.figure(f), w.unit(f.unit.called(f.value)), noBreak)
}
