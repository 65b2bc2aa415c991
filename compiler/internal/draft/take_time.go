package draft

import (
	"strings"

	"benchleaf/compiler/internal/quantity"
)

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
	case t.near(everyCues, it.from, it.to, 3, 0) || t.near(firstCues, it.from, it.to, 4, 0) || length(firstCues, t.words, it.to) > 1:
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
		if n := len(t.mentions); n > 0 && (t.mentions[n-1].class == machinePart && t.words[it.from].stop == 0 || blowing.has(lastWord(t.mentions[n-1].head)) && t.words[it.from].stop != '.' && t.startsSentence(t.mentions[n-1].from)) && t.mentions[n-1].to == it.from && t.live(it.from, it.to) {
			t.actOn("run", t.mentions[n-1].name, t.mentions[n-1].part, t.mentions[n-1].from, it.to, true) // blower 4 min
			return
		}
		if t.near(runsOn, it.from, it.to, 7, 3) {
			return // it stands still by itself
		}
		if (t.near(runCues, it.from, it.to, 6, 0) || t.near(runBehind, it.from, it.to, 0, 4)) && !t.near(standCues, it.from, it.to, 5, 0) && (!t.near(coolCues, it.from, it.to, 5, 6) || t.near(letRun, it.from, it.to, 7, 0)) {
			if t.near(cues("give it|give them"), it.from, it.to, 5, 0) && t.lastOfEnergy() == "isolate" && !t.near(cues("run|runs|idle|warm|revs"), it.from, it.to, 6, 4) {
				t.waits(it, a) // it stands still, and is given ten minutes
				return
			}
			t.actOn("run", t.prime(), part{name: t.prime(), class: machinePart}, t.runFrom(it), it.to, true)
		}
	}
}

// blowing are parts that run by themselves for a time: exhaust fan, ten minutes.
var blowing = set("fan blower pump extractor ventilator heater")

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

var again = cues("go back to that|go back to it|go back to those|back to that after|come back to it|come back to that|go over them again|recheck|check again|check them again|check it again|again after|again in|retorque|re-torque|re torque|retighten|look at it again|look at those again|look again|once more after|check them after|check it after|check those after|recheck them|nip them up again|tighten them again|tighten again")

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

var (
	everyCues = cues("every|each|once a|once every|per|any")
	firstCues = cues("first|from new|new engine|and then every")
	waitCues  = cues("wait|leave|let|hold|stand|settle|give|run|count")
)
