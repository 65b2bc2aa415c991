package quantity

import (
	"math/big"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"benchleaf/compiler/internal/pattern"
)

// number is a figure without its unit.
type number struct {
	value          *big.Rat
	start, end     int
	text           string // as printed
	digits, places int
	fraction       bool
}

// longestNumber bounds the figures of a number, so that a page of digits costs nothing.
const longestNumber = 40

// fractionDigits is what a fraction counts for when it is converted: it is exact.
const fractionDigits = 3

var (
	glyphs = map[rune][2]int64{
		'½': {1, 2}, '⅓': {1, 3}, '⅔': {2, 3}, '¼': {1, 4}, '¾': {3, 4}, '⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5},
		'⅙': {1, 6}, '⅚': {5, 6}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
	}
	// denominators are those of rules, drills and turns; 35/40 is more likely a range.
	denominators = []int64{2, 3, 4, 5, 6, 8, 10, 12, 16, 32, 64}

	numberWords = []struct {
		word string
		n, d int64
	}{
		{"three quarters of a", 3, 4}, {"three quarter", 3, 4}, {"three-quarter", 3, 4}, {"three quarters", 3, 4},
		{"a quarter of a", 1, 4}, {"quarter of a", 1, 4}, {"a quarter", 1, 4}, {"quarter", 1, 4},
		{"half an", 1, 2}, {"half a", 1, 2}, {"a half", 1, 2}, {"half", 1, 2},
		{"one", 1, 1}, {"two", 2, 1}, {"three", 3, 1}, {"four", 4, 1}, {"five", 5, 1}, {"six", 6, 1},
		{"seven", 7, 1}, {"eight", 8, 1}, {"nine", 9, 1}, {"ten", 10, 1}, {"twelve", 12, 1},
	}

	fractionForm = pattern.MustCompile(`^(\d{1,3})\s?[/⁄∕]\s?(\d{1,3})`)
	// A whole number and a fraction: 1-3/16, 1 3/16. One hyphen or one space, so that 1 - 3/4 stays a range.
	mixedForm    = pattern.MustCompile(`^(\d{1,4})(?:[-‑ \x{a0}\x{2009}\x{202f}]|\s(?:and|&)\s)(\d{1,3})[/⁄∕](\d{1,3})`)
	groupForm    = pattern.MustCompile(`^\d{1,3}(?:[ \x{a0}\x{2009}\x{202f}]\d{3})+`)
	commaForm    = pattern.MustCompile(`^\d{1,3}(?:,\d{3})+(?:\.\d+)?$`)
	exponentForm = pattern.MustCompile(`^[eE]([-+−]?\d{1,4})`)
)

// number reads a figure, with its sign. It returns false where none stands; a
// figure that stands there and is malformed is reported and read as well as it can be.
func (p *parser) number() (number, bool) {
	start := p.pos
	negative, signed := false, false
	if r, size := utf8.DecodeRuneInString(p.rest()); r == '-' || r == '−' || r == '+' || r == '–' {
		negative, signed = r != '+', true
		p.pos += size
		p.skip()
	}
	n, ok := p.unsigned()
	if !ok {
		p.pos = start
		return number{}, false
	}
	if signed {
		n.start = start
	}
	if negative && n.value.Sign() > 0 {
		n.value = new(big.Rat).Neg(n.value)
		n.text = "−" + n.text
	}
	return n, true
}

func (p *parser) unsigned() (number, bool) {
	if n, ok := p.worded(); ok {
		return n, true
	}
	rest := clip(p.rest(), 64)
	if m := mixedForm.FindStringSubmatch(rest); m != nil && !decimalFollows(rest[len(m[0]):]) {
		return p.fraction(m[0], m[1], m[2], m[3]), true
	}
	if m := fractionForm.FindStringSubmatch(rest); m != nil && !decimalFollows(rest[len(m[0]):]) {
		return p.fraction(m[0], "", m[1], m[2]), true
	}
	if n, ok := p.glyph(); ok {
		return n, true
	}
	return p.decimal()
}

