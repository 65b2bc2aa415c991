package draft

import (
	"strings"
	"sync"

	"benchleaf/compiler/internal/trade"
)

// fluid is an oil, a grease or another fluid as it was told.
type fluid struct {
	kind  string // of the language: engine-oil, gear-oil, grease …
	grade string // "15W-40", "ISO VG 46", "NLGI 2", "GL-4", "lithium", "thread-locker, blue"
	what  fluidPart
	from  int
	to    int
	open  bool // nothing tells which kind of oil the grade is of
}

type fluidPart int

const (
	gradePart fluidPart = iota
	servicePart
	thickenerPart
	productPart
	namePart // oil, with no grade
)

// letters joins spelled letters and takes "w", "v" and the like as they are said.
func letters(words []word, at int, want string) int {
	n := 0
	for i := at; i < len(words) && n < len(want); i++ {
		w := words[i]
		if i > at && w.stop == ',' {
			return 0
		}
		text := w.lower
		if said, ok := saidLetters()[text]; ok {
			text = said
		}
		if !strings.HasPrefix(want[n:], text) || text == "" {
			return 0
		}
		n += len(text)
		if n == len(want) {
			return i + 1 - at
		}
	}
	return 0
}

// saidLetters are letters as they are written when heard.
var saidLetters = sync.OnceValue(func() map[string]string {
	return map[string]string{"essay": "sa", "ess": "s", "double": "", "eye": "i", "bee": "b", "vee": "v", "gee": "g", "see": "c", "sea": "c", "jay": "j", "kay": "k", "are": "r", "double-u": "w", "el": "l", "ell": "l", "saw": "so", "sow": "so", "ice": "is", "ee": "e", "en": "n", "an": "n", "in": "n", "jee": "g", "ji": "g", "bg": "vg", "be": "v", "veegee": "vg", "aye": "i", "ay": "a", "hey": "a", "say": "sa", "es": "s", "aisle": "is", "elle": "l", "al": "l", "dgi": "gi", "lg": "lg", "energy": "nlg"}
})

// fluidAt reads a fluid or its grade that begins at a word.
func fluidAt(words []word, at int) (fluid, bool) {
	for _, read := range []func([]word, int) (fluid, bool){multigrade, monograde, viscosity, consistency, service, brakeFluid, named} {
		if f, ok := read(words, at); ok {
			f.from = at
			return f, true
		}
	}
	return fluid{}, false
}

// multigrade reads 15W-40, fifteen w forty, eighty W ninety.
func multigrade(words []word, at int) (fluid, bool) {
	from := at
	if n := letters(words, at, "sae"); n > 0 {
		from += n
	}
	if from >= len(words) {
		return fluid{}, false
	}
	low, next := "", from
	w := words[from].lower
	if bare, rest, ok := strings.Cut(w, "w"); ok && figures(bare) && len(bare) < 4 {
		low, next = bare, from+1
		if figures(rest) {
			return saidSAE(low+"W-"+rest, next, from > at)
		}
	} else {
		n, after := numberAt(words, from)
		if after == from || !n.whole || after >= len(words) || words[after].stop != 0 && !words[after].hyphen || !wSaid.has(words[after].lower) {
			return fluid{}, false
		}
		low, next = n.text(false), after+1
		if words[after].lower == "double" {
			next++
		}
	}
	if next >= len(words) || words[next].stop != 0 && !words[next].hyphen {
		return fluid{}, false
	}
	high, after := numberAt(words, next)
	if !high.whole {
		high, after = cardinal(words, next) // ten w thirty, point six of a litre
	}
	if after == next || !high.whole {
		return fluid{}, false
	}
	return saidSAE(low+"W-"+high.text(false), after, from > at)
}

// saidSAE gives an oil by its grade, with SAE before it where that was said.
func saidSAE(text string, to int, said bool) (fluid, bool) {
	f, ok := oilGrade(text, to)
	if said {
		f.grade = "SAE " + f.grade
	}
	return f, ok
}

var wSaid = set("w double-u weight double dub")

func oilGrade(text string, to int) (fluid, bool) {
	grade, err := trade.ParseGrade("SAE " + text)
	if err != nil {
		return fluid{}, false
	}
	kind := "engine-oil"
	if grade.Kind == trade.GearOil {
		kind = "gear-oil"
	}
	return fluid{kind: kind, grade: strings.TrimPrefix(grade.Canonical, "SAE "), to: to}, true
}

// gearGrades begins the grades of gear oils, which are called EP too: below them EP is of greases.
const gearGrades = 70

