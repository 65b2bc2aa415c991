package draft

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"benchleaf/compiler/internal/quantity"
)

// What a question asks for.
const (
	askUnit      = "unit"
	askTorque    = "torque"
	askAmount    = "amount"
	askGrade     = "grade"
	askContainer = "container"
	askCaution   = "caution"
	askBack      = "back"
	askThickener = "thickener"
	askStrength  = "strength"
	askCountry   = "imperial"
	askMany      = "many"
	askLifted    = "lifted"
	askUsed      = "used"
	askLong      = "long"
	askWrench    = "wrench"
	askEnergy    = "energy"
	askOwner     = "owner"
	askConflict  = "conflict"
	askLanguage  = "language"
	askRun       = "run"
	askKind      = "kind"
	askFigure    = "figure"
)

// questions asks for what the notes leave open.
func (t *taker) questions() {
	t.unitQuestions()
	t.conflictQuestions()
	t.torqueQuestions()
	t.fluidQuestions()
	t.springQuestions()
	t.backQuestions()
	t.toolQuestions()
	t.otherQuestions()
	t.whats()
}

// wordsOf gives the words at bytes of the notes.
func (t *taker) wordsOf(start, end int) (from, to int) {
	from, _ = slices.BinarySearchFunc(t.words, start, func(w word, at int) int { return w.start - at })
	to = from
	for to < len(t.words) && t.words[to].start < end {
		to++
	}
	return from, max(to, from+1)
}

func (t *taker) askAt(missing, about, question string, one Taken) {
	from, to := t.wordsOf(one.Start, one.End)
	t.ask(missing, about, question, from, min(to, len(t.words)))
}

func (t *taker) unitQuestions() {
	asked := map[string]bool{}
	for _, one := range slices.Clone(t.out) {
		switch one.Kind {
		case Torque:
			if !strings.Contains(one.Value, " ") || strings.HasSuffix(one.Value, " to "+lastWord(one.Value)) {
				t.askAt(askUnit, one.About, fmt.Sprintf("You said %s for the %s: of what, lbf·in, lbf·ft or N·m?", one.Value, thing(one.About)), one)
			}
		case Range:
			figure := lastWord(one.Value)
			if _, ok := new(big.Rat).SetString(figure); ok && !strings.Contains(figure, "/") && !asked[one.About] {
				asked[one.About] = true
				t.askAt(askUnit, one.About, fmt.Sprintf("You said %s for the %s: in what unit?", one.Value, thing(one.About)), one)
			}
		case Amount:
			switch lastWord(one.Value) {
			case "gal", "qt", "pt", "oz":
				if !strings.Contains(one.Value, "US") && !strings.Contains(one.Value, "imp") {
					t.askAt(askCountry, one.About, fmt.Sprintf("%s: US or imperial?", capital(one.Value)), one)
				}
			}
		case Interval:
			if strings.Contains(one.Value, "half-term") {
				t.askAt(askLong, one.About, "How long is a half-term, in weeks?", one)
			}
		}
	}
}

// conflicting gives the figures of a kind that are told of a thing and differ, each once; none
// where they agree. The same in other units is the same.
func (t *taker) conflicting(kind, called string) []string {
	var out []string
	var first quantity.Amount
	differ := false
	told := t.about(kind, called)
	if kind == Torque {
		told = t.torquesOf(called)
	}
	for _, one := range told {
		a, problems := quantity.Parse(one.Value, quantity.Any)
		if len(problems) > 0 || kind == Amount && (countedAmount(one.Value) || a.Dimension != quantity.Volume) || slices.Contains(out, one.Value) {
			continue
		}
		out = append(out, one.Value)
		if len(out) == 1 {
			first = a
			continue
		}
		differ = differ || !sameSize(first, a)
	}
	if !differ {
		return nil
	}
	return out
}

// torquesOf gives the torques of a part, of those that a sentence tells one above another only the
// last: the part is tightened in steps.
func (t *taker) torquesOf(called string) []Taken {
	var out []Taken
	for _, one := range t.about(Torque, called) {
		if last := len(out) - 1; last >= 0 && out[last].sentence == one.sentence && out[last].Start < one.Start {
			before, faults := quantity.Parse(out[last].Value, quantity.Torque)
			a, problems := quantity.Parse(one.Value, quantity.Torque)
			if x, ok := before.Max(); ok && len(faults)+len(problems) == 0 {
				if y, ok := a.Min(); ok && y.Cmp(x) > 0 && !sameSize(before, a) {
					out[last] = one
					continue
				}
			}
		}
		out = append(out, one)
	}
	return out
}

