package draft

import (
	"slices"
	"strings"
)

// partThing takes a part, and what is said of it right behind it.
func (t *taker) partThing(number int, it *item) {
	p := it.part
	place := it.from > 0 && (t.placed(it.from) || t.harmed(it.from) || features.has(p.head) && t.onIt(it.to))
	if p.bare && it.from > 1 && apposed.has(p.head) && describing.has(t.words[it.from-1].lower) && t.words[it.from-1].stop == ',' {
		place = true // battery switch off, red knob behind the seat
	}
	if tool, ok := t.pinOf(p); ok {
		p.name, p.class, p.bare = tool, supportPart, false
		if t.standings[it.from] == holds {
			t.particle(it, p) // pins out: the safety pins of before
		}
		return
	}
	p = t.qualify(p)
	it.part = p
	if t.standings[it.from] != holds {
		return
	}
	switch p.class {
	case fastener, plugPart, sealPart:
		if p.class != sealPart {
			t.fastener = p
		}
	case supportPart:
		if p.head == "prop" || p.head == "strut" {
			if next := min(it.to, len(t.words)-1); t.raised != "" && t.words[next].lower != "away" && t.words[next].lower != "off" && !t.placedOn(it.from) {
				t.actOn("support", t.raised, raisedOf(t.raised), it.from, min(it.to+12, t.endOf(it.from)), true)
			}
		}
		t.topic = p
	case machinePart, placePart:
	default:
		if !place {
			t.topic = p
			if t.fastener.to == 0 || t.words[t.fastener.from].sentence != t.words[it.from].sentence && !strings.HasPrefix(t.fastener.name, p.name+" ") {
				t.fastener = part{}
			}
		}
	}
	if p.class == cavityPart && !place {
		t.cavity = p.name
	}
	if !place {
		t.last = p
	}
	t.mentions = append(t.mentions, mention{p, it.from, it.to, place})
	if (p.class == plugPart && p.name == "drain plug" || p.class == valvePart && strings.HasPrefix(p.name, "drain ") && !t.spoken() || p.name == "drain screw" || p.name == "drain bolt") && !place && t.section.class == cavityPart && t.cavity != "" && !t.didSince("drain", t.begun) && t.live(it.from, it.to) {
		t.act("drain", cavityOf(t.cavity), it.from, it.to, true)
	}
	t.levelShown(it, p)
	t.fittings(number, it, p)
	t.spinOn(it, p)
	t.renewal(it, p)
	t.particle(it, p)
	t.sides(it, p)
}

// apposed are what a switch or a valve has to take hold of, named behind it for where it is.
var apposed = set("knob handle lever button key")

// pinOf gives the tool that a bare pin is, where one was named before: a safety pin.
func (t *taker) pinOf(p part) (string, bool) {
	if !p.bare || p.head != "pin" {
		return "", false
	}
	for _, one := range t.out {
		if one.Kind == Tool && strings.HasSuffix(one.Value, " pin") {
			return one.Value, true
		}
	}
	return "", false
}

// harmed reports whether a part is what comes to harm: you'll pop the seal, it cuts the seal.
func (t *taker) harmed(at int) bool {
	if articles.has(t.words[at-1].lower) {
		at--
	}
	if at < 2 || t.words[at].stop != 0 {
		return false
	}
	verb, by := t.words[at-1], t.words[at-2].lower
	return verb.lower == "read" || harms.has(verb.lower) && verb.stop == 0 && (harming.has(by) || strings.HasSuffix(by, "'ll"))
}

var (
	harms   = set("cut cuts pop pops blow blows split splits strip strips ruin ruins snap snaps break breaks tear tears kill kills wreck wrecks burn burns melt melts bend bends score scores damage damages shear shears")
	harming = set("it that they will and or would can could")
)

// onIt reports whether what was named is only a feature of what is spoken of: a magnet on it.
func (t *taker) onIt(at int) bool {
	return at+1 < len(t.words) && t.words[at].stop == 0 && (t.words[at].lower == "on" || t.words[at].lower == "in") && pronouns.has(t.words[at+1].lower)
}

// placedOn reports whether something stands on what is named: not on the prop.
func (t *taker) placedOn(at int) bool {
	return at > 1 && t.words[at-1].lower == "the" && t.words[at-2].lower == "on"
}

