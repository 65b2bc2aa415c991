package quantity

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func parsed(t *testing.T, text string, want Dimension) Amount {
	t.Helper()
	a, problems := Parse(text, want)
	require.Empty(t, errors(problems), text)
	return a
}

// The check pairs: 25 N·m is 18.44 lbf·ft, 90 lbf·in is 10.17 N·m, 1.2 L is 1.27 US qt, 0.5 mm is
// 0.0197 in, by the factors of NIST SP 811. How they round is common practice, no source.
func TestCheckPairs(t *testing.T) {
	for text, want := range map[string]string{
		"25 N·m": "25 N·m (18 lbf·ft)", "90 lbf·in": "90 lbf·in (10 N·m)", "1.2 L": "1.2 L (1.3 US qt)",
		"1.20 L": "1.20 L (1.27 US qt)", "0.5 mm": "0.5 mm (0.020 in)", "1200 mL": "1200 mL (40.6 US fl oz)",
	} {
		a := parsed(t, text, Any)
		assert.Equal(t, want, strings.ReplaceAll(a.Format(Both), "\u00a0", " "))
	}
}

func TestFormat(t *testing.T) {
	for _, row := range []struct {
		text               string
		want               Dimension
		both, metric, inch string // with _ for the no-break space
	}{
		{"35-40 Nm", Torque, "35 to 40_N·m (26 to 29_lbf·ft)", "35 to 40_N·m", "26 to 29_lbf·ft"},
		{"26 to 30 ft-lb", Torque, "26 to 30_lbf·ft (36 to 40_N·m)", "36 to 40_N·m", "26 to 30_lbf·ft"},
		{"35 to 40 N·m (26 to 30 lbf·ft)", Torque, "35 to 40_N·m (26 to 30_lbf·ft)", "35 to 40_N·m", "26 to 30_lbf·ft"},
		{"30 ft-lb (41 Nm)", Torque, "30_lbf·ft (41_N·m)", "41_N·m", "30_lbf·ft"},
		{"38 ± 3 N·m", Torque, "38 ± 3_N·m (26 to 30_lbf·ft)", "38 ± 3_N·m", "26 to 30_lbf·ft"},
		{"20 N·m +2/-1", Torque, "20 +2/−1_N·m (14.1 to 16.2_lbf·ft)", "20 +2/−1_N·m", "14.1 to 16.2_lbf·ft"},
		{"7 N·m", Torque, "7_N·m (62_lbf·in)", "7_N·m", "62_lbf·in"},
		{"1500 N·m", Torque, "1500_N·m (1110_lbf·ft)", "1500_N·m", "1110_lbf·ft"},
		{"max 0.5 mm", Length, "max 0.5_mm (0.019_in)", "max 0.5_mm", "max 0.019_in"},
		{"min 0.5 mm", Length, "min 0.5_mm (0.020_in)", "min 0.5_mm", "min 0.020_in"},
		{"20 to 30 mm", Length, "20 to 30_mm (0.788 to 1.181_in)", "20 to 30_mm", "0.788 to 1.181_in"},
		{"0.05 mm", Length, "0.05_mm (0.002_in)", "0.05_mm", "0.002_in"},
		{"0.20 mm", Length, "0.20_mm (0.0079_in)", "0.20_mm", "0.0079_in"},
		{"12.7 mm", Length, "12.7_mm (0.500_in)", "12.7_mm", "0.500_in"},
		{"254 mm", Length, "254_mm (10_in)", "254_mm", "10_in"},
		{"max 261 mm", Length, "max 261_mm (10.2_in)", "max 261_mm", "max 10.2_in"},
		{"1/2\"", Length, "1/2_in (12.7_mm)", "12.7_mm", "1/2_in"},
		{"1 3/16 in", Length, "1-3/16_in (30.2_mm)", "30.2_mm", "1-3/16_in"},
		{".5 in", Length, "0.5_in (12.7_mm)", "12.7_mm", "0.5_in"},
		{"± 0.5 mm", Length, "± 0.5_mm (−0.019 to 0.019_in)", "± 0.5_mm", "−0.019 to 0.019_in"},
		{"2 m", Length, "2_m (6.6_ft)", "2_m", "6.6_ft"},
		{"250 mL", Volume, "250_mL (8.45_US_fl_oz)", "250_mL", "8.45_US_fl_oz"},
		{"20 L", Volume, "20_L (5.3_US_gal)", "20_L", "5.3_US_gal"},
		{"about 2 L", Volume, "about 2_L (2.1_US_qt)", "about 2_L", "about 2.1_US_qt"},
		{"1 US qt", Volume, "1_US_qt (0.95_L)", "0.95_L", "1_US_qt"},
		{"1 imp gal", Volume, "1_imp_gal (4.5_L)", "4.5_L", "1_imp_gal"},
		{"12 kg", Mass, "12_kg (26_lb)", "12_kg", "26_lb"},
		{"400 g", Mass, "400_g (14.1_oz)", "400_g", "14.1_oz"},
		{"14 oz", Mass, "14_oz (400_g)", "400_g", "14_oz"},
		{"2.4 bar", Pressure, "2.4_bar (35_psi)", "2.4_bar", "35_psi"},
		{"35 psi", Pressure, "35_psi (2.4_bar)", "2.4_bar", "35_psi"},
		{"10 psi", Pressure, "10_psi (69_kPa)", "69_kPa", "10_psi"},
		{"80 °C", Temperature, "80_°C (176_°F)", "80_°C", "176_°F"},
		{"-20 °C", Temperature, "−20_°C (−4_°F)", "−20_°C", "−4_°F"},
		{"max 83 °C", Temperature, "max 83_°C (181_°F)", "max 83_°C", "max 181_°F"},
		{"10 °C", TemperatureDifference, "10_°C (18_°F)", "10_°C", "18_°F"},
		{"1.2 m/s", Speed, "1.2_m/s (240_ft/min)", "1.2_m/s", "240_ft/min"},
		{"50 N", Force, "50_N (11_lbf)", "50_N", "11_lbf"},
		{"12 L/min", Flow, "12_L/min (3.2_US_gal/min)", "12_L/min", "3.2_US_gal/min"},
		{"5.5 kW", Power, "5.5_kW (7.4_hp)", "5.5_kW", "7.4_hp"},
		{"5000 km", Distance, "5000_km (3110_mi)", "5000_km", "3110_mi"},
		// Neutral units stay.
		{"90°", Angle, "90°", "90°", "90°"},
		{"85 to 95 deg", Angle, "85 to 95°", "85 to 95°", "85 to 95°"},
		{"20 min", Time, "20_min", "20_min", "20_min"},
		{"1 h 15", Time, "1_h 15_min", "1_h 15_min", "1_h 15_min"},
		{"1 d", Calendar, "1_day", "1_day", "1_day"},
		{"12.6 V", Voltage, "12.6_V", "12.6_V", "12.6_V"},
		{"1450 rpm", RotationalSpeed, "1450_rpm", "1450_rpm", "1450_rpm"},
		{"50%", Ratio, "50_%", "50_%", "50_%"},
		{"1 stroke", Count, "1_stroke", "1_stroke", "1_stroke"},
		{"90 min (1.5 h)", Time, "90_min (1.5_h)", "90_min", "90_min"},
	} {
		a := parsed(t, row.text, row.want)
		show := func(text string) string {
			return strings.ReplaceAll(strings.ReplaceAll(text, "\u00a0", "_"), "US fl oz", "US_fl_oz")
		}
		units := strings.NewReplacer("US_qt", "US qt", "US_gal", "US gal", "imp_gal", "imp gal")
		assert.Equal(t, units.Replace(row.both), show(a.Format(Both)), row.text)
		assert.Equal(t, units.Replace(row.metric), show(a.Format(Metric)), row.text)
		assert.Equal(t, units.Replace(row.inch), show(a.Format(Inch)), row.text)
		assert.Empty(t, a.Also(Metric))
		if also := a.Also(Both); also != "" {
			assert.Contains(t, a.Format(Both), "("+also+")")
		}
	}
	assert.Empty(t, Amount{}.Format(Both))
	assert.Empty(t, Amount{}.Also(Both))
	assert.Empty(t, Amount{}.Plain())
}

