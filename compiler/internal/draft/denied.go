package draft

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"benchleaf/compiler/internal/quantity"
)

// standing is how what is said stands: as a fact of this job or not.
type standing int

const (
	holds  standing = iota
	denied          // "don't", "not the", "never"
	story           // what happened once, or what others do
	slip            // put right at once
)

// stand marks each word by how it stands.
func stand(words []word) []standing {
	out := make([]standing, len(words))
	mark := func(from, to int, as standing) {
		for i := max(from, 0); i < to && i < len(words); i++ {
			if out[i] == holds {
				out[i] = as
			}
		}
	}
	for i := range words {
		if n := length(storyCues, words, i); n > 0 && !(words[i].lower == "a" && i > 0 && words[i].stop == 0 && helped.has(words[i-1].lower)) {
			mark(storyStart(words, i), storyEnd(words, i+n), story)
		}
		if n := length(shortCues, words, i); n > 0 {
			mark(i, min(clauseEnd(words, i+n), i+n+1), story)
		}
		if n := length(oldCues, words, i); n > 0 && !notDenials.has(words, i+n-1) {
			from := clauseStart(words, i)
			if !marked(words, max(i-12, 0)) {
				from = max(from, i-1)
			}
			mark(from, clauseEnd(words, i+n), denied)
		}
	}
	for i := range words {
		if end := pastAt(words, i); end > i {
			mark(i, end, story)
		}
		if n := length(otherOnes, words, i); n > 0 {
			mark(storyStart(words, i), clauseEnd(words, i+n), story)
		}
		if n := length(powered, words, i); n > 0 && words[i].sentence > 1 {
			mark(storyStart(words, i), clauseEnd(words, i+n), story)
		}
		if n := length(notNow, words, i); n > 0 {
			from := clauseStart(words, i)
			for from > 0 && words[from].stop == ',' && words[from-1].sentence == words[i].sentence && i-from < 10 {
				before := clauseStart(words, from-1)
				if length(slipCues, words, before) > 0 || length(slipCues, words, min(before+1, from)) > 0 {
					break // forty thou, oh hang on, that was the last one
				}
				from = before
			}
			if words[i].lower == "skip" && marked(words, max(i-12, 0)) {
				from = max(sentenceStart(words, i), i-16) // chain for the mast, this one has none, so skip that
			}
			if !marked(words, max(i-12, 0)) && i-from > 4 { // nothing tells clauses apart
				from = namedBefore(words, i)
			}
			mark(from, clauseEnd(words, i+n), denied)
		}
		if n := length(orders, words, i); n > 0 && (words[i].stop != 0 || i == 0) {
			end := i
			for end < len(words) && words[end].line == words[i].line && words[end].stop != '.' {
				end++
			}
			mark(i, end, denied)
		}
		if n := length(orElse, words, i); n > 0 {
			mark(i, min(clauseEnd(words, i+n), i+12), denied)
		}
		if w := words[i]; w.stop == ',' && wrongly.has(w.lower) && endsHere(words, i+1) {
			mark(clauseStart(words, i-1), i, denied)
		} else if w.stop == ',' && left.has(w.lower) && endsHere(words, i+1) && i > 0 { // relief valve sealed, leave
			mark(max(clausesStart(words, i-1), i-20), i+1, denied)
		}
		if from, end := others(words, i); end > from {
			mark(from, end, story)
		}
	}
	for i := range words {
		n := length(denials, words, i)
		if n == 0 || length(notDenials, words, i) > 0 || ifNot(words, i) {
			continue
		}
		if _, bound := prefixes.at(words, i); bound > 0 {
			continue
		}
		if _, bound := suffixes.at(words, i); bound > 0 {
			continue
		}
		if limited(words, i+n) || words[i].lower == "leave" && leftFor(words, i+1) {
			continue
		}
		end := clauseEnd(words, i+n)
		if !marked(words, max(i-12, 0)) { // nothing tells where the denial ends
			if _, after := numberAt(words, min(i+n, len(words)-1)); words[i].lower == "no" && after > i+n {
				continue // ten bolts no eight bolts
			}
			switch words[i].lower {
			case "no", "not", "without", "leave", "forget":
				from := i + n
				for from < len(words)-1 && (prepositions.has(words[from].lower) || determiners.has(words[from].lower)) {
					from++
				}
				end = min(end, from+2)
			default:
				end = min(end, i+n+7)
			}
		}
		if i+n < len(words) && breaksAt(words, i+n) && words[i+n].lower != "just" && words[i+n].lower != "only" {
			end = i + n
		}
		alone := end == i+n || end == i+n+1 && words[i+n].lower == "ever"
		switch {
		case alone && endsHere(words, end) && outright.has(words[i].lower): // "…, don't."
			from := clauseStart(words, i-1)
			for from > 0 && words[from].sentence == words[i].sentence && i-from < 12 && words[from].stop == ',' {
				from = clauseStart(words, from-1)
			}
			mark(from, i, denied)
		case length(takenBack, words, i) > 0:
			mark(i-5, i, denied)
			mark(i, end, denied)
		default:
			mark(i, denialEnd(words, i+n, min(end, i+n+12)), denied)
		}
	}
	return out
}

