package quantity

import (
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func rat(t *testing.T, text string) *big.Rat {
	t.Helper()
	value, ok := new(big.Rat).SetString(strings.ReplaceAll(text, " ", ""))
	require.True(t, ok, text)
	return value
}

func find(t *testing.T, d Dimension, symbol string) Unit {
	t.Helper()
	for _, unit := range Units(d) {
		if unit.Symbol == symbol {
			return unit
		}
	}
	require.Fail(t, "no such unit", symbol)
	return Unit{}
}

// factor is one of a unit in another.
func factor(from, to Unit) *big.Rat { return new(big.Rat).Quo(from.Factor(), to.Factor()) }

// Printed values: NIST SP 811 (2008), appendix B.8, and NIST Handbook 44, appendix C,
// for the gallons, quarts and pints. A value is right when it rounds to the printed one.
func TestFactorsRoundToThePrintedOnes(t *testing.T) {
	for _, row := range []struct {
		dimension         Dimension
		from, to, printed string
	}{
		{Force, "lbf", "N", "4.448222"},
		{Force, "kgf", "N", "9.80665"},
		{Torque, "lbf·ft", "N·m", "1.355818"},
		{Torque, "lbf·in", "N·m", "0.1129848"},
		{Torque, "ozf·in", "N·m", "0.007061552"},
		{Torque, "kgf·m", "N·m", "9.80665"},
		{Torque, "kgf·cm", "N·m", "0.0980665"},
		{Pressure, "psi", "kPa", "6.894757"},
		{Pressure, "bar", "kPa", "100"},
		{Pressure, "kgf/cm²", "kPa", "98.0665"},
		{Pressure, "atm", "kPa", "101.325"},
		{Pressure, "inHg", "kPa", "3.386389"},
		{Pressure, "mmHg", "kPa", "0.1333224"},
		{Pressure, "inH₂O", "kPa", "0.2490889"},
		{Volume, "US fl oz", "mL", "29.57353"},
		{Volume, "US pt", "mL", "473.1765"},
		{Volume, "US qt", "mL", "946.3529"},
		{Volume, "US gal", "L", "3.785412"},
		{Volume, "imp fl oz", "mL", "28.41306"},
		{Volume, "imp gal", "L", "4.54609"},
		{Volume, "in³", "mL", "16.38706"},
		{Length, "in", "mm", "25.4"},
		{Length, "mil", "mm", "0.0254"},
		{Length, "thou", "mm", "0.0254"},
		{Length, "ft", "m", "0.3048"},
		{Mass, "lb", "kg", "0.4535924"},
		{Mass, "oz", "g", "28.34952"},
		{Power, "hp", "W", "745.6999"},
		{Power, "PS", "W", "735.4988"},
		{Speed, "ft/min", "m/s", "0.00508"},
		{Speed, "mph", "m/s", "0.44704"},
		{Speed, "km/h", "m/s", "0.2777778"},
		{Distance, "mi", "km", "1.609344"},
		{Viscosity, "cSt", "mm²/s", "1"},
		{Application, "US gal/acre", "L/ha", "9.353956"},
	} {
		got := factor(find(t, row.dimension, row.from), find(t, row.dimension, row.to))
		_, places, _ := strings.Cut(row.printed, ".")
		assert.Equal(t, row.printed, got.FloatString(len(places)), "%s in %s", row.from, row.to)
	}
}

// The longer figures are exact products of the definitions in SP 811 and Handbook 44.
func TestFactorsAreTheProductsOfTheDefinitions(t *testing.T) {
	inch, pound, gravity := rat(t, "0.0254"), rat(t, "0.45359237"), rat(t, "9.80665")
	times := func(values ...*big.Rat) *big.Rat {
		out := big.NewRat(1, 1)
		for _, v := range values {
			out.Mul(out, v)
		}
		return out
	}
	over := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }
	force := times(pound, gravity)
	foot := times(inch, rat(t, "12"))
	usGallon := times(rat(t, "231"), inch, inch, inch, rat(t, "1000"))
	acre := times(rat(t, "43560"), foot, foot)
	for _, row := range []struct {
		dimension Dimension
		symbol    string
		want      *big.Rat
	}{
		{Force, "lbf", force},
		{Torque, "lbf·ft", times(force, foot)},
		{Torque, "lbf·in", times(force, inch)},
		{Torque, "ozf·in", over(times(force, inch), rat(t, "16"))},
		{Torque, "kgf·m", gravity},
		{Pressure, "psi", over(over(force, times(inch, inch)), rat(t, "1000"))},
		{Pressure, "kgf/cm²", over(gravity, rat(t, "0.1"))},
		{Pressure, "inHg", times(rat(t, "13.5951"), gravity, inch)},
		{Pressure, "inH₂O", times(gravity, inch)},
		{Volume, "in³", times(inch, inch, inch, rat(t, "1000"))},
		{Volume, "US gal", usGallon},
		{Volume, "US fl oz", over(usGallon, rat(t, "128"))},
		{Volume, "imp fl oz", over(rat(t, "4.54609"), rat(t, "160"))},
		{Mass, "oz", over(pound, rat(t, "16"))},
		{Power, "hp", times(rat(t, "550"), force, foot)},
		{Power, "PS", times(rat(t, "75"), gravity)},
		{Flow, "ft³/min", times(foot, foot, foot, rat(t, "1000"))},
		{Application, "US gal/acre", over(times(usGallon, rat(t, "10000")), acre)},
		{Application, "imp gal/acre", over(rat(t, "45460.9"), acre)},
		{Speed, "mph", over(times(rat(t, "5280"), foot), rat(t, "3600"))},
		{Distance, "mi", over(times(rat(t, "5280"), foot), rat(t, "1000"))},
		{Calendar, "years", over(rat(t, "146097"), rat(t, "400"))},
		{Calendar, "months", over(rat(t, "146097"), rat(t, "4800"))},
	} {
		assert.Zero(t, row.want.Cmp(find(t, row.dimension, row.symbol).Factor()), "%s is %s", row.symbol, row.want.FloatString(16))
	}
}

