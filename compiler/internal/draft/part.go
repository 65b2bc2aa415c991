package draft

import (
	"strings"
	"sync"
)

// part is a part as it was named.
type part struct {
	name  string // in the singular, with the words that say which one it is
	head  string // the noun alone
	class class
	many  bool // said in the plural
	bare  bool // with no word that says which one
	from  int
	to    int
}

// partAt reads the name of a part that begins at a word: words that say which one, then a noun.
func partAt(words []word, at int) (part, int) {
	var names []string
	best, length := part{}, 0
	if w := words[at]; w.lower == "grease" && (at == 0 || w.stop == '.') && !endsHere(words, at+1) {
		if p, n := partAt(words, at+1); n > 0 && p.many && p.head != "nipple" && p.head != "grease fitting" && p.head != "cap" && p.head != "seal" && p.head != "line" {
			return part{}, 0 // grease caster pivots
		}
	}
	for next := at; next < len(words) && next < at+5; {
		if next > at && (words[next].stop != 0 || words[next-1].of) {
			break
		}
		if one, n := partPhrases.at(words, next); n > 0 {
			if one.name == "shut off" && next == at && (at == 0 || words[at].stop != 0 || !determiners.has(words[at-1].lower)) {
				break // even shut off
			}
			last := words[next+n-1]
			best = part{name: joined(names, one.name), head: one.name, class: one.class, many: last.stem != last.lower, bare: false, from: at, to: next + n}
			length = next + n - at
			names = append(names, one.name)
			next += n
			if complete.has(one.name) {
				break
			}
			continue
		}
		w := words[next]
		if w.lower == "drain" && len(names) == 0 && (w.of || !endsHere(words, next+1) && words[next+1].lower == "is") {
			return part{name: "drain plug", head: "plug", class: plugPart, from: at, to: next + 1}, next + 1 - at // the drain's on the left
		}
		class, head := heads()[w.stem]
		if head && len(names) == 1 && names[0] == "drain" && (class == cavityPart || w.stem == "receiver" || w.stem == "tank" || w.stem == "boiler") {
			return part{}, 0 // drain the receiver, in short
		}
		if head && noPart(words, next) {
			break
		}
		if head && !(verbHere(words, next) && len(names) == 0) {
			name := w.stem
			if name == "box" && len(names) > 0 {
				name = "gearbox"
			}
			if len(names) > 0 && names[len(names)-1] == name {
				break
			}
			if name == "foam" {
				name, class = "foam filter", filterPart
			}
			if name == "zerk" || name == "nipple" {
				name = "grease fitting"
			}
			if _, n := toolAt(words, next+1); n > 0 && words[next+1].stop == 0 && !maybeTools.has(words[next+1].stem) && !w.of {
				break // a box spanner
			}
			best = part{name: joined(names, name), head: name, class: class, many: w.stem != w.lower, bare: len(names) == 0, from: at, to: next + 1}
			length = next + 1 - at
		}
		if !head && !modifiers.has(w.stem) && !modifiers.has(w.lower) && !(next == at && openNoun(words, at)) {
			break
		}
		if len(names) > 0 && names[len(names)-1] == w.stem {
			break
		}
		name := w.stem
		if modifiers.has(w.lower) && !head {
			name = w.lower
		}
		names = append(names, name)
		next++
	}
	if length > 0 && best.class != placePart && !complete.has(best.head) && !words[best.to-1].of && nounBehind(words, best.to) {
		w := words[best.to]
		best = part{name: joined(names, w.stem), head: w.stem, class: plainPart, from: at, to: best.to + 1}
		if len(names) == 0 {
			best.name = w.stem
		}
		length = best.to - at
	}
	if length > 0 && !endsHere(words, at+length) && words[at+length].lower == "type" {
		return part{}, 0 // wedge type
	}
	return best, length
}