// placed reports whether words before a name say that it is a place: behind the shroud.
func (t *taker) placed(at int) bool {
	for i := at - 1; i >= 0 && i >= at-3 && t.words[i+1].stop == 0; i-- {
		w := t.words[i].lower
		if w == "at" && i > 0 && t.words[i-1].stem == "look" {
			return false
		}
		if (w == "on" || w == "in") && i > 0 && i+1 < at && (t.words[i-1].lower == "it" && t.words[i-1].of || sitting.has(t.words[i-1].lower)) {
			return true // it's on the ram with one bolt
		}
		if places.has(w) || w == "to" && i == at-2 || (w == "on" || w == "of") && i+1 < at && t.words[i+1].lower == "each" {
			return true
		}
		if w == "of" && i > 0 && sidesOf.has(t.words[i-1].lower) {
			return true
		}
		if !articles.has(w) {
			return false
		}
	}
	return false
}

// sitting are words before a place that something has.
var sitting = set("it's that's they're sits lives mounted bolted fixed held hangs sat stuck down up over back")

// sidesOf are places on a part: the top of the tank.
var sidesOf = set("top bottom side front back rear middle end centre center inside outside edge")

// named takes the parts that something is said of: that are worked on, or have a figure.
func (t *taker) named() {
	worth, seen := map[string]bool{}, map[string]bool{}
	for _, d := range t.deeds {
		if !aloof.has(d.verb) {
			worth[d.part.name] = true
		}
	}
	for _, s := range t.sections {
		if s.class != plainPart || s.class == plainPart && t.spoken() {
			worth[s.name] = true
		}
	}
	for _, m := range t.mentions {
		if t.introduced(m) {
			worth[m.name] = true
		}
	}
	for _, one := range t.out {
		switch one.Kind {
		case Size, Torque:
			worth[one.About] = true
		}
	}
	for _, m := range t.mentions {
		switch m.class {
		case machinePart, placePart:
			continue
		case cavityPart:
			if !t.begins(m) {
				continue
			}
		case springPart, sealPart, filterPart, greasePart, energyPart:
		case fastener, plugPart, coverPart:
			if m.bare && !worth[m.name] {
				continue
			}
		default:
			if !worth[m.name] {
				continue
			}
		}
		if m.place || m.name == "" || features.has(m.head) || m.head == "grease fitting" || m.head == "nipple" || m.head == "zerk" || m.bare && m.head == "hinge" || seen[m.name] && !t.saidOf(m) && !t.begins(m) {
			continue
		}
		seen[m.name] = true
		t.add(Part, m.name, "", m.from, m.to)
	}
}

// begins reports whether the notes come to a part with a mention.
func (t *taker) begins(m mention) bool {
	return slices.ContainsFunc(t.sections, func(s section) bool { return s.name == m.name && s.from == m.from })
}

// introduced reports whether a mention says that there is such a part: there's a tensioner.
func (t *taker) introduced(m mention) bool {
	for i := max(m.from-4, 0); i < m.from; i++ {
		if w := t.words[i]; (w.lower == "there" || w.lower == "one" && i < m.from-1) && t.words[i].sentence == t.words[m.from].sentence && t.live(i, m.from) {
			return true
		}
	}
	return false
}

// features are what a part has, and no parts of their own.
var features = set("thread taper end tooth magnet handle rib")

// saidOf reports whether something is said of a part in the sentence of a mention.
func (t *taker) saidOf(m mention) bool {
	sentence := t.words[m.from].sentence
	for _, d := range t.deeds {
		if d.sentence == sentence && d.part.name == m.name {
			return true
		}
	}
	for _, one := range t.out {
		if one.sentence == sentence && one.About == m.name && one.Kind != Part {
			return true
		}
	}
	return false
}

// aloof are verbs after which no table of the part is needed.
var aloof = set("start run stop record wait raise lower support chock isolate restore drain fill sign bleed")

