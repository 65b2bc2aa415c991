package draft

import (
	"math/big"
	"strings"

	"benchleaf/compiler/internal/quantity"
)

// unit is a unit as it was said, by the symbol that benchleaf writes.
type unit struct {
	symbol string
	kind   quantity.Dimension
	open   bool // not known for certain: a gallon without its country, revs without their time
}

// shape is how an amount is bounded.
type shape int

const (
	exact shape = iota
	atMost
	atLeast
	about
)

// amount is a figure, or two of a range, with the unit where one was said.
type amount struct {
	low, high number // high has no value where there is one figure
	unit      unit
	shape     shape
	prefixed  bool   // the bound stood before it
	from, to  int    // its words
	figures   int    // the first word of the figures
	more      string // what follows in a smaller unit: "10 min" behind "1 h"
}

func (a amount) ranged() bool { return a.high.value != nil }

// text writes an amount as benchleaf does.
func (a amount) text() string {
	unit, low, high := a.unit, a.low, a.high
	if unit.symbol == "thou" {
		unit.symbol = "in"
		low = thousandth(low)
		if a.ranged() {
			high = thousandth(high)
		}
	}
	fractions := unit.symbol == "" || unit.open && unit.kind == quantity.Volume || unit.kind == quantity.Length && (unit.symbol == "in" || unit.symbol == "ft") || unit.kind == quantity.Angle
	text := low.text(fractions)
	if a.ranged() {
		text += " to " + high.text(fractions)
	}
	if unit.symbol == "h" && !a.ranged() && low.fraction { // 1 h 30 min
		return a.bounded(hours(low.value))
	}
	if unit.symbol != "" && !(unit.open && unit.kind == quantity.RotationalSpeed) {
		symbol := unit.symbol
		last := low
		if a.ranged() {
			last = high
		}
		if one, ok := ones()[symbol]; ok && last.value.Cmp(big.NewRat(1, 1)) <= 0 {
			symbol = one
		}
		text += " " + symbol
	}
	if a.more != "" {
		text += " " + a.more
	}
	return a.bounded(text)
}

func (a amount) bounded(text string) string {
	switch a.shape {
	case atMost:
		return "max " + text
	case atLeast:
		return "min " + text
	}
	return text
}

func thousandth(n number) number {
	return number{value: new(big.Rat).Quo(n.value, big.NewRat(1000, 1)), decimals: "000" + n.decimals}
}

func hours(value *big.Rat) string {
	minutes := new(big.Rat).Mul(value, big.NewRat(60, 1))
	if !minutes.IsInt() {
		return number{value: value}.text(false) + " h"
	}
	n := minutes.Num().Int64()
	switch {
	case n < 60:
		return whole(n).text(false) + " min"
	case n%60 == 0:
		return whole(n/60).text(false) + " h"
	}
	return whole(n/60).text(false) + " h " + whole(n%60).text(false) + " min"
}

func unitAt(words []word, at int) (unit, int) {
	if at >= len(words) {
		return unit{}, 0
	}
	if words[at].stop != 0 {
		return unit{}, 0
	}
	if words[at].lower == "t" && at > 1 && (strings.Contains(words[at-1].lower, "/") || numeric(words[at-1].lower)) && (words[at-2].lower == "tight" || words[at-2].lower == "and" || words[at-2].lower == "plus") {
		return unit{symbol: "turn", kind: quantity.Angle}, 1 // hand tight + 1/2 t
	}
	if close := at > 0 && words[at-1].end == words[at].start; !close && closeOnly.has(words[at].lower) && !(at > 0 && numeric(words[at-1].lower) && unitAlone(words, at)) {
		return unit{}, 0
	}
	if w := words[at]; (w.raw == "C" || w.raw == "F" || w.raw == "c" && at+1 < len(words) && words[at+1].stop != 0) && at > 0 && numeric(words[at-1].lower) {
		if w.lower == "c" {
			return unit{symbol: "°C", kind: quantity.Temperature}, 1
		}
		return unit{symbol: "°F", kind: quantity.Temperature}, 1
	}
	if words[at].lower == "m" && (at+1 >= len(words) || words[at+1].stop != 0 || !numeric(words[at+1].lower) && smalls()[words[at+1].lower] == 0) {
		return metres(words, at)
	}
	if u, n := units.at(words, at); n > 0 {
		if after := at + n; words[at].lower == "bar" && !endsHere(words, after) && isHead(words[after].stem) {
			return unit{}, 0 // two bar nuts
		}
		return u, n
	}
	return unitHeard(words, at)
}