// monograde reads SAE 30, s a e thirty, straight thirty, thirty weight, EP 90, ep90.
func monograde(words []word, at int) (fluid, bool) {
	next := at
	said, ep := letters(words, at, "sae"), letters(words, at, "ep")
	if bare, ok := strings.CutPrefix(words[at].lower, "ep"); ok && figures(bare) && bare != "" {
		if grade, err := trade.ParseGrade("SAE " + bare); err == nil && grade.Kind == trade.GearOil {
			return fluid{kind: "gear-oil", grade: grade.Canonical, to: at + 1}, true
		}
	}
	if ep > 0 {
		if n, after := numberAt(words, at+ep); after > at+ep && n.whole && n.int() >= gearGrades {
			return oneGrade(n, after)
		}
	}
	switch {
	case said > 0:
		next += said
	case words[at].lower == "straight" || words[at].lower == "hypoid":
		next++
	default:
		n, after := numberAt(words, at)
		if after > at && n.whole && !endsHere(words, after) && (words[after].lower == "weight" || words[after].lower == "wt") {
			return oneGrade(n, after+1)
		}
		return fluid{}, false
	}
	n, after := numberAt(words, next)
	if after == next || !n.whole || next < len(words) && words[next].stop == '.' {
		return fluid{}, false
	}
	if _, unit := unitAt(words, after); unit > 0 {
		return fluid{}, false
	}
	return oneGrade(n, after)
}

func oneGrade(n number, to int) (fluid, bool) {
	grade, err := trade.ParseGrade("SAE " + n.text(false))
	if err != nil || n.int() < 10 {
		return fluid{}, false
	}
	kind := "engine-oil"
	if grade.Kind == trade.GearOil {
		kind = "gear-oil"
	}
	return fluid{kind: kind, grade: grade.Canonical, to: to}, true
}

// viscosity reads ISO VG 46, i s o v g forty six, VG 32, iso 46.
func viscosity(words []word, at int) (fluid, bool) {
	next := at
	for _, want := range []string{"isovg", "vg", "iso"} {
		if n := letters(words, at, want); n > 0 {
			next = at + n
			break
		}
	}
	for _, want := range []string{"isovg", "vg", "iso"} {
		if bare, ok := strings.CutPrefix(words[at].lower, want); ok && figures(bare) && bare != "" {
			if grade, err := trade.ParseGrade("ISO VG " + bare); err == nil {
				return oilOf(words, at, at+1, grade.Canonical), true
			}
		}
	}
	if next == at || next >= len(words) {
		return fluid{}, false
	}
	n, after := numberAt(words, next)
	if after == next || !n.whole {
		return fluid{}, false
	}
	grade, err := trade.ParseGrade("ISO VG " + n.text(false))
	if err != nil {
		return fluid{}, false
	}
	return oilOf(words, at, after, grade.Canonical), true
}

// oilOf is an oil whose grade is told at some words, of the kind that its name close by tells.
func oilOf(words []word, from, to int, grade string) fluid {
	out := fluid{kind: "hydraulic-oil", grade: grade, to: to, open: true}
	for i := max(from-4, 0); i < min(to+3, len(words)); i++ {
		if row, n := products.at(words, i); n > 0 && row.what == namePart && words[i].sentence == words[from].sentence && row.kind != "grease" && row.kind != "other" {
			out.kind, out.open = row.kind, false
		}
	}
	return out
}

// viscosities are those that hydraulic oils are sold by, by no more than their number.
var viscosities = set("15 22 32 46 68 100")

// consistency reads NLGI 2, n l g i double-o, number two grease, EP2, grease number two.
func consistency(words []word, at int) (fluid, bool) {
	next := at
	named := max(letters(words, at, "nlgi"), letters(words, at, "ngli"))
	switch {
	case named > 0:
		next += named
	case words[at].lower == "ep2" || words[at].lower == "ep1" || words[at].lower == "ep0":
		return fluid{kind: "grease", grade: "NLGI " + words[at].lower[2:], to: at + 1}, true
	case (words[at].lower == "00" || words[at].lower == "000") && greaseNear(words, at, at+1):
		return fluid{kind: "grease", grade: "NLGI " + words[at].lower, to: at + 1}, true
	case words[at].lower == "ep" || words[at].lower == "number" || words[at].lower == "no" || words[at].lower == "grade":
		next++
	default:
		return fluid{}, false
	}
	if next < len(words) && words[next].lower == "number" && words[next].stop == 0 {
		next++
	}
	text, after := zeros(words, next)
	if after == next {
		n, behind := numberAt(words, next)
		if said := heardAs()[wordAt(words, next)]; named > 0 && behind == next && said != "" {
			n, behind = whole(smalls()[said]), next+1 // n l g i too
		}
		if behind == next || !n.whole || n.int() > 6 {
			return fluid{}, false
		}
		text, after = n.text(false), behind
	}
	if named == 0 && words[at].lower != "ep" && !greaseNear(words, at, after) {
		return fluid{}, false
	}
	return fluid{kind: "grease", grade: "NLGI " + text, to: after}, true
}

