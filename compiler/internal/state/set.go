package state

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
)

// sets are verbs that move what a loosened fastener lets move.
var sets = []string{"adjust", "align", "tension"}

// again are words by which a step says that it only tightens once more.
var again = []string{"again", "check", "re-torque", "retorque", "once more", "second time", "still tight"}

// wasLoose wants what is tightened to have been let go before, where steps between
// set something; and something done between the two.
func wasLoose(w *walk, step *model.Step, object model.Object) {
	p := object.Part
	if p == nil {
		return
	}
	at := w.of(p)
	said := strings.ToLower(step.Say.Text)
	if slices.ContainsFunc(again, func(word string) bool { return strings.Contains(said, word) }) {
		return
	}
	switch {
	case at.loose && at.looseAt != nil:
		if step.Number == at.looseAt.Number+1 && said == "" && strings.TrimSpace(at.looseAt.Say.Text) == "" && w.setsBeside(at.looseAt, step) {
			w.breach(TightForNothing, step, object.Text.At, object.Words(), "", at.looseAt)
		}
	case w.tightAlready(at, step):
		w.breach(TightTwice, step, object.Text.At, object.Words(), "", at.tightAt)
	case at.hand || at.off > 0 || at.out > 0 || at.looseAt != nil:
	case w.last != nil && slices.Contains(sets, w.last.Verb.Key) && len(w.last.Objects) > 0:
		w.breach(NeverLoose, step, object.Text.At, object.Words(), w.last.Objects[0].Words(), w.last)
	}
}

// tightAlready reports whether a step tightens what another has tightened in the same way, with
// nothing let go, run, waited for, set or moved between. In a joined job both are their authors'.
func (w *walk) tightAlready(at *part, step *model.Step) bool {
	was := at.tightAt
	if was == nil || at.loose || at.hand || at.off > 0 || at.let > 0 || step.Origin.Set() || step.Say.Set() || was.Say.Set() || step.Count.N > 0 || was.Count.N > 0 ||
		step.Torque.Text.Text != was.Torque.Text.Text || step.Angle.Text.Text != was.Angle.Text.Text {
		return false
	}
	return !slices.ContainsFunc(w.job.Steps[was.Number:step.Number-1], func(between *model.Step) bool {
		return slices.Contains(unsettles, between.Verb.Key)
	})
}

// loads are verbs that a fastener was tightened for, and unsettles those behind which it is well
// tightened once more.
var (
	loads     = []string{"run", "start", "wait", "measure", "check", "lower", "raise"}
	unsettles = slices.Concat(loads, []string{"turn-over", "mark"}, sets)
)

// setsBeside reports whether one of two steps before a step or after another sets
// something, so that it stands outside what was loosened for it.
func (w *walk) setsBeside(first, last *model.Step) bool {
	return slices.ContainsFunc(w.job.Steps, func(s *model.Step) bool {
		before, after := first.Number-s.Number, s.Number-last.Number
		return (before == 1 || before == 2 || after == 1 || after == 2) && slices.Contains(sets, s.Verb.Key)
	})
}

// notJustTight wants no step that tightens what the next ones take off again, unless
// the machine ran between or the step says that it is on purpose.
func notJustTight(w *walk, step *model.Step, object model.Object) {
	p := object.Part
	if p == nil {
		return
	}
	at := w.of(p)
	if at.tightAt == nil || at.off > 0 || at.looseAt != nil || at.out > 0 || at.tightAt.Say.Set() || step.Say.Set() {
		return // it was loose or off before, so that tightening had its use
	}
	for _, between := range w.job.Steps[at.tightAt.Number : step.Number-1] {
		if slices.Contains(loads, between.Verb.Key) {
			return
		}
	}
	w.breach(TightThenOff, step, object.Text.At, object.Words(), "", at.tightAt)
}

// letsMove wants what is set free to move: not when the step before has tightened
// what was loosened for it, with nothing set between.
func letsMove(w *walk, step *model.Step, object model.Object) {
	if w.last == nil || w.last.Verb.Key != "tighten" {
		return
	}
	slack := step.Verb.Key == "tension" && slices.ContainsFunc(w.slack, func(h *held) bool {
		return h.name == plain(object.Words()) || w.kin(h.name, plain(object.Words()))
	})
	for _, tight := range w.last.Objects {
		if tight.Part == nil {
			continue
		}
		at := w.of(tight.Part)
		if at.tightAt != w.last || at.looseAt == nil || at.looseAt.Number >= w.last.Number {
			continue
		}
		between := w.job.Steps[at.looseAt.Number : w.last.Number-1]
		if slack || step.Verb.Key == "tension" && !slices.ContainsFunc(between, func(s *model.Step) bool { return s.Verb.Key == "tension" }) || !slices.ContainsFunc(between, func(s *model.Step) bool { return slices.Contains(sets, s.Verb.Key) }) {
			w.breach(SetTight, step, object.Text.At, object.Words(), tight.Words(), w.last)
			return
		}
	}
}

// isLetGo wants the fasteners that hold a setting loose, or out, while it is set.
func isLetGo(w *walk, step *model.Step, object model.Object) {
	if object.Limit == nil {
		return
	}
	for _, name := range object.Limit.HeldBy.Names() {
		if p := w.job.Part(name); p != nil {
			if at := w.of(p); !at.loose && !at.hand && !at.open && at.off == 0 {
				breach := w.breach(HeldTight, step, object.Text.At, object.Words(), p.Words(), at.tightAt)
				breach.Name = p.Name
			}
		}
	}
}
