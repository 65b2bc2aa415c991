package draft

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"benchleaf/compiler/internal/quantity"
)

// deedAt takes what is done by the verb at a word.
func (t *taker) deedAt(at int) {
	w := t.words[at]
	if w.lower == "empty" && w.stop == 0 && t.endsName(at) && t.live(at, at+1) && !endsHere(t.words, at+1) && !articles.has(t.words[at+1].lower) {
		if m := t.mentions[len(t.mentions)-1]; !m.place && m.class != machinePart && m.class != placePart {
			t.act("empty", m.part, m.from, at+1, false) // drum empty, door open
			return
		}
	}
	if w.of || t.standings[at] != holds || t.stateAt(at) {
		return
	}
	if at > 0 && w.stop == 0 && (t.words[at-1].lower == "the" || t.words[at-1].lower == "your") {
		return // the vacuum pump out the back
	}
	if at > 0 && w.stop == 0 && t.spoken() && (numeric(t.words[at-1].lower) || smalls()[t.words[at-1].lower] > 1) && !t.words[at-1].times && modifiers.has(w.lower) && !endsHere(t.words, at+1) && isHead(t.words[at+1].stem) {
		return // two wash arms
	}
	if at > 0 && w.stop == 0 && !t.spoken() && !t.endsName(at) && !endsHere(t.words, at+1) && modifiers.has(w.lower) && !beforeVerb.has(t.words[at-1].lower) {
		if _, n := partAt(t.words, at); n > 1 {
			return // safety valve pull ring
		}
	}
	for _, row := range deedsBy()[w.lower] {
		if row.particles != "" && bothWays()[w.lower] && at > 0 && w.stop == 0 && (notBeforeVerb.has(t.words[at-1].lower) || modifiers.has(t.words[at-1].stem) || isHead(t.words[at-1].stem) || small.has(t.words[at-1].lower)) {
			continue
		}
		if (w.lower == "oil" || w.lower == "fuel" || w.lower == "grease") && !endsHere(t.words, at+1) && oiledNouns.has(t.words[at+1].stem) {
			continue // oil level plug
		}
		if curt := !t.spoken() && (w.stop == ':' || w.stop == ','); row.particles == "" && (!curt && nounHere(t.words, at) || at > 0 && w.stop == 0 && notBeforeVerb.has(t.words[at-1].lower)) {
			continue
		}
		if t.deedBy(at, row) {
			return
		}
	}
}

