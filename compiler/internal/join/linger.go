package join

import (
	"slices"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/pattern"
)

// lingers finds the waits of a job that belong to cutting an energy off: before it is proved, or
// behind that and before anything is done at the machine. Nobody fills them, and whoever cuts the
// energy off waits, since a store runs down or a thing goes cold in that time. They stand by the
// step that they are before, or behind.
func lingers(job *model.Job) (before, behind map[*model.Step][]*model.Step) {
	before, behind = map[*model.Step][]*model.Step{}, map[*model.Step][]*model.Step{}
	var last *model.Step // the step before that cuts something off, with nothing but waits since
	var waits []*model.Step
	worked := false
	for _, step := range job.Steps {
		if step.Verb.Key == "wait" {
			if last != nil {
				waits = append(waits, step)
			}
			continue
		}
		k := kindOf(job, step)
		switch {
		case len(waits) == 0:
		case k == cuts:
			before[step] = waits
		case !worked && !step.Meanwhile.On:
			behind[last] = waits
		}
		waits, last = nil, nil
		if k == cuts {
			last = step
		}
		worked = worked || k == work
	}
	return before, behind
}

// alikeWaits reports whether two waits are one: as long, for the same, with the same kept.
func alikeWaits(one, other *model.Step) bool {
	return one == other || one.Wait.Text.Text == other.Wait.Text.Text && sameWords(one.Until.Text, other.Until.Text) &&
		slices.EqualFunc(one.Keep.Items, other.Keep.Items, func(a, b model.Text) bool { return sameWords(a.Text, b.Text) })
}

// addWaits adds the waits that are not there yet.
func addWaits(to, some []*model.Step) []*model.Step {
	out := slices.Clip(to)
	for _, wait := range some {
		if !slices.ContainsFunc(out, func(other *model.Step) bool { return alikeWaits(wait, other) }) {
			out = append(out, wait)
		}
	}
	return out
}

// withWaits are acts with the waits of another way to do the same: those before a step before the
// one with its verb, or before the last; those behind it all behind the last.
func withWaits(acts, other []act) []act {
	if len(acts) == 0 {
		return acts
	}
	out := slices.Clone(acts)
	for _, one := range other {
		at := slices.IndexFunc(out, func(own act) bool { return own.step.Verb.Key == one.step.Verb.Key })
		if at < 0 {
			at = len(out) - 1
		}
		if at == 0 && len(out) > 1 && len(one.before) > 0 { // it is cut off first
			at = 1
		}
		out[at].before = addWaits(out[at].before, one.before)
		last := &out[len(out)-1]
		last.behind = addWaits(last.behind, one.behind)
	}
	return out
}

// waitsOf are the waits within some acts, each once.
func waitsOf(acts []act) (out []*model.Step) {
	for _, one := range acts {
		out = addWaits(addWaits(out, one.before), one.behind)
	}
	return out
}

// linger adds the waits that stand before or behind an act to a plan: each once in a change, as
// the step of its author where it is his cutting off, and as done again where it is not.
func (p *problem) linger(out *Plan, waits []*model.Step, begun int, v vector, start int64, authors []*model.Step, come course) int64 {
	for _, wait := range waits {
		if slices.ContainsFunc(out.Deeds[begun:], func(deed Deed) bool { return deed.Step.Verb.Key == "wait" && alikeWaits(deed.Step, wait) }) {
			continue
		}
		deed := Deed{Input: p.inputOf(wait), Step: wait, Change: true, Again: true, Start: start, Seconds: seconds(wait.Wait), Gate: -1, State: p.setting(v)}
		for _, author := range authors {
			for _, own := range p.machine.waits[author] {
				if !alikeWaits(own, wait) || come.told[told{step: own}] {
					continue
				}
				come.told[told{step: own}] = true
				if deed.Again {
					deed.Input, deed.Step, deed.Again = p.inputOf(own), own, false
				} else {
					deed.Also = append(deed.Also, own)
				}
			}
		}
		out.Deeds = append(out.Deeds, deed)
		start += deed.Seconds
	}
	return start
}

// sets are words for what must set or dry, and wets for what would spoil that; common practice, no
// source.
var (
	sets = pattern.MustCompile(`(?i)\b(adhesive|glue|epoxy|seal(ant|er)|silicone|thread ?lock\w*|paint|primer|varnish|cement|resin|cur(e|es|ed|ing)|harden\w*|sets|dry|dries|dried)\b`)
	wets = pattern.MustCompile(`(?i)\b(hose\w*|wash\w*|rins\w*|spray\w*|jet\w*|blow\w*|blast\w*|sweep\w*|water)\b`)
)

// barWaits says which tasks of others fill no wait: those in which somebody waits himself and does
// nothing else, and, where something sets or dries, those that turn the works or make wet or dusty.
func (p *problem) barWaits() {
	for w := range p.waits {
		one := &p.waits[w]
		told := needs.Words(one.step)
		for t := range p.tasks {
			job := p.inputs[p.tasks[t].input].Job
			if p.tasks[t].input != one.input && slices.ContainsFunc(p.tasks[t].steps, func(step *model.Step) bool {
				return step.Verb.Key == "wait" || sets.MatchString(told) && (needs.TurnsByHand(job, step) || wets.MatchString(needs.Words(step)))
			}) {
				one.bars = append(one.bars, t)
			}
		}
	}
}

// staysWarm are the seconds that what was run warm may stand longer than its author lets it, until
// it is drained; common practice, no source.
const staysWarm = 15 * 60

var warms = pattern.MustCompile(`(?i)\b(warm|hot|temperature)\b`)

// keepWarm finds what is run warm and drained then by the same procedure: warm oil takes its dirt
// along.
func (p *problem) keepWarm() {
	for t := range p.tasks {
		one := &p.tasks[t]
		if !one.runs || one.within >= 0 || !slices.ContainsFunc(one.steps, func(step *model.Step) bool { return warms.MatchString(needs.Words(step)) }) {
			continue
		}
		for to := t + 1; to < len(p.tasks) && p.tasks[to].input == one.input && !p.tasks[to].runs; to++ {
			if slices.ContainsFunc(p.tasks[to].steps, func(step *model.Step) bool { return step.Verb.Key == "drain" }) {
				p.warmed = append(p.warmed, wait{input: one.input, from: t, to: to})
				break
			}
		}
	}
}
