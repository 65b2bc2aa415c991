package draft

import (
	"slices"
	"strings"
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

	topic    part // what is spoken of: the last thing that is no fastener
	fastener part // the last fastener
	last     part
	cavity   string
	fluidOf  fluid
	torque   string
	job      string // the interval of the whole job
	renewed  map[string]bool
	parts    map[string]bool
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
	words := split(notes)
	t := &taker{notes: notes, words: words, items: scan(words), standings: stand(words), renewed: map[string]bool{}, parts: map[string]bool{}}
	slips(words, t.items, t.standings)
	t.walk()
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
	for _, one := range t.out {
		if one.Kind == kind && one.Value == value && t.words[from].start < one.End && one.Start < t.words[to-1].end {
			return
		}
	}
	t.out = append(t.out, Taken{Kind: kind, Value: value, About: about, Start: t.words[from].start, End: t.words[to-1].end, Line: t.words[from].line, sentence: t.words[from].sentence})
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
		for next < len(t.items) && t.items[next].from <= at {
			it := &t.items[next]
			t.thing(next, it)
			next++
		}
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
		t.add(Size, it.text, t.subject(), it.from, it.to)
	case classItem:
		t.add(Size, it.text, t.subject(), it.from, it.to)
	case amountItem:
		if !it.used {
			t.amountThing(number, it)
		}
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
	place := it.from > 0 && t.placed(it.from)
	p = t.qualify(p)
	it.part = p
	if t.standings[it.from] == denied || t.standings[it.from] == slip {
		return
	}
	switch p.class {
	case fastener, plugPart, sealPart:
		if p.class != sealPart {
			t.fastener = p
		}
	case machinePart, placePart:
	default:
		if !place {
			t.topic = p
			t.fastener = part{}
		}
	}
	if p.class == cavityPart && !place {
		t.cavity = p.name
	}
	if !place {
		t.last = p
	}
	if !place && !t.parts[p.name] && p.class != machinePart && p.class != placePart {
		t.add(Part, p.name, t.topic.name, it.from, it.to)
		t.parts[p.name] = true
	}
	t.renewal(it, p)
	t.particle(it, p)
	t.sides(it, p)
}

// placed reports whether words before a name say that it is a place: behind the shroud.
func (t *taker) placed(at int) bool {
	for i := at - 1; i >= 0 && i >= at-3 && t.words[i+1].stop == 0; i-- {
		w := t.words[i].lower
		if places[w] {
			return true
		}
		if !articles[w] && w != "of" {
			return false
		}
	}
	return false
}

// qualify says of a bare bolt or plug which one it is, by what is spoken of.
func (t *taker) qualify(p part) part {
	if !p.bare || t.topic.name == "" {
		return p
	}
	w := t.words[p.from]
	switch p.class {
	case fastener:
		// "screws on the cover", "bolts of the lid"
		if of, ok := t.ofWhat(p.to); ok {
			p.name = of.name + " " + p.head
		} else {
			p.name = t.topic.name + " " + p.head
		}
	case plugPart:
		if strings.HasPrefix(t.topic.name, "spark plug") {
			p.name, p.class = "spark plug", plainPart
		} else if t.fastener.class == plugPart && w.sentence-t.words[t.fastener.from].sentence < 6 {
			p.name = t.fastener.name
		}
	case springPart:
		p.name = t.topic.name + " " + p.head
	}
	return p
}