// deedBy takes one row of the table at a word, and reports whether it held.
func (t *taker) deedBy(at int, row deedRow) bool {
	end := at + 1
	if row.particles != "" {
		particle := t.particleBehind(at, row.particles)
		if particle < 0 {
			return false
		}
		end = particle + 1
		if row.deed == "off?" && (t.words[at].lower == "out" || t.words[at].lower == "off") && (particle != at+1 || at > 0 && t.words[at].stop == 0 && t.words[at-1].lower != "and" && t.words[at-1].lower != "then") {
			return false // lift it out with the springs
		}
		if row.deed == "off?" && !endsHere(t.words, end) && t.words[end].lower == "of" && t.words[at].stem == "get" {
			return false // get four edges out of it
		}
		if t.words[at].stem == "get" && particle == at+1 && !endsHere(t.words, end) && articles.has(t.words[end].lower) && t.words[particle].lower == "off" {
			return false // get off the seat
		}
		if row.deed == "on?" && t.words[particle].lower != "back" && !endsHere(t.words, end) && !goesOn.has(t.words[end].lower) && t.words[particle-1].lower != "back" {
			return false // put the lever in float
		}
		if row.deed == "off?" && particle == at+1 && !endsHere(t.words, end) && (t.words[end].lower == "over" || t.words[end].lower == "past" || t.words[end].lower == "through") {
			return false // it slips off over the pulley
		}
		if row.deed == "switchon?" && !endsHere(t.words, end) && articles.has(t.words[end].lower) {
			return false // turn the screw on the end
		}
		if (row.deed == "off?") && end+1 < len(t.words) && t.words[end].stop == 0 && t.words[end].lower == "to" {
			return false
		}
	}
	if next := at + 1; row.particles == "" && !endsHere(t.words, next) && operated.has(t.words[next].stem) && (t.words[at].lower == "stop" || t.words[at].lower == "start" || t.words[at].lower == "reset" || t.words[at].lower == "test") {
		return false // the stop button
	}
	if w := t.words[at]; row.particles == "" && nounVerbs.has(w.lower) && at > 0 && w.stop == 0 && modifiers.has(t.words[at-1].stem) && !endsHere(t.words, at+1) && isHead(t.words[at+1].stem) {
		return false // side brush bolts
	}
	if w := t.words[at]; w.lower == "back" && at+1 < len(t.words) && !t.backs(at+1) {
		return false // back the same way as it came off
	}
	if row.deed == "close" && t.words[at].lower == "shut" && t.particleBehind(at, "down") >= 0 {
		return false
	}
	if next := min(at+2, len(t.words)-1); row.deed == "lock?" && pronouns.has(t.words[min(at+1, len(t.words)-1)].lower) && (t.words[next].lower == "out" || t.words[next].lower == "off") {
		return false
	}
	if w := t.words[at]; (row.particles == "" || bothWays()[w.stem]) && w.stem != w.lower && !kept.has(w.lower) && (at == 0 || w.stop != 0 || !leadsS.has(t.words[at-1].lower) && !isHead(t.words[at-1].stem)) {
		return false // brown marks on the terminals
	}
	if row.deed == "stop" && at > 0 && t.words[at-1].lower == "or" {
		return false
	}
	if row.deed == "change?" && t.section.class == cavityPart {
		return false
	}
	if w := t.words[min(at+2, len(t.words)-1)].lower; row.deed == "clean" && (w == "up" || w == "later") {
		return false
	}
	if row.deed == "check" && at+1 < len(t.words) && t.words[at+1].lower == "level" {
		return false
	}
	if row.deed == "check" && slices.ContainsFunc(t.items, func(it item) bool {
		return it.kind == amountItem && it.from == at+1 && it.amount.unit.kind == quantity.Torque
	}) {
		return false // the torque is checked
	}
	if row.deed == "check" && toldPhrases.has(t.words, at+2) {
		return false
	}
	if p, n := partAt(t.words, max(at-1, 0)); row.deed == "loosen" && strings.HasPrefix(t.words[at].lower, "crack") && n > 0 && p.class != fastener && p.class != plugPart && p.class != linePart && p.class != valvePart {
		return false // the belt is cracked
	}
	if row.deed == "run" && t.draining(at) {
		return false // drain plug out, let it run ten minutes
	}
	if row.deed == "drain" && at > 0 && (pronouns.has(t.words[at-1].lower) || t.words[at-1].lower == "from") {
		return false
	}
	if t.dirty(at, row) {
		return true
	}
	if next := min(at+1, len(t.words)-1); t.words[at].lower == "spin" && row.particles == "" && t.words[next].lower == "on" {
		return false // a spin-on filter
	}
	if row.particles == "" && at > 0 && speakers.has(t.words[at-1].lower) && t.words[at].stop == 0 && at+1 < len(t.words) && intransitive.has(t.words[at+1].lower) {
		if p, to, ok := t.postposed(at, end); ok && !openMachine.has(row.deed) {
			if verb := settle(row.deed, p.class); verb != "" {
				t.act(verb, p, max(at-2, 0), to, false)
				return true
			}
		}
	}
	if row.particles == "" && !endsHere(t.words, at+1) && intransitive.has(t.words[at+1].lower) {
		return false // the dust packs in the fins
	}
	if at+2 < len(t.words) && pronouns.has(t.words[at+1].lower) && (t.words[at+2].lower == "all" || t.words[at+2].lower == "back" && at+3 < len(t.words) && t.words[at+3].lower == "together") && t.words[at+2].stop == 0 && row.deed == "on?" {
		return false // put it all back
	}
	p, to, ok := t.object(at+1, end)
	if next := t.words[min(at+1, len(t.words)-1)].lower; ok && singly.has(next) && (row.deed == "change?" || row.deed == "replace") && t.section.name != "" && t.words[t.section.from].sentence == t.words[at].sentence && t.section.class != cavityPart && t.section.class != machinePart {
		p = t.section
	}
	if next := t.words[min(at+1, len(t.words)-1)].lower; ok && pronouns.has(next) && (row.deed == "tighten" || row.deed == "loosen") && p.class != fastener && p.class != plugPart && p.class != filterPart && t.bolt().name != "" {
		p = t.bolt()
	}
	if next := t.words[min(at+1, len(t.words)-1)].lower; ok && row.deed == "switchoff?" && pronouns.has(next) {
		for i := len(t.mentions) - 1; i >= 0 && t.words[t.mentions[i].from].sentence == t.words[at].sentence; i-- {
			if m := t.mentions[i]; m.class == energyPart {
				t.act("isolate", m.part, at, max(to, end), false) // the isolator … turn that off
				return true
			}
		}
	}
	if ok && ofMachine.has(row.deed) && pronouns.has(t.words[min(at+1, len(t.words)-1)].lower) {
		name := t.prime()
		p = machineOf(name)
	}
	if ok && row.deed == "off?" && row.particles != "" && end-1 > at+1 && to > end && !articles.has(t.words[at+1].lower) {
		return false // pull one cluster off it
	}
	if t.words[at].lower == "count" && pronouns.has(t.words[min(at+1, len(t.words)-1)].lower) {
		return false // drops
	}
	if !ok && !openMachine.has(row.deed) {
		if p, to, ok = t.openObject(at + 1); ok && row.particles != "" {
			ok = to == end-1 || to < len(t.words) && t.words[to].lower == "back" && to == end-2 // take the iron out
			to = max(to, end)
		}
		if !ok && row.particles != "" {
			p, to, ok = t.openObject(end) // take out the iron
		}
	}
	if ok && (row.deed == "close" || row.deed == "open") && p.class != valvePart && p.class != coverPart && !namesPart(t.words, at+1, to) {
		ok = false
		for i := len(t.mentions) - 1; i >= 0 && t.words[t.mentions[i].from].sentence == t.words[at].sentence; i-- {
			if m := t.mentions[i]; m.class == valvePart || m.class == coverPart {
				p, ok = m.part, true // ball valve to the receiver shut
				break
			}
		}
	}
	if t.words[at].lower == "make" && row.deed == "check" && ok {
		if deed, end := t.madeSure(to, p); deed != "" {
			t.act(deed, p, at, end, false)
			return true
		}
	}
	if row.deed == "adjust" && ok && pronouns.has(t.words[min(at+1, len(t.words)-1)].lower) && p.class != fastener {
		if gap := t.gapBefore(at); gap != "" {
			t.actOn("adjust", p.name+" "+gap, p, at, max(to, end), false) // air gap 0.2 to 0.5, or adjust it
			return true
		}
	}
	if row.deed == "disconnect" && ok && p.class == machinePart {
		return false // unplug it
	}
	if ok && row.particles == "" && !endsHere(t.words, to) && topical.has(t.words[to].lower) && !pronouns.has(t.words[min(at+1, len(t.words)-1)].lower) {
		return false // oil: the bottle takes two litres
	}
	if row.deed == "run" && ok && p.class == movingPart && p.many || row.deed == "off?" && ok && strokes.has(p.head) && row.particles != "" && t.words[at].stem == "send" {
		return false
	}
	if !ok && !t.spoken() && t.words[at].stem != "crack" && (row.deed == "loosen" || row.deed == "tighten") && t.bolt().name != "" && (endsHere(t.words, end) || numeric(t.words[end].lower)) {
		p, to, ok = t.bolt(), end, true // slack off 1 turn
	}
	if !ok && t.everyOne(at+1, row) {
		p, to, ok = t.section, min(at+3, len(t.words)), true // change all three, spin every one
	}
	if !ok && row.particles == "" && !openMachine.has(row.deed) {
		p, to, ok = t.postposed(at, end)
		if ok && (row.deed == "change?" || row.deed == "loosen" && t.words[at].stem == "crack") && (p.class == plugPart || row.deed == "loosen") {
			return false // level plug 8 mm, change every 5 years: the oil
		}
	}
	if !ok && t.words[min(at+1, len(t.words)-1)].lower == "all" && (row.deed == "loosen" || row.deed == "tighten") && t.bolt().name != "" {
		p, to, ok = t.bolt(), at+3, true // slack all four
	}
	bare := row.deed == "file" || row.deed == "grease" && end < len(t.words) && t.words[end].lower == "with" || (row.deed == "fill" || row.deed == "drain") && (endsHere(t.words, end) || goesOn.has(t.words[end].lower) || t.words[end].lower == "to")
	if next := min(at+1, len(t.words)-1); !ok && row.deed == "replace" && t.words[next].lower == "if" && t.words[next].stop == 0 {
		p, ok = t.meant(at)
		to = end // replace if it is worn
	}
	if !ok && bare && (t.section.name != "" || t.vessel(at) != "") {
		p, to, ok = t.section, end, true
		if p.name == "" {
			p = part{name: t.vessel(at), class: cavityPart}
		} // file out the dings; fill to the mark
	}
	if next := min(at+1, len(t.words)-1); !ok && at > 1 && t.words[next].lower != "by" && t.words[next].lower != "from" && t.words[at-1].lower == "you" && (t.words[at-2].lower == "one" || t.words[at-2].lower == "which" || t.words[at-2].lower == "that") {
		p, ok = t.meant(at)
		to = end // the second one you unhook
	}
	if next := min(at+1, len(t.words)-1); !ok && row.deed == "raise" && pronouns.has(t.words[next].lower) {
		p, to, ok = part{name: "machine", head: "machine", class: machinePart}, end, true // jack it up
	}
	if !ok && row.deed == "isolate" && t.wordBehind(end) != "on" && t.wordBehind(end) != "back" && (t.words[at].stop != 0 || t.startsSentence(at)) {
		p, to, ok = part{name: "isolator", head: "isolator", class: energyPart}, min(end+1, t.endOf(at)), true // isolate at board 2
	}
	if !ok || to > len(t.words) {
		return false
	}
	if row.particles == "" && to < len(t.words) && t.words[to].stop == ':' && to-at <= 3 && t.startsSentence(at) && called.has(t.words[at].lower) {
		return false // Wash pump: …
	}
	if next := t.words[min(at+1, len(t.words)-1)].lower; t.words[at].lower == "scrap" && t.spoken() && !articles.has(next) && !pronouns.has(next) {
		return false // the scrap filter
	}
	to = max(to, end)
	if row.deed == "lock?" && p.class != fastener && t.fastener.name != "" && !namesPart(t.words, at+1, to) {
		p = t.fastener
	}
	if (p.head == "window" || p.head == "sight glass" || p.head == "dipstick") && (row.deed == "inspect" || row.deed == "check") && t.cavity != "" {
		name := t.levelOf(t.cavity)
		t.actOn("check", name, cavityOf(t.cavity), at, to, false)
		return true
	}
	if next := t.words[min(at+1, len(t.words)-1)].lower; singly.has(next) && (row.deed == "change?" || row.deed == "replace") && shown.has(p.head) {
		return false // the oil behind it
	}
	if p.class == energyPart && (row.deed == "clean" || row.deed == "check") {
		return false
	}
	if dirt.has(p.head) && (row.deed == "clean" || row.deed == "off?" || row.deed == "flush") {
		if p, ok = t.dirtied(at); !ok {
			return false
		}
		row.deed = "clean"
	}
	if row.deed == "on?" && p.head == "brake" || p.head == "handbrake" || p.head == "lock" && t.energyDeed(at) {
		return false // brake on
	}
	if next := t.words[min(at+1, len(t.words)-1)].lower; pronouns.has(next) && (row.deed == "replace" || row.deed == "change?") && p.class == fastener {
		for i := len(t.mentions) - 1; i >= 0 && t.words[t.mentions[i].from].sentence == t.words[at].sentence; i-- {
			if m := t.mentions[i]; m.class != fastener && m.many && !m.place && m.class != placePart {
				p = m.part // anodes, two bolts each, swap them
				break
			}
		}
	}
	if w := t.words[at].stem; row.deed == "off?" && p.class == filterPart && (w == "tap" || w == "shake" || w == "knock") {
		row.deed = "clean" // the paper one you tap out
	}
	if p.class == energyPart && row.particles == "" && (row.deed == "close" || row.deed == "close?" || row.deed == "open") {
		if t.live(at, to) {
			t.ask(askEnergy, p.name, fmt.Sprintf("%s the %s: does that switch it off, or on?", capital(t.words[at].lower), p.name), at, to)
		}
		return true // to some that is on, to others off
	}
	if w := t.words[at].stem; row.deed == "tighten" && (w == "run" || w == "screw" || w == "bolt") && row.particles != "" && p.class != fastener && p.class != plugPart {
		return false // run her up and down
	}
	if w := t.words[at].stem; ok && row.particles != "" && (w == "wind" || w == "screw" || w == "turn" || w == "run") && p.from >= at && length(adjusters, t.words, p.from) > 0 {
		t.wound(p, at, to)
		return true
	}
	if row.particles != "" && scooped.has(t.words[at].stem) && p.class == plainPart && !isHead(p.head) && row.deed == "off?" {
		if p, ok = t.dirtied(at); !ok {
			return false
		}
		if s := t.section; s.name != "" && s.class != machinePart && s.class != cavityPart && s.class != fastener && p.from < s.from+60 && !namesPart(t.words, at+1, to+3) {
			p = s
		}
		row.deed = "clean" // fish out the coins
	}
	if p.class == plainPart && inside.has(p.head) && t.section.class == filterPart {
		p = t.section // rinse the mesh
	}
	verb := settle(row.deed, p.class)
	if next := t.words[min(at+1, len(t.words)-1)].lower; verb == "" && p.class == cavityPart && row.particles == "" && unbolted.has(p.head) && !pronouns.has(next) {
		verb = map[string]string{"off?": "remove", "on?": "refit", "change?": "replace"}[row.deed]
	}
	if row.deed == "pull?" && verb == "" && p.class != machinePart && p.class != cavityPart && t.near(cues("puller|slide hammer|bearing splitter"), at, at+1, 0, 9) {
		verb = "remove"
	}
	if verb == "lubricate" && p.class == cavityPart && p.head == "tank" {
		return false // the lube tank
	}
	if row.deed == "smear?" && t.lubed(end) && p.class != machinePart {
		verb = "lubricate"
	}
	switch verb {
	case "":
		return false
	case "chock":
		t.actOn("chock", plural(strings.TrimSuffix(p.name, "s")), p, at, to, false)
		t.add(Tool, "wheel chock", p.name, at, to)
		return true
	}
	if row.deed == "pumpout" {
		t.add(Tool, "oil pump", p.name, at, to)
	}
	if verb == "refit" && t.newIn(at+1, to) && p.class != fastener && p.class != plugPart && p.class != coverPart {
		verb = "replace" // put the new belt on
	}
	if verb == "run" && p.class == fastener {
		verb = "tighten" // run the nut down
	}
	if row.deed == "seton?" && t.words[min(end, len(t.words)-1)].stop == 0 {
		t.act("raise", p, at, to, true)
	}
	t.act(verb, p, at, to, false)
	t.further(verb, to)
	return true
}

