package trade

import "math"

// MostTipSpeed is how fast the tip of a mower's blade may run, in m/s: 19 000 ft/min,
// ANSI B71.1, A.22.4, read in a quotation of it.
const MostTipSpeed = 19000 * 0.3048 / 60

// TipSpeed is the speed in m/s of the tip of a blade that is so long from tip to tip,
// in mm, and turns so often a minute. It is 0 for what is not above 0.
func TipSpeed(lengthMM, perMinute float64) float64 {
	if !(lengthMM > 0 && perMinute > 0) {
		return 0
	}
	return math.Pi * lengthMM / 1000 * perMinute / 60
}
