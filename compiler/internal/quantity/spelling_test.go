package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// errors are the problems that are more than warnings.
func errors(problems []Problem) []Problem {
	var out []Problem
	for _, p := range problems {
		if !p.Warning {
			out = append(out, p)
		}
	}
	return out
}

func TestSpellingsOfTheTrade(t *testing.T) {
	for _, row := range []struct {
		want  Dimension
		plain string
		texts []string
	}{
		{Torque, "42 N·m", []string{"42 N·m", "42 Nm", "42Nm", "42 N-m", "42 N m", "42 N.m", "42 N*m", "42 N⋅m", "42 newton metres", "42\u00a0N·m", " 42  N·m "}},
		{Torque, "26 lbf·ft", []string{"26 ft-lb", "26 ft·lb", "26 lb-ft", "26 lb·ft", "26 ft lb", "26 ft lbs", "26 ft-lbs", "26 ft. lbs.", "26 FT-LB", "26 lbf·ft", "26 lbf ft", "26 ft-lbf", "26 foot-pounds", "26 pound-feet", "26 ftlbs"}},
		{Torque, "90 lbf·in", []string{"90 in-lb", "90 in·lb", "90 in-lbs", "90 lb-in", "90 in. lbs.", "90 lbf in", "90 inch-pounds", "90 IN-LB"}},
		{Torque, "20 ozf·in", []string{"20 ozf·in", "20 oz-in", "20 in-oz", "20 ozf in"}},
		{Torque, "4 kgf·m", []string{"4 kgf·m", "4 kgf m", "4 m·kgf"}},
		{Torque, "40 kgf·cm", []string{"40 kgf·cm", "40 kgf-cm"}},
		{Length, "0.5 in", []string{"0.5 in", "0.5 in.", "0.5\"", "0.5″", "0.5”", "0.5 inch", "0.5 inches", "0.5''"}},
		{Length, "10 ft", []string{"10 ft", "10'", "10′", "10 feet"}},
		{Length, "15 µm", []string{"15 µm", "15 μm", "15 um", "15 microns"}},
		{Length, "2 thou", []string{"2 thou", "2 thousandths"}},
		{Length, "1-1/2 in", []string{"1-1/2 in", "1-1/2\"", "1 1/2 in", "1½ in", "1 ½ in", "1½\"", "1 1⁄2 in", "1 and 1/2 in"}},
		{Length, "3/4 in", []string{"3/4 in", "3⁄4 in", "¾ in", "¾\""}},
		{Length, "1-3/16 in", []string{"1-3/16 in", "1 3/16\""}},
		{Length, "5 ft 3 in", []string{"5 ft 3 in", "5' 3\"", "5'3\"", "5'-3\""}},
		{Volume, "1 US qt", []string{"1 US qt", "1 qt US", "1 qt (US)", "1 U.S. qt", "1 US quart", "1 US qt."}},
		{Volume, "1 US gal", []string{"1 US gal", "1 gal US", "1 US gallon", "1 gal (US)", "1 gallon (US)"}},
		{Volume, "1 imp gal", []string{"1 imp gal", "1 gal imp", "1 UK gal", "1 imperial gallon", "1 gal (imp)", "1 Imp. gal"}},
		{Volume, "1 imp pt", []string{"1 UK pt", "1 imp pt", "1 imperial pint"}},
		{Volume, "8 US fl oz", []string{"8 US fl oz", "8 fl oz US", "8 US fl. oz.", "8 fl oz (US)"}},
		{Volume, "0.85 L", []string{"0.85 L", "0.85 l", "0.85 litres", "0.85 liters"}},
		{Volume, "50 cm³", []string{"50 cc", "50 cm³", "50 cm3", "50 cm^3"}},
		{Volume, "30 in³", []string{"30 in³", "30 in3", "30 cu in", "30 cu. in."}},
		{Mass, "3 lb", []string{"3 lb", "3 lbs", "3 lb.", "3 pounds"}},
		{Mass, "14 oz", []string{"14 oz", "14 ounces", "14 oz av", "14 oz. av.", "14 oz avdp", "14 oz wt", "14 oz wt.", "14 oz. avdp."}},
		{Pressure, "35 psi", []string{"35 psi", "35 PSI", "35 lbf/in²", "35 lb/in2"}},
		{Pressure, "14 inHg", []string{"14 inHg", "14 in Hg", "14 \"Hg", "14 in. Hg"}},
		{Temperature, "80 °C", []string{"80 °C", "80°C", "80 ° C", "80 ºC", "80 ℃", "80 deg C", "80 degC", "80 degrees C", "80 degrees Celsius"}},
		{Temperature, "-20 °C", []string{"-20 °C", "−20 °C", "–20 °C", "- 20 °C"}},
		{TemperatureDifference, "10 K", []string{"10 K"}},
		{Time, "1 h 15 min", []string{"1 h 15 min", "1 h 15", "1h15", "1h15min", "1 hr 15 min", "1 hour and 15 minutes", "1 h, 15 min"}},
		{Time, "20 min", []string{"20 min", "20 min.", "20 mins", "20 minutes"}},
		{Time, "2 h", []string{"2 h", "2 hr", "2 hrs", "2 hours", "two hours"}},
		{Calendar, "12 months", []string{"12 months", "12 mo", "12 mths"}},
		{Calendar, "1 week", []string{"1 week", "1 wk", "one week"}},
		{Angle, "90°", []string{"90°", "90 °", "90 deg", "90 degrees"}},
		{Angle, "1/4 turn", []string{"1/4 turn", "quarter turn", "a quarter turn", "quarter of a turn", "¼ turn", "1/4 turns", "quarter-turn"}},
		{Angle, "1/2 turn", []string{"half a turn", "half turn", "½ turn"}},
		{RotationalSpeed, "1450 rpm", []string{"1450 rpm", "1450 RPM", "1450 rev/min", "1450 r/min", "1450 1/min", "1450 min⁻¹", "1450 min^-1", "1450 /min"}},
		{Speed, "20 km/h", []string{"20 km/h", "20 km/hr", "20 kph", "20 km / h"}},
		{Speed, "500 ft/min", []string{"500 ft/min", "500 fpm"}},
		{Flow, "3 US gal/min", []string{"3 US gal/min", "3 US gpm"}},
		{Resistance, "5 Ω", []string{"5 Ω", "5 Ω", "5 ohm", "5 ohms"}},
		{Power, "7 PS", []string{"7 PS", "7 CV", "7 metric hp"}},
		{Viscosity, "46 mm²/s", []string{"46 mm²/s", "46 mm2/s"}},
		{Ratio, "50 %", []string{"50 %", "50%", "50 percent"}},
		{Count, "4 strokes", []string{"4 strokes", "four strokes", "4 pumps"}},
		{Count, "10 pieces", []string{"10 pieces", "10 pcs"}},
		{Charge, "45 A·h", []string{"45 A·h", "45 Ah"}},
	} {
		for _, text := range row.texts {
			a, problems := Parse(text, row.want)
			if assert.Empty(t, problems, text) {
				assert.Equal(t, row.plain, a.Plain(), text)
				assert.Equal(t, row.want, a.Dimension, text)
			}
		}
	}
}

