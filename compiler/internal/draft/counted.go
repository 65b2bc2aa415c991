package draft

import (
	"benchleaf/compiler/internal/quantity"
	"sync"
)

// countThing takes a figure that says how many there are: 6 off, x4, qty 3, a set of four; it
// reports whether it was one.
func (t *taker) countThing(number int, it *item, a amount) bool {
	if !a.low.whole || a.unit.symbol != "" || a.ranged() || a.low.int() < 1 || a.low.int() > 200 {
		return false
	}
	behind := !endsHere(t.words, it.to)
	switch {
	case t.words[it.from].times:
	case behind && t.words[it.to].lower == "off" && (it.from == 0 || !t.takesParticle(it.from)) && !(!endsHere(t.words, it.to+1) && articles.has(t.words[it.to+1].lower)):
	case behind && t.words[it.to].lower == "no" && endsHere(t.words, it.to+1):
	case behind && t.words[it.to].lower == "x" && number+1 < len(t.items) && t.items[number+1].from == it.to+1 && (t.items[number+1].kind == threadItem || t.items[number+1].kind == amountItem && t.items[number+1].amount.unit.symbol != "" && t.items[number+1].amount.unit.kind != quantity.Length || t.items[number+1].kind == partItem || t.items[number+1].kind == toolItem):
	case it.from > 0 && t.words[it.from].stop == 0 && (t.words[it.from-1].lower == "quantity" || t.words[it.from-1].lower == "x"):
	default:
		return false
	}
	if a.low.int() < 2 {
		return true
	}
	about := ""
	if number > 0 && t.items[number-1].kind == partItem && it.from-t.items[number-1].to <= 2 {
		about = t.items[number-1].part.name
	} else if number+1 < len(t.items) && t.items[number+1].kind == partItem && t.items[number+1].from-it.to <= 3 {
		about = t.qualify(t.items[number+1].part).name
	}
	if about == "" {
		about = t.subject()
	}
	to := it.to
	if behind && t.words[it.to].lower == "off" {
		to++
	}
	t.add(Count, a.text(), about, it.from, to)
	return true
}

// takesParticle reports whether a verb that takes "off" stands close before a word.
func (t *taker) takesParticle(at int) bool {
	for i := at - 1; i >= max(at-3, 0) && t.words[i+1].stop == 0; i-- {
		if actionWords()[t.words[i].lower] && !isHead(t.words[i].stem) {
			return true
		}
	}
	return false
}

// acrossFlats takes the width of a head: 19 AF, seventeen across flats.
func (t *taker) acrossFlats(it *item, a amount) bool {
	if a.ranged() || endsHere(t.words, it.to) || a.unit.kind != quantity.None && a.unit.kind != quantity.Length {
		return false
	}
	n := length(flats, t.words, it.to)
	if n == 0 {
		return false
	}
	text := a.text()
	if a.unit.symbol == "" {
		text += " mm"
		if a.low.fraction {
			text = a.low.text(true) + " in"
		}
	}
	t.add(Size, text, t.subject(), it.from, it.to+n)
	return true
}

var flats = cues("af|a f|across flats|across the flats|hex head|hex headed|square head")

// figureSaid are words before a figure that somebody or something gives.
var figureSaid = set("says say said reckons gives")