// limited reports whether a denial only tells a limit: it shouldn't drop MORE THAN TEN millimetres.
func limited(words []word, at int) bool {
	for i := at; i < min(at+5, len(words)) && words[i].stop == 0; i++ {
		if length(limits, words, i) == 0 {
			continue
		}
		_, after := numberAt(words, min(i+length(limits, words, i), len(words)-1))
		return after > i+length(limits, words, i)
	}
	return false
}

var limits = cues("more than|less than|go over|go under|go above|go below|exceed|drop below|go past|be over|be under|be more than|be less than")

// leftFor reports whether something is left as it is for a time: leave it up ten minutes.
func leftFor(words []word, at int) bool {
	for i := at; i < min(at+4, len(words)) && words[i].stop == 0; i++ {
		if w := words[i].lower; (w == "a" || w == "an") && i+1 < len(words) {
			u, n := unitAt(words, i+1)
			return n > 0 && u.kind == quantity.Time // leave it an hour
		}
		if _, after := numberAt(words, i); after > i && after < len(words) {
			u, n := unitAt(words, after)
			return n > 0 && u.kind == quantity.Time
		}
	}
	return false
}

// ifNot reports whether a denial only asks, and what follows is to be done: if not, slacken ….
func ifNot(words []word, at int) bool {
	return words[at].lower == "not" && at > 0 && words[at].stop == 0 && words[at-1].lower == "if"
}

// storyStart gives the word a story begins at: that of its clause, but not far back where nothing
// tells clauses apart.
func storyStart(words []word, at int) int {
	start := clauseStart(words, at)
	if !marked(words, max(at-12, 0)) {
		return max(start, at)
	}
	return start
}

// pastAt gives the end of what somebody tells that was done: I drilled, he had, they took. A
// clause that "you" or "it" begins is none.
func pastAt(words []word, at int) int {
	who := at
	if persons.has(words[at].lower) {
	} else if articles.has(words[at].lower) && !endsHere(words, at+1) && peopled.has(words[at+1].stem) {
		who++
	} else if !peopled.has(words[at].stem) {
		return at
	}
	next := who + 1
	for next < len(words) && next < who+3 && words[next].stop == 0 && (aside.has(words[next].lower) || numeric(words[next].lower) || strings.HasPrefix(words[next].lower, "'")) {
		next++
	}
	if endsHere(words, next) || words[who].of {
		return at
	}
	w := words[next].lower
	if words[who].lower != "i" && words[who].lower != "we" && words[who].lower != "they" && pastToo.has(w) {
		return storyEnd(words, who+1)
	}
	if w == "used" && !endsHere(words, next+1) && words[next+1].lower != "to" {
		return storyEnd(words, who+1)
	}
	if !pasts.has(w) && !(len(w) > 4 && strings.HasSuffix(w, "ed") && !notPast.has(w)) {
		return at
	}
	if w == "had" && next+1 < len(words) && (words[next+1].lower == "to" || words[next+1].lower == "better") {
		return at
	}
	return storyEnd(words, who+1)
}

var (
	pastToo   = set("put cut let hit set shut")
	persons   = set("i he she they we someone somebody nobody everyone")
	peopled   = set("lad guy fella fellow bloke chap mate apprentice brother father dad grandad uncle neighbour neighbor owner customer driver operator farmer kid boy student trainee contractor fitter boss colleague shift cousin lady woman man tech technician mechanic student volunteer tenant crew hirer")
	aside     = set("once only just never actually always even really then also both all at in last who")
	pasts     = set("was were had did went came took left lost broke bent saw found forgot thought got made ran blew fell wore stripped split burnt burned drank kept told said gave knew caught threw tore melted snapped sheared wrecked rang wrote heard felt bought sold sent spent cost drove swore")
	notPast   = set("need needed speed feed seed bleed indeed exceed proceed bed sealed used")
	wrongly   = set("wrong incorrect rubbish nonsense ignore")
	orders    = cues("to order|on order|order list|parts to order|to be ordered|next time|next visit|next service|for next time|shopping list")
	notNow    = cues("that was the|that was for the|not due|not touched|next visit|next time|not this time|not this visit|not today|not in stock|not needed this|done last|was done|were done|was changed|were changed|another day|another job|separate job|other job|own sheet|separate sheet|last time|last lot|last visit|last service|the time before|not our job|not my job|not ours|not yours to|leaving that alone|leave that alone|leaving it alone|leave it alone|leaving those alone|leave those alone|can wait|did them|did those|did that one|was new in|were new in|different sheet|different card|sheet of its own|card of its own|job of its own|its own video|got its own|outside firm|not part of this|out job|off job|skip that|skip those|skip this")
	powered   = cues("electric one|diesel one|petrol one|gas one|cordless one|older one|bigger one|smaller one")
	orElse    = cues("or you'll|or it'll|or they'll|or you will|or it will|otherwise you'll|otherwise it'll|otherwise they'll|otherwise the|or else|or you end up")
	otherOnes = cues("the other machine|the other pump|the other engine|other machines|some machines|the other unit|the other model|the bigger model|the bigger one takes|the smaller one takes|the smaller model|the newer model|the newer ones|the older model|the older ones|the mark one|the mark two|the mark three|the diesel one|the electric one|the petrol one|the one next door|next door's|the neighbour's|the neighbor's|his machine|her machine|their machine|on those ones|on that one you|the new model|the previous model|previous card|the old card|the last card|old manual")
)

