package draft

import (
	"strings"

	"benchleaf/compiler/internal/quantity"
)

// unnamedBolt gives a thread that is told of no bolt the bolt of what is spoken of: motor plate, 4
// off M16.
func (t *taker) unnamedBolt(it *item) {
	sentence := t.words[it.from].sentence
	of := t.section
	if n := len(t.mentions); n > 0 {
		if m := t.mentions[n-1]; t.words[m.from].sentence == sentence && !m.place && m.class != placePart && it.from-m.to < 8 {
			of = m.part
		}
	}
	if strings.HasPrefix(it.text, "BSP") || strings.HasPrefix(it.text, "NPT") {
		return // that of a pipe, which is no bolt
	}
	if of.class == fastener || of.class == plugPart || of.class == cavityPart || of.class == machinePart && !fitted.has(of.head) || of.class == placePart || of.name == "" || features.has(of.head) || t.last.class == plugPart || t.last.head == "thread" || !t.live(it.from, it.to) {
		return
	}
	if t.fastener.name != "" && (t.words[t.fastener.from].sentence == sentence || t.spoken()) {
		return
	}
	from := it.from
	if t.words[of.from].sentence == sentence && of.from < it.from {
		from = of.from
	}
	t.fastener = part{name: of.name + " bolt", head: "bolt", class: fastener, many: true, from: it.from, to: it.to}
	t.last = t.fastener
	if !t.spoken() {
		t.mentions = append(t.mentions, mention{t.fastener, from, it.to, false})
	}
}

// subject is what a figure belongs to.
func (t *taker) subject() string {
	if t.last.class == fastener || t.last.class == plugPart {
		return t.fastener.name
	}
	if t.topic.name != "" {
		return t.topic.name
	}
	return t.last.name
}