// scooped are verbs for taking out what does not belong there; inside what a strainer has.
var (
	scooped = set("fish pick dig scoop rake poke")
	inside  = set("mesh gauze basket")
)

// oiledNouns are nouns behind oil and grease that are no objects of them.
var oiledNouns = set("level plug filter seal pump cap line cooler tank change gauge pressure light bath drain fill gun nipple point can way hole")

// gapBefore is the gap or the clearance that was told of shortly before a word.
func (t *taker) gapBefore(at int) string {
	for i := at - 1; i >= 0 && t.words[at].sentence-t.words[i].sentence <= 1 && at-i < 30; i-- {
		if w := t.words[i].lower; w == "gap" || w == "clearance" || w == "backlash" {
			return w
		}
	}
	return ""
}

// backs reports whether a word may stand behind the verb "back": back off, back it off, back the nut off.
func (t *taker) backs(at int) bool {
	w := t.words[at].lower
	return t.words[at].stop == 0 && (w == "off" || w == "out" || pronouns.has(w) || articles.has(w) && !(at+1 < len(t.words) && (t.words[at+1].lower == "same" || t.words[at+1].lower == "way")))
}

// called are verbs that machines and their parts are called by: a wash pump, a drain tank.
var called = set("wash rinse drain lift feed test vacuum blow spray dust grease oil cut saw fill vent brake clutch")

