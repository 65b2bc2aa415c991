package quantity

import (
	"math/big"
	"slices"
	"strings"
)

const noBreak = "\u00a0" // between a figure and its unit, so that no line ends there

var asciiFigures = strings.NewReplacer(noBreak, " ", "−", "-")

// Format prints an amount for readers of a system: for Both the author's figure and
// the other system's in parentheses, for Metric and Inch that system's alone. A
// dual figure the author wrote wins over a converted one.
func (a Amount) Format(s System) string {
	switch s {
	case Both:
		if also := a.Also(Both); also != "" {
			return a.print() + " (" + also + ")"
		}
	case Metric, Inch:
		return a.to(s).print()
	}
	return a.print()
}

// Also is the figure that Format puts in parentheses, without them; empty when there is none.
func (a Amount) Also(s System) string {
	if s != Both || a.first.value == nil {
		return ""
	}
	if a.Dual != nil {
		return a.Dual.bare()
	}
	if unit, ok := a.partner(); ok {
		return a.In(unit).bare()
	}
	return ""
}

// Plain is the author's figure alone, with the spelling of units and ranges settled, in plain spaces.
func (a Amount) Plain() string { return asciiFigures.Replace(a.print()) }

// Shown is the unit in which Format prints the figure that stands first.
func (a Amount) Shown(s System) Unit {
	if s == Both {
		return a.Unit
	}
	return a.to(s).Unit
}

// to is the amount for readers of one system; itself where there is nothing to convert.
func (a Amount) to(s System) Amount {
	if a.first.value == nil || a.Unit.System == s || a.Unit.System == Neutral {
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
func (a Amount) print() string {
	switch {
	case a.Shape == AtLeast:
		return "min " + a.bare()
	case a.Shape == AtMost:
		return "max " + a.bare()
	case a.Shape == About || a.loose:
		return "about " + a.bare()
	}
	return a.bare()
}

func (a Amount) bare() string {
	if a.first.value == nil {
		return ""
	}
	switch a.Shape {
	case Range:
		if shareUnit(a.first, a.second) {
			return a.first.text + " to " + a.second.withUnit()
		}
		return a.first.withUnit() + " to " + a.second.withUnit()
	case Tolerance:
		return a.bareTolerance()
	}
	return a.first.withUnit()
}

func (a Amount) bareTolerance() string {
	middle := a.first.text
	if middle != "" && !(shareUnit(a.first, a.second) && shareUnit(a.first, a.third)) {
		middle = a.first.withUnit()
	}
	if a.second.value.Cmp(a.third.value) == 0 && a.second.unit.Symbol == a.third.unit.Symbol {
		return strings.TrimSpace(middle + " ± " + a.second.withUnit())
	}
	if shareUnit(a.first, a.second) && shareUnit(a.first, a.third) {
		return middle + " +" + a.second.text + "/−" + a.third.withUnit()
	}
	return middle + " +" + a.second.withUnit() + "/−" + a.third.withUnit()
}

// shareUnit reports whether one unit behind two figures says it of both.
func shareUnit(a, b figure) bool {
	return a.unit.Symbol == b.unit.Symbol && !a.compound && !b.compound
}

func (f figure) withUnit() string { return withUnit(f.text, f.unit.called(f.value), noBreak) }
