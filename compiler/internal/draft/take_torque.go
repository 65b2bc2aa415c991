package draft

import (
	"fmt"
	"strings"

	"benchleaf/compiler/internal/quantity"
)

func (t *taker) torqueThing(number int, it *item, a amount) {
	a.shape = exact
	if said := t.words[max(it.to-1, 0)].stem; said == "newton" && t.near(givings, it.from, it.to, 9, 4) && !t.near(torqueCues, it.from, it.to, 3, 1) {
		a.unit = unit{symbol: "N", kind: quantity.Force}
		t.add(Range, a.text(), t.subject(), it.from, it.to) // push with fifty newtons
		return
	}
	for k := max(number-1, 0); k < min(number+2, len(t.items)); k++ {
		if one := t.items[k]; one.kind == toolItem && one.tool.kind == "torque-wrench" && a.ranged() && (one.from-it.to < 3 && one.from >= it.to || it.from-one.to < 3 && it.from >= one.to) {
			t.add(Range, a.text(), one.tool.name, it.from, it.to) // the torque wrench, the twenty to a hundred newton metre one
			return
		}
	}
	if t.near(reaching, it.from, it.to, 4, 2) && t.near(cues("wrench|torque wrench"), it.from, it.to, 8, 0) {
		return
	}
	f := t.tightened(it)
	if t.ownerless(it, a, f) {
		return
	}
	t.torque = a.text()
	t.add(Torque, a.text(), f.name, it.from, it.to)
	if checked(t.words, it.from) {
		t.act("check", part{name: f.name + " torque", head: "torque"}, it.from-1, it.to, false)
		return
	}
	if f.name != "" && t.live(it.from, it.to) {
		to := it.to
		if to < len(t.words) && t.words[to].stop == ',' && t.words[to].lower == "crosswise" {
			to++
		}
		from := max(clauseStart(t.words, it.from), it.from-7)
		for from > 0 && t.standings[from-1] == slip && t.words[from-1].sentence == t.words[from].sentence {
			from = clauseStart(t.words, from-1) // what was put right just before
		}
		t.actAcross("tighten", f, from, to)
		if n := length(backAgain, t.words, it.to); n > 0 {
			t.act("refit", f, it.from, it.to+n, true)
		}
	}
}

// checked reports whether a torque at a word is only checked: chk 110 ft-lb.
func checked(words []word, at int) bool {
	return at > 0 && words[at].stop == 0 && (words[at-1].lower == "check" || words[at-1].lower == "recheck" || words[at-1].lower == "verify")
}

// tightened is what a torque at an item holds for: the fastener named before it in its
// sentence, or right behind it, or else the one spoken of.
func (t *taker) tightened(it *item) part {
	if p, ok := t.tightenedByName(it); ok {
		return p
	}
	sentence, w := t.words[it.from].sentence, ""
	for i := it.from - 1; i >= 0 && t.words[i].sentence == sentence; i-- {
		if w = t.words[i].lower; w != "they" && (w != "'em" && w != "them" && w != "those") {
			continue
		}
		for k := len(t.mentions) - 1; k >= 0 && t.mentions[k].from >= t.begun; k-- {
			if m := t.mentions[k]; m.class == fastener && m.many && m.to <= i {
				return t.boltOf(m.part)
			}
		}
		for k := len(t.mentions) - 1; k >= 0 && t.mentions[k].from >= t.begun && w == "they"; k-- {
			if m := t.mentions[k]; m.many && m.to <= i && !m.place && m.class == movingPart {
				return m.part // blades: they go back at …
			}
		}
		break
	}
	for i := len(t.mentions) - 1; i >= 0 && t.words[t.mentions[i].from].sentence == sentence; i-- {
		if m := t.mentions[i]; m.class == fastener || m.class == plugPart || m.name == "spark plug" {
			return t.boltOf(m.part)
		}
	}
	if p, ok := t.screwedIn(it.from); ok {
		return p
	}
	if p, ok := t.boltsOfHeading(it.from); ok {
		return p
	}
	for i := it.to; i < min(it.to+3, len(t.words)) && t.words[i].sentence == sentence && t.words[i].stop == 0 && t.words[i].lower != "and"; i++ {
		if p, n := partAt(t.words, i); n > 0 && (p.class == fastener || p.class == plugPart) {
			return t.qualify(p)
		}
	}
	if t.fastener.name != "" {
		return t.boltOf(t.fastener)
	}
	if t.section.name != "" && (t.section.class == fastener || t.section.class == plugPart || t.section.name == "spark plug") {
		return t.section
	}
	for i := len(t.mentions) - 1; i >= 0 && t.mentions[i].from >= t.begun; i-- {
		if m := t.mentions[i]; m.class == fastener || m.class == plugPart || m.name == "spark plug" || m.head == "clamp" {
			return m.part
		}
	}
	if features.has(t.topic.head) {
		return t.section
	}
	return t.topic
}

