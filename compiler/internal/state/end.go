package state

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
)

// endsOff reports whether the end of the procedure says that a part stays off.
func (w *walk) endsOff(p *model.Part) bool {
	return !w.unspoken(p) && w.said(w.job.Procedure.End, p.Words(), "off", "out", "removed", "apart", "hangs", "lies", "away", "taken", "store", "bench")
}

// unspoken reports whether a part is a guard of a shop whose words are not read: to be named
// at the end, likely as on, does not say that it stays off.
func (w *walk) unspoken(p *model.Part) bool { return w.foreign() && len(p.Guards.Items) > 0 }

// onward are words by which the end of a procedure says that the work goes on
// elsewhere, so that what it leaves undone is not forgotten.
var onward = []string{"next card", "another card", "goes on by", "goes on with",
	"nächste karte", "nächsten karte", "fiche suivante", "siguiente ficha", "ficha siguiente"}

// goesOn reports whether the end says that the work goes on by another procedure.
func (w *walk) goesOn() bool {
	for _, item := range w.job.Procedure.End.Items {
		for _, words := range onward {
			if strings.Contains(strings.ToLower(item.Text), words) {
				return true
			}
		}
	}
	return false
}

// end tells what is not as it was, and not as the end of the procedure says.
func (w *walk) end() {
	if w.goesOn() {
		return
	}
	for _, p := range w.known {
		w.endOf(p, w.parts[p])
	}
	w.leavesTaps()
	w.setAnew()
	for _, h := range w.parted {
		if w.said(w.job.Procedure.End, h.name, "off", "disconnected", "parted", "apart", "loose", "stored") || w.leads(h.name) {
			continue
		}
		w.breach(NotConnected, h.at, h.place, h.name, "", nil)
	}
	for _, c := range w.pools {
		if at := w.cavities[c]; at.drained && refilled(c) && !w.said(w.job.Procedure.End, c.Words(), "empty", "drained", "dry") {
			w.breach(NeverFilled, at.drainedAt, at.place, c.Words(), "", nil)
		}
	}
	for _, e := range w.sources {
		at := w.energies[e]
		locked := w.said(w.job.Procedure.End, e.Words(), "off", "isolated", "locked", "disconnected", "shut", "shelf", "store", "stored", "out", "removed") || w.said(w.job.Procedure.End, "lock", "stay", "stays", "left", "remain", "remains", "kept")
		if at.cut && (e.Restore.Set() || slices.Contains(drives, e.Kind.Text)) && !locked {
			breach := w.breach(NotRestored, at.cutAt, at.place, e.Words(), "", nil)
			breach.Name = e.Name
		}
	}
	w.tried()
	for _, h := range w.raised {
		if !w.said(w.job.Procedure.End, h.name, "raised", "stands", "up") {
			w.breach(LeftRaised, h.at, h.place, h.name, "", nil)
		}
	}
	w.leftInPlace()
	for _, h := range w.slack {
		if !w.said(w.job.Procedure.End, h.name, "slack", "loose") {
			w.breach(LeftSlack, h.at, h.place, h.name, "", nil)
		}
	}
}

// leads reports whether a thing is a lead of a battery that the end says is put away.
func (w *walk) leads(name string) bool {
	lead := slices.ContainsFunc([]string{"lead", "terminal", "cable", "clamp", "strap"}, func(word string) bool { return strings.Contains(" "+name+" ", " "+word+" ") })
	return lead && w.said(w.job.Procedure.End, "battery", "shelf", "store", "stored", "out", "removed", "off", "disconnected", "bench")
}

// setters are words of fasteners that set something by where they stand.
var setters = []string{"jack", "adjust", "tension", "set screw", "setting", "stop screw"}

// setBy reports whether a loosened fastener is one that a later step sets something by.
func (w *walk) setBy(p *model.Part, since *model.Step) bool {
	name := plain(p.Words())
	named := w.foreign() || slices.ContainsFunc(setters, func(word string) bool { return strings.Contains(name, word) })
	return named && !strings.Contains(name, "lock") &&
		slices.ContainsFunc(w.job.Steps[since.Number:], func(s *model.Step) bool { return slices.Contains(sets, s.Verb.Key) })
}

