package state

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
)

// drives are the kinds of energy that set a machine going.
var drives = []string{"electric", "engine", "shaft", "battery"}

func isCut(w *walk, step *model.Step, object model.Object) {
	if object.Energy != nil {
		at := w.source(object.Energy)
		at.cut, at.proved, at.given, at.cutAt, at.place = true, false, false, step, object.Text.At
	}
}

func isLetOut(w *walk, _ *model.Step, object model.Object) {
	if object.Energy != nil {
		w.source(object.Energy).relieved = true
	}
}

// isUnloaded wants what loads a part let out or loosened before it comes loose or off.
func isUnloaded(w *walk, step *model.Step, object model.Object) {
	if object.Part == nil || w.of(object.Part).off >= all(object.Part) {
		return
	}
	for _, name := range object.Part.LoadedBy.Names() {
		if p := w.job.Part(name); p != nil {
			if at := w.of(p); !at.loose && !at.hand && !at.open && at.off == 0 {
				breach := w.breach(Loaded, step, object.Text.At, object.Words(), p.Words(), at.tightAt)
				breach.Name, breach.Tensioner = name, true
			}
			continue
		}
		e := w.job.Energy(name)
		if e == nil {
			continue
		}
		if at := w.source(e); !at.relieved && (e.Relieve.Set() || !at.cut) {
			breach := w.breach(Loaded, step, object.Text.At, object.Words(), e.Words(), at.givenAt)
			breach.Name = e.Name
		}
	}
}

// hangsFree wants what a raised mass pulls on let down before hands work on it.
func hangsFree(w *walk, step *model.Step, object model.Object) {
	if object.Part == nil {
		return
	}
	for _, name := range object.Part.LoadedBy.Names() {
		if e := w.job.Energy(name); e != nil && e.Kind.Text == "gravity" {
			if at := w.source(e); !at.cut && !at.relieved && !at.told {
				at.told = true
				w.breach(HandsLoaded, step, object.Text.At, object.Words(), e.Words(), at.givenAt).Name = e.Name
			}
		}
	}
}

func isProved(w *walk, _ *model.Step, object model.Object) {
	if object.Energy != nil {
		w.source(object.Energy).proved = true
	}
}

// isRelieved wants what is stored let off before it is proved, where a step lets it
// off later and no other proof follows that.
func isRelieved(w *walk, step *model.Step, object model.Object) {
	if object.Energy == nil {
		return
	}
	var relieved *model.Step
	for _, later := range w.job.Steps[step.Number:] {
		if !slices.ContainsFunc(later.Objects, func(o model.Object) bool { return o.Energy == object.Energy }) {
			continue
		}
		switch later.Verb.Key {
		case "prove", "isolate":
			return // proved once more, or a new job begins
		case "relieve":
			relieved = later
		}
	}
	if relieved != nil {
		w.breach(ProvedEarly, step, object.Text.At, object.Words(), "", relieved)
	}
}

// isIsolated wants what is proved dead to be isolated, or let off, by some step.
func isIsolated(w *walk, step *model.Step, object model.Object) {
	if object.Energy == nil || !object.Energy.Isolate.Set() {
		return
	}
	cuts := func(s *model.Step) bool {
		return (s.Verb.Key == "isolate" || s.Verb.Key == "relieve" || s.Verb.Key == "stop") && slices.ContainsFunc(s.Objects, func(o model.Object) bool { return o.Energy == object.Energy })
	}
	if !slices.ContainsFunc(w.job.Steps, cuts) {
		breach := w.breach(ProvedLive, step, object.Text.At, object.Words(), "", nil)
		breach.Name = object.Energy.Name
	}
}

func wasCut(w *walk, step *model.Step, object model.Object) {
	if object.Energy != nil && !w.source(object.Energy).cut {
		w.breach(RestoresLive, step, object.Text.At, object.Words(), "", w.source(object.Energy).givenAt)
	}
}

