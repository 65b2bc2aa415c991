package quantity

import (
	"slices"

	"benchleaf/compiler/internal/pattern"
)

type shapeWord struct {
	word  string
	shape Shape
}

// prefixes stand before a figure and bound it. A longer one comes before one it begins with.
var prefixes = []shapeWord{
	{"not more than", AtMost}, {"no more than", AtMost}, {"not over", AtMost}, {"not above", AtMost}, {"at most", AtMost},
	{"less than", AtMost}, {"up to", AtMost}, {"under", AtMost}, {"below", AtMost}, {"maximum", AtMost}, {"max", AtMost},
	{"≤", AtMost}, {"<=", AtMost}, {"<", AtMost},
	{"not less than", AtLeast}, {"no less than", AtLeast}, {"not under", AtLeast}, {"not below", AtLeast}, {"at least", AtLeast},
	{"more than", AtLeast}, {"over", AtLeast}, {"above", AtLeast}, {"minimum", AtLeast}, {"min", AtLeast},
	{"≥", AtLeast}, {">=", AtLeast}, {">", AtLeast},
	{"about", About}, {"approximately", About}, {"approx", About}, {"around", About}, {"roughly", About},
	{"circa", About}, {"ca", About}, {"~", About}, {"≈", About},
}

// suffixes stand behind the unit and do the same.
var suffixes = []shapeWord{
	{"maximum", AtMost}, {"max", AtMost}, {"or less", AtMost}, {"at most", AtMost},
	{"minimum", AtLeast}, {"min", AtLeast}, {"or more", AtLeast}, {"at least", AtLeast},
	{"approximately", About}, {"approx", About}, {"or so", About},
}

// separators stand between the figures of a range.
var separators = []string{"to", "through", "thru", "till", "until", "...", "..", "…", "-", "‑", "–", "—", "−"}

// stopwords are no units, whatever stands before them.
var stopwords = []string{"to", "and", "or", "through", "thru", "till", "until", "max", "maximum", "minimum", "at", "approx", "approximately"}

func readShape(text string, words []shapeWord) (shapeWord, bool) {
	for _, row := range words {
		if hasWord(text, row.word) {
			return row, true
		}
	}
	return shapeWord{}, false
}

// grade is something written where an amount belongs that looks like one and is none.
type grade struct {
	form  *pattern.Pattern
	what  string
	wants []Dimension // only taken for one where these are wanted; any when empty
}

// grades are the forms of ISO 3448 (VG), SAE J300 and J306 (oils), NLGI (greases), ISO 261 and
// ASME B1.1 (threads), ISO 898-1 (strength classes) and screw gauges.
var grades = []grade{
	{form: pattern.MustCompile(`(?i)^(iso[ -]?)?vg[ -]?\d+`), what: "a viscosity grade"},
	{form: pattern.MustCompile(`(?i)^sae[ -]?(grade )?\d`), what: "an oil grade"},
	{form: pattern.MustCompile(`(?i)^\d{1,2}w-?\d{2,3}$`), what: "an oil grade"},
	{form: pattern.MustCompile(`(?i)^(api )?gl-?\d`), what: "an oil grade"},
	{form: pattern.MustCompile(`(?i)^dot[ -]?\d`), what: "a brake fluid grade"},
	{form: pattern.MustCompile(`(?i)^nlgi\b`), what: "a grease grade"},
	{form: pattern.MustCompile(`(?i)^m\d+(\.\d+)?(\s*[x×]\s*\d+(\.\d+)?)?$`), what: "a thread"},
	{form: pattern.MustCompile(`(?i)^(\d+ )?(\d+/\d+|\d+|#\d+)-\d+\s*un[a-z]*`), what: "a thread"},
	{form: pattern.MustCompile(`^\d+/\d+-\d+$`), what: "a thread"},
	{form: pattern.MustCompile(`(?i)^(g|r|rc|rp)\s?\d+/\d+|^\d+/\d+\s*-?\s*(np|bsp)`), what: "a thread"},
	{form: pattern.MustCompile(`(?i)^(class|grade|property class)\s*\d`), what: "a strength class"},
	{form: pattern.MustCompile(`^(8\.8|10\.9|12\.9)$`), what: "a strength class", wants: []Dimension{Torque, Force, Any}},
	{form: pattern.MustCompile(`(?i)^tx?\s?\d{1,2}$`), what: "a size of a hexalobular socket"},
	{form: pattern.MustCompile(`(?i)^(no\.?|number)\s?\d`), what: "a number of a thing"},
}

// clockTime is a time as a clock shows it: 1:30.
var clockTime = pattern.MustCompile(`^(\d{1,3}):(\d{2})(?: ?h(?:ours?|rs?)?)?$`)

func gradeOf(text string, want Dimension) string {
	for _, g := range grades {
		if g.form.MatchString(text) && (len(g.wants) == 0 || slices.Contains(g.wants, want)) {
			return g.what
		}
	}
	return ""
}

// compounds are the units that may follow a larger one: 1 h 15 min, 5 ft 3 in.
var compounds = map[string][]string{
	"h": {"min", "s"}, "min": {"s"}, "ft": {"in"}, "lb": {"oz"}, "years": {"months", "weeks"}, "months": {"weeks", "days"}, "weeks": {"days"},
}

// implied is the smaller unit a bare figure behind a larger one has: 1 h 30.
var implied = map[string]string{"h": "min"}
