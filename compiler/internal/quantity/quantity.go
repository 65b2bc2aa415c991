// Package quantity reads and prints amounts as the trade writes them: "35 to 40 N·m",
// "1-3/16 in", "max 0.5 mm", "38 ± 3 N·m", "1 h 15 min". It must not know files,
// findings, keys or machines.
//
// Values are exact rationals. An amount is what was written: its figures, their
// units and how many digits stood there; only print rounds.
package quantity

import "math/big"

// System is a system of units: what a unit belongs to, and what a page is printed in.
type System uint8

// Metric and Inch are systems a page can be printed in, Both prints the author's
// figure and the converted one behind it. Units that both systems share
// (°, min, rpm, V, strokes) are Neutral and never converted.
const (
	Metric System = iota
	Inch
	Both
	Neutral
)

func (s System) String() string { return [...]string{"metric", "inch", "both", "neutral"}[s] }

// Shape is how an amount is bounded.
type Shape uint8

// Exact is one figure, Range from one to another, Tolerance a ± b, AtLeast and
// AtMost have one bound only, About is one figure loosely meant.
const (
	Exact Shape = iota
	Range
	Tolerance
	AtLeast
	AtMost
	About
)

func (s Shape) String() string {
	return [...]string{"exact", "range", "tolerance", "at least", "at most", "about"}[s]
}

// Amount is an amount as a value; nothing changes it once it is made. The zero
// Amount is no amount at all, of Dimension None.
type Amount struct {
	Dimension Dimension
	Shape     Shape
	loose     bool    // a Range that "about" stands before
	Unit      Unit    // of the figure, or of the higher bound
	Written   string  // as the author wrote it, or as it prints where it was worked out
	Dual      *Amount // the same amount as the author wrote it behind in another unit, nil when there is none

	parts  *parts  // nil in the zero Amount; several amounts may have the same
	middle *Amount // the middle of a Tolerance as the author wrote it behind in another unit
}

// parts are the figures of an amount, apart from it so that what holds many amounts stays small.
type parts struct {
	first  figure // the figure, the lower bound of a Range, the middle of a Tolerance
	second figure // the upper bound of a Range, what a Tolerance allows upwards
	third  figure // what a Tolerance allows downwards

	least, most *big.Rat // Lowest and Highest, where they are kept
	kept        bool
}

// all is a copy of the figures, for another amount.
func (a Amount) all() parts {
	if a.parts == nil {
		return parts{}
	}
	return parts{first: a.parts.first, second: a.parts.second, third: a.parts.third}
}

func (a Amount) first() figure {
	if a.parts == nil {
		return figure{}
	}
	return a.parts.first
}

func (a Amount) second() figure {
	if a.parts == nil {
		return figure{}
	}
	return a.parts.second
}

func (a Amount) third() figure {
	if a.parts == nil {
		return figure{}
	}
	return a.parts.third
}

// none reports whether it is no amount at all.
func (a Amount) none() bool { return a.parts == nil || a.parts.first.value == nil }

// figure is one written figure with its unit.
type figure struct {
	value    *big.Rat // in unit; never changed, nil only in a zero figure
	unit     Unit
	text     string // as printed, without the unit: "1-3/16", "0.85", "1 h 15"
	digits   int    // significant figures as written, trailing zeros included
	places   int    // figures after the point as written
	fraction bool   // written as a fraction, and so exact
	compound bool   // written in several units; unit is the last of them
	relative bool   // a tolerance in percent of the middle; unit is %
	made     bool   // worked out, and not what the author wrote
}

func (f figure) base() *big.Rat { return f.unit.ToBase(f.value) }

// Min is the lower bound in the base unit of the dimension, false when unbounded
// below. Exact and About give the figure itself, a Tolerance its middle less what is allowed.
func (a Amount) Min() (*big.Rat, bool) {
	if a.none() || a.Shape == AtMost {
		return nil, false
	}
	if a.Shape == Tolerance {
		return a.first().unit.ToBase(new(big.Rat).Sub(a.first().value, a.allowance(a.third()))), true
	}
	return a.first().base(), true
}

// Max is the upper bound in the base unit of the dimension, false when unbounded above.
func (a Amount) Max() (*big.Rat, bool) {
	switch {
	case a.none() || a.Shape == AtLeast:
		return nil, false
	case a.Shape == Range:
		return a.second().base(), true
	case a.Shape == Tolerance:
		return a.first().unit.ToBase(new(big.Rat).Add(a.first().value, a.allowance(a.second()))), true
	}
	return a.first().base(), true
}

// Lowest is as Min, for a look: it is not to be changed.
func (a Amount) Lowest() (*big.Rat, bool) {
	if a.parts != nil && a.parts.kept {
		return a.parts.least, a.parts.least != nil
	}
	return a.Min()
}

// Highest is as Max, for a look: it is not to be changed.
func (a Amount) Highest() (*big.Rat, bool) {
	if a.parts != nil && a.parts.kept {
		return a.parts.most, a.parts.most != nil
	}
	return a.Max()
}

// keep keeps the bounds of an amount that was read.
func (a Amount) keep() {
	if a.parts != nil {
		a.parts.least, _ = a.Min()
		a.parts.most, _ = a.Max()
		a.parts.kept = true
	}
}

// allowance is a tolerance in the unit of the middle. A tolerance is a difference:
// of a temperature it is taken without the offset.
func (a Amount) allowance(tolerance figure) *big.Rat {
	if tolerance.relative {
		share := new(big.Rat).Quo(tolerance.value, big.NewRat(100, 1))
		return share.Mul(share, new(big.Rat).Abs(a.first().value))
	}
	out := new(big.Rat).Mul(tolerance.value, tolerance.unit.scale.factor)
	return out.Quo(out, a.first().unit.scale.factor)
}
