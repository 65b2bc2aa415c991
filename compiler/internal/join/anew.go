package join

import (
	"slices"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/state"
)

// anew is that a setting of one procedure is made or measured only when a part that it hangs
// on, which another renews or puts back, is as it stays.
type anew struct {
	before, after int // tasks
	renews, sets  *model.Step
	part          *model.Part
	limit         *model.Limit
}

// setAnew puts settings behind what other procedures do to the parts that they hang on. Of a
// cover, which is on or off and no work, they come behind all that is done with it off.
func (p *problem) setAnew() {
	for t := range p.tasks {
		for _, sets := range p.tasks[t].steps {
			for _, limit := range p.hangs(p.tasks[t].input, sets) {
				for _, part := range anewAfter(p.inputs[p.tasks[t].input].Job, limit) {
					p.behind(anew{after: t, sets: sets, part: part, limit: limit})
				}
			}
		}
	}
}

// behind puts one setting behind the tasks of other procedures that do something to a part.
func (p *problem) behind(one anew) {
	own := &p.tasks[one.after]
	cover := uint64(0)
	if at := slices.Index(p.machine.covers, one.part.Name); at >= 0 {
		cover = 1 << at
	}
	if own.need.off&cover == 0 {
		own.need.on |= cover
	}
	for t := range p.tasks {
		other := &p.tasks[t]
		if other.input == own.input {
			continue
		}
		job := p.inputs[other.input].Job
		at := slices.IndexFunc(other.steps, func(step *model.Step) bool { return moves(job, step, one.part) })
		if at < 0 && other.need.off&cover != 0 {
			at = 0
		}
		if at >= 0 {
			one.before, one.renews = t, other.steps[at]
			p.before, p.anews = append(p.before, [2]int{t, one.after}), append(p.anews, one)
			for _, wait := range p.waits { // what cures or settles is not as it stays before that is over
				if wait.from == t {
					p.before = append(p.before, [2]int{wait.to, one.after})
				}
			}
		}
	}
}

// wantsOthers reports whether a step of a procedure waits for what another does to a part: a
// task begins with it.
func (p *problem) wantsOthers(input int, step *model.Step) bool {
	for _, limit := range p.hangs(input, step) {
		for _, part := range anewAfter(p.inputs[input].Job, limit) {
			for other := range p.inputs {
				job := p.inputs[other].Job
				if other != input && slices.ContainsFunc(job.Steps, func(step *model.Step) bool { return moves(job, step, part) }) {
					return true
				}
			}
		}
	}
	return false
}

// hangs are the limits that a step makes or measures anew. What is measured before its own
// procedure sets it, or does something to the part, is as it was found, and stays so; and so is
// what is set before it is set once more.
func (p *problem) hangs(input int, step *model.Step) []*model.Limit {
	var out []*model.Limit
	job := p.inputs[input].Job
	for _, object := range step.Objects {
		limit := object.Limit
		if limit == nil || !state.Sets(step, limit) && !state.Measures(step, limit) {
			continue
		}
		parts := anewAfter(job, limit)
		found := slices.ContainsFunc(job.Steps[step.Number:], func(later *model.Step) bool {
			return state.Sets(later, limit) ||
				!state.Sets(step, limit) && slices.ContainsFunc(parts, func(part *model.Part) bool { return moves(job, later, part) })
		})
		if !found && len(parts) > 0 {
			out = append(out, limit)
		}
	}
	return out
}

// anewAfter are the parts that a limit hangs on.
func anewAfter(job *model.Job, limit *model.Limit) []*model.Part {
	var out []*model.Part
	for _, name := range limit.Anew.Names() {
		if part := job.Part(name); part != nil {
			out = append(out, part)
		}
	}
	return out
}

// moves reports whether a step puts a part in new or back on, tightens it or brings it under
// tension; and in a procedure that does so, whether it tightens what holds the part.
func moves(job *model.Job, step *model.Step, part *model.Part) bool {
	if state.Renews(job, step, part) {
		return true
	}
	if step.Verb.Key != "tighten" && step.Verb.Key != "tension" {
		return false
	}
	return slices.ContainsFunc(step.Objects, func(object model.Object) bool {
		return object.Part != nil && (object.Part.Name == part.Name || part.HeldBy.Has(object.Part.Name) &&
			slices.ContainsFunc(job.Steps, func(other *model.Step) bool { return state.Renews(job, other, part) }))
	})
}