// metres reads an m close behind a figure, which stands for months before a service: 6m insp.
func metres(words []word, at int) (unit, int) {
	if at == 0 || !numeric(words[at-1].lower) {
		return unit{}, 0
	}
	if !endsHere(words, at+1) && dueWords.has(words[at+1].lower) || !endsHere(words, at+1) && words[at+1].lower == "inspect" {
		return unit{symbol: "months", kind: quantity.Calendar}, 1
	}
	return unit{symbol: "m", kind: quantity.Length}, 1
}

// unitAlone reports whether a letter behind a figure can only be its unit: 12 V, 4 h.
func unitAlone(words []word, at int) bool {
	return words[at].lower != "a" && words[at].lower != "in" && (words[at].lower != "t" || strings.Contains(words[at-1].lower, ".")) || words[at].raw == "A"
}

// amountAt reads the amount that begins at a word, with the words that bound it.
func amountAt(words []word, at int) (amount, bool) {
	a := amount{from: at}
	next := at
	if w := words[at].lower; w == "past" && at > 0 && words[at].stop == 0 && (smalls()[words[at-1].lower] > 0 || numeric(words[at-1].lower) || denominators()[words[at-1].lower] > 0) {
		return a, false // ten past eleven
	}
	if bound, length := prefixes.at(words, at); length > 0 {
		a.shape, a.prefixed, next = bound, true, at+length
		if bound == atMost && least.has(words[at].lower) && wantedHere(words, at) {
			a.shape = atLeast // it should read more than one megohm
		}
		if words[at].lower == "up" && at > 0 && words[at].stop == 0 && (pronouns.has(words[at-1].lower) || heads()[words[at-1].stem] == fastener || words[at-1].lower == "do" || words[at-1].lower == "tighten") {
			a.shape, a.prefixed = exact, false // do them up to forty
		}
		if next < len(words) && words[next].lower == "the" {
			next++
		}
		if !endsHere(words, next+1) && measures.has(words[next].lower) && words[next].stop == 0 {
			next++ // min thickness 5
		}
	}
	if next >= len(words) || next > at && words[next].stop == '.' {
		return a, false
	}
	a.figures = next
	between := words[next].lower == "between" && !endsHere(words, next+1)
	if between {
		next++
	}
	if next >= len(words) {
		return a, false
	}
	// an inch and a half, an hour and ten
	if (words[next].lower == "an" || words[next].lower == "a") && next+1 < len(words) && !(next > 0 && words[next].stop == 0 && words[next-1].lower == "of") {
		if u, length := unitAt(words, next+1); length > 0 && single.has(u.symbol) && !(words[next+1].lower == "second" && !endsHere(words, next+2) && (isHead(words[next+2].stem) || modifiers.has(words[next+2].lower) || words[next+2].lower == "one")) {
			n := whole(1)
			after := next + 1 + length
			if part, behind := andMore(words, after); behind > after {
				if part.fraction {
					n = number{value: new(big.Rat).Add(n.value, part.value), fraction: true}
				} else if u.symbol == "h" && part.whole {
					a.more = part.text(false) + " min"
				} else {
					behind = after
				}
				after = behind
			} else if u.kind == quantity.Length && !plainInch.has(words[next+1].lower) {
				return a, false
			}
			a.low, a.unit = n, u
			return a.ended(words, after), true
		}
	}
	// inch and a quarter
	if words[next].lower == "inch" && (next == at || words[next].stop == 0) {
		if part, behind := andMore(words, next+1); behind > next+1 && part.fraction {
			a.low, a.unit = number{value: new(big.Rat).Add(big.NewRat(1, 1), part.value), fraction: true}, unit{symbol: "in", kind: quantity.Length}
			return a.ended(words, behind), true
		}
	}
	if words[next].lower == "one" && next > 0 && words[next].stop == 0 && !bounded(words, at, next) && onePronoun.has(words[next-1].lower) {
		return a, false
	}
	if words[next].lower == "one" && words[next].of { // one's shot
		return a, false
	}
	n, after := numberAt(words, next)
	if after == next {
		return a, false
	}
	if words[next].lower == "oh" && after == next+1 {
		return a, false // oh, hang on
	}
	a.low = n
	next = after
	// half an inch, half a litre
	if !n.whole && next+1 < len(words) && words[next].stop == 0 && (words[next].lower == "a" || words[next].lower == "an" || words[next].lower == "of" && (words[next+1].lower == "a" || words[next+1].lower == "an")) {
		skip := 1
		if words[next].lower == "of" {
			skip = 2
		}
		if u, length := unitAt(words, next+skip); length > 0 {
			a.unit, next = u, next+skip+length
		}
	}
	if a.unit.symbol == "" {
		if u, length := unitAt(words, next); length > 0 {
			a.unit, next = u, next+length
			if minutes, behind := numberAt(words, min(next, len(words)-1)); u.symbol == "h" && behind > next && next < len(words) && words[next].stop == 0 && minutes.whole && minutes.int() >= 5 && minutes.int() < 60 && endsHere(words, behind) {
				a.more, next = minutes.text(false)+" min", behind // 2 hr 15
			}
			if part, behind := andMore(words, next); behind > next && part.fraction { // two inches and a half
				a.low = number{value: new(big.Rat).Add(a.low.value, part.value), fraction: true}
				next = behind
			}
		}
	}
	if a.unit.symbol == "" && next+1 < len(words) && words[next].stop == ',' && (n.whole || n.decimals != "") {
		if u, length := units.at(words, next); length > 1 && u.kind == quantity.Torque {
			a.unit, next = u, next+length // twenty-five, foot-pounds
		}
	}
	if low, high, u, behind := tolerance(words, a, next); behind > next {
		a.low, a.high, a.unit = low, high, u
		return a.ended(words, behind), true
	}
	if high, u, behind := secondFigure(words, a, next, between); behind > next {
		a.high, next = high, behind
		if u.symbol != "" {
			a.unit = u
		}
	}
	if a.unit.symbol == "" && !endsHere(words, next) && words[next].lower == "of" && next+1 < len(words) && (words[next+1].lower == "a" || words[next+1].lower == "an") && (a.ranged() || !a.low.whole) {
		if u, length := unitAt(words, next+2); length > 0 {
			a.unit, next = u, next+2+length // point two to point five of a millimetre
		}
	}
	return a.ended(words, next), true
}