// qualify says of a bare bolt or plug which one it is, by what is spoken of.
func (t *taker) qualify(p part) part {
	if p.class == fastener && !p.bare && length(byForm, t.words, p.from) == p.to-p.from {
		if of, ok := t.formHolds(p); ok { // restraint gear: 3 cap screws
			p.name = of.name + " " + p.name
		}
		return p
	}
	if !p.bare {
		return p
	}
	if p.head == "clamp" {
		for i := len(t.out) - 1; i >= 0; i-- {
			if one := t.out[i]; one.Kind == Tool && strings.HasSuffix(one.Value, " clamp") {
				p.name, p.bare = one.Value, false
				return p
			}
		}
	}
	if s := t.section; s.class == p.class && s.head == p.head && s.name != p.name && p.class != fastener && p.class != plugPart {
		p.name, p.bare = s.name, false // drive wheel: swap the wheel
		return p
	}
	switch p.class {
	case cavityPart:
		if strings.HasSuffix(t.cavity, " "+p.head) {
			p.name, p.bare = t.cavity, false
		}
		return p
	case fastener, springPart:
		if p.head == "nut" && p.to+2 < len(t.words) && (t.words[p.to+1].lower == "nylon" || t.words[p.to+2].lower == "nylon") {
			p.name, p.bare = "lock nut", false
			return p
		}
		if p.head == "screw" && t.near(cues("bleed|bleeding"), p.from, p.to, 8, 2) {
			p.name, p.bare = "bleed screw", false
			return p
		}
		if p.head == "nut" && strings.HasSuffix(t.fastener.head, "bolt") && t.words[p.from].sentence-t.words[t.fastener.from].sentence < 3 {
			p.name, p.bare = t.fastener.name, false
			return p
		}
		if of, ok := t.ofWhat(p.to); ok {
			return p.of(t.qualify(of))
		}
		if of, ok := t.heldBy(p.from); ok {
			return p.of(of)
		}
		if t.spoken() {
			for _, m := range t.mentions { // guards off, each on two knobs
				if t.words[m.from].sentence == t.words[p.from].sentence && t.startsSentence(m.from) && m.class == coverPart && !m.place {
					return p.of(m.part)
				}
			}
		}
		if !t.spoken() {
			for _, m := range t.mentions { // rail brackets 8 no., 2 x M10 screws
				if t.words[m.from].sentence == t.words[p.from].sentence && t.startsSentence(m.from) && !m.place && m.class != fastener && m.class != plugPart && m.class != sealPart && m.class != placePart && m.class != machinePart {
					return p.of(m.part)
				}
			}
		}
		for i := len(t.mentions) - 1; i >= 0 && t.mentions[i].from >= t.begun; i-- {
			if m := t.mentions[i]; m.head == p.head && !m.bare && m.class == p.class {
				p.name, p.bare = m.name, false
				return p
			}
		}
		switch {
		case t.section.name != "" && t.section.class == p.class && t.section.head == p.head:
			p.name, p.bare = t.section.name, false
		case t.section.name != "" && t.section.class != fastener && t.section.class != machinePart && t.section.class != energyPart:
			return p.of(t.section)
		case t.topic.name != "" && (t.spoken() || t.words[t.topic.from].line == t.words[p.from].line) && t.words[p.from].sentence-t.words[t.topic.from].sentence < 5:
			return p.of(t.topic)
		}
	case plugPart:
		if name, ok := t.onlyOne("plug"); ok && !p.many && strings.HasPrefix(t.wordBehind(p.to), "in") {
			for _, m := range t.mentions {
				if m.name == name && m.class == linePart {
					p.name, p.class, p.bare = name, linePart, false
					return p // battery plug out … plug in
				}
			}
		}
		return t.whichPlug(p)
	case linePart:
		if p.head == "wire" || p.head == "cap" || p.head == "lead" || p.head == "clamp" {
			for i := len(t.mentions) - 1; i >= 0; i-- {
				if m := t.mentions[i]; m.head != p.head && m.class == linePart && strings.HasSuffix(m.name, " "+p.head) {
					p.name, p.bare = m.name, false
					return p
				}
			}
		}
	case coverPart:
		for i := len(t.mentions) - 1; i >= 0; i-- {
			if m := t.mentions[i]; m.class == coverPart && (m.head == p.head || strings.HasSuffix(m.head, " "+p.head)) && !m.bare {
				p.name, p.bare = m.name, false
				return p
			}
		}
		if of, ok := t.ofWhat(p.to); ok && t.words[p.to].lower == "of" {
			return p.of(of)
		}
		if t.section.class == movingPart && (p.head == "guard" || p.head == "cover" || p.head == "shroud") {
			return p.of(part{name: t.section.head})
		}
	case greasePart, filterPart, sealPart:
		if n := len(t.mentions); p.head == "pin" && n > 0 && t.mentions[n-1].class == supportPart {
			return p.of(part{name: t.mentions[n-1].head})
		}
		if p.class == sealPart && wordBefore(t.words, p.from) == "same" {
			for i := len(t.mentions) - 1; i >= 0; i-- {
				if m := t.mentions[i]; m.class == sealPart && strings.HasSuffix(m.name, " "+p.head) {
					p.name, p.bare = m.name, false
					return p
				}
			}
		}
		if of, ok := t.ofWhat(p.to); ok && p.class == filterPart {
			if before, line := strings.CutSuffix(of.name, " line"); line {
				return p.of(part{name: before}) // the filter on the return line
			}
		}
		if p.class == filterPart && p.head == "filter" {
			switch about := t.section.name + " " + t.cavity; {
			case strings.Contains(t.section.name, "filter"):
				p.name, p.bare = t.section.name, false
				return p
			case strings.Contains(about, "fuel"):
				return p.of(part{name: "fuel"})
			case strings.HasPrefix(t.section.name, "engine"):
				return p.of(part{name: "oil"})
			}
		}
		if of, ok := t.ofWhat(p.to); ok && t.words[p.to].lower == "of" && of.class != greasePart {
			return p.of(of)
		} else if before, line := strings.CutSuffix(of.name, " line"); ok && line && p.class == filterPart {
			return p.of(part{name: before}) // the filter on the return line
		}
	case movingPart:
		if only, ok := t.onlyOne(p.head); ok {
			p.name, p.bare = only, false
			return p
		}
		if p.head == "belt" && t.near(veeCues, p.from, p.to, 6, 6) {
			p.name, p.bare = "V-belt", false
		}
		if p.head == "shaft" && (t.pto || wordIn(t.words, "pto")) {
			p.name, p.bare, p.class = "PTO shaft", false, linePart
		}
	case valvePart:
		for i := max(p.from-8, 0); i < p.from; i++ {
			if t.words[i].lower == "fuel" && t.words[i].line == t.words[p.from].line {
				p.name, p.bare = "fuel "+p.head, false
			}
		}
	}
	return p
}

