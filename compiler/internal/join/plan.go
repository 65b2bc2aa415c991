package join

import (
	"slices"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/sequence"
)

// plan turns an order of tasks into steps with their times.
func (p *problem) plan(solved sequence.Plan) *Plan {
	out := &Plan{Inputs: p.inputs, Length: solved.Length, Bound: solved.Bound, Proved: solved.Proved}
	v := vector{pose: p.resting}
	state := p.state(v)
	begin, finish := map[int]int{}, map[int]int{} // deeds of a task
	idle, free := map[int]int64{}, int64(0)       // before a task; when the hands are free
	for _, t := range solved.Order {
		one := &p.tasks[t]
		if one.within >= 0 { // done already
			begin[t], finish[t] = begin[one.within], finish[one.within]
			continue
		}
		made := p.toward(p.states[state], one.need)
		next, cost, _ := p.move(state, t)
		start := solved.Starts[t]
		idle[t], free = start-cost-free, start+one.time
		p.acts(out, made, start-cost)
		out.Changes.add(made.counts)
		out.Changes.Seconds += cost
		out.Changes.Tools += one.tools
		if one.first.tool != "" && index(&p.tools, one.first.tool)+1 != p.states[state].tool {
			out.Changes.Tools++
		}
		begin[t] = len(out.Deeds)
		for i, step := range one.steps {
			took := p.seconds[step]
			start += one.lead[i]
			out.Changes.Seconds += one.lead[i]
			gate := -1
			if len(out.Deeds) == begin[t] {
				gate = one.gate
			}
			deed := Deed{Input: one.input, Step: step, Start: start, Seconds: took, Gate: gate, State: p.setting(p.states[next])}
			if i == 0 {
				deed.Also = p.shared(one)
			}
			out.Deeds = append(out.Deeds, deed)
			start += took
		}
		finish[t] = len(out.Deeds) - 1
		state = next
	}
	made := p.toward(p.states[state], p.closed())
	out.Changes.Seconds += p.cost(made.acts)
	p.acts(out, made, solved.Length-p.cost(made.acts))
	out.between()
	for w, one := range p.waits {
		wait := Wait{Input: one.input, Step: one.step, From: finish[one.from], To: begin[one.to], Least: one.least, Idle: idle[one.to]}
		for d := wait.From + 1; d < wait.To; d++ {
			out.Deeds[d].Open, out.Deeds[d].Between = append(out.Deeds[d].Open, w), false
		}
		out.Deeds[wait.To].Between = false
		out.Waits = append(out.Waits, wait)
	}
	return out
}

// between marks where a procedure is gone on with while another still has work of the same
// setting: there a reader asks why.
func (p *Plan) between() {
	last := -1 // the work before
	for d := range p.Deeds {
		if p.Deeds[d].Change {
			continue
		}
		if last >= 0 && p.Deeds[d].Input != p.Deeds[last].Input && p.Deeds[d].Step.Section == "step" {
			left := p.Deeds[last].Input
			p.Deeds[d].Between = slices.ContainsFunc(p.Deeds[d:], func(later Deed) bool {
				return later.Input == left && !later.Change && later.Step.Section == "step"
			})
		}
		last = d
	}
}

// acts adds the steps of a change. Those of one authored step on several things are one again.
func (p *problem) acts(out *Plan, made change, start int64) {
	for i, one := range made.acts {
		took := p.took(one)
		last := len(out.Deeds) - 1
		if i > 0 && one.only != "" && last >= 0 && out.Deeds[last].Step == one.step && out.Deeds[last].Change {
			out.Deeds[last].Only = append(out.Deeds[last].Only, one.only)
			out.Deeds[last].Seconds += took
			start += took
			continue
		}
		deed := Deed{Input: one.input, Step: one.step, Change: true, Start: start, Seconds: took, Gate: -1, State: p.setting(made.to)}
		if one.only != "" {
			deed.Only = []string{one.only}
		}
		deed.Also = p.alike(one)
		out.Deeds = append(out.Deeds, deed)
		start += took
	}
}

// alike are the steps of other jobs that do the same to the same things.
func (p *problem) alike(one act) []*model.Step {
	var out []*model.Step
	for i, input := range p.inputs {
		if i == one.input {
			continue
		}
		for _, step := range input.Job.Steps {
			if step.Verb.Key == one.step.Verb.Key && kindOf(input.Job, step) != work && slices.ContainsFunc(step.Objects, func(o model.Object) bool {
				return slices.ContainsFunc(one.step.Objects, func(other model.Object) bool { return o.Key() == other.Key() && o.Words() == other.Words() })
			}) {
				out = append(out, step)
				break
			}
		}
	}
	return out
}

// setting puts a state into names.
func (p *problem) setting(v vector) Setting {
	m := &p.machine
	pick := func(names []string, bits uint64) []string {
		var out []string
		for i, name := range names {
			if bits&(1<<i) != 0 {
				out = append(out, name)
			}
		}
		return out
	}
	out := Setting{Cut: pick(m.energies, v.cut), Off: pick(m.covers, v.off), Up: pick(m.lifts, v.up), Apart: v.open != 0}
	if v.pose >= 0 && v.pose != p.resting {
		out.Pose = m.poses[v.pose]
	}
	return out
}
