package compose

import (
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/state"
)

// Standing says how the machine stands after each step of a job, as the approval sheet
// draws it. It is an error when the shop's language has no words.
func Standing(work Work, system quantity.System, walk *state.Walk) ([]plan.Strip, error) {
	w, err := newWriter(work, system)
	if err != nil {
		return nil, err
	}
	return w.strips(walk), nil
}
