package trade

import (
	"strings"

	"benchleaf/compiler/internal/pattern"
)

// BrakeFluidsMix says whether two brake fluids get on: those of glycol, DOT 3, 4 and 5.1,
// do with each other; DOT 5, of silicone, only with itself. FMVSS 116, 49 CFR 571.116. A
// grade that ParseGrade does not read as a brake fluid is Unknown.
func BrakeFluidsMix(a, b string) Mixing {
	one, errOne := ParseGrade(a)
	other, errOther := ParseGrade(b)
	if errOne != nil || errOther != nil || one.Kind != BrakeFluid || other.Kind != BrakeFluid {
		return Unknown
	}
	if (one.Canonical == "DOT 5") != (other.Canonical == "DOT 5") {
		return DoesNotMix
	}
	return Mixes
}

var coolantForms = []struct {
	kind string
	form *pattern.Pattern
}{
	{"HOAT", pattern.MustCompile(`\b(?:P|PSI|SI)?-?HOAT\b|\b(?:P|SI|PSI)-?OAT\b|\bHYBRID\b`)},
	{"OAT", pattern.MustCompile(`\bOAT\b`)},
	{"IAT", pattern.MustCompile(`\bIAT\b`)},
}

// CoolantKind finds what inhibits a coolant in its words: "OAT" (organic), "HOAT" (hybrid)
// or "IAT" (inorganic). Its colour is no standard. From memory of ASTM D3306 and D6210.
func CoolantKind(words string) (kind string, ok bool) {
	words = strings.ToUpper(words)
	for _, one := range coolantForms {
		if one.form.MatchString(words) {
			return one.kind, true
		}
	}
	return "", false
}