// guardsOn wants every guard of an energy back before it is given back, unless it is
// for a run that says how far to stand.
func guardsOn(w *walk, step *model.Step, object model.Object) {
	if object.Energy == nil {
		return
	}
	if step.Number < len(w.job.Steps) {
		if next := w.job.Steps[step.Number]; (next.Verb.Key == "run" || next.Verb.Key == "start") && keepsOff(next) {
			return
		}
	}
	for _, cover := range w.job.Covers() {
		if !cover.Guards.Has(object.Energy.Name) {
			continue
		}
		if since, off := w.of(cover).away(); off {
			w.breach(RestoredGuardOff, step, object.Text.At, object.Words(), cover.Words(), since).of = cover
		}
	}
}

// partsOn wants back what came off before the energy that drives the machine comes
// back, where it goes on later with nothing tried between.
func partsOn(w *walk, step *model.Step, object model.Object) {
	if object.Energy == nil || !slices.Contains(drives, object.Energy.Kind.Text) {
		return
	}
	for _, p := range w.known {
		at := w.of(p)
		if at.off == 0 || at.out == 0 || p.Cover && len(p.Guards.Items) > 0 {
			continue
		}
		for _, later := range w.job.Steps[step.Number:] {
			if slices.Contains([]string{"run", "start", "isolate", "stop", "measure", "check"}, later.Verb.Key) {
				break
			}
			if (later.Verb.Key == "refit" || later.Verb.Key == "replace") && slices.ContainsFunc(later.Objects, func(o model.Object) bool { return o.Part == p }) {
				w.breach(RestoredApart, step, object.Text.At, object.Words(), p.Words(), at.offAt).of = p
				return
			}
		}
	}
}

func isLive(w *walk, step *model.Step, object model.Object) {
	if object.Energy != nil {
		at := w.source(object.Energy)
		at.cut, at.proved, at.given, at.givenAt = false, false, true, step
		at.relieved = false
	}
}

// guardsDead wants the energy that a cover guards cut off; the first time another
// rule tells of it, here it is after the energy came back, or without a new proof.
func guardsDead(w *walk, step *model.Step, object model.Object) {
	if object.Part == nil {
		return
	}
	for _, cover := range w.job.Freed(object.Part) {
		for _, name := range cover.Guards.Names() {
			e := w.job.Energy(name)
			if e == nil {
				continue
			}
			at := w.source(e)
			switch {
			case at.given:
				w.breach(GuardOffLive, step, object.Text.At, object.Words(), e.Words(), at.givenAt)
			case at.cut && !at.proved && w.provedBefore(e, at.cutAt):
				w.breach(NotProvedAgain, step, object.Text.At, object.Words(), e.Words(), at.cutAt)
			case at.cut:
				w.stillTurns(step, object, e, at)
			}
		}
	}
}

// provedBefore reports whether an energy was proved dead before a step, so that it
// is only the new isolation that was not.
func (w *walk) provedBefore(e *model.Energy, before *model.Step) bool {
	return slices.ContainsFunc(w.job.Steps, func(step *model.Step) bool {
		return step.Verb.Key == "prove" && step.Number < before.Number && slices.ContainsFunc(step.Objects, func(o model.Object) bool { return o.Energy == e })
	})
}

// standing are words by which an isolation or its proof waits for the mass to stand.
var standing = []string{"still", "stand", "stop", "wait", "rest"}

// stillTurns wants the time a mass takes to stop between its isolation and the
// guard, unless somebody looks whether it stands.
func (w *walk) stillTurns(step *model.Step, object model.Object, e *model.Energy, at *energy) {
	least, ok := e.StopsIn.Highest()
	if !e.StopsIn.OK || !ok {
		return
	}
	words := strings.ToLower(e.Isolate.Text + " " + e.Prove.Text)
	if slices.ContainsFunc(standing, func(word string) bool { return strings.Contains(words, word) }) && (at.proved || strings.Contains(strings.ToLower(e.Isolate.Text), "wait")) {
		return
	}
	if need, _ := least.Float64(); at.proved && need <= soonStill || w.seenStill(step) {
		return
	}
	waited := 0.0
	for _, between := range w.job.Steps {
		if between.Verb.Key == "wait" && between.Number > at.cutAt.Number && between.Number < step.Number && between.Wait.OK {
			if s, ok := between.Wait.Lowest(); ok {
				seconds, _ := s.Float64()
				waited += seconds
			}
		}
	}
	if need, _ := least.Float64(); waited < need {
		w.breach(StillTurning, step, object.Text.At, object.Words(), e.Words(), at.cutAt)
	}
}

