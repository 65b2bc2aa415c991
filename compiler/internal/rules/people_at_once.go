package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "people/at-once", Severity: finding.Error, Title: "Two people can be in each other's way",
		Why:     "One has a hand where the other moves, loads or drops something, and neither sees the other; or both want the one wrench.",
		Source:  "29 CFR 1910.147(f)(3) on work of a group under lock-out; what reaches further than its place: common practice, no source",
		Setting: quiet,
		Bad:     "people = 2\n[[step]]\nsay = \"Look at the label.\"\nperson = 1\n[[step]]\nsay = \"Look at the plug.\"\nperson = 2\n",
		Good:    "people = 2\n[[step]]\nid = \"label\"\nsay = \"Look at the label.\"\nperson = 1\n[[step]]\nsay = \"Look at the plug.\"\nperson = 2\nonce = [\"label\"]\n",
	},
	Job: func(p *Pass) {
		if !p.Job.ForTwo() {
			return
		}
		posts, over := p.Needs.Posts(p.Job), p.over()
		for d, step := range p.Job.Steps {
			for e := d - 1; e >= 0; e-- {
				other := p.Job.Steps[e]
				if !ofTwo(step) || !ofTwo(other) || step.Person.N == other.Person.N || e < over[d][other.Person.N] {
					continue
				}
				why := needs.Beside(p.Job, posts[d], posts[e])
				switch {
				case why != "":
				case p.uncut(d) != "":
					why = fmt.Sprintf("%s is not cut off, as it is elsewhere in the job", p.uncut(d))
				case sameOrigin(step, other):
					why = "they are steps of one procedure, which has them in an order"
				default:
					continue
				}
				p.Found(finding.Finding{Place: at(step), Summary: fmt.Sprintf("person %d can be at step %d while person %d is at step %d: %s", step.Person.N, step.Number, other.Person.N, other.Number, why),
					Help:    "Let one wait for the other: give the earlier step an id, and name it in once at the later. Or leave person out of a step that both are there for.",
					Related: []finding.Related{{Place: at(other), Text: fmt.Sprintf("step %d", other.Number)}}})
				break
			}
		}
	},
})

// ofTwo reports whether a step is for one of two people; for a third there is nobody, which is
// another rule's.
func ofTwo(step *model.Step) bool { return step.Person.N == 1 || step.Person.N == 2 }

// over is, for each step and each of two people, how many of the first steps of the job are over
// before it as far as that person did them: each does theirs in order, once names steps of the
// other, and a step without a person is one that both come to.
func (p *Pass) over() [][3]int {
	out := make([][3]int, len(p.Job.Steps))
	var last [3][3]int // what each person knows to be over at the begin of their next step
	for d, step := range p.Job.Steps {
		who := step.Person.N
		if who == 0 && step.Verb.Key == "wait" { // nobody does it
			continue
		}
		if !ofTwo(step) { // both
			out[d] = [3]int{0, d, d}
			last[1], last[2] = [3]int{0, d + 1, d + 1}, [3]int{0, d + 1, d + 1}
			continue
		}
		known := last[who]
		for _, name := range step.Once.Names() {
			e := p.Job.StepOf(name)
			if e == nil { // told by another rule
				known[1], known[2] = d, d
				continue
			}
			if e.Number <= d {
				known[1], known[2] = max(known[1], out[e.Number-1][1]), max(known[2], out[e.Number-1][2])
				if ofTwo(e) {
					known[e.Person.N] = max(known[e.Person.N], e.Number)
				}
			}
		}
		out[d] = known
		known[who] = d + 1
		last[who] = known
	}
	return out
}

// uncut is an energy that the job cuts off somewhere and that is live at a step; empty for none.
func (p *Pass) uncut(d int) string {
	for _, track := range p.State.Tracks {
		if track.Kind == "energy" && d < len(track.Levels) && track.Levels[d] != state.Cut && track.Levels[d] != state.Proved {
			return track.Words
		}
	}
	return ""
}

// sameOrigin reports whether two steps of a joined job come from one procedure.
func sameOrigin(one, other *model.Step) bool {
	for _, a := range one.Origins() {
		for _, b := range other.Origins() {
			if a.Letter != "" && a.Letter == b.Letter {
				return true
			}
		}
	}
	return false
}
