package trade

import "slices"

// Mixing says how two fluids or greases get on with each other.
type Mixing int

// The ways two of them can get on. Unknown is a pair that no table here has.
const (
	Mixes Mixing = iota
	Borderline
	DoesNotMix
	Unknown
)

// thickeners and greaseChart are the grease incompatibility chart of the US Bureau of
// Reclamation, FIST 2-4, table 2, as reprinted at pinacia.com: C compatible, B borderline, I
// incompatible. Calcium sulfonate is not in it. Of 21 charts 12 call aluminium complex with
// lithium complex compatible, 4 borderline and 5 not (lubesngreases.com, 25/10), so that
// "mixes" must never reach a card. Clay with itself is C here; one reprint has B.
var (
	thickeners  = []string{"sodium", "aluminium-complex", "barium", "calcium", "calcium-complex", "clay", "lithium", "lithium-complex", "polyurea"}
	greaseChart = []string{
		"CIIIIIIII",
		"ICIIIIBCI",
		"IICIIIIII",
		"IIICIIBCI",
		"IIIICIIII",
		"IIIIICIII",
		"IBIBIICCI",
		"ICICIICCI",
		"IIIIIIIIC",
	}
)

// contested are pairs on which the published charts contradict each other.
var contested = [][2]string{{"aluminium-complex", "lithium-complex"}}

// ThickenersMix says whether greases of two thickeners get on.
func ThickenersMix(a, b string) Mixing {
	if a == b {
		return Mixes
	}
	if slices.Contains(contested, [2]string{min(a, b), max(a, b)}) {
		return Borderline
	}
	row, column := slices.Index(thickeners, a), slices.Index(thickeners, b)
	if row < 0 || column < 0 {
		return Unknown
	}
	switch greaseChart[row][column] {
	case 'C':
		return Mixes
	case 'B':
		return Borderline
	default:
		return DoesNotMix
	}
}
