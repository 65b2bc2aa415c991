package quantity

import (
	"cmp"
	"slices"
	"strings"
)

// trap is a spelling that is read in several ways at the bench, or that is written
// where it does not belong. It is refused rather than guessed.
type trap struct {
	spellings string      // apart by |
	in        []Dimension // wanted dimensions it is a trap in; all when empty
	among     bool        // a trap as well where one of in is wanted beside another dimension
	but       Dimension   // wanted dimension it is read in after all
	kind      Kind
	says      string // goes on after the quoted spelling
	meant     []meaning
	help      string // what to write where no unit can be put in its place; empty else
}

type meaning struct {
	dimension Dimension
	symbol    string
	written   string // what to write for it, where its symbol is the trap; empty else
}

// traps are looked through in order. What each spelling is confused with is common
// practice, no source; the units behind it are those of NIST SP 811 and Handbook 44.
var traps = []trap{
	{spellings: "nm|NM", kind: Ambiguous, says: "is nanometre or nautical mile, and is not read as newton metre",
		meant: []meaning{{Torque, "N·m", ""}, {Length, "mm", ""}}},
	{spellings: "mN|MN", kind: Ambiguous, says: "is millinewton or meganewton, and is not read as newton metre",
		meant: []meaning{{Torque, "N·m", ""}, {Force, "N", ""}}},
	{spellings: "mNm", in: []Dimension{Torque, Any}, kind: Ambiguous, says: "is a thousandth of a newton metre, or a slip for it",
		meant: []meaning{{Torque, "mN·m", ""}, {Torque, "N·m", ""}}},

	{spellings: "oz|OZ|ounce|ounces", in: []Dimension{Volume}, among: true, kind: Ambiguous, says: "is an ounce of mass, a US fluid ounce or an imperial fluid ounce",
		meant: []meaning{{Volume, "US fl oz", ""}, {Volume, "imp fl oz", ""}, {Mass, "oz", "oz av"}}},
	{spellings: "oz|OZ|ounce|ounces", in: []Dimension{Torque}, kind: Wrong, says: "is a unit of mass, not of torque",
		meant: []meaning{{Torque, "ozf·in", ""}}},
	{spellings: "fl·oz|floz|FL·OZ|fluid·ounce|fluid·ounces|fluid·oz|oz·fl", in: []Dimension{Volume, Any}, kind: Ambiguous, says: "is a US or an imperial fluid ounce, which differ by 4 %",
		meant: []meaning{{Volume, "US fl oz", ""}, {Volume, "imp fl oz", ""}}},
	{spellings: "gal|gals|GAL|gallon|gallons", in: []Dimension{Volume, Any}, kind: Ambiguous, says: "is a US or an imperial gallon, which differ by 20 %",
		meant: []meaning{{Volume, "US gal", ""}, {Volume, "imp gal", ""}}},
	{spellings: "qt|qts|QT|quart|quarts", in: []Dimension{Volume, Any}, kind: Ambiguous, says: "is a US or an imperial quart, which differ by 20 %",
		meant: []meaning{{Volume, "US qt", ""}, {Volume, "imp qt", ""}}},
	{spellings: "pt|pts|PT|pint|pints", in: []Dimension{Volume, Any}, kind: Ambiguous, says: "is a US or an imperial pint, which differ by 20 %",
		meant: []meaning{{Volume, "US pt", ""}, {Volume, "imp pt", ""}}},
	{spellings: "gpm|GPM|gal/min", in: []Dimension{Flow, Any}, kind: Ambiguous, says: "is in US or in imperial gallons, which differ by 20 %",
		meant: []meaning{{Flow, "US gal/min", ""}, {Flow, "imp gal/min", ""}}},
	{spellings: "gpa|GPA|gal/acre|gal/ac", in: []Dimension{Application, Any}, kind: Ambiguous, says: "is in US or in imperial gallons, which differ by 20 %",
		meant: []meaning{{Application, "US gal/acre", ""}, {Application, "imp gal/acre", ""}}},
	{spellings: "tsp|tbsp|Tbsp|TBSP|teaspoon|teaspoons|tablespoon|tablespoons|cup|cups", in: []Dimension{Volume, Any}, kind: Ambiguous, says: "is a kitchen measure and differs from country to country",
		meant: []meaning{{Volume, "mL", ""}}, help: "Measure it, and write the volume in mL."},
	{spellings: "mil|mils", in: []Dimension{Volume}, kind: Wrong, says: "is a thousandth of an inch, not a volume",
		meant: []meaning{{Volume, "mL", ""}}},

	{spellings: "T", kind: Ambiguous, says: "is tesla, tonne, ton, tablespoon or torque",
		meant: []meaning{{Mass, "t", ""}, {Torque, "N·m", ""}}},
	{spellings: "ton|tons", in: []Dimension{Mass, Any}, kind: Ambiguous, says: "is 1000 kg, 2000 lb or 2240 lb",
		meant: []meaning{{Mass, "t", ""}, {Mass, "US ton", ""}, {Mass, "imp ton", ""}}},
	{spellings: "kilo|kilos", in: []Dimension{Mass, Any}, kind: Ambiguous, says: "is a thousand of something not named", meant: []meaning{{Mass, "kg", ""}}},
	{spellings: "m", but: Length, kind: Ambiguous, says: "is metre, and minute in shop notes", meant: []meaning{{Time, "min", ""}, {Calendar, "months", ""}, {Length, "mm", ""}}},
	{spellings: "M", kind: Ambiguous, says: "is minute, metre or a metric thread", meant: []meaning{{Time, "min", ""}, {Calendar, "months", ""}, {Length, "mm", ""}}},

	{spellings: "lb|lbs|LB|LBS|pound|pounds", in: []Dimension{Torque}, kind: Ambiguous, says: "is a mass, and the lever is left out: foot or inch, a factor of 12",
		meant: []meaning{{Torque, "lbf·ft", ""}, {Torque, "lbf·in", ""}}},
	{spellings: "lb|lbs|LB|LBS|pound|pounds", in: []Dimension{Pressure}, kind: Wrong, says: "is a unit of mass, not of pressure", meant: []meaning{{Pressure, "psi", ""}}},
	{spellings: "kg|kgs|kilogram|kilograms", in: []Dimension{Torque}, kind: Wrong, says: "is a unit of mass, not of torque",
		meant: []meaning{{Torque, "N·m", ""}, {Torque, "kgf·m", ""}}},
	{spellings: "kg|kgs|kilogram|kilograms", in: []Dimension{Pressure}, kind: Wrong, says: "is a unit of mass, not of pressure",
		meant: []meaning{{Pressure, "bar", ""}, {Pressure, "kgf/cm²", ""}}},
	{spellings: "kg|kgs|kilogram|kilograms", in: []Dimension{Force}, kind: Wrong, says: "is a unit of mass, not of force",
		meant: []meaning{{Force, "N", ""}, {Force, "kgf", ""}}},

	{spellings: "°|deg|degs|degree|degrees", in: []Dimension{Temperature, TemperatureDifference}, kind: Ambiguous, says: "does not say whether Celsius or Fahrenheit",
		meant: []meaning{{Temperature, "°C", ""}, {Temperature, "°F", ""}, {TemperatureDifference, "°C", ""}, {TemperatureDifference, "°F", ""}}},
	{spellings: "C", in: []Dimension{Any}, kind: Unknown, says: "is no unit of a shop; a degree Celsius has its degree sign", meant: []meaning{{Temperature, "°C", ""}}},
	{spellings: "F", in: []Dimension{Any}, kind: Unknown, says: "is no unit of a shop; a degree Fahrenheit has its degree sign", meant: []meaning{{Temperature, "°F", ""}}},
}

var trapsOf = makeTraps()

func makeTraps() map[string][]trap {
	out := map[string][]trap{}
	for _, t := range traps {
		for key := range strings.SplitSeq(t.spellings, "|") {
			out[keyOf(key)] = append(out[keyOf(key)], t)
		}
	}
	return out
}

func (t trap) catches(want Dimension, wants []Dimension) bool {
	beside := t.among && slices.ContainsFunc(wants, func(other Dimension) bool { return slices.Contains(t.in, other) })
	return (len(t.in) == 0 || slices.Contains(t.in, want) || beside) && (t.but == None || t.but != want)
}

// symbols are the units that may be meant where some dimensions are wanted, those of the
// likeliest dimension first.
func (t trap) symbols(wants []Dimension) []string {
	meant := slices.DeleteFunc(slices.Clone(t.meant), func(m meaning) bool { return !slices.Contains(wants, Any) && !slices.Contains(wants, m.dimension) })
	slices.SortStableFunc(meant, func(a, b meaning) int { return slices.Index(wants, a.dimension) - slices.Index(wants, b.dimension) })
	var out []string
	for _, m := range meant {
		out = append(out, cmp.Or(m.written, m.symbol))
	}
	return out
}
