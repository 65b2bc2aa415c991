// Package trade holds published tables of the trade, each with its source beside it:
// threads, heads, drives, strength classes, grades, hazards, signal words, signs. It
// must not know files, findings or amounts with units.
//
// Lengths are float64 millimetres, torques N·m, loads N, stresses MPa. Inch sizes are
// kept as exact fractions where they are tables or are read, and turned into
// millimetres by the exact factor 25.4 (international inch of 1959, NIST SP 811 App. B.8).
// What the comments call "from memory" was not seen in print; a caller must not
// raise more than a warning on it alone.
package trade

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hbollon/go-edlib"
)

// nearest is the word of a list with the fewest slips of the pen from what was
// written, the first of equals; empty when none is near enough to be meant.
func nearest(written string, words []string) string {
	written = strings.ToLower(written)
	best, least := "", len(written)/2+2
	for _, word := range words {
		if apart := edlib.OSADamerauLevenshteinDistance(written, strings.ToLower(word)); apart < least {
			best, least = word, apart
		}
	}
	return best
}

// Mistaken is the error of a text that is in no table, with the entry it was likely meant for.
type Mistaken struct{ says, Meant string }

func (m *Mistaken) Error() string { return m.says }

// mistaken says what is wrong with a text that was likely meant for something else.
func mistaken(meant, format string, of ...any) error {
	return &Mistaken{fmt.Sprintf(format, of...), meant}
}

// unknown says that a text names nothing in a list, with the nearest that would, or the whole list.
func unknown(what, written string, words []string) error {
	if near := nearest(written, words); near != "" {
		return mistaken(near, "%q is no %s; the nearest is %q", written, what, near)
	}
	return fmt.Errorf("%q is no %s; known are %s", written, what, strings.Join(words, ", "))
}

// anyOf joins words the way a sentence does: a, b or c.
func anyOf(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// squeeze lowers a text and leaves single blanks.
func squeeze(text string) string {
	return strings.Join(strings.Fields(strings.ToLower(text)), " ")
}

func keysOf[T any](list []T, key func(T) string) []string {
	out := make([]string, 0, len(list))
	for _, item := range list {
		out = append(out, key(item))
	}
	return slices.Clip(out)
}
