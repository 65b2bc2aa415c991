package trade

// Roughness is the nut factor K of a thread in one state: torque = K · diameter · load.
// Usual is the most of an ordinary one, Most the most that is published for any.
type Roughness struct {
	Least, Usual, Most float64
	Published          bool // the figures were read in print, so that an error may rest on Most
}

// roughness of each state a thread can be in. Dry 0.20 to 0.25, oil 0.15 to 0.20 and
// anti-seize 0.12 to 0.16: mechconcepts.tech, bolt torque. Dry steel 0.18 to 0.27, machine
// oil 0.10 to 0.26, zinc 0.17 to 0.35: zipfastener.com, engineering data. Bare black steel
// 0.30: Shigley, table of torque factors, as quoted. A thread with anti-seize or grease is
// at the most as rough as one with machine oil. Adhesive and sealant: from memory.
var roughness = map[string]Roughness{
	"dry":         {0.18, 0.25, 0.30, true},
	"oiled":       {0.10, 0.20, 0.26, true},
	"greased":     {0.10, 0.20, 0.26, true},
	"anti-seize":  {0.12, 0.20, 0.26, true},
	"plated":      {0.15, 0.30, 0.35, true},
	"thread-lock": {0.12, 0.30, 0.35, false},
	"sealant":     {0.12, 0.30, 0.35, false},
}

// RoughnessOf gives the nut factors of a thread in a state; false for a state that is not known.
func RoughnessOf(state string) (Roughness, bool) {
	found, ok := roughness[state]
	return found, ok
}

// NutFactorTorque is K · D · F: the torque in N·m that loads a screw of a diameter in mm to a load in N.
func NutFactorTorque(factor, diameterMM, loadN float64) float64 {
	return factor * diameterMM * loadN / 1000
}

// ProofTorqueNm is the torque at which a screw reaches its proof load at one nut factor.
// The error is that of ProofLoadN.
func ProofTorqueNm(thread Thread, class Class, factor float64) (float64, error) {
	load, err := ProofLoadN(thread, class)
	return NutFactorTorque(factor, thread.DiameterMM, load), err
}