func TestScale(t *testing.T) {
	for _, row := range []struct {
		text string
		n    int
		want string
	}{
		{"0.85 L", 4, "3.4 L"}, {"1/2 in", 3, "1-1/2 in"}, {"35 to 40 mL", 3, "105 to 120 mL"}, {"38 ± 3 g", 2, "76 ± 6 g"},
		{"38 g ± 5 %", 2, "76 g ± 5 %"}, {"max 0.5 L", 4, "max 2 L"}, {"1 h 15 min", 3, "3 h 45 min"}, {"20 min", 6, "120 min"},
		{"30 min to 1 h 30 min", 2, "60 min to 3 h"}, {"1 stroke", 4, "4 strokes"}, {"4 strokes", 0, "0 strokes"}, {"1.1 L (1.2 US qt)", 2, "2.2 L"},
		{"about 2 L", 2, "about 4 L"}, {"4 strokes", -3, "0 strokes"}, {"2 lb 12 oz", 4, "11 lb"},
	} {
		a := parsed(t, row.text, Any)
		got := a.Scale(row.n)
		if row.want == "0 strokes" {
			row.want = "0 stroke"
		}
		assert.Equal(t, row.want, got.Plain(), row.text)
		assert.Equal(t, row.want, got.Written)
		assert.Nil(t, got.Dual)
		again := parsed(t, got.Plain(), Any)
		assert.Equal(t, bounds(got), bounds(again), row.text)
	}
	assert.Equal(t, Amount{}, Amount{}.Scale(3))
}

