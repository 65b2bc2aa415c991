package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
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

// joins are the procedures that a job was joined out of, for its version of the machine; none
// where the two lists of them do not fit each other, which is another rule's to tell.
func (p *Pass) joins() []joinedFrom {
	if len(p.Job.Procedure.Joins.Items) != len(p.Job.Procedure.Joined.Items) {
		return nil
	}
	var out []joinedFrom
	for i, item := range p.Job.Procedure.Joins.Items {
		one := joinedFrom{item: item, letter: model.Letter(i)}
		one.revision = p.Job.Procedure.Joined.Items[i]
		for _, job := range p.Job.Beside(item.Name()) {
			if job.MachineName() == p.Job.MachineName() && job.MachineTitle() == p.Job.MachineTitle() && (job.Variant == p.Job.Variant || job.Variant == "") {
				one.job = job
			}
		}
		out = append(out, one)
	}
	return out
}

// copied is a step of a joined job and one that it names as its origin.
type copied struct {
	step *model.Step
	from *joinedFrom
	own  *model.Step // of the procedure
	main bool        // the step is the copy of this one, and only does the work of the others that it names
}

// place is where the step of the procedure stands.
func (c copied) place() finding.Related { return c.from.place(c.own) }

// other reports whether the step does something else than the one that it names.
func (c copied) other() bool { return c.own.Verb.Key != c.step.Verb.Key || !c.shares() }

// shares reports whether the two are about one thing at least. How a thing is called that is
// raised or turned is each author's own.
func (c copied) shares() bool {
	return c.step.Shares(c.own) || !c.main && makesReady(c.from.job, c.own) && c.own.Objects[0].Key() == ""
}

// place is where a step of a procedure stands.
func (s joinedFrom) place(own *model.Step) finding.Related {
	return finding.Related{Place: own.Header, Text: fmt.Sprintf("step %d of %s", own.Number, s.item.Text)}
}

// stray is an origin that names no step.
type stray struct {
	step   *model.Step
	origin model.Origin
	from   *joinedFrom // nil where there is no procedure of that letter
}

// known reports whether the steps of the procedure can be told: what has no file or another
// revision than the one that was joined is another rule's.
func (s joinedFrom) known() bool { return s.job != nil && !s.anew() }

// many is how many steps of a procedure that are something else than they say have one reason:
// the letters do not fit, or all was moved.
const many = 4

// keptJob is a joined job held against its procedures.
type keptJob struct {
	from   []joinedFrom
	copies []copied // in the order of the job
	strays []stray
}

// kept reads the origins of the steps. They are told by one rule, and the others hold what
// is copied against its author's.
func (p *Pass) kept() keptJob {
	out := keptJob{from: p.joins()}
	for _, step := range p.Job.Steps {
		for i, origin := range step.Origins() {
			at := slices.IndexFunc(out.from, func(one joinedFrom) bool { return one.letter == origin.Letter })
			switch {
			case at < 0:
				out.strays = append(out.strays, stray{step, origin, nil})
			case !out.from[at].known():
			case origin.Number > len(out.from[at].job.Steps):
				out.strays = append(out.strays, stray{step, origin, &out.from[at]})
			default:
				out.copies = append(out.copies, copied{step, &out.from[at], out.from[at].job.Steps[origin.Number-1], i == 0})
			}
		}
	}
	return out
}

// mixedUp reports whether so many steps are something else than those that they name of a
// procedure that its letter must stand for another.
func (j keptJob) mixedUp(one *joinedFrom) bool {
	count := 0
	for _, copy := range j.copies {
		if copy.from == one && copy.other() {
			count++
		}
	}
	for _, stray := range j.strays {
		if stray.from == one {
			count++
		}
	}
	return count >= many
}

// of are the copies of the steps of a procedure, and none where its letter is mixed up.
func (j keptJob) of(one *joinedFrom) []copied {
	if j.mixedUp(one) {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(j.copies), func(copy copied) bool { return copy.from != one })
}

// does is the first step that does each step of a procedure, by its number there.
func does(copies []copied) map[int]*model.Step {
	out := map[int]*model.Step{}
	for _, copy := range copies {
		if out[copy.own.Number] == nil && copy.own.Verb.Key == copy.step.Verb.Key {
			out[copy.own.Number] = copy.step
		}
	}
	return out
}

// deed is what a step does to what, or how long it waits.
func deed(step *model.Step) string {
	switch {
	case step.Verb.Key == "":
		return "one in words"
	case step.Wait.Set():
		return fmt.Sprintf("a wait of %s", step.Wait.Text.Text)
	case len(step.Objects) == 1:
		return fmt.Sprintf("%s = %q", step.Verb.Key, step.Objects[0].Text.Text)
	}
	var objects []string
	for _, object := range step.Objects {
		objects = append(objects, object.Text.Text)
	}
	return fmt.Sprintf("%s = %s", step.Verb.Key, quoted(objects))
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
