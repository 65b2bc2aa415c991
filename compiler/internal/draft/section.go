package draft

import (
	"strings"
	"sync"
)

// section is a part that the notes come to, at a word.
type section struct {
	part
	at int
}

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
		t.comeTo(p, at)
		t.mentions = append(t.mentions, mention{p, i, i + 1, false})
		t.spinOn(&item{from: i, to: i + 1}, p)
		return
	}
	if w := t.words[i]; w.lower == "hydraulic" && (i+1 >= len(t.words) || t.words[i+1].line != w.line) && (i == 0 || t.words[i-1].line != w.line || t.words[i-1].lower == "g" || len(t.words[i-1].lower) == 1) {
		t.comeToCavity("hydraulic tank", at) // HYD
		return
	}
	if t.words[i].lower == "oil" || t.words[i].lower == "hydraulics" || t.words[i].lower == "coolant" {
		if n := i + 1; endsHere(t.words, n) || t.words[i].of || newLine || t.announced(at, i) {
			oiled := t.oiled()
			if of, ok := t.ofWhat(n); ok && of.class == cavityPart {
				oiled = of.name
				if of.name == "tank" && wordIn(t.words, "hydraulic", "hydraulics", "ram", "valve") {
					oiled = "hydraulic tank"
				}
			}
			names := map[string]string{"oil": oiled, "hydraulics": "hydraulic tank", "coolant": "cooling system"}
			t.comeToCavity(names[t.words[i].lower], at)
		}
		return
	}
	if row, n := products.at(t.words, i); n > 0 && heldIn()[row.kind] != "" && row.what == namePart && (endsHere(t.words, i+n) || newLine) {
		t.comeToCavity(heldIn()[row.kind], at)
		return
	}
	if n := length(played, t.words, i); n > 0 && endsHere(t.words, i+n) {
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
	about := headed || end >= len(t.words) || ordering.has(t.words[end].lower) && endsHere(t.words, end+1) || t.words[end].stop != 0 || t.words[end-1].of || newLine || at > 0 && t.words[at-1].line != w.line || subjects.has(t.words[end].lower)
	if !about || t.placed(i) {
		return
	}
	p.from, p.to = i, end
	alone := p.many && newLine && (end >= len(t.words) || t.words[end].line != w.line)
	if p.bare && !alone && (p.class == fastener || p.class == springPart || p.class == coverPart || p.class == plugPart && !newLine && t.section.name != "" && t.words[end-1].of && t.whichPlug(p).name != "spark plug") {
		return
	}
	if p.class == plugPart && t.section.class == cavityPart && !newLine && !(p.bare && t.whichPlug(p).name == "spark plug") {
		return
	}
	if p.class == plugPart && p.bare && t.section.name != "" && t.qualify(p).name != "spark plug" {
		return // the plug of what is spoken of
	}
	if p.class == coverPart && strings.HasPrefix(p.name, t.section.name+" ") && (t.wordBehind(end) == "goes" || t.wordBehind(end) == "comes" || t.wordBehind(end) == "on" || t.wordBehind(end) == "off") {
		return // the blade is spoken of, and its cover only goes on
	}
	p = t.qualify(p)
	if of, ok := t.ofWhat(end); ok && t.words[end].lower == "of" && p.bare {
		p = p.of(of)
	}
	t.comeTo(p, at)
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

// comeTo makes a part what the notes are about from a word on.
func (t *taker) comeTo(p part, at int) {
	t.section, t.begun = p, at
	t.sections = append(t.sections, section{p, at})
}

// comeToCavity makes it what holds a fluid.
func (t *taker) comeToCavity(name string, at int) {
	t.cavity = name
	t.comeTo(cavityOf(name), at)
	t.topic, t.fastener = t.section, part{}
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
		if stopWords.has(w.lower) || actionWords()[w.lower] || !lettersOnly(w.lower) || vague.has(w.stem) {
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
