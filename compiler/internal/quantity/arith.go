package quantity

import (
	"cmp"
	"math/big"
)

// Scale is the amount n times over; less than none counts as none. A dual figure
// is left out, since its rounding would grow.
func (a Amount) Scale(n int) Amount {
	if a.none() {
		return a
	}
	times := new(big.Rat).SetInt64(int64(max(n, 0)))
	out, figures := a, a.all()
	out.Dual, out.parts = nil, &figures
	figures.first = figures.first.times(times)
	if figures.second.value != nil && !figures.second.relative {
		figures.second = figures.second.times(times)
	}
	if figures.third.value != nil && !figures.third.relative {
		figures.third = figures.third.times(times)
	}
	out.Unit = out.figures()[0].unit
	if out.Shape == Range {
		out.Unit = out.second().unit
	}
	out.Written = out.Plain()
	return out
}

func (f figure) times(n *big.Rat) figure {
	out := f
	out.value = new(big.Rat).Mul(f.value, n)
	if f.text != "" {
		out.write()
	}
	return out
}

// larger is the unit a compound is told in first: 225 min is 3 h 45 min.
var larger = map[string]string{"s": "min", "min": "h", "in": "ft", "oz": "lb", "months": "years", "days": "weeks"}

// write makes the text of a figure that was worked out.
func (f *figure) write() {
	f.made = true
	if f.compound && larger[f.unit.Symbol] != "" {
		f.writeCompound()
		return
	}
	f.compound = false
	switch {
	case f.fraction && f.value.Sign() >= 0 && f.value.Denom().Cmp(big.NewInt(64)) <= 0:
		f.text = fractionText(f.value)
		f.digits, f.places = fractionDigits, 0
		return
	case significant(f.value, 15):
		f.text = decimalText(f.value, 0)
	default:
		f.text = decimalText(roundPlaces(f.value, placesFor(f.value, 4), nearest), 0)
	}
	f.fraction = false
	f.digits, f.places = counted(f.text)
}

func (f *figure) writeCompound() {
	upper := unitOf(f.unit.Dimension, larger[f.unit.Symbol])
	inLarger := upper.FromBase(f.base())
	whole := roundPlaces(inLarger, 0, downwards)
	rest := new(big.Rat).Sub(inLarger, whole)
	small := figure{value: f.unit.FromBase(upper.ToBase(rest)), unit: f.unit, fraction: f.fraction}
	small.write()
	switch {
	case rest.Sign() == 0:
		*f = figure{value: whole, unit: upper}
		f.write()
	case whole.Sign() == 0:
		*f = small
	default:
		head := withUnit(decimalText(whole, 0), upper.called(whole), noBreak)
		f.text = head + " " + small.text
		digits, _ := counted(decimalText(whole, 0))
		f.digits, f.places = digits+small.digits, small.places
	}
}

// Add is two amounts together, in the unit of the first. Ranges add bound by bound;
// what is unbounded on one side stays so. It is false for amounts that do not add: of
// different dimensions, temperatures, different things counted, or unbounded on both sides.
func (a Amount) Add(b Amount) (Amount, bool) {
	if a.none() || !a.Unit.Converts(b.Unit) || a.Dimension == Temperature {
		return Amount{}, false
	}
	low, bounded := sum(a.Min, b.Min)
	high, capped := sum(a.Max, b.Max)
	out := Amount{Dimension: a.Dimension, Unit: a.Unit, loose: a.loose || b.loose}
	switch {
	case !bounded && !capped:
		return Amount{}, false
	case !bounded:
		out.Shape, out.parts = AtMost, &parts{first: a.result(b, high)}
	case !capped:
		out.Shape, out.parts = AtLeast, &parts{first: a.result(b, low)}
	case low.Cmp(high) < 0:
		out.Shape, out.parts = Range, &parts{first: a.result(b, low), second: a.result(b, high)}
		out.loose = out.loose || a.Shape == About || b.Shape == About
	default:
		out.parts = &parts{first: a.result(b, low)}
		if a.Shape == About || b.Shape == About {
			out.Shape = About
		}
	}
	out.loose = out.loose && out.Shape == Range
	out.Unit = out.figures()[len(out.figures())-1].unit
	out.Written = out.Plain()
	return out, true
}

func sum(a, b func() (*big.Rat, bool)) (*big.Rat, bool) {
	x, okX := a()
	y, okY := b()
	if !okX || !okY {
		return nil, false
	}
	return x.Add(x, y), true
}

// result is the figure of a sum, written as those of the first amount are.
func (a Amount) result(b Amount, base *big.Rat) figure {
	f := figure{value: a.Unit.FromBase(base), unit: a.Unit, fraction: a.first().fraction && b.first().fraction, compound: a.first().compound}
	f.write()
	return f
}

// Compare orders two amounts by their upper bounds, or by the lower one where there is no
// upper; it is false where they do not compare.
func (a Amount) Compare(b Amount) (int, bool) {
	if a.none() || !a.Unit.Converts(b.Unit) {
		return 0, false
	}
	x, y := a.reach(), b.reach()
	return cmp.Compare(x.Cmp(y), 0), true
}

func (a Amount) reach() *big.Rat {
	if most, ok := a.Max(); ok {
		return most
	}
	least, _ := a.Min()
	return least
}
