package rules

import (
	"slices"

	"benchleaf/compiler/internal/model"
)

// joinedFrom is one procedure that a job was joined out of.
type joinedFrom struct {
	item     model.Text // of joins
	letter   string
	job      *model.Job // nil where it is not there, or a fault of the language stands against it
	revision model.Text // of joined-revisions; not set where there is none
}

// anew reports whether a procedure has another revision than the one that was joined.
func (s joinedFrom) anew() bool {
	return s.job != nil && s.revision.Set() && s.revision.Text != s.job.Procedure.Revision.Text
}

// joins are the procedures that a job was joined out of, for its version of the machine.
func (p *Pass) joins() []joinedFrom {
	var out []joinedFrom
	for i, item := range p.Job.Procedure.Joins.Items {
		one := joinedFrom{item: item, letter: model.Letter(i)}
		if revisions := p.Job.Procedure.Joined.Items; i < len(revisions) {
			one.revision = revisions[i]
		}
		for _, job := range p.Job.Beside(item.Name()) {
			if job.MachineName() == p.Job.MachineName() && job.MachineTitle() == p.Job.MachineTitle() && (job.Variant == p.Job.Variant || job.Variant == "") {
				one.job = job
			}
		}
		out = append(out, one)
	}
	return out
}

// makesReady reports whether a step only brings the machine into a state for others: a joined
// job does that once for all, or again. To tighten a cover that was never off is work.
func makesReady(job *model.Job, step *model.Step) bool {
	every := func(is func(model.Object) bool) bool {
		return len(step.Objects) > 0 && !slices.ContainsFunc(step.Objects, func(o model.Object) bool { return !is(o) })
	}
	switch step.Verb.Key {
	case "isolate", "relieve", "prove", "restore":
		return every(func(o model.Object) bool { return o.Energy != nil })
	case "remove", "open", "loosen":
		return every(func(o model.Object) bool { return o.Part != nil && o.Part.Cover })
	case "refit", "close", "tighten":
		return every(func(o model.Object) bool { return o.Part != nil && o.Part.Cover }) &&
			slices.ContainsFunc(job.Steps[:step.Number-1], func(before *model.Step) bool {
				return slices.Contains([]string{"remove", "open", "loosen"}, before.Verb.Key) && slices.ContainsFunc(before.Objects, func(o model.Object) bool { return o.Part == step.Objects[0].Part })
			})
	case "raise", "support", "lower":
		return true
	case "turn-over":
		return step.Pose.Set()
	}
	return false
}