// operated are things that are called by what they do: a stop button, a test lever.
var operated = set("button switch lever cock valve lamp light key")

// adjusters are screws that are turned to set what they push.
var adjusters = cues("jack screw|jacking screw|jacking bolt|jack bolt|adjusting screw|adjuster screw|adjusting bolt|adjuster bolt|tension screw|tensioning screw|tension bolt|tensioner screw")

// wound takes an adjuster that is wound in or out: it tensions the belt that was named, or else is adjusted.
func (t *taker) wound(p part, at, to int) {
	for i := len(t.mentions) - 1; i >= 0; i-- {
		if m := t.mentions[i]; m.class == movingPart && (strings.HasSuffix(m.head, "belt") || strings.HasSuffix(m.head, "chain")) {
			t.act("tension", m.part, at, to, false)
			return
		}
	}
	for _, it := range t.items { // wind it in till the drive belt is tight
		if it.kind == partItem && it.from >= at && t.words[it.from].sentence == t.words[at].sentence && it.part.class == movingPart && (strings.HasSuffix(it.part.head, "belt") || strings.HasSuffix(it.part.head, "chain")) {
			t.act("tension", t.qualify(it.part), at, to, false)
			return
		}
	}
	t.act("adjust", p, at, to, false)
}

// newIn reports whether a new part is named between two words.
func (t *taker) newIn(from, to int) bool {
	for i := from; i+1 < to && i+1 < len(t.words); i++ {
		if t.words[i].lower == "new" && t.words[i+1].stop == 0 && namesPart(t.words, i+1, i+2) {
			return true
		}
	}
	return false
}

// lubed reports whether oil or grease is named right behind a word.
func (t *taker) lubed(at int) bool {
	for i := at; i < min(at+4, len(t.words)) && t.words[i].stop == 0; i++ {
		if row, n := products.at(t.words, i); n > 0 && (row.kind == "grease" || row.kind == "chain-oil" || row.kind == "engine-oil" || row.what == namePart || row.name == "silicone spray" || row.name == "penetrating oil") {
			return true
		}
		if smeared()[t.words[i].stem] != "" {
			return true
		}
	}
	return false
}

// unbolted are cavities that are taken off whole.
var unbolted = set("sump reservoir radiator tank bowl housing case")

// shown are parts that only show how much oil there is.
var shown = names("sight glass|dipstick|level plug|gauge|glass|window")

// madeSure gives what is done where somebody makes sure of a state: the valve is turned off, the
// switch is in the off position.
func (t *taker) madeSure(at int, p part) (string, int) {
	for i := at; i < min(at+7, len(t.words)) && t.words[i].stop == 0; i++ {
		switch w := t.words[i].lower; w {
		case "off", "closed", "shut":
			if p.class == valvePart || p.class == energyPart {
				return settle("switchoff?", p.class), i + 1
			}
			return "", 0
		case "open":
			if p.class == valvePart {
				return "open", i + 1
			}
			return "", 0
		case "is", "are", "in", "the", "turned", "switched", "all", "fully", "set", "to", "both":
		default:
			return "", 0
		}
	}
	return "", 0
}

// topical are verbs behind a name that is no object, but what a sentence is about.
var topical = set("takes holds is has wants gets needs")

// intransitive are words behind a verb that nothing is done to.
var intransitive = set("in into from against of than")

// leadsS are words that a verb for he, she or it may follow.
var leadsS = set("it he she that which who this one always only just never also then and what everything nobody someone somebody")

// dirtied is what dirt is taken off: what was spoken of.
func (t *taker) dirtied(at int) (part, bool) {
	for i := at + 1; i < min(at+9, len(t.words)) && t.words[i].stop == 0; i++ {
		if w := t.words[i].lower; w == "from" || w == "off" || w == "of" || w == "in" {
			next := i + 1
			for next < len(t.words)-1 && articles.has(t.words[next].lower) {
				next++
			}
			if next < len(t.words) {
				if p, n := partAt(t.words, next); n > 0 && t.words[next].stop == 0 {
					return t.qualify(p), true // swarf off the bed
				}
			}
		}
	}
	p, ok := t.meant(at)
	return p, ok && p.class != machinePart
}

// energyDeed reports whether a lock at a word is that of an isolator.
func (t *taker) energyDeed(at int) bool {
	return t.near(cues("padlock|isolator|tag|lock off|your lock|own lock"), at, at+1, 8, 8)
}

// everyOne reports whether a deed is done to all of what is spoken of.
func (t *taker) everyOne(at int, row deedRow) bool {
	if t.section.name == "" || t.section.class == cavityPart || endsHere(t.words, at) {
		return false
	}
	switch w := t.words[at].lower; w {
	case "all":
		return row.deed == "change?" || row.deed == "replace" || row.deed == "check" || row.deed == "inspect"
	case "every", "each":
		return at+1 < len(t.words) && t.words[at+1].lower == "one"
	}
	return false
}

// dirty takes a place that dirt is taken from: get the string out.
func (t *taker) dirty(at int, row deedRow) bool {
	if row.deed != "off?" || t.section.name == "" {
		return false
	}
	for i := max(at-9, 0); i < min(at+5, len(t.words)); i++ {
		if dirt.has(t.words[i].lower) && t.words[i].sentence == t.words[at].sentence {
			t.act("clean", t.section, i, min(at+3, len(t.words)), false)
			return true
		}
	}
	return false
}

