package draft

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
		if n := length(storyCues, words, i); n > 0 {
			mark(clauseStart(words, i), storyEnd(words, i+n), story)
		}
		if n := length(shortCues, words, i); n > 0 {
			mark(i, min(clauseEnd(words, i+n), i+n+1), story)
		}
		if n := length(oldCues, words, i); n > 0 && !notDenials.has(words, i+n-1) {
			mark(clauseStart(words, i), clauseEnd(words, i+n), denied)
		}
	}
	for i := range words {
		n := length(denials, words, i)
		if n == 0 || length(notDenials, words, i) > 0 {
			continue
		}
		if _, bound := prefixes.at(words, i); bound > 0 {
			continue
		}
		if _, bound := suffixes.at(words, i); bound > 0 {
			continue
		}
		end := clauseEnd(words, i+n)
		if i+n < len(words) && breaksAt(words, i+n) && words[i+n].lower != "just" && words[i+n].lower != "only" {
			end = i + n
		}
		alone := end == i+n || end == i+n+1 && words[i+n].lower == "ever"
		switch {
		case alone && endsHere(words, end) && outright[words[i].lower]: // "…, don't."
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

// outright are denials that, standing alone, deny what was said before them.
var outright = set("don't dont never do")

func endsHere(words []word, at int) bool { return at >= len(words) || words[at].stop != 0 }

func length(cues phrases[bool], words []word, at int) int {
	_, n := cues.at(words, at)
	return n
}

// breaksAt reports whether a clause ends before a word: and, but, it's, there's.
func breaksAt(words []word, at int) bool {
	w := words[at]
	return breaks[w.lower] || w.of && (w.lower == "it" || w.lower == "that" || w.lower == "there")
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
		if words[i].stop == '.' || i > at+7 && !marked(words, at) || i > at+25 || turns[words[i].lower] {
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
		if w := words[i].lower; w == "no" && n == 1 && (words[i].stop == 0 || i+1 >= len(words) || words[i+1].stop == 0) {
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

func (n number) orLow(low number) number {
	if n.value == nil {
		return low
	}
	return n
}

// marked reports whether marks stand in the words behind a place.
func marked(words []word, at int) bool {
	for i := at; i < min(at+25, len(words)); i++ {
		if words[i].stop != 0 && words[i].line == words[at].line {
			return true
		}
	}
	return false
}
