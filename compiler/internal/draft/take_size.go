package draft

import (
	"slices"
	"strings"
)

// isSize reports whether a length is a size of a tool or a fastener.
func (t *taker) isSize(number int, it *item, a amount) bool {
	if a.ranged() || a.shape == atMost || a.shape == atLeast {
		return false
	}
	if t.words[it.from].stop == 0 && it.from > 0 && t.words[it.from-1].lower == "the" && a.low.fraction && a.unit.symbol == "in" {
		return true
	}
	if !endsHere(t.words, it.to) && across.has(t.words[it.to].lower) && endsHere(t.words, it.to+1) {
		return true // eight mil inside
	}
	if number > 0 && a.unit.symbol == "mm" && a.low.whole && a.low.int() >= 8 && a.low.int() <= 46 && endsHere(t.words, it.to) && (t.words[it.from].stop == ':' || t.words[it.from].stop == ',') {
		if before := t.items[number-1]; before.kind == partItem && before.to == it.from && (before.part.class == fastener || before.part.class == plugPart || before.part.name == "spark plug") {
			return true // plug: 19 mm, gap 0.6
		}
	}
	if number > 0 && a.unit.symbol == "mm" && a.low.whole && a.low.int() >= 4 && a.low.int() <= 70 {
		before := t.items[number-1]
		if before.kind == partItem && (before.to == it.from || t.isA(before.to, it.from)) && t.words[it.from].stop == 0 && (before.part.class == fastener || before.part.class == plugPart) && !t.near(rangeCues, it.from, it.to, 4, 3) {
			return true // level plug 24 mm
		}
	}
	if number > 0 && a.unit.symbol == "mm" && a.low.whole && a.low.int() >= 5 && a.low.int() <= 70 && t.items[number-1].kind == threadItem && t.items[number-1].to == it.from && endsHere(t.words, it.to) && t.words[it.from].stop == ',' {
		return true // M6 (10 mm)
	}
	if a.unit.symbol == "mm" && a.low.whole && a.low.int() >= 6 && a.low.int() <= 70 && (t.last.class == plugPart || t.last.class == fastener) && t.words[t.last.from].sentence == t.words[it.from].sentence && t.words[it.from].stop == ',' && it.from-t.last.to < 5 && !t.near(rangeCues, it.from, it.to, 1, 3) {
		return true // a plug under the tank, twenty-four millimetre
	}
	if next := number + 1; next < len(t.items) && t.items[next].kind == partItem && t.items[next].from == it.to && t.words[it.to].stop == 0 && a.shape == exact && !t.near(rangeCues, it.from, it.to, 4, 3) {
		return true // a forty-two inch deck
	}
	if a.unit.symbol == "in" && a.low.fraction && t.section.class == fastener && t.words[t.begun].sentence >= t.words[it.from].sentence-1 && !t.near(rangeCues, it.from, it.to, 9, 3) {
		return true // Anchors: wedge type 3/4 in
	}
	if x, _ := a.low.value.Float64(); a.shape == exact && (a.unit.symbol == "in" && x >= 24 || a.unit.symbol == "cm" && x >= 60 || a.unit.symbol == "mm" && x >= 600) && !t.near(rangeCues, it.from, it.to, 9, 5) && t.topic.name != "" && (it.from == 0 || !prepositions.has(t.words[it.from-1].lower)) && !(!endsHere(t.words, it.to) && (heights.has(t.words[it.to].lower) || prepositions.has(t.words[it.to].lower))) {
		return true // the blade, seventy-seven inches
	}
	if f := t.fastener; a.unit.symbol == "in" && a.low.fraction && f.name != "" && t.words[max(f.from, 0)].sentence == t.words[it.from].sentence && !t.near(rangeCues, it.from, it.to, 9, 3) {
		return true
	}
	if number+1 < len(t.items) {
		next := t.items[number+1]
		if next.from-it.to <= 1 && (next.kind == classItem || next.kind == threadItem) {
			return true
		}
		if next.from-it.to <= 2 && (next.from == it.to && (t.words[it.to].stop == 0 || a.low.whole) || t.words[next.from].stop == 0 && !prepositions.has(t.words[it.to].lower)) && (next.kind == toolItem || next.kind == partItem && (next.part.class == fastener || next.part.class == plugPart || next.part.class == sealPart)) {
			return true
		}
	}
	return t.near(sizeCues, it.from, it.to, 3, 4) && !t.near(rangeCues, it.from, it.to, 4, 2)
}

// across are words behind a length that tell what of it is meant.
var across = set("inside outside bore diameter id od")

// isA reports whether words between two places only say what something is: is a, takes a.
func (t *taker) isA(from, to int) bool {
	for i := from; i < to; i++ {
		switch t.words[i].lower {
		case "is", "are", "a", "an", "takes", "take", "needs":
		default:
			return false
		}
	}
	return to-from <= 3
}

// keyed reports whether words behind a size say that a tool of that size does it.
func (t *taker) keyed(at int) bool {
	return at < len(t.words) && t.words[at].stop != '.' && length(toolMeant, t.words, at) > 0
}

// sizedBehind reports whether a size with its tool begins at a word: seventeen AND A NINETEEN SPANNER.
func (t *taker) sizedBehind(at int) bool {
	if at < len(t.words) && articles.has(t.words[at].lower) {
		at++
	}
	_, next := numberAt(t.words, min(at, len(t.words)-1))
	if next <= at || endsHere(t.words, next) {
		return false
	}
	row, n := toolAt(t.words, next)
	return n > 0 && sizeTool(row)
}

