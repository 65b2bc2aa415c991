package trade

import (
	"fmt"
	"strings"

	"benchleaf/compiler/internal/pattern"
)

// Class is a strength class or grade of a screw.
type Class struct {
	Name     string // "8.8", "grade 5", "A2-70"
	Standard string // ISO 898-1, SAE J429, ISO 3506-1
	Inch     bool   // only for inch threads; the others are only for metric ones, stainless for both
}

// Strength is what a screw of a class is made to bear, in MPa. Proof is 0 where the standard gives none.
type Strength struct{ ProofMPa, TensileMPa, YieldMPa float64 }

const (
	mpaPerPsi = 0.006894757293168361 // lbf/in², NIST SP 811 App. B.8
	stainless = "ISO 3506-1"
)

// classRow holds for diameters over one and up to another, in mm.
type classRow struct {
	name        string
	over, up    float64
	proof, rm   float64
	yield       float64
	psi         bool
	stainlessOf bool
}

// classes is ISO 898-1 in MPa (proof and tensile reproduce the published loads) and SAE
// J429 in psi (china-bolts.com, boltport.com). Yield is nominal. ISO 3506-1 is from memory.
var classes = []classRow{
	{name: "4.6", up: 39, proof: 225, rm: 400, yield: 240},
	{name: "4.8", up: 39, proof: 310, rm: 420, yield: 320},
	{name: "5.8", up: 39, proof: 380, rm: 520, yield: 400},
	{name: "8.8", up: 16, proof: 580, rm: 800, yield: 640},
	{name: "8.8", over: 16, up: 39, proof: 600, rm: 830, yield: 640},
	{name: "9.8", up: 16, proof: 650, rm: 900, yield: 720},
	{name: "10.9", up: 39, proof: 830, rm: 1040, yield: 900},
	{name: "12.9", up: 39, proof: 970, rm: 1220, yield: 1080},
	{name: "grade 1", over: 6, up: 38.1, proof: 33000, yield: 36000, rm: 60000, psi: true},
	{name: "grade 2", over: 6, up: 19.05, proof: 55000, yield: 57000, rm: 74000, psi: true},
	{name: "grade 2", over: 19.05, up: 38.1, proof: 33000, yield: 36000, rm: 60000, psi: true},
	{name: "grade 5", over: 6, up: 25.4, proof: 85000, yield: 92000, rm: 120000, psi: true},
	{name: "grade 5", over: 25.4, up: 38.1, proof: 74000, yield: 81000, rm: 105000, psi: true},
	{name: "grade 8", over: 6, up: 38.1, proof: 120000, yield: 130000, rm: 150000, psi: true},
	{name: "-50", up: 39, rm: 500, yield: 210, stainlessOf: true},
	{name: "-70", up: 39, rm: 700, yield: 450, stainlessOf: true},
	{name: "-80", up: 39, rm: 800, yield: 600, stainlessOf: true},
}

var (
	isoClass       = pattern.MustCompile(`^(?:iso 898(?:-1)? )?(?:class |grade )?(\d{1,2}\.\d)$`)
	saeGrade       = pattern.MustCompile(`^(?:sae )?(?:j429 )?(?:grade|gr\.?|sae) ?(\d{1,2})$`)
	stainlessClass = pattern.MustCompile(`^a([1-5]l?)-(\d{2})$`)
	bareNumber     = pattern.MustCompile(`^(?:class )?(\d{1,2})$`)
)

// ParseClass reads "8.8", "class 10.9", "grade 5", "SAE grade 8", "A2-70". A bare "8" is
// an error, as it may be a grade of SAE J429 or a class of nut. The error says what is known.
func ParseClass(text string) (Class, error) {
	plain := squeeze(text)
	var class Class
	if m := isoClass.FindStringSubmatch(plain); m != nil {
		class = Class{Name: m[1], Standard: "ISO 898-1"}
	} else if m := saeGrade.FindStringSubmatch(plain); m != nil {
		class = Class{Name: "grade " + m[1], Standard: "SAE J429", Inch: true}
	} else if m := stainlessClass.FindStringSubmatch(plain); m != nil {
		class = Class{Name: strings.ToUpper(plain), Standard: stainless}
	} else if m := bareNumber.FindStringSubmatch(plain); m != nil {
		return Class{}, fmt.Errorf("%q does not say the system; an inch screw has \"grade %s\" (SAE J429), a metric one two numbers: \"8.8\" (ISO 898-1)", text, m[1])
	}
	for _, row := range classes {
		if class.Name != "" && row.is(class) {
			return class, nil
		}
	}
	return Class{}, unknown("strength class", text, append(classNames(), "A2-70", "A4-80"))
}

func (r classRow) is(class Class) bool {
	if r.stainlessOf {
		return class.Standard == stainless && strings.HasSuffix(class.Name, r.name)
	}
	return r.name == class.Name
}

func classNames() []string {
	var out []string
	for _, row := range classes {
		if !row.stainlessOf && (len(out) == 0 || out[len(out)-1] != row.name) {
			out = append(out, row.name)
		}
	}
	return out
}

// Strength gives what a screw of the class and thread is made to bear. The error says
// that a metric class is on an inch thread or the other way round, that the thread is a
// pipe thread, or that the class ends before that diameter.
func (c Class) Strength(thread Thread) (Strength, error) {
	switch {
	case thread.Pipe():
		return Strength{}, fmt.Errorf("%s is a pipe thread, and %s has no loads for it", thread.Written, c.Standard)
	case c.Inch && thread.Metric():
		return Strength{}, fmt.Errorf("%q is a grade of inch screws (SAE J429), and %s is metric", c.Name, thread.Written)
	case c.Standard == "ISO 898-1" && !thread.Metric():
		return Strength{}, fmt.Errorf("%q is a class of metric screws (ISO 898-1), and %s is an inch thread", c.Name, thread.Written)
	}
	for _, row := range classes {
		if row.is(c) && thread.DiameterMM > row.over && thread.DiameterMM <= row.up+sameMM {
			unit := 1.0
			if row.psi {
				unit = mpaPerPsi
			}
			return Strength{row.proof * unit, row.rm * unit, row.yield * unit}, nil
		}
	}
	return Strength{}, fmt.Errorf("%s has no %q for %s", c.Standard, c.Name, thread.Written)
}

// ProofLoadN is stress area times proof stress, in N.
func ProofLoadN(thread Thread, class Class) (float64, error) {
	strength, err := class.Strength(thread)
	if err != nil {
		return 0, err
	}
	if strength.ProofMPa == 0 {
		return 0, fmt.Errorf("%s gives no proof load for %q", class.Standard, class.Name)
	}
	area, _ := thread.StressAreaMM2()
	return area * strength.ProofMPa, nil
}