// onlyOne is the name of the one thing with a noun that notes have named so far; not where there
// are two.
func (t *taker) onlyOne(head string) (string, bool) {
	name := ""
	for _, m := range t.mentions {
		if m.bare || m.name == head || !strings.HasSuffix(m.name, " "+head) && !strings.HasSuffix(m.name, "-"+head) {
			continue
		}
		if name != "" && name != m.name {
			return "", false
		}
		name = m.name
	}
	return name, name != ""
}

// byForm are fasteners called by their form alone, which tells as little which they are as "bolt".
var byForm = cues("phillips screw|pozi screw|slotted screw|countersunk screw|cap screw|cap head|allen bolt|allen screw|hex bolt|hex screw|torx screw|torx bolt|socket screw|coach bolt|coach screw|machine screw|flange bolt|pan head screw|self tapper")

// formHolds is what a fastener called by its form holds: what is named right before, or is spoken of.
func (t *taker) formHolds(p part) (part, bool) {
	if of, ok := t.ofWhat(p.to); ok && of.class != placePart && of.class != machinePart {
		return of, true
	}
	if of, ok := t.heldBy(p.from); ok && of.class != machinePart {
		return of, true
	}
	s := t.section
	return s, s.name != "" && s.class != fastener && s.class != machinePart && s.class != cavityPart && s.class != plugPart
}

// wordBefore gives the word before a word.
func wordBefore(words []word, at int) string {
	if at == 0 || words[at].stop != 0 {
		return ""
	}
	return words[at-1].lower
}

// wordBehind gives the word at a place in the same clause.
func (t *taker) wordBehind(at int) string {
	if endsHere(t.words, at) {
		return ""
	}
	return t.words[at].lower
}

// of gives a bolt the name of what it holds.
func (p part) of(what part) part {
	p.name, p.bare = what.name+" "+p.head, false
	return p
}

// heldBy is what is named right before its fasteners: the motor plate, four bolts.
func (t *taker) heldBy(at int) (part, bool) {
	if len(t.mentions) == 0 {
		return part{}, false
	}
	m := t.mentions[len(t.mentions)-1]
	if first := t.sentenceStart(at); at-first <= 5 && havers.has(t.words[first].lower) && t.words[m.from].sentence == t.words[at].sentence-1 && m.class != fastener && !m.place && m.class != placePart && m.class != sealPart {
		return m.part, true // they've got two bolts each
	}
	if n := len(t.mentions); n > 1 && t.words[m.from].sentence == t.words[t.mentions[n-2].from].sentence {
		// the bushings in the sheaves, three screws: those of the bushings
		if first := t.mentions[n-2]; first.class != fastener && t.startsSentence(first.from) && !endsHere(t.words, first.to) && (t.words[first.to].lower == "in" || t.words[first.to].lower == "on") && m.from-first.to <= 2 && at-m.to <= 4 {
			return first.part, true
		}
	}
	if m.place || m.class == fastener || m.class == sealPart || m.class == placePart || at-m.to > 4 || t.words[at].sentence != t.words[m.from].sentence {
		return part{}, false
	}
	for i := m.to; i < at; i++ {
		w := t.words[i].lower
		if _, n := numberAt(t.words, i); n == i && !holding.has(w) {
			return part{}, false
		}
	}
	return m.part, true
}

// havers are words that begin a sentence about what was named last.
var havers = set("they they've it it's that's they're each")

// holding are words between a part and its fasteners.
var holding = set("has have with by takes a the off out its little small held got of comes closed shut on back")