// fault is what a problem must be, with the text under its span.
type fault struct {
	kind    Kind
	at      string
	replace string
	certain bool
}

func faults(text string, problems []Problem) []fault {
	var out []fault
	for _, p := range problems {
		out = append(out, fault{p.Kind, text[p.Start:p.End], p.Replace, p.Certain})
	}
	return out
}

// A bare ounce is no guess where a volume or a mass may be meant; an avoirdupois one is a mass.
func TestOunceWhereVolumeOrMassIsMeant(t *testing.T) {
	for _, row := range []struct {
		text  string
		wants []Dimension
		help  string // empty where it is read as a mass
	}{
		{"14 oz", []Dimension{Volume, Mass}, `"14 US fl oz", "14 imp fl oz" or "14 oz av"`},
		{"14 oz", []Dimension{Mass, Volume}, `"14 oz av", "14 US fl oz" or "14 imp fl oz"`},
		{"14 oz av", []Dimension{Volume, Mass}, ""},
		{"0.04 oz avdp", []Dimension{Volume, Mass}, ""},
		{"14 oz wt", []Dimension{Mass, Volume}, ""},
	} {
		amount, problems := Parse(row.text, row.wants[0], row.wants[1:]...)
		if row.help == "" {
			assert.Empty(t, problems, row.text)
			assert.Equal(t, Mass, amount.Dimension, row.text)
			continue
		}
		if assert.Len(t, problems, 1, row.text) {
			assert.Equal(t, Ambiguous, problems[0].Kind, row.text)
			assert.Contains(t, problems[0].Help, row.help)
		}
	}
}