// Handbook 44, appendix C: how the units of a system divide each other.
func TestUnitsDivideEachOther(t *testing.T) {
	for _, row := range []struct {
		dimension Dimension
		n         int64
		small, in string
	}{
		{Torque, 12, "lbf·in", "lbf·ft"}, {Torque, 16, "ozf·in", "lbf·in"}, {Torque, 100, "kgf·cm", "kgf·m"},
		{Volume, 128, "US fl oz", "US gal"}, {Volume, 160, "imp fl oz", "imp gal"},
		{Volume, 16, "US fl oz", "US pt"}, {Volume, 20, "imp fl oz", "imp pt"},
		{Volume, 2, "US pt", "US qt"}, {Volume, 4, "US qt", "US gal"}, {Volume, 231, "in³", "US gal"},
		{Volume, 2, "imp pt", "imp qt"}, {Volume, 4, "imp qt", "imp gal"},
		{Length, 12, "in", "ft"}, {Length, 1000, "thou", "in"}, {Mass, 16, "oz", "lb"},
		{Time, 60, "min", "h"}, {Calendar, 12, "months", "years"}, {Angle, 6, "flats", "turns"},
	} {
		assert.Zero(t, big.NewRat(row.n, 1).Cmp(factor(find(t, row.dimension, row.in), find(t, row.dimension, row.small))), "%d %s in %s", row.n, row.small, row.in)
	}
	ounces := factor(find(t, Volume, "imp fl oz"), find(t, Volume, "US fl oz"))
	assert.Equal(t, "0.960759940404", ounces.FloatString(12))
	gallons := factor(find(t, Volume, "imp gal"), find(t, Volume, "US gal"))
	assert.Equal(t, "1.200949926", gallons.FloatString(9), "1.200 949 925 504… of 4.546 09 / 3.785 411 784, rounded")
}

