package state

import "strings"

// Least letters that tell the kind of a thing: of a word that is the end of another ("Ring",
// "O-Ring"), and of what two compounds end in ("Keilriemen", "Antriebsriemen", but not
// "Dichtung" and "Leitung"); common practice, no source.
const (
	leastWord   = 4
	leastEnding = 5
)

// kinAtEnd is how German tells it: a compound is of the kind its end names, and the kind
// stands before a comma or a size.
func kinAtEnd(a, b string) bool {
	one, other := lastWord(a), lastWord(b)
	return endAlike(one, other) || endAlike(singular(one), singular(other))
}

func endAlike(one, other string) bool {
	shorter := min(len(one), len(other))
	same := 0
	for same < shorter && one[len(one)-1-same] == other[len(other)-1-same] {
		same++
	}
	return same >= leastEnding || shorter >= leastWord && same == shorter || one != "" && one == other
}

// kinAtStart is how French and Spanish tell it: the kind is named first ("courroie
// trapézoïdale", "courroies d’entraînement").
func kinAtStart(a, b string) bool {
	one, other := singular(firstWord(a)), singular(firstWord(b))
	return one != "" && one == other
}

// lastWord is the last word before a comma or a figure, in small letters: of "O-Ring 98" the ring.
func lastWord(words string) string {
	words, _, _ = strings.Cut(words, ",")
	last := ""
	for _, word := range strings.Fields(words) {
		if strings.ContainsAny(word, "0123456789") && last != "" {
			break
		}
		if len(word) > 1 {
			last = word
		}
	}
	return strings.ToLower(last[strings.LastIndex(strings.TrimRight(last, "-"), "-")+1:])
}

func firstWord(words string) string {
	for _, word := range strings.Fields(words) {
		return strings.ToLower(strings.Trim(word, ",."))
	}
	return ""
}

// singular takes the letters of a plural off, as far as they tell no things apart.
func singular(word string) string {
	for _, ending := range []string{"en", "es", "n", "s", "x", "e"} {
		if rest, ok := strings.CutSuffix(word, ending); ok && len(rest) >= leastWord {
			return rest
		}
	}
	return word
}
