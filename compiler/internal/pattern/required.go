package pattern

import (
	"regexp/syntax"
	"slices"
	"strings"
	"unicode"
)

// Most that are kept of what an expression can be, and of the letters of one place.
const (
	mostTexts = 96
	mostRunes = 6
)

// required lists texts in small letters of which one stands in whatever an expression finds; none
// where nothing can be told.
func required(form string) []string {
	parsed, err := syntax.Parse(form, syntax.Perl)
	if err != nil {
		return nil
	}
	return needed(parsed.Simplify())
}

func needed(r *syntax.Regexp) []string {
	if texts, whole := all(r); whole {
		return usable(texts)
	}
	switch r.Op {
	case syntax.OpCapture, syntax.OpPlus:
		return needed(r.Sub[0])
	case syntax.OpAlternate:
		var out []string
		for _, sub := range r.Sub {
			texts := needed(sub)
			if texts == nil || len(out)+len(texts) > mostTexts {
				return nil
			}
			out = append(out, texts...)
		}
		return out
	case syntax.OpConcat: // the longest of what must be there, and of what stands in a row
		var best []string
		better := func(texts []string) {
			if texts = usable(texts); length(texts) > length(best) || length(texts) == length(best) && len(texts) < len(best) {
				best = texts
			}
		}
		row := []string{""}
		for _, sub := range r.Sub {
			texts, whole := all(sub)
			if !whole {
				better(row)
				better(needed(sub))
				row = []string{""}
				continue
			}
			if len(row)*len(texts) > mostTexts {
				better(row)
				row = []string{""}
			}
			row = cross(row, texts)
			if length(row) > 12 { // long enough to be rare
				better(row)
				row = []string{""}
			}
		}
		better(row)
		return best
	}
	return nil
}

// all lists everything that an expression finds, in small letters; false where that is too much,
// or more than letters of ASCII.
func all(r *syntax.Regexp) ([]string, bool) {
	switch r.Op {
	case syntax.OpEmptyMatch, syntax.OpBeginLine, syntax.OpEndLine, syntax.OpBeginText, syntax.OpEndText, syntax.OpWordBoundary, syntax.OpNoWordBoundary:
		return []string{""}, true
	case syntax.OpLiteral:
		for _, c := range r.Rune {
			if c > unicode.MaxASCII {
				return nil, false
			}
		}
		return []string{strings.ToLower(string(r.Rune))}, true
	case syntax.OpCharClass:
		var out []string
		for i := 0; i < len(r.Rune); i += 2 {
			for c := r.Rune[i]; c <= r.Rune[i+1]; c++ {
				if c == '\u017f' || c == '\u212a' { // the s and the k are there as well
					continue
				}
				if c > unicode.MaxASCII || len(out) == 2*mostRunes {
					return nil, false
				}
				out = append(out, strings.ToLower(string(c)))
			}
		}
		return once(out), len(out) > 0
	case syntax.OpCapture:
		return all(r.Sub[0])
	case syntax.OpQuest:
		texts, whole := all(r.Sub[0])
		return once(append([]string{""}, texts...)), whole
	case syntax.OpAlternate:
		var out []string
		for _, sub := range r.Sub {
			texts, whole := all(sub)
			if !whole || len(out)+len(texts) > mostTexts {
				return nil, false
			}
			out = append(out, texts...)
		}
		return once(out), true
	case syntax.OpConcat:
		out := []string{""}
		for _, sub := range r.Sub {
			texts, whole := all(sub)
			if !whole || len(out)*len(texts) > mostTexts {
				return nil, false
			}
			out = cross(out, texts)
		}
		return once(out), true
	}
	return nil, false
}

func cross(heads, tails []string) []string {
	var out []string
	for _, head := range heads {
		for _, tail := range tails {
			out = append(out, head+tail)
		}
	}
	return out
}

func once(texts []string) []string {
	seen := map[string]bool{}
	var out []string
	for _, text := range texts {
		if !seen[text] {
			seen[text] = true
			out = append(out, text)
		}
	}
	return out
}

// usable are texts that tell something, without those that hold another; none where one is too
// short to.
func usable(texts []string) []string {
	if length(texts) < 2 {
		return nil
	}
	var out []string
	for _, text := range once(texts) {
		if !slices.ContainsFunc(texts, func(other string) bool { return other != text && strings.Contains(text, other) }) {
			out = append(out, text)
		}
	}
	return out
}

// length is that of the shortest.
func length(texts []string) int {
	least := 0
	for i, text := range texts {
		if i == 0 || len(text) < least {
			least = len(text)
		}
	}
	return least
}
