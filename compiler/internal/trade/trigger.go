package trade

import (
	"cmp"
	"math/bits"
	"slices"
)

// Trigger is a place in a text that implies a hazard, in bytes. It spans what says so: the
// word with the deed that acts on it where that stands near ("lift the machine"), a figure
// with its unit ("38 kg"), else the word alone.
type Trigger struct {
	Hazard     string // key
	Start, End int
}

// How far a verb may stand from what it acts on, in words, and how far what is quoted may.
const (
	verbBefore = 7
	verbAfter  = 4
	quoted     = 4
)

// Triggers finds what in a sentence of a procedure implies a hazard, by place and then
// in the order of Hazards. Words are matched whole or by their stem, in any case. What is
// only looked at, ruled out ("no fuel", "do not remove the guard") or part of another
// term ("seat belt") implies nothing. Each hazard comes once for each place.
func Triggers(text string) []Trigger {
	words := split(text)
	var list []match
	for at := range words {
		for set, mask := range known().beginCue {
			for left := words[at].lists[set] & mask; left != 0; left &= left - 1 {
				for _, number := range known().byFirst[set<<6+bits.TrailingZeros64(left)] {
					if first, last, ok := known().cues[number].matches(words, at); ok {
						list = append(list, match{number, Trigger{known().cues[number].hazard, words[first].start, words[last].end}})
					}
				}
			}
		}
	}
	slices.SortFunc(list, func(a, b match) int {
		return cmp.Or(cmp.Compare(a.Start, b.Start), cmp.Compare(a.cue, b.cue))
	})
	return apart(list)
}

// match is a trigger with the number of the cue that found it.
type match struct {
	cue int
	Trigger
}

// apart drops triggers of one hazard that overlap an earlier one.
func apart(list []match) []Trigger {
	var out []Trigger
	for _, found := range list {
		overlaps := func(earlier Trigger) bool { return earlier.Hazard == found.Hazard && found.Start < earlier.End }
		if !slices.ContainsFunc(out, overlaps) {
			out = append(out, found.Trigger)
		}
	}
	return out
}

// matches reports whether a cue holds at a word, with the first and last word that say so.
func (c cue) matches(words []word, at int) (first, last int, ok bool) {
	if !row(words, at, c.phrase) || !c.despite && denied(words, at) || c.deed && thing(words, at) {
		return 0, 0, false
	}
	first, last = at, at+len(c.phrase)-1
	next := last + 1
	if len(c.not) > 0 && next < len(words) && words[next].sentence == words[at].sentence && !words[next].comma && words[next].in(c.not[0]) {
		return 0, 0, false
	}
	if len(c.verbs)+len(c.beside) == 0 && !c.despite && lookedAt(words, at) {
		return 0, 0, false
	}
	if words[last].unit {
		last++
	}
	from, to := first, last
	quote := func(start, end int) {
		if from-end <= quoted && start-to <= quoted {
			first, last = min(first, start), max(last, end)
		}
	}
	for _, verbs := range c.verbs {
		verb := acts(words, at, next-1, verbs)
		if verb < 0 {
			return 0, 0, false
		}
		quote(verb, verb)
	}
	for _, beside := range c.beside {
		place := stands(words, at, len(c.phrase), beside)
		if place < 0 {
			return 0, 0, false
		}
		quote(place, place+len(beside)-1)
	}
	for _, absent := range c.absent {
		if anywhere(words, at, absent) {
			return 0, 0, false
		}
	}
	return first, last, true
}

// row reports whether the words from a place on are those of a phrase, in one sentence.
func row(words []word, at int, phrase []int) bool {
	if at+len(phrase) > len(words) {
		return false
	}
	for i, list := range phrase {
		w := &words[at+i]
		if w.hidden || w.sentence != words[at].sentence || !w.in(list) {
			return false
		}
	}
	return true
}

// acts gives the verb that acts on the words first to last, -1 where none does: it stands
// before them with no other deed between, or soon after them as a participle.
func acts(words []word, first, last, verbs int) int {
	for i := first - 1; i >= 0 && i >= first-verbBefore && words[i].sentence == words[first].sentence; i-- {
		w := &words[i]
		if w.in(verbs) && !w.hidden && !past(w.lower) && !named(words, i) && !rid(words, i) && !denied(words, i) && !trifle(words, i, first) {
			return i
		}
		if w.in(known().turnsAway) {
			break
		}
	}
	for i := last + 1; i < len(words) && i <= last+verbAfter && words[i].sentence == words[first].sentence; i++ {
		w := &words[i]
		if w.comma || w.in(known().turnsAway) || w.in(known().joins) {
			break
		}
		if w.in(verbs) && !w.hidden && participle(w.lower) && !denied(words, i) {
			return i
		}
	}
	return -1
}

// rid reports whether a word says what is away: "keep clear of the belt".
func rid(words []word, at int) bool {
	return (words[at].lower == "clear" || words[at].lower == "free") && at+1 < len(words) && words[at+1].lower == "of"
}

// trifle reports whether a verb takes some small thing off the words at first and leaves
// them alone: "take the label off the cover".
func trifle(words []word, verb, first int) bool {
	for i := first - 1; i > verb && i >= first-3; i-- {
		if !words[i].in(known().offIt) {
			continue
		}
		for i--; i > verb; i-- {
			if words[i].in(known().trifles) {
				return true
			}
		}
	}
	return false
}

// named reports whether what may be a verb is a noun: "the tension of the belt".
func named(words []word, at int) bool {
	return at > 0 && words[at-1].sentence == words[at].sentence && words[at-1].in(known().articles)
}

// thing reports whether what may be a deed is a thing, with an adjective or without: "the copper hammer".
func thing(words []word, at int) bool {
	return named(words, at) || at > 1 && !words[at].comma && !words[at-1].comma && !words[at-1].in(known().joins) && named(words, at-1)
}

// stands gives the place of a phrase somewhere else in the sentence, the nearest one, or -1.
func stands(words []word, at, length int, phrase []int) int {
	best := -1
	for i := sentenceOf(words, at); i < len(words) && words[i].sentence == words[at].sentence; i++ {
		outside := i+len(phrase) <= at || i >= at+length
		if outside && row(words, i, phrase) && !denied(words, i) && (best < 0 || max(i-at, at-i) < max(best-at, at-best)) {
			best = i
		}
	}
	return best
}

// anywhere reports whether a phrase stands in the sentence, ruled out or not.
func anywhere(words []word, at int, phrase []int) bool {
	for i := sentenceOf(words, at); i < len(words) && words[i].sentence == words[at].sentence; i++ {
		if row(words, i, phrase) {
			return true
		}
	}
	return false
}

// sentenceOf gives the first word of the sentence a word stands in.
func sentenceOf(words []word, at int) int {
	for at > 0 && words[at-1].sentence == words[at].sentence {
		at--
	}
	return at
}

// lookedAt reports whether a thing is only looked at: "check the grinder", "read the label on it".
func lookedAt(words []word, at int) bool {
	reach := at - 3
	for i := at - 1; i >= 0 && i >= reach && words[i].sentence == words[at].sentence; i-- {
		if words[i].in(known().onIt) && reach == at-3 { // "read the date on the bottle"
			reach -= 3
			i--
			continue
		}
		if words[i].in(known().looks) {
			return true
		}
		if !words[i].in(known().passedOver) {
			return false
		}
	}
	return false
}
