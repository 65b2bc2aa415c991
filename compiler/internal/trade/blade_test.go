package trade

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The most turns a minute at 19 000 ft/min for blades of 18 to 26 in, as a table of the
// lawn trade prints them (lawnsite.com, thread 233257).
func TestTipSpeedOfPublishedBlades(t *testing.T) {
	for inches, most := range map[float64]float64{18: 4032, 19: 3820, 20: 3629, 21: 3456, 22: 3299, 23: 3155, 24: 3024, 25: 2903, 26: 2791} {
		assert.InDelta(t, MostTipSpeed, TipSpeed(inches*25.4, most), 0.02, "%v in", inches)
		assert.Greater(t, TipSpeed(inches*25.4, most+2), MostTipSpeed, "%v in", inches)
	}
	assert.InDelta(t, 17043*0.3048/60, TipSpeed(21*25.4, 3100), 0.01)
	for _, nothing := range [][2]float64{{0, 3000}, {500, 0}, {-1, 3000}, {math.NaN(), 1}, {500, math.NaN()}} {
		assert.Zero(t, TipSpeed(nothing[0], nothing[1]))
	}
}
