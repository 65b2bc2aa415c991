package draft

import "strings"

// sameAt takes what is told by pointing back: same 85, same thread, same again.
func (t *taker) sameAt(at int) {
	w := t.words[at]
	if w.lower != "same" || at+1 >= len(t.words) || !t.live(at, at+1) {
		return
	}
	next := at + 1
	if n, after := numberAt(t.words, next); after > next && t.torque != "" && t.words[next].stop == 0 {
		for i := len(t.out) - 1; i >= 0; i-- {
			if one := t.out[i]; one.Kind == Torque && one.Value[:min(len(one.Value), len(n.text(false)))] == n.text(false) {
				t.add(Torque, one.Value, one.About, at, after)
				t.act("tighten", t.tightened(&item{from: at, to: after}), at, after, true)
				return
			}
		}
		return
	}
	if t.words[next].lower == "as" && t.sameTorque(at, next+1) {
		return
	}
	if on := next; t.words[on].lower == "again" || t.words[on].lower == "on" || t.words[on].lower == "for" || t.words[on].lower == "with" {
		if t.repeated(at) {
			return
		}
	}
	noun := t.words[next].stem
	if t.words[next].lower == "again" || t.words[next].lower == "thing" || t.words[next].lower == "torque" {
		if f := t.fastener; f.name != "" && t.torque != "" && t.words[f.from].sentence >= w.sentence-1 && t.mentionedIn(w.sentence, f.name) {
			t.add(Torque, t.torque, f.name, at, next+1)
			t.act("tighten", f, at, next+1, true)
		}
		return
	}
	if _, part := heads()[noun]; !part && noun != "thread" && noun != "size" {
		return
	}
	for i := len(t.out) - 1; i >= 0; i-- {
		one := t.out[i]
		if one.Kind != Size || one.Start >= w.start {
			continue
		}
		if noun == "thread" && threadLike(one.Value) || noun != "thread" && (one.noun == noun || strings.HasSuffix(one.noun, " "+noun)) {
			t.add(Size, one.Value, t.subject(), at, next+1)
			break
		}
	}
}

// sameTorque takes the torque of another part: the fill plug same as the drain.
func (t *taker) sameTorque(at, of int) bool {
	for of < len(t.words) && articles.has(t.words[of].lower) {
		of++
	}
	if endsHere(t.words, of) {
		return false
	}
	p, n := partAt(t.words, of)
	if w := t.words[of].lower; n == 0 && (w == "drain" || w == "fill" || w == "level") {
		p, n = part{name: w + " plug"}, 1
	}
	told := t.torquesOf(p.name)
	if n == 0 || len(told) == 0 || len(t.mentions) == 0 {
		return false
	}
	f := t.mentions[len(t.mentions)-1]
	if f.class != fastener && f.class != plugPart || f.name == p.name || f.to > at || t.words[f.from].sentence != t.words[at].sentence {
		return false
	}
	t.add(Torque, told[len(told)-1].Value, f.name, at, of+n)
	t.act("tighten", f.part, f.from, of+n, true)
	return true
}

func (t *taker) mentionedIn(sentence int, called string) bool {
	for _, m := range t.mentions {
		if m.name == called && t.words[m.from].sentence == sentence {
			return true
		}
	}
	return false
}

// repeated takes what was done last for another part: the same on the drive shaft; castor
// wheels, the same again.
func (t *taker) repeated(at int) bool {
	if len(t.deeds) == 0 {
		return false
	}
	last := t.deeds[len(t.deeds)-1]
	if last.verb != "grease" && last.verb != "clean" && last.verb != "lubricate" && last.verb != "inspect" && last.verb != "check" {
		return false
	}
	var to part
	end := at + 2
	if t.section.name != "" && t.section.name != last.part.name && t.words[t.section.from].sentence == t.words[at].sentence && t.section.to <= at {
		to = t.section
	} else {
		for i := at + 1; i < min(at+9, len(t.words)) && t.words[i].stop != '.'; i++ {
			if p, n := partAt(t.words, i); n > 0 && p.class != placePart {
				to, end = p, i+n
				break
			}
		}
	}
	if to.name == "" {
		return false
	}
	if last.verb == "grease" {
		for i := len(t.out) - 1; i >= 0; i-- {
			if t.out[i].Kind == Amount {
				t.add(Amount, t.out[i].Value, to.name, at, end)
				break
			}
		}
	}
	t.act(last.verb, to, min(at, max(to.from, 0)), end, true)
	return true
}

// greases takes what is greased where strokes of the gun are told: the parts that fittings
// stand on, or what the sentence is about.
func (t *taker) greases(it *item) {
	sentence := t.words[it.from].sentence
	start := it.from
	for start > 0 && t.words[start-1].sentence == sentence && it.from-start < 30 {
		start--
	}
	found := false
	for i := start; i < it.from; i++ {
		w := t.words[i]
		if w.lower != "on" && w.lower != "of" || i == start || i+2 >= len(t.words) {
			continue
		}
		if before := t.words[i-1].stem; before != "nipple" && before != "zerk" && before != "fitting" && before != "one" && before != "two" && before != "pin" {
			continue
		}
		next := i + 1
		if articles.has(t.words[next].lower) {
			next++
		}
		if p, n := partAt(t.words, next); n > 0 {
			found = true
			if before := t.words[i-1].stem; before == "pin" {
				p = part{name: p.name + " pin", head: "pin", class: greasePart, many: true}
			}
			t.act("grease", p, i-1, next+n, true)
		}
	}
	for _, d := range t.deeds {
		if d.verb == "grease" && d.sentence == sentence {
			t.reach(d, it.from, it.to)
			found = true
		}
	}
	if found {
		return
	}
	for _, m := range t.mentions {
		if m.from >= start && m.to <= it.from && (m.class == greasePart || m.class == wheelPart) && m.head != "nipple" && m.head != "zerk" && m.head != "grease fitting" && !m.place {
			found = true
			t.act("grease", m.part, m.from, it.to, true)
			break
		}
	}
	if !found && t.section.class == fastener { // augers: two idler bolts; then the grease, six nipples
		for i := len(t.sections) - 1; i >= 0; i-- {
			if s := t.sections[i]; s.class != fastener && s.class != cavityPart {
				t.act("grease", s.part, it.from, it.to, true)
				return
			}
		}
	}
	if !found && t.section.name != "" && t.section.class != cavityPart {
		t.act("grease", t.section, it.from, it.to, true)
	}
}

func (t *taker) didIn(verb string, sentence int) bool {
	for _, d := range t.deeds {
		if d.verb == verb && d.sentence == sentence {
			return true
		}
	}
	return false
}
