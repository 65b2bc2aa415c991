package trade

import "math"

// leastShare is the part of its maximum below which a torque wrench is not tested (ISO 6789:2003: 20, 60, 100 %).
const leastShare = 0.20

// UsableRange is the range in which a torque wrench may be trusted, in the unit it is
// given in: from its lowest mark (ISO 6789:2017), but not below 20 % of its maximum
// (ISO 6789:2003), to its maximum.
func UsableRange(lowMark, maximum float64) (low, high float64) {
	return math.Max(lowMark, leastShare*maximum), maximum
}

// WrenchTolerance is the permitted error of an adjustable click wrench at a setting in
// N·m, as a fraction: 0.04 above 10 N·m, 0.06 at and below (ISO 6789, type II class A,
// as quoted in a maker's manual).
func WrenchTolerance(torqueNm float64) float64 {
	if torqueNm <= 10 {
		return 0.06
	}
	return 0.04
}

// Holdable reports whether a window of torque in N·m is wide enough for a wrench within
// its tolerance: half the window over its middle is at least the tolerance.
func Holdable(lowNm, highNm float64) bool {
	return (highNm-lowNm)/(highNm+lowNm) >= WrenchTolerance((lowNm+highNm)/2)
}

// LeverSetting is what a torque wrench is set to when an adapter moves the drive: the
// torque wanted at the fastener times L / (L + E·cos angle). L is from the drive to the
// middle of the grip, E from the drive to the fastener, both in the same unit; the result
// is in the unit of the torque. At 0° the adapter lengthens the lever, at 90° it changes
// nothing, at 180° it shortens it. It is NaN where the adapter reaches back to the grip
// or past it. Source: US Army TM 9-254, figure 4-5.
func LeverSetting(torque, lever, extension, angleDeg float64) float64 {
	reach := lever + extension*math.Cos(angleDeg*math.Pi/180)
	if !(lever > 0 && reach > lever*1e-9) {
		return math.NaN()
	}
	return torque * lever / reach
}