// ofWhat reads what a part belongs to behind it: the screws ON THE COVER.
func (t *taker) ofWhat(at int) (part, bool) {
	if at+1 >= len(t.words) || t.words[at].stop != 0 || t.words[at].lower != "of" && t.words[at].lower != "on" && t.words[at].lower != "in" {
		return part{}, false
	}
	next := at + 1
	for next < len(t.words) && next < at+3 && articles[t.words[next].lower] {
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
	if it.from > 0 && t.words[it.from].stop == 0 && t.words[it.from-1].lower == "new" && (it.from < 2 || !oftenNew[t.words[it.from-2].lower]) {
		t.act("replace", p, it.from-1, it.to, false)
	}
}

var oftenNew = set("for from like a the")

// particle takes what is said of a part by a word behind it: cover off, plug back in.
func (t *taker) particle(it *item, p part) {
	at, back := it.to, false
	for at < len(t.words) && at < it.to+3 && t.words[at].stop == 0 {
		w := t.words[at].lower
		if goings[w] {
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
	if at >= len(t.words) || t.words[at].stop != 0 && !(back && at == it.to+1) {
		return
	}
	w := t.words[at].lower
	if t.words[at].stop != 0 {
		w = ""
	}
	deed := ""
	switch {
	case w == "off" || w == "out" || w == "away":
		deed = "off?"
	case w == "on" || w == "in" || w == "together" || back:
		deed = "on?"
	case w == "shut" || w == "closed":
		deed = "close"
	case w == "open":
		deed = "open"
	case w == "down":
		deed = "lower"
	case w == "up" && p.class == coverPart:
		deed = "off?"
	}
	if deed == "" {
		return
	}
	if !back && (w == "on" || w == "in" || w == "out" || w == "off") && at+1 < len(t.words) && t.words[at+1].stop == 0 && (articles[t.words[at+1].lower] || numeric(t.words[at+1].lower)) && p.class != linePart && p.class != energyPart {
		return // "the spring on it"
	}
	if deed == "lower" && p.class != raisedPart {
		return
	}
	if w == "" {
		at--
	}
	if verb := settle(deed, p.class); verb != "" {
		t.act(verb, p, it.from, at+1, false)
	}
}

var goings = set("comes come goes go is are going stays gets off-hand")

// settle gives the language's verb of a deed, by what it is done to.
func settle(deed string, class class) string {
	switch deed {
	case "off?":
		switch class {
		case linePart, springPart:
			return "disconnect"
		case energyPart:
			return "isolate"
		case valvePart:
			return "close"
		case raisedPart, machinePart, cavityPart:
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
		case raisedPart, machinePart, cavityPart:
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
	case "change?":
		if class == cavityPart {
			return ""
		}
		return "replace"
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
	if it.from > 0 && t.words[it.from].stop == 0 && (t.words[it.from-1].lower == "both") {
		t.add(Count, "2", p.name, it.from-1, it.to)
	}
}

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
	t.actOn(verb, name, p, from, to, implied)
}

func (t *taker) actOn(verb, object string, p part, from, to int, implied bool) {
	for _, one := range t.deeds {
		if one.verb == verb && one.object == object && t.words[from].sentence-one.sentence <= 0 {
			return
		}
	}
	t.add(Action, strings.TrimSpace(verb+" "+object), p.name, from, to)
	t.deeds = append(t.deeds, deed{verb, object, p, from, to, t.words[from].sentence, implied})
}

func plural(name string) string {
	switch {
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
	if it.from > 0 && places[t.words[it.from-1].lower] && row.kind != "container" {
		return
	}
	t.add(Tool, row.name, t.subject(), it.from, it.to)
}

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
}

// near reports whether a cue stands in the same sentence close before or behind some words.
func (t *taker) near(cue phrases[bool], from, to, before, behind int) bool {
	sentence := t.words[from].sentence
	for i := max(from-before, 0); i < min(to+behind, len(t.words)); i++ {
		if t.words[i].sentence == sentence && (i < from || i >= to) && length(cue, t.words, i) > 0 {
			return true
		}
	}
	return false
}

// amountThing takes a figure for what it is.
func (t *taker) amountThing(number int, it *item) {
	a := it.amount
	switch a.unit.kind {
	case quantity.Torque:
		t.torqueThing(it, a)
	case quantity.Time, quantity.Calendar, quantity.Distance:
		t.timeThing(it, a)
	case quantity.Volume:
		t.add(Amount, a.text(), t.cavity, it.from, it.to)
		t.fillBy(it)
	case quantity.Mass:
		t.add(Amount, a.text(), t.subject(), it.from, it.to)
	case quantity.Count:
		t.add(Amount, a.text(), t.topic.name, it.from, it.to)
		if a.unit.symbol == "strokes" {
			t.add(Tool, "grease gun", t.topic.name, it.from, it.to)
		}
	case quantity.Length:
		if t.isSize(number, it, a) {
			t.add(Size, a.text(), t.subject(), it.from, it.to)
		} else {
			t.add(Range, a.text(), t.subject(), it.from, it.to)
		}
	case quantity.None:
		t.bareThing(number, it, a)
	default:
		t.add(Range, a.text(), t.subject(), it.from, it.to)
	}
}

func (t *taker) torqueThing(it *item, a amount) {
	a.shape = exact
	if t.next(it, toolItem, 2) { // the twenty to a hundred newton metre one, the torque wrench
		return
	}
	t.torque = a.text()
	t.add(Torque, a.text(), t.subject(), it.from, it.to)
	if f := t.tightened(); f.name != "" {
		t.act("tighten", f, it.from, it.to, true)
	}
}

func (t *taker) next(it *item, kind itemKind, within int) bool {
	for _, one := range t.items {
		if one.kind == kind && one.from >= it.to && one.from-it.to < within && t.words[one.from].stop == 0 {
			return true
		}
	}
	return false
}

// tightened is what a torque holds for.
func (t *taker) tightened() part {
	if t.fastener.name != "" {
		return t.fastener
	}
	return t.topic
}

// isSize reports whether a length is a size of a tool or a fastener.
func (t *taker) isSize(number int, it *item, a amount) bool {
	if a.ranged() || a.shape == atMost || a.shape == atLeast {
		return false
	}
	if number+1 < len(t.items) {
		next := t.items[number+1]
		if next.from-it.to <= 2 && (next.from == it.to || t.words[next.from].stop == 0) && (next.kind == toolItem || next.kind == partItem && (next.part.class == fastener || next.part.class == plugPart || next.part.class == sealPart)) {
			return true
		}
	}
	return t.near(sizeCues, it.from, it.to, 3, 4) && !t.near(rangeCues, it.from, it.to, 4, 2)
}

// timeThing takes a time as an interval, as a limit or as a wait.
func (t *taker) timeThing(it *item, a amount) {
	switch {
	case t.near(everyCues, it.from, it.to, 3, 0) || t.near(firstCues, it.from, it.to, 4, 3):
		a.shape = exact
		t.add(Interval, a.text(), t.topic.name, it.from, it.to)
	case a.unit.kind != quantity.Time:
	case a.unit.symbol == "h" && t.inSentence(Interval, it):
		t.add(Interval, a.text(), t.topic.name, it.from, it.to)
	case a.unit.symbol == "s" && !t.near(waitCues, it.from, it.to, 5, 0):
		if a.shape == exact && it.from > 0 && t.words[it.from-1].lower == "in" {
			a.shape = atMost
		}
		if a.shape == about {
			a.shape = exact
		}
		t.add(Range, a.text(), t.subject(), it.from, it.to)
	default:
		t.add(Wait, a.text(), t.topic.name, it.from, it.to)
	}
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
	switch {
	case next != nil && next.kind == toolItem && (a.low.fraction || a.low.int() >= 3 && sizeTool(next.tool)):
		t.add(Size, size(), t.subject(), it.from, next.to)
	case next != nil && next.kind == toolItem && a.low.whole && a.low.int() > 1:
		t.add(Count, a.text(), next.tool.name, it.from, next.to)
	case a.low.fraction && (t.near(sizeCues, it.from, it.to, 2, 3) || next != nil && next.kind == partItem && (next.part.class == fastener || next.part.class == plugPart)):
		t.add(Size, size(), t.subject(), it.from, it.to)
	case t.near(everyCues, it.from, it.to, 1, 0) && a.low.whole:
		t.add(Interval, a.text()+" h", t.topic.name, it.from, it.to)
	case a.low.whole && next != nil && next.kind == partItem && a.low.int() > 1:
		t.add(Count, a.text(), next.part.name, it.from, next.to)
	case a.low.whole && a.low.int() > 1 && length(countCues, t.words, min(it.to, len(t.words)-1)) > 0:
		t.add(Count, a.text(), t.subject(), it.from, it.to+length(countCues, t.words, it.to))
	case t.near(torqueCues, it.from, it.to, 6, 3) && (t.fastener.name != ""):
		a.shape = exact
		t.add(Torque, a.text(), t.fastener.name, it.from, it.to)
		t.act("tighten", t.fastener, it.from, it.to, true)
	case t.near(rangeCues, it.from, it.to, 6, 3):
		t.add(Range, a.text(), t.subject(), it.from, it.to)
	}
}

func sizeTool(row toolRow) bool {
	switch row.kind {
	case "socket", "wrench", "hex-key", "hex-bit":
		return true
	}
	return false
}

var (
	sizeCues   = cues("spanner|wrench|socket|key|hex|head|across flats|a f|af|square|allen|thread|nut|bolt|wide|diameter|on the outside|open end|what you need|width|hexagon")
	rangeCues  = cues("gap|clearance|play|float|slack|backlash|run out|runout|deflect|deflection|sag|hang|wants to be|has to be|should be|pressure|temperature|speed|revs|max|under|over|worn|wear|thick|thickness|down to|push|press|depth|travel")
	everyCues  = cues("every|each|once a|once every|per|any")
	firstCues  = cues("first|from new|new engine|after that every|and then every")
	waitCues   = cues("wait|leave|let|hold|stand|settle|give|run|count")
	countCues  = cues("of them|of those|of 'em|of these|each|a side|per side|in all|in total|to a|to each|on each|at the|of the|in one|up|on the|per|together")
	torqueCues = cues("torque|tighten|torqued|tightened|crosswise|get|gets|nip|do them|going back|foot|foot pounds|take|takes")
)

func (t *taker) fillBy(it *item) {}

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