// denialEnd ends a denial where somebody else begins to speak or act: don't touch it YOU only …
func denialEnd(words []word, from, end int) int {
	for i := from + 2; i < end; i++ {
		switch words[i].lower {
		case "people", "you", "i", "we", "he", "folks", "they":
			return i
		}
	}
	return end
}

// namedBefore gives the word at which the name of a thing begins close before a word: the fan
// filter, other end.
func namedBefore(words []word, at int) int {
	for i := at - 1; i >= max(at-9, 0) && words[i].sentence == words[at].sentence; i-- {
		if w := words[i].lower; w == "the" || w == "that" || w == "your" || w == "other" || w == "this" {
			return i
		}
	}
	return max(at-4, 0)
}

// clausesStart gives the first word of the clauses, apart by commas, that a word ends.
func clausesStart(words []word, at int) int {
	from := clauseStart(words, at)
	for from > 0 && words[from].stop != '.' && words[from-1].sentence == words[from].sentence {
		from = clauseStart(words, from-1)
	}
	return from
}

// helped are words before somebody who helps: with a mate.
var helped = set("with get need needs want wants take takes or and have grab ask")

// left are words that, alone behind a comma, leave what was said before them.
var left = set("skip leave")

// others gives the words that tell what another does, or what another machine had: that one the
// dealer does, Steve runs his to ninety, the last motor had.
func others(words []word, at int) (from, end int) {
	if endsHere(words, at+1) {
		return 0, 0
	}
	w, next := words[at], words[at+1]
	switch {
	case at > 0 && byName(words, at) && (next.lower == "does" || next.lower == "do") && !endsHere(words, at+2) && pronouns.has(words[at+2].lower):
		return clausesStart(words, at), clauseEnd(words, at+2) // every 3 months, Sandra does that
	case roles.has(w.stem) && (next.lower == "do" || next.lower == "does" || next.lower == "handle" || next.lower == "handles") && (endsHere(words, at+2) || pronouns.has(words[at+2].lower) || articles.has(words[at+2].lower)):
		return clausesStart(words, at), clauseEnd(words, at+2)
	case at > 0 && w.stop == 0 && owners.has(next.lower) && w.stem != w.lower && actionWords()[w.stem] && !speakers.has(words[at-1].lower):
		return clausesStart(words, at), storyEnd(words, at+1)
	case former.has(w.lower) && at > 0 && w.stop == 0 && articles.has(words[at-1].lower) && !endsHere(words, at+2) && lettersOnly(next.lower) && (words[at+2].lower == "had" || words[at+2].lower == "took" || words[at+2].lower == "ran" || words[at+2].lower == "used" || words[at+2].lower == "came"):
		return at - 1, storyEnd(words, at+2)
	}
	return 0, 0
}

// byName reports whether a word is the name of somebody, by its capital within a sentence.
func byName(words []word, at int) bool {
	first, _ := utf8.DecodeRuneInString(words[at].raw)
	return unicode.IsUpper(first) && words[at].stop != '.' && len(words[at].lower) > 2 && words[at].raw != strings.ToUpper(words[at].raw) && !known(words, at)
}

var (
	roles  = set("housekeeping dealer electrician contractor driver operator cleaner firm customer insurer inspector agent caretaker janitor landlord fitter")
	owners = set("his hers theirs")
	former = set("last old previous first other former")
)

// outright are denials that, standing alone, deny what was said before them.
var outright = set("don't dont never do")

func endsHere(words []word, at int) bool { return at >= len(words) || words[at].stop != 0 }

// length gives the words of the longest cue at a word, 0 where there is none.
func length(cues *phrases[bool], words []word, at int) int {
	if at < 0 || at >= len(words) {
		return 0
	}
	_, n := cues.at(words, at)
	return n
}