// sameSize reports whether two amounts of a dimension differ by no more than what units are rounded to.
func sameSize(a, b quantity.Amount) bool {
	for _, end := range []func(quantity.Amount) (*big.Rat, bool){quantity.Amount.Min, quantity.Amount.Max} {
		x, one := end(a)
		y, other := end(b)
		if one != other {
			return false
		}
		if !one {
			continue
		}
		apart := new(big.Rat).Sub(x, y)
		if apart.Abs(apart).Cmp(new(big.Rat).Mul(new(big.Rat).Abs(x), big.NewRat(3, 100))) > 0 {
			return false
		}
	}
	return true
}

// conflictQuestions asks which figure holds where a thing has several.
func (t *taker) conflictQuestions() {
	asked := map[string]bool{}
	for _, one := range slices.Clone(t.out) {
		if one.Kind != Torque && one.Kind != Amount || one.About == "" || asked[one.Kind+one.About] || toolNames()[one.About].kind != "" {
			continue
		}
		asked[one.Kind+one.About] = true
		said := t.conflicting(one.Kind, one.About)
		if len(said) < 2 {
			continue
		}
		list := strings.Join(said[:len(said)-1], ", ") + " and " + said[len(said)-1]
		if one.Kind == Torque {
			t.askAt(askConflict, one.About, fmt.Sprintf("You said %s for the %s: which holds, or is it tightened in steps?", list, one.About), one)
		} else {
			t.askAt(askConflict, one.About, fmt.Sprintf("You said %s for the %s: which of them does it take?", list, one.About), one)
		}
	}
}

// thousandOrPoint asks for a figure that may be a thousand or a decimal, and takes none.
func (t *taker) thousandOrPoint(it *item) bool {
	for i := it.from; i < it.to; i++ {
		if w := t.words[i]; w.either && t.live(it.from, it.to) && it.amount.unit.kind != quantity.RotationalSpeed {
			digits := strings.NewReplacer(",", "", ".", "").Replace(w.raw)
			t.ask(askFigure, w.raw, fmt.Sprintf("You wrote %s, and other figures with a comma for the point: is it %s or %s?", w.raw, digits, strings.Replace(w.raw, ",", ".", 1)), it.from, it.to)
			return true
		}
	}
	return false
}

func lastWord(text string) string {
	return text[strings.LastIndexByte(text, ' ')+1:]
}

func thing(called string) string {
	if called == "" {
		return "part"
	}
	return called
}

