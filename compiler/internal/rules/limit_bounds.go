package rules

import (
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
)

// alike reports whether an amount can be held against a limit: both of one kind,
// neither loosely meant, and the limit says which side is bad.
func alike(amount, limit model.Amount) bool {
	return amount.OK && limit.OK && amount.Unit.Converts(limit.Unit) && amount.Shape != quantity.About && limit.Shape != quantity.About && limit.Shape != quantity.Exact
}

// apart reports whether no value is in both amounts.
func apart(a, b model.Amount) bool {
	lowA, fromA := a.Lowest()
	highA, toA := a.Highest()
	lowB, fromB := b.Lowest()
	highB, toB := b.Highest()
	return fromA && toB && lowA.Cmp(highB) > 0 || fromB && toA && lowB.Cmp(highA) > 0
}

// within reports whether each value of one amount is in another. What cannot be below
// nothing is bounded by it: "max 0.3 mm" lies within "0 to 0.5 mm".
func within(inner, outer model.Amount) bool {
	if low, bounded := outer.Lowest(); bounded {
		least, from := inner.Lowest()
		if from && least.Cmp(low) < 0 || !from && low.Sign() > 0 {
			return false
		}
	}
	if high, bounded := outer.Highest(); bounded {
		most, to := inner.Highest()
		if !to || most.Cmp(high) > 0 {
			return false
		}
	}
	return true
}

// limits are the limits the steps of a job go by, each once; one written at a step
// goes before that of the thing.
func (p *Pass) limits() []model.Amount {
	var out []model.Amount
	seen := map[string]bool{}
	for _, step := range p.Job.Steps {
		if step.Limit.Set() {
			out = append(out, step.Limit)
			continue
		}
		for _, object := range step.Objects {
			if object.Limit != nil && !seen[object.Limit.Name] {
				seen[object.Limit.Name] = true
				out = append(out, object.Limit.Limit)
			}
		}
	}
	return out
}

// limitOf is the limit that holds at a step: its own, or that of the only thing it
// acts on; the zero Amount where there is none.
func limitOf(step *model.Step) model.Amount {
	if step.Limit.Set() {
		return step.Limit
	}
	if len(step.Objects) == 1 && step.Objects[0].Limit != nil {
		return step.Objects[0].Limit.Limit
	}
	return model.Amount{}
}
