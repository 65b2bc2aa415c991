package trade

import (
	"slices"
	"sort"
	"strings"
)

// Trigger is a place in a text that implies a hazard, in bytes.
type Trigger struct {
	Hazard     string // key
	Start, End int
}

// How far a verb may stand from what it acts on, in words.
const (
	verbBefore = 7
	verbAfter  = 4
)

// cue is one entry of Hazard.Words, taken apart.
type cue struct {
	hazard string
	phrase [][]string   // alternatives for each word in a row
	verbs  [][]string   // each list must act on the phrase
	beside [][][]string // each phrase must stand in the sentence
	not    []string     // none of these may come next
	begins string       // first letters its phrase may have, so that most words are passed over quickly
}

// cues is the table of every hazard's words; it never changes after the program starts.
var cues = readCues(Hazards())

func readCues(hazards []Hazard) []cue {
	var out []cue
	for _, hazard := range hazards {
		for _, written := range hazard.Words {
			written, not, _ := strings.Cut(written, " ! ")
			parts := strings.Split(written, " & ")
			head := strings.Split(parts[0], " + ")
			c := cue{hazard: hazard.Key, phrase: alternatives(head[0])}
			if not != "" {
				c.not = strings.Split(not, "|")
			}
			for _, verbs := range head[1:] {
				c.verbs = append(c.verbs, strings.Split(verbs, "|"))
			}
			for _, beside := range parts[1:] {
				c.beside = append(c.beside, alternatives(beside))
			}
			for _, word := range c.phrase[0] {
				c.begins += strings.ReplaceAll(word[:1], "<", "0123456789")
			}
			out = append(out, c)
		}
	}
	return out
}

func alternatives(phrase string) [][]string {
	var out [][]string
	for _, word := range strings.Fields(phrase) {
		out = append(out, strings.Split(word, "|"))
	}
	return out
}

// Triggers finds what in a sentence of a procedure implies a hazard, by place and then
// in the order of Hazards. Words are matched whole or by their stem, in any case. What is
// only looked at, ruled out ("no fuel", "do not remove the guard") or part of another
// term ("seat belt") implies nothing. Each hazard comes once for each place.
func Triggers(text string) []Trigger {
	words := split(text)
	var out []Trigger
	for _, c := range cues {
		for at := range words {
			if strings.IndexByte(c.begins, words[at].lower[0]) >= 0 && c.matches(words, at) {
				out = append(out, Trigger{c.hazard, words[at].start, words[at+len(c.phrase)-1].end})
			}
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Start < out[j].Start })
	return apart(out)
}

// apart drops triggers of one hazard that overlap an earlier one.
func apart(list []Trigger) []Trigger {
	var out []Trigger
	ends := map[string]int{}
	for _, trigger := range list {
		if end, ok := ends[trigger.Hazard]; ok && trigger.Start < end {
			continue
		}
		ends[trigger.Hazard] = trigger.End
		out = append(out, trigger)
	}
	return out
}

func (c cue) matches(words []word, at int) bool {
	if !row(words, at, c.phrase) || denied(words, at) {
		return false
	}
	next := at + len(c.phrase)
	if next < len(words) && words[next].sentence == words[at].sentence && !words[next].comma && words[next].isOne(words, next, c.not) {
		return false
	}
	if len(c.verbs)+len(c.beside) == 0 && lookedAt(words, at) {
		return false
	}
	for _, verbs := range c.verbs {
		if !acts(words, at, at+len(c.phrase)-1, verbs) {
			return false
		}
	}
	for _, beside := range c.beside {
		if !stands(words, at, len(c.phrase), beside) {
			return false
		}
	}
	return true
}

// row reports whether the words from a place on are those of a phrase, in one sentence.
func row(words []word, at int, phrase [][]string) bool {
	if at+len(phrase) > len(words) {
		return false
	}
	for i, alternatives := range phrase {
		w := words[at+i]
		if w.hidden || w.sentence != words[at].sentence || !w.isOne(words, at+i, alternatives) {
			return false
		}
	}
	return true
}