// NIST SP 811, appendix B.8: t/°C = (t/°F − 32)/1.8, and t/°C = T/K − 273.15.
func TestTemperatureFixedPoints(t *testing.T) {
	for _, row := range []struct{ from, value, celsius string }{
		{"°F", "212", "100"}, {"°F", "32", "0"}, {"°F", "-40", "-40"}, {"K", "273.15", "0"}, {"K", "0", "-273.15"}, {"°F", "180", "740/9"},
	} {
		unit := find(t, Temperature, row.from)
		got := unit.ToBase(rat(t, row.value))
		assert.Zero(t, rat(t, row.celsius).Cmp(got), "%s %s is %s °C", row.value, row.from, got.FloatString(4))
		assert.Zero(t, rat(t, row.value).Cmp(unit.FromBase(got)), "and back")
	}
	difference, problems := Parse("18 °F", TemperatureDifference)
	require.Empty(t, problems)
	least, _ := difference.Min()
	assert.Zero(t, big.NewRat(10, 1).Cmp(least), "a difference of 18 °F is 10 °C")
}

func TestTheTableHoldsTogether(t *testing.T) {
	seen := map[string]bool{}
	for i, row := range unitTable {
		unit := units[i]
		require.NotNil(t, unit.scale.factor, row.symbol)
		assert.Positive(t, unit.scale.factor.Sign(), row.symbol)
		if row.offset != "" {
			require.NotNil(t, unit.scale.offset, row.symbol)
		}
		id := row.dimension.String() + row.symbol
		assert.False(t, seen[id], "%s stands twice", id)
		seen[id] = true
		all := row.symbol + "|" + row.singular + "|" + row.spellings + "|" + row.old
		for text := range strings.SplitSeq(all, "|") {
			if text == "" {
				continue
			}
			assert.LessOrEqual(t, len([]rune(keyOf(text))), longestKey, text)
			var inDimension []string
			for _, s := range spellings[keyOf(text)] {
				if s.unit.Dimension == row.dimension {
					inDimension = append(inDimension, s.unit.Symbol)
				}
			}
			assert.Equal(t, []string{row.symbol}, inDimension, "%q is one unit of %s", text, row.dimension)
		}
	}
	for d := Torque; d < Any; d++ {
		assert.NotEmpty(t, Units(d), d.String())
		for _, symbol := range d.row().usual {
			find(t, d, symbol)
		}
		assert.NotEmpty(t, d.row().example, d.String())
	}
	for _, trap := range traps {
		for _, m := range trap.meant {
			find(t, m.dimension, m.symbol)
		}
	}
	for _, p := range partners {
		for _, c := range p.to {
			to := find(t, p.dimension, c.symbol)
			assert.NotEqual(t, p.system, to.System, "%s is of the other system", c.symbol)
		}
		for _, symbol := range p.from {
			assert.Equal(t, p.system, find(t, p.dimension, symbol).System)
		}
	}
}

func TestEveryMetricAndInchUnitHasAPartner(t *testing.T) {
	alone := map[string]bool{}
	for _, unit := range units {
		if unit.System == Neutral {
			continue
		}
		a := Amount{Dimension: unit.Dimension, Unit: unit, parts: &parts{first: figure{value: big.NewRat(40, 1), unit: unit, text: "40", digits: 2}}}
		if _, ok := a.partner(); !ok {
			alone[unit.Symbol] = true
		}
	}
	assert.Empty(t, alone)
}

func TestFindUnit(t *testing.T) {
	for text, want := range map[string]string{"N·m": "N·m", "Nm": "N·m", "ft-lb": "lbf·ft", "US qt": "US qt", "qt US": "US qt", "cc": "cm³", "cm3": "cm³", "ohms": "Ω", "hrs": "h", "°C": "°C"} {
		unit, ok := FindUnit(text)
		require.True(t, ok, text)
		assert.Equal(t, want, unit.Symbol)
	}
	for _, text := range []string{"", "foo", "nm", "gal", "T"} {
		_, ok := FindUnit(text)
		assert.False(t, ok, text)
	}
	unit, _ := FindUnit("lbf·ft")
	unit.Factor().SetInt64(1)
	again, _ := FindUnit("lbf·ft")
	assert.Equal(t, "1.3558179483", again.Factor().FloatString(10), "a caller cannot change the table")
	assert.False(t, find(t, Count, "drops").Converts(find(t, Count, "strokes")))
}
