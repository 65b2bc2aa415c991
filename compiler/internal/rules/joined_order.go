package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "joined/order", Severity: finding.Error, Title: "A joined job does the steps of a procedure in another order",
		Why:     "Their author had a reason for the order, and the joined job was worked out with it.",
		Source:  "the procedures themselves: the joined one is a copy of them",
		Setting: joinedAlone,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\norigin = \"A 2\"\n[[step]]\nsay = \"Look at the plug.\"\norigin = \"A 1\"\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\norigin = \"A 1\"\n[[step]]\nsay = \"Look at the plug.\"\norigin = \"A 2\"\n",
	},
	Job: func(p *Pass) {
		kept := p.kept()
		for i := range kept.from {
			if one := &kept.from[i]; one.known() {
				p.moved(one, does(kept.of(one)))
			}
		}
	},
})

// joinedAlone is the head of a job that was joined out of one procedure, which is itself.
const joinedAlone = quiet + `name = "look"
joins = ["look"]
joined-revisions = ["A"]
`

// moved tells of the work of a procedure that is not done in its order, by the fewest steps
// that have moved. What only makes ready or closes up stands where the whole job wants it.
func (p *Pass) moved(one *joinedFrom, does map[int]*model.Step) {
	var work []copied
	for _, own := range one.job.Steps {
		if step := does[own.Number]; step != nil && !makesReady(one.job, own) {
			work = append(work, copied{step: step, from: one, own: own})
		}
	}
	stays := stay(work)
	if n := len(work) - len(stays); n >= many {
		p.Found(finding.Finding{Place: one.item.At, Summary: fmt.Sprintf("%d steps of %s are done in another order than their author has them", n, one.item.Text),
			Help: "Bring them back into his order, or change it in the procedure, and join the job anew."})
		return
	}
	for n, copy := range work {
		if slices.Contains(stays, n) {
			continue
		}
		where, other := "after", n
		for _, i := range stays { // of those that stay, the nearest that should be on its other side
			switch {
			case i > n && work[i].step.Number < copy.step.Number && other == n:
				other = i
			case i < n && work[i].step.Number > copy.step.Number:
				where, other = "before", i
			}
		}
		p.Found(finding.Finding{Place: copy.step.Origin.At,
			Summary: fmt.Sprintf("step %d of %s is done at step %d, %s its step %d, which is done at step %d", copy.own.Number, one.item.Text, copy.step.Number, where, work[other].own.Number, work[other].step.Number),
			Help:    "Bring it back into the order of its author, or change that in the procedure, and join the job anew.", Related: []finding.Related{copy.place(), {Place: at(work[other].step), Text: "done here"}}})
	}
}

// stay are the most steps that are in the order of their author, by their places among them.
func stay(work []copied) []int {
	best := make([][]int, len(work)) // that end with each
	var most []int
	for i, copy := range work {
		for k := range i {
			if work[k].step.Number <= copy.step.Number && len(best[k]) > len(best[i]) {
				best[i] = best[k]
			}
		}
		best[i] = append(slices.Clone(best[i]), i)
		if len(best[i]) > len(most) {
			most = best[i]
		}
	}
	return most
}
