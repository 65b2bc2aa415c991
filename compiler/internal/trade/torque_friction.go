package trade

import "math"

// leastYield is the least yield of ISO 898-1 where it is not the nominal one, in MPa,
// up to and above a diameter of 16 mm.
var leastYield = map[string][2]float64{
	"4.8": {340, 340}, "5.8": {420, 420}, "8.8": {640, 660}, "10.9": {940, 940}, "12.9": {1100, 1100},
}

// LeastYieldMPa is the stress at which a screw of a class begins to stretch for good.
// The error is that of Class.Strength.
func (c Class) LeastYieldMPa(thread Thread) (float64, error) {
	strength, err := c.Strength(thread)
	if least, ok := leastYield[c.Name]; ok && err == nil {
		if thread.DiameterMM > 16 {
			return least[1], nil
		}
		return least[0], nil
	}
	return strength.YieldMPa, err
}

// bearing is the ring a hexagon head rubs on: its washer face and the hole under it.
type bearing struct{ faceMM, holeMM float64 }

// bearings has the least washer faces of ISO 4014 and the medium holes of ISO 273, as VDI
// 2230 uses them.
var bearings = map[float64]bearing{
	8: {11.6, 9}, 10: {14.6, 11}, 12: {16.6, 13.5}, 14: {19.6, 15.5}, 16: {22.5, 17.5}, 18: {25.3, 20}, 20: {28.2, 22}, 22: {31.7, 24}, 24: {33.6, 26},
}

// rubsAt is the mean diameter a head rubs at. Sizes outside the table take the
// proportions of the ones in it: a face of 1.42 and a hole of 1.11 times the diameter.
func rubsAt(thread Thread) float64 {
	if found, ok := bearings[thread.DiameterMM]; ok && thread.Metric() {
		return (found.faceMM + found.holeMM) / 2
	}
	return (1.42 + 1.11) / 2 * thread.DiameterMM
}

// Tightened is the preload in N and the torque in N·m at which a headed screw bears a
// share of its yield, torsion and all, at one friction in thread and under the head: VDI
// 2230, Kellermann and Klein. It is false for a pipe thread and where an argument is not
// positive.
func Tightened(thread Thread, yieldMPa, share, friction float64) (preloadN, torqueNm float64, ok bool) {
	if thread.Pipe() || thread.PitchMM <= 0 || !(yieldMPa > 0 && share > 0 && friction > 0) {
		return 0, 0, false
	}
	pitch := thread.PitchMM
	flank := thread.DiameterMM - 0.649519*pitch
	core := thread.DiameterMM - 1.226869*pitch
	mean := (flank + core) / 2
	twist := 1.5 * flank / mean * (pitch/(math.Pi*flank) + 1.155*friction)
	preloadN = share * yieldMPa / math.Sqrt(1+3*twist*twist) * math.Pi / 4 * mean * mean
	torqueNm = preloadN * (0.159*pitch + 0.577*flank*friction + rubsAt(thread)/2*friction) / 1000
	return preloadN, torqueNm, true
}

// roughest is the friction of a thread in each state that few screws are above: 0.14 to
// 0.24 blank and dry, 0.08 to 0.16 with oil, grease or paste. Friction classes C and B of
// VDI 2230, from memory; a zinc-plated or glued thread is taken as the roughest of a dry one.
var roughest = map[string]float64{"dry": 0.20, "oiled": 0.16, "greased": 0.16, "anti-seize": 0.16, "plated": 0.24, "thread-lock": 0.24, "sealant": 0.24}

// Yields is the torque in N·m at which a metric screw of that thread, class and state of
// its thread begins to stretch for good. It is false where one of them is not known.
func Yields(thread Thread, class Class, state string) (torqueNm float64, ok bool) {
	yield, err := class.LeastYieldMPa(thread)
	friction, known := roughest[state]
	if err != nil || !known || !thread.Metric() {
		return 0, false
	}
	_, torqueNm, ok = Tightened(thread, yield, 1, friction)
	return torqueNm, ok
}

// Usual is the torque in N·m that VDI 2230 gives a screw of that thread and class: 90 %
// of its yield, at a friction of 0.10, the least of the published table. With a rougher
// thread it is higher. It is false where the class has no yield for the thread.
func Usual(thread Thread, class Class) (torqueNm float64, ok bool) {
	yield, err := class.LeastYieldMPa(thread)
	if err != nil {
		return 0, false
	}
	_, torqueNm, ok = Tightened(thread, yield, 0.9, 0.10)
	return torqueNm, ok
}