// andMore reads a fraction or minutes behind a unit: an inch AND A HALF, an hour AND TEN.
func andMore(words []word, at int) (number, int) {
	if at+1 >= len(words) || words[at].stop != 0 || words[at].lower != "and" {
		return number{}, at
	}
	n, next := numberAt(words, at+1)
	if next == at+1 {
		return n, at
	}
	if _, length := unitAt(words, next); length > 0 && !n.fraction {
		return n, at
	}
	if !endsHere(words, next) && !n.fraction {
		if _, length := partAt(words, next); length > 0 {
			return n, at
		}
	}
	return n, next
}

// tolerance reads what a figure may be off by: half an inch, give or take an eighth; 5 mm plus or
// minus one. Words of what is measured may stand between.
func tolerance(words []word, a amount, at int) (low, high number, u unit, end int) {
	for next := at; next < min(at+7, len(words)) && words[next].stop != '.'; next++ {
		n := length(giveOrTake, words, next)
		if n == 0 || a.unit.symbol == "" {
			continue
		}
		off, after := numberAt(words, min(next+n, len(words)-1))
		if after <= next+n || off.value.Cmp(a.low.value) >= 0 || words[next+n].stop != 0 {
			return low, high, u, at
		}
		if also, length := unitAt(words, after); length > 0 {
			if also.symbol != a.unit.symbol {
				return low, high, u, at
			}
			after += length
		}
		fraction := a.low.fraction || off.fraction
		decimals := a.low.decimals
		if len(off.decimals) > len(decimals) {
			decimals = off.decimals
		}
		put := func(value *big.Rat) number {
			return number{value: value, fraction: fraction, decimals: decimals, whole: !fraction && value.IsInt()}
		}
		return put(new(big.Rat).Sub(a.low.value, off.value)), put(new(big.Rat).Add(a.low.value, off.value)), a.unit, after
	}
	return low, high, u, at
}

