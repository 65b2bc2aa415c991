package draft

import (
	"slices"
	"strings"
)

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
	if called := strings.ToLower(t.machine()); strings.HasSuffix(called, row.name) || called != "" && strings.HasSuffix(called, strings.ToLower(t.said(it.from, it.to))) {
		return // the machine itself
	}
	if !endsHere(t.words, it.to) && (t.words[it.to].lower == "one" || t.words[it.to].lower == "ones") || t.words[it.from].sentence == 0 && row.kind == "other" && wordBefore(t.words, it.from) != "with" && t.namesMachine(it.from) {
		return // the baler, the cardboard one
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
	if said := t.words[it.to-1].lower; row.kind == "lock" && said == "tag" {
		t.add(Tool, "tag", t.subject(), it.to-1, it.to) // lock and tag
	}
	if row.name == "wheel chock" && !endsHere(t.words, it.to) && (t.words[it.to].lower == "away" || t.words[it.to].lower == "out" || t.words[it.to].lower == "off") {
		t.act("remove", part{name: "wheel chock", head: "chock", class: supportPart, many: t.words[it.to-1].stem != t.words[it.to-1].lower}, it.from, it.to+1, false)
	}
	if !endsHere(t.words, it.to) && length(cues("both ends|each end|on both sides|both sides|each side"), t.words, it.to) > 0 {
		t.add(Count, "2", row.name, it.from, it.to+2) // one for the head, one for the nut
	}
	if row.name == "stand" && t.raised != "" {
		t.actOn("support", t.raised, raisedOf(t.raised), max(it.from-1, 0), it.to, true)
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
		t.act("drain", cavityOf(t.cavity), it.from, it.to, true)
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

var gauging = cues("put|use|get|stick|slide|run|slip|try|across|over")

var using = cues("use|using|take|run|go over|give it|with")

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

// turned is what is tightened by a part of a turn: a filter, a spark plug.
func (t *taker) turned() part {
	for i := len(t.mentions) - 1; i >= 0 && t.mentions[i].from >= t.begun; i-- {
		if m := t.mentions[i]; m.class == filterPart && !sieves.has(lastWord(m.head)) || m.name == "spark plug" {
			return m.part
		}
	}
	if t.section.class == filterPart && !sieves.has(lastWord(t.section.head)) || t.section.name == "spark plug" {
		return t.section
	}
	return part{}
}

// sieves are filters that lie in something and are not screwed on.
var sieves = set("strainer screen mesh breather sock bag mat pad")

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

var toolMeant = cues("is what you need|does it|will do it|on the outside|fits it|fits them|you need two of them|so you need two|is what you want")

// namesMachine reports whether what notes are about is told right before a word: this is the ….
func (t *taker) namesMachine(at int) bool {
	for i := max(at-4, 0); i < at; i++ {
		if length(machineCues, t.words, i) > 0 {
			return true
		}
	}
	return false
}