// torqueQuestions asks how tight what goes back or is tightened is meant to be.
func (t *taker) torqueQuestions() {
	known := map[string]bool{}
	for _, one := range t.out {
		if one.Kind == Torque {
			known[one.About] = true
		}
	}
	asked := map[string]bool{}
	for _, d := range t.deeds {
		if (d.part.class == fastener || d.part.class == plugPart) && (d.verb == "refit" || d.verb == "tighten" || d.verb == "close" || d.verb == "remove") || d.part.class == coverPart && (d.verb == "refit" || d.verb == "close") && t.screwed(d.part.name) {
			name := d.part.name
			if known[name] || asked[name] || t.byHand(name, d) || d.verb == "remove" && !t.neverBack(d) {
				continue
			}
			asked[name] = true
			t.ask(askTorque, name, fmt.Sprintf("How tight does the %s go: to what torque, or by hand only?", name), d.from, min(d.to, len(t.words)))
		}
	}
	for at := range t.words {
		n := length(unknown, t.words, at)
		if n == 0 || t.standings[at] == story {
			continue
		}
		if t.near(cues("torque|what that plug gets|gets|how tight|tight"), at, at+n, 2, 7) && t.lastFastener(at) != "" {
			name := t.lastFastener(at)
			if !asked[name] {
				asked[name] = true
				t.ask(askTorque, name, fmt.Sprintf("How tight does the %s go? You do not know; the manual may.", name), at, min(at+n+2, len(t.words)))
			}
		}
		if name := t.lastFastener(at); name != "" && !known[name] && !asked[name] && (t.words[at].lower == "look" || t.words[at].lower == "have") && t.didNear(at, 40) {
			asked[name] = true
			t.ask(askTorque, name, fmt.Sprintf("How tight does the %s go? You do not know; the manual may.", name), max(at-3, 0), min(at+n, len(t.words)))
		}
		if fastened := t.unknownOf(at); fastened != "" && !known[fastened] && !asked[fastened] {
			asked[fastened] = true
			t.ask(askTorque, fastened, fmt.Sprintf("How tight does the %s go? You do not know; the manual may.", fastened), t.sentenceStart(at), min(at+n, len(t.words)))
		}
		if t.near(cues("how much it holds|holds|how much|takes"), at, at+n, 2, 7) {
			t.ask(askAmount, t.sectionOf(at), fmt.Sprintf("How much goes into the %s? You do not know; the manual may.", thing(t.sectionOf(at))), at, min(at+n+3, len(t.words)))
		}
	}
	for at := range t.words { // torque - ?
		if w := t.words[at]; w.lower == "torque" && t.standings[at] == holds && t.openEnd(at) {
			t.ask(askTorque, t.lastSubject(at), fmt.Sprintf("How tight does the %s go: to what torque, or by hand only?", thing(t.lastSubject(at))), at, at+1)
		}
	}
	for _, it := range t.items { // M6 = ?
		if it.kind == threadItem && !t.spoken() && t.live(it.from, it.to) && t.openEnd(it.to-1) {
			t.ask(askTorque, t.lastFastener(it.to), fmt.Sprintf("How tight does the %s go: to what torque, or by hand only?", thing(t.lastFastener(it.to))), it.from, it.to)
		}
	}
	for _, m := range t.mentions {
		if m.class == fastener && !m.place && strings.HasPrefix(m.name, "shear ") && !known[m.name] && !asked[m.name] && !t.byHand(m.name, deed{sentence: t.words[m.from].sentence}) {
			asked[m.name] = true
			t.ask(askTorque, m.name, fmt.Sprintf("How tight does the %s go: to what torque, or by hand only?", m.name), m.from, m.to)
		}
	}
}

// openEnd reports whether a question mark and no more stands behind a word, up to the next.
func (t *taker) openEnd(at int) bool {
	end := len(t.notes)
	if at+1 < len(t.words) {
		end = t.words[at+1].start
	}
	if end < t.words[at].end { // two words of one short form
		return false
	}
	if at+1 < len(t.words) && t.words[at+1].lower == "is" && t.words[at+1].raw == "" && at+2 < len(t.words) {
		end = max(end, t.words[at+2].start) // = ?
	}
	return strings.Contains(t.notes[t.words[at].end:end], "?")
}

// lastSubject is the part named last before a word.
func (t *taker) lastSubject(at int) string {
	name := ""
	for _, m := range t.mentions {
		if m.to <= at {
			name = m.name
		}
	}
	return name
}

// unknownOf is the fastener a sentence begins with of which something is not known.
func (t *taker) unknownOf(at int) string {
	for _, m := range t.mentions {
		if m.class == fastener && t.startsSentence(m.from) && t.words[m.from].sentence == t.words[at].sentence && at > m.from {
			return m.name
		}
	}
	return ""
}

var unknown = cues("i don't have that one|don't have that one|don't have that figure|don't have the figure|have to look that up|look it up|i don't know|don't know|i've no idea|no idea|i couldn't tell you|couldn't tell you|never measured|not sure|can't remember|i forget")

func (t *taker) lastFastener(at int) string {
	for i := len(t.mentions) - 1; i >= 0; i-- {
		if m := t.mentions[i]; m.from < at+8 && (m.class == fastener || m.class == plugPart) {
			if t.words[min(at, len(t.words)-1)].sentence-t.words[m.from].sentence > 4 {
				return ""
			}
			return m.name
		}
	}
	return ""
}

// sectionOf gives the cavity that is spoken of at a word.
func (t *taker) sectionOf(at int) string {
	best := ""
	for _, s := range t.sections {
		if s.at <= at && s.class == cavityPart {
			best = s.name
		}
	}
	return best
}

