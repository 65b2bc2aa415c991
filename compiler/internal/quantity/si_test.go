package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// By NIST SP 811 (2008), appendix B.8, and the definitions of the SI Brochure.
func TestSI(t *testing.T) {
	for _, c := range []struct {
		text string
		of   Dimension
		want float64
		unit string
	}{
		{"1 lbf·ft", Torque, 1.3558179483314004, "N·m"}, {"1 in", Length, 0.0254, "m"}, {"1 US gal", Volume, 3.785411784e-3, "m³"},
		{"1 lb", Mass, 0.45359237, "kg"}, {"1 psi", Pressure, 6894.757293168361, "Pa"}, {"32 °F", Temperature, 273.15, "K"},
		{"-40 °C", Temperature, 233.15, "K"}, {"9 °F", TemperatureDifference, 5, "K"}, {"1 h 15 min", Time, 4500, "s"}, {"2 weeks", Calendar, 1209600, "s"},
		{"180°", Angle, 3.141592653589793, "rad"}, {"3000 rpm", RotationalSpeed, 50, "s⁻¹"}, {"60 L/min", Flow, 0.001, "m³/s"},
		{"46 mm²/s", Viscosity, 46e-6, "m²/s"}, {"50 %", Ratio, 0.5, "1"}, {"1.28 kg/L", Density, 1280, "kg/m³"}, {"45 A·h", Charge, 162000, "C"},
		{"200 L/ha", Application, 2e-5, "m³/m²"}, {"5000 km", Distance, 5e6, "m"}, {"4 strokes", Count, 4, "1"},
	} {
		amount, _ := Parse(c.text, c.of) // it may find an amount unusual
		low, ok := amount.Min()
		require.True(t, ok)
		value, unit := c.of.SI(low)
		got, _ := value.Float64()
		assert.InEpsilon(t, c.want, got, 1e-14, c.text)
		assert.Equal(t, c.unit, unit, c.text)
	}
	for d := Torque; d < Any; d++ {
		_, unit := d.SI(one)
		assert.NotEmpty(t, unit, d.String())
	}
}
