package rules

import (
	"cmp"
	"fmt"
	"maps"
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
		if len(p.Job.Procedure.Joins.Items) != len(p.Job.Procedure.Joined.Items) {
			return // another rule's
		}
		kept := p.kept()
		p.strays(kept)
		for i := range kept.from {
			one := &kept.from[i]
			switch {
			case !one.known():
			case kept.mixedUp(one):
				p.mixedUp(kept, one)
			default:
				copies := kept.of(one)
				p.others(copies)
				p.doneTwice(copies)
				p.leavesOut(one, does(copies))
				p.unnamed(kept, one)
				p.cutsShort(one, does(copies))
			}
		}
	},
})

const originHelp = "Write the letter of the procedure, by its place in joins, and the number of the step there: origin = \"A 7\". A step that is new here has no origin."

// strays tells of origins that name no step, and of those of one letter that is not there, once.
func (p *Pass) strays(kept keptJob) {
	letters := map[string][]stray{}
	for _, one := range kept.strays {
		summary := ""
		switch {
		case one.origin.Letter == "" && len(kept.from) > 0:
			summary = fmt.Sprintf("%q is no letter of a procedure with the number of a step", one.origin.Text)
		case one.from == nil:
			letter := one.origin.Letter
			if len(kept.from) == 0 {
				letter = "" // all of them have one reason
			}
			letters[letter] = append(letters[letter], one)
			continue
		case kept.mixedUp(one.from):
			continue
		default:
			summary = fmt.Sprintf("%s has %d steps, and the origin names step %d", one.from.item.Text, len(one.from.job.Steps), one.origin.Number)
		}
		p.Found(finding.Finding{Place: one.step.Origin.At, Summary: summary, Help: originHelp})
	}
	for _, letter := range slices.Sorted(maps.Keys(letters)) {
		first, others := letters[letter][0], ""
		if n := len(letters[letter]) - 1; n > 0 {
			others = fmt.Sprintf(", and so do %d more", n)
		}
		found := finding.Finding{Place: first.step.Origin.At, Help: originHelp, Summary: fmt.Sprintf("no procedure is called %s: the job is joined out of %d; step %d names it%s", letter, len(kept.from), first.step.Number, others)}
		if letter == "" {
			found.Summary = fmt.Sprintf("step %d says which step of another procedure it comes from%s, and nothing says out of which procedures the job was joined", first.step.Number, others)
			found.Help = "Write joins and joined-revisions in [procedure]: the procedures in the order of the letters, and the revision of each; or join the job anew. A job that is not joined has no origins."
		}
		p.Found(found)
	}
}

// mixedUp tells once of a procedure that many steps name and do something else.
func (p *Pass) mixedUp(kept keptJob, one *joinedFrom) {
	var others []copied
	for _, copy := range kept.copies {
		if copy.from == one && copy.other() {
			others = append(others, copy)
		}
	}
	count := len(others)
	for _, stray := range kept.strays {
		if stray.from == one {
			count++
		}
	}
	found := finding.Finding{Place: one.item.At, Summary: fmt.Sprintf("%d steps of the job do something else than the steps of %s that they name", count, one.item.Text),
		Help: fmt.Sprintf("The letter %s stands for %s, by its place in joins: bring joins back into the order it was joined in, or join the job anew.", one.letter, one.item.Text)}
	if len(others) > 0 {
		found.Related = []finding.Related{{Place: others[0].step.Origin.At, Text: "the first of them"}, others[0].place()}
	}
	p.Found(found)
}

// others tells of steps with another verb than the one they name.
func (p *Pass) others(copies []copied) {
	for _, copy := range copies {
		if copy.own.Verb.Key != copy.step.Verb.Key {
			p.Found(finding.Finding{Place: copy.step.Origin.At, Summary: fmt.Sprintf("step %d is %s, and step %d of %s is %s", copy.step.Number, deed(copy.step), copy.own.Number, copy.from.item.Text, deed(copy.own)),
				Help: originHelp, Related: []finding.Related{copy.place()}})
		}
	}
}

