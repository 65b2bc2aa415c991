package draft

import (
	"cmp"
	"fmt"
	"math/big"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"benchleaf/compiler/internal/quantity"
)

// Kinds of what is taken from notes.
const (
	Torque   = "torque"
	Size     = "size"
	Range    = "range"
	Fluid    = "fluid"
	Amount   = "amount"
	Count    = "count"
	Interval = "interval"
	Tool     = "tool"
	Part     = "part"
	Hazard   = "hazard"
	Action   = "action"
	Wait     = "wait"
	Ask      = "question"
)

// Taken is one thing that was taken from the notes.
type Taken struct {
	Kind       string
	Value      string // as benchleaf writes it
	About      string // what it belongs to
	Start, End int    // its words in the notes, in bytes
	Line       int    // counted from 1
	Question   string // of a question, as a technician asks it
	sentence   int
	noun       string // of a size, the noun it was told of
}

type itemKind int

const (
	amountItem itemKind = iota
	threadItem
	classItem
	fluidItem
	toolItem
	partItem
)

// item is a thing found among the words.
type item struct {
	kind     itemKind
	from, to int
	amount   amount
	text     string // of a thread or a class
	fluid    fluid
	tool     toolRow
	part     part
	used     bool
}

// scan finds the things in the words, none over another.
func scan(words []word) []item {
	var out []item
	for at := 0; at < len(words); {
		it := item{from: at}
		switch {
		case func() bool { f, ok := fluidAt(words, at); it.kind, it.fluid, it.to = fluidItem, f, f.to; return ok }():
		case func() bool {
			text, to := threadAt(words, at)
			it.kind, it.text, it.to = threadItem, text, to
			return to > at
		}():
		case func() bool {
			text, to := classAt(words, at, out)
			it.kind, it.text, it.to = classItem, text, to
			return to > at
		}():
		case func() bool { row, n := toolAt(words, at); it.kind, it.tool, it.to = toolItem, row, at+n; return n > 0 }():
		case func() bool { a, ok := amountAt(words, at); it.kind, it.amount, it.to = amountItem, a, a.to; return ok }():
		case func() bool { p, n := partAt(words, at); it.kind, it.part, it.to = partItem, p, at+n; return n > 0 }():
		default:
			at++
			continue
		}
		out = append(out, it)
		at = max(it.to, at+1)
	}
	return out
}

// taker takes from the words of notes what belongs to a job.
type taker struct {
	notes     string
	words     []word
	items     []item
	standings []standing
	out       []Taken
	deeds     []deed

	topic        part // what is spoken of: the last thing that is no fastener
	fastener     part // the last fastener
	last         part
	cavity       string
	fluidOf      fluid
	torque       string
	section      part // what this place of the notes is about: "Gearboxes.", "Belt's a wide one"
	begun        int  // word at which the section began
	mentions     []mention
	sections     []section
	raised       string // what was raised last
	primeName    string
	headName     string
	machineName  string
	machineKnown bool
	headKnown    bool
	pulled       string // what a force was told of
	pto          bool
	energyName   string
	driven       bool // by an engine or a battery
	drivenKnown  bool
	outer        part // the heading over several things: "Filters"
	voice        int  // 1 spoken, 2 in short, 0 not looked at
}

// section is a part that the notes come to, at a word.
type section struct {
	part
	at int
}

// mention is a place where a part is named.
type mention struct {
	part
	from, to int
	place    bool
}

// deed is something to do, as it becomes a step.
type deed struct {
	verb     string
	object   string
	part     part
	from, to int // words
	sentence int
	implied  bool // by a figure, not by a verb
}

func take(notes string) *taker {
	words := aboard(split(notes))
	t := &taker{notes: notes, words: words}
	if t.spoken() {
		numbersHeard(words)
		partsHeard(words)
		phrasesHeard(words)
	} else {
		lengthened(words)
	}
	t.items, t.standings = scan(words), stand(words)
	slips(words, t.items, t.standings)
	t.walk()
	t.due()
	t.named()
	t.hazards()
	t.questions()
	slices.SortStableFunc(t.out, func(a, b Taken) int { return a.Start - b.Start })
	return t
}

// add keeps what was taken from the words from to to.
func (t *taker) add(kind, value, about string, from, to int) {
	for i := from; i < to && i < len(t.words); i++ {
		if s := t.standings[i]; s == denied || s == slip || s == story && kind != Hazard {
			return
		}
	}
	t.put(kind, value, about, from, to)
}

func (t *taker) put(kind, value, about string, from, to int) {
	to = min(max(to, from+1), len(t.words))
	for i := len(t.out) - 1; i >= 0 && len(t.out)-i < 400; i-- {
		if one := t.out[i]; one.Kind == kind && one.Value == value && t.words[from].start < one.End && one.Start < t.words[to-1].end {
			return
		}
	}
	t.out = append(t.out, Taken{Kind: kind, Value: value, About: about, Start: t.words[from].start, End: t.words[to-1].end, Line: t.words[from].line, sentence: t.words[from].sentence, noun: t.last.head})
}

func (t *taker) ask(missing, about, question string, from, to int) {
	t.put(Ask, missing, about, from, to)
	t.out[len(t.out)-1].Question = question
}

// said gives the words from to to as they stand in the notes.
func (t *taker) said(from, to int) string {
	return t.notes[t.words[from].start:t.words[to-1].end]
}

// walk goes through the words in order: things, and deeds that begin at a word.
func (t *taker) walk() {
	next := 0
	for at := range t.words {
		t.sectionAt(at)
		for next < len(t.items) && t.items[next].from <= at {
			it := &t.items[next]
			t.thing(next, it)
			next++
		}
		t.toldByWords(at)
		t.deedAt(at)
	}
}

func (t *taker) live(from, to int) bool {
	for i := from; i < to; i++ {
		if t.standings[i] != holds {
			return false
		}
	}
	return true
}