// worded reads "quarter", "half a", "two" before a word.
func (p *parser) worded() (number, bool) {
	for _, row := range numberWords {
		if !hasWord(p.rest(), row.word) {
			continue
		}
		end := p.pos + len(row.word)
		gap := strings.TrimPrefix(p.text[end:], "-")
		if r, _ := utf8.DecodeRuneInString(gap[spaces(gap):]); !unicode.IsLetter(r) {
			return number{}, false
		}
		n := number{value: big.NewRat(row.n, row.d), start: p.pos, end: end, digits: 1}
		n.text, n.fraction = fractionText(n.value), row.d > 1
		p.pos = len(p.text) - len(gap)
		return n, true
	}
	return number{}, false
}

// fraction makes a number of a written fraction, whole before it or not.
func (p *parser) fraction(written, whole, above, below string) number {
	n := number{start: p.pos, end: p.pos + len(written), digits: fractionDigits, fraction: true}
	p.pos = n.end
	a, b := smallInt(above), smallInt(below)
	n.value = new(big.Rat)
	switch {
	case b == 0:
		p.fail(Malformed, n.start, n.end, quoted(written)+" divides by nothing", "Write the figure as a decimal or a fraction, such as \"1/2\".")
		return n
	case a > b && whole == "" && slices.Contains(denominators, b) && a < 10*b:
		mixed := fractionText(big.NewRat(a, b))
		p.failWith(Ambiguous, n.start, n.end, quoted(written)+" is a fraction above one or a range", "Write "+quoted(mixed)+", or a range with \"to\".", mixed)
	case a >= b || !slices.Contains(denominators, b):
		p.fail(Ambiguous, n.start, n.end, quoted(written)+" is a fraction or a range", "Write a range with \"to\", as "+quoted(above+" to "+below)+", and a fraction below one in halves, quarters or finer.")
	}
	n.value.SetFrac64(a, b)
	n.text = above + "/" + below
	if whole != "" {
		n.value.Add(n.value, new(big.Rat).SetInt64(smallInt(whole)))
		n.text = trimZeros(whole) + "-" + n.text
	}
	return n
}

// glyph reads ½ and 1½.
func (p *parser) glyph() (number, bool) {
	rest := clip(p.rest(), 32)
	whole := rest[:leadingDigits(rest)]
	gap := len(whole)
	if whole != "" {
		gap += min(spaces(rest[gap:]), len("\u202f"))
	}
	r, size := utf8.DecodeRuneInString(rest[gap:])
	parts, ok := glyphs[r]
	if !ok || len(whole) > 4 {
		return number{}, false
	}
	n := number{value: big.NewRat(parts[0], parts[1]), start: p.pos, end: p.pos + gap + size, digits: fractionDigits, fraction: true}
	n.text = n.value.String()
	if whole != "" {
		n.value.Add(n.value, new(big.Rat).SetInt64(smallInt(whole)))
		n.text = trimZeros(whole) + "-" + n.text
	}
	p.pos = n.end
	return n, true
}

// decimal reads 42, 0.85, .5, 1 500, and refuses 1,500, 1e3 and 1.2.3.
func (p *parser) decimal() (number, bool) {
	rest := p.rest()
	end := 0
	if group := groupForm.FindString(clip(rest, 64)); group != "" && len(rest) > 0 && !digitAt(rest, len(group)) && !strings.HasPrefix(rest[len(group):], "/") {
		end = len(group)
	}
	for end < len(rest) && (isDigit(rest[end]) || (rest[end] == '.' || rest[end] == ',') && digitAt(rest, end+1)) {
		end++
	}
	if end == 0 {
		return number{}, false
	}
	if rest[end-1] != '.' && strings.HasPrefix(rest[end:], ".") && !strings.HasPrefix(rest[end:], "..") {
		end++ // "5." is taken in, to be told
	}
	start := p.pos
	p.pos += end
	return p.read(start, rest[:end])
}