// breaksAt reports whether a clause ends before a word: and, but, it's, there's.
func breaksAt(words []word, at int) bool {
	w := words[at]
	return breaks.has(w.lower) || w.of && (w.lower == "it" || w.lower == "that" || w.lower == "there")
}

// clauseStart gives the first word of the clause a word stands in.
func clauseStart(words []word, at int) int {
	at = max(at, 0)
	for at > 0 && words[at].stop == 0 && words[at].sentence == words[at-1].sentence && !breaksAt(words, at) {
		at--
	}
	return at
}

// clauseEnd gives the word behind the clause that goes on at a word.
func clauseEnd(words []word, at int) int {
	for i := at; i < len(words); i++ {
		if words[i].stop != 0 && !words[i].hyphen || breaksAt(words, i) && i > at {
			return i
		}
	}
	return len(words)
}

// storyEnd goes on over commas to the end of the sentence, not further than some words.
func storyEnd(words []word, at int) int {
	for i := at; i < len(words); i++ {
		if words[i].stop == '.' || i > at+7 && !marked(words, at) || i > at+25 || turns.has(words[i].lower) {
			return i
		}
	}
	return len(words)
}

// slips marks what was put right at once: of like things on both sides of "no wait", the first.
func slips(words []word, items []item, standings []standing) {
	for i := range words {
		n := length(slipCues, words, i)
		if n == 0 || standings[i] == story {
			continue
		}
		if _, after := numberAt(words, min(i+n, len(words)-1)); words[i].lower == "no" && n == 1 && after > i+1 && !marked(words, max(i-12, 0)) {
		} else if w := words[i].lower; w == "no" && n == 1 && (words[i].stop == 0 || i+1 >= len(words) || words[i+1].stop == 0) {
			continue
		}
		if slipOfPart(words, items, standings, i, n) {
			continue
		}
		var last, next *item
		for k := range items {
			if it := &items[k]; it.from >= i+n && it.kind == amountItem && it.from-i < 9 {
				next = it
				break
			}
		}
		doubled := false // what was wrong is the earlier figure, which is said once more
		for k := range items {
			it := &items[k]
			if next != nil && it.to <= i && i-it.to <= 10 && it.kind == amountItem && words[it.from].sentence == words[i].sentence && it.amount.low.value.Cmp(next.amount.low.value) == 0 && words[i].lower == "no" {
				last, doubled = it, true
			}
			if it.to <= i && i-it.to <= 7 && !(last != nil && doubled) && it.kind == amountItem && words[it.from].sentence >= words[i].sentence-1 {
				last = it
			}
		}
		if last != nil && next == nil { // forty thou, oh hang on, that was the last motor as well, thirty-two thou
			for k := range items {
				if it := &items[k]; it.from >= i+n && it.from-i < 13 && it.kind == amountItem && it.amount.unit.symbol != "" && it.amount.unit == last.amount.unit {
					next = it
					break
				}
			}
		}
		if last == nil || next == nil {
			continue
		}
		if last.amount.unit.symbol != "" && next.amount.unit.symbol == "" && next.amount.low.value.Cmp(last.amount.high.orLow(last.amount.low).value) <= 0 {
			next.amount.unit = last.amount.unit
		}
		end := i
		if doubled {
			end = last.to
		}
		for k := last.from; k < end; k++ {
			standings[k] = slip
		}
	}
}

// slipOfPart marks the name of a part that was put right at once: the blade, no, the wedge. It
// reports whether one stood right before the words.
func slipOfPart(words []word, items []item, standings []standing, at, length int) bool {
	before := -1
	for k, it := range items {
		if it.to == at && (it.kind == partItem || it.kind == toolItem || it.kind == fluidItem) && words[it.from].sentence == words[at].sentence {
			before = k
		}
	}
	next := at + length
	if before < 0 || next+1 >= len(words) || words[next].sentence != words[at].sentence {
		return false
	}
	same := slices.ContainsFunc(items, func(it item) bool {
		return it.kind == items[before].kind && it.from >= next && it.from-next <= 2
	})
	if !same && !(words[next].lower == "the" && lettersOnly(words[next+1].lower) && !stopWords.has(words[next+1].lower)) {
		return false
	}
	for i := items[before].from; i < items[before].to; i++ {
		standings[i] = slip
	}
	return true
}

func (n number) orLow(low number) number {
	if n.value == nil {
		return low
	}
	return n
}

// marked reports whether marks stand in the words behind a place.
func marked(words []word, at int) bool {
	for i := at; i < min(at+25, len(words)); i++ {
		if words[i].stop != 0 && !words[i].paused && words[i].line == words[at].line {
			return true
		}
	}
	return false
}