// byAnother takes the size of a ring: 18 by 22.
func (t *taker) byAnother(number int, it *item, a amount) bool {
	if it.to+1 >= len(t.words) || t.words[it.to].stop != 0 || t.words[it.to].lower != "by" && t.words[it.to].lower != "x" || number+1 >= len(t.items) {
		return false
	}
	next := &t.items[number+1]
	if next.kind != amountItem || next.from != it.to+1 || next.amount.unit.symbol != "" && next.amount.unit.symbol != "mm" || a.low.fraction {
		return false
	}
	next.used = true
	text, to := a.low.text(false)+" × "+next.amount.low.text(false), next.to
	if third := number + 2; third < len(t.items) && t.items[third].kind == amountItem && t.items[third].from == to+1 && (t.words[to].lower == "by" || t.words[to].lower == "x") && t.words[to].stop == 0 {
		t.items[third].used = true
		text, to = text+" × "+t.items[third].amount.low.text(false), t.items[third].to
	}
	t.add(Size, text+" mm", t.last.name, it.from, to)
	return true
}

// isWidth reports whether a figure is the width of a fastener just named: the lock nut's a thirty.
func (t *taker) isWidth(it *item) bool {
	i := it.from - 1
	for i >= 0 && (t.words[i].lower == "a" || t.words[i].lower == "is" || t.words[i].lower == "are" || t.words[i].lower == "the") {
		i--
	}
	if i < 0 || len(t.mentions) == 0 || t.words[i+1].stop != 0 {
		return false
	}
	m := t.mentions[len(t.mentions)-1]
	return m.to == i+1 && (m.class == fastener || m.class == plugPart) && (t.words[i].of || i < it.from-1) && !t.near(torqueCues, it.from, it.to, 2, 2)
}

func (t *taker) sizeAgain(value string, it *item) bool {
	for _, one := range t.out {
		if one.Kind == Size && one.Value == value && one.sentence >= t.words[it.from].sentence-2 {
			return true
		}
	}
	for _, one := range t.items {
		if one.kind == amountItem && one.to <= it.from && t.words[one.from].sentence >= t.words[it.from].sentence-2 && one.amount.unit.symbol == "" && one.amount.low.text(true)+" mm" == value && t.standings[one.from] != holds {
			return true
		}
	}
	return false
}

func sizeTool(row toolRow) bool {
	switch row.kind {
	case "socket", "wrench", "hex-key", "hex-bit":
		return true
	}
	return false
}

var sizeCues = cues("spanner|wrench|socket|key|hex|head|across flats|a f|af|square|allen|thread|nut|bolt|wide|diameter|on the outside|open end|what you need|width|hexagon")

// sizesTool reports whether a bare figure is the size of a tool named right before it, or of the
// next one of that kind: spanners 19 and 30, allen key 6.
func (t *taker) sizesTool(number int, it *item) bool {
	if !endsHere(t.words, it.to) && t.words[it.to].lower != "and" {
		return false
	}
	for k := number - 1; k >= 0; k-- {
		one := t.items[k]
		if one.to != it.from && !(one.to == it.from-1 && t.words[one.to].lower == "and" && t.words[one.to].stop == 0) || t.words[it.from].stop != 0 {
			return false
		}
		if one.kind == toolItem {
			return sizeTool(one.tool) && one.to == it.from
		}
		if one.kind != amountItem || one.amount.unit.symbol != "" || !one.amount.low.whole {
			return false
		}
		it = &t.items[k]
	}
	return false
}

// sizesOfTools gives the sizes in a list of tools to the tools, where no part is named: a 17 and a
// 24 socket, spanners 19 and 30.
func (t *taker) sizesOfTools() {
	for i := range t.out {
		size := &t.out[i]
		if size.Kind != Size || threadLike(size.Value) || slices.ContainsFunc(t.mentions, func(m mention) bool { return t.words[m.from].sentence == size.sentence }) {
			continue
		}
		var before, behind *Taken
		n := 0
		for k := range t.out {
			one := &t.out[k]
			if one.Kind != Tool || one.sentence != size.sentence {
				continue
			}
			n++
			if one.End <= size.Start && (before == nil || one.End > before.End) {
				before = one
			}
			if one.End > size.Start && (behind == nil || one.End < behind.End) {
				behind = one
			}
		}
		switch {
		case n < 3:
		case before != nil && t.behindTool(before.End, size.Start):
			size.About = before.Value
		case behind != nil:
			size.About = behind.Value
		}
	}
}

// behindTool reports whether no mark stands between a tool and a size behind it, so that the size is its own.
func (t *taker) behindTool(end, start int) bool {
	between := t.notes[end:start]
	return !strings.ContainsAny(between, ",;.") && len(between) < 12 && !strings.Contains(between, " a ") && !strings.Contains(between, "\n") && !t.spoken()
}

// threaded gives the fastener that was told to have a thread, where only one with its noun has.
func (t *taker) threaded(thread, head string) (string, bool) {
	name := ""
	for _, one := range t.out {
		if one.Kind != Size || one.Value != thread || !strings.HasSuffix(one.About, " "+head) {
			continue
		}
		if name != "" && name != one.About {
			return "", false
		}
		name = one.About
	}
	return name, name != ""
}
