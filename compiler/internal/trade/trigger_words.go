package trade

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// word is one word of a text; hyphens part words.
type word struct {
	lower      string
	start, end int
	sentence   int
	comma      bool // a comma stands before it
	hidden     bool // part of another term, or ruled out by its own ending
}

// split cuts a text into words and marks those that mean something else here.
func split(text string) []word {
	var out []word
	sentence, comma, start := 0, false, -1
	flush := func(end int) {
		if start >= 0 {
			out = append(out, word{strings.ToLower(strings.ReplaceAll(text[start:end], "’", "'")), start, end, sentence, comma, false})
			start, comma = -1, false
		}
	}
	for at, r := range text {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || inside(text, at, r) {
			if start < 0 {
				start = at
			}
			continue
		}
		flush(at)
		switch r {
		case '.', '!', '?', ';', ':', '\n':
			sentence++
		case ',', '(', ')', '–', '—':
			comma = true
		}
	}
	flush(len(text))
	hideEndings(text, out)
	hideTerms(out)
	return out
}

// inside reports whether a mark belongs to the word around it: 1.5, don't.
func inside(text string, at int, r rune) bool {
	if r != '.' && r != '\'' && r != '’' {
		return false
	}
	before, _ := utf8.DecodeLastRuneInString(text[:at])
	after, _ := utf8.DecodeRuneInString(text[at+utf8.RuneLen(r):])
	if r == '.' {
		return unicode.IsDigit(before) && unicode.IsDigit(after)
	}
	return unicode.IsLetter(before) && unicode.IsLetter(after)
}

// hideEndings hides what a hyphened ending rules out or turns into a kind of tool:
// "battery-free", "fuel-resistant", "battery-operated".
func hideEndings(text string, words []word) {
	for i := range words[:max(len(words)-1, 0)] {
		next := words[i+1]
		if text[words[i].end:next.start] != "-" {
			continue
		}
		switch next.lower {
		case "free", "less", "proof", "resistant", "safe", "tight", "operated", "powered", "driven", "shaped", "style", "rated":
			words[i].hidden = true
		}
	}
}

// hideTerms hides the words that belong to another term.
func hideTerms(words []word) {
	for _, term := range otherTerms {
		for at := range words {
			if !row(words, at, term.phrase) {
				continue
			}
			for i, hide := range term.hide {
				words[at+i].hidden = words[at+i].hidden || hide
			}
		}
	}
}

// otherTerm is a phrase some of whose words mean something else in it.
type otherTerm struct {
	phrase [][]string
	hide   []bool
}

func readTerms(list []string) []otherTerm {
	var out []otherTerm
	for _, written := range list {
		term := otherTerm{phrase: alternatives(strings.ReplaceAll(written, "!", ""))}
		for _, part := range strings.Fields(written) {
			term.hide = append(term.hide, strings.HasPrefix(part, "!"))
		}
		out = append(out, term)
	}
	return out
}

// otherTerms are terms that hold the word of a hazard without the hazard; ! marks that word.
var otherTerms = readTerms([]string{
	"a|light|soft|sharp|heavy|few|hammer !blow|blows", "!roller|rollers bearing|bearings", "!roller|rollers of the|a|both|each bearing|bearings", "seat|safety|tool|lap !belt|belts", "!tank top", "!blade|blades fuse*|terminal*|connector*|type|seal", "!blade|blades of the feeler", "feeler !blade|blades", "!dead !blow", "!blow by",
	"in|each|every|next|this|last|before|by|since|late|early|until|for !spring", "!spring and|or fall|autumn|summer", "!spring season|cleaning|service|start|tune|check|storage|washer*|washers|tine*|clip|clips|pin|pins|steel",
	"face !shield*", "heat|mud|dust|rock|splash|brush|finger|wind !shield*|guard*", "!guard rail*|hair|band", "dust !guard*", "!dust cap*|cover*|seal*|boot*|shield*|plug|cup",
	"!drain pan|tray|container|hole|valve|cock|tap|hose|tube", "!oil drain pan|plug|valve|hose|tap|cock", "!gear oil|lever|shift|selector|ratio", "!battery|batteries drill|powered|operated|impact|lamp|torch|tester|cover|tray|box|hydrometer|post|grease", "!battery terminal grease|spray|protector",
	"!fuel gauge|level|consumption|type|grade|economy|tap|valve|cock|shutoff|stabilizer", "!hot key|melt|shoe|dip|spot|start|line|swap|wire", "!jack plug|socket|shaft|screw",
	"!grinding noise*|sound*|paste|compound", "valve !grinding paste|compound", "!adjusting|adjuster|adjustment|tensioning bolt*|nut*|screw*|rod|lever|knob", "!tightening torque*|order|sequence", "!cutting height|width|edge|oil|fluid|list",
	"!free play|travel|end|ends|length|height|of|from|movement|wheel", "!reel of|number|motor", "!chain of|saw", "key|supply|tow|log !chain", "!heavy duty|gauge|oil|load|wear|rust|soiling|traffic", "!solvent free",
	"!sharp bend*|bends|kink*|turn|drop|rise|rap|tap|increase|corner", "!epoxy primer|paint|coating", "!adhesive tape|label*|weight*|backing|film", "!inflation pressure|valve", "tyre|tire !pump", "!rim of", "!bead of|on",
	"!hoist cylinder|lever|valve|control", "!exhaust valve*|port*|fan|gas", "!drum brake", "!track record|width", "keep !track", "!lift|lifting lever|arm*|link*|linkage|pin|pins|cylinder*|height|tab", "!tip|tips of", "!work|working under good|bright|a", "!head gasket", "!mains water|pressure",
	"!run flat", "air !filter*|cleaner*|gap*", "!wheel bearing*|nut*|nuts|bolt*|bolts|stud*|hub|seal*|cover*", "!deck belt|screw*|bolt*|bolts|cover", "!pull cord|rope|handle|start", "!take up|note|care|turns", "!thread gauge", "!strip chart|light",
})

// isOne reports whether a word is one of a list: whole, by its stem where the list has a *, or one of the measured kinds.
func (w word) isOne(words []word, at int, list []string) bool {
	for _, want := range list {
		stem, open := strings.CutSuffix(want, "*")
		switch {
		case open && strings.HasPrefix(w.lower, stem), w.lower == want,
			want == "<mass>" && (w.measures(words, at, 25, "kg") || w.measures(words, at, 55, "lb", "lbs", "pounds")),
			want == "<volts>" && w.measures(words, at, 50, "v", "vac", "volt", "volts"):
			return true
		}
	}
	return false
}

// measures reports whether a word is a number of at least so many of a unit.
func (w word) measures(words []word, at int, least float64, units ...string) bool {
	for _, unit := range units {
		figure, joined := strings.CutSuffix(w.lower, unit)
		if !joined && (at+1 >= len(words) || words[at+1].lower != unit || words[at+1].sentence != w.sentence) {
			continue
		}
		if value, err := strconv.ParseFloat(figure, 64); err == nil && value >= least && value < 1e6 {
			return true
		}
	}
	return false
}
