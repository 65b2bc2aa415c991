package quantity

import (
	"math/big"
	"slices"
	"strings"
)

// Unit is a unit as this package prints it.
type Unit struct {
	Name        string // newton metre
	Symbol      string // N·m, lbf·ft, US qt; the plural of units that are words
	Dimension   Dimension
	System      System
	Approximate bool // the factor is a mean: months and years

	scale *scale // what else it has, apart, so that what holds many amounts stays small; nil in the zero Unit
}

type scale struct {
	singular       string   // the symbol for one and less, where it is a word
	factor, offset *big.Rat // base = factor · value + offset
}

// Factor is what one of the unit is in the base unit, without any offset.
func (u Unit) Factor() *big.Rat {
	if u.scale == nil {
		return new(big.Rat)
	}
	return new(big.Rat).Set(u.scale.factor)
}

// ToBase turns a value in the unit into the base unit of its dimension.
func (u Unit) ToBase(value *big.Rat) *big.Rat {
	out := new(big.Rat)
	if u.scale == nil {
		return out
	}
	out.Mul(value, u.scale.factor)
	if u.scale.offset != nil {
		out.Add(out, u.scale.offset)
	}
	return out
}

// FromBase turns a value in the base unit of the dimension into the unit.
func (u Unit) FromBase(value *big.Rat) *big.Rat {
	out := new(big.Rat).Set(value)
	if u.scale == nil {
		return out
	}
	if u.scale.offset != nil {
		out.Sub(out, u.scale.offset)
	}
	return out.Quo(out, u.scale.factor)
}

// Converts reports whether an amount in one unit can be told in the other. Things
// that are counted do not turn into each other.
func (u Unit) Converts(other Unit) bool {
	return u.Dimension == other.Dimension && u.Dimension != None && (u.Dimension != Count || u.Symbol == other.Symbol)
}

// called is the symbol as it stands behind a value.
func (u Unit) called(value *big.Rat) string {
	if u.scale != nil && u.scale.singular != "" && value != nil && new(big.Rat).Abs(value).Cmp(one) <= 0 {
		return u.scale.singular
	}
	return u.Symbol
}

var one = big.NewRat(1, 1)

// FindUnit finds a unit by its symbol or a spelling of it; of a symbol that two
// dimensions share (°C, turns) the first of the table.
func FindUnit(symbol string) (Unit, bool) {
	for _, unit := range units {
		if unit.Symbol == symbol {
			return unit, true
		}
	}
	found := spellings[keyOf(symbol)]
	if len(found) == 0 {
		return Unit{}, false
	}
	return found[0].unit, true
}

// Units are the units of a dimension, in the order of the table.
func Units(d Dimension) []Unit {
	var out []Unit
	for _, unit := range units {
		if unit.Dimension == d {
			out = append(out, unit)
		}
	}
	return out
}

func unitOf(d Dimension, symbol string) Unit {
	i := slices.IndexFunc(units, func(u Unit) bool { return u.Dimension == d && u.Symbol == symbol })
	return units[i]
}

// spelling is one way to write a unit. An old one is read with a warning.
type spelling struct {
	unit Unit
	old  bool
}

var (
	units     = makeUnits()
	spellings = makeSpellings()
)

func makeUnits() []Unit {
	out := make([]Unit, len(unitTable))
	for i, row := range unitTable {
		unit := Unit{Name: row.name, Symbol: row.symbol, Dimension: row.dimension, System: row.system,
			Approximate: row.approximate, scale: &scale{singular: row.singular}}
		unit.scale.factor, _ = new(big.Rat).SetString(row.factor)
		if row.offset != "" {
			unit.scale.offset, _ = new(big.Rat).SetString(row.offset)
		}
		out[i] = unit
	}
	return out
}

func makeSpellings() map[string][]spelling {
	out := map[string][]spelling{}
	add := func(text string, s spelling) {
		key := keyOf(text)
		for _, other := range out[key] {
			if other.unit.Symbol == s.unit.Symbol && other.unit.Dimension == s.unit.Dimension {
				return
			}
		}
		out[key] = append(out[key], s)
	}
	for i, row := range unitTable {
		add(row.symbol, spelling{units[i], false})
		for _, text := range strings.Split(row.spellings, "|") {
			if text != "" {
				add(text, spelling{units[i], false})
			}
		}
		for _, text := range strings.Split(row.old, "|") {
			if text != "" {
				add(text, spelling{units[i], true})
			}
		}
	}
	return out
}