// whichPlug says of a bare plug which one it is.
func (t *taker) whichPlug(p part) part {
	sentence := t.words[p.from].sentence
	if of, ok := t.ofWhat(p.to); ok && !(t.words[p.to].lower == "on") {
		return p.of(of)
	}
	if p.to+3 < len(t.words) && t.words[p.to].stop == 0 && t.words[p.to].lower == "out" {
		if of, ok := t.ofWhat(p.to + 1); ok {
			return p.of(of)
		}
	}
	spark := func(from, to int) bool {
		for i := max(from, 0); i < min(to, len(t.words)); i++ {
			if s := t.words[i].sentence; s != sentence && !(s == sentence+1 && t.endOf(p.from) == p.to && t.words[max(p.from-2, 0)].sentence != sentence) {
				continue // in its own sentence, or behind a heading: "So plug."
			}
			if w := t.words[i].stem; w == "gap" || w == "spark" || w == "electrode" {
				return true
			}
			if row, n := toolAt(t.words, i); n > 0 && row.name == "spark plug socket" {
				return true
			}
		}
		return false
	}
	if spark(p.from-3, p.to+14) {
		p.name, p.bare, p.class = "spark plug", false, plainPart
		return p
	}
	drain := func(i int) bool { return t.words[i].stem == "drain" && t.words[i].sentence == sentence }
	for i := max(p.from-10, 0); i < min(p.to+6, len(t.words)); i++ {
		if drain(i) {
			p.name, p.bare = "drain plug", false
			return p
		}
	}
	for i := len(t.mentions) - 1; i >= 0 && t.mentions[i].from >= t.begun; i-- {
		if m := t.mentions[i]; (m.class == plugPart || m.name == "spark plug") && !m.bare {
			p.name, p.bare, p.class = m.name, false, m.class
			return p
		}
	}
	if strings.HasPrefix(t.section.name, "spark plug") || strings.HasPrefix(t.last.name, "spark plug") {
		p.name, p.bare, p.class = "spark plug", false, plainPart
		return p
	}
	if t.section.class == cavityPart && !t.near(levelCues, p.from, p.to, 12, 12) && t.words[p.from].sentence-t.words[t.section.from].sentence <= 3 && t.filled(p.to) && !t.didSince("drain", t.begun) {
		p.name, p.bare = "drain plug", false
		return p
	}
	if t.near(levelCues, p.from, p.to, 25, 25) && t.section.class == cavityPart {
		p.name, p.bare = "level plug", false
	}
	return p
}

// filled reports whether an oil or how much of it is told close behind a word.
func (t *taker) filled(at int) bool {
	for _, it := range t.items {
		if it.from >= at && it.from-at < 14 && (it.kind == fluidItem && it.fluid.what == gradePart && it.fluid.kind != "grease" || it.kind == amountItem && it.amount.unit.kind == quantity.Volume) {
			return true
		}
	}
	return false
}

var levelCues = cues("level|bottom of the hole|out the hole|runs out|run out|weeps")

// bolt is the fastener that is spoken of.
func (t *taker) bolt() part {
	if t.fastener.name != "" {
		return t.fastener
	}
	for i := len(t.mentions) - 1; i >= 0 && t.mentions[i].from >= t.begun; i-- {
		if m := t.mentions[i]; m.class == fastener {
			return m.part
		}
	}
	return part{}
}

// veeCues are sizes of V-belts.
var veeCues = cues("spa|spb|spz|spc|xpa|xpz|xpb|wedge belt|v section|a section|b section")

// ofWhat reads what a part belongs to behind it: the screws ON THE COVER.
func (t *taker) ofWhat(at int) (part, bool) {
	if at+1 >= len(t.words) || t.words[at].stop != 0 || t.words[at].lower != "of" && t.words[at].lower != "on" && t.words[at].lower != "in" {
		return part{}, false
	}
	next := at + 1
	for next < len(t.words) && next < at+3 && articles.has(t.words[next].lower) {
		next++
	}
	if next >= len(t.words) {
		return part{}, false
	}
	p, n := partAt(t.words, next)
	return p, n > 0
}

// boltOf is the bolt whose nut is named: a torque holds for both.
func (t *taker) boltOf(p part) part {
	if p.head != "nut" && p.head != "lock nut" {
		return p
	}
	for i := len(t.mentions) - 1; i >= 0 && t.mentions[i].from >= t.begun && len(t.mentions)-i < 8; i-- {
		if m := t.mentions[i]; strings.HasSuffix(m.head, "bolt") && t.section.class != wheelPart && (t.words[p.from].sentence == t.words[m.from].sentence || !strings.HasPrefix(p.name, "wheel ")) {
			return m.part
		}
	}
	return p
}