// nounBehind reports whether a noun that no table knows goes on with a name: the brake MODULE
// needs …. It stands in the singular, before a mark or a verb.
func nounBehind(words []word, at int) bool {
	if at >= len(words) {
		return false
	}
	w := words[at]
	if w.stop != 0 || w.stem != w.lower || len(w.lower) < 5 || known(words, at) || !lettersOnly(w.lower) || strings.HasSuffix(w.lower, "s") || strings.HasSuffix(w.lower, "ly") || strings.HasSuffix(w.lower, "ed") || strings.HasSuffix(w.lower, "ing") || breaks.has(w.lower) || prepositions.has(w.lower) || places.has(w.lower) || vague.has(w.stem) {
		return false
	}
	return !endsHere(words, at+1) && (words[at+1].lower == "is" || words[at+1].lower == "needs" || words[at+1].lower == "wants" || words[at+1].lower == "has" || words[at+1].lower == "gets")
}

// complete are names that no other noun follows.
var complete = names("sight glass|O-ring|test point|copper washer|aluminium washer|sealing ring|packing gland|emergency stop|tool rest|castor wheel|grease fitting")

// noPart reports whether a noun is no part here: every spring, the end.
func noPart(words []word, at int) bool {
	w := words[at]
	before := ""
	if at > 0 && w.stop == 0 {
		before = words[at-1].lower
	}
	switch w.stem {
	case "finger", "hand", "thumb", "eye", "toe":
		return before == "" && endsHere(words, at+1) || before == "your" || before == "my" // Fingers: …
	case "spring":
		return springtime.has(before) || before == "every" || before == "each" || before == "this" || before == "next" || before == "last" || before == "in" || before == "since" || at+1 < len(words) && (words[at+1].lower == "go" || words[at+1].lower == "service")
	case "disconnect":
		return before == "" || before == "and" || before == "then"
	case "light":
		return !endsHere(words, at+1) && smears.has(words[at+1].lower)
	case "ring":
		if before == "" && !endsHere(words, at+1) && !isHead(words[at+1].stem) && !modifiers.has(words[at+1].lower) && lettersOnly(words[at+1].lower) && !stopWords.has(words[at+1].lower) {
			return true // ring the warden
		}
		if !endsHere(words, at+1) {
			next := words[at+1]
			return next.lower == "me" || next.lower == "us" || next.lower == "them" || next.lower == "him" || next.lower == "her" || before != "the" && before != "a" && !modifiers.has(before) && !isHead(before) && next.raw != "" && next.raw[0] >= 'A' && next.raw[0] <= 'Z' && len(next.raw) > 2
		}
	case "cleaner":
		return before != "air" && before != "oil" && before != "bath" && before != "pre" // a fluid, or a machine
	case "cross":
		return before == "criss" || before == "a" || !endsHere(words, at+1) && (words[at+1].lower == "head" || words[at+1].lower == "headed" || words[at+1].lower == "point" || words[at+1].lower == "pattern" || words[at+1].lower == "ways" || words[at+1].lower == "wise")
	case "sleeve":
		return before == "your" || before == "loose" || before == "rolled"
	case "end":
		if !endsHere(words, at+1) && isHead(words[at+1].stem) {
			return false // the end plate
		}
		return !modifiers.has(before) && !isHead(before) || before == "both" || before == "each"
	case "roll":
		return before == "blue" || before == "paper" || before == "shop" || at+1 < len(words) && words[at+1].lower == "of"
	case "drum":
		return at+1 < len(words) && words[at+1].lower == "of" // a drum of oil
	case "pipe":
		return at+1 < len(words) && words[at+1].lower == "thread"
	case "case":
		return before == "in" || before == "just"
	case "lever":
		return at+1 < len(words) && pronouns.has(words[at+1].lower)
	}
	return false
}

// smears are words behind "light" that tell how much.
var smears = set("grease oil film smear coat coating touch oiling wipe tap taps pressure load")

// springtime are words before a spring that is a season.
var springtime = set("wet dry late early cold mild warm by since until till come after before")

// isHead reports whether a word in the singular is the noun of a part.
func isHead(stem string) bool {
	_, ok := heads()[stem]
	return ok
}

func joined(names []string, last string) string {
	return strings.Join(append(append([]string{}, names...), last), " ")
}