// trials are verbs that tell whether the machine is as it should be, and words that
// say so in a step of its own words.
var (
	trials     = []string{"run", "start", "check", "measure", "inspect", "prove"}
	trialWords = []string{"run", "start", "test", "try", "look", "listen", "watch", "check"}
)

// tried wants somebody to run or look after the energy came back, where something
// was apart or opened.
func (w *walk) tried() {
	if w.job.Procedure.NoClose.Set() {
		return
	}
	var given *energy
	var first *model.Step
	var words string
	for _, e := range w.sources {
		if at := w.energies[e]; at.given && slices.Contains(drives, e.Kind.Text) && (given == nil || at.givenAt.Number > given.givenAt.Number) {
			given, words = at, e.Words()
		}
	}
	for _, step := range w.job.Steps {
		if first == nil && step.Verb.Key == "restore" {
			first = step
		}
	}
	apart := slices.ContainsFunc(w.known, func(p *model.Part) bool { at := w.parts[p]; return at.out > 0 || at.openAt != nil || at.looseAt != nil })
	if given == nil || !apart {
		return
	}
	for _, later := range w.job.Steps[first.Number:] {
		said := " " + plain(later.Say.Text) + " "
		run := later.Verb.Key == "run" || later.Verb.Key == "start"
		if !run && later.Number < given.givenAt.Number {
			continue // looks while it is dead again
		}
		if run || slices.Contains(trials, later.Verb.Key) || slices.ContainsFunc(trialWords, func(word string) bool { return strings.Contains(said, " "+word+" ") }) {
			return
		}
	}
	w.breach(NotTried, given.givenAt, given.givenAt.Objects[0].Text.At, words, "", nil)
}

// followers drops what was told of a part only because it never went back after a
// step: one finding says it.
func (w *walk) followers(p *model.Part, since *model.Step) {
	w.out.Breaches = slices.DeleteFunc(w.out.Breaches, func(b Breach) bool { return b.of == p && b.Since == since })
}

func (w *walk) endOf(p *model.Part, at *part) {
	switch {
	case at.off > 0 && at.out > 0 && w.endsOff(p):
	case at.off > 0 && at.out > 0 && at.back > 0 && all(p) > 1:
		breach := w.breach(NotAllBack, at.offAt, at.offPlace, p.Words(), "", nil)
		breach.Out, breach.Back, breach.Name = at.out, at.back, p.Name
	case at.off > 0 && at.out > 0:
		breach := w.breach(NotPutBack, at.offAt, at.offPlace, p.Words(), "", nil)
		breach.Name, breach.Guard = p.Name, len(p.Guards.Items) > 0
		w.followers(p, at.offAt)
	case at.hand:
		breach := w.breach(LeftHand, at.handAt, at.handedAt, p.Words(), "", at.tightAt)
		breach.Name, breach.Out = p.Name, leftOf(p, at)
	case at.loose && (tightens(p) || fastens(p) && !w.setBy(p, at.looseAt)) && !w.said(w.job.Procedure.End, p.Words(), "loose"):
		breach := w.breach(LeftLoose, at.looseAt, at.loosePlace, p.Words(), "", at.tightAt)
		breach.Name, breach.Out = p.Name, leftOf(p, at)
	case at.open && at.openAt != nil && p.Cover && (w.unspoken(p) || !w.said(w.job.Procedure.End, p.Words(), "open")):
		breach := w.breach(LeftOpen, at.openAt, at.openPlace, p.Words(), "", nil)
		breach.Name = p.Name
	}
}

// leftOf is how many of a set are not tight at the end, where some were tightened; 0
// where none was.
func leftOf(p *model.Part, at *part) int {
	if at.tightAt == nil || at.let >= all(p) {
		return 0
	}
	return at.let
}

// refilled reports whether a cavity is to be full again: one that a fluid is named for, that is filled
// or looked into somewhere, or that holds so much; but for those that only gather something.
func refilled(c *model.Cavity) bool {
	if c.Fluid.Set() || c.Fill.Set() || c.Level.Set() {
		return true
	}
	words := strings.ToLower(c.Words())
	return c.Capacity.Set() && !slices.ContainsFunc([]string{"receiver", "air", "condensate", "trap", "separator", "waste", "drip", "rain"}, func(gathers string) bool { return strings.Contains(words, gathers) })
}
