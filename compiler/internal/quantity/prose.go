package quantity

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/pattern"
)

// What a sentence says of an amount is told only where it misleads for certain:
// figures that disagree, units that two countries or two trades read differently,
// decimal commas, a torque with no unit. Everything else may be plain words.
var (
	proseAmount = pattern.MustCompile(`(?:^|[\s("“])((?:\d[\d.,]*\d|\d)(?:[-\s]\d+/\d+)?(?:\s*(?:to|-|–|±)\s*\d[\d.,/]*)?[\s\x{a0}]?(?:` + proseUnits + `)(?:\s*\([^()]{2,40}\))?)(?:[\s.,;:!?)"”]|$)`)
	proseTorque = pattern.MustCompile(`(?i)\b(?:torque|tighten)\b[^.;:()]{0,48}?\bto (\d+(?:\.\d+)?)(?:[.;,!]?\s*$|[.;,!]\s)`)
	proseTraps  = []Kind{Ambiguous, Disagree, Malformed, Reversed}
)

const proseUnits = `N[·.*-]?\s?m|nm|NM|(?:ft|in|foot|inch)[-·. ]?(?:lbs?|lbf|pounds?)|(?:lbf?|lbs)[-·. ]?(?:ft|in)|kgf?[-·. ]?m|bar|psi|kPa|MPa|mm|µm|in|inch(?:es)?|°C|°F|` +
	`L|l|ml|mL|lit(?:re|er)s?|gals?|gallons?|qts?|quarts?|pts?|pints?|fl\.? ?oz|(?:US|imp) (?:gal|qt|pt|fl oz)|kg|g|lbs?`

// Prose finds the amounts in a sentence that mislead, by place.
func Prose(text string) []Problem {
	var out []Problem
	if !mayMeasure(text) {
		return proseTorques(text)
	}
	for _, span := range proseAmount.FindAllStringSubmatchIndex(text, -1) {
		start, end := span[2], span[3]
		_, problems := Parse(text[start:end], Any)
		for _, problem := range problems {
			if slices.Contains(proseTraps, problem.Kind) && !problem.Warning {
				problem.Start, problem.End = problem.Start+start, problem.End+start
				out = append(out, problem)
			}
		}
	}
	return append(out, proseTorques(text)...)
}

// mayMeasure reports quickly whether a figure may stand before a unit.
func mayMeasure(text string) bool {
	for i := 0; i < len(text); i++ {
		if text[i] < '0' || text[i] > '9' {
			continue
		}
		for i+1 < len(text) && strings.IndexByte("0123456789.,/", text[i+1]) >= 0 {
			i++
		}
		next := strings.TrimLeft(text[i+1:min(len(text), i+3)], " \t\n\f\r")
		if next != "" && (next[0] >= 0x80 || strings.IndexByte("NnfilkbpMmLgqUFI", next[0]) >= 0) {
			return true
		}
	}
	return false
}

// proseTorques finds the torques in a sentence that have no unit.
func proseTorques(text string) (out []Problem) {
	if !strings.ContainsAny(text, "0123456789") {
		return nil
	}
	for _, span := range proseTorque.FindAllStringSubmatchIndex(text, -1) {
		figure := text[span[2]:span[3]]
		out = append(out, Problem{Kind: Missing, Start: span[2], End: span[3], Message: quoted(figure) + " has no unit",
			Help: "Write " + strings.Join([]string{quoted(figure + " N·m"), quoted(figure + " lbf·ft")}, " or ") + ", or better torque = … at the step."})
	}
	return out
}