func wordAt(words []word, at int) string {
	if at >= len(words) {
		return ""
	}
	return words[at].lower
}

// zeros reads the soft grades: 00, double-o, triple nought, oh oh.
func zeros(words []word, at int) (string, int) {
	if at >= len(words) {
		return "", at
	}
	switch w := words[at].lower; {
	case w == "00" || w == "000":
		return w, at + 1
	case (w == "double" || w == "triple") && at+1 < len(words) && noughts.has(words[at+1].lower):
		return strings.Repeat("0", map[string]int{"double": 2, "triple": 3}[w]), at + 2
	case noughts.has(w) && !endsHere(words, at+1) && noughts.has(words[at+1].lower):
		return "00", at + 2
	}
	return "", at
}

var noughts = set("o oh zero nought 0")

// greaseNear reports whether grease is spoken of right beside a number.
func greaseNear(words []word, from, to int) bool {
	for i := max(from-5, 0); i < len(words) && i < to+4; i++ {
		if words[i].sentence < words[from].sentence-1 || words[i].sentence > words[from].sentence {
			continue
		}
		if words[i].stem == "grease" || words[i].lower == "ep" || thickeners()[words[i].lower] != "" && words[i].sentence == words[from].sentence {
			return true
		}
	}
	return false
}

// service reads GL-4, g l five, CK-4, c i four.
func service(words []word, at int) (fluid, bool) {
	w := words[at].lower
	for _, code := range services {
		bare := strings.ReplaceAll(strings.ToLower(code), "-", "")
		if w == bare {
			return fluid{kind: serviceKind(code), grade: code, what: servicePart, to: at + 1}, true
		}
		n := letters(words, at, bare[:2])
		if n == 0 || at+n >= len(words) || words[at+n].stop != 0 && !words[at+n].hyphen {
			continue
		}
		if value, after := numberAt(words, at+n); after > at+n && value.whole && value.text(false) == bare[2:] {
			return fluid{kind: serviceKind(code), grade: code, what: servicePart, to: after}, true
		}
	}
	return fluid{}, false
}

func serviceKind(code string) string {
	if strings.HasPrefix(code, "GL") || strings.HasPrefix(code, "MT") {
		return "gear-oil"
	}
	return "engine-oil"
}

func brakeFluid(words []word, at int) (fluid, bool) {
	w := words[at].lower
	if bare, ok := strings.CutPrefix(w, "dot"); ok && bare != "" {
		if grade, err := trade.ParseGrade("DOT " + bare); err == nil {
			return fluid{kind: "brake-fluid", grade: grade.Canonical, to: at + 1}, true
		}
	}
	if w != "dot" || at+1 >= len(words) {
		return fluid{}, false
	}
	n, after := numberAt(words, at+1)
	if after == at+1 {
		return fluid{}, false
	}
	grade, err := trade.ParseGrade("DOT " + n.text(false))
	return fluid{kind: "brake-fluid", grade: grade.Canonical, to: after}, err == nil
}

// named reads a fluid that goes by a name: lithium, thread lock, anti-seize, antifreeze.
func named(words []word, at int) (fluid, bool) {
	if row, n := products.at(words, at); n > 0 {
		f := fluid{kind: row.kind, grade: row.name, what: row.what, to: at + n}
		if !endsHere(words, at+n) && !words[at+n-1].of && isHead(words[at+n].stem) && !bothWays()[words[at+n].lower] {
			if _, part := partAt(words, at); part > n {
				return fluid{}, false // coolant tank, engine oil filter
			}
		}
		if row.what == thickenerPart && row.name != "polyurea" && !greaseNear(words, at, at+n) {
			return fluid{}, false
		}
		if row.kind == "hydraulic-oil" && row.what == namePart && at+n < len(words) && words[at+n].stop != '.' {
			if number, after := numberAt(words, at+n); after > at+n && number.whole && viscosities.has(number.text(false)) && endsHere(words, after) {
				if grade, err := trade.ParseGrade("ISO VG " + number.text(false)); err == nil {
					return oilOf(words, at, after, grade.Canonical), true // hydraulic oil, thirty-two
				}
			}
		}
		if row.coloured {
			for i := at + n; i < len(words) && i < at+n+3; i++ {
				if colours.has(words[i].lower) && (words[i].stop == ',' || words[i-1].lower == "the") && words[i].sentence == words[at].sentence {
					f.grade, f.to = row.name+", "+words[i].lower, i+1
				}
			}
			if at > 0 && colours.has(words[at-1].lower) && words[at].stop == 0 {
				f.grade = row.name + ", " + words[at-1].lower
			}
		}
		return f, true
	}
	return fluid{}, false
}