// Each row of the list of ambiguous or dangerous spellings met in the field: common
// practice, no source, but for the factors behind them (NIST SP 811, Handbook 44).
func TestDangerousSpellings(t *testing.T) {
	for _, row := range []struct {
		text  string
		want  Dimension
		fault fault
		help  string // a part of it
	}{
		// ft-lb is read as a torque (TestSpellingsOfTheTrade), never as an energy.
		{"5 ft-lb", Energy, fault{Wrong, "ft-lb", "", false}, "J"},
		// in-lb beside ft-lb: a factor of 12.
		{"3 ft-lb", Torque, fault{Unusual, "3 ft-lb", "36 lbf·in", false}, `"3 lbf·in" if lbf·in is meant`},
		{"360 in-lb", Torque, fault{Unusual, "360 in-lb", "30 lbf·ft", false}, `"360 lbf·ft" if lbf·ft is meant`},
		// oz, by itself.
		{"8 oz", Volume, fault{Ambiguous, "oz", "", false}, `"8 US fl oz" or "8 imp fl oz"`},
		{"8 fl oz", Volume, fault{Ambiguous, "fl oz", "", false}, `"8 US fl oz" or "8 imp fl oz"`},
		{"8 oz", Torque, fault{Wrong, "oz", "ozf·in", false}, "ozf·in"},
		// gal, qt, pt without their system.
		{"1 gal", Volume, fault{Ambiguous, "gal", "", false}, `"1 US gal" or "1 imp gal"`},
		{"1 qt", Volume, fault{Ambiguous, "qt", "", false}, `"1 US qt" or "1 imp qt"`},
		{"1 pt.", Volume, fault{Ambiguous, "pt.", "", false}, `"1 US pt" or "1 imp pt"`},
		{"1 gallon", Any, fault{Ambiguous, "gallon", "", false}, "imp gal"},
		{"3 gpm", Flow, fault{Ambiguous, "gpm", "", false}, "US gal/min"},
		{"1 gal", Torque, fault{Wrong, "gal", "", false}, "N·m"},
		// T, t, tsp, Tbsp.
		{"42 T", Torque, fault{Ambiguous, "T", "N·m", false}, "N·m"},
		{"2 T", Mass, fault{Ambiguous, "T", "t", false}, `"2 t"`},
		{"1.5 tons", Mass, fault{Ambiguous, "tons", "", false}, `"1.5 t", "1.5 US ton" or "1.5 imp ton"`},
		{"2 t", Volume, fault{Wrong, "t", "", false}, "L"},
		{"2 tsp", Volume, fault{Ambiguous, "tsp", "", false}, "mL"},
		{"2 Tbsp", Volume, fault{Ambiguous, "Tbsp", "", false}, "mL"},
		// mN·m, Nm, nm, NM.
		{"42 nm", Torque, fault{Ambiguous, "nm", "N·m", false}, `"42 N·m"`},
		{"42 NM", Torque, fault{Ambiguous, "NM", "N·m", false}, `"42 N·m"`},
		{"42 mN", Torque, fault{Ambiguous, "mN", "N·m", false}, `"42 N·m"`},
		{"42 Nm", Length, fault{Wrong, "Nm", "", false}, "mm"},
		{"42 Nm", Energy, fault{Wrong, "Nm", "", false}, "J"},
		{"42 nm", Length, fault{Ambiguous, "nm", "mm", false}, "mm"},
		// kg·m, kgm, m·kg, kp·m.
		{"4 kg·m", Torque, fault{Deprecated, "kg·m", "kgf·m", true}, `"4 kgf·m"`},
		{"4 kgm", Torque, fault{Deprecated, "kgm", "kgf·m", true}, `"4 kgf·m"`},
		{"4 m·kg", Torque, fault{Deprecated, "m·kg", "kgf·m", true}, `"4 kgf·m"`},
		{"4 kp·m", Torque, fault{Deprecated, "kp·m", "kgf·m", true}, `"4 kgf·m"`},
		{"4 kg", Torque, fault{Wrong, "kg", "", false}, `"4 N·m" or "4 kgf·m"`},
		// kg/cm².
		{"5 kg/cm²", Pressure, fault{Deprecated, "kg/cm²", "kgf/cm²", true}, `"5 kgf/cm²"`},
		{"5 kg/cm2", Pressure, fault{Deprecated, "kg/cm2", "kgf/cm²", true}, `"5 kgf/cm²"`},
		// #, lbs.
		{"#10", Length, fault{Malformed, "#", "", false}, "mm"},
		{"38 #", Mass, fault{Malformed, "#", "", false}, "kg"},
		{"30 lbs", Torque, fault{Ambiguous, "lbs", "", false}, `"30 lbf·ft" or "30 lbf·in"`},
		{"30 lbs", Pressure, fault{Wrong, "lbs", "psi", false}, `"30 psi"`},
		{"30 lbs", Force, fault{Deprecated, "lbs", "lbf", true}, `"30 lbf"`},
		// M, m.
		{"5 m", Time, fault{Ambiguous, "m", "min", false}, `"5 min"`},
		{"5 M", Time, fault{Ambiguous, "M", "min", false}, `"5 min"`},
		{"5 m", Any, fault{Ambiguous, "m", "", false}, `"5 min", "5 months" or "5 mm"`},
		{"5 m", Torque, fault{Ambiguous, "m", "", false}, "N·m"},
		// 10,5.
		{"10,5 N·m", Torque, fault{Malformed, "10,5", "10.5", false}, `"10.5 N·m"`},
		{"1,500 N·m", Torque, fault{Malformed, "1,500", "1500", false}, `"1500 N·m" or "1.500 N·m"`},
		{"1.500,5 N·m", Torque, fault{Malformed, "1.500,5", "1500.5", false}, `"1500.5 N·m"`},
		// .5 in.
		{".5 in", Length, fault{Deprecated, ".5", "0.5", true}, `"0.5 in"`},
		// Grades.
		{"NLGI 2", Any, fault{Malformed, "NLGI 2", "", false}, "figure and a unit"},
		{"SAE 30", Volume, fault{Malformed, "SAE 30", "", false}, "L"},
		{"SAE 80W-90", Viscosity, fault{Malformed, "SAE 80W-90", "", false}, "mm²/s"},
		{"10W-30", Viscosity, fault{Malformed, "10W-30", "", false}, "mm²/s"},
		{"ISO VG 46", Viscosity, fault{Malformed, "ISO VG 46", "", false}, "mm²/s"},
		{"M10", Length, fault{Malformed, "M10", "", false}, "mm"},
		{"M10 x 1.5", Length, fault{Malformed, "M10 x 1.5", "", false}, "mm"},
		{"3/8-16 UNC", Length, fault{Malformed, "3/8-16 UNC", "", false}, "mm"},
		{"8.8", Torque, fault{Malformed, "8.8", "", false}, "N·m"},
		// Temperatures without their scale.
		{"80 C", Temperature, fault{Deprecated, "C", "°C", true}, `"80 °C"`},
		{"80 C", Any, fault{Unknown, "C", "°C", false}, `"80 °C"`},
		{"80°", Temperature, fault{Ambiguous, "°", "", false}, `"80 °C" or "80 °F"`},
	} {
		a, problems := Parse(row.text, row.want)
		require.Len(t, problems, 1, "%s as %s", row.text, row.want)
		assert.Equal(t, []fault{row.fault}, faults(row.text, problems), "%s as %s", row.text, row.want)
		assert.Contains(t, problems[0].Help, row.help, row.text)
		warning := row.fault.kind == Deprecated || row.fault.kind == Unusual
		assert.Equal(t, warning, problems[0].Warning, row.text)
		assert.Equal(t, warning, a.Dimension != None, "%s is read only when it is a warning", row.text)
	}
}

