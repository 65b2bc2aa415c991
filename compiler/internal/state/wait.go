package state

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
)

// waiting is a wait that runs while other steps are done.
type waiting struct {
	at   *model.Step
	runs []*model.Cavity // what drains meanwhile
}

// waits keeps a wait with what it is for: the cavities that were drained before it, unless a
// wait that still runs is for them, and those that its words name. In a joined job a wait is
// for what its own procedure drained.
func (w *walk) waits(step *model.Step) {
	made := waiting{at: step}
	for _, c := range w.pools {
		at := w.cavities[c]
		taken := slices.ContainsFunc(w.waiting, func(one waiting) bool { return slices.Contains(one.runs, c) })
		if at.drained && (!taken && whose(at.drainedAt) == whose(step) || w.keeps(step, c)) {
			made.runs = append(made.runs, c)
		}
	}
	w.waiting = append(w.waiting, made)
}

// keeps reports whether what must hold during a wait names a cavity or its drain.
func (w *walk) keeps(wait *model.Step, c *model.Cavity) bool {
	return slices.ContainsFunc(wait.Keep.Items, func(keep model.Text) bool {
		said, plug := plain(keep.Text), w.plug(c.Drain)
		return strings.Contains(said, plain(c.Words())) || plug != nil && strings.Contains(said, plain(plug.Words()))
	})
}

// whose is the letter of the procedure that a step of a joined job comes from; empty in any
// other job.
func whose(step *model.Step) string {
	letter, _, _ := strings.Cut(step.Origin.Text, " ")
	return letter
}

// waitsOver drops the waits that are over at a step: all of them, or where it is done while
// one runs, those that its gate names by the step that they begin behind.
func (w *walk) waitsOver(step *model.Step) {
	if !step.Meanwhile.On {
		w.waiting = nil
	}
	w.waiting = slices.DeleteFunc(w.waiting, func(one waiting) bool { return slices.Contains(step.After(), w.job.Behind(one.at)) })
}

// breaksWait tells of a step done meanwhile that ends what a wait is for: it closes or
// fills what drains, or sets the machine going.
func (w *walk) breaksWait(step *model.Step) {
	w.waitsOver(step)
	if len(w.waiting) == 0 {
		return
	}
	switch step.Verb.Key {
	case "run", "start":
		if len(step.Objects) > 0 {
			w.breach(WaitBroken, step, step.Objects[0].Text.At, step.Objects[0].Words(), "", w.waiting[len(w.waiting)-1].at)
		}
	case "fill", "refit", "close", "tighten", "replace":
		for _, object := range step.Objects {
			for _, one := range w.waiting {
				for _, c := range one.runs {
					if w.cavities[c].drained && (object.Cavity == c || object.Part != nil && w.plug(c.Drain) == object.Part) {
						w.breach(WaitBroken, step, object.Text.At, object.Words(), c.Words(), one.at)
					}
				}
			}
		}
	}
}
