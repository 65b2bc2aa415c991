package trade

import (
	"slices"
	"strings"
)

// PutOff reports whether what stands at a place of a text, in bytes, is work of another time:
// "next time", "each spring", "every 50 h" stands in its clause, or begins its sentence.
// "Before the next" and "until next" say when it has to be done, so they put nothing off.
func PutOff(text string, start, end int) bool {
	words, first, last := clause(text, start, end)
	head := sentenceOf(words, first)
	for i := head; i <= last && i < len(words); i++ {
		if (i >= first || i == head) && otherTime(words, i) {
			return true
		}
	}
	return false
}

// LeftToOthers reports whether what stands at a place of what is done about a bad finding is not
// done at this step: it has a date, a card of its own, or somebody else does it.
func LeftToOthers(text string, start, end int) bool {
	words, first, last := clause(text, start, end)
	for i := first; i <= last && i < len(words); i++ {
		rest := words[i+1 : last+1]
		switch words[i].lower {
		case "before", "at", "by", "on":
			if of(rest, "the") && of(rest[1:], "next|following") && !of(rest[2:], "step|steps") {
				return true
			}
			if words[i].lower == "by" && slices.ContainsFunc(rest[:min(len(rest), 4)], func(w word) bool { return listed(otherHands, w.lower) }) {
				return true
			}
		case "within", "in":
			if counted(rest) {
				return true
			}
		case "have", "get", "plan", "book", "schedule":
			if words[i].start < start && (listed("plan|book|schedule", words[i].lower) || slices.ContainsFunc(words[i:last+1], func(w word) bool {
				return w.end <= end && participle(w.lower)
			})) {
				return true
			}
		case "call", "ask", "tell":
			if words[i].start < start && slices.ContainsFunc(rest, func(w word) bool { return w.lower == "to" && w.end < start }) {
				return true
			}
		}
	}
	return false
}

const (
	seasons    = "spring|summer|autumn|winter|season"
	otherHands = "card|cards|procedure|dealer|maker|workshop|fitter|mechanic|electrician|shop|specialist|welder"
)

// otherTime reports whether a time that is not now begins at a word.
func otherTime(words []word, at int) bool {
	rest := words[at+1:]
	before := func(list string) bool {
		return at > 0 && words[at-1].sentence == words[at].sentence && (listed(list, words[at-1].lower) || at > 1 && words[at-1].lower == "the" && listed(list, words[at-2].lower))
	}
	switch words[at].lower {
	case "next":
		times := "time|year|month|week|day|service|visit|overhaul|" + seasons
		return (of(rest, times) || len(rest) > 1 && of(rest[1:], times)) && !before("before|until|till|for|since|to")
	case "each", "every":
		return of(rest, "year|month|week|day|"+seasons) || of(rest, "other|second|third") && of(rest[1:], "year|month|week|day|"+seasons) || counted(rest)
	case "in", "this":
		return of(rest, seasons)
	}
	return false
}

// clause splits a text and gives the words between the commas around a place.
func clause(text string, start, end int) (words []word, first, last int) {
	words = split(text)
	first = slices.IndexFunc(words, func(w word) bool { return w.end > start })
	if first < 0 {
		return nil, 0, -1
	}
	for last = first; last+1 < len(words) && words[last+1].sentence == words[first].sentence && (words[last+1].start < end || !words[last+1].comma); last++ {
	}
	for first > 0 && words[first-1].sentence == words[first].sentence && !words[first].comma {
		first--
	}
	return words, first, last
}

// counted reports whether a number of hours, days or more begins the words.
func counted(words []word) bool {
	return len(words) > 1 && (words[0].lower[0] >= '0' && words[0].lower[0] <= '9' || listed("two|three|four|five|six|ten|a|an|one", words[0].lower)) &&
		of(words[1:], "h|hour|hours|day|days|week|weeks|month|months|year|years|km|miles|shifts")
}

// of reports whether the first of some words is in a list.
func of(words []word, list string) bool { return len(words) > 0 && listed(list, words[0].lower) }

func listed(list, word string) bool { return slices.Contains(strings.Split(list, "|"), word) }