func (p *parser) read(start int, written string) (number, bool) {
	n := number{value: new(big.Rat), start: start, end: p.pos}
	plain := strings.Join(strings.FieldsFunc(written, isSpace), "")
	if m := exponentForm.FindStringSubmatch(clip(p.rest(), 8)); m != nil && !letterFollows(p.rest()[len(m[0]):]) {
		p.pos += len(m[0])
		n.end = p.pos
		p.fail(Malformed, n.start, n.end, quoted(p.text[n.start:n.end])+" is written with an exponent", "Write the figure out, such as \"1500\" for \"1.5e3\".")
		n.value.SetInt64(1)
		return n, true
	}
	switch {
	case len(plain) > longestNumber+1:
		p.fail(Malformed, n.start, n.end, quoted(written)+" has more figures than can be meant", "Write a figure that can be set or measured.")
		n.value.SetInt64(1)
		return n, true
	case strings.Contains(plain, ","):
		plain = p.comma(n, written, plain)
	case strings.Count(plain, ".") > 1:
		p.fail(Malformed, n.start, n.end, quoted(written)+" has more than one point", "Write one point, before the decimals.")
		plain = plain[:strings.Index(plain, ".")]
	case strings.HasPrefix(plain, "."):
		p.warn(Deprecated, n.start, n.end, quoted(written)+" has no zero before the point", "Write "+p.whole(n.start, n.end, "0"+plain)+": a point is lost in print.", "0"+plain, true)
	case strings.HasSuffix(plain, "."):
		plain = strings.TrimSuffix(plain, ".")
		p.warn(Deprecated, n.start, n.end, quoted(written)+" has a point and no figure behind it", "Write "+quoted(plain)+", or the figure that is missing.", plain, false)
	}
	n.value.SetString("0" + plain)
	whole, part, _ := strings.Cut(plain, ".")
	n.places = len(part)
	n.digits = max(1, len(strings.TrimLeft(whole+part, "0")))
	n.text = trimZeros(whole)
	if strings.ContainsFunc(written, isSpace) {
		n.text = grouped(n.text)
	}
	if part != "" {
		n.text += "." + part
	}
	return n, true
}

// comma reports a decimal comma or a thousands comma, and reads it as well as it can be.
func (p *parser) comma(n number, written, plain string) string {
	last := strings.LastIndex(plain, ",")
	point := strings.ReplaceAll(plain[:last], ",", "") + "." + plain[last+1:]
	if commaForm.MatchString(plain) {
		thousands := strings.ReplaceAll(plain, ",", "")
		meant := p.whole(n.start, n.end, thousands)
		if !strings.Contains(plain, ".") && strings.Count(plain, ",") == 1 {
			meant += " or " + p.whole(n.start, n.end, point)
		}
		p.failWith(Malformed, n.start, n.end, quoted(written)+" has a comma, which stands for thousands or for the decimals", "Write "+meant+".", thousands)
		return thousands
	}
	point = strings.ReplaceAll(plain[:last], ".", "")
	point = strings.ReplaceAll(point, ",", "") + "." + strings.ReplaceAll(plain[last+1:], ".", "")
	p.failWith(Malformed, n.start, n.end, quoted(written)+" has a comma", "Write "+p.whole(n.start, n.end, point)+": a point stands before the decimals.", point)
	return point
}

// grouped puts thin spaces between groups of three.
func grouped(whole string) string {
	for at := len(whole) - 3; at > 0; at -= 3 {
		whole = whole[:at] + "\u00a0" + whole[at:]
	}
	return whole
}

// fractionText writes a value as 1-3/16.
func fractionText(value *big.Rat) string {
	whole := new(big.Int)
	rest := new(big.Int)
	whole.QuoRem(value.Num(), value.Denom(), rest)
	switch {
	case rest.Sign() == 0:
		return whole.String()
	case whole.Sign() == 0:
		return rest.String() + "/" + value.Denom().String()
	}
	return whole.String() + "-" + rest.String() + "/" + value.Denom().String()
}

func trimZeros(whole string) string {
	if whole = strings.TrimLeft(whole, "0"); whole == "" {
		return "0"
	}
	return whole
}

func smallInt(digits string) int64 {
	out := int64(0)
	for _, d := range digits {
		out = out*10 + int64(d-'0')
	}
	return out
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }

func digitAt(text string, at int) bool { return at < len(text) && isDigit(text[at]) }

func leadingDigits(text string) int {
	at := 0
	for digitAt(text, at) {
		at++
	}
	return at
}

func decimalFollows(text string) bool {
	return text != "" && (isDigit(text[0]) || (text[0] == '.' || text[0] == ',' || text[0] == '/') && digitAt(text, 1))
}

func letterFollows(text string) bool {
	r, _ := utf8.DecodeRuneInString(text)
	return unicode.IsLetter(r)
}

// hasWord reports whether text begins with a word, in any case.
func hasWord(text, word string) bool {
	if len(text) < len(word) || !strings.EqualFold(text[:len(word)], word) {
		return false
	}
	last, _ := utf8.DecodeLastRuneInString(word)
	return !unicode.IsLetter(last) || !letterFollows(text[len(word):])
}
