package trade

import (
	"strings"
	"sync"
)

// known is what the tables of hazards and terms say, read once when it is first asked for.
var known = sync.OnceValue(func() *knowledge { return readKnowledge(Hazards(), otherTerms) })

// knowledge holds every cue and term with the vocabulary they are written in.
type knowledge struct {
	vocabulary
	cues                []cue
	terms               []otherTerm
	byFirst, termsFirst map[int][]int // cues and terms by the list their first word is in
	beginCue, beginTerm []uint64      // the lists that begin one
	sets                int           // numbers of 64 bits that hold all lists

	looks, deniers, passedOver, articles, joins, turnsAway      int
	orders, mayNot, clauseEnds, spared, later, needless, nobody int
	onIt, offIt, trifles                                        int
}

// cue is one entry of Hazard.Words, taken apart; its words are numbers of lists.
type cue struct {
	hazard  string
	despite bool    // it holds even where it is ruled out
	deed    bool    // it is a verb, and no noun
	phrase  []int   // each word in a row
	verbs   []int   // each list must act on the phrase
	beside  [][]int // each phrase must stand in the sentence
	absent  [][]int // none of these may stand in the sentence
	not     []int   // none of these may come next
}

func readKnowledge(hazards []Hazard, terms []string) *knowledge {
	k := &knowledge{vocabulary: vocabulary{map[string]int{}, map[string][]int{}, map[string][]int{}, nil, 0}, byFirst: map[int][]int{}, termsFirst: map[int][]int{}}
	for _, hazard := range hazards {
		for _, written := range hazard.Words {
			c := k.cue(hazard.Key, written)
			k.byFirst[c.phrase[0]] = append(k.byFirst[c.phrase[0]], len(k.cues))
			k.cues = append(k.cues, c)
		}
	}
	for _, written := range terms {
		term := otherTerm{phrase: k.phrase(strings.ReplaceAll(written, "!", ""))}
		for _, part := range strings.Fields(written) {
			term.hide = append(term.hide, strings.HasPrefix(part, "!"))
		}
		k.termsFirst[term.phrase[0]] = append(k.termsFirst[term.phrase[0]], len(k.terms))
		k.terms = append(k.terms, term)
	}
	k.grammar()
	k.sets = len(k.numbers)/64 + 1
	k.beginCue, k.beginTerm = k.mask(k.byFirst), k.mask(k.termsFirst)
	return k
}

// cue reads one entry of Hazard.Words.
func (k *knowledge) cue(hazard, written string) cue {
	c := cue{hazard: hazard}
	written, c.despite = strings.CutPrefix(written, "? ")
	written, c.deed = strings.CutPrefix(written, "~ ")
	mode, part := "", ""
	end := func() {
		switch mode {
		case "":
			c.phrase = k.phrase(part)
		case "+":
			c.verbs = append(c.verbs, k.list(part))
		case "&":
			c.beside = append(c.beside, k.phrase(part))
		case "%":
			c.absent = append(c.absent, k.phrase(part))
		case "!":
			c.not = []int{k.list(part)}
		}
	}
	for _, field := range strings.Fields(written) {
		if strings.Contains("+&%!", field) {
			end()
			mode, part = field, ""
			continue
		}
		part = strings.TrimSpace(part + " " + field)
	}
	end()
	return c
}

func (k *knowledge) mask(first map[int][]int) []uint64 {
	out := make([]uint64, k.sets)
	for list := range first {
		out[list>>6] |= 1 << (list & 63)
	}
	return out
}

// vocabulary numbers every list of words that a cue or a term names, so that each word of
// a text is looked up once and is known from then on by the numbers of its lists.
type vocabulary struct {
	numbers      map[string]int // of the lists, by how they are written: "belt*|chain"
	whole, stems map[string][]int
	any          []int // lists that hold every word
	longest      int   // bytes of the longest stem
}

func (v *vocabulary) phrase(written string) []int {
	var out []int
	for _, word := range strings.Fields(written) {
		out = append(out, v.list(word))
	}
	return out
}

func (v *vocabulary) list(written string) int {
	if number, ok := v.numbers[written]; ok {
		return number
	}
	number := len(v.numbers)
	v.numbers[written] = number
	for _, want := range strings.Split(written, "|") {
		stem, open := strings.CutSuffix(want, "*")
		switch {
		case want == "*":
			v.any = append(v.any, number)
		case open:
			v.stems[stem] = append(v.stems[stem], number)
			v.longest = max(v.longest, len(stem))
		default:
			v.whole[want] = append(v.whole[want], number)
		}
	}
	return number
}

// know marks the lists a word is in: whole, by its stem, or as one of the measured kinds.
func (k *knowledge) know(words []word) {
	sets := make([]uint64, len(words)*k.sets)
	for at := range words {
		w := &words[at]
		w.lists = sets[at*k.sets : (at+1)*k.sets]
		w.join(k.any)
		w.join(k.whole[w.lower])
		for end := 2; end <= len(w.lower) && end <= k.longest; end++ {
			w.join(k.stems[w.lower[:end]])
		}
		if w.lower[0] >= '0' && w.lower[0] <= '9' {
			for _, kind := range measured {
				if within, unit := w.measures(words, at, kind); within {
					w.join(k.whole[kind.name])
					w.unit = w.unit || unit
				}
			}
		}
	}
}

func (w *word) join(lists []int) {
	for _, list := range lists {
		w.lists[list>>6] |= 1 << (list & 63)
	}
}

func (w *word) in(list int) bool { return w.lists[list>>6]&(1<<(list&63)) != 0 }
