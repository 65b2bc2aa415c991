package draft

import (
	"slices"
	"strings"
	"sync"
)

// deed is something to do, as it becomes a step.
type deed struct {
	verb     string
	object   string
	part     part
	from, to int // words
	sentence int
	implied  bool // by a figure, not by a verb
}

// smearedAt takes what oil or grease is put on: oil on the O-ring, marine grease on the splines.
func (t *taker) smearedAt(at int) {
	if t.smearOf(at) {
		return
	}
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

// smearOf takes a little of a grease or an oil on what its sentence names: a smear of petroleum jelly, dab of
// anti-seize on every bolt, silicone grease just a film.
func (t *taker) smearOf(at int) bool {
	w := t.words[at]
	if !littles.has(w.stem) || t.near(cues("write|record|note|log|no"), at, at+1, 3, 0) {
		return false
	}
	end := at + 1
	for i := max(at-5, 0); i < min(at+5, len(t.words)); i++ {
		if i == at || t.words[i].sentence != w.sentence || i > at && t.words[i].stop != 0 {
			continue
		}
		row, n := products.at(t.words, i)
		if i > at && (n == 0 || !row.smears()) && smeared()[t.words[i].stem] == "" || i < at && (n == 0 || row.kind != "grease") {
			continue
		}
		end = max(end, i+max(n, 1))
		if next := end; !endsHere(t.words, next+1) && (t.words[next].lower == "on" || t.words[next].lower == "round" || t.words[next].lower == "around") && t.words[next].stop == 0 {
			next++
			for next < len(t.words)-1 && articles.has(t.words[next].lower) {
				next++
			}
			if p, m := partAt(t.words, next); m > 0 && t.words[next].stop == 0 && p.class != placePart && p.class != machinePart && p.class != energyPart {
				t.act("lubricate", t.qualify(p), at, next+m, false)
			}
			return true
		}
		for k := len(t.mentions) - 1; k >= 0 && at-t.mentions[k].from < 25 && t.words[t.mentions[k].from].sentence == w.sentence; k-- {
			if m := t.mentions[k]; !m.place && m.class != machinePart && m.class != placePart && m.class != cavityPart && m.class != fastener && m.head != "grease fitting" {
				t.act("lubricate", m.part, min(at, i), end, false)
				return true
			}
		}
		return false
	}
	return false
}

var littles = set("dab smear film")

// smears reports whether a product is put on, and not filled in.
func (row productRow) smears() bool {
	return row.kind == "grease" || row.name == "anti-seize" || row.name == "silicone spray" || row.name == "penetrating oil" || row.name == "glycerine"
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
	if t.words[it.to-1].of && at == it.to && (w == "on" || w == "in") && !endsHere(t.words, at+1) && (t.words[at+1].lower == "with" || t.words[at+1].lower == "by") {
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
	if first := clauseStart(t.words, it.from); t.words[first].lower == "if" || it.from > 1 && t.words[it.from].stop == 0 && (t.words[it.from-1].lower == "if" || t.words[it.from-1].lower == "the" && t.words[it.from-2].lower == "if" && t.words[it.from-1].stop == 0) {
		return // if the belts come off
	}
	if length(adjusters, t.words, it.from) > 0 && (w == "in" || w == "out") {
		return // wind the jack screw in
	}
	deed := ""
	switch {
	case p.head == "emergency stop" && (w == "in" || w == "pressed" || w == "out"):
		if w != "out" {
			t.act("press", p, it.from, at+1, false)
		}
		return
	case w == "off" || w == "out" && !(!endsHere(t.words, at+1) && (t.words[at+1].lower == "to" || t.words[at+1].lower == "of")) || w == "away" && p.class == supportPart:
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
	if !back && (w == "on" || w == "in") && !endsHere(t.words, at+1) && !goesOn.has(t.words[at+1].lower) && !t.statesGoOn(at+1) && p.class != linePart && p.class != energyPart && p.class != valvePart {
		return // "the screw on top"
	}
	if !back && w == "off" && p.class == coverPart && at+2 < len(t.words) && t.words[at+1].lower == "the" && t.words[at+1].stop == 0 && t.words[at+2].stop == 0 {
		if of, n := partAt(t.words, at+2); n > 0 && (p.bare || p.name == of.name+" "+p.head) { // cover off the blade
			t.act("remove", p.of(of), it.from, at+2+n, false)
			return
		}
	}
	if !back && (w == "on" || w == "in" || w == "out" || w == "off") && !endsHere(t.words, at+1) && (articles.has(t.words[at+1].lower) || numeric(t.words[at+1].lower) && (t.spoken() || w != "off")) && (p.class != linePart || p.head != "cap" && p.head != "lead" && p.head != "clip" && p.head != "clamp" && p.name != "spark plug wire" && p.name != "spark plug cap") {
		return // "the spring on it"
	}
	if !back && p.class == valvePart && p.bare && !endsHere(t.words, at+1) {
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

// statesGoOn reports whether a list of states goes on at a word: panel on, WATER ON, CHECK for drips.
func (t *taker) statesGoOn(at int) bool {
	if at+1 >= len(t.words) {
		return false
	}
	if w := t.words[at].lower; w == "check" || w == "test" {
		return true
	}
	for i := at + 1; i < min(at+3, len(t.words)) && t.words[i].stop == 0; i++ {
		if w := t.words[i].lower; articles.has(w) || prepositions.has(w) && !onOff.has(w) {
			return false
		} else if onOff.has(w) {
			return endsHere(t.words, i+1) || !articles.has(t.words[i+1].lower) && !prepositions.has(t.words[i+1].lower)
		}
	}
	return false
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
		p = cavityOf(name)
	case "run", "start", "stop":
		if p.class != machinePart && p.class != movingPart || p.head == "machine" {
			name = t.prime()
			p = machineOf(name)
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
			p = machineOf(name)
		}
		t.raised = name
	case "grease":
		if p.class == fastener {
			return
		}
	case "bleed":
		switch {
		case strings.Contains(p.name, "brake"):
			name = "brakes"
		case strings.Contains(p.name, "clutch"):
			name = "clutch"
		default:
			if name = t.system(); name == "" {
				name = t.section.name
			}
			if name == "" {
				return
			}
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
		t.actOn("drain", oil, cavityOf(oil), from, to, true)
	}
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

// didNear reports whether a deed was told not further than some words before a word.
func (t *taker) didNear(at, within int) bool {
	return slices.ContainsFunc(t.deeds, func(d deed) bool { return d.to > at-within && d.from <= at })
}

// didSince reports whether a deed was told behind a word.
func (t *taker) didSince(verb string, at int) bool {
	return slices.ContainsFunc(t.deeds, func(d deed) bool { return d.verb == verb && d.from >= at })
}

// did reports whether a deed was told before.
func (t *taker) did(verb, object string) bool {
	return slices.ContainsFunc(t.deeds, func(d deed) bool { return d.verb == verb && d.object == object })
}

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