// borrow gives a bare figure the unit of a like figure that stands beside it: 40 / 65 / 80 Nm,
// off load 8.0 and on load 7.2 bar, 58 Hz new and 50 run in.
func (t *taker) borrow(number int, a amount) amount {
	it := &t.items[number]
	if a.unit.symbol != "" || a.low.fraction || t.words[it.from].times {
		return a
	}
	if number+1 < len(t.items) && t.items[number+1].from == it.to && t.items[number+1].kind != amountItem {
		return a
	}
	for k := number + 1; k < min(number+4, len(t.items)); k++ {
		next := &t.items[k]
		if next.kind != amountItem {
			if next.kind == partItem && next.from-it.to <= 4 {
				continue
			}
			break
		}
		if t.words[next.from].sentence != t.words[it.from].sentence || next.from-t.items[k-1].to > 3 || next.amount.low.fraction {
			break
		}
		if next.amount.unit.symbol != "" {
			if lends()[next.amount.unit.kind] && alike(a, next.amount) && t.joins(it.to, next.from, next.amount.unit.kind == quantity.Torque) {
				a.unit = next.amount.unit
			}
			return a
		}
	}
	if before := max(number-1, 0); before < number && a.low.decimals != "" && figureSaid.has(t.words[max(a.figures-1, 0)].lower) {
		if one := t.items[before]; one.kind == amountItem && one.amount.unit.kind == quantity.Volume && t.words[one.from].sentence == t.words[it.from].sentence {
			a.unit = one.amount.unit // the book says one point four
			return a
		}
	}
	if it.from > 0 && t.words[it.from].stop == 0 && a.low.decimals != "" || it.from > 0 && a.prefixed && t.words[it.from].stop == 0 {
		switch t.words[it.from-1].lower { // amps < 9.4
		case "amps":
			a.unit = unit{symbol: "A", kind: quantity.Current}
			return a
		case "volts":
			a.unit = unit{symbol: "V", kind: quantity.Voltage}
			return a
		case "ohms":
			a.unit = unit{symbol: "Ω", kind: quantity.Resistance}
			return a
		}
	}
	if u, ok := t.toldAgain(number, a); ok {
		a.unit = u // 0.2 to 0.5 mm; if it's more than 0.5
		return a
	}
	if t.sharesOut(it) {
		for k := number - 1; k >= max(number-3, 0); k-- {
			if before := &t.items[k]; before.kind == amountItem && before.amount.unit.symbol != "" && t.words[before.from].sentence == t.words[it.from].sentence && it.from-before.to < 9 {
				if kind := before.amount.unit.kind; kind == quantity.Count || kind == quantity.Volume || kind == quantity.Mass || kind == quantity.Pressure {
					a.unit = before.amount.unit // three strokes in the front one and two in the rear one
				}
				return a
			}
		}
	}
	for k := number - 1; k >= max(number-2, 0); k-- {
		before := &t.items[k]
		if before.kind == partItem && it.from-before.from <= 4 {
			continue
		}
		if before.kind != amountItem || !lends()[before.amount.unit.kind] || before.amount.unit.kind == quantity.Torque || before.amount.unit.symbol == "" || t.words[before.from].sentence != t.words[it.from].sentence || it.from-before.to > 4 || it.from == before.to || !alike(before.amount, a) || t.words[it.from].stop == ',' && before.to == it.from || !endsHere(t.words, it.to) {
			break
		}
		a.unit = before.amount.unit
		return a
	}
	return a
}

// toldAgain gives the unit of the same figure where it was told close before, of what is spoken of.
func (t *taker) toldAgain(number int, a amount) (unit, bool) {
	bounded := a.prefixed && (a.shape == atMost || a.shape == atLeast)
	if a.low.whole && a.low.int() < 40 && !bounded || a.ranged() || !endsHere(t.words, t.items[number].to) && !speakers.has(t.words[t.items[number].to].lower) {
		return unit{}, false
	}
	for k := number - 1; k >= 0 && t.words[t.items[number].from].sentence-t.words[t.items[k].from].sentence <= 2 && t.items[k].from >= t.begun; k-- {
		one := t.items[k]
		if one.kind != amountItem || one.amount.unit.symbol == "" || one.amount.unit.kind == quantity.Torque || one.amount.unit.kind == quantity.Time {
			continue
		}
		if bounded && k == number-1 && one.amount.unit.kind == quantity.Length && alike(one.amount, a) {
			return one.amount.unit, true // it gives 8 to 10 mm; if it's more than 12
		}
		if one.amount.low.value.Cmp(a.low.value) == 0 || one.amount.ranged() && one.amount.high.value.Cmp(a.low.value) == 0 {
			return one.amount.unit, true
		}
	}
	return unit{}, false
}

// sharesOut reports whether a bare figure tells how much of the same goes to another place: AND
// TWO IN the rear one.
func (t *taker) sharesOut(it *item) bool {
	if it.from == 0 || t.words[it.from].stop == '.' || t.words[it.from-1].lower != "and" && t.words[it.from].stop == 0 || it.to+1 >= len(t.words) || t.words[it.to].stop != 0 {
		return false
	}
	w, next := t.words[it.to].lower, t.words[it.to+1].lower
	return (w == "in" || w == "into" || w == "for" || w == "on" || w == "at") && (next == "the" || next == "each" || next == "both")
}

var lends = sync.OnceValue(func() map[quantity.Dimension]bool {
	return map[quantity.Dimension]bool{quantity.Torque: true, quantity.Pressure: true, quantity.Temperature: true, quantity.Frequency: true, quantity.Voltage: true, quantity.Current: true}
})

// alike reports whether two figures may be of one kind: neither is four times the other.
func alike(a, b amount) bool {
	x, _ := a.low.value.Float64()
	y, _ := b.low.value.Float64()
	return x > 0 && y > 0 && x < 4*y && y < 4*x
}

// joins reports whether words between two figures only join them, or only name what the second
// is of; torques are joined by no more than "then".
func (t *taker) joins(from, to int, only bool) bool {
	for i := from; i < to; i++ {
		w := t.words[i].lower
		if numeric(w) {
			continue
		}
		switch w {
		case "first", "then", "and", "to", "next", "finally", "by", "or":
			continue
		}
		if only || actionWords()[w] && !isHead(t.words[i].stem) || finite.has(w) && w != "on" && w != "off" || articles.has(w) {
			return false
		}
	}
	return true
}