// toldAt takes a deed that a phrase tells by itself.
func (t *taker) toldAt(at int) {
	if n := length(bothSides, t.words, at); n > 0 && len(t.deeds) > 0 {
		if last := t.deeds[len(t.deeds)-1]; last.sentence >= t.words[at].sentence-3 {
			for _, d := range t.deeds {
				if d.verb == "tension" || d.verb == "adjust" {
					last = d
				}
			}
			t.put(Action, strings.TrimSpace(last.verb+" "+last.object), last.part.name, at, at+n)
		}
	}
	row, n := toldPhrases.at(t.words, at)
	if n > 0 && length(airOut, t.words, at) > 0 {
		if wordIn(t.words, "compressor", "receiver") {
			row = toldDeed{"relieve", "air pressure", ""}
		} else {
			row = toldDeed{"bleed", "$system", ""}
		}
	}
	if n == 0 || at > 0 && t.words[at].stop == 0 && (t.words[at-1].lower == "before" || t.words[at-1].lower == "till") || !t.live(at, at+n) {
		return
	}
	if end := at + n; !endsHere(t.words, end) && articles.has(t.words[end].lower) && onOff.has(t.words[end-1].lower) && row.verb != "lubricate" {
		return // the isolator on the wall
	}
	if row.object == "emergency stop" {
		for i := max(at-3, 0); i < at; i++ {
			if pressed.has(t.words[i].lower) && t.words[i].sentence == t.words[at].sentence {
				t.act("press", part{name: "emergency stop", head: "emergency stop", class: signPart}, i, at+n, false)
				return // hit the emergency stop
			}
		}
	}
	if row.verb == "prove" && t.lastOfEnergy() == "restore" {
		row = toldDeed{"start", "$prime", ""} // the power is on again: press the green button
	}
	if end := at + n; row.object == "emergency stop" && !endsHere(t.words, end) && (t.words[end].lower == "in" || t.words[end].lower == "pressed") {
		return // it is pressed
	}
	if row.verb == "replace" && row.object == "$section" {
		if p, from, ok := t.subjectAt(at); ok && from >= clauseStart(t.words, at) && p.class != machinePart && p.class != cavityPart && p.class != placePart {
			t.act("replace", p, from, at+n, false)
			return // the squeeze tube gets changed
		}
	}
	if row.verb == "replace" && t.section.class == cavityPart {
		return // the oil gets changed
	}
	if row.verb == "lubricate" && row.object == "$last" && at+n < len(t.words) && (t.words[at+n].lower == "on" || t.words[at+n-1].lower == "on") && t.words[at+n].stop == 0 {
		next := at + n
		for next < len(t.words)-1 && (t.words[next].lower == "on" || articles.has(t.words[next].lower) && !pronouns.has(t.words[next].lower)) {
			next++
		}
		if p, m := partAt(t.words, next); m > 0 && p.class != placePart && p.class != machinePart {
			t.act("lubricate", t.qualify(p), at, next+m, false)
			return
		}
	}
	if row.needs == "cavity" && t.section.class != cavityPart && t.cavity == "" {
		return
	}
	if row.needs == "tensioned" && t.section.class != wheelPart && t.section.class != movingPart {
		return
	}
	p := t.section
	if row.object == "$fastener" && t.section.class == filterPart && sieves.has(lastWord(t.section.head)) && t.fastener.name == "" {
		t.ask(askOwner, "by hand", fmt.Sprintf("%s: which part is that?", capital(t.said(at, at+n))), at, at+n)
		return
	}
	switch row.object {
	case "$energy":
		name := t.energyAt(at)
		p = part{name: name, head: name, class: energyPart}
	case "$machine", "$prime":
		name := t.prime()
		p = machineOf(name)
	case "$cavity", "$oil", "$level":
		name := t.cavity
		if name == "" {
			return
		}
		if row.object == "$level" && at+n < len(t.words) && t.words[at+n].lower == "after" && at+n+1 < len(t.words) && (smalls()[t.words[at+n+1].lower] > 0 || numeric(t.words[at+n+1].lower) || t.words[at+n+1].lower == "the") {
			return
		}
		if row.object == "$level" && t.near(cues("fill|refill|top"), at, at+n, 7, 0) {
			return
		}
		if row.object == "$level" {
			name = t.levelOf(name)
		} else if name == "engine" && row.object != "$cavity" {
			name = "engine oil"
		}
		p = part{name: name, head: name, class: cavityPart, many: t.section.many && t.section.name == name}
	case "$fastener":
		p = t.fastener
		if q := t.turned(); q.name != "" && t.words[at].sentence-t.words[q.from].sentence <= 2 && (p.name == "" || p.from < q.from) {
			p = q
		}
		if p.name == "" {
			p = t.tightened(&item{from: at, to: at + n})
		}
	case "$last":
		p, _ = t.meant(at)
	case "$first":
		p = t.section
		for i := len(t.mentions) - 1; i >= 0 && t.words[t.mentions[i].from].sentence == t.words[at].sentence; i-- {
			if m := t.mentions[i]; !m.place && m.class != fastener && m.class != placePart && m.class != machinePart {
				p = m.part
			}
		}
		if p.class == machinePart || p.class == cavityPart {
			return
		}
	case "$belt":
		p = part{name: "drive belt", head: "belt", class: movingPart}
	case "$section":
	case "$section sag":
		p.name, p.many = p.name+" sag", false
	case "$system":
		if p = (part{name: t.system(), class: cavityPart}); p.name == "" {
			return
		}
	default:
		p = part{name: row.object, head: row.object, class: plainPart}
		if row.object == "fuel valve" {
			p.class = valvePart
		}
		if row.object == "battery" {
			p.class = linePart
		}
	}
	if p.name == "" {
		return
	}
	name := p.name
	if p.many {
		name = plural(name)
	}
	t.actOn(row.verb, name, p, at, at+n, false)
	if row.verb == "lubricate" {
		next := at + n
		if next < len(t.words) && pronouns.has(t.words[next].lower) {
			next++
		}
		t.further("lubricate", next)
	}
}

var pressed = set("hit press push punch smack thump knock slap")

// lastOfEnergy is what was done last about the energy: "isolate", "restore", or nothing.
func (t *taker) lastOfEnergy() string {
	for i := len(t.deeds) - 1; i >= 0; i-- {
		if v := t.deeds[i].verb; v == "restore" || v == "isolate" {
			return v
		}
	}
	return ""
}

// levelOf is the level of what a cavity holds.
func (t *taker) levelOf(cavity string) string {
	switch {
	case strings.Contains(cavity, "cool") || strings.Contains(cavity, "radiator"):
		return "coolant level"
	case strings.Contains(cavity, "fluid") || strings.Contains(cavity, "brake"):
		return "brake fluid level"
	case strings.Contains(cavity, "hydraulic") || cavity == "tank" && wordIn(t.words, "hydraulic", "hydraulics", "ram"):
		return "hydraulic oil level"
	case strings.HasSuffix(cavity, "oil"):
		return cavity + " level"
	}
	return cavity + " oil level"
}

