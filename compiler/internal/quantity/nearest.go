package quantity

import (
	"slices"
	"strings"
)

// nearestUnit is the unit a misspelt one is likely meant for: the same letters in
// another case, or at most two slips of the pen away. It is certain only when
// letters of one unit were written large or small, and large or small makes no other
// unit of it, as it would between mPa and MPa.
func nearestUnit(written string, want Dimension) (symbol string, certain bool) {
	key := []rune(keyOf(written))
	if len(key) == 0 || len(key) > 20 {
		return "", false
	}
	best, same := 3, 0
	for _, row := range unitTable {
		if want != Any && row.dimension != want {
			continue
		}
		for text := range strings.SplitSeq(row.symbol+"|"+row.spellings, "|") {
			other := []rune(keyOf(text))
			if len(other) == 0 {
				continue
			}
			apart := slips(key, other)
			if strings.EqualFold(string(key), string(other)) {
				apart = 0
			}
			if apart > mostSlips(key, other) {
				continue
			}
			switch {
			case apart < best:
				best, symbol, same = apart, row.symbol, 1
			case apart == best && row.symbol != symbol:
				same++
			}
		}
	}
	return symbol, best == 0 && same == 1 && len(key) > 1 && key[0] != 'm' && key[0] != 'M'
}

// mostSlips is how far a word may be from a unit and still be meant for it: a
// short one must begin with the same letter or have the same letters, since hL is not mL.
func mostSlips(written, unit []rune) int {
	if n := min(len(written), len(unit)); n > 3 {
		return n / 4
	}
	a, b := slices.Sorted(slices.Values(written)), slices.Sorted(slices.Values(unit))
	switch {
	case slices.Equal(a, b):
		return 2
	case len(written) > 1 && len(unit) > 1 && written[0] == unit[0]:
		return 1
	}
	return 0
}

// slips counts the letters to add, drop, change or swap between two short words.
func slips(a, b []rune) int {
	before, last := make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row := make([]int, len(b)+1)
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last = last, row
	}
	return last[len(b)]
}