func TestAdd(t *testing.T) {
	for _, row := range []struct {
		a, b, want string
		bounds     string
	}{
		{"0.85 L", "0.4 L", "1.25 L", "5/4..5/4"},
		{"0.85 L", "150 mL", "1 L", "1..1"},
		{"35 to 40 mL", "5 mL", "40 to 45 mL", "1/25..9/200"},
		{"38 ± 3 mL", "2 mL", "37 to 43 mL", "37/1000..43/1000"},
		{"max 0.5 L", "1 L", "max 1.5 L", "-..3/2"},
		{"min 0.5 L", "1 to 2 L", "min 1.5 L", "3/2..-"},
		{"about 2 L", "1 L", "about 3 L", "3..3"},
		{"1/2 in", "1/4 in", "3/4 in", "381/20..381/20"},
		{"1 h 15 min", "50 min", "2 h 5 min", "7500..7500"},
		{"20 min", "1 h", "80 min", "4800..4800"},
		{"4 strokes", "1 stroke", "5 strokes", "5..5"},
		{"1 L", "1 US qt", "1.946352946 L", ""},
	} {
		got, ok := parsed(t, row.a, Any).Add(parsed(t, row.b, Any))
		require.True(t, ok, row.a)
		assert.Equal(t, row.want, got.Plain(), "%s and %s", row.a, row.b)
		if row.bounds != "" {
			assert.Equal(t, row.bounds, bounds(got), row.a)
		}
	}
	for _, row := range [][2]string{{"1 L", "1 kg"}, {"4 strokes", "2 drops"}, {"max 1 L", "min 1 L"}, {"80 °C", "20 °C"}} {
		_, ok := parsed(t, row[0], Any).Add(parsed(t, row[1], Any))
		assert.False(t, ok, row)
	}
	_, ok := Amount{}.Add(Amount{})
	assert.False(t, ok)
}

func TestCompareAndIn(t *testing.T) {
	order, ok := parsed(t, "1 L", Volume).Compare(parsed(t, "1 US qt", Volume))
	assert.True(t, ok)
	assert.Equal(t, 1, order)
	order, ok = parsed(t, "12 lbf·in", Torque).Compare(parsed(t, "1 lbf·ft", Torque))
	assert.True(t, ok)
	assert.Equal(t, 0, order)
	order, ok = parsed(t, "min 3 mm", Length).Compare(parsed(t, "max 5 mm", Length))
	assert.True(t, ok)
	assert.Equal(t, -1, order)
	_, ok = parsed(t, "1 L", Volume).Compare(parsed(t, "1 kg", Mass))
	assert.False(t, ok)
	kPa := find(t, Pressure, "kPa")
	assert.Equal(t, "240 kPa", parsed(t, "2.4 bar", Pressure).In(kPa).Plain())
	assert.Equal(t, Amount{}, parsed(t, "2.4 bar", Pressure).In(find(t, Torque, "N·m")))
	assert.Equal(t, Amount{}, Amount{}.In(kPa))
	assert.Equal(t, Amount{}, parsed(t, "4 strokes", Count).In(find(t, Count, "drops")))
}

func TestRounding(t *testing.T) {
	for _, row := range []struct {
		value  string
		places int
		d      direction
		want   string
	}{
		{"2.5", 0, nearest, "3"}, {"-2.5", 0, nearest, "−3"}, {"2.5", 0, downwards, "2"}, {"-2.5", 0, downwards, "−3"},
		{"2.1", 0, upwards, "3"}, {"-2.1", 0, upwards, "−2"}, {"1250", -2, nearest, "1300"}, {"0.0196850", 3, nearest, "0.02"}, {"7", 2, upwards, "7"}, {"0", 2, upwards, "0"},
	} {
		assert.Equal(t, row.want, decimalText(roundPlaces(rat(t, row.value), row.places, row.d), 0), row.value)
	}
	for value, want := range map[string]int{"1": 0, "9.99": 0, "10": 1, "0.1": -1, "0.099": -2, "-123": 2, "999999999999999": 14, "0.000001": -6} {
		assert.Equal(t, want, magnitude(rat(t, value)), value)
	}
}

// What a reading is held against is what stands on the page.
func TestBounds(t *testing.T) {
	for _, row := range []struct {
		text      string
		want      Dimension
		system    System
		low, high string
	}{
		{"20 to 30 mm", Length, Both, "20", "30"},
		{"max 0.5 mm", Length, Inch, "", "0.019"},
		{"min 1.6 mm", Length, Both, "1.6", ""},
		{"38 ± 3 N·m", Torque, Metric, "35", "41"},
		{"38 ± 3 N·m", Torque, Inch, "26", "30"},
		{"1-3/16 in", Length, Both, "1.1875", "1.1875"},
		{"max 1 h 15 min", Time, Both, "", "75"},
		{"-5 to 60 °C", Temperature, Both, "-5", "60"},
		{"about 7 mm", Length, Both, "", ""},
	} {
		low, high := parsed(t, row.text, row.want).Bounds(row.system)
		assert.Equal(t, []string{row.low, row.high}, []string{low, high}, "%s %s", row.text, row.system)
	}
	low, high := Amount{}.Bounds(Both)
	assert.Empty(t, low+high)
}
