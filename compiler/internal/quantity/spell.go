package quantity

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// longestKey is above the key of every spelling in the tables; reading stops there.
const longestKey = 32

// keyOf brings a spelling to the form in which spellings are compared: · for every
// space, dot, hyphen and middle dot between letters, plain digits for raised ones.
func keyOf(text string) string {
	var k keyer
	for at := 0; at < len(text); {
		size, ok := k.take(text[at:])
		if !ok {
			break
		}
		at += size
	}
	return string(k.key)
}

// keyer builds a key rune by rune.
type keyer struct {
	key     []rune
	joined  bool // a separator stands between the last rune of the key and the next
	bracket bool // a bracket around letters is open: gal (US)
}

var sameRune = map[rune]string{
	'²': "2", '³': "3", '₂': "2", 'μ': "µ", 'Ω': "Ω", '℃': "°C", '℉': "°F",
	'º': "°", '˚': "°", '′': "'", '’': "'", '‘': "'", '´': "'", '″': "\"", '”': "\"", '“': "\"", 'ℓ': "l",
}

// take adds the next rune, or the few that belong together, and says how many
// bytes they were. It says false where no unit can go on.
func (k *keyer) take(rest string) (size int, ok bool) {
	r, size := utf8.DecodeRuneInString(rest)
	if len(k.key) >= longestKey {
		return 0, false
	}
	next, nextSize := utf8.DecodeRuneInString(rest[size:])
	switch {
	case r == '⁻' && next == '¹':
		return size + nextSize, k.add("-1")
	case strings.HasPrefix(rest, "^-1"):
		return len("^-1"), k.add("-1")
	case r == '^':
		return size, true
	case isSpace(r) || strings.ContainsRune("·⋅•∙*.-‑‐", r):
		k.joined = len(k.key) > 0
		return size, true
	case r == '(' && unicode.IsLetter(next) && len(k.key) > 0:
		k.joined, k.bracket = true, true
		return size, true
	case r == ')' && k.bracket:
		k.bracket = false
		return size, true
	case r == '/':
		k.joined = false
		return size + spaces(rest[size:]), k.add("/")
	case r == '\'' && next == '\'':
		return size + nextSize, k.add("\"")
	case sameRune[r] != "":
		return size, k.add(sameRune[r])
	case unicode.IsDigit(r):
		// A digit goes on with a unit (cm3) and never starts one, but for 1/min.
		if k.joined || len(k.key) == 0 && (r != '1' || next != '/') {
			return 0, false
		}
		return size, k.add(string(r))
	case unicode.IsLetter(r) || strings.ContainsRune("%°'\"", r):
		return size, k.add(string(r))
	}
	return 0, false
}

func (k *keyer) add(text string) bool {
	// Nothing stands between ° and its letter, nor around a stroke.
	if last := len(k.key) - 1; k.joined && last >= 0 && k.key[last] != '°' && k.key[last] != '/' {
		k.key = append(k.key, '·')
	}
	k.joined = false
	k.key = append(k.key, []rune(text)...)
	return true
}

// match is a spelling met in the text.
type match struct {
	key        string
	start, end int
}

// longestMatch finds the longest run of text from at whose key is known and behind
// which the word ends.
func longestMatch(text string, at int, known func(key string) bool) (match, bool) {
	var k keyer
	var found match
	ok := false
	for end := at; end < len(text); {
		size, more := k.take(text[end:])
		if !more {
			break
		}
		end += size
		if !k.joined && !k.bracket && wordEnds(text, end) && known(string(k.key)) {
			found, ok = match{string(k.key), at, end}, true
		}
	}
	if ok {
		found.end = pastDot(text, found.end)
	}
	return found, ok
}

// wordEnds reports whether a unit that ends here goes no further: N·mm is not N·m,
// and L/foo is not L.
func wordEnds(text string, at int) bool {
	r, size := utf8.DecodeRuneInString(text[at:])
	next, _ := utf8.DecodeRuneInString(text[at+size:])
	switch {
	case unicode.IsLetter(r), r == '⁻', r == '¹', r == '²', r == '³':
		return false
	case r == '"' || r == '%' || r == '°' || r == '\'':
		return false
	case strings.ContainsRune("·⋅•∙*.-‑‐/^", r) && size > 0:
		return !unicode.IsLetter(next)
	}
	return true
}

// pastDot takes in the dot of an abbreviation: "5 in." ends behind it.
func pastDot(text string, at int) int {
	if strings.HasPrefix(text[at:], ".") && !strings.HasPrefix(text[at:], "..") {
		if next := text[at+1:]; next == "" || !unicode.IsDigit(rune(next[0])) {
			return at + 1
		}
	}
	return at
}

// unknownUnit is the end of a word that looks like a unit and is none.
func unknownUnit(text string, at int) int {
	end := at
	for end < len(text) {
		r, size := utf8.DecodeRuneInString(text[end:])
		next, _ := utf8.DecodeRuneInString(text[end+size:])
		joins := strings.ContainsRune("·⋅•∙*.-‑‐/^", r) && unicode.IsLetter(next) && end > at
		inner := unicode.IsDigit(r) && end > at || strings.ContainsRune("%°'\"²³⁻¹₂′″", r)
		if !unicode.IsLetter(r) && !joins && !inner {
			break
		}
		end += size
	}
	return end
}

// isSpace takes in the no-break and the thin spaces that typesetting puts into amounts.
func isSpace(r rune) bool {
	return r == ' ' || r == '\t' || r == '\n' || r == '\r' || r == '\u00a0' || r == '\u2009' || r == '\u202f' || r == '\u2007' || r == '\u200a'
}

// spaces is how many bytes of space text begins with.
func spaces(text string) int {
	for at, r := range text {
		if !isSpace(r) {
			return at
		}
	}
	return len(text)
}
