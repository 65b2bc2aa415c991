package trade

import (
	"math/bits"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"benchleaf/compiler/internal/pattern"
)

// word is one word of a text; hyphens part words.
type word struct {
	lower      string
	start, end int
	sentence   int
	comma      bool     // a comma stands before it
	hidden     bool     // part of another term, or ruled out by its own ending
	ruled      bool     // ruled out by an order not to do it, or as not needed
	later      bool     // rules out only until something is done: "do not open it until"
	unit       bool     // a figure, whose unit is the next word
	lists      []uint64 // a bit for each list of the vocabulary it is in
}

// paragraph is what stands behind a line break that ends a sentence: a blank line
// or an item of a list. Other breaks are where the author's line was full.
var paragraph = pattern.MustCompile(`^[ \t]*(?:\r?\n|[-*•+] |\d+[.)] |#|$)`)

// split cuts a text into words and marks those that mean something else here.
func split(text string) []word {
	out := make([]word, 0, len(text)/5+1)
	sentence, comma, start := 0, false, -1
	flush := func(end int) {
		if start >= 0 {
			out = append(out, word{lower: strings.ToLower(strings.ReplaceAll(text[start:end], "’", "'")), start: start, end: end, sentence: sentence, comma: comma})
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
		case '.', '!', '?', ';', ':':
			sentence++
		case '\n':
			if paragraph.MatchString(text[at+1:]) {
				sentence++
			}
		case ',', '(', ')', '–', '—':
			comma = true
		}
	}
	flush(len(text))
	out = compounds(text, out)
	known().know(out)
	hideEndings(text, out)
	hideTerms(out)
	ruleOut(out)
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

// compounds makes one word of what is written in several and would read as deeds: "power
// take-off" is no taking off, a "pick-up" no picking up.
func compounds(text string, words []word) []word {
	out := words[:0]
	for at := 0; at < len(words); at++ {
		w := words[at]
		rest := words[at+1:]
		switch {
		case w.lower == "power" && len(rest) > 1 && rest[0].lower == "take" && strings.HasPrefix(rest[1].lower, "off") && rest[1].sentence == w.sentence:
			w.lower, w.end = "pto", rest[1].end
			at += 2
		case w.lower == "a" && len(rest) > 0 && rest[0].lower == "c" && text[w.end:rest[0].start] == "/":
			w.lower, w.end = "aircon", rest[0].end
			at++
		case w.lower == "pick" && len(rest) > 0 && strings.HasPrefix(rest[0].lower, "up") && text[w.end:rest[0].start] == "-":
			w.lower, w.end = "pickup", rest[0].end
			at++
		}
		out = append(out, w)
	}
	return out
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

// otherTerm is a phrase some of whose words mean something else in it.
type otherTerm struct {
	phrase []int
	hide   []bool
}

// hideTerms hides the words that belong to another term.
func hideTerms(words []word) {
	for at := range words {
		for set, mask := range known().beginTerm {
			for left := words[at].lists[set] & mask; left != 0; left &= left - 1 {
				for _, number := range known().termsFirst[set<<6+bits.TrailingZeros64(left)] {
					known().terms[number].hideAt(words, at)
				}
			}
		}
	}
}

func (t otherTerm) hideAt(words []word, at int) {
	if at+len(t.phrase) > len(words) {
		return
	}
	for i, list := range t.phrase {
		if words[at+i].sentence != words[at].sentence || !words[at+i].in(list) {
			return
		}
	}
	for i, hide := range t.hide {
		words[at+i].hidden = words[at+i].hidden || hide
	}
}

// kind is a kind of measured figure that a cue can ask for: at least so many of a unit.
type kind struct {
	name  string
	least []limit
}

type limit struct {
	least float64
	units []string
}

var measured = []kind{
	{"<mass>", []limit{{25, []string{"kg"}}, {55, []string{"lb", "lbs", "pounds"}}, {0.025, []string{"t", "ton", "tons", "tonne", "tonnes"}}}},
	{"<volts>", []limit{{50, []string{"v", "vac", "volt", "volts"}}}},
	{"<heat>", []limit{{60, []string{"c"}}, {140, []string{"f"}}}},
}

// measures reports whether a word is a figure of a kind, and whether its unit is the next word.
func (w *word) measures(words []word, at int, k kind) (within, unit bool) {
	for _, limit := range k.least {
		for _, name := range limit.units {
			figure, joined := strings.CutSuffix(w.lower, name)
			if !joined && (at+1 >= len(words) || words[at+1].lower != name || words[at+1].sentence != w.sentence) {
				continue
			}
			if value, err := strconv.ParseFloat(figure, 64); err == nil && value >= limit.least && value < 1e6 {
				return true, !joined
			}
		}
	}
	return false, false
}