// acts reports whether a verb acts on the words first to last: it stands before them with
// no other deed between, or soon after them as a participle.
func acts(words []word, first, last int, verbs []string) bool {
	for i := first - 1; i >= 0 && i >= first-verbBefore && words[i].sentence == words[first].sentence; i-- {
		deed := !words[i].hidden && !past(words[i].lower) && !named(words, i)
		if deed && words[i].isOne(words, i, verbs) && !denied(words, i) {
			return true
		}
		if slices.Contains(turnsAway, words[i].lower) {
			break
		}
	}
	for i := last + 1; i < len(words) && i <= last+verbAfter && words[i].sentence == words[first].sentence; i++ {
		if words[i].comma || slices.Contains(turnsAway, words[i].lower) || slices.Contains(joins, words[i].lower) {
			break
		}
		if !words[i].hidden && participle(words[i].lower) && words[i].isOne(words, i, verbs) && !denied(words, i) {
			return true
		}
	}
	return false
}

// named reports whether what may be a verb is a noun: "the tension of the belt".
func named(words []word, at int) bool {
	return at > 0 && words[at-1].sentence == words[at].sentence && slices.Contains(articles, words[at-1].lower)
}

// past reports whether a word tells what was done before: "with the belt removed, turn the idler".
func past(word string) bool {
	return strings.HasSuffix(word, "ed") && !strings.HasSuffix(word, "eed") // bleed, feed
}

func participle(word string) bool {
	return past(word) || strings.HasSuffix(word, "ing") || word == "undone" || word == "off"
}

// stands reports whether a phrase is somewhere else in the sentence.
func stands(words []word, at, length int, phrase [][]string) bool {
	for i := range words {
		outside := i+len(phrase) <= at || i >= at+length
		if outside && words[i].sentence == words[at].sentence && row(words, i, phrase) && !denied(words, i) {
			return true
		}
	}
	return false
}

// denied reports whether a word is ruled out by what stands before it.
func denied(words []word, at int) bool {
	for i := at - 1; i >= 0 && i >= at-4 && words[i].sentence == words[at].sentence; i-- {
		switch {
		case slices.Contains(deniers, words[i].lower):
			return true
		case slices.Contains([]string{"of", "from"}, words[i].lower) && i > 0 && words[i-1].lower == "free",
			words[i].lower == "of" && i > 0 && words[i-1].lower == "instead", words[i].lower == "than" && i > 0 && words[i-1].lower == "rather":
			return true
		case !slices.Contains(passedOver, words[i].lower):
			return false
		}
	}
	return false
}

// lookedAt reports whether a thing is only looked at: "check the grinder".
func lookedAt(words []word, at int) bool {
	for i := at - 1; i >= 0 && i >= at-3 && words[i].sentence == words[at].sentence; i-- {
		if slices.Contains(looks, words[i].lower) {
			return true
		}
		if !slices.Contains(passedOver, words[i].lower) {
			return false
		}
	}
	return false
}

var (
	looks      = []string{"check", "inspect", "compare", "read", "note", "record", "photograph", "count"}
	deniers    = []string{"no", "not", "never", "non", "without", "don't", "doesn't", "isn't", "aren't", "cannot", "can't"}
	passedOver = []string{"the", "a", "an", "any", "more", "use", "using", "apply", "ever", "longer", "your", "each", "every", "both", "all"}
	articles   = []string{"the", "a", "an", "of", "its", "this", "that", "each"}
	joins      = []string{"and", "or", "then", "but"}
	// turnsAway are words after which a verb no longer acts on what follows.
	turnsAway = []string{"check", "inspect", "look", "read", "note", "measure", "record", "watch", "listen", "compare", "see", "mark", "photograph", "write", "count", "wipe", "find", "keep", "refer",
		"behind", "beside", "above", "below", "near", "beyond", "until", "unless", "before", "after", "while", "so", "for", "because", "if", "when", "reach", "expose", "with", "using"}
)
