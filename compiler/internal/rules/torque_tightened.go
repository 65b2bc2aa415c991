package rules

import (
	"strings"

	"benchleaf/compiler/internal/memo"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/trade"
)

// tightened calls tell for each part a step of the job tightens, with the torque it is tightened to.
func (p *Pass) tightened(tell func(step *model.Step, part *model.Part, torque model.Amount)) {
	for _, step := range p.Job.Steps {
		if step.Verb.Key != "tighten" {
			continue
		}
		for _, object := range step.Objects {
			if object.Part != nil {
				tell(step, object.Part, needs.TorqueOf(step, object.Part))
			}
		}
	}
}

// torques calls tell once for each torque that a step of the job tightens a part to, with the state
// of the thread.
func (p *Pass) torques(tell func(part *model.Part, torque model.Amount, state model.Text)) {
	told := map[string]bool{}
	p.tightened(func(step *model.Step, part *model.Part, torque model.Amount) {
		before := len(*p.out)
		if !told[part.Name+torque.Text.Text] {
			tell(part, torque, conditionOf(step, part))
		}
		if len(*p.out) > before {
			told[part.Name+torque.Text.Text] = true
		}
	})
}

// between gives the bounds of an amount in its base unit; an amount with one bound has that for both.
func between(amount model.Amount) (low, high float64, ok bool) {
	if !amount.OK {
		return 0, 0, false
	}
	least, from := amount.Lowest()
	most, to := amount.Highest()
	if from {
		low, _ = least.Float64()
	}
	if to {
		high, _ = most.Float64()
	}
	switch {
	case !from && !to:
		return 0, 0, false
	case !from:
		low = high
	case !to:
		high = low
	}
	return low, high, true
}

// conditionOf is the state of the thread that a step tightens: its own, or the part's.
func conditionOf(step *model.Step, part *model.Part) model.Text {
	if step.Condition.Set() {
		return step.Condition
	}
	return part.Condition
}

// passesOf are the passes of a tightening: the step's own, or the part's.
func passesOf(step *model.Step, part *model.Part) []model.Whole {
	if len(step.Passes) > 0 {
		return step.Passes
	}
	return part.Passes
}

// angleOf is the turn after the torque: the step's own, or the part's.
func angleOf(step *model.Step, part *model.Part) model.Amount {
	if step.Angle.Set() {
		return step.Angle
	}
	return part.Angle
}

// says reports whether any of some words stands in texts, whatever the case.
func says(text string, words ...string) bool {
	text = strings.ToLower(text)
	for _, word := range words {
		if strings.Contains(text, word) {
			return true
		}
	}
	return false
}

// tells is what a step says in words.
func tells(step *model.Step) string {
	out := append(make([]string, 0, 8), step.Say.Text, step.ByHand.Text, step.Until.Text, step.Stage.Text)
	for _, object := range step.Objects {
		if object.Kind == "words" {
			out = append(out, object.Text.Text)
		}
	}
	for _, note := range step.Notes.Items {
		out = append(out, note.Text)
	}
	return strings.Join(out, " ")
}

// partTells is what a part says of itself in words.
func partTells(part *model.Part) string {
	out := []string{part.Name, part.Title.Text, part.Material.Text}
	for _, note := range part.Notes.Items {
		out = append(out, note.Text)
	}
	return strings.Join(out, " ")
}

type thread struct {
	trade.Thread
	fault error
}

var threads = memo.Of(func(text string) thread {
	out, err := trade.ParseThread(text)
	return thread{out, err}
})

// threadOf is the thread of a part.
func (p *Pass) threadOf(part *model.Part) (trade.Thread, error) {
	var kept *memo.Memo // a file has none for its threads
	if p.Job != nil {
		kept = p.Job.Memo
	}
	out := threads.Of(kept, part.Thread.Text)
	return out.Thread, out.fault
}