// screwed reports whether a cover is held by fasteners that were counted.
func (t *taker) screwed(called string) bool {
	return slices.ContainsFunc(t.mentions, func(m mention) bool { return m.class == fastener && strings.HasPrefix(m.name, called+" ") })
}

// byHand reports whether notes say that a fastener is tightened by hand on purpose, or takes no torque.
func (t *taker) byHand(called string, d deed) bool {
	for at := range t.words {
		if s := t.words[at].sentence; s < d.sentence || s > d.sentence+2 {
			continue
		}
		if length(handTight, t.words, at) > 0 {
			return true
		}
	}
	return false
}

var handTight = cues("by hand|hand tight|finger tight|snug|no number|don't torque|don't need to torque|not torque|no torque|till it touches|until it touches")

func (t *taker) neverBack(d deed) bool {
	return !slices.ContainsFunc(t.deeds, func(o deed) bool {
		if (o.verb == "tighten" || o.verb == "replace" || o.verb == "refit") && o.from > d.from && strings.HasPrefix(o.part.name, d.part.head+" ") {
			return true // the hose: a new hose clip
		}
		if o.part.class == fastener && o.verb == "tighten" && o.from > d.from && strings.Contains(o.part.name, d.part.head) {
			return true
		}
		if o.part.class == fastener && o.verb == "tighten" && o.from > d.from && o.sentence-d.sentence < 4 && d.part.class == coverPart {
			return true
		}
		return (o.part.name == d.part.name || o.part.head == d.part.head && d.part.class == coverPart) && (o.verb == "refit" || o.verb == "connect" || o.verb == "tighten" || o.verb == "replace" || o.verb == "close") && o.from > d.from
	})
}

// fluidQuestions asks for amounts, grades, thickeners and containers.
func (t *taker) fluidQuestions() {
	for _, d := range t.deeds {
		switch d.verb {
		case "drain":
			if !t.toolNear("container", d.sentence, 1) && d.part.class == cavityPart && d.part.head != "water bowl" {
				question := "What catches the oil of the %s, and does it hold all of it?"
				if !oily(d.object) && !t.oilTold() {
					question = "What catches what comes out of the %s, and does it hold all of it?"
				}
				t.ask(askContainer, d.object, fmt.Sprintf(question, strings.TrimSuffix(d.object, " oil")), d.from, min(d.to, len(t.words)))
			}
		case "fill":
			told := slices.ContainsFunc(t.out, func(one Taken) bool { return one.Kind == Amount && one.About == d.object })
			if !told && !t.toppedUp(d) && !t.volumeNear(d.sentence, 1) && !t.asksNear(askAmount, d.sentence, 1) {
				t.ask(askAmount, d.object, fmt.Sprintf("How much goes into the %s?", d.object), d.from, min(d.to, len(t.words)))
			}
			if strings.Contains(d.object, "cool") && !t.kindNear(Fluid, d.sentence, 1) {
				t.ask(askGrade, d.object, "Which coolant, of what grade?", d.from, min(d.to, len(t.words)))
			}
		case "check":
			if d.part.class == cavityPart && !strings.HasSuffix(d.object, "level") && !t.did("fill", d.part.name) && !t.volumeNear(d.sentence, 2) && t.words[d.from].lower != "put" {
				t.ask(askAmount, d.object, fmt.Sprintf("How much goes into the %s?", d.part.name), d.from, min(d.to, len(t.words)))
			}
		}
	}
	for _, it := range t.items {
		if it.kind != fluidItem || !t.live(it.from, it.to) {
			continue
		}
		f := it.fluid
		switch {
		case strings.HasPrefix(f.grade, "NLGI") && !t.thickened(it):
			t.ask(askThickener, f.grade, "Which thickener has the grease: lithium, calcium, another? Two that do not mix do harm.", it.from, it.to)
		case f.grade == "thread-locker":
			t.ask(askStrength, f.grade, "Which strength of thread-locker, by its colour or its number?", it.from, it.to)
		}
	}
}