// doneTwice tells of work that two steps do.
func (p *Pass) doneTwice(copies []copied) {
	before := map[int]*model.Step{}
	for _, copy := range copies {
		switch first := before[copy.own.Number]; {
		case copy.other():
		case first == nil:
			before[copy.own.Number] = copy.step
		case !makesReady(copy.from.job, copy.own):
			p.Found(finding.Finding{Place: copy.step.Origin.At, Summary: fmt.Sprintf("step %d of %s is done at step %d and again at step %d", copy.own.Number, copy.from.item.Text, first.Number, copy.step.Number),
				Help: "Take one of the two out, or correct its origin.", Related: []finding.Related{{Place: at(first), Text: "done here"}, copy.place()}})
		}
	}
}

// leavesOut tells of the work of a procedure that no step does.
func (p *Pass) leavesOut(one *joinedFrom, does map[int]*model.Step) {
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

// unnamed tells of a step that changes the state of the machine for a procedure that does the
// same to the same thing, and that none of these names: who logs the job by it leaves out, or
// has done, what he does not know of.
func (p *Pass) unnamed(kept keptJob, one *joinedFrom) {
	named := map[string]bool{}
	for _, copy := range kept.copies {
		if copy.from == one {
			for _, key := range changes(one.job, copy.own) {
				named[key] = true
			}
		}
	}
	for _, own := range one.job.Steps {
		for _, key := range changes(one.job, own) {
			at := slices.IndexFunc(kept.copies, func(copy copied) bool {
				return copy.main && slices.Contains(changes(copy.from.job, copy.own), key) && slices.Contains(changes(p.Job, copy.step), key)
			})
			if at < 0 || named[key] {
				continue
			}
			named[key] = true
			step := kept.copies[at].step
			p.Found(finding.Finding{Place: step.Origin.At, Summary: fmt.Sprintf("step %d does the same as step %d of %s, and no step names that", step.Number, own.Number, one.item.Text),
				Help: fmt.Sprintf("Write it behind the others, where it is done for %s: origin = \"%s, %s %d\".", one.item.Text, step.Origin.Text, one.letter, own.Number), Related: []finding.Related{one.place(own)}})
		}
	}
}

// changes are what a step does to each thing that it changes the state of, as "restore
// energy/mains" or "raise the deck"; none for a step of work.
func changes(job *model.Job, step *model.Step) []string {
	var out []string
	if makesReady(job, step) {
		for _, object := range step.Objects {
			out = append(out, step.Verb.Key+" "+cmp.Or(object.Key(), object.Words()+" "+step.Pose.Name()))
		}
	}
	return out
}

// cutsShort tells of work after a wait that does not say that it is to be over, or says it of
// another.
func (p *Pass) cutsShort(one *joinedFrom, does map[int]*model.Step) {
	var wait *model.Step // of the procedure, that nothing but what is done meanwhile has come after
	work, waits := false, false
	gates := slices.ContainsFunc(one.job.Steps, func(own *model.Step) bool { return own.Gate.Set() }) // of its own, which stand otherwise in the job
	for _, own := range one.job.Steps {
		step := does[own.Number]
		switch {
		case own.Verb.Key == "wait":
			wait, waits = nil, true
			if step != nil && asWritten(own, step) && work {
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

// asWritten reports whether a wait is that of its author; another rule tells where it is not.
func asWritten(own, step *model.Step) bool {
	_, unlike := step.UnlikeObjects(own, false)
	return !unlike
}

// gated wants the gate of what comes after a wait, where the work of other procedures stands
// between the two or another wait runs: with the time of the wait, and the step that it begins
// behind.
func (p *Pass) gated(one *joinedFrom, own, step, wait *model.Step) {
	least, known := wait.Wait.Lowest()
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
	want := append([]int{behind}, clock((int(seconds)+59)/60)...)
	if most, ends := wait.Most.Highest(); wait.Most.OK && ends {
		seconds, _ := most.Float64()
		want = append(want, clock(int(seconds)/60)...)
	}
	for _, figure := range want {
		if !slices.Contains(step.Figures(), figure) {
			p.Found(finding.Finding{Place: step.Gate.At, Summary: fmt.Sprintf("the gate of step %d does not tell of the wait at step %d: %s since step %d", step.Number, wait.Number, wait.Wait.Text.Text, behind), Help: help, Related: related})
			return
		}
	}
}

// clock are the figures of a time in a gate: hours and minutes.
func clock(minutes int) (out []int) {
	if minutes >= 60 {
		out = append(out, minutes/60)
	}
	if minutes%60 != 0 || minutes == 0 {
		out = append(out, minutes%60)
	}
	return out
}