var onOff = set("on off in out")

var airOut = cues("let the air out|let the air down|dump the air")

var bothSides = cues("both sides the same|same both sides|same the other side|same on both sides|do the same on the other")

// newOne takes a new one in place of what was spoken of.
func (t *taker) newOne(at int) {
	w := t.words[at]
	if w.lower != "new" || endsHere(t.words, at+1) || !t.live(at, at+1) {
		return
	}
	next := t.words[at+1].stem
	if w := wordBefore(t.words, at); w == "because" || w == "cos" || w == "as" || w == "since" || at > 0 && t.words[at-1].lower == "because" {
		return // because new ones stretch
	}
	if next != "one" && !(next == "every" && at > 0 && (t.words[at-1].lower == "both" || t.words[at-1].lower == "all")) {
		return
	}
	for i := len(t.mentions) - 1; i >= 0 && at-t.mentions[i].from < 45; i-- {
		m := t.mentions[i]
		if m.place {
			continue
		}
		if m.class == sealPart || m.class == filterPart || m.class == movingPart || m.name == "spark plug" || m.class == plainPart {
			p := m.part
			if next == "every" {
				p.many = true
				if t.section.class == filterPart {
					p.name = t.section.name
				}
			}
			t.act("replace", p, at, at+2, false)
			return
		}
	}
	if t.section.name == "spark plug" {
		t.act("replace", t.section, at, at+2, false)
	}
}

// looked takes what is looked at for its state: if the guard is cracked, look for cracks.
func (t *taker) looked(at int) {
	w := t.words[at]
	if (defects.has(w.lower) || bad.has(w.lower)) && (at == 0 || w.sentence != t.words[at-1].sentence) && at+1 < len(t.words) && t.words[at+1].stop == ',' && t.section.name != "" && t.section.class != machinePart && t.section.class != cavityPart {
		t.act("inspect", t.section, at, min(t.endOf(at), at+5), false) // cracks, shiny sides, frayed
		return
	}
	if w.lower == "if" && t.signs(at) {
		for i := len(t.mentions) - 1; i >= 0 && t.words[t.mentions[i].from].sentence == w.sentence; i-- {
			if m := t.mentions[i]; m.class == plainPart && !m.place || m.class == sealPart || m.class == linePart {
				t.act("inspect", m.part, m.from, min(at+5, t.endOf(at)), true) // weep hole …, if you see water
				break
			}
		}
	}
	if w.lower == "if" {
		for i := at + 1; i < min(at+9, len(t.words)) && t.words[i].stop == 0; i++ {
			if !bad.has(t.words[i].lower) {
				continue
			}
			for k := len(t.items) - 1; k >= 0; k-- {
				if it := t.items[k]; it.kind == partItem && it.from > at && it.to <= i {
					p := t.qualify(it.part)
					if p.bare && p.class == coverPart && t.section.name != "" {
						p = p.of(t.section)
					}
					t.act("inspect", p, at, i+1, false)
					return
				}
			}
			return
		}
	}
	if w.lower == "look" && at+2 < len(t.words) && t.words[at+1].lower == "for" && defects.has(t.words[at+2].lower) && t.words[at+2].stem != "leak" {
		first := part{}
		for i := len(t.mentions) - 1; i >= 0 && t.words[t.mentions[i].from].sentence == w.sentence; i-- {
			if m := t.mentions[i]; t.startsSentence(m.from) && m.class != machinePart && m.class != cavityPart && m.class != placePart {
				first = m.part
			}
		}
		if n := len(t.mentions); first.name == "" && n > 0 && t.section.class == cavityPart {
			if m := t.mentions[n-1]; t.words[m.from].sentence == w.sentence && !m.place && m.class != fastener && m.class != cavityPart && m.class != machinePart {
				first = m.part // wipe the rod and look for scoring
			}
		}
		if p := t.section; first.name != "" {
			t.act("inspect", first, at, at+3, false)
		} else if p.name != "" && p.class != machinePart {
			if len(t.mentions) > 0 && t.mentions[len(t.mentions)-1].class == movingPart && t.mentions[len(t.mentions)-1].from > t.begun {
				p = t.mentions[len(t.mentions)-1].part
			}
			t.act("inspect", p, at, at+3, false)
		}
	}
	if (w.lower == "has" || w.lower == "have" || w.lower == "must") && at+2 < len(t.words) && (t.words[at+1].lower == "to" && t.words[at+2].lower == "be" || t.words[at+1].lower == "be") && len(t.mentions) >= 0 {
		for k := range t.items {
			if it := t.items[k]; it.kind == partItem && it.to == at && (it.part.class == machinePart || it.part.class == supportPart || it.part.class == valvePart) {
				p := it.part
				t.act("check", p, it.from, min(at+4, len(t.words)), false)
			}
		}
	}
	if w.lower == "check" {
		for i := max(at-4, 0); i < at; i++ {
			if n := length(quantities, t.words, i); n > 0 && t.words[i].sentence == w.sentence && i+n <= at && t.live(i, at+1) {
				name := strings.ToLower(t.said(i, i+n))
				t.actOn("measure", name, part{name: name}, i, at+1, false)
				break
			}
		}
	}
	if w.lower == "write" || w.lower == "record" || w.lower == "note" || w.lower == "log" {
		t.recorded(at)
		for i := at + 1; i < min(at+8, len(t.words)) && t.words[i].stop == 0; i++ {
			if n := length(quantities, t.words, i); n > 0 {
				name := strings.ToLower(t.said(i, i+n))
				if name == "hrs" || name == "hr" {
					name = "hours"
				}
				t.actOn("record", name, part{name: name}, at, i+n, false)
				i += n
			}
		}
	}
}

// signs reports whether an "if" asks for what is seen to come out: if you see rust, if there's oil.
func (t *taker) signs(at int) bool {
	seen := false
	for i := at + 1; i < min(at+7, len(t.words)) && t.words[i].sentence == t.words[at].sentence; i++ {
		switch w := t.words[i]; {
		case w.lower == "see" || w.lower == "find" || w.lower == "there":
			seen = true
		case seen && (leaking.has(w.stem) || defects.has(w.lower)):
			return true
		}
	}
	return false
}

var leaking = set("water rust oil grease coolant drip leak weep swarf damp moisture fuel")

