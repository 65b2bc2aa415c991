package rules

import (
	"fmt"
	"slices"
	"strconv"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "joined/step", Severity: finding.Error, Title: "A joined job does not do what its procedures say",
		Why:     "The service book counts the step as done for its procedure, and it was not done, or not as its author wrote it.",
		Source:  "the procedures themselves: the joined one is a copy of them",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\norigin = \"A 7\"\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		var known []joinedFrom // those whose steps can be told: another revision is another rule's
		joins := p.joins()
		for _, one := range joins {
			if one.job != nil && !one.anew() {
				known = append(known, one)
			}
		}
		does, others := p.comesFrom(joins, known)
		for _, one := range known {
			if p.mixedUp(one, others[one.letter]) {
				continue
			}
			p.leavesOut(one, does[one.letter])
			p.cutsShort(one, does[one.letter])
		}
	},
})

// other is a step that names one of a procedure as its origin and does something else.
type other struct{ step, own *model.Step }

const originHelp = "Write the letter of the procedure, by its place in joins, and the number of the step there: origin = \"A 7\". A step that is new here has no origin."

// comesFrom looks at each origin, and gives the first step that does each step of a procedure,
// by its letter and its number there, and of each procedure those that do something else.
func (p *Pass) comesFrom(joins, known []joinedFrom) (does map[string]map[int]*model.Step, others map[string][]other) {
	does, others = map[string]map[int]*model.Step{}, map[string][]other{}
	for _, one := range joins {
		does[one.letter] = map[int]*model.Step{}
	}
	for _, step := range p.Job.Steps {
		for _, origin := range step.Origins() {
			tell := func(summary string) {
				p.Found(finding.Finding{Place: step.Origin.At, Summary: summary, Help: originHelp})
			}
			which := slices.IndexFunc(known, func(one joinedFrom) bool { return one.letter == origin.Letter })
			switch {
			case origin.Letter == "":
				tell(fmt.Sprintf("%q is no letter of a procedure with the number of a step", origin.Text))
				continue
			case does[origin.Letter] == nil:
				tell(fmt.Sprintf("no procedure is called %s: the job is joined out of %d", origin.Letter, len(joins)))
				continue
			case which < 0:
				continue
			}
			one := known[which]
			if origin.Number > len(one.job.Steps) {
				tell(fmt.Sprintf("%s has %d steps, and the origin names step %d", one.item.Text, len(one.job.Steps), origin.Number))
				continue
			}
			own := one.job.Steps[origin.Number-1]
			switch before := does[one.letter][own.Number]; {
			case own.Verb.Key != step.Verb.Key:
				others[one.letter] = append(others[one.letter], other{step, own})
			case before == nil:
				does[one.letter][own.Number] = step
			case !makesReady(one.job, own):
				p.Found(finding.Finding{Place: step.Origin.At, Summary: fmt.Sprintf("step %d of %s is done at step %d and again at step %d", own.Number, one.item.Text, before.Number, step.Number),
					Help: "Take one of the two out, or correct its origin.", Related: []finding.Related{{Place: at(before), Text: "done here"}, one.place(own)}})
			}
		}
	}
	return does, others
}

// place is where a step of a procedure stands.
func (s joinedFrom) place(own *model.Step) finding.Related {
	return finding.Related{Place: own.Header, Text: fmt.Sprintf("step %d of %s", own.Number, s.item.Text)}
}

// mixedUp tells of steps that do something else than the one they name; of many once, and then
// it reports so: the letters have changed their places.
func (p *Pass) mixedUp(one joinedFrom, others []other) bool {
	const many = 4
	if len(others) >= many {
		p.Found(finding.Finding{Place: one.item.At, Summary: fmt.Sprintf("%d steps of the job do something else than the steps of %s that they name", len(others), one.item.Text),
			Help:    fmt.Sprintf("The letter %s stands for %s, by its place in joins: bring joins back into the order it was joined in, or join the job anew.", one.letter, one.item.Text),
			Related: []finding.Related{{Place: others[0].step.Origin.At, Text: "the first of them"}, one.place(others[0].own)}})
		return true
	}
	for _, at := range others {
		p.Found(finding.Finding{Place: at.step.Origin.At, Summary: fmt.Sprintf("step %d is %s, and step %d of %s is %s", at.step.Number, deed(at.step), at.own.Number, one.item.Text, deed(at.own)),
			Help: originHelp, Related: []finding.Related{one.place(at.own)}})
	}
	return false
}

// deed is a step by its verb.
func deed(step *model.Step) string {
	if step.Verb.Key == "" {
		return "one in words"
	}
	return strconv.Quote(step.Verb.Key)
}