func (t *taker) thing(number int, it *item) {
	switch it.kind {
	case partItem:
		t.partThing(number, it)
	case toolItem:
		t.toolThing(number, it)
	case fluidItem:
		t.fluidThing(it)
	case threadItem:
		if p, n := partAt(t.words, min(it.to, len(t.words)-1)); n > 0 && it.to < len(t.words) && t.words[it.to].stop == 0 && p.class == fastener {
			p = t.qualify(p)
			t.add(Size, it.text, p.name, it.from, it.to)
			if number > 0 && t.items[number-1].kind == amountItem && t.items[number-1].to == it.from && t.items[number-1].amount.low.whole && t.items[number-1].amount.low.int() > 1 {
				t.add(Count, t.items[number-1].amount.text(), p.name, t.items[number-1].from, it.to+n)
			}
			return
		}
		t.unnamedBolt(it)
		t.add(Size, it.text, t.subject(), it.from, it.to)
	case classItem:
		t.add(Size, it.text, t.subject(), it.from, it.to)
	case amountItem:
		if !it.used {
			t.amountThing(number, it)
		}
	}
}

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
	if of.class == fastener || of.class == plugPart || of.class == cavityPart || of.class == machinePart || of.class == placePart || of.name == "" || features.has(of.head) || t.last.class == plugPart || t.last.head == "thread" || !t.live(it.from, it.to) {
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

// partThing takes a part, and what is said of it right behind it.
func (t *taker) partThing(number int, it *item) {
	p := it.part
	place := it.from > 0 && (t.placed(it.from) || t.harmed(it.from) || features.has(p.head) && t.onIt(it.to))
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
				t.actOn("support", t.raised, part{name: t.raised, class: raisedPart}, it.from, min(it.to+12, t.endOf(it.from)), true)
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
		t.act("drain", part{name: t.cavity, head: t.cavity, class: cavityPart}, it.from, it.to, true)
	}
	t.fittings(number, it, p)
	t.spinOn(it, p)
	t.renewal(it, p)
	t.particle(it, p)
	t.sides(it, p)
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

// sentenceStart gives the first word of the sentence of a word.
func (t *taker) sentenceStart(at int) int {
	for at > 0 && t.words[at-1].sentence == t.words[at].sentence {
		at--
	}
	return at
}

// startsSentence reports whether a word begins a sentence.
func (t *taker) startsSentence(at int) bool { return t.sentenceStart(at) == at }

// afloat reports whether notes are about a boat.
func afloat(words []word) bool {
	return wordIn(words, "outboard", "boat", "transom", "propeller", "sterndrive", "inboard")
}

// aboard takes the words of notes about a boat for what they are there: a prop is a propeller.
func aboard(words []word) []word {
	if !afloat(words) {
		return words
	}
	for i := range words {
		if w := &words[i]; w.lower == "prop" && !(i+1 < len(words) && (words[i+1].lower == "up" || words[i+1].lower == "it")) {
			w.lower, w.stem = "propeller", "propeller"
		}
	}
	return words
}

// placedOn reports whether something stands on what is named: not on the prop.
func (t *taker) placedOn(at int) bool {
	return at > 1 && t.words[at-1].lower == "the" && t.words[at-2].lower == "on"
}

// endOf gives the word behind the sentence of a word.
func (t *taker) endOf(at int) int {
	end := at
	for end < len(t.words) && t.words[end].sentence == t.words[at].sentence {
		end++
	}
	return end
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

// qualify says of a bare bolt or plug which one it is, by what is spoken of.
func (t *taker) qualify(p part) part {
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
		case t.section.name != "" && t.section.class != fastener && t.section.class != machinePart:
			return p.of(t.section)
		case t.topic.name != "" && (t.spoken() || t.words[t.topic.from].line == t.words[p.from].line) && t.words[p.from].sentence-t.words[t.topic.from].sentence < 5:
			return p.of(t.topic)
		}
	case plugPart:
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

// wordBefore gives the word before a word.
func wordBefore(words []word, at int) string {
	if at == 0 || words[at].stop != 0 {
		return ""
	}
	return words[at-1].lower
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
		if first := t.mentions[n-2]; first.class != fastener && t.startsSentence(first.from) && first.to < len(t.words) && t.words[first.to].stop == 0 && (t.words[first.to].lower == "in" || t.words[first.to].lower == "on") && m.from-first.to <= 2 && at-m.to <= 4 {
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

// sectionAt takes what the notes come to at a word that begins a sentence: "Gearboxes.", "So
// the belt", "Oil."
func (t *taker) sectionAt(at int) {
	w := t.words[at]
	if at > 0 && t.words[at-1].sentence == w.sentence {
		return
	}
	i := at
	coming := announcing.has(w.lower)
	for i < len(t.words)-1 && i < at+7 && t.words[i].sentence == w.sentence && (fillers.has(t.words[i].lower) || coming && leading.has(t.words[i].lower)) {
		i++
	}
	if t.words[i].sentence != w.sentence || t.standings[i] == denied || strokesOf(t.words, i) {
		return
	}
	if t.standings[i] == slip { // now the blade, no, the wedge
		for next := i + 1; next < min(i+8, len(t.words)) && t.words[next].sentence == w.sentence; next++ {
			if _, n := partAt(t.words, next); n > 0 && t.standings[next] == holds {
				i = next
				break
			}
		}
		if t.standings[i] == slip {
			return
		}
	}
	newLine := at == 0 || t.words[at-1].line != w.line && !w.timed
	if t.words[i].lower == "oil" && t.words[i].of && t.section.class == cavityPart && !newLine {
		return // that of what is spoken of
	}
	if i+1 < len(t.words) && t.words[i+1].stop == ':' && t.outer.class == filterPart && t.outer.name != "" && (t.words[i].lower == "oil" || t.words[i].lower == "air" || t.words[i].lower == "fuel") {
		p := part{name: t.words[i].lower + " filter", head: "filter", class: filterPart, from: i, to: i + 1}
		t.section, t.begun = p, at
		t.sections = append(t.sections, section{p, at})
		t.mentions = append(t.mentions, mention{p, i, i + 1, false})
		t.spinOn(&item{from: i, to: i + 1}, p)
		return
	}
	if t.words[i].lower == "oil" || t.words[i].lower == "hydraulics" || t.words[i].lower == "coolant" {
		if n := i + 1; n >= len(t.words) || t.words[n].stop != 0 || t.words[i].of || newLine || t.announced(at, i) {
			oiled := t.oiled()
			if of, ok := t.ofWhat(n); ok && of.class == cavityPart {
				oiled = of.name
				if of.name == "tank" && wordIn(t.words, "hydraulic", "hydraulics", "ram", "valve") {
					oiled = "hydraulic tank"
				}
			}
			names := map[string]string{"oil": oiled, "hydraulics": "hydraulic tank", "coolant": "cooling system"}
			t.cavity = names[t.words[i].lower]
			t.section, t.begun = part{name: t.cavity, head: t.cavity, class: cavityPart}, at
			t.topic, t.fastener = t.section, part{}
			t.sections = append(t.sections, section{t.section, at})
		}
		return
	}
	if row, n := products.at(t.words, i); n > 0 && heldIn()[row.kind] != "" && row.what == namePart && (i+n >= len(t.words) || t.words[i+n].stop != 0 || newLine) {
		t.cavity = heldIn()[row.kind]
		t.section, t.begun = part{name: t.cavity, head: t.cavity, class: cavityPart}, at
		t.topic, t.fastener = t.section, part{}
		t.sections = append(t.sections, section{t.section, at})
		return
	}
	if n := length(played, t.words, i); n > 0 && (i+n >= len(t.words) || t.words[i+n].stop != 0) {
		name := strings.ToLower(t.said(i, i+n))
		t.actOn("measure", name, part{name: name, head: name}, i, min(i+n+2, len(t.words)), true)
	}
	p, n := partAt(t.words, i)
	if n == 0 {
		p, n = t.colonHead(i)
	}
	if n == 0 || p.class == placePart || p.class == machinePart && !newLine {
		return
	}
	end := i + n
	if of, ok := t.ofWhat(end); ok && t.words[end].lower == "of" && p.class == coverPart && p.bare {
		p = p.of(of)
	}
	headed := t.announced(at, i) && p.class != fastener && (p.class != plugPart || p.bare && t.whichPlug(p).name == "spark plug") && p.class != placePart
	if w.paused && !headed {
		return
	}
	about := headed || end >= len(t.words) || ordering.has(t.words[end].lower) && (end+1 >= len(t.words) || t.words[end+1].stop != 0) || t.words[end].stop != 0 || t.words[end-1].of || newLine || at > 0 && t.words[at-1].line != w.line || subjects.has(t.words[end].lower)
	if !about || t.placed(i) {
		return
	}
	p.from, p.to = i, end
	if p.bare && (p.class == fastener || p.class == springPart || p.class == coverPart || p.class == plugPart && !newLine && t.section.name != "" && t.words[end-1].of && t.whichPlug(p).name != "spark plug") {
		return
	}
	if p.class == plugPart && t.section.class == cavityPart && !newLine && !(p.bare && t.whichPlug(p).name == "spark plug") {
		return
	}
	if p.class == plugPart && p.bare && t.section.name != "" && t.qualify(p).name != "spark plug" {
		return // the plug of what is spoken of
	}
	p = t.qualify(p)
	if of, ok := t.ofWhat(end); ok && t.words[end].lower == "of" && p.bare {
		p = p.of(of)
	}
	t.section, t.begun = p, at
	t.sections = append(t.sections, section{p, at})
	if p.many {
		t.outer = p
	}
	if p.head == "engine" && p.bare {
		t.section.class = cavityPart
	}
	switch {
	case t.section.class == cavityPart:
		t.cavity = p.name
	case newLine && end < len(t.words) && t.words[end].stop == ':' && p.class == machinePart: // a pump has oil of its own
		t.cavity = p.name
	case newLine && end < len(t.words) && t.words[end].stop == ':' && (p.class == movingPart || p.class == wheelPart):
		t.cavity = "" // what is filled is told anew
	}
}

// announced reports whether words before a name announce what comes: now the chain that …, okay
// so next is the rollers, moving on to the brakes.
func (t *taker) announced(at, name int) bool {
	for i := at; i < name; i++ {
		switch t.words[i].lower {
		case "now", "next", "okay", "ok", "alright", "last", "first", "onto":
			return articles.has(t.words[name-1].lower) || t.words[name-1].lower == "is" || t.words[name-1].lower == "your" || t.words[name-1].lower == "do" || t.words[name-1].lower == "to"
		}
	}
	return false
}

// colonHead reads a heading that no table knows, by its colon: "Side broom: …".
func (t *taker) colonHead(at int) (part, int) {
	for to := at + 1; to < min(at+4, len(t.words)); to++ {
		w := t.words[to-1]
		if stopWords.has(w.lower) || actionWords()[w.lower] || !lettersOnly(w.lower) {
			break
		}
		if w := t.words[at]; t.words[to].stop == ':' && to == at+1 && t.outer.name != "" && (modifiers.has(w.lower) || w.lower == "oil") && !isHead(w.stem) {
			p := t.outer // under Filters: "oil: …", "air: …"
			return part{name: w.lower + " " + p.head, head: p.head, class: p.class, from: at, to: to}, 1
		}
		if t.words[to].stop == ':' {
			names := make([]string, 0, 3)
			for _, w := range t.words[at:to] {
				names = append(names, w.lower)
			}
			names[len(names)-1] = w.stem
			return part{name: strings.Join(names, " "), head: w.stem, class: plainPart, many: w.stem != w.lower, from: at, to: to}, to - at
		}
		if t.words[to].stop != 0 {
			break
		}
	}
	return part{}, 0
}

// heldIn is where a fluid is held, as far as its kind tells.
var heldIn = sync.OnceValue(func() map[string]string {
	return map[string]string{"engine-oil": "engine", "gear-oil": "gearbox", "hydraulic-oil": "hydraulic tank", "compressor-oil": "compressor", "coolant": "cooling system", "brake-fluid": "brake fluid reservoir"}
})

// oiled is what the oil of the notes is in: the engine, or the machine that has none.
func (t *taker) oiled() string {
	if head := t.machineHead(); head != "" && !wordIn(t.words, "engine", "outboard", "spark", "diesel", "petrol", "gasoline") {
		return head
	}
	return "engine"
}

var played = cues("end float|end play|backlash|runout|run out|free play|compression|valve clearance|valve clearances|tappets|toe in")

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

// announcing are words that announce what comes, and leading those between them and its name.
var (
	announcing = set("next now okay ok alright then so last first right moving onto on")
	leading    = set("we'll we we're i'll i i'm do doing going to let me let's show you look looking at on onto get go into move moving over come comes up do's the our this time for thing job")
)

var fillers = set("up thing moving onto onto job two three four then's these those our so now then right okay ok um er uh yeah yes oh and first off well also next the a an your is there's there that's it's but anyway last thing to begin with start")

// ordering are words behind what the notes come to: the auger gearbox next.
var ordering = set("next first now then last")

// subjects are words behind what a sentence is about.
var subjects = set("is are get gets goes has have takes take wants want need needs should must can")

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

// toldByWords takes what is told at a word by words alone: every year, same again.
func (t *taker) toldByWords(at int) {
	t.everyAt(at)
	t.sameAt(at)
	if t.standings[at] == holds {
		t.passiveAt(at)
		t.fineAt(at)
		t.renewedAt(at)
		t.toldAt(at)
		t.smearedAt(at)
		t.newOne(at)
		t.looked(at)
	}
}

// smearedAt takes what oil or grease is put on: oil on the O-ring, marine grease on the splines.
func (t *taker) smearedAt(at int) {
	verb := smeared()[t.words[at].stem]
	if verb == "" || t.words[at].of || t.near(cues("write|record|note|log"), at, at+1, 6, 0) {
		return
	}
	for i := at + 1; i+1 < len(t.words) && i < at+5 && t.words[i].stop == 0; i++ {
		if breaksAt(t.words, i) || t.words[i].lower == "is" {
			return
		}
		if t.words[i].lower != "on" {
			continue
		}
		next := i + 1
		for next < len(t.words)-1 && articles.has(t.words[next].lower) && !pronouns.has(t.words[next].lower) {
			next++
		}
		if p, n := partAt(t.words, next); n > 0 && p.class != placePart && p.class != machinePart && p.class != energyPart && t.words[next].stop == 0 {
			t.act(verb, t.qualify(p), at, next+n, false)
		}
		return
	}
}

var smeared = sync.OnceValue(func() map[string]string {
	return map[string]string{"oil": "lubricate", "lube": "lubricate", "vaseline": "lubricate", "grease": "grease"}
})

// gapAt takes the gap of a part as what is checked.
func (t *taker) gapAt(it *item) {
	if p := t.topic; p.name != "" && p.class == plainPart && t.near(cues("gap"), it.from, it.to, 3, 2) && p.name != "spark plug" && t.words[max(p.from, 0)].sentence == t.words[it.from].sentence {
		t.actOn("check", p.name+" gap", p, p.from, it.to, true)
	}
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

// renewal takes "new washer", "washer … new one".
func (t *taker) renewal(it *item, p part) {
	if it.from > 0 && t.words[it.from].stop == 0 && t.words[it.from-1].lower == "new" && (it.from < 2 || !oftenNew.has(t.words[it.from-2].lower) || t.words[it.from-2].lower == "a" && it.from > 2 && newBefore.has(t.words[it.from-3].lower)) {
		t.act("replace", p, it.from-1, it.to, false)
		t.further("replace", it.to)
	}
}

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

// particle takes what is said of a part by a word behind it: cover off, plug back in.
func (t *taker) particle(it *item, p part) {
	at, back := it.to, false
	for at < len(t.words) && at < it.to+4 && t.words[at].stop == 0 {
		w := t.words[at].lower
		if goings.has(w) || at > it.to && (w == "be" || w == "to") || at == it.to && wanting.has(w) {
			at++
			continue
		}
		if w == "back" {
			back = true
			at++
			continue
		}
		break
	}
	if verb := settle("on?", p.class); at >= len(t.words) && back && at == it.to+1 && verb != "" && p.class != signPart {
		t.act(verb, p, it.from, at, false) // the notes end with it: put the plug back
	}
	if at >= len(t.words) || t.words[at].stop != 0 && !(back && at == it.to+1) || back && at+1 < len(t.words) && t.words[at].lower == "and" && t.words[at+1].lower == "forth" {
		return
	}
	if p.class == signPart && t.words[it.to-1].of || strings.HasSuffix(p.head, "brake") || p.head == "handbrake" || p.head == "choke" {
		return // the light's on, brake on
	}
	w := t.words[at].lower
	if t.words[at].stop != 0 {
		w = ""
	}
	if t.words[it.to-1].of && at == it.to && (w == "on" || w == "in") && at+1 < len(t.words) && t.words[at+1].stop == 0 && (t.words[at+1].lower == "with" || t.words[at+1].lower == "by") {
		return // the cover's on with four bolts
	}
	if before := it.from - 1; !back && before > 0 && (t.words[before].lower == "with" || articles.has(t.words[before].lower) && t.words[before-1].lower == "with" && t.words[before].stop == 0) && (w == "shut" || w == "open" || w == "closed") {
		return // with the door shut
	}
	if p.head == "brush" && p.bare && !back && w == "on" {
		return // light grease, brush on
	}
	if strokes.has(p.head) && !back {
		return // with the ram in
	}
	deed := ""
	switch {
	case p.head == "emergency stop" && (w == "in" || w == "pressed" || w == "out"):
		if w != "out" {
			t.act("press", p, it.from, at+1, false)
		}
		return
	case w == "off" || w == "out" && !(at+1 < len(t.words) && t.words[at+1].stop == 0 && (t.words[at+1].lower == "to" || t.words[at+1].lower == "of")) || w == "away" && p.class == supportPart:
		deed = "off?"
	case w == "on" || w == "in" || w == "together" || back:
		deed = "on?"
	case (w == "shut" || w == "closed") && (p.class == coverPart || p.class == valvePart || p.class == fastener):
		deed = "close"
	case w == "open" && (p.class == coverPart || p.class == valvePart) && !t.words[it.to-1].of:
		deed = "open"
	case w == "down":
		deed = "lower"
	case w == "up" && p.class == coverPart:
		deed = "off?"
	}
	if deed == "" {
		return
	}
	if !back && (w == "on" || w == "in") && at+1 < len(t.words) && t.words[at+1].stop == 0 && !goesOn.has(t.words[at+1].lower) && p.class != linePart && p.class != energyPart && p.class != valvePart {
		return // "the screw on top"
	}
	if !back && (w == "on" || w == "in" || w == "out" || w == "off") && at+1 < len(t.words) && t.words[at+1].stop == 0 && (articles.has(t.words[at+1].lower) || numeric(t.words[at+1].lower)) && (p.class != linePart || p.head != "cap" && p.head != "lead" && p.head != "clip" && p.head != "clamp" && p.name != "spark plug wire" && p.name != "spark plug cap") {
		return // "the spring on it"
	}
	if !back && p.class == valvePart && p.bare && at+1 < len(t.words) && t.words[at+1].stop == 0 {
		if _, n := partAt(t.words, at+1); n > 0 {
			return // tap out the filter
		}
	}
	if deed == "off?" && t.words[at-1].lower == "is" && p.class == coverPart {
		return // the cowl is off
	}
	if deed == "lower" && p.class != raisedPart {
		return
	}
	if w == "" {
		at--
	}
	if verb := settle(deed, p.class); verb != "" {
		if verb == "refit" && t.newIn(max(it.from-1, 0), it.to) && p.class != fastener && p.class != plugPart && p.class != coverPart {
			verb = "replace" // put the new belt on
		}
		t.act(verb, p, it.from, at+1, false)
	}
}

// strokes are parts that go in and out where they are.
var strokes = set("ram piston quill cylinder plunger slide")

var goings = set("drop drops fall falls lift pull pulls pop pops unscrew unscrews slide slip unclip unclips just then straight right comes come goes go is are going stays gets walks slips slides lifts")

// settle gives the language's verb of a deed, by what it is done to.
func settle(deed string, class class) string {
	switch deed {
	case "pull?":
		switch class {
		case linePart:
			return "disconnect"
		case supportPart, sealPart:
			return "remove"
		}
		return ""
	case "off?":
		switch class {
		case linePart, springPart:
			return "disconnect"
		case energyPart:
			return "isolate"
		case signPart:
			return "check"
		case valvePart:
			return "close"
		case machinePart, cavityPart:
			return ""
		}
		return "remove"
	case "on?":
		switch class {
		case linePart, springPart:
			return "connect"
		case energyPart:
			return "restore"
		case valvePart:
			return "open"
		case machinePart, cavityPart:
			return ""
		}
		return "refit"
	case "switchoff?":
		switch class {
		case valvePart:
			return "close"
		case machinePart, movingPart:
			return "stop"
		}
		return "isolate"
	case "switchon?":
		switch class {
		case valvePart:
			return "open"
		case machinePart, movingPart:
			return "start"
		}
		return "restore"
	case "change?", "replace?":
		if class == cavityPart || class == machinePart {
			return ""
		}
		return "replace"
	case "loosen":
		if class == valvePart {
			return "open"
		}
	case "close?":
		if class == valvePart || class == coverPart {
			return "close"
		}
		return ""
	case "empty?":
		if class == cavityPart {
			return "drain"
		}
		return "empty"
	case "smear?":
		return ""
	case "set?":
		if class == plainPart || class == valvePart || class == signPart {
			return "set"
		}
		return ""
	case "drop?":
		if class == raisedPart {
			return "lower"
		}
		return ""
	case "relieve?":
		return "discharge"
	case "turnover":
		return "turn-over"
	case "record?":
		return ""
	case "lock?":
		if class == fastener {
			return "tighten"
		}
		return ""
	case "pumpout":
		return "drain"
	case "seton?":
		return "support"
	}
	return deed
}

// sides takes "a tensioner each side", "seals both sides".
func (t *taker) sides(it *item, p part) {
	if n := length(twoSides, t.words, min(it.to, len(t.words)-1)); it.to < len(t.words) && n > 0 && t.words[it.to].stop == 0 {
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

// act keeps a deed done to a part.
func (t *taker) act(verb string, p part, from, to int, implied bool) {
	if p.name == "" || !t.live(from, to) {
		return
	}
	name := p.name
	if p.many {
		name = plural(name)
	}
	switch verb {
	case "isolate", "restore", "prove":
		name = t.energyAt(from)
		p.class = energyPart
	case "connect", "disconnect":
		if strings.HasPrefix(name, "battery ") || strings.HasPrefix(name, "negative ") || strings.HasPrefix(name, "positive ") {
			name = "battery"
		}
	case "drain", "fill":
		if verb == "fill" && (p.head == "battery" || p.head == "cell") {
			break
		}
		if p.class == filterPart && verb == "drain" && p.head != "breather" && (!t.spoken() || p.head == "bowl" || p.head == "separator") {
			break
		}
		if p.class != cavityPart && p.name != "engine oil" && p.head != "bowl" && p.head != "water bowl" {
			name = t.vessel(from)
			if name == "" {
				return
			}
		}
		if verb == "drain" && name == "engine" {
			name = "engine oil"
		}
		if verb == "fill" && name == "engine oil" {
			name = "engine"
		}
		p = part{name: name, head: name, class: cavityPart}
	case "run", "start", "stop":
		if p.class != machinePart && p.class != movingPart || p.head == "machine" {
			name = t.prime()
			p = part{name: name, head: name, class: machinePart}
		}
	case "raise", "lower":
		if p.class != raisedPart && p.class != machinePart && p.head != "end" && p.class != wheelPart {
			head := t.machineHead()
			switch {
			case verb == "lower" && strings.HasPrefix(t.words[from].lower, "lower") && namesPart(t.words, from+1, to) && p.class != fastener && p.class != sealPart:
				name = p.name
			case t.raised != "":
				name = t.raised
			case verb == "raise" && !pronouns.has(t.words[min(from+1, len(t.words)-1)].lower) && (strings.HasPrefix(t.words[from].lower, "jack") || strings.HasPrefix(t.words[from].lower, "rais") || strings.HasPrefix(t.words[from].lower, "hoist")) && p.class != fastener && p.class != sealPart && p.class != linePart:
				head = name
				name = p.name
			case verb == "raise" && head != "" && !namesPart(t.words, from, to):
				name = head
			default:
				return
			}
			p = part{name: name, head: name, class: machinePart}
		}
		t.raised = name
	case "bleed":
		switch {
		case strings.Contains(p.name, "brake"):
			name = "brakes"
		case strings.Contains(p.name, "clutch"):
			name = "clutch"
		default:
			name = t.system()
		}
	case "tighten":
		if p.class == raisedPart || p.class == cavityPart || p.class == machinePart || p.class == placePart || p.class == signPart || p.class == coverPart || p.class == linePart && p.head != "clamp" && p.head != "battery clamp" && p.head != "battery terminal" || p.class == movingPart || p.class == springPart || p.class == sealPart || p.class == energyPart {
			return
		}
	}
	t.actOn(verb, name, p, from, to, implied)
	if verb == "remove" && p.class == plugPart && (strings.Contains(p.name, "drain") || strings.Contains(p.name, "sump")) {
		oil := t.cavity
		if oil == "" && !t.engined() {
			oil = t.vessel(from)
		} else if oil == "" || oil == "engine" {
			oil = "engine oil"
		}
		if oil == "" { // nothing tells what is drained: a gap
			t.deeds = append(t.deeds, deed{"drain", "", part{}, from, to, t.words[from].sentence, true})
			return
		}
		t.actOn("drain", oil, part{name: oil, head: oil, class: cavityPart}, from, to, true)
	}
}

// vessel is what is drained or filled where it is not named: the cavity that is spoken of, or the
// machine named shortly before.
func (t *taker) vessel(at int) string {
	if t.cavity != "" {
		return t.cavity
	}
	for i := len(t.mentions) - 1; i >= 0 && at-t.mentions[i].from < 40; i-- {
		if m := t.mentions[i]; (m.class == machinePart && m.head != "machine" && (ownName.has(m.head) || !t.engined()) || m.class == cavityPart) && !m.many {
			return m.name
		}
	}
	return ""
}

// prime is what is started and run: the engine of a machine that has one, or the machine.
func (t *taker) prime() string {
	if t.primeName == "" {
		head := t.machineHead()
		t.primeName = cmp.Or(head, "machine")
		if !ownName.has(head) && t.engined() {
			t.primeName = "engine"
		}
	}
	return t.primeName
}

// engined reports whether the notes speak of an engine.
func (t *taker) engined() bool {
	return wordIn(t.words, "engine", "spark", "petrol", "gasoline", "diesel", "carburettor", "carburetor", "outboard")
}

func wordIn(words []word, any ...string) bool {
	return slices.ContainsFunc(words, func(w word) bool { return slices.Contains(any, w.stem) })
}

// machineHead is the noun of the machine that the notes are about: that of "this is the …", or
// the first machine that is named.
func (t *taker) machineHead() string {
	if t.headKnown {
		return t.headName
	}
	t.headKnown = true
	if called := t.machine(); called != "" {
		words := strings.Fields(strings.ToLower(called))
		t.headName = words[len(words)-1]
		if t.headName == "screw" {
			t.headName = "compressor" // a rotary screw
		}
		return t.headName
	}
	for i := range t.words {
		if strokesOf(t.words, i) {
			continue // two pumps of grease
		}
		if p, n := partAt(t.words, i); n > 0 && p.class == machinePart && p.head != "machine" && p.head != "engine" && p.head != "motor" && p.head != "controller" && (t.words[i].sentence < 2 || !fitted.has(p.head)) {
			t.headName = lastWord(p.head)
			break
		}
	}
	return t.headName
}

// strokesOf reports whether a word is a stroke of a grease gun: two pumps of grease.
func strokesOf(words []word, at int) bool {
	if words[at].stem != "pump" || at == 0 || words[at].stop != 0 {
		return false
	}
	before := words[at-1].lower
	return (smalls()[before] > 0 || numeric(before) || before == "few") && (words[at].stem != words[at].lower || before == "one") && (at+1 >= len(words) || words[at+1].stop != 0 || words[at+1].lower == "of" || words[at+1].lower == "each")
}

// fitted are machines that others have as their parts.
var fitted = set("cooler dryer condenser feeder separator heater extractor filler sander blower fan washer press stacker burner vibrator jig drill hoist elevator ventilator")

// system is what is bled.
func (t *taker) system() string {
	switch about := t.section.name + " " + t.topic.name; {
	case strings.Contains(about, "fuel"):
		return "fuel system"
	case strings.Contains(about, "brake"):
		return "brakes"
	case strings.Contains(about, "cool") || strings.Contains(about, "radiator"):
		return "cooling system"
	}
	return "hydraulics"
}

func (t *taker) actOn(verb, object string, p part, from, to int, implied bool) {
	for i := len(t.deeds) - 1; i >= 0 && len(t.deeds)-i < 100; i-- {
		if one := t.deeds[i]; one.verb == verb && one.object == object && t.words[from].sentence-one.sentence <= 0 && (from-one.to < 60 || verb == "isolate" || verb == "restore") {
			t.reach(one, from, to)
			return
		}
	}
	t.add(Action, strings.TrimSpace(verb+" "+object), p.name, from, to)
	if !implied && (verb == "drain" || verb == "fill") { // what figures implied before is now told
		t.deeds = slices.DeleteFunc(t.deeds, func(d deed) bool {
			return d.implied && d.verb == verb && d.object == object && d.from >= t.begun
		})
	}
	t.deeds = append(t.deeds, deed{verb, object, p, from, to, t.words[from].sentence, implied})
}

// reach lets what was taken for a deed go on to words that say it again close by.
func (t *taker) reach(d deed, from, to int) {
	if from-d.to > 14 || to > len(t.words) || to <= d.from {
		return
	}
	for i := range t.out {
		if one := &t.out[i]; one.Kind == Action && one.Start == t.words[d.from].start && one.Value == strings.TrimSpace(d.verb+" "+d.object) {
			one.End = max(one.End, t.words[to-1].end)
		}
	}
}

func plural(name string) string {
	switch {
	case strings.HasSuffix(name, "tooth") || strings.HasSuffix(name, "foot"):
		return strings.Replace(name, "oo", "ee", strings.Count(name, "oo"))
	case strings.HasSuffix(name, "knife"):
		return strings.TrimSuffix(name, "fe") + "ves"
	case strings.HasSuffix(name, "s") || strings.HasSuffix(name, "x") || strings.HasSuffix(name, "ch") || strings.HasSuffix(name, "sh"):
		return name + "es"
	case strings.HasSuffix(name, "y") && !strings.HasSuffix(name, "ay") && !strings.HasSuffix(name, "ey"):
		return name[:len(name)-1] + "ies"
	}
	return name + "s"
}

// toolThing takes a tool.
func (t *taker) toolThing(number int, it *item) {
	row := it.tool
	if it.from > 0 && places.has(t.words[it.from-1].lower) && row.kind != "container" {
		return
	}
	if row.name == "spring scale" && t.placed(it.from) {
		return // over by the scale
	}
	if slices.ContainsFunc(t.mentions, func(m mention) bool { return m.head == row.name || lastWord(m.head) == row.name }) {
		return // the knives of the machine are sharp
	}
	if row.name == "ear muffs" && afloat(t.words) && t.words[it.from].stem == "muff" {
		row = toolNames()["flushing muffs"]
	}
	if strings.HasSuffix(strings.ToLower(t.machine()), row.name) {
		return // the machine itself
	}
	if w := wordBefore(t.words, it.from); it.from > 1 && w == "your" && t.words[it.from-2].lower == "through" {
		return // straight through your glove
	}
	if row.name == "socket" && (t.last.name == "spark plug" || t.topic.name == "spark plug") && t.words[max(t.last.from, 0)].sentence == t.words[it.from].sentence {
		row = toolNames()["spark plug socket"]
	}
	if row.name == "puller" && t.last.class == springPart {
		row.name = "spring puller"
	}
	t.add(Tool, row.name, t.subject(), it.from, it.to)
	if it.to < len(t.words) && t.words[it.to].stop == 0 && length(cues("both ends|each end|on both sides|both sides|each side"), t.words, it.to) > 0 {
		t.add(Count, "2", row.name, it.from, it.to+2) // one for the head, one for the nut
	}
	if row.name == "stand" && t.raised != "" {
		t.actOn("support", t.raised, part{name: t.raised, class: raisedPart}, max(it.from-1, 0), it.to, true)
	}
	if row.kind == "lock" && t.live(it.from, it.to) && !t.near(cues("off|out"), it.from, it.to, 0, 1) && !t.near(cues("remove|take"), it.from, it.to, 3, 0) {
		for i := len(t.deeds) - 1; i >= 0 && t.words[it.from].sentence-t.deeds[i].sentence <= 2; i-- {
			if t.deeds[i].verb == "isolate" {
				name := "isolator"
				for _, m := range t.mentions {
					if m.class == energyPart && m.head != "key" {
						name = m.name
					}
				}
				t.actOn("lock out", name, part{name: name, head: name, class: energyPart}, it.from, it.to, true)
				break
			}
		}
	}
	if row.kind == "container" && t.live(it.from, it.to) && t.section.class == cavityPart && t.cavity != "" && t.near(cues("under|below|beneath"), it.from, it.to, 2, 3) && !t.didSince("drain", t.begun) {
		t.act("drain", part{name: t.cavity, head: t.cavity, class: cavityPart}, it.from, it.to, true)
	}
	if strings.HasSuffix(row.name, "filter wrench") && t.live(it.from, it.to) {
		if p := t.turned(); p.name != "" && !t.didSince("replace", t.begun) && !t.didSince("remove", t.begun) {
			t.act("replace", p, max(it.from-1, 0), it.to, true)
		}
	}
	if (row.kind == "brush" || row.kind == "air-gun" || row.name == "vacuum cleaner" || row.name == "pressure washer") && t.live(it.from, it.to) && t.near(using, it.from, it.to, 4, 0) && !t.didAny(t.words[it.from].sentence) && !t.listed(t.words[it.from].sentence) {
		if p, ok := t.meant(it.from); ok && p.class != machinePart && p.class != fastener {
			t.act("clean", p, max(it.from-2, 0), it.to, true)
		}
	}
	if (row.kind == "gauge" || row.kind == "measure") && row.name != "spring scale" && t.live(it.from, it.to) && t.near(gauging, it.from, it.to, 3, 1) && !t.didNear(it.from, 4) && !t.listed(t.words[it.from].sentence) {
		if p, ok := t.meant(it.from); ok && p.class != machinePart && p.class != fastener && p.class != cavityPart {
			t.act("measure", p, max(it.from-2, 0), it.to, true)
		}
	}
	if row.kind == "indicator" {
		t.indicated(it)
	}
}

// didNear reports whether a deed was told not further than some words before a word.
func (t *taker) didNear(at, within int) bool {
	return slices.ContainsFunc(t.deeds, func(d deed) bool { return d.to > at-within && d.from <= at })
}

var gauging = cues("put|use|get|stick|slide|run|slip|try|across|over")

var using = cues("use|using|take|run|go over|give it|with")

// didSince reports whether a deed was told behind a word.
func (t *taker) didSince(verb string, at int) bool {
	return slices.ContainsFunc(t.deeds, func(d deed) bool { return d.verb == verb && d.from >= at })
}

// indicated takes what a dial indicator is set on: its runout is measured.
func (t *taker) indicated(it *item) {
	for i := it.to; i < min(it.to+3, len(t.words)-1) && t.words[i].stop == 0; i++ {
		if t.words[i].lower != "on" {
			continue
		}
		for k := i + 1; k < min(i+3, len(t.words)); k++ {
			if p, n := partAt(t.words, k); n > 0 {
				if length(magnetic, t.words, k) > 0 {
					return
				}
				for j := max(it.from-10, 0); j < it.from; j++ {
					if length(played, t.words, j) == 1 && t.words[j].sentence == t.words[it.from].sentence {
						w := t.words[j].lower // backlash: the indicator on the gantry
						t.actOn("measure", w, part{name: w, head: w}, j, k+n, true)
						return
					}
				}
				t.actOn("measure", p.name+" runout", p, it.from, k+n, true)
				return
			}
		}
	}
}

var magnetic = cues("magnetic|mag")

// fluidThing takes a fluid or its grade.
func (t *taker) fluidThing(it *item) {
	f := it.fluid
	if !t.live(it.from, it.to) {
		return
	}
	if f.kind == "grease" || t.fluidOf.kind == "" || f.what == gradePart {
		t.fluidOf = f
	}
	if f.what == namePart {
		return
	}
	t.add(Fluid, f.grade, t.cavity, it.from, it.to)
	if f.what == gradePart && f.kind != "grease" && t.section.class == cavityPart && t.cavity != "" && !t.near(describes, it.from, it.to, 5, 0) && !t.near(heldLevel, it.from, it.to, 0, 25) && !t.did("fill", t.cavity) {
		to := it.to
		for _, one := range t.items {
			if one.kind == amountItem && one.amount.unit.kind == quantity.Volume && one.from >= it.to && one.from-it.to < 10 && t.words[one.from].sentence == t.words[it.from].sentence {
				to = one.to
			}
		}
		end := to
		for end < len(t.words) && t.words[end].sentence == t.words[it.from].sentence && end < it.from+18 {
			end++
		}
		if t.live(it.from, it.to) {
			t.actOn("fill", t.cavity, part{name: t.cavity, head: t.cavity, class: cavityPart}, it.from, end, true)
		}
	}
}

var (
	describes = cues("oil in it is|in it is|it is|used|okay too|that we use|was")
	heldLevel = cues("bottom of the hole|fill|top it up")
)

// did reports whether a deed was told before.
func (t *taker) did(verb, object string) bool {
	return slices.ContainsFunc(t.deeds, func(d deed) bool { return d.verb == verb && d.object == object })
}

// near reports whether a cue stands in the same sentence close before or behind some words.
func (t *taker) near(cue *phrases[bool], from, to, before, behind int) bool {
	sentence := t.words[from].sentence
	for i := max(from-before, 0); i < min(to+behind, len(t.words)); i++ {
		if (t.words[i].sentence == sentence || t.pausedBetween(i, from)) && (i < from || i >= to) && length(cue, t.words, i) > 0 {
			return true
		}
	}
	return false
}

// pausedBetween reports whether no more than one pause that is no mark of the notes parts two
// words that stand close.
func (t *taker) pausedBetween(a, b int) bool {
	if a > b {
		a, b = b, a
	}
	if b-a > 6 || t.words[b].sentence-t.words[a].sentence != 1 {
		return false
	}
	for i := a + 1; i <= b; i++ {
		if t.words[i].sentence != t.words[i-1].sentence {
			return t.words[i].paused
		}
	}
	return false
}

// amountThing takes a figure for what it is.
func (t *taker) amountThing(number int, it *item) {
	a := it.amount
	if t.thousandOrPoint(it) {
		return
	}
	if a.unit.symbol == "" && a.prefixed && number > 0 {
		if before := t.items[number-1]; before.kind == amountItem && it.from-before.to <= 4 && t.words[before.from].sentence == t.words[it.from].sentence && before.amount.unit.kind != quantity.None && before.amount.unit.kind != quantity.Torque && (a.low.value.Cmp(before.amount.low.value) >= 0 || t.near(scraps, it.from, it.to, 4, 0)) {
			a.unit = before.amount.unit // 1.5 bar, not more than two
		}
	}
	if a.shape == exact && it.to+3 < len(t.words) {
		for i := it.to; i < min(it.to+6, len(t.words)-1) && t.words[i].stop == 0; i++ {
			if length(noMore, t.words, i) > 0 { // ten minutes at no flow, no more than that
				a.shape = atMost
			}
		}
	}
	if a.shape == atMost && t.near(scraps, it.from, it.to, 4, 7) && length(underCues, t.words, it.from) > 0 {
		a.shape = atLeast // bin them under 8
	}
	if said := t.words[max(it.to-1, 0)].lower; a.unit.symbol == "mm" && (said == "mil" || said == "mill" || said == "mils") && t.ofFluid(it, a) {
		a.unit = unit{symbol: "mL", kind: quantity.Volume} // five hundred mil of oil
	}
	a = t.borrow(number, a)
	it.amount = a
	if t.countThing(number, it, a) || t.acrossFlats(it, a) {
		return
	}
	if a.unit.kind == quantity.Power || a.unit.kind == quantity.Voltage && t.near(supplied, it.from, it.to, 0, 3) {
		return // what the machine is rated
	}
	switch a.unit.kind {
	case quantity.Torque:
		t.torqueThing(number, it, a)
	case quantity.Time, quantity.Calendar, quantity.Distance:
		t.timeThing(it, a)
	case quantity.Volume:
		about := t.cavity
		if number > 0 && t.items[number-1].kind == toolItem && t.items[number-1].tool.kind == "container" && t.near(cues("hold|holds|takes"), it.from, it.to, 2, 0) && it.from-t.items[number-1].to < 4 {
			about = t.items[number-1].tool.name // a tub that holds three gallons
		}
		if number+1 < len(t.items) && t.items[number+1].kind == toolItem && t.items[number+1].from == it.to && t.items[number+1].tool.kind == "container" && t.words[it.to].stop == 0 {
			about = t.items[number+1].tool.name // a five litre pan
		}
		t.add(Amount, a.unbound().text(), about, it.from, it.to)
		if t.section.class == cavityPart && t.cavity != "" && about == t.cavity && t.live(it.from, it.to) && !t.didSince("fill", t.begun) && !t.near(drainCues, it.from, it.to, 9, 3) {
			t.actOn("fill", t.cavity, part{name: t.cavity, head: t.cavity, class: cavityPart}, it.from, it.to, true)
		}
	case quantity.Mass:
		if t.forceThing(it, a) {
			return
		}
		if a.unit.symbol == "lb" && (t.section.class == wheelPart || t.near(tyreCues, it.from, it.to, 8, 0)) {
			a.unit = unit{symbol: "psi", kind: quantity.Pressure} // fourteen pounds in the front tyres
			t.add(Range, a.text(), t.subject(), it.from, it.to)
			return
		}
		if it.to < len(t.words) && t.words[it.to].lower == "one" { // the half tonne one
			return
		}
		t.add(Amount, a.text(), t.subject(), it.from, it.to)
		for _, p := range []part{t.last, t.section} {
			if a.unit.symbol == "g" && p.class == greasePart && t.live(it.from, it.to) {
				t.act("grease", p, it.from, it.to, true)
				break
			}
		}
		if x, _ := a.low.value.Float64(); (a.unit.symbol == "kg" && x >= 12 || a.unit.symbol == "lb" && x >= 25) && t.near(liftCues, it.from, it.to, 10, 10) {
			t.warn("load", it.from, it.to)
		}
	case quantity.Count:
		if said := t.words[it.to-1]; said.lower == "stroke" && (a.low.int() == 2 || a.low.int() == 4) {
			return // a 2 stroke engine
		}
		t.add(Amount, a.unbound().text(), t.subject(), it.from, it.to)
		if sentence := t.words[it.from].sentence; a.unit.symbol == "drops" && t.near(cues("oil|lube"), it.from, it.to, 0, 5) && !t.didAny(sentence) {
			for i := len(t.mentions) - 1; i >= 0 && t.words[t.mentions[i].from].sentence == sentence; i-- {
				if m := t.mentions[i]; !m.place && m.class != machinePart && m.class != placePart && m.class != cavityPart {
					t.act("lubricate", m.part, m.from, it.to, true) // chain on the lift, two drops of oil
					break
				}
			}
		}
		if a.unit.symbol == "strokes" && !t.near(cues("file|stone|hone|tooth|teeth|sharpen|saw"), it.from, it.to, 8, 6) {
			t.add(Tool, "grease gun", t.topic.name, it.from, it.to)
			t.greases(it)
		}
	case quantity.Length:
		switch {
		case a.unit.symbol == "m" || a.unit.symbol == "ft":
		case a.unit.symbol == "µm" && t.near(fineness, it.from, it.to, 3, 4):
			t.add(Size, a.text(), t.subject(), it.from, it.to)
		case t.isSize(number, it, a):
			t.add(Size, a.text(), t.subject(), it.from, it.to)
			t.keyTool(it.to, it)
		default:
			t.add(Range, a.text(), t.subject(), it.from, it.to)
			t.gapAt(it)
			t.deflects(it)
			if t.near(cues("gap"), it.from, it.to, 3, 2) && (t.section.name == "spark plug" || t.last.name == "spark plug") {
				t.actOn("adjust", "spark plug gap", part{name: "spark plug", class: plainPart}, max(it.from-1, 0), it.to, true)
			}
		}
	case quantity.None:
		t.bareThing(number, it, a)
	case quantity.Angle:
		if number+1 < len(t.items) && t.items[number+1].from == it.to && t.items[number+1].kind == partItem && t.words[it.to].stop == 0 {
			return // quarter turn screws
		}
		if a.unit.symbol == "°" && t.near(tempCues, it.from, it.to, 14, 6) && !t.near(cues("angle|bevel|grind|turn|then|past"), it.from, it.to, 4, 4) {
			a.unit = unit{symbol: "°C", kind: quantity.Temperature}
			if wordIn(t.words, "fahrenheit") || a.low.int() > 200 {
				a.unit.symbol = "°F"
			}
		}
		t.add(Range, a.text(), t.subject(), it.from, it.to)
		if p := t.turned(); p.name != "" && a.unit.symbol == "turn" {
			t.actAcross("tighten", p, max(clauseStart(t.words, it.from), it.from-4), it.to)
		}
	case quantity.Temperature:
		t.add(Range, a.text(), t.subject(), it.from, it.to)
		if x, _ := a.low.value.Float64(); (a.unit.symbol == "°C" && x >= 55 || a.unit.symbol == "°F" && x >= 130) && t.near(cues("still|gloves|glove|burn|burns|careful|mind|hot|touch|skin"), it.from, it.to, 8, 5) {
			t.warn("hot", it.from, it.to)
		}
	case quantity.Pressure:
		t.add(Range, a.text(), t.subject(), it.from, it.to)
		if t.near(tyreCues, it.from, it.to, 8, 0) || t.section.class == wheelPart && !t.near(cues("run|spray|pump|start|test"), it.from, it.to, 14, 4) {
			word := "tyre"
			if wordIn(t.words, "tire") {
				word = "tire"
			}
			t.actOn("check", word+" pressure", part{name: word, head: word, class: wheelPart}, it.from, it.to, true)
		}
	default:
		t.add(Range, a.text(), t.subject(), it.from, it.to)
	}
}

var supplied = cues("supply|mains|three phase|single phase|motor|battery|system|ac|dc|machine|version|socket")

// deflects takes how far a belt or a chain gives as a check of its tension.
func (t *taker) deflects(it *item) {
	if !t.near(givings, it.from, it.to, 9, 5) {
		return
	}
	for _, p := range []part{t.topic, t.section, t.last} {
		for _, what := range []string{"belt", "chain"} {
			if strings.HasSuffix(p.head, what) && p.class == movingPart {
				t.actOn("check", what+" tension", p, t.sentenceStart(it.from), it.to, true)
				return
			}
		}
	}
}

var givings = cues("deflection|deflect|deflects|give|gives|slack|sag|move|moves|push|press|tension|go about|should go|play in it|up and down|midway|mid span|middle of the run|in the middle|longest run")

var (
	liftCues  = cues("hoist|lift|lifts|lifting|second man|second pair|two of you|mind your back|your back|sling|heavy|weighs|help|two people|crane|jack|man|on your own|drop it|drops")
	drainCues = cues("drain|drains|comes out|came out|hold|holds|tray|tub|bucket|pan|tank|drum|container|catch|used to|lost|burns|uses|down by")
)

var tempCues = cues("temperature|thermometer|thermostat|cold|cool|cools|warm|warms|heat|heats|hot|come down to|temp|chill|oven|water at|oil at")

// forceThing takes a mass that is told as a force: seven pounds ought to move it half an inch.
func (t *taker) forceThing(it *item, a amount) bool {
	belt := strings.HasSuffix(t.section.head, "belt") || strings.HasSuffix(t.section.head, "chain")
	if !t.near(forceCues, it.from, it.to, 5, 5) && !(belt && t.pulled == t.section.name) || a.unit.symbol != "lb" {
		return false
	}
	a.unit.symbol = "lbf"
	if a.shape == about {
		a.shape = exact
	}
	t.add(Range, a.text(), t.subject(), it.from, it.to)
	if belt {
		t.pulled = t.section.name
		t.actOn("check", t.section.head[strings.LastIndexAny(t.section.head, " -")+1:]+" tension", t.section, t.sentenceStart(it.from), it.to, true)
	}
	return true
}

// turned is what is tightened by a part of a turn: a filter, a spark plug.
func (t *taker) turned() part {
	for i := len(t.mentions) - 1; i >= 0 && t.mentions[i].from >= t.begun; i-- {
		if m := t.mentions[i]; m.class == filterPart || m.name == "spark plug" {
			return m.part
		}
	}
	if t.section.class == filterPart || t.section.name == "spark plug" {
		return t.section
	}
	return part{}
}

// ofFluid reports whether a figure in "mil" is told of a fluid.
func (t *taker) ofFluid(it *item, a amount) bool {
	if it.to+1 < len(t.words) && t.words[it.to].stop == 0 && t.words[it.to].lower == "of" {
		w := t.words[it.to+1].lower
		_, fluid := fluidAt(t.words, it.to+1)
		return fluid || w == "oil" || w == "coolant" || w == "water" || w == "fluid" || w == "diesel" || w == "fuel" || w == "petrol" || w == "the"
	}
	return a.low.value.Cmp(big.NewRat(100, 1)) >= 0 && t.near(cues("fill|holds|takes|top|put|pour"), it.from, it.to, 4, 0)
}

// unbound is an amount without its bound.
func (a amount) unbound() amount {
	a.shape = exact
	return a
}

// keyTool takes the tool that a size stands for: ten mil KEY, ten mil IS WHAT YOU NEED.
func (t *taker) keyTool(at int, it *item) {
	if at >= len(t.words) {
		return
	}
	if t.words[at].lower == "key" && t.words[at].stop == 0 {
		t.add(Tool, "hex key", t.subject(), it.from, at+1)
		return
	}
	for i := at; i < min(at+3, len(t.words)) && t.words[i].stop != '.'; i++ {
		if n := length(toolMeant, t.words, i); n > 0 {
			t.add(Tool, "wrench", t.subject(), it.from, i+n)
			return
		}
	}
}

var (
	forceCues = cues("ought to move|should move|to move it|moves it|to deflect|deflects it|pull with|push with|press with|scale|pounds of force|kilos of force|pounds of push|pounds of pull")
	fineness  = cues("filter|separator|element|strainer|screen|mesh")
	noMore    = cues("no more than that|not more than that|no longer than that|no longer|that's the limit")
	scraps    = cues("swap|swap both|binned|new ones|new one|no good|past it|finished|worn out|it's out|scrapped|done|changed|replaced|renewed|bin|scrap|replace|renew|change|throw|chuck|reject")
	underCues = cues("under|below|less than|anything under")
	tyreCues  = cues("tyre|tire")
	toolMeant = cues("is what you need|does it|will do it|on the outside|fits it|fits them|you need two of them|so you need two|is what you want")
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
		if n := length(backAgain, t.words, min(it.to, len(t.words)-1)); n > 0 && it.to < len(t.words) {
			t.act("refit", f, it.from, it.to+n, true)
		}
	}
}

// tightened is what a torque at an item holds for: the fastener named before it in its
// sentence, or right behind it, or else the one spoken of.
func (t *taker) tightened(it *item) part {
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

// reaching are words that tell how far a wrench goes.
var reaching = cues("goes to|only goes|goes up to|starts at|goes from|begins at|reads to|only reads|doesn't go|up to max|range")

var backAgain = cues("going back|going back in|goes back|when it goes back|on the way back")

// actAcross keeps a deed that a figure tells, with the words of its clause, also where some of
// them were put right.
func (t *taker) actAcross(verb string, p part, from, to int) {
	for i := from; i < to; i++ {
		if t.standings[i] == denied || t.standings[i] == story {
			from = i + 1
		}
	}
	kept := slices.Clone(t.standings[from:to])
	for i := from; i < to; i++ {
		t.standings[i] = holds
	}
	t.act(verb, p, from, to, true)
	copy(t.standings[from:to], kept)
}

// isSize reports whether a length is a size of a tool or a fastener.
func (t *taker) isSize(number int, it *item, a amount) bool {
	if a.ranged() || a.shape == atMost || a.shape == atLeast {
		return false
	}
	if t.words[it.from].stop == 0 && it.from > 0 && t.words[it.from-1].lower == "the" && a.low.fraction && a.unit.symbol == "in" {
		return true
	}
	if number > 0 && a.unit.symbol == "mm" && a.low.whole && a.low.int() >= 4 && a.low.int() <= 70 {
		before := t.items[number-1]
		if before.kind == partItem && (before.to == it.from || t.isA(before.to, it.from)) && t.words[it.from].stop == 0 && (before.part.class == fastener || before.part.class == plugPart) && !t.near(rangeCues, it.from, it.to, 4, 3) {
			return true // level plug 24 mm
		}
	}
	if a.unit.symbol == "mm" && a.low.whole && a.low.int() >= 6 && a.low.int() <= 70 && (t.last.class == plugPart || t.last.class == fastener) && t.words[t.last.from].sentence == t.words[it.from].sentence && t.words[it.from].stop == ',' && it.from-t.last.to < 5 && !t.near(rangeCues, it.from, it.to, 1, 3) {
		return true // a plug under the tank, twenty-four millimetre
	}
	if next := number + 1; next < len(t.items) && t.items[next].kind == partItem && t.items[next].from == it.to && t.words[it.to].stop == 0 && a.shape == exact && !t.near(rangeCues, it.from, it.to, 4, 3) {
		return true // a forty-two inch deck
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

// timeThing takes a time as an interval, as a limit or as a wait.
func (t *taker) timeThing(it *item, a amount) {
	if it.to < len(t.words) && t.words[it.to].lower == "ago" {
		return
	}
	switch {
	case t.againAfter(it) && t.fastener.name != "" && t.mentionedIn(t.words[it.from].sentence, t.fastener.name):
		t.add(Interval, a.unbound().text(), t.fastener.name, it.from, it.to) // and again after 50 miles
	case t.serviced(it) || t.againAfter(it) || a.unit.symbol == "h" && a.low.int() >= 25 && !t.near(waitCues, it.from, it.to, 5, 0) && !t.near(clockCues, it.from, it.to, 4, 2):
		t.add(Interval, a.unbound().text(), t.intervalOf(it.from), it.from, it.to)
	case a.unit.kind == quantity.Time && it.from > 0 && t.words[it.from-1].lower == "at" && a.unit.symbol == "h" && t.words[it.from].stop == 0 && a.low.int() >= 10:
		t.add(Interval, a.unbound().text(), t.intervalOf(it.from), it.from, it.to) // first one at 20 hours
	case t.near(everyCues, it.from, it.to, 3, 0) || t.near(firstCues, it.from, it.to, 4, 0) || length(firstCues, t.words, min(it.to, len(t.words)-1)) > 1:
		t.add(Interval, a.unbound().text(), t.intervalOf(it.from), it.from, it.to)
	case a.unit.kind != quantity.Time:
	case a.unit.symbol == "h" && a.low.int() >= 5 && t.intervalClose(it):
		t.add(Interval, a.text(), t.intervalOf(it.from), it.from, it.to)
	case a.unit.symbol == "h" && (t.inSentence(Interval, it) || t.near(whicheverCue, it.from, it.to, 0, 6)):
		t.add(Interval, a.text(), t.topic.name, it.from, it.to)
	case a.unit.symbol == "s" && !t.near(waitCues, it.from, it.to, 5, 0):
		if w := wordBefore(t.words, it.from); a.shape == exact && (w == "in" || w == "inside" || w == "within") {
			a.shape = atMost
		}
		if a.shape == about {
			a.shape = exact
		}
		t.add(Range, a.text(), t.subject(), it.from, it.to)
	case t.near(wholeTime, it.from, it.to, 5, 0) && !t.near(cues("from|to fill|to drain|to warm|to run"), it.from, it.to, 0, 2):
		to := it.to
		text := a.unbound().text()
		if low, ok := t.orTwo(it, a); ok {
			text, to = low, it.to+2
		}
		t.add(Wait, text, wholeJob, it.from, to)
	default:
		if a.shape == about {
			a.shape = exact
		}
		t.add(Wait, a.text(), t.topic.name, it.from, it.to)
		if t.draining(it.from) || !t.near(runCues, it.from, it.to, 6, 0) && t.near(waited, it.from, it.to, 6, 0) && t.near(standCues, it.from, it.to, 6, 5) {
			t.waits(it, a)
			return
		}
		if n := len(t.mentions); n > 0 && t.mentions[n-1].class == machinePart && t.mentions[n-1].to == it.from && t.words[it.from].stop == 0 && t.live(it.from, it.to) {
			t.actOn("run", t.mentions[n-1].name, t.mentions[n-1].part, t.mentions[n-1].from, it.to, true) // blower 4 min
			return
		}
		if t.near(runsOn, it.from, it.to, 7, 3) {
			return // it stands still by itself
		}
		if (t.near(runCues, it.from, it.to, 6, 0) || t.near(runBehind, it.from, it.to, 0, 4)) && !t.near(standCues, it.from, it.to, 5, 0) && (!t.near(coolCues, it.from, it.to, 5, 6) || t.near(letRun, it.from, it.to, 7, 0)) {
			t.actOn("run", t.prime(), part{name: t.prime(), class: machinePart}, t.runFrom(it), it.to, true)
		}
	}
}

// serviced reports whether a time is told as that of a service: 500 hour service, 2 yr / 4000 h.
func (t *taker) serviced(it *item) bool {
	if it.amount.unit.kind == quantity.Time && it.amount.unit.symbol != "h" || it.amount.unit.symbol == "h" && it.amount.low.int() < 5 {
		return false
	}
	for i := it.to; i < min(it.to+5, len(t.words)) && t.words[i].stop != '.' && t.words[i].sentence == t.words[it.from].sentence; i++ {
		if dueWords.has(t.words[i].lower) {
			return true
		}
		if !numeric(t.words[i].lower) && t.words[i].lower != "or" && t.words[i].lower != "and" && t.words[i].lower != "h" && t.words[i].stem != "hour" && t.words[i].stem != "year" && t.words[i].stem != "month" {
			return false
		}
	}
	return false
}

var dueWords = set("service interval inspection overhaul check maintenance job change services due")

// againAfter reports whether something is looked at again after a time: recheck after 24 h.
func (t *taker) againAfter(it *item) bool {
	if it.from < 2 || t.words[it.from].stop != 0 {
		return false
	}
	before := it.from - 1
	if t.words[before].lower == "first" || t.words[before].lower == "the" || t.words[before].lower == "about" {
		before--
	}
	if w := t.words[max(before, 0)].lower; length(again, t.words, max(before, 0)) > 0 {
		return true // retorque 10 h
	} else if w != "after" && w != "in" && w != "at" {
		return false
	}
	return t.near(again, it.from, it.to, 9, 3)
}

// clockCues are words beside hours that a machine has run.
var clockCues = cues("clock|meter|reading|now at|done|run|ran|on it|life|lasts|old")

var again = cues("recheck|check again|check them again|check it again|again after|again in|retorque|re-torque|re torque|retighten|look at it again|look at those again|look again|once more after|check them after|check it after|check those after|recheck them|nip them up again|tighten them again|tighten again")

// orTwo reads the longer time of a job: about an hour and a half, two if the tines are bad.
func (t *taker) orTwo(it *item, a amount) (string, bool) {
	if it.to+1 >= len(t.words) || t.words[it.to].stop != ',' || t.words[it.to+1].lower != "if" {
		return "", false
	}
	n, next := numberAt(t.words, it.to)
	if next != it.to+1 || n.value.Cmp(a.low.value) <= 0 {
		return "", false
	}
	return a.unbound().text() + " to " + n.text(false) + " " + a.unit.symbol, true
}

// runFrom gives the word at which a run begins that a time belongs to.
func (t *taker) runFrom(it *item) int {
	from := it.from
	for from > 0 && it.from-from < 6 && t.words[from-1].sentence == t.words[it.from].sentence && t.live(from-1, from) && length(runCues, t.words, from) == 0 {
		from--
	}
	return from
}

// intervalClose reports whether an interval was told just before a time that adds to it: every
// second service (8000 h).
func (t *taker) intervalClose(it *item) bool {
	return t.near(cues("every|each|svc|service|interval|due"), it.from, it.to, 4, 0)
}

var (
	runCues      = cues("run|run it|let it run|let it go|give it|warm|tick over|idle|bring it up|revs|speed|let her run|a minute at each")
	runsOn       = cues("runs on|run on for|keeps running|keeps spinning|keeps turning|spins on|coasts|coast down|runs down|spins down|winds down")
	letRun       = cues("run warm|run empty|run it warm|run it till it's warm")
	waited       = cues("wait|leave|let|give|count")
	coolCues     = cues("cool|cools|not hot|scald|after you've|before you touch|go cold")
	runBehind    = cues("on load|off load|at idle|at full|running|under load|flat out|on no load|no load|tick over")
	standCues    = cues("drip|stand|settle|cool|drain|sit|soak|leave it|cure|go off|not hot|cools|dry")
	whicheverCue = cues("whichever")
	wholeTime    = cues("takes about|whole thing|whole job|takes me|job takes|all in|takes an|takes a|it's about an hour|allow|start to finish")
)

// draining reports whether words before a place let a fluid go that was just let out: drain plug
// out, let it go.
func (t *taker) draining(at int) bool {
	let := false
	for i := max(at-6, t.sentenceStart(at)); i+1 < at; i++ {
		let = let || (t.words[i].lower == "let" || t.words[i].lower == "leave" || t.words[i].lower == "give") && (pronouns.has(t.words[i+1].lower) || t.words[i+1].lower == "her")
	}
	if !let || len(t.deeds) == 0 {
		return false
	}
	last := t.deeds[len(t.deeds)-1]
	if last.to > at || t.words[at].sentence-last.sentence > 1 {
		return false
	}
	for _, m := range t.mentions {
		if m.class == machinePart && m.from > last.from && m.from < at {
			return false
		}
	}
	return last.verb == "drain" || last.verb == "remove" && last.part.class == plugPart || last.verb == "open" && strings.Contains(last.part.name, "drain")
}

// waits keeps a time that is waited as a deed.
func (t *taker) waits(it *item, a amount) {
	if a.shape != exact || !t.live(it.from, it.to) || !readable(a.text()) {
		return
	}
	t.deeds = append(t.deeds, deed{"wait", a.text(), part{}, it.from, it.to, t.words[it.from].sentence, true})
}

func (t *taker) inSentence(kind string, it *item) bool {
	for _, one := range t.out {
		if one.Kind == kind && one.sentence == t.words[it.from].sentence {
			return true
		}
	}
	return false
}

// bareThing takes a figure without a unit: a count, a size, a torque, an interval.
func (t *taker) bareThing(number int, it *item, a amount) {
	var next *item
	if number+1 < len(t.items) {
		next = &t.items[number+1]
		if next.from-it.to > 2 || next.from > it.to && t.words[next.from].stop != 0 || next.from < len(t.words) && t.words[it.to].stop != 0 {
			next = nil
		}
	}
	size := func() string {
		if a.low.fraction {
			return a.low.text(true) + " in"
		}
		return a.low.text(false) + " mm"
	}
	alone := (it.from == 0 || t.words[it.from].stop == '.' || t.words[it.from-1].lower == "so" && t.words[it.from-1].stop == '.') && (it.to >= len(t.words) || t.words[it.to].stop != 0)
	before := ""
	if it.from > 0 {
		before = t.words[it.from-1].lower
	}
	f := t.fastener
	switch {
	case a.low.fraction && it.to < len(t.words) && t.words[it.to].stop == 0 && periodic()[t.words[it.to].lower] != "": // half-yearly
	case a.low.fraction && t.ofThings(it, a) && (articles.has(t.words[it.to].lower) || t.words[it.to].lower == "of" || t.words[it.to].lower == "way"): // half the width
	case before == "number": // number five
	case a.low.whole && a.low.int() > 1 && a.low.int() < 40 && number > 0 && t.items[number-1].kind == partItem && t.items[number-1].part.many && t.items[number-1].to == it.from && (t.words[it.from].stop == 0 || t.words[it.from].stop == ',' && a.low.int() <= 12) && (it.to >= len(t.words) || t.words[it.to].stop != 0) && !t.words[it.from-1].of && t.startsSentence(t.items[number-1].from):
		t.add(Count, a.text(), t.subject(), t.items[number-1].from, it.to) // anodes 3
	case length(taper, t.words, min(it.to, len(t.words)-1)) > 0 && a.low.whole:
		t.add(Size, "Morse taper "+a.text(), t.subject(), it.from, it.to+1)
	case len(before) == 1 && before != "a" && before != "i" && next != nil && next.kind == partItem && next.part.class == movingPart || before == "a" && next != nil && next.kind == partItem && next.part.class == movingPart && a.low.int() > 9: // an A 47 vee belt
	case a.low.whole && before == "a" && it.from > 1 && t.words[it.from-2].lower == "it" && t.words[it.from-2].of && a.low.int() >= 5 && a.low.int() <= 60 && (t.last.class == fastener || t.last.class == plugPart) && (it.to >= len(t.words) || t.words[it.to].stop != 0):
		t.add(Size, size(), t.last.name, it.from, it.to) // it's a nineteen
	case before == "same" || before == "o'clock" || it.to < len(t.words) && t.words[it.to].lower == "o'clock":
	case next != nil && next.kind == toolItem && (a.low.fraction || a.low.int() >= 3 && sizeTool(next.tool)):
		t.add(Size, size(), t.subject(), it.from, next.to)
	case next != nil && next.kind == toolItem && a.low.whole && a.low.int() > 1:
		t.add(Count, a.text(), next.tool.name, it.from, next.to)
	case a.low.whole && it.to < len(t.words) && (t.words[it.to].lower == "and" || t.words[it.to].lower == "or") && t.sizedBehind(it.to+1):
		t.add(Size, size(), t.subject(), it.from, it.to)
	case it.to < len(t.words) && t.words[it.to].lower == "key" && t.words[it.to].stop == 0 && a.low.int() > 1:
		t.add(Size, size(), t.subject(), it.from, it.to)
		t.keyTool(it.to, it)
	case a.low.whole && a.low.int() > 1 && a.low.int() < 40 && number+2 < len(t.items) && t.items[number+1].kind == amountItem && t.items[number+1].from == it.to && t.words[it.to].stop == 0 && t.items[number+1].amount.low.fraction && t.items[number+2].from == t.items[number+1].to && (t.items[number+2].kind == partItem || t.items[number+2].kind == toolItem):
		t.add(Count, a.text(), t.items[number+2].part.name, it.from, t.items[number+2].to) // two half inch bolts
	case t.byAnother(number, it, a):
	case a.low.fraction && !t.near(rangeCues, it.from, it.to, 5, 1) && (t.near(sizeCues, it.from, it.to, 2, 3) || alone || before == "the" || next != nil && next.kind == partItem && (next.part.class == fastener || next.part.class == plugPart) || number+1 < len(t.items) && t.items[number+1].kind == classItem):
		t.add(Size, size(), t.subject(), it.from, it.to)
		t.keyTool(it.to, it)
	case a.low.fraction && a.shape == exact && (before == "a" || before == "your") && (it.to >= len(t.words) || t.words[it.to].stop != 0 || t.words[it.to].lower == "and") && !t.near(rangeCues, it.from, it.to, 5, 1):
		t.add(Size, size(), t.subject(), it.from, it.to) // a nine sixteenths, a three quarter and …
	case a.low.fraction && t.keyed(it.to):
		t.add(Size, size(), t.subject(), it.from, it.to)
		t.keyTool(it.to, it)
	case (t.near(everyCues, it.from, it.to, 1, 0) || t.near(firstCues, it.from, it.to, 4, 0) && (before == "first" || before == "after" || before == "at")) && a.low.whole && !t.ofThings(it, a):
		t.add(Interval, a.unbound().text()+" h", t.intervalOf(it.from), it.from, it.to)
	case a.low.whole && a.low.int() > 1 && it.to < len(t.words) && t.words[it.to].lower == "times" && t.words[it.to].stop == 0:
		t.add(Count, a.text(), "", it.from, it.to+1)
	case a.low.whole && next != nil && next.kind == partItem && a.low.int() > 1 && before != "number" && before != "step" && !t.words[it.to-1].of && (next.part.many || next.from == it.to && before != "it" && before != "at"):
		t.add(Count, a.text(), t.qualify(next.part).name, it.from, next.to)
	case a.low.whole && a.low.int() > 3 && number > 0 && t.items[number-1].kind == partItem && t.items[number-1].to == it.from && (t.items[number-1].part.class == fastener || t.items[number-1].part.class == plugPart) && t.torque != "" && t.inSentence(Torque, it) && next == nil:
		t.torqueThing(number, it, t.likeTorque(a)) // and the drain plug forty
	case f.name != "" && a.low.whole && before == "is" && number > 0 && t.items[number-1].kind == threadItem && it.from-t.items[number-1].to < 3:
		t.add(Size, size(), f.name, it.from, it.to) // M ten is seventeen
	case f.name != "" && a.low.whole && a.low.int() >= 5 && a.low.int() <= 60 && a.shape == exact && t.isWidth(it):
		t.add(Size, size(), f.name, it.from, it.to)
	case alone && a.low.whole && t.sizeAgain(size(), it):
		t.add(Size, size(), t.bolt().name, it.from, it.to)
	case a.low.whole && a.low.int() > 1 && it.to < len(t.words) && t.words[it.to].stop == 0 && length(countCues, t.words, it.to) > 0 && before != "number":
		t.add(Count, a.text(), t.subject(), it.from, it.to+length(countCues, t.words, it.to))
	case a.low.int() == 1 && it.to < len(t.words) && t.words[it.to].stop == 0 && length(pairCues, t.words, it.to) > 0:
		t.add(Count, "2", t.subject(), it.from, it.to+length(pairCues, t.words, it.to))
	case a.low.whole && a.low.int() > 1 && a.low.int() < 60 && a.shape == exact && before == "there" && t.words[it.from-1].of && next == nil:
		t.add(Count, a.text(), t.subject(), it.from, it.to) // there's four
	case a.low.whole && a.low.int() > 1 && (length(countBefore, t.words, max(it.from-1, 0)) > 0 || it.from > 1 && length(countBefore, t.words, it.from-2) > 1) && (it.to >= len(t.words) || t.words[it.to].stop != 0):
		t.add(Count, a.text(), t.subject(), it.from, it.to)
	case a.low.fraction && number > 0 && t.items[number-1].kind == partItem && it.from-t.items[number-1].to <= 1 && t.words[it.from].stop == 0 && (it.to >= len(t.words) || t.words[it.to].stop != 0) && (t.last.class == fastener || t.last.class == plugPart || t.last.class == sealPart || t.last.class == greasePart):
		t.add(Size, size(), t.last.name, it.from, it.to) // cotter pin 1/8
	case f.name != "" && a.shape != atMost && a.low.whole && it.from > 0 && t.words[it.from].stop == ',' && (it.to >= len(t.words) || t.words[it.to].stop != 0) && t.inSentence(Size, it) && (a.ranged() || a.low.int() > 32) && t.words[f.from].sentence == t.words[it.from].sentence:
		a.shape = exact
		t.torqueOpen(a, f, it) // five eighths eleven, a hundred and ten
	case f.name != "" && a.shape != atMost && a.low.whole && (a.low.int() >= 4 && alone || t.near(torqueCues, it.from, it.to, 4, 1) && !t.near(rangeCues, it.from, it.to, 3, 0)) && !(it.to < len(t.words) && t.words[it.to].of):
		a.shape = exact
		t.torqueOpen(a, f, it)
	case a.low.int() >= 100 && t.speedBefore(it):
		t.add(Range, a.text(), t.subject(), it.from, it.to)
	case t.near(rangeCues, it.from, it.to, 6, 3) || a.shape == atMost || a.low.decimals != "" && t.near(rangeCues, it.from, it.to, 14, 4) || length(outTo, t.words, max(a.figures-3, 0)) > 0:
		if a.low.whole && a.low.int() == 1 && a.shape == exact && !numeric(t.words[a.figures].lower) || it.to < len(t.words) && t.words[it.to].of || before == "all" || t.ofThings(it, a) {
			return
		}
		t.gapAt(it)
		t.add(Range, a.text(), t.subject(), it.from, it.to)
	}
}

// ofThings reports whether a bare figure is told of what stands behind it, which is no unit:
// seventeen links, half the width.
func (t *taker) ofThings(it *item, a amount) bool {
	if it.to >= len(t.words) || t.words[it.to].stop != 0 {
		return false
	}
	w := t.words[it.to].lower
	if a.low.fraction && (articles.has(w) || w == "of" || w == "its" || w == "way") {
		return true
	}
	return lettersOnly(w) && t.words[it.to].stem != w && !stopWords.has(w) && !finite.has(w) && !adverbs.has(w) && !actionWords()[w] && !breaksAt(t.words, it.to)
}

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
	if next <= at || next >= len(t.words) || t.words[next].stop != 0 {
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

// speedBefore reports whether a speed was told just before.
func (t *taker) speedBefore(it *item) bool {
	for i := max(it.from-40, 0); i < it.from; i++ {
		if w := t.words[i].stem; (w == "rev" || w == "rpm" || w == "speed") && t.words[i].sentence >= t.words[it.from].sentence-1 {
			return true
		}
	}
	return false
}

var (
	pairCues    = cues("at each end|each end|each side|on each side|in each|either side|a side")
	taper       = cues("morse|morse taper")
	outTo       = cues("out to about|out to|wind to|down to about|up to about|to about")
	countBefore = cues("that's|that makes|so|count|makes|there")
)

func sizeTool(row toolRow) bool {
	switch row.kind {
	case "socket", "wrench", "hex-key", "hex-bit":
		return true
	}
	return false
}

var (
	sizeCues   = cues("spanner|wrench|socket|key|hex|head|across flats|a f|af|square|allen|thread|nut|bolt|wide|diameter|on the outside|open end|what you need|width|hexagon")
	rangeCues  = cues("full throttle|wide open|wot|gap|clearance|play|float|move|moves|give|slack|backlash|run out|runout|deflect|deflection|sag|hang|wants to be|has to be|should be|pressure|temperature|speed|revs|max|under|over|worn|wear|thick|thickness|down to|push|press|depth|travel")
	everyCues  = cues("every|each|once a|once every|per|any")
	firstCues  = cues("first|from new|new engine|and then every")
	waitCues   = cues("wait|leave|let|hold|stand|settle|give|run|count")
	countCues  = cues("per|all round|tot|total|all told|sets|apiece|per set|of 'em|of them|of those|of 'em|of these|each|a side|per side|in all|in total|to a|to each|on each|at the back|at the front|on the front|on the back|each corner|broken|bank|gone|missing|altogether")
	torqueCues = cues("talk|torque|tighten|torqued|tightened|crosswise|get|gets|nip|do them|going back|foot|foot pounds|take|takes")
)

// sentences gives the text of each sentence, with its line.
func (t *taker) sentence(number int) (text string, line int) {
	first, last := -1, -1
	for i := range t.words {
		if t.words[i].sentence == number {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	if first < 0 {
		return "", 0
	}
	end := t.words[last].end
	for end < len(t.notes) {
		r, size := utf8.DecodeRuneInString(t.notes[end:])
		if !strings.ContainsRune(".!?)", r) {
			break
		}
		end += size
	}
	return strings.Join(strings.Fields(t.notes[t.words[first].start:end]), " "), t.words[first].line
}
