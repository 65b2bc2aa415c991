package quantity

import "math/big"

// In is the amount in another unit; of another dimension it is the zero Amount. Its
// bounds stay exact, only its figures as printed are rounded: to as many significant
// figures as were written, at least 2 and at most 3, of a length with decimals 5 (a
// value that ends within 3 stays whole), to thousandths below an inch (and in a range that begins there), to the written decimals for a temperature. A
// minimum is not rounded down nor a maximum up, and a range stays one.
// Source: NIST SP 811, 7.9 and appendix B.7, from memory, for keeping the precision
// of the original; the rest is common practice, no source.
func (a Amount) In(unit Unit) Amount { return a.times(one, unit) }

// Share is so many percent of an amount, rounded to two figures, as the scale of a wrench
// is set: what a round on the way holds is no limit. The whole is the amount itself.
func (a Amount) Share(percent int) Amount {
	if percent == 100 || a.none() {
		return a
	}
	low, isLow := a.Min()
	high, isHigh := a.Max()
	share := big.NewRat(int64(percent), 100)
	r := rounding{unit: a.Unit, digits: 2, coarse: true}
	in := func(base *big.Rat) figure {
		out := r.figure(a.Unit.FromBase(new(big.Rat).Mul(base, share)), nearest, 0)
		out.value = shown(out) // in the other system it is the same figure
		return out
	}
	if !isLow || !isHigh {
		return a.times(share, a.Unit)
	}
	out := Amount{Dimension: a.Dimension, Unit: a.Unit, loose: a.loose, parts: &parts{first: in(low)}}
	if high := in(high); high.text != out.parts.first.text {
		out.Shape, out.parts.second = Range, high
	}
	out.Written = out.Plain()
	return out
}

// times is the amount times a factor, in a unit.
func (a Amount) times(factor *big.Rat, unit Unit) Amount {
	if a.none() || !a.Unit.Converts(unit) {
		return Amount{}
	}
	out := Amount{Dimension: a.Dimension, Unit: unit, Shape: a.Shape, loose: a.loose}
	r := a.rounding(unit)
	in := func(base *big.Rat) *big.Rat { return unit.FromBase(new(big.Rat).Mul(base, factor)) }
	switch a.Shape {
	case Range, Tolerance:
		// A tolerance becomes a range: rounded bounds of a ± b could lie outside.
		out.Shape = Range
		low, _ := a.Min()
		high, _ := a.Max()
		lower, upper := r.pair(in(low), in(high))
		out.parts = &parts{first: lower, second: upper}
	case AtLeast:
		out.parts = &parts{first: r.figure(in(a.first().base()), upwards, 0)}
	case AtMost:
		out.parts = &parts{first: r.figure(in(a.first().base()), downwards, 0)}
	default:
		out.parts = &parts{first: r.figure(in(a.first().base()), nearest, 0)}
	}
	out.Written = out.Plain()
	return out
}

// rounding is how converted figures are rounded.
type rounding struct {
	unit   Unit
	digits int  // significant figures
	places int  // behind the point, of temperatures
	coarse bool // three figures are rounded to two
	fine   bool // thousandths of an inch above an inch too, as the other bound has them
}

func (a Amount) rounding(unit Unit) rounding {
	r := rounding{unit: unit, digits: 2}
	most := 3
	if a.Dimension == Length && unit.Symbol != "ft" && unit.Symbol != "m" {
		most = 5 // what was measured to a hundredth of a millimetre would else be off by ten of them
	}
	for _, f := range a.figures() {
		if f.places == 0 {
			r.digits = min(3, max(r.digits, f.digits))
			continue
		}
		r.digits = min(most, max(r.digits, f.digits))
		r.places = min(2, max(r.places, f.places))
	}
	return r
}

func (a Amount) figures() []figure {
	switch a.Shape {
	case Range:
		return []figure{a.first(), a.second()}
	case Tolerance:
		return []figure{a.first(), a.second(), a.third()}
	}
	return []figure{a.first()}
}

// figure rounds a value; extra figures are asked for where a range would close.
func (r rounding) figure(value *big.Rat, d direction, extra int) figure {
	least := 0
	size := new(big.Rat).Abs(value)
	places := placesFor(value, r.digits+extra)
	switch {
	case r.unit.Dimension == Temperature:
		places = r.places + extra
	case r.unit.Symbol == "in" && (size.Cmp(one) < 0 || r.fine):
		// Below an inch the trade reads thousandths; less than ten of them in two figures.
		places = max(3, placesFor(value, 2)) + extra
		if value.Sign() != 0 {
			least = 3
		}
	case !r.coarse && significant(value, 3):
		places = mostPlaces // a value that ends within 3 figures is not rounded at all
	}
	shown := roundPlaces(value, places, d)
	text := decimalText(shown, least)
	digits, behind := counted(text)
	return figure{value: value, unit: r.unit, text: text, digits: digits, places: behind, made: true}
}

