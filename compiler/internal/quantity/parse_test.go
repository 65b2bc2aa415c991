package quantity

import (
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func bounds(a Amount) string {
	show := func(value *big.Rat, ok bool) string {
		if !ok {
			return "-"
		}
		return value.RatString()
	}
	return show(a.Min()) + ".." + show(a.Max())
}

func TestShapes(t *testing.T) {
	for _, row := range []struct {
		texts  []string
		want   Dimension
		shape  Shape
		bounds string // in the base unit
		plain  string
	}{
		{[]string{"42 N·m"}, Torque, Exact, "42..42", "42 N·m"},
		{[]string{"35 to 40 N·m", "35-40 N·m", "35–40 N·m", "35 – 40 N·m", "35 N·m to 40 N·m", "35…40 N·m", "35...40 N·m", "from 35 to 40 N·m", "between 35 and 40 N·m", "35 N·m - 40", "35N·m-40N·m"},
			Torque, Range, "35..40", "35 to 40 N·m"},
		{[]string{"38 ± 3 N·m", "38 N·m ± 3 N·m", "38±3 N·m", "38 N·m +/- 3", "38 +-3 N·m"}, Torque, Tolerance, "35..41", "38 ± 3 N·m"},
		{[]string{"40 N·m ± 5 %", "40 ± 5 % N·m", "40 N·m ±5%"}, Torque, Tolerance, "38..42", "40 N·m ± 5 %"},
		{[]string{"38 ±5 %", "38 % ± 5 %"}, Ratio, Tolerance, "33..43", "38 ± 5 %"},
		{[]string{"25 +2/-1 mm", "25 +2 -1 mm", "25 mm +2/-1", "25 -1/+2 mm", "25 +2/−1 mm", "25 mm +2 mm -1 mm"}, Length, Tolerance, "24..27", "25 +2/-1 mm"},
		{[]string{"± 0.5 mm", "±0.5 mm", "+/-0.5 mm"}, Length, Tolerance, "-1/2..1/2", "± 0.5 mm"},
		{[]string{"max 0.5 mm", "Max. 0.5 mm", "0.5 mm max", "0.5 mm max.", "at most 0.5 mm", "not more than 0.5 mm", "no more than 0.5 mm", "≤ 0.5 mm", "<=0.5 mm", "up to 0.5 mm", "maximum 0.5 mm", "under 0.5 mm", "MAX: 0.5 mm"},
			Length, AtMost, "-..1/2", "max 0.5 mm"},
		{[]string{"min 3 mm", "min. 3 mm", "3 mm min", "at least 3 mm", "not less than 3 mm", "≥3 mm", ">= 3 mm", "over 3 mm", "3 mm or more"}, Length, AtLeast, "3..-", "min 3 mm"},
		{[]string{"about 2 L", "approx. 2 L", "approximately 2 L", "~2 L", "≈ 2 L", "ca. 2 L", "2 L approx."}, Volume, About, "2..2", "about 2 L"},
		{[]string{"about 5 to 10 min"}, Time, Range, "300..600", "about 5 to 10 min"},
		{[]string{"30 s to 2 min"}, Time, Range, "30..120", "30 s to 2 min"},
		{[]string{"45 min to 1 h 15 min"}, Time, Range, "2700..4500", "45 min to 1 h 15 min"},
		{[]string{"1 h 15 min 30 s"}, Time, Exact, "4530..4530", "1 h 15 min 30 s"},
		{[]string{"-20 to -10 °C", "-20--10 °C", "−20…−10 °C"}, Temperature, Range, "-20..-10", "-20 to -10 °C"},
		{[]string{"80 ± 5 °C"}, Temperature, Tolerance, "75..85", "80 ± 5 °C"},
		{[]string{"50 ± 9 °F"}, Temperature, Tolerance, "5..15", "50 ± 9 °F"},
		{[]string{"1/4-1/2 in", "1/4 to 1/2 in", "1/4\"-1/2\""}, Length, Range, "127/20..127/10", "1/4 to 1/2 in"},
		{[]string{"1-1/4-1-1/2 in", "1-1/4 to 1-1/2 in"}, Length, Range, "127/4..381/10", "1-1/4 to 1-1/2 in"},
		{[]string{"1 500 N·m", "1500 N·m"}, Torque, Exact, "1500..1500", ""},
		{[]string{"12 months"}, Calendar, Exact, "1460970/4000..1460970/4000", "12 months"},
		{[]string{"1/4 turn"}, Angle, Exact, "90..90", "1/4 turn"},
	} {
		for _, text := range row.texts {
			a, problems := Parse(text, row.want)
			if !assert.Empty(t, problems, text) {
				continue
			}
			assert.Equal(t, row.shape, a.Shape, text)
			low, high, _ := strings.Cut(row.bounds, "..")
			if low != "-" {
				low = rat(t, low).RatString()
			}
			if high != "-" {
				high = rat(t, high).RatString()
			}
			assert.Equal(t, low+".."+high, bounds(a), text)
			if row.plain != "" {
				assert.Equal(t, row.plain, a.Plain(), text)
			}
			assert.Equal(t, strings.TrimSpace(text), a.Written)
			again, problems := Parse(a.Plain(), row.want)
			assert.Empty(t, problems, a.Plain())
			assert.Equal(t, bounds(a), bounds(again), "%s reads as %s", text, a.Plain())
		}
	}
}

func TestFaults(t *testing.T) {
	for _, row := range []struct {
		text   string
		want   Dimension
		faults []fault
	}{
		{"42", Torque, []fault{{Missing, "42", "", false}}},
		{"0", Length, []fault{{Missing, "0", "", false}}},
		{"max 42", Torque, []fault{{Missing, "42", "", false}}},
		{"35 to 40", Torque, []fault{{Missing, "35 to 40", "", false}}},
		{"12 ± 0.1", Length, []fault{{Missing, "12 ± 0.1", "", false}}},
		{"42 N·m (31)", Torque, []fault{{Missing, "31", "", false}}},
		{"38 ±5 %", Torque, []fault{{Missing, "38", "", false}}},
		{"5", Any, []fault{{Missing, "5", "", false}}},
		{"42 mm", Torque, []fault{{Wrong, "mm", "", false}}},
		{"500 h", Calendar, []fault{{Wrong, "h", "", false}}},
		{"12 months", Time, []fault{{Wrong, "months", "", false}}},
		{"500 km", Cycles, []fault{{Wrong, "km", "", false}}},
		{"35 mm to 40 mm", Torque, []fault{{Wrong, "mm", "", false}}},
		{"42 N·m (31 mm)", Torque, []fault{{Wrong, "mm", "", false}}},
		{"80 °C", Torque, []fault{{Wrong, "°C", "", false}}},
		{"42 Nmn", Torque, []fault{{Unknown, "Nmn", "N·m", false}}},
		{"3 KPA", Pressure, []fault{{Unknown, "KPA", "kPa", true}}},
		{"3 Bar", Pressure, []fault{{Unknown, "Bar", "bar", true}}},
		{"2.1 mPa", Pressure, []fault{{Unknown, "mPa", "MPa", false}}},
		{"12 MM", Length, []fault{{Unknown, "MM", "mm", false}}},
		{"12 Kg", Mass, []fault{{Unknown, "Kg", "kg", true}}},
		{"42 florps", Torque, []fault{{Unknown, "florps", "", false}}},
		{"5 N·mile", Any, []fault{{Unknown, "N·mile", "", false}}},
		{"1 xL", Volume, []fault{{Unknown, "xL", "", false}}},
		{"3 km ,", Distance, []fault{{Malformed, ",", "", false}}},
		{"48 to 42 N·m", Torque, []fault{{Reversed, "48 to 42 N·m", "42 to 48 N·m", false}}},
		{"48 N·m to 42 N·m", Torque, []fault{{Reversed, "48 N·m to 42 N·m", "42 N·m to 48 N·m", false}}},
		{"2 min to 30 s", Time, []fault{{Reversed, "2 min to 30 s", "30 s to 2 min", false}}},
		{"1 - 3/4 in", Length, []fault{{Reversed, "1 - 3/4 in", "3/4 - 1 in", false}}},
		{"42 N·m (35 lbf·ft)", Torque, []fault{{Disagree, "35 lbf·ft", "31 lbf·ft", false}}},
		{"35 to 40 N·m (26 lbf·ft)", Torque, []fault{{Disagree, "26 lbf·ft", "26 to 29 lbf·ft", false}}},
		{"42 N·m / 35 lbf·ft", Torque, []fault{{Disagree, "35 lbf·ft", "31 lbf·ft", false}}},
		{"", Torque, []fault{{Malformed, "", "", false}}},
		{" \t ", Torque, []fault{{Malformed, " \t ", "", false}}},
		{"snug", Torque, []fault{{Malformed, "snug", "", false}}},
		{"N·m", Torque, []fault{{Malformed, "N·m", "", false}}},
		{"Torque 42 N·m", Torque, []fault{{Malformed, "Torque", "", false}}},
		{"42 N·m dry", Torque, []fault{{Malformed, "dry", "", false}}},
		{"42 N·m (dry)", Torque, []fault{{Malformed, "(dry)", "", false}}},
		{"10 5 N·m", Torque, []fault{{Malformed, "5 N·m", "", false}}},
		{"35 to", Torque, []fault{{Malformed, "to", "", false}}},
		{"-5 N·m", Torque, []fault{{Malformed, "-5", "", false}}},
		{"3 ± 5 N·m", Torque, []fault{{Malformed, "3 ± 5 N·m", "", false}}},
		{"± 5 N·m", Torque, []fault{{Malformed, "± 5 N·m", "", false}}},
		{"1e3 N·m", Torque, []fault{{Malformed, "1e3", "", false}}},
		{"1.2.3 mm", Length, []fault{{Malformed, "1.2.3", "", false}}},
		{"1/0 in", Length, []fault{{Malformed, "1/0", "", false}}},
		{"35/40 N·m", Torque, []fault{{Ambiguous, "35/40", "", false}}},
		{"5/4 in", Length, []fault{{Ambiguous, "5/4", "1-1/4", false}}},
		{"max 35 to 40 N·m", Torque, []fault{{Malformed, "max 35 to 40 N·m", "", false}}},
		{"5 strokes to 6 drops", Count, []fault{{Malformed, "5 strokes to 6 drops", "", false}}},
		{"42 N·m (31 lbf·ft", Torque, []fault{{Malformed, "(31 lbf·ft", "(31 lbf·ft)", true}}},
		{"42 N·m [31 lbf·ft]", Torque, []fault{{Malformed, "[31 lbf·ft]", "", false}}},
		{"12345678901234567890 mm", Length, []fault{{Malformed, "12345678901234567890 mm", "", false}}},
		{"0.00000000000001 mm", Length, []fault{{Malformed, "0.00000000000001 mm", "", false}}},
		{"12345678901234567890123456789012345678901234567890 mm", Length, []fault{{Malformed, "12345678901234567890123456789012345678901234567890", "", false}}},
		{"12 mm x 30 mm", Length, []fault{{Malformed, "x 30 mm", "", false}}},
		// Two faults are both told.
		{"10,5 to 11,5 Nm", Torque, []fault{{Malformed, "10,5", "10.5", false}, {Malformed, "11,5", "11.5", false}}},
		{"10,5 nm", Torque, []fault{{Malformed, "10,5", "10.5", false}, {Ambiguous, "nm", "N·m", false}}},
		{".5 to .7 mm", Length, []fault{{Deprecated, ".5", "0.5", true}, {Deprecated, ".7", "0.7", true}}},
		{"3 kg·m to 4 kg·m", Torque, []fault{{Deprecated, "kg·m", "kgf·m", true}}},
		{".5 kg·m", Torque, []fault{{Deprecated, ".5", "0.5", true}, {Deprecated, "kg·m", "kgf·m", true}}},
	} {
		a, problems := Parse(row.text, row.want)
		assert.Equal(t, row.faults, faults(row.text, problems), "%s as %s", row.text, row.want)
		if len(errors(problems)) > 0 {
			assert.Equal(t, Amount{}, a, row.text)
		}
		for _, p := range problems {
			sayable(t, p)
		}
	}
}

// sayable holds what every message and help keeps to.
func sayable(t *testing.T, p Problem) {
	t.Helper()
	first := []rune(p.Message)[0]
	assert.True(t, first == '"' || strings.ToLower(string(first)) == string(first), p.Message)
	assert.NotContains(t, p.Message, "\n")
	assert.False(t, strings.HasSuffix(p.Message, "."), p.Message)
	assert.True(t, strings.HasSuffix(p.Help, "."), p.Help)
	assert.False(t, p.Certain && p.Replace == "", "%s: a certain repair has a text", p.Message)
}

// A certain repair leaves nothing to repair; a proposed one leaves the fault it was for.
func TestRepairsRepair(t *testing.T) {
	for _, row := range []struct {
		text string
		want Dimension
	}{
		{"4 kg·m", Torque}, {".5 in", Length}, {"80 C", Temperature}, {"3 KPA", Pressure}, {"5 kg/cm2", Pressure}, {"30 lbs", Force},
		{"42 N·m (31 lbf·ft", Torque}, {"48 to 42 N·m", Torque}, {"42 nm", Torque}, {"10,5 N·m", Torque}, {"42 N·m (35 lbf·ft)", Torque},
		{"3 ft-lb", Torque}, {"360 in-lb", Torque}, {"8 oz", Torque}, {"1.500,5 N·m", Torque}, {"5/4 in", Length}, {"2.1 mPa", Pressure},
	} {
		_, problems := Parse(row.text, row.want)
		require.Len(t, problems, 1, row.text)
		p := problems[0]
		mended := row.text[:p.Start] + p.Replace + row.text[p.End:]
		_, problems = Parse(mended, row.want)
		assert.Empty(t, problems, "%s became %s", row.text, mended)
	}
}

func TestUnusualTorques(t *testing.T) {
	for _, text := range []string{"4.9 lbf·ft", "2 to 4 ft-lb", "max 3 ft-lb", "4 ± 0.5 lbf·ft", "301 lbf·in", "310 to 350 in-lb"} {
		_, problems := Parse(text, Torque)
		if assert.Len(t, problems, 1, text) {
			assert.Equal(t, Unusual, problems[0].Kind, text)
			assert.Equal(t, text, text[problems[0].Start:problems[0].End])
			assert.Contains(t, problems[0].Help, "is meant", text)
		}
	}
	// A tool's whole range, a figure the author wrote in both units, and what is usual.
	for _, text := range []string{"5 lbf·ft", "2 to 20 lbf·ft", "300 lbf·in", "100 to 400 lbf·in", "3 lbf·ft (36 lbf·in)", "4 lbf·ft (5.4 N·m)", "5.4 N·m (4 lbf·ft)", "0 lbf·ft"} {
		_, problems := Parse(text, Torque)
		assert.Empty(t, problems, text)
	}
}

func TestDualFigures(t *testing.T) {
	for _, row := range []struct {
		text string
		want Dimension
	}{
		{"42 N·m (31 lbf·ft)", Torque}, {"35 to 40 N·m (26 to 30 lbf·ft)", Torque}, {"35 to 40 N·m (26 to 29 lbf·ft)", Torque},
		{"42 N·m / 31 lbf·ft", Torque}, {"42 N·m/31 lbf·ft", Torque}, {"42 N·m = 31 lbf·ft", Torque},
		{"25 N·m (18 lbf·ft)", Torque}, {"90 lbf·in (10 N·m)", Torque}, {"100 N·m (74 lbf·ft)", Torque}, {"38 ± 3 N·m (26 to 30 lbf·ft)", Torque},
		{"max 0.5 mm (0.020 in)", Length}, {"max 0.5 mm (max 0.020 in)", Length}, {"13 mm (1/2 in)", Length}, {"1-1/4 in (32 mm)", Length},
		{"1.1 L (1.2 US qt)", Volume}, {"1 US gal (3.8 L)", Volume}, {"80 °C (176 °F)", Temperature}, {"95 bar (1400 psi)", Pressure},
		{"100 bar (1450 psi)", Pressure}, {"90 min (1.5 h)", Time}, {"about 2 L (2 US qt)", Volume},
		// Name plates and gauges pair rounded figures, nearer than the instrument reads.
		{"250 bar (3600 psi)", Pressure}, {"210 bar (3000 psi)", Pressure}, {"350 bar (5000 psi)", Pressure}, {"160 bar (2300 psi)", Pressure},
		{"80 °C (175 °F)", Temperature}, {"90 N·m (65 lbf·ft)", Torque},
	} {
		a, problems := Parse(row.text, row.want)
		if assert.Empty(t, problems, row.text) {
			require.NotNil(t, a.Dual, row.text)
			assert.Equal(t, a.Shape == AtMost, a.Dual.Shape == AtMost, row.text)
		}
	}
	middle, problems := Parse("38 ± 3 N·m (28 lbf·ft)", Torque)
	require.Empty(t, problems, "the middle of a tolerance may stand alone behind it")
	assert.Equal(t, "26 to 30 lbf·ft", asciiFigures.Replace(middle.Format(Inch)), "and the tolerance is not lost in print")
	for _, row := range []struct {
		text string
		want Dimension
		help string
	}{
		{"42 N·m (30 lbf·ft)", Torque, "31 lbf·ft"}, {"42 N·m (33 lbf·ft)", Torque, "31 lbf·ft"}, {"42 N·m (31 lbf·in)", Torque, "370 lbf·in"},
		{"35 to 40 N·m (26 to 32 lbf·ft)", Torque, "26 to 29 lbf·ft"}, {"80 °C (180 °F)", Temperature, "176 °F"},
		{"100 bar (1500 psi)", Pressure, "1450 psi"}, {"1 US gal (4.5 L)", Volume, "3.8 L"}, {"12.7 mm (0.52 in)", Length, "0.500 in"}, {"3 lbf·ft (40 lbf·in)", Torque, "36 lbf·in"},
		{"250 bar (3400 psi)", Pressure, "3630 psi"}, {"20 mm (3/4 in)", Length, "0.787 in"},
		{"5 strokes (5 drops)", Count, "one amount"}, {"max 40 N·m (min 30 lbf·ft)", Torque, "29 lbf·ft"},
	} {
		_, problems := Parse(row.text, row.want)
		if assert.Len(t, problems, 1, row.text) {
			assert.Equal(t, Disagree, problems[0].Kind, row.text)
			assert.Contains(t, problems[0].Help, row.help, row.text)
		}
	}
}

func TestAnyReadsByTheUnit(t *testing.T) {
	for text, want := range map[string]Dimension{
		"42 Nm": Torque, "3 mm": Length, "2.4 bar": Pressure, "80 °C": Temperature, "90°": Angle, "2 turns": Angle, "500 h": Time,
		"1450 rpm": RotationalSpeed, "12.6 V": Voltage, "50 %": Ratio, "4 strokes": Count, "5 oz": Mass, "0.5 kΩ": Resistance, "500 mm to 1 m": Length,
	} {
		a, problems := Parse(text, Any)
		assert.Empty(t, problems, text)
		assert.Equal(t, want, a.Dimension, text)
	}
	_, problems := Parse("3 mm to 5 bar", Any)
	assert.Equal(t, []fault{{Wrong, "bar", "", false}}, faults("3 mm to 5 bar", problems))
}

func TestHugeInputIsLinear(t *testing.T) {
	for _, piece := range []string{"1", "a", " ", "1 h ", "(", "(1 N·m ", "1/2 ", "-", "·", "1-", "±", "0.1 ", ",", "°", "½", "\xff", "to ", "1 to ", "max ", "€"} {
		text := "42 " + strings.Repeat(piece, 1<<20/len(piece))
		for _, whole := range []string{text, text[3:]} {
			for _, want := range []Dimension{Torque, Time, Any} {
				_, problems := Parse(whole, want)
				assert.NotEmpty(t, problems, piece)
				for _, p := range problems {
					assert.Less(t, len(p.Message)+len(p.Help), 500)
				}
			}
		}
	}
}

// What is tightened by hand has no torque, and the way out is another key.
func TestHandTightIsNoTorque(t *testing.T) {
	for _, text := range []string{"hand tight", "finger-tight", "by hand", "snug"} {
		_, problems := Parse(text, Torque)
		if assert.Len(t, problems, 1, text) {
			assert.Equal(t, Malformed, problems[0].Kind, text)
			assert.Contains(t, problems[0].Help, "by-hand", text)
		}
	}
	_, problems := Parse("handy", Torque)
	assert.Contains(t, problems[0].Help, `"42 N·m"`)
	_, problems = Parse("by hand", Length)
	assert.NotContains(t, problems[0].Help, "by-hand")
}