// soonStill is how many seconds go by while an energy is isolated and proved; common
// practice, no source.
const soonStill = 10

// seenStill reports whether a step before another looks whether the machine stands.
func (w *walk) seenStill(before *model.Step) bool {
	return slices.ContainsFunc(w.job.Steps[:before.Number-1], func(s *model.Step) bool {
		return s.Verb.Key == "stop" && has(strings.ToLower(s.Told()), standing)
	})
}

// handsAgain tells of hands that go in after every energy that was cut off came back.
func (w *walk) handsAgain(step *model.Step) {
	if step.Verb.Key == "isolate" || step.Verb.Key == "run" || step.Verb.Key == "start" || step.Verb.Key == "stop" {
		return
	}
	var given *model.Energy
	for _, e := range w.sources {
		switch at := w.energies[e]; {
		case at.cut && slices.Contains(drives, e.Kind.Text):
			return
		case at.given && slices.Contains(drives, e.Kind.Text):
			given = e
		}
	}
	if given == nil {
		return
	}
	if place, ok := w.hands(step); ok {
		w.breach(HandsAgain, step, place, "", given.Words(), w.energies[given].givenAt)
	}
}

// byHand are words by which something is turned without its drive.
var byHand = []string{"by hand", "with the bar", "with a bar", "by the", "wrench"}

// hasEnergy wants what drives the machine live before it runs.
func hasEnergy(w *walk, step *model.Step, object model.Object) {
	words := strings.ToLower(object.Words() + " " + step.Say.Text)
	if slices.ContainsFunc(byHand, func(word string) bool { return strings.Contains(words, word) }) {
		return
	}
	var cut *model.Energy
	for _, e := range w.job.Energies() {
		if !slices.Contains(drives, e.Kind.Text) {
			continue
		}
		if at := w.energies[e]; at == nil || !at.cut {
			if e.Kind.Text != "battery" {
				return // something may drive it
			}
			continue
		}
		cut = e
	}
	if cut != nil {
		w.breach(RunsDead, step, object.Text.At, object.Words(), cut.Words(), w.energies[cut].cutAt)
	}
}

// stands are words that say how far to stand from what runs open.
var stands = []string{"stand", "distance", "keep clear", "away", "keep off", "nobody", "step back"}

// keepsOff reports whether a step says how far to stand from what runs open.
func keepsOff(step *model.Step) bool {
	words := strings.ToLower(step.Say.Text)
	for _, keep := range step.Keep.Items {
		words += " " + strings.ToLower(keep.Text)
	}
	for _, own := range step.Own {
		words += " " + strings.ToLower(own.Avoid.Text)
	}
	return strings.ContainsAny(words, "0123456789") && slices.ContainsFunc(stands, func(word string) bool { return strings.Contains(words, word) })
}

// runsGuarded wants the guards on, unless the step says how far to stand.
func runsGuarded(w *walk, step *model.Step, object model.Object) {
	if keepsOff(step) {
		return
	}
	for _, cover := range w.job.Covers() {
		at := w.parts[cover]
		if at == nil || len(cover.Guards.Items) == 0 {
			continue
		}
		if since, off := at.away(); off {
			w.breach(RunsGuardOff, step, object.Text.At, object.Words(), cover.Words(), since).of = cover
		}
	}
}

// runsWhole wants what came off back and tight before the machine runs.
func runsWhole(w *walk, step *model.Step, object model.Object) {
	for _, p := range w.known {
		at := w.parts[p]
		if p.Cover && len(p.Guards.Items) > 0 && (at.off > 0 || at.open) {
			continue // told as a guard
		}
		if at.off > 0 && at.out > 0 && !w.endsOff(p) || at.hand {
			since := at.offAt
			if at.hand {
				since = at.handAt
			}
			w.breach(RunsApart, step, object.Text.At, object.Words(), p.Words(), since).of = p
			return
		}
	}
}