// pair rounds two bounds inwards, with as many figures more as keep them apart and
// leave at least half of what lies between.
func (r rounding) pair(low, high *big.Rat) (figure, figure) {
	if low.Cmp(high) == 0 {
		return r.figure(low, nearest, 0), r.figure(high, nearest, 0)
	}
	r.fine = new(big.Rat).Abs(low).Cmp(one) < 0 && high.Cmp(big.NewRat(10, 1)) < 0
	half := new(big.Rat).Sub(high, low)
	half.Quo(half, big.NewRat(2, 1))
	for extra := 0; ; extra++ {
		a, b := r.figure(low, upwards, extra), r.figure(high, downwards, extra)
		left := new(big.Rat).Sub(shown(b), shown(a))
		if extra == mostPlaces || left.Sign() > 0 && left.Cmp(half) >= 0 {
			return a, b
		}
	}
}

// shown is the value as it prints.
func shown(f figure) *big.Rat {
	out, ok := new(big.Rat).SetString(asciiFigures.Replace(f.text))
	if !ok {
		return f.value
	}
	return out
}

// counted is how many significant figures and how many places a decimal text has.
func counted(text string) (digits, places int) {
	point, started := false, false
	for _, r := range text {
		switch {
		case r == '.':
			point = true
		case r >= '0' && r <= '9':
			started = started || r != '0'
			if started {
				digits++
			}
			if point {
				places++
			}
		}
	}
	return max(1, digits), places
}

// partner says in which unit an amount is told to readers of the other system.
type partner struct {
	dimension Dimension
	from      []string // symbols; none for all units of the dimension in the system
	system    System   // of from
	to        []choice // the last whose bound the amount reaches
}

type choice struct {
	from   int64 // hundredths of the base unit, of the higher bound
	symbol string
}

// partners are what a shop has wrenches, rules and measures for; common practice, no source.
var partners = []partner{
	// Torque wrenches change from lbf·in to lbf·ft near 70 lbf·in.
	{dimension: Torque, system: Metric, to: []choice{{0, "lbf·in"}, {800, "lbf·ft"}}},
	{dimension: Torque, system: Inch, to: []choice{{0, "N·m"}}},
	{dimension: Length, system: Metric, from: []string{"m"}, to: []choice{{0, "ft"}}},
	{dimension: Length, system: Metric, to: []choice{{0, "in"}}},
	{dimension: Length, system: Inch, from: []string{"ft"}, to: []choice{{0, "m"}}},
	{dimension: Length, system: Inch, to: []choice{{0, "mm"}}},
	{dimension: Volume, system: Metric, from: []string{"mL", "cm³"}, to: []choice{{0, "US fl oz"}}},
	{dimension: Volume, system: Metric, to: []choice{{0, "US fl oz"}, {25, "US qt"}, {1000, "US gal"}}},
	{dimension: Volume, system: Inch, to: []choice{{0, "mL"}, {90, "L"}}},
	{dimension: Mass, system: Metric, from: []string{"g"}, to: []choice{{0, "oz"}}},
	{dimension: Mass, system: Metric, to: []choice{{0, "lb"}}},
	{dimension: Mass, system: Inch, from: []string{"oz"}, to: []choice{{0, "g"}}},
	{dimension: Mass, system: Inch, to: []choice{{0, "kg"}}},
	{dimension: Pressure, system: Metric, from: []string{"mmHg"}, to: []choice{{0, "inHg"}}},
	{dimension: Pressure, system: Metric, to: []choice{{0, "psi"}}},
	{dimension: Pressure, system: Inch, from: []string{"psi"}, to: []choice{{0, "kPa"}, {10000, "bar"}}},
	{dimension: Pressure, system: Inch, to: []choice{{0, "kPa"}}},
	{dimension: Temperature, system: Metric, to: []choice{{0, "°F"}}},
	{dimension: Temperature, system: Inch, to: []choice{{0, "°C"}}},
	{dimension: TemperatureDifference, system: Metric, to: []choice{{0, "°F"}}},
	{dimension: TemperatureDifference, system: Inch, to: []choice{{0, "°C"}}},
	{dimension: Speed, system: Metric, from: []string{"km/h"}, to: []choice{{0, "mph"}}},
	{dimension: Speed, system: Metric, to: []choice{{0, "ft/min"}}},
	{dimension: Speed, system: Inch, from: []string{"mph"}, to: []choice{{0, "km/h"}}},
	{dimension: Speed, system: Inch, to: []choice{{0, "m/s"}}},
	{dimension: Force, system: Metric, to: []choice{{0, "lbf"}}},
	{dimension: Force, system: Inch, to: []choice{{0, "N"}}},
	{dimension: Flow, system: Metric, from: []string{"m³/h"}, to: []choice{{0, "ft³/min"}}},
	{dimension: Flow, system: Metric, to: []choice{{0, "US gal/min"}}},
	{dimension: Flow, system: Inch, from: []string{"ft³/min"}, to: []choice{{0, "m³/h"}}},
	{dimension: Flow, system: Inch, to: []choice{{0, "L/min"}}},
	{dimension: Power, system: Metric, to: []choice{{0, "hp"}}},
	{dimension: Power, system: Inch, to: []choice{{0, "kW"}}},
	{dimension: Application, system: Metric, to: []choice{{0, "US gal/acre"}}},
	{dimension: Application, system: Inch, to: []choice{{0, "L/ha"}}},
	{dimension: Distance, system: Metric, to: []choice{{0, "mi"}}},
	{dimension: Distance, system: Inch, to: []choice{{0, "km"}}},
}
