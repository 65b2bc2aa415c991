package draft

import (
	"math/big"
	"strings"
)

// number is a figure as it was said: forty-five, 1.5, point seven, one and three sixteenths.
type number struct {
	value    *big.Rat
	decimals string // the figures behind the point as they were said, "030"; "" for none
	fraction bool
	whole    bool // no more than a count: no point, no fraction
}

// text writes a number: with a fraction where it was said so and wanted so, or as a decimal.
func (n number) text(fractions bool) string {
	if n.fraction && fractions {
		whole, rest := new(big.Int), new(big.Rat)
		whole.Quo(n.value.Num(), n.value.Denom())
		rest.Sub(n.value, new(big.Rat).SetInt(whole))
		switch {
		case rest.Sign() == 0:
			return whole.String()
		case whole.Sign() == 0:
			return rest.RatString()
		}
		return whole.String() + "-" + rest.RatString()
	}
	places := len(n.decimals)
	if n.fraction || places == 0 {
		text := strings.TrimRight(n.value.FloatString(4), "0")
		return strings.TrimSuffix(text, ".")
	}
	return n.value.FloatString(places)
}

func whole(n int64) number { return number{value: big.NewRat(n, 1), whole: true} }

// int gives a whole number that fits a count.
func (n number) int() int {
	if !n.value.IsInt() || !n.value.Num().IsInt64() {
		return 0
	}
	return int(n.value.Num().Int64())
}

// figure reads what is written in figures: 85, 1.5, 3/8, 2,000.
func figure(text string) (number, bool) {
	text = strings.ReplaceAll(text, ",", "")
	if over, under, ok := strings.Cut(text, "/"); ok {
		if len(over) > 3 || len(under) > 3 || under == "" || strings.Trim(under, "0") == "" || !figures(over) || !figures(under) {
			return number{}, false
		}
		value, ok := new(big.Rat).SetString(text)
		return number{value: value, fraction: true}, ok
	}
	before, after, point := strings.Cut(text, ".")
	if !figures(before) || point && !figures(after) || len(text) > 12 {
		return number{}, false
	}
	value, ok := new(big.Rat).SetString(text)
	return number{value: value, decimals: after, whole: !point}, ok
}

func figures(text string) bool {
	return text != "" && strings.Trim(text, "0123456789") == ""
}

// numberAt reads the number that begins at a word and gives the word behind it. What is
// no number gives the word itself.
func numberAt(words []word, at int) (number, int) {
	if at >= len(words) {
		return number{}, at
	}
	n, next := plainNumber(words, at)
	if next > at {
		if n.whole {
			if part, after := fractionOf(words, at, next, n); after > next {
				return part, after
			}
			n, next = withFraction(words, n, next)
		}
		return n, next
	}
	// half, a quarter, a third, an eighth
	from := at
	if (words[at].lower == "a" || words[at].lower == "an") && !endsHere(words, at+1) {
		from++
	}
	if from+1 < len(words) && words[from+1].hyphen && words[from+1].lower == "term" {
		return number{}, at
	}
	if under, ok := denominators()[words[from].lower]; ok && (from > at || under == 2 || under == 4) && !(under == 2 && from+1 < len(words) && words[from+1].lower == "way") {
		return number{value: big.NewRat(1, under), fraction: true}, from + 1
	}
	return number{}, at
}

// plainNumber reads figures, a cardinal, or a decimal.
func plainNumber(words []word, at int) (number, int) {
	w := words[at].lower
	if half, ok := halves()[w]; ok {
		return number{value: big.NewRat(half, 4), fraction: true}, at + 1
	}
	if numeric(w) {
		n, ok := figure(w)
		if !ok {
			return number{}, at
		}
		next := at + 1
		if n.whole && !endsHere(words, next) && strings.Contains(words[next].lower, "/") { // 1-3/16, 1 3/16
			if part, ok := figure(words[next].lower); ok && part.value.Cmp(big.NewRat(1, 1)) < 0 {
				return number{value: new(big.Rat).Add(n.value, part.value), fraction: true}, next + 1
			}
		}
		if n.whole && !endsHere(words, next) && words[next].lower == "point" {
			return decimal(words, n, next)
		}
		return n, next
	}
	if w == "point" && digitAt(words, at+1) {
		return decimal(words, whole(0), at)
	}
	n, next := cardinal(words, at)
	if next > at && !endsHere(words, next) && words[next].lower == "point" {
		return decimal(words, n, next)
	}
	return n, next
}

func digitAt(words []word, at int) bool {
	if endsHere(words, at) {
		return false
	}
	_, small := smalls()[words[at].lower]
	return small || numeric(words[at].lower) && figures(words[at].lower)
}