// boltsOfHeading are the bolts of a cover that a sentence begins with, where the last bolt was named
// for something else: guard back on, twenty-four newton metres.
func (t *taker) boltsOfHeading(at int) (part, bool) {
	for _, m := range t.mentions {
		if m.class != coverPart || m.place || t.words[m.from].sentence != t.words[at].sentence || m.from >= at {
			continue
		}
		for i := len(t.mentions) - 1; i >= 0; i-- {
			if f := t.mentions[i]; f.class == fastener && strings.HasPrefix(f.name, m.name+" ") {
				return f.part, true
			}
		}
		if f := t.fastener; f.name == "" || t.words[f.from].sentence != t.words[at].sentence && len(t.about(Torque, f.name)) > 0 {
			return part{name: m.name + " bolt", head: "bolt", class: fastener, many: true, from: m.from, to: m.to}, true
		}
		break
	}
	return part{}, false
}

// ownerless reports whether a torque would be a second, different one of a part that its sentence
// does not name. It is taken for none, and asked for.
func (t *taker) ownerless(it *item, a amount, f part) bool {
	sentence := t.words[it.from].sentence
	if f.name == "" || !t.live(it.from, it.to) || t.mentionedIn(sentence, f.name) {
		return false
	}
	for _, one := range t.about(Torque, f.name) {
		if one.Value != a.text() && one.sentence != sentence {
			t.ask(askOwner, a.text(), fmt.Sprintf("You said %s: which part is that for? The %s has %s already.", a.text(), f.name, one.Value), it.from, it.to)
			return true
		}
	}
	return false
}

// screwedIn is what was screwed out or in before a word of its sentence: a strainer, a sensor.
func (t *taker) screwedIn(at int) (part, bool) {
	for i := len(t.deeds) - 1; i >= 0 && t.deeds[i].sentence == t.words[at].sentence; i-- {
		d := t.deeds[i]
		if (d.verb == "remove" || d.verb == "refit") && d.to <= at && d.part.class != coverPart && d.part.class != fastener && d.part.class != machinePart && (strings.Contains(t.words[d.from].lower, "screw") || d.part.class == filterPart) {
			return d.part, true
		}
	}
	return part{}, false
}

// reaching are words that tell how far a wrench goes.
var reaching = cues("goes to|only goes|goes up to|starts at|goes from|begins at|reads to|only reads|doesn't go|up to max|range")

var backAgain = cues("going back|going back in|goes back|when it goes back|on the way back")

// likeTorque gives a figure the unit of the torque told last.
func (t *taker) likeTorque(a amount) amount {
	for i := len(t.items) - 1; i >= 0; i-- {
		if it := t.items[i]; it.kind == amountItem && it.to <= a.from && it.amount.unit.kind == quantity.Torque {
			a.unit = it.amount.unit
			break
		}
	}
	return a
}

// torqueOpen takes a torque that was told without its unit.
func (t *taker) torqueOpen(a amount, f part, it *item) {
	if t.ownerless(it, a, f) {
		return
	}
	t.add(Torque, a.text(), f.name, it.from, it.to)
	t.act("tighten", f, it.from, it.to, true)
}

var torqueCues = cues("are at|is at|goes to|go to|set at|talk|torque|tighten|torqued|tightened|crosswise|get|gets|nip|do them|going back|foot|foot pounds|take|takes")

// torqueAlone reports whether a bare figure too great for a size stands behind a fastener with
// nothing between them: wheel nuts, hundred and ten.
func (t *taker) torqueAlone(it *item, f part) bool {
	return f.to == it.from && t.words[it.from].stop != '.' && (t.startsSentence(f.from) || f.from > 0 && t.startsSentence(f.from-1))
}

// tightenedByName gives what a torque holds for by its own clause: what is tightened there by name (tighten terminals
// 2 Nm), or the bolt whose thread stands before it again (refit M6 9 Nm).
func (t *taker) tightenedByName(it *item) (part, bool) {
	for k := len(t.items) - 1; k >= 0; k-- {
		one := t.items[k]
		if one.to != it.from || t.words[it.from].stop != 0 || !t.live(one.from, one.to) {
			continue
		}
		switch {
		case one.kind == partItem && one.from > 0 && t.words[one.from].stop == 0 && tightens.has(t.words[one.from-1].lower) && one.part.class != coverPart && one.part.class != machinePart && one.part.class != cavityPart:
			p := t.qualify(one.part)
			p.class = fastener
			return p, true
		case one.kind == threadItem:
			for i := len(t.out) - 1; i >= 0; i-- {
				if told := t.out[i]; told.Kind == Size && told.Value == one.text && told.sentence < t.words[it.from].sentence && told.About != "" {
					for j := len(t.mentions) - 1; j >= 0; j-- {
						if m := t.mentions[j]; m.name == told.About && m.class == fastener {
							return m.part, true
						}
					}
				}
			}
		}
	}
	return part{}, false
}

var tightens = set("tighten torque nip check recheck retighten retorque")