// renewal takes "new washer", "washer … new one".
func (t *taker) renewal(it *item, p part) {
	if before := it.from - 1; before > 0 && describing.has(t.words[before].lower) && t.words[it.from].stop == 0 && t.words[before].stop == 0 && t.words[before-1].lower == "new" && t.everyTime(it.to) {
		t.act("replace", p, before-1, it.to, false) // a new stainless clip every time
		return
	}
	if _, figure := numberAt(t.words, min(it.to, len(t.words)-1)); figure > it.to && !endsHere(t.words, it.to) {
		return // a new belt 68 hertz
	}
	if it.from > 0 && t.words[it.from].stop == 0 && t.words[it.from-1].lower == "new" && (it.from < 2 || !oftenNew.has(t.words[it.from-2].lower) || t.words[it.from-2].lower == "a" && it.from > 2 && newBefore.has(t.words[it.from-3].lower)) {
		t.act("replace", p, it.from-1, it.to, false)
		t.further("replace", it.to)
	}
}

// everyTime reports whether it is told at a word that something is done each time.
func (t *taker) everyTime(at int) bool {
	return !endsHere(t.words, at) && (t.words[at].lower == "every" || t.words[at].lower == "each" || t.words[at].lower == "always")
}

// levelShown takes a glass or a stick between whose marks a level stands as a check of that level.
func (t *taker) levelShown(it *item, p part) {
	if p.head != "sight glass" && p.head != "dipstick" && p.head != "gauge glass" && p.head != "stick" || t.cavity == "" {
		return
	}
	for i := it.to; i < min(it.to+22, len(t.words)) && t.words[i].sentence-t.words[it.from].sentence <= 1; i++ {
		if length(markings, t.words, i) > 0 && t.live(it.from, it.to) {
			name := t.levelOf(t.cavity)
			t.actOn("check", name, cavityOf(t.cavity), it.from, it.to, false)
			return
		}
	}
}

var markings = cues("between the two lines|between the lines|between the two marks|between the marks|between min and max|between the min and max|between low and full|min max|min and max|up to the line|on the line|to the top mark|to the upper mark|halfway up the glass|half way up the glass|in the middle|middle of the glass|halfway up|between low and high")

// fittings takes what grease fittings are counted on: king pins, four nipples.
func (t *taker) fittings(number int, it *item, p part) {
	if p.head != "grease fitting" || number == 0 || t.items[number-1].kind != amountItem || t.items[number-1].to < it.from-1 {
		return
	}
	sentence := t.words[it.from].sentence
	if t.didIn("grease", sentence) {
		return
	}
	for i := len(t.mentions) - 2; i >= 0 && t.words[t.mentions[i].from].sentence == sentence; i-- {
		m := t.mentions[i]
		if m.place || m.head == "grease fitting" || m.class == fastener || m.class == machinePart || m.class == cavityPart {
			continue
		}
		t.act("grease", m.part, m.from, it.to, true)
		return
	}
	if of, ok := t.ofWhat(it.to); ok && of.class != machinePart {
		t.act("grease", t.qualify(of), it.from, min(it.to+3, len(t.words)), true)
	}
}

// spinOn takes a filter that is told to be one that spins on, as one that is renewed.
func (t *taker) spinOn(it *item, p part) {
	if p.class != filterPart || t.did("replace", p.name) {
		return
	}
	for i := it.to; i < min(it.to+5, len(t.words)) && t.words[i].sentence == t.words[it.from].sentence; i++ {
		if n := length(spunOn, t.words, i); n > 0 {
			t.act("replace", p, it.from, i+n, true)
			return
		}
	}
}

var spunOn = cues("spin on|spin on type|screw on one|twist on|cartridge type|throw away type|disposable")

// newBefore are words before "a new" part that is put in.
var newBefore = set("with fit put use and on get needs wants install takes want need plus")

var oftenNew = set("for from like a the")

// sides takes "a tensioner each side", "seals both sides".
func (t *taker) sides(it *item, p part) {
	if n := length(twoSides, t.words, it.to); n > 0 && t.words[it.to].stop == 0 {
		t.add(Count, "2", p.name, it.from, it.to+n)
	}
	for i := it.to + 1; i < min(it.to+8, len(t.words)) && t.words[i].stop != '.'; i++ {
		if n := length(sidesBehind, t.words, i); n > 0 && p.many {
			t.add(Count, "2", p.name, it.from, i+n)
			break
		}
	}
	if it.from > 0 && t.words[it.from].stop == 0 && (t.words[it.from-1].lower == "both") {
		t.add(Count, "2", p.name, it.from-1, it.to)
	}
}

var sidesBehind = cues("both of them|both of those|the pair of them|both sides|either side|in both sides")

var twoSides = cues("each side|both sides|either side|one each side|on each side|on both sides|each end|both ends|at each end|one at each end")