// openNoun reports whether an unknown word may say which part it is: THE NACELLE bolts.
func openNoun(words []word, at int) bool {
	w := words[at]
	if stopWords.has(w.lower) || describing.has(w.lower) || numeric(w.lower) || len(w.lower) < 4 || w.of || endsHere(words, at+1) || actionWords()[w.lower] {
		return false
	}
	if _, unit := units.at(words, at); unit > 0 {
		return false
	}
	if _, tool := toolAt(words, at); tool > 0 || strings.HasSuffix(w.lower, "ly") || strings.HasSuffix(w.lower, "ing") || strings.HasSuffix(w.lower, "ed") {
		return false
	}
	if _, small := smalls()[w.lower]; small || denominators()[w.lower] > 0 || scales()[w.lower] > 0 {
		return false
	}
	if _, head := heads()[words[at+1].stem]; !head {
		return false
	}
	class := heads()[words[at+1].stem]
	if at+2 < len(words) && words[at+2].stop == ':' {
		return true // friction wheel: …
	}
	if at == 0 || words[at].stop != 0 { // Floor bolts, …
		return class == fastener || class == plugPart || class == sealPart || class == filterPart
	}
	return before.has(words[at-1].lower)
}

// describing are words that say how a part looks, and not which it is called.
var describing = set("stainless galvanised galvanized red blue green yellow black white grey gray orange brown pink purple silver golden shiny long short thick thin narrow heavy huge massive tall deep shallow flat round square knurled slotted pointy plain spare original genuine aftermarket cheap expensive proper daft stupid bloody dirty rusty greasy oily filthy loose tight soft hard stiff same matched single double twin triple original existing wee tiny")

// before are the words that a name may follow: the nacelle bolts, four nacelle bolts.
var before = set("the a an both all each every your my one two three four five six seven eight nine ten twelve old new")

// verbHere reports whether a word that may be a part is a deed here: "grease the pins",
// "clean it", "fit the key".
func verbHere(words []word, at int) bool {
	w := words[at].lower
	if !bothWays()[w] && !bothWays()[words[at].stem] || at > 0 && words[at].stop == 0 && determiners.has(words[at-1].lower) {
		return false
	}
	if !endsHere(words, at+1) && bothWays()[w] && (articles.has(words[at+1].lower) || words[at+1].lower == "her") && words[at+1].lower != "that" {
		return true
	}
	if at == 0 || words[at].stop != 0 {
		return false
	}
	before := words[at-1].lower
	return beforeInfinitive.has(before) || words[at].stem != words[at].lower && (before == "it" || before == "he" || before == "she" || before == "that" || before == "which")
}

// beforeInfinitive are words that a verb follows and no noun: got to lead, you'll lift.
var beforeInfinitive = set("to you i we they who can can't could must should would will won't you'll we'll they'll i'll don't")

// bothWays are words that are parts and deeds.
var bothWays = sync.OnceValue(func() map[string]bool {
	out := set("stop cover cap hose key pin ring rest float file grind clean jack lock cut chain plug screw bolt clamp tap shim grease seal clip hook fan pump switch fuse lift winch press spring jet insert stay fold stick lead guide guard fork sleeve strap face latch hinge bush pack cup ram rock gate vent drill mill sand").all()
	for word := range actionWords() {
		if isHead(word) {
			out[word] = true
		}
	}
	return out
})

var articles = set("the a an it them that this those these both all each every your new")

// prepositions are words that lead from one thing to another.
var prepositions = set("above below over under behind beside beyond past from to at on off in into onto of for with without by near between against along around round through")

// places are words that say where, so that what follows is a place and no part that is worked on.
var places = set("behind under beneath beside below above near past against by round around inside at")

// cavityOf is a part that holds a fluid, by its name alone; machineOf a machine, raisedOf what is raised.
func cavityOf(name string) part  { return part{name: name, head: name, class: cavityPart} }
func machineOf(name string) part { return part{name: name, head: name, class: machinePart} }
func raisedOf(name string) part  { return part{name: name, class: raisedPart} }