// leavesOut tells of the work of a procedure that no step does.
func (p *Pass) leavesOut(one joinedFrom, does map[int]*model.Step) {
	var missing []string
	var related []finding.Related
	for _, own := range one.job.Steps {
		if does[own.Number] == nil && !makesReady(one.job, own) {
			missing = append(missing, strconv.Itoa(own.Number))
			related = append(related, one.place(own))
		}
	}
	if len(missing) == 0 {
		return
	}
	which, it := "step", "it"
	if len(missing) > 1 {
		which, it = "steps", "them"
	}
	p.Found(finding.Finding{Place: one.item.At, Summary: fmt.Sprintf("no step of the job does %s %s of %s", which, names(missing), one.item.Text),
		Help: fmt.Sprintf("Join it anew, or write %s in and name the origin: origin = \"%s %s\".", it, one.letter, missing[0]), Related: related[:1]})
}

// cutsShort tells of waits that are shorter than their author has them, and of work after a
// wait that does not say that it is to be over, or says it of another.
func (p *Pass) cutsShort(one joinedFrom, does map[int]*model.Step) {
	var wait *model.Step // of the procedure, that nothing but what is done meanwhile has come after
	work, waits := false, false
	gates := slices.ContainsFunc(one.job.Steps, func(own *model.Step) bool { return own.Gate.Set() }) // of its own, which stand otherwise in the job
	for _, own := range one.job.Steps {
		step := does[own.Number]
		switch {
		case own.Verb.Key == "wait":
			wait, waits = nil, true
			if step != nil && !p.shorter(one, own, step) && work && !own.Most.Set() && !own.Keep.Given { // else it may be waited out in one go
				wait = own
			}
		case makesReady(one.job, own):
		default:
			work = true
			switch {
			case own.Meanwhile.On || step == nil || gates:
			case wait != nil:
				p.gated(one, own, step, does[wait.Number])
			case !waits && step.Gate.Set():
				p.Found(finding.Finding{Place: step.Gate.At, Summary: fmt.Sprintf("step %d has a gate, and step %d of %s comes after no wait", step.Number, own.Number, one.item.Text),
					Help: "Take the gate out, or give it to the step that the wait is for.", Related: []finding.Related{one.place(own)}})
			}
			if !own.Meanwhile.On {
				wait = nil
			}
		}
	}
}

// shorter tells of a wait that is shorter than that of its procedure, and reports whether it is.
func (p *Pass) shorter(one joinedFrom, own, step *model.Step) bool {
	least, known := own.Wait.Min()
	here, told := step.Wait.Min()
	if !own.Wait.OK || !step.Wait.OK || !known || !told || here.Cmp(least) >= 0 {
		return false
	}
	p.Found(finding.Finding{Place: step.Wait.Text.At, Summary: fmt.Sprintf("the wait is %s, and %s has it %s", step.Wait.Text.Text, one.item.Text, own.Wait.Text.Text),
		Help: "Write the time that its author has; what is done meanwhile does not shorten it.", Related: []finding.Related{{Place: own.Wait.Text.At, Text: fmt.Sprintf("step %d of %s", own.Number, one.item.Text)}}})
	return true
}

// gated wants the gate of what comes after a wait, where the work of other procedures stands
// between the two or another wait runs: with the time of the wait, and the step that it begins
// behind.
func (p *Pass) gated(one joinedFrom, own, step, wait *model.Step) {
	least, known := wait.Wait.Min()
	foreign := func(between *model.Step) bool {
		return !slices.ContainsFunc(between.Origins(), func(origin model.Origin) bool { return origin.Letter == one.letter })
	}
	if !wait.Wait.OK || !known || step.Number < wait.Number || !step.Meanwhile.On && !slices.ContainsFunc(p.Job.Steps[wait.Number:step.Number-1], foreign) {
		return
	}
	behind := p.Job.Behind(wait)
	related := []finding.Related{{Place: at(wait), Text: "the wait"}, one.place(own)}
	help := fmt.Sprintf("Write gate = \"Not before %s have passed since step %d.\", in the language of the shop.", wait.Wait.Text.Text, behind)
	if !step.Gate.Set() {
		p.Found(finding.Finding{Place: at(step), Summary: fmt.Sprintf("step %d has no gate, so nothing tells that the wait at step %d is to be over first", step.Number, wait.Number), Help: help, Related: related})
		return
	}
	seconds, _ := least.Float64()
	minutes := (int(seconds) + 59) / 60
	want := []int{behind}
	if minutes >= 60 {
		want = append(want, minutes/60)
	}
	if minutes%60 != 0 || minutes == 0 {
		want = append(want, minutes%60)
	}
	for _, figure := range want {
		if !slices.Contains(step.Figures(), figure) {
			p.Found(finding.Finding{Place: step.Gate.At, Summary: fmt.Sprintf("the gate of step %d does not tell of the wait at step %d: %s since step %d", step.Number, wait.Number, wait.Wait.Text.Text, behind), Help: help, Related: related})
			return
		}
	}
}
