package quantity

import (
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// gnuName is how GNU units spells our units; units it has no measure for are left out.
var gnuName = map[Dimension]map[string]string{
	Torque: {"N·m": "N m", "lbf·ft": "lbf ft", "lbf·in": "lbf in", "ozf·in": "oz force inch", "kgf·m": "kgf m", "kgf·cm": "kgf cm", "daN·m": "daN m",
		"cN·m": "cN m", "mN·m": "mN m", "N·mm": "N mm", "kN·m": "kN m"},
	Length: {"mm": "mm", "cm": "cm", "m": "m", "yd": "yard", "µm": "micron", "in": "inch", "ft": "ft", "thou": "thou", "mil": "mil"},
	Volume: {"L": "liter", "mL": "ml", "dL": "dl", "cL": "cl", "hL": "hectoliter", "cm³": "cm^3", "m³": "m^3", "US gal": "usgallon", "US qt": "usquart", "US pt": "uspint",
		"US fl oz": "usfloz", "imp gal": "brgallon", "imp qt": "brquart", "imp pt": "brpint", "imp fl oz": "brfloz", "in³": "in^3"},
	Mass: {"kg": "kg", "g": "g", "t": "tonne", "US ton": "uston", "imp ton": "brton", "lb": "lb", "oz": "oz"},
	Pressure: {"bar": "bar", "kPa": "kPa", "MPa": "MPa", "mbar": "mbar", "hPa": "hPa", "Pa": "Pa", "psi": "psi", "kgf/cm²": "kgf/cm^2", "atm": "atm",
		"inHg": "inHg", "mmHg": "mmHg", "inH₂O": "inH2O"},
	TemperatureDifference: {"°C": "degC", "°F": "degF", "K": "K"},
	Time:                  {"s": "s", "min": "min", "h": "hour"},
	Calendar:              {"days": "day", "weeks": "week", "months": "gregorianyear/12", "years": "gregorianyear"},
	Angle:                 {"°": "degree", "turns": "turn", "flats": "turn/6"},
	Speed:                 {"m/s": "m/s", "m/min": "m/min", "mm/s": "mm/s", "km/h": "km/hour", "ft/min": "ft/min", "ft/s": "ft/s", "mph": "mph"},
	Force:                 {"N": "N", "kN": "kN", "daN": "daN", "lbf": "lbf", "kgf": "kgf"},
	Flow: {"L/min": "liter/min", "L/h": "liter/hour", "mL/min": "ml/min", "m³/h": "m^3/hour", "US gal/min": "usgallon/min", "imp gal/min": "brgallon/min",
		"ft³/min": "ft^3/min"},
	Voltage:     {"V": "V", "kV": "kV", "mV": "mV"},
	Current:     {"A": "A", "mA": "mA"},
	Power:       {"W": "W", "kW": "kW", "hp": "horsepower", "PS": "metrichorsepower"},
	Viscosity:   {"mm²/s": "mm^2/s", "cSt": "cSt"},
	Resistance:  {"Ω": "ohm", "mΩ": "milliohm", "kΩ": "kiloohm", "MΩ": "megaohm"},
	Density:     {"kg/L": "kg/liter", "g/cm³": "g/cm^3", "kg/m³": "kg/m^3"},
	Energy:      {"J": "J", "kJ": "kJ", "W·h": "W hour", "kW·h": "kW hour"},
	Charge:      {"A·h": "A hour", "mA·h": "mA hour"},
	Frequency:   {"Hz": "Hz", "kHz": "kHz"},
	Application: {"L/ha": "liter/hectare", "US gal/acre": "usgallon/acre", "imp gal/acre": "brgallon/acre"},
	Distance:    {"km": "km", "mi": "mile"},
}

// Every pair of units of a dimension against GNU units, which prints 14 figures here.
// Names that another version does not know are said and left out, a few at most.
func TestFactorsAgainstGNUUnits(t *testing.T) {
	if _, err := exec.LookPath("units"); err != nil {
		t.Skip("units is not installed")
	}
	compared, unknown := 0, 0
	for d := Torque; d < Any; d++ {
		names := gnuName[d]
		list := Units(d)
		for i, from := range list {
			for _, to := range list[i+1:] {
				if names[from.Symbol] == "" || names[to.Symbol] == "" {
					continue
				}
				out, err := exec.Command("units", "-1", "--compact", "--digits", "14", names[from.Symbol], names[to.Symbol]).CombinedOutput()
				if err != nil && strings.Contains(string(out), "Unknown unit") {
					t.Logf("not known to this version: %s", strings.TrimSpace(string(out)))
					unknown++
					continue
				}
				want, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
				if !assert.NoError(t, err, "%s in %s: %s", from.Symbol, to.Symbol, out) {
					continue
				}
				got, _ := factor(from, to).Float64()
				assert.LessOrEqual(t, math.Abs(got-want), 1e-11*math.Abs(want), "%s in %s is %g, units says %g", from.Symbol, to.Symbol, got, want)
				compared++
			}
		}
	}
	assert.Greater(t, compared, 300)
	assert.Less(t, unknown, 30)
}

func TestTemperaturesAgainstGNUUnits(t *testing.T) {
	if _, err := exec.LookPath("units"); err != nil {
		t.Skip("units is not installed")
	}
	for _, fahrenheit := range []string{"212", "32", "-40", "180", "98.6", "451"} {
		out, err := exec.Command("units", "-1", "--compact", "--digits", "14", "tempF("+fahrenheit+")", "tempC").CombinedOutput()
		assert.NoError(t, err, string(out))
		want, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
		assert.NoError(t, err)
		got, _ := find(t, Temperature, "°F").ToBase(rat(t, fahrenheit)).Float64()
		assert.InDelta(t, want, got, 1e-9, fahrenheit)
	}
}

// GNU units also keeps torque from energy and refuses ft lb for want of a force:
// the spellings of the trade need a table of their own.
func TestGNUUnitsRefusesTheSpellingsOfTheTrade(t *testing.T) {
	if _, err := exec.LookPath("units"); err != nil {
		t.Skip("units is not installed")
	}
	out, err := exec.Command("units", "-1", "ft lb", "N m").CombinedOutput()
	assert.Error(t, err)
	assert.Contains(t, string(out), "conformability error")
	amount, problems := Parse("1 ft lb", Torque)
	assert.Empty(t, errors(problems))
	assert.Equal(t, "lbf·ft", amount.Unit.Symbol)
}