// toppedUp reports whether a fill only makes up what is missing, so that a mark or an eye ends it: top
// up, if it wants some, to the line.
func (t *taker) toppedUp(d deed) bool {
	for i := max(t.sentenceStart(d.from), d.from-12); i < min(d.to+10, len(t.words)); i++ {
		if t.words[i].sentence == d.sentence && length(toppings, t.words, i) > 0 {
			return true
		}
	}
	return false
}

var toppings = cues("top up|top it up|top them up|topped up|if it wants|if it needs|if needed|if it is low|if it's low|if low|if they need|if they want|to the line|to the mark|between the lines|to the level|whatever it needs")

// oilTold reports whether the notes tell of a drain plug or of an oil with its grade.
func (t *taker) oilTold() bool {
	return slices.ContainsFunc(t.mentions, func(m mention) bool { return m.name == "drain plug" }) || slices.ContainsFunc(t.items, func(it item) bool {
		return it.kind == fluidItem && it.fluid.what == gradePart && strings.HasSuffix(it.fluid.kind, "-oil") && t.live(it.from, it.to)
	})
}

// oily reports whether what is drained holds oil, and not as well water or fuel.
func oily(called string) bool {
	for _, holder := range []string{"oil", "engine", "gear", "sump", "crankcase", "hydraulic", "compressor", "differential", "axle", "chaincase", "transmission", "drive", "reducer", "hub"} {
		if strings.Contains(called, holder) {
			return true
		}
	}
	return false
}

func (t *taker) thickened(it item) bool {
	for _, other := range t.items {
		if other.kind == fluidItem && other.fluid.what == thickenerPart && other.from-it.from < 12 && it.from-other.from < 12 {
			return true
		}
	}
	return t.near(cues("flow grease"), it.from, it.to, 5, 3)
}

func (t *taker) toolNear(kind string, sentence, within int) bool {
	return slices.ContainsFunc(t.out, func(one Taken) bool {
		return one.Kind == Tool && toolNames()[one.Value].kind == kind && one.sentence-sentence <= within && sentence-one.sentence <= within
	})
}

func (t *taker) kindNear(kind string, sentence, within int) bool {
	return slices.ContainsFunc(t.out, func(one Taken) bool {
		return one.Kind == kind && one.sentence-sentence <= within && sentence-one.sentence <= within
	})
}

// volumeNear reports whether a volume or a mass is told close by.
func (t *taker) volumeNear(sentence, within int) bool {
	return slices.ContainsFunc(t.out, func(one Taken) bool {
		return one.Kind == Amount && toolNames()[one.About].kind != "container" && !strings.Contains(one.Value, "stroke") && !strings.Contains(one.Value, "drop") && one.sentence-sentence <= within && sentence-one.sentence <= within
	})
}

func (t *taker) asksNear(missing string, sentence, within int) bool {
	return slices.ContainsFunc(t.out, func(one Taken) bool {
		return one.Kind == Ask && one.Value == missing && one.sentence-sentence <= within && sentence-one.sentence <= within
	})
}

// springQuestions asks how a spring is let go where no word of care stands with it.
func (t *taker) springQuestions() {
	asked := map[string]bool{}
	for _, m := range t.mentions {
		if m.class != springPart || asked[m.name] || t.standings[m.from] != holds || t.near(careful, m.from, m.to, 8, 14) {
			continue
		}
		asked[m.name] = true
		t.ask(askCaution, m.name, fmt.Sprintf("The %s is under tension: how is it let go so that it hits nobody?", m.name), m.from, m.to)
	}
}

var careful = cues("lean on it|mind|watch|careful|hold it|stand clear|goggles|keep your|face away|let it down|let it off")

// backQuestions asks when what came off goes back.
func (t *taker) backQuestions() {
	for _, d := range t.deeds {
		off := d.verb == "remove" && (d.part.class == coverPart || d.part.class == plugPart) || d.verb == "disconnect" && d.part.class == linePart
		if !off || !t.neverBack(d) || t.asksNear(askTorque, d.sentence, 0) {
			continue
		}
		question := "The %s comes off: when does it go back on?"
		switch {
		case d.verb == "disconnect" && d.part.many:
			question = "The %s are disconnected: when are they connected again?"
		case d.verb == "disconnect":
			question = "The %s is disconnected: when is it connected again?"
		case d.part.many:
			question = "The %s come off: when do they go back on?"
		}
		t.ask(askBack, d.part.name, fmt.Sprintf(question, d.object), d.from, min(d.to, len(t.words)))
	}
}