// recorded takes what is written down that no table knows: log the cycles.
func (t *taker) recorded(at int) {
	if w := t.words[at]; w.lower == "note" && t.spoken() || at > 0 && w.stop == 0 && !breaks.has(t.words[at-1].lower) && !beforeInfinitive.has(t.words[at-1].lower) {
		return // the log
	}
	for i := at + 1; i < min(at+8, len(t.words)) && t.words[i].stop == 0; i++ {
		if length(quantities, t.words, i) > 0 {
			return
		}
	}
	next := at + 1
	if !endsHere(t.words, next) && t.words[next].lower == "down" {
		next++
	}
	for !endsHere(t.words, next) && (t.words[next].lower == "the" || t.words[next].lower == "both" || t.words[next].lower == "all") {
		next++
	}
	if endsHere(t.words, next) {
		return
	}
	if w := t.words[next]; lettersOnly(w.lower) && !stopWords.has(w.lower) && !vague.has(w.stem) && !prepositions.has(w.lower) && (endsHere(t.words, next+1) || breaks.has(t.words[next+1].lower) || prepositions.has(t.words[next+1].lower)) {
		t.actOn("record", w.lower, part{name: w.lower}, at, next+1, false)
	}
}

// particleBehind finds a particle of a verb: take it OFF, pull the plug wire OFF.
func (t *taker) particleBehind(at int, particles string) int {
	want := set(particles)
	for i := at + 1; i < len(t.words) && i < at+7; i++ {
		w := t.words[i]
		if w.stop != 0 {
			return -1
		}
		if w.hyphen || i+1 < len(t.words) && t.words[i+1].hyphen {
			continue // a washing-up bowl
		}
		if want.has(w.lower) {
			return i
		}
		if w.lower == "dry" {
			return -1
		}
		if i > at+1 && actionWords()[w.lower] && !bothWays()[w.lower] && !particleWords.has(w.lower) {
			return -1
		}
		if i > at+1 && w.lower == "and" && i+1 < len(t.words) && determiners.has(t.words[i+1].lower) {
			continue // take the bowl and the tool off
		}
		if i > at+1 && (w.lower == "and" || w.lower == "then") {
			return -1
		}
	}
	return -1
}

// particleWords are verbs and particles both.
var particleWords = set("out back off up down")

// object finds what a deed is done to: a part named between the verb and its particle or right
// behind, "it" and "them", or what is spoken of.
func (t *taker) object(from, end int) (part, int, bool) {
	stop := end
	for i := from; i < len(t.words) && i < end+5; i++ {
		w := t.words[i]
		if w.stop != 0 || i >= end && (breaksAt(t.words, i) || actionWords()[w.lower] && !bothWays()[w.lower] && !particleWords.has(w.lower)) {
			break
		}
		if _, n := toolAt(t.words, i); n > 0 && i >= end {
			break
		}
		if p, n := partAt(t.words, i); n > 0 {
			p = t.qualify(p)
			if of, ok := t.ofWhat(p.to); ok && p.bare && (t.words[p.to].lower == "of" || p.class == fastener) {
				p.name, p.bare = of.name+" "+p.head, false
			}
			return p, i + n, true
		}
		if pronouns.has(w.lower) {
			p, ok := t.meant(i)
			return p, max(i+1, stop), ok
		}
		if _, unit := unitAt(t.words, i); unit > 0 && i > from && numeric(t.words[i-1].lower) {
			continue // replace the 10 micron filter
		}
		if bad.has(w.lower) && i >= from && !endsHere(t.words, i+1) {
			if _, n := partAt(t.words, i+1); n > 0 {
				continue // replace cracked boot
			}
		}
		if !articles.has(w.lower) && !adjectives.has(w.lower) && i >= end && !small.has(w.lower) && !numeric(w.lower) {
			break
		}
	}
	return part{}, 0, false
}

// ofMachine are deeds whose "it" is the machine.
var ofMachine = set("start run stop switchoff? switchon?")

// openMachine are deeds that are done to a machine, a cavity or a source of energy, and not to
// any part that a name is given to.
var openMachine = set("start run stop switchoff? switchon? isolate drain let fill bleed raise support lower chock pumpout pull? seton? lock? drop? turnover empty? set? tighten flush")

// openObject reads a thing that no table knows: grease THE COLUMNS; in notes in short, behind a
// verb that begins a clause, also without an article: clean PHOTOCELL.
func (t *taker) openObject(at int) (part, int, bool) {
	if at+1 > len(t.words)-1 && endsHere(t.words, at) {
		return part{}, 0, false
	}
	to, curt := at, false
	for to < len(t.words)-1 && (openBefore.has(t.words[to].lower) || to > at && (t.words[to].lower == "whole" || t.words[to].lower == "entire")) && to < at+3 && t.words[to].stop == 0 {
		to++
	}
	if to == at {
		if at == 0 || t.words[at-1].stop == 0 || t.spoken() {
			return part{}, 0, false
		}
		curt = true
	}
	if w := t.words[at].lower; (w == "every" || w == "each" || w == "any" || w == "new") && calendar(t.words, at+1, false) != "" {
		return part{}, 0, false // replace every season
	}
	if noun := t.words[to]; states.has(noun.lower) && noun.stop == 0 && t.section.name != "" && t.section.class != cavityPart {
		return part{name: t.section.name + " " + noun.lower, head: noun.lower, class: plainPart, from: at, to: to + 1}, to + 1, true // check the slack
	}
	first := to
	var names []string
	for to < len(t.words) && len(names) < 3 {
		w := t.words[to]
		_, unit := units.at(t.words, to)
		if w.stop != 0 || stopWords.has(w.lower) && !(w.lower == "hand" && len(names) == 0) || breaksAt(t.words, to) || numeric(w.lower) || smalls()[w.lower] != 0 || denominators()[w.lower] != 0 || unit > 0 || !lettersOnly(w.lower) || actionWords()[w.lower] && len(names) > 0 || quantities.has(t.words, to) {
			break
		}
		if _, tool := toolAt(t.words, to); tool > 0 || strings.HasSuffix(w.lower, "ly") || strings.HasSuffix(w.lower, "ing") && len(names) > 0 {
			if tool > 0 {
				return part{}, 0, false
			}
			break
		}
		if _, ok := fluidAt(t.words, to); ok {
			return part{}, 0, false
		}
		names = append(names, w.lower)
		to++
		if w.of {
			break
		}
		if n := length(quantities, t.words, to); n > 0 && !endsHere(t.words, to) { // check the wash temperature
			name := strings.ToLower(strings.Join(names, " ") + " " + t.said(to, to+n))
			return part{name: name, head: lastWord(name), class: plainPart, from: at, to: to + n}, to + n, true
		}
	}
	if len(names) == 0 || vague.has(t.words[to-1].stem) || bad.has(t.words[to-1].lower) || strings.HasSuffix(t.words[to-1].lower, "ed") || curt && (len(names) > 2 || !endsHere(t.words, to) && !afterName.has(t.words[to].lower)) || to-first != len(names) {
		return part{}, 0, false
	}
	last := &names[len(names)-1]
	many := singular(*last) != *last
	*last = singular(*last)
	return part{name: strings.Join(names, " "), head: *last, class: plainPart, many: many, from: at, to: to}, to, true
}

