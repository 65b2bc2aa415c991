package draft

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/quantity"
)

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
	if !endsHere(t.words, it.to) && t.words[it.to].lower == "new" && endsHere(t.words, it.to+1) && a.unit.symbol == "" && a.shape == exact && !t.words[it.from].times && wordBefore(t.words, it.from) != "x" {
		return // they're thirty-eight new
	}
	if a.shape == atMost && (t.near(scraps, it.from, it.to, 4, 7) || wordBefore(t.words, it.from) == "new") && length(underCues, t.words, it.from) > 0 {
		a.shape = atLeast // bin them under 8
	}
	if said := t.words[max(it.to-1, 0)].lower; a.unit.symbol == "mm" && (said == "mil" || said == "mill" || said == "mils") && t.ofFluid(it, a) {
		a.unit = unit{symbol: "mL", kind: quantity.Volume} // five hundred mil of oil
	}
	if said := t.words[max(it.to-1, 0)].lower; a.unit.symbol == "mm" && said != "mm" && t.mixed(number, it) {
		a.unit = unit{symbol: "mL", kind: quantity.Volume} // fifty mil to five litres
	}
	a = t.borrow(number, a)
	it.amount = a
	if t.countThing(number, it, a) || t.acrossFlats(it, a) {
		return
	}
	if a.unit.kind == quantity.Power || a.unit.kind == quantity.Voltage && t.near(supplied, it.from, it.to, 0, 3) {
		return // what the machine is rated
	}
	if next := number + 1; next < len(t.items) && a.unit.kind != quantity.None && a.unit.kind != quantity.Length && t.items[next].from == it.to && !endsHere(t.words, it.to) && t.items[next].kind == partItem && t.items[next].part.class == machinePart && it.from > 0 && determiners.has(t.words[it.from-1].lower) && t.words[it.from].stop == 0 {
		return // the 27 kilo washer extractor
	}
	switch a.unit.kind {
	case quantity.Torque:
		t.torqueThing(number, it, a)
	case quantity.Time, quantity.Calendar, quantity.Distance:
		t.timeThing(it, a)
	case quantity.Volume:
		if t.words[it.from].sentence == 0 && !t.spoken() && t.cavity == "" {
			return // what the machine of the title holds
		}
		about := t.cavity
		if number > 0 && t.items[number-1].kind == toolItem && t.items[number-1].tool.kind == "container" && t.near(cues("hold|holds|takes"), it.from, it.to, 2, 0) && it.from-t.items[number-1].to < 4 {
			about = t.items[number-1].tool.name // a tub that holds three gallons
		}
		if number+1 < len(t.items) && t.items[number+1].kind == toolItem && t.items[number+1].from == it.to && t.items[number+1].tool.kind == "container" && t.words[it.to].stop == 0 {
			about = t.items[number+1].tool.name // a five litre pan
		}
		t.add(Amount, a.unbound().text(), about, it.from, it.to)
		if t.section.class == cavityPart && t.cavity != "" && about == t.cavity && t.live(it.from, it.to) && !t.didSince("fill", t.begun) && !t.near(drainCues, it.from, it.to, 9, 3) {
			t.actOn("fill", t.cavity, cavityOf(t.cavity), it.from, it.to, true)
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
		if x, _ := a.low.value.Float64(); t.words[it.from].sentence == 0 && !t.spoken() && (a.unit.symbol == "t" || a.unit.symbol == "kg" && x >= 100) {
			return // what the machine of the title is made for
		}
		for i := it.to; i < min(it.to+3, len(t.words)) && t.words[i].stop == 0; i++ {
			if t.words[i].lower == "one" { // the half tonne one, the two tonne electric one
				return
			}
		}
		t.add(Amount, a.text(), t.subject(), it.from, it.to)
		for _, p := range []part{t.last, t.section} {
			if a.unit.symbol == "g" && (p.class == greasePart && p.head != "grease fitting" || p.name == t.section.name && t.last.head == "grease fitting" && p.class != machinePart) && t.live(it.from, it.to) {
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
		case (a.unit.symbol == "m" || a.unit.symbol == "ft") && !(!endsHere(t.words, it.to) && heights.has(t.words[it.to].lower)):
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
	case quantity.Cycles:
		if a.low.int() >= 100 || t.near(everyCues, it.from, it.to, 3, 0) {
			t.add(Interval, a.unbound().text(), t.intervalOf(it.from), it.from, it.to)
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
			from := max(clauseStart(t.words, it.from), it.from-4)
			if p.class == filterPart && !t.didSince("replace", t.begun) && !t.didSince("clean", t.begun) {
				t.actAcross("replace", p, from, it.to) // what is turned on by hand is a new one
			}
			t.actAcross("tighten", p, from, it.to)
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
	if !t.near(givings, it.from, it.to, 9, 5) && !slices.ContainsFunc(t.words[it.from:it.to], func(w word) bool { return w.lower == "slack" || w.lower == "play" }) {
		return
	}
	for _, p := range []part{t.topic, t.section, t.last} {
		for _, what := range []string{"belt", "chain", "cable", "rope"} {
			if strings.HasSuffix(p.head, what) && (p.class == movingPart || (what == "cable" || what == "rope") && t.near(cues("deflect|deflection|sag|mid span"), it.from, it.to, 9, 5)) {
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

// unbound is an amount without its bound.
func (a amount) unbound() amount {
	a.shape = exact
	return a
}

// mixed reports whether a figure is told as a part of a volume behind it.
func (t *taker) mixed(number int, it *item) bool {
	if number+1 >= len(t.items) || endsHere(t.words, it.to) || t.words[it.to].lower != "to" && t.words[it.to].lower != "per" && t.words[it.to].lower != "in" {
		return false
	}
	next := t.items[number+1]
	return next.kind == amountItem && next.from-it.to <= 2 && next.amount.unit.kind == quantity.Volume
}

// heights are words behind a length that tell where it is measured.
var heights = set("up high down off above below apart deep clear long wide away")

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
	alone := (it.from == 0 || t.words[it.from].stop == '.' || t.words[it.from-1].lower == "so" && t.words[it.from-1].stop == '.') && endsHere(t.words, it.to)
	before := ""
	if it.from > 0 {
		before = t.words[it.from-1].lower
	}
	f := t.fastener
	switch {
	case a.low.whole && a.shape == exact && a.low.int() >= 3 && a.low.int() <= 75 && t.sizesTool(number, it):
		t.add(Size, size(), t.subject(), it.from, it.to) // spanners 19 and 30
	case a.shape == exact && before == "new" && t.words[it.from].stop == 0 && endsHere(t.words, it.to): // (new 9)
	case a.low.whole && before == "size" && a.low.int() >= 4 && a.low.int() <= 75 && endsHere(t.words, it.to):
		t.add(Size, size(), t.subject(), it.from, it.to) // two bolts, size thirteen
	case a.low.whole && a.shape == exact && before == "is" && t.words[it.from-1].raw == "" && endsHere(t.words, it.to) && t.inSentence(Count, it) && a.low.int() > 1:
		t.add(Count, a.text(), t.subject(), it.from-1, it.to) // 8 blocks / carriage = 16
	case f.name != "" && a.low.whole && a.shape == exact && a.low.int() > 60 && a.low.int() < 900 && endsHere(t.words, it.to) && t.torqueAlone(it, f):
		t.torqueOpen(a, f, it) // wheel nuts, hundred and ten; jam nut 85
	case a.low.fraction && !endsHere(t.words, it.to) && periodic()[t.words[it.to].lower] != "": // half-yearly
	case a.low.fraction && t.ofThings(it, a) && (articles.has(t.words[it.to].lower) || t.words[it.to].lower == "of" || t.words[it.to].lower == "way"): // half the width
	case before == "number": // number five
	case a.low.whole && a.low.int() > 1 && a.low.int() < 40 && number > 0 && t.items[number-1].kind == partItem && t.items[number-1].part.many && t.items[number-1].to == it.from && (t.words[it.from].stop == 0 || t.words[it.from].stop == ',' && a.low.int() <= 12) && endsHere(t.words, it.to) && !t.words[it.from-1].of && t.startsSentence(t.items[number-1].from):
		t.add(Count, a.text(), t.subject(), t.items[number-1].from, it.to) // anodes 3
	case length(taper, t.words, it.to) > 0 && a.low.whole:
		t.add(Size, "Morse taper "+a.text(), t.subject(), it.from, it.to+1)
	case len(before) == 1 && before != "a" && before != "i" && next != nil && next.kind == partItem && next.part.class == movingPart || before == "a" && next != nil && next.kind == partItem && next.part.class == movingPart && a.low.int() > 9: // an A 47 vee belt
	case a.low.whole && before == "a" && it.from > 1 && t.words[it.from-2].lower == "it" && t.words[it.from-2].of && a.low.int() >= 5 && a.low.int() <= 60 && (t.last.class == fastener || t.last.class == plugPart) && endsHere(t.words, it.to):
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
	case a.low.fraction && a.shape == exact && (before == "a" || before == "your") && (endsHere(t.words, it.to) || t.words[it.to].lower == "and") && !t.near(rangeCues, it.from, it.to, 5, 1):
		t.add(Size, size(), t.subject(), it.from, it.to) // a nine sixteenths, a three quarter and …
	case a.low.fraction && t.keyed(it.to):
		t.add(Size, size(), t.subject(), it.from, it.to)
		t.keyTool(it.to, it)
	case (t.near(everyCues, it.from, it.to, 1, 0) || t.near(firstCues, it.from, it.to, 4, 0) && (before == "first" || before == "after" || before == "at")) && a.low.whole && !t.ofThings(it, a):
		t.add(Interval, a.unbound().text()+" h", t.intervalOf(it.from), it.from, it.to)
	case a.low.whole && a.low.int() > 1 && it.to < len(t.words) && t.words[it.to].lower == "times" && t.words[it.to].stop == 0:
		t.add(Count, a.text(), "", it.from, it.to+1)
	case a.low.whole && number > 0 && t.items[number-1].kind == amountItem && t.items[number-1].amount.unit.kind == quantity.Time && !endsHere(t.words, it.to) && (t.words[it.to].lower == "if" || t.words[it.to].lower == "when" || t.words[it.to].lower == "unless"): // two hours, three if …
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
	case a.low.whole && a.low.int() > 1 && !endsHere(t.words, it.to) && length(countCues, t.words, it.to) > 0 && before != "number":
		t.add(Count, a.text(), t.subject(), it.from, it.to+length(countCues, t.words, it.to))
	case a.low.int() == 1 && !endsHere(t.words, it.to) && length(pairCues, t.words, it.to) > 0:
		t.add(Count, "2", t.subject(), it.from, it.to+length(pairCues, t.words, it.to))
	case a.low.whole && a.low.int() > 1 && a.low.int() < 60 && a.shape == exact && before == "there" && t.words[it.from-1].of && (next == nil || next.kind == threadItem):
		t.add(Count, a.text(), t.subject(), it.from, it.to) // there's four
	case a.low.whole && a.low.int() > 1 && (length(countBefore, t.words, max(it.from-1, 0)) > 0 || it.from > 1 && length(countBefore, t.words, it.from-2) > 1) && endsHere(t.words, it.to):
		t.add(Count, a.text(), t.subject(), it.from, it.to)
	case a.low.fraction && number > 0 && t.items[number-1].kind == partItem && it.from-t.items[number-1].to <= 1 && t.words[it.from].stop == 0 && endsHere(t.words, it.to) && (t.last.class == fastener || t.last.class == plugPart || t.last.class == sealPart || t.last.class == greasePart):
		t.add(Size, size(), t.last.name, it.from, it.to) // cotter pin 1/8
	case f.name != "" && a.shape != atMost && a.low.whole && it.from > 0 && t.words[it.from].stop == ',' && endsHere(t.words, it.to) && t.inSentence(Size, it) && (a.ranged() || a.low.int() > 32) && t.words[f.from].sentence == t.words[it.from].sentence:
		a.shape = exact
		t.torqueOpen(a, f, it) // five eighths eleven, a hundred and ten
	case f.name != "" && a.shape != atMost && a.low.whole && (a.low.int() >= 4 && alone || t.near(torqueCues, it.from, it.to, 4, 1) && !t.near(rangeCues, it.from, it.to, 3, 0)) && !(it.to < len(t.words) && t.words[it.to].of):
		a.shape = exact
		t.torqueOpen(a, f, it)
	case a.low.int() >= 100 && t.speedBefore(it):
		t.add(Range, a.text(), t.subject(), it.from, it.to)
	case t.near(rangeCues, it.from, it.to, 6, 3) || a.shape == atMost || a.shape == atLeast || a.low.decimals != "" && t.near(rangeCues, it.from, it.to, 14, 4) || length(outTo, t.words, max(a.figures-3, 0)) > 0:
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
	if endsHere(t.words, it.to) {
		return false
	}
	w := t.words[it.to].lower
	if a.low.whole && t.words[it.to].stem != w && it.to+1 < len(t.words) && t.words[it.to+1].lower == "of" {
		return true // two strips of paper
	}
	if a.low.fraction && (articles.has(w) || w == "of" || w == "its" || w == "way") {
		return true
	}
	return lettersOnly(w) && t.words[it.to].stem != w && !stopWords.has(w) && !finite.has(w) && !adverbs.has(w) && !actionWords()[w] && !breaksAt(t.words, it.to)
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

var (
	forceCues = cues("ought to move|should move|to move it|moves it|to deflect|deflects it|pull with|push with|press with|scale|pounds of force|kilos of force|pounds of push|pounds of pull")
	fineness  = cues("filter|separator|element|strainer|screen|mesh")
	noMore    = cues("no more than that|not more than that|no longer than that|no longer|that's the limit")
	scraps    = cues("swap|swap both|binned|new ones|new one|no good|past it|finished|worn out|it's out|scrapped|done|changed|replaced|renewed|bin|scrap|replace|renew|change|throw|chuck|reject")
	underCues = cues("under|below|less than|anything under")
	tyreCues  = cues("tyre|tire")
	rangeCues = cues("full throttle|wide open|wot|gap|clearance|play|float|move|moves|give|slack|backlash|run out|runout|deflect|deflection|sag|hang|wants to be|has to be|should be|pressure|temperature|speed|revs|max|under|over|worn|wear|thick|thickness|down to|push|press|depth|travel")
	countCues = cues("per|all round|tot|total|all told|sets|apiece|per set|of 'em|of them|of those|of 'em|of these|each|a side|per side|in all|in total|to a|to each|on each|at the back|at the front|on the front|on the back|each corner|broken|bank|gone|missing|altogether")
)