// toolQuestions asks for what lifts, and what a tool of the list is for.
func (t *taker) toolQuestions() {
	for _, d := range t.deeds {
		if d.verb == "raise" && d.part.class == machinePart && !t.toolNear("jack", d.sentence, 2) && !t.toolNear("hoist", d.sentence, 2) {
			t.ask(askLifted, d.object, fmt.Sprintf("What is the %s lifted with, and where?", d.object), d.from, min(d.to, len(t.words)))
		}
	}
	for _, one := range slices.Clone(t.out) {
		if one.Kind != Tool || toolNames()[one.Value].kind != "gauge" || one.Value == "spring scale" && t.pulled != "" || t.measured(one.sentence) || !t.listed(one.sentence) {
			continue
		}
		t.askAt(askUsed, one.Value, fmt.Sprintf("What is the %s used for? No step takes it.", one.Value), one)
	}
	var least *big.Rat
	for _, one := range t.out {
		if one.Kind == Range && one.About == "torque wrench" {
			if a, problems := quantity.Parse(one.Value, quantity.Torque); len(problems) == 0 {
				least, _ = a.Min()
			}
		}
	}
	for _, one := range slices.Clone(t.out) {
		if least == nil || one.Kind != Torque {
			continue
		}
		if a, problems := quantity.Parse(one.Value, quantity.Torque); len(problems) == 0 {
			if value, ok := a.Max(); ok && value.Cmp(least) < 0 {
				for _, d := range t.deeds {
					if d.verb == "tighten" && d.part.name == one.About && d.sentence == one.sentence {
						one.Start = min(one.Start, t.words[d.from].start)
					}
				}
				t.askAt(askWrench, one.About, fmt.Sprintf("The torque wrench you named begins above %s: which wrench is it for the %s?", one.Value, thing(one.About)), one)
			}
		}
	}
}

// listed reports whether a sentence is a list of tools.
func (t *taker) listed(sentence int) bool {
	n := 0
	for _, one := range t.out {
		if one.Kind == Tool && one.sentence == sentence {
			n++
		}
	}
	return n >= 3 && !t.didAny(sentence)
}

func (t *taker) didAny(sentence int) bool {
	return slices.ContainsFunc(t.deeds, func(d deed) bool { return d.sentence == sentence })
}

func (t *taker) measured(sentence int) bool {
	return slices.ContainsFunc(t.deeds, func(d deed) bool {
		return (d.verb == "check" || d.verb == "measure" || d.verb == "adjust" || d.verb == "align") && d.sentence == sentence
	})
}

// otherQuestions asks how many bolts there are, and how many a few drops.
func (t *taker) otherQuestions() {
	asked := map[string]bool{}
	for _, d := range t.deeds {
		if d.verb != "tighten" || !d.part.many || d.part.class != fastener || asked[d.part.name] || t.counted(d.part.name) {
			continue
		}
		asked[d.part.name] = true
		for _, m := range t.mentions {
			if m.name == d.part.name {
				t.ask(askMany, d.part.name, fmt.Sprintf("How many %s are there?", plural(d.part.name)), m.from, max(d.to, m.to))
				break
			}
		}
	}
	for at := range t.words {
		if n := length(cues("few drops"), t.words, at); n > 0 && t.live(at, at+n) {
			t.ask(askMany, "drops", "A few drops: how many?", at, at+n)
		}
	}
}

// whats asks for a unit where the notes do: forty what?
func (t *taker) whats() {
	for _, it := range t.items {
		if it.kind == amountItem && it.amount.unit.symbol == "" && it.to < len(t.words) && t.words[it.to].lower == "what" && t.words[it.to].stop == 0 {
			t.ask(askUnit, t.lastFastener(it.from), fmt.Sprintf("You said %s: of what?", it.amount.text()), it.from, it.to+1)
		}
	}
}

func (t *taker) counted(called string) bool {
	return slices.ContainsFunc(t.out, func(one Taken) bool {
		return one.Kind == Count && (one.About == called || one.About != "" && (strings.HasSuffix(called, one.About) || strings.HasPrefix(called, one.About+" ")))
	})
}