// afterName are words that may follow a name in notes in short.
var afterName = set("and with if every for by at when to on in")

var openBefore = set("the both all each every your any that this old new our my")

// states are what is checked of what is spoken of.
var states = set("slack sag play wear tension backlash alignment")

// vague are nouns that name nothing that is worked on.
var vague = set("free tight loose straight secure weight load strain pressure kettle worst book sheet power fuel air water oil dirt dust thing stuff lot line place job bit side way time one rest idea dings ding whole mess day week inside outside height weather number minute second hour " +
	"figure figures size sizes torque amount grade year month morning afternoon machine unit guy man men lad boss office customer phone call coffee tea cup eye eyes ear ears head heads back arm arms leg legs foot face chest nose skin neck clothes sleeve hair finger fingers thumb glove gloves hand hands difference trick secret point reason problem fault trouble noise sound smell heat steam smoke flow level temperature speed revs current voltage gap clearance slack play noise manual card note notes paper paperwork photo picture same other others next last first top bottom end middle front rear left right half quarter third inch direction order sequence pattern way round course chance care note floor ground bench shed shop yard workshop road field door wall stuff muck mud gunk crud rubbish grit swarf chips sludge scale rust paint grease edge edges corner corners surface surfaces area areas feel look turn turns stroke strokes light lights money price cost quid weekend season spring winter summer autumn hours minutes days weeks months years mark marks score state condition instructions label sticker tag drawing list kit kits parts part thread threads hole holes fit job jobs work fun hell hold grip go people folk anything something nothing everything everybody one ones them clear true dry clean better best gaff")

// lettersOnly reports whether a word is of letters, three at the least.
func lettersOnly(text string) bool {
	for _, r := range text {
		if r < 'a' || r > 'z' {
			return false
		}
	}
	return len(text) >= 3
}

// namesPart reports whether a part is named between two words.
func namesPart(words []word, from, to int) bool {
	for i := from; i < min(to, len(words)); i++ {
		if _, n := partAt(words, i); n > 0 {
			return true
		}
	}
	return false
}

// goesOn are words that may follow when something is put on.
var goesOn = set("and then so but again till until first last before by when after with tight finger hand dry up")

// meant is what "it" or "them" stands for.
func (t *taker) meant(at int) (part, bool) {
	many := severalSaid.has(t.words[at].lower)
	if w := t.words[at].lower; w == "her" || w == "him" {
		if name := t.machineHead(); name != "" {
			return machineOf(name), true
		}
	}
	if many && t.fastener.many && len(t.mentions) > 0 && t.fastener.from > t.mentions[len(t.mentions)-1].from {
		return t.fastener, true
	}
	for i := len(t.mentions) - 1; i >= 0; i-- {
		m := t.mentions[i]
		if m.from < t.begun && t.section.name != "" || t.words[at].sentence-t.words[m.from].sentence > 2 && !(many && t.words[at].sentence-t.words[m.from].sentence < 6 && at-m.from < 60) {
			break
		}
		if !many && m.many && m.class == fastener && m.to < at-1 && singly.has(t.words[at].lower) && t.onlyBefore(i) {
			continue // two screws hold it on
		}
		if m.class == fastener && t.words[at].sentence-t.words[m.from].sentence > 2 {
			continue
		}
		if m.place || features.has(m.head) || m.class == placePart || m.class == energyPart || many != m.many && many {
			continue
		}
		return m.part, true
	}
	if many && t.fastener.name != "" {
		return t.fastener, true
	}
	if t.section.name != "" && t.section.class != energyPart {
		return t.section, true
	}
	if name := t.machineHead(); name != "" && !many {
		return machineOf(name), true
	}
	return part{}, false
}

// onlyBefore reports whether a single thing is named before a mention, of the same section.
func (t *taker) onlyBefore(at int) bool {
	for i := at - 1; i >= 0 && t.mentions[i].from >= t.begun && t.words[t.mentions[at].from].sentence-t.words[t.mentions[i].from].sentence <= 2; i-- {
		if m := t.mentions[i]; !m.many && !m.place && m.class != fastener && m.class != placePart && m.class != energyPart {
			return true
		}
	}
	return false
}

var singly = set("it that this")

var severalSaid = set("them those these 'em")

var pronouns = set("it that them those this these 'em her him")

var adjectives = set("none any that if whether f r l rh lh of little big old new small good bad whole all both top bottom left right front rear up down out in on back each other last first second only just round over at for")

var small = set("two three four five six seven eight nine ten one")

// notBeforeVerb are words that a verb does not follow: "the drain", "of grease", "a check".
var notBeforeVerb = set("the a an of no some new old little big for by with this that my your its our their any each every number lithium in on")

// nounHere reports whether a word that may be a deed is a thing: nothing follows that could be done.
func nounHere(words []word, at int) bool {
	if !bothWays()[words[at].lower] && !nounVerbs.has(words[at].lower) {
		return false
	}
	if endsHere(words, at+1) {
		return true
	}
	next := words[at+1].lower
	if _, n := partAt(words, at); n > 1 && !articles.has(next) {
		return true
	}
	if (next == "to" || next == "with" || next == "up" || next == "till" || next == "until") && nounVerbs.has(words[at].lower) && (words[at].stop != 0 || at == 0 || !isHead(words[at-1].stem) && !modifiers.has(words[at-1].stem)) {
		return false // fill to the mark
	}
	if next == "out" || next == "off" || next == "down" || next == "away" {
		return false
	}
	return !articles.has(next) && next != "all" && next != "both" && !small.has(next) && heads()[words[at+1].stem] == plainPart && !modifiers.has(next)
}

// nounVerbs are verbs that are as often nouns.
var nounVerbs = set("wet grease oil drain fill run check test start stop change record note log mark sign lock dust brush vacuum look level measure gauge wash tension support rest top line set block dress")

// deedsBy are the rows of deeds by the forms of their verbs.
var deedsBy = sync.OnceValue(func() map[string][]deedRow {
	out := map[string][]deedRow{}
	for _, particles := range []bool{true, false} {
		for _, row := range deedRows {
			if (row.particles != "") == particles {
				for verb := range strings.FieldsSeq(row.verbs) {
					out[verb] = append(out[verb], row)
					if other := withS(verb); other != "" {
						out[other] = append(out[other], row)
					}
				}
			}
		}
	}
	return out
})