// decimal reads the figures behind a spoken point: point zero three zero, three point five.
func decimal(words []word, before number, at int) (number, int) {
	digits := ""
	next := at + 1
	for !endsHere(words, next) && len(digits) < 6 {
		w := words[next].lower
		switch value, small := smalls()[w]; {
		case small && value < 10 || small && digits == "":
			if value >= 20 { // point twenty-five
				n, after := cardinal(words, next)
				digits += n.value.RatString()
				next = after
				break
			}
			digits += big.NewRat(value, 1).RatString()
			next++
			continue
		case figures(w) && len(w) < 5:
			digits += w
			next++
			continue
		}
		break
	}
	if digits == "" || !figures(digits) {
		return before, at
	}
	value, _ := new(big.Rat).SetString(before.value.FloatString(0) + "." + digits)
	return number{value: value, decimals: digits}, next
}

// cardinal reads a whole number in words: seventy-two, a hundred and forty, two thousand
// eight hundred, one fifty.
func cardinal(words []word, at int) (number, int) {
	total, current, next := int64(0), int64(-1), at
	last := int64(-1)
	for next < len(words) && (next == at || words[next].stop == 0) {
		w := words[next].lower
		value, small := smalls()[w]
		big := scales()[w]
		switch {
		case small && current < 0:
			current, last = value, value
		case small && last >= 20 && last < 100 && value > 0 && value < 10: // seventy-two
			current, last = current+value, value
		case small && current >= 100 && last >= 100 && value < 100: // hundred (and) forty
			current, last = current+value, value
		case small && total > 0 && last >= 1000 && value < 1000:
			current, last = value, value
		case small && current > 0 && current < 10 && last == current && value >= 20 && !pairs(words, next) && !(next+1 < len(words) && words[next+1].hyphen && strings.HasPrefix(words[next+1].lower, "second")): // one fifty
			current, last = current*100+value, value
		case big > 0 && current < 0 && (next > at && words[next-1].lower == "a" || next == at && at > 0 && words[at].stop == ',' && !endsHere(words, at+1) && words[at+1].lower == "and"): // a hundred; wheel nuts, hundred and ten
			current, last = big, big
			if big == 1000 {
				total, current = big, 0
			}
		case big == 100 && current > 0 && current < 100:
			current, last = current*100, 100
		case big == 1000 && current > 0 && current < 1000 && total == 0:
			total, current, last = current*1000, 0, 1000
		case w == "a" && next == at && !endsHere(words, next+1) && scales()[words[next+1].lower] > 0:
			next++
			continue
		case w == "and" && last >= 100 && !endsHere(words, next+1) && smalls()[words[next+1].lower] > 0:
			next++
			continue
		case big > 0 && current < 0 && next == at: // hundred
			current, last = big, big
		default:
			return sum(total, current, at, next)
		}
		next++
	}
	return sum(total, current, at, next)
}

func sum(total, current int64, at, next int) (number, int) {
	if current < 0 && total == 0 || next == at {
		return number{}, at
	}
	return whole(total + max(current, 0)), next
}

// pairs reports whether the tens at a word belong to what follows, and are no rest of a
// hundred: two twenty-four mil spanners.
func pairs(words []word, at int) bool {
	for i := at + 1; i < len(words) && i < at+3 && words[i].stop == 0; i++ {
		if _, small := smalls()[words[i].lower]; small {
			continue
		}
		_, tool := toolAt(words, i)
		_, unit := unitAt(words, i)
		return tool > 0 || unit > 0 && sized.has(words[i].lower)
	}
	return false
}

// fractionOf reads a denominator behind a number: three eighths, five thirty-seconds.
func fractionOf(words []word, at, next int, n number) (number, int) {
	if endsHere(words, next) || n.value.Sign() <= 0 {
		return number{}, at
	}
	under, ok := denominators()[words[next].lower]
	after := next + 1
	if !ok && !endsHere(words, after) {
		if long, found := longDenominators()[words[next].lower+" "+words[after].lower]; found && words[after].hyphen {
			under, ok, after = long, true, after+1
		}
	}
	if !ok || under == 2 && !strings.HasPrefix(words[next].lower, "halve") {
		return number{}, at
	}
	value := new(big.Rat).Quo(n.value, big.NewRat(under, 1))
	if value.Cmp(big.NewRat(1, 1)) >= 0 { // "sixteen eighths" is no fraction; "twenty quarter ..." neither
		return number{}, at
	}
	return number{value: value, fraction: true}, after
}

// withFraction reads what is added to a whole number: one and three sixteenths, two and a half.
func withFraction(words []word, n number, next int) (number, int) {
	if next+1 >= len(words) || words[next].stop != 0 || words[next].lower != "and" {
		return n, next
	}
	part, after := numberAt(words, next+1)
	if after > next+1 && part.fraction && part.value.Cmp(big.NewRat(1, 1)) < 0 {
		return number{value: new(big.Rat).Add(n.value, part.value), fraction: true}, after
	}
	return n, next
}