// The rows of the same list that are read: fractions are exact, a hyphen makes a range.
func TestDangerousSpellingsThatAreRead(t *testing.T) {
	for text, want := range map[string]string{"1/2\"": "12.7", "1-1/2\"": "38.1", "1 1/2\"": "38.1", "1-3/16 in": "30.1625"} {
		a, problems := Parse(text, Length)
		require.Empty(t, problems, text)
		least, _ := a.Min()
		assert.Zero(t, rat(t, want).Cmp(least), text)
	}
	for _, text := range []string{"5-7 N·m", "5–7 N·m", "5 - 7 N·m", "5 to 7 N·m", "6 ±1 N·m"} {
		a, problems := Parse(text, Torque)
		require.Empty(t, problems, text)
		least, _ := a.Min()
		most, _ := a.Max()
		assert.Equal(t, "5 7", least.RatString()+" "+most.RatString(), text)
	}
	speed, problems := Parse("1450 rpm", RotationalSpeed)
	require.Empty(t, problems)
	most, _ := speed.Max()
	assert.Equal(t, "1450", most.RatString(), "rpm is a dimension of its own, not 1/60 Hz")
	_, problems = Parse("1450 rpm", Frequency)
	assert.Equal(t, Wrong, problems[0].Kind)
	mass, problems := Parse("8 oz", Mass)
	require.Empty(t, problems)
	assert.Equal(t, "8 oz", mass.Plain())
	hours, problems := Parse("500 h", Time)
	require.Empty(t, problems)
	assert.Equal(t, "500 h", hours.Plain())
	thin, problems := Parse("1\u2009500 N·m", Torque)
	require.Empty(t, problems)
	most, _ = thin.Max()
	assert.Equal(t, "1500", most.RatString())
}
