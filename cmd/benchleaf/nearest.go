package main

import (
	"cmp"
	"slices"
	"strings"

	"github.com/hbollon/go-edlib"
)

// nearest lists the words closest to what was written, closest first: at most a
// third of the letters apart, a swap counting as one.
func nearest(written string, words []string, most int) []string {
	written = strings.ToLower(written)
	apart := map[string]int{}
	var out []string
	for _, word := range words {
		n := edlib.OSADamerauLevenshteinDistance(written, strings.ToLower(word))
		if _, again := apart[word]; !again && n <= len([]rune(written))/3+1 {
			apart[word] = n
			out = append(out, word)
		}
	}
	slices.SortFunc(out, func(a, b string) int { return cmp.Or(cmp.Compare(apart[a], apart[b]), cmp.Compare(a, b)) })
	return out[:min(most, len(out))]
}

// didYouMean goes on after a word that is not known.
func didYouMean(near []string) string {
	if len(near) == 0 {
		return ""
	}
	return "; did you mean " + strings.Join(near, ", ") + "?"
}
