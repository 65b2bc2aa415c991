package trade

// plugTorques are the greatest torques that two works standards for screw plugs give by diameter in
// mm, into steel or grey cast iron, in N·m: MTN 5183-1 for DIN 908, DIN 910 and DIN 7604 with a copper
// ring (MTU manual 20080/1 E, section 00.0003) and MTN 5183-6 (MTU manual M015655/05E, general
// information). At each of these diameters that of the second is the greater.
var plugTorques = []struct{ diameterMM, torqueNm float64 }{
	{10, 20}, {12, 35}, {14, 45}, {16, 55}, {18, 70}, {22, 100}, {27, 170}, {33, 310}, {42, 330}, {48, 420},
}

// PlugTorqueNm is the greatest torque published for a screw plug of a parallel thread, or that of the
// next larger one listed. It is false for a taper thread, which seals in itself, and above 48 mm.
func PlugTorqueNm(thread Thread) (torqueNm float64, ok bool) {
	if thread.Series == PipeTaper || thread.Series == NPT {
		return 0, false
	}
	for _, row := range plugTorques {
		if thread.DiameterMM <= row.diameterMM+sameMM {
			return row.torqueNm, true
		}
	}
	return 0, false
}