var giveOrTake = cues("±|give or take|plus or minus|plus minus|either way by")

// secondFigure reads the other end of a range: to eighteen, or four, and no more than five eighths.
func secondFigure(words []word, a amount, at int, between bool) (number, unit, int) {
	if at+1 >= len(words) {
		return number{}, unit{}, at
	}
	w := words[at]
	next := at + 1
	joined := false
	switch {
	case w.stop == 0 && (w.lower == "to" || w.lower == "till" || w.lower == "until" || w.lower == "through"):
		joined = true
	case w.stop == 0 && between && w.lower == "and":
		joined = true
	case w.hyphen && numeric(w.lower):
		joined, next = true, at
	case w.stop == 0 && w.lower == "or":
		joined = true
		between = true // only of neighbours
	case w.stop == ',' && a.unit.symbol == "":
		next = at
		joined, between = true, true
	case w.stop == 0 && w.lower == "and" && a.unit.symbol != "":
		if shape, length := prefixes.at(words, next); length > 0 && shape == atMost {
			next += length
			joined = true
		}
	}
	if !joined || next >= len(words) {
		return number{}, unit{}, at
	}
	n, after := numberAt(words, next)
	if after == next || n.value.Cmp(a.low.value) <= 0 {
		return number{}, unit{}, at
	}
	u, length := unitAt(words, after)
	if w.lower == "or" || w.stop == ',' {
		next := new(big.Rat).Add(a.low.value, big.NewRat(1, 1))
		if n.value.Cmp(next) != 0 && !(w.lower == "or" && length > 0 && n.value.Cmp(new(big.Rat).Mul(a.low.value, big.NewRat(2, 1))) <= 0 && a.unit.symbol == "") {
			return number{}, unit{}, at
		}
		if w.stop == ',' && length == 0 {
			return number{}, unit{}, at
		}
	}
	if length > 0 && a.unit.symbol != "" && u.kind != a.unit.kind {
		return number{}, unit{}, at
	}
	return n, u, after + length
}

// ended reads the bound behind an amount: max, at the most, or so.
func (a amount) ended(words []word, next int) amount {
	a.to = next
	if next < len(words) && words[next].stop != '.' && a.shape == exact {
		if bound, length := suffixes.at(words, next); length > 0 {
			if _, figure := numberAt(words, next+length); (figure == next+length || next+length == len(words)) && !(next+length < len(words) && words[next+length].lower == "than") {
				a.shape, a.to = bound, next+length
			}
		}
	}
	return a
}

// least are words of a bound that is the least where something has to be so.
var least = set("over more above")

// wantedHere reports whether what is wanted is told before a word of its sentence, and not what is too much.
func wantedHere(words []word, at int) bool {
	for i := at - 1; i >= max(at-14, 0) && words[i].sentence == words[at].sentence; i-- {
		switch words[i].lower {
		case "should", "must", "wants", "needs", "ought":
			return true
		case "if", "when", "not", "never", "unless", "once", "till", "until", "can", "or", "because", "shouldn't", "mustn't", "doesn't", "won't", "no":
			return false
		}
	}
	return false
}

// measures are words between a bound and its figure that say what is measured.
var measures = set("thickness width depth gap clearance height length temperature pressure level speed wear play slack")

func bounded(words []word, at, next int) bool { return next > at && prefixes.has(words, at) }

// onePronoun are words behind which "one" is no number: the new one.
var onePronoun = set("new old this that the other first last next big little small right wrong which every no any some second good bad spare same each long short metre meter millimetre litre tonne ton copper brass steel red blue green left top bottom yours cheap proper rear front")
