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
	come := newCourse(len(p.inputs))              // numbers of the steps that each procedure has come to
	begin, finish := map[int]int{}, map[int]int{} // deeds of a task
	idle, free := map[int]int64{}, int64(0)       // before a task; when the hands are free
	after := p.afterEach(solved.Order)
	for place, t := range solved.Order {
		one := &p.tasks[t]
		if one.within >= 0 { // done already
			begin[t], finish[t] = begin[one.within], finish[one.within]
			continue
		}
		made := p.toward(p.states[state], one.need)
		next, cost, _ := p.move(state, t)
		start := solved.Starts[t]
		idle[t], free = start-cost-free, start+one.time
		come.course, come.after = solved.Order[place:], after[place:]
		p.acts(out, p.states[state], made, start-cost, come)
		out.Changes.add(made.counts)
		out.Changes.Seconds += cost
		out.Changes.Tools += one.tools
		if one.takes(p.inHand(p.states[state])) {
			out.Changes.Tools++
		}
		begin[t] = len(out.Deeds)
		for _, lost := range one.lead {
			out.Changes.Seconds += lost
		}
		out.Deeds = append(out.Deeds, p.deeds(one, start, p.states[next])...)
		finish[t] = len(out.Deeds) - 1
		p.passed(come, one)
		state = next
	}
	made := p.toward(p.states[state], p.closed())
	out.Changes.Seconds += p.cost(made.acts)
	come.course, come.after = nil, nil
	p.acts(out, p.states[state], made, solved.Length-p.cost(made.acts), come)
	p.addWaits(out, begin, finish)
	for w, one := range p.waits {
		out.Waits[w].Idle = idle[one.to]
	}
	out.reasons()
	out.loaded()
	return out
}

// loaded takes the energies that a part is loaded by out of what is cut off, once the part is
// under tension again and until it is let out anew: what the card says of the machine is to be
// true of it, though nobody gives such an energy back.
func (p *Plan) loaded() {
	var back []string
	for d := range p.Deeds {
		deed := &p.Deeds[d]
		verb := deed.Step.Verb.Key
		for _, object := range deed.Step.Objects {
			if deed.Change && object.Energy != nil && verb != "restore" {
				back = slices.DeleteFunc(back, func(name string) bool { return name == object.Energy.Name })
			}
		}
		deed.State.Cut = slices.DeleteFunc(slices.Clone(deed.State.Cut), func(name string) bool { return slices.Contains(back, name) })
		for _, object := range deed.Step.Objects {
			if verb == "tension" && object.Part != nil {
				back = append(back, object.Part.LoadedBy.Names()...)
			}
		}
	}
}

// deeds are the steps of a task that begins at a time, with what the machine is set to.
func (p *problem) deeds(one *task, start int64, v vector) []Deed {
	out := make([]Deed, len(one.steps))
	for i, step := range one.steps {
		start += one.lead[i]
		out[i] = Deed{Input: one.input, Step: step, Start: start, Seconds: p.seconds[step], Gate: -1, State: p.setting(v)}
		start += p.seconds[step]
	}
	out[0].Gate, out[0].Also = one.gate, p.shared(one)
	return out
}

// passed takes down that a task is done, and those whose work it does.
func (p *problem) passed(come course, one *task) {
	come.last[one.input] = one.steps[len(one.steps)-1].Number
	for _, step := range p.shared(one) {
		come.last[p.inputOf(step)] = step.Number
	}
}

// addWaits adds the waits, by the first and the last deed of each task, to the deeds that are
// done while they run.
func (p *problem) addWaits(out *Plan, begin, finish map[int]int) {
	for w, one := range p.waits {
		wait := Wait{Input: one.input, Step: one.step, From: finish[one.from], To: begin[one.to], Least: one.least, Most: one.most}
		for d := wait.From + 1; d < wait.To; d++ {
			out.Deeds[d].Open = append(out.Deeds[d].Open, w)
		}
		out.Waits = append(out.Waits, wait)
	}
}

// inputOf is whose step one is.
func (p *problem) inputOf(step *model.Step) int {
	return slices.IndexFunc(p.inputs, func(input Input) bool { return slices.Contains(input.Job.Steps, step) })
}

// reasons marks where a reader asks why a step stands where it does, and nothing beside it tells.
// A wait tells with its bar and its gate, and a change of the machine by standing right before.
//
// Where a procedure is left though it has work yet, or is gone on with after the work of others,
// the setting is the reason, if it has lasted and is not that of what was left, or of what the
// procedure did before. And where somebody stood idle at a wait while this was to do, that wait
// is, if the machine is changed for it in a way that no wait allows.
func (p *Plan) reasons() {
	last, before := -1, map[int]int{} // the work before, and of each procedure
	for d := range p.Deeds {
		deed := &p.Deeds[d]
		deed.Held = -1
		if deed.Change {
			continue
		}
		if last >= 0 && deed.Input != p.Deeds[last].Input && deed.Step.Section == "step" && len(deed.Open) == 0 && deed.Gate < 0 {
			other := func(at int) bool { return at >= 0 && !p.Deeds[at].State.same(deed.State) }
			own, begun := before[deed.Input]
			if last == d-1 {
				deed.Between = other(p.next(d, p.Deeds[last].Input)) || begun && other(own)
			} else {
				deed.Held = p.held(last, d)
			}
		}
		last, before[deed.Input] = d, d
	}
}

// next is the next work of a procedure behind a deed; -1 for none.
func (p *Plan) next(d, input int) int {
	for later := d + 1; later < len(p.Deeds); later++ {
		if deed := &p.Deeds[later]; deed.Input == input && !deed.Change && deed.Step.Section == "step" {
			return later
		}
	}
	return -1
}

// held is a wait, over by some work, at which somebody stood idle since the machine may not be
// changed then as it is between that and another work; -1 for none.
func (p *Plan) held(last, d int) int {
	from, to := p.Deeds[last].State, p.Deeds[d].State
	given := slices.ContainsFunc(from.Cut, func(name string) bool { return !slices.Contains(to.Cut, name) })
	if from.Pose == to.Pose && slices.Equal(from.Up, to.Up) && !given {
		return -1
	}
	for w, wait := range slices.Backward(p.Waits) {
		if wait.Idle > 0 && wait.To <= last && wait.Input != p.Deeds[d].Input && slices.ContainsFunc(p.Deeds[wait.To:d], func(deed Deed) bool { return deed.Input == wait.Input }) {
			return w
		}
	}
	return -1
}

// same reports whether the machine is set to the same.
func (s Setting) same(other Setting) bool {
	return s.Pose == other.Pose && slices.Equal(s.Cut, other.Cut) && slices.Equal(s.Off, other.Off) && slices.Equal(s.Up, other.Up)
}

// acts adds the steps of a change. Those of one authored step on several things are one again.
func (p *problem) acts(out *Plan, from vector, made change, start int64, come course) {
	v, acts := from, p.ordered(made.acts)
	begun := len(out.Deeds)
	for i, one := range acts {
		took := p.took(one)
		final := !slices.ContainsFunc(acts[i+1:], func(next act) bool { return p.same(one, next) })
		p.apply(&v, one, final)
		input, step, also, again := p.whose(one, come)
		authors := append([]*model.Step{step}, also...)
		start = p.linger(out, one.before, begun, v, start, authors, come)
		behind := slices.DeleteFunc(slices.Clone(one.behind), func(wait *model.Step) bool {
			return slices.ContainsFunc(acts[i+1:], func(next act) bool {
				return slices.ContainsFunc(next.behind, func(other *model.Step) bool { return alikeWaits(wait, other) })
			})
		})
		at := len(out.Deeds) - 1
		only := ""
		if len(step.Objects) > 1 {
			only = p.changes(one)[0]
		}
		if i > 0 && only != "" && at >= 0 && out.Deeds[at].Step == step && out.Deeds[at].Change {
			out.Deeds[at].Only = append(out.Deeds[at].Only, only)
			for _, other := range also {
				if !slices.Contains(out.Deeds[at].Also, other) {
					out.Deeds[at].Also = append(out.Deeds[at].Also, other)
				}
			}
			out.Deeds[at].Seconds += took
			out.Deeds[at].State = p.setting(v)
			start = p.linger(out, behind, begun, v, start+took, authors, come)
			continue
		}
		deed := Deed{Input: input, Step: step, Change: true, Start: start, Seconds: took, Gate: -1, State: p.setting(v), Also: also, Again: again}
		if only != "" {
			deed.Only = []string{only}
		}
		out.Deeds = append(out.Deeds, deed)
		start = p.linger(out, behind, begun, v, start+took, authors, come)
	}
}

// same reports whether two acts change one thing in one way.
func (p *problem) same(one, other act) bool {
	job, next := p.inputs[one.input].Job, p.inputs[other.input].Job
	return kindOf(job, one.step) == kindOf(next, other.step) && slices.Equal(p.changes(one), p.changes(other))
}

// changes are the names of what an act changes.
func (p *problem) changes(one act) []string {
	job := p.inputs[one.input].Job
	switch kindOf(job, one.step) {
	case raises, lowers:
		return []string{p.machine.lifted(job, one.step)}
	case turns:
		return []string{one.step.Pose.Name()}
	}
	var out []string
	for _, object := range one.step.Objects {
		name := ""
		switch {
		case object.Energy != nil:
			name = object.Energy.Name
		case object.Part != nil:
			name = object.Part.Name
		}
		if one.only == "" || one.only == name {
			out = append(out, name)
		}
	}
	return out
}

// apply takes an act over into a state: what goes off or is cut is so from the first step of
// its way, what comes back from the last.
func (p *problem) apply(v *vector, one act, final bool) {
	m := &p.machine
	for _, name := range p.changes(one) {
		switch kindOf(p.inputs[one.input].Job, one.step) {
		case cuts:
			v.cut |= 1 << index(&m.energies, name)
		case restores:
			if final {
				v.cut &^= 1<<index(&m.energies, name) | m.follows
			}
		case uncovers:
			v.off |= 1 << index(&m.covers, name)
		case covers:
			if final {
				v.off &^= 1 << index(&m.covers, name)
			}
		case raises:
			v.up |= 1 << index(&m.lifts, name)
		case lowers:
			if final {
				v.up &^= 1 << index(&m.lifts, name)
			}
		case turns:
			v.pose = index(&m.poses, name)
		}
	}
}

// alike reports whether a step of a job does the same as an act to the same things.
func (one act) alike(job *model.Job, step *model.Step) bool {
	return step.Verb.Key == one.step.Verb.Key && kindOf(job, step) != work && one.about(step)
}

// about reports whether a step is about a thing that an act changes.
func (one act) about(step *model.Step) bool {
	return slices.ContainsFunc(step.Objects, func(o model.Object) bool {
		return slices.ContainsFunc(one.step.Objects, func(other model.Object) bool { return o.Key() == other.Key() && o.Words() == other.Words() })
	})
}

// concerns reports whether a step of a job changes the very thing that an act does.
func (p *problem) concerns(one act, job *model.Job, step *model.Step) bool {
	switch k := kindOf(job, step); k {
	case work:
		return false
	case raises, lowers, turns:
		own := kindOf(p.inputs[one.input].Job, one.step)
		if own == turns || k == turns {
			return own == k && one.step.Pose.Name() == step.Pose.Name()
		}
		return (own == raises || own == lowers) && p.machine.lifted(job, step) == p.machine.lifted(p.inputs[one.input].Job, one.step)
	}
	names := p.changes(one)
	return slices.ContainsFunc(step.Objects, func(o model.Object) bool {
		return o.Energy != nil && slices.Contains(names, o.Energy.Name) || o.Part != nil && slices.Contains(names, o.Part.Name)
	})
}

// course is how far a plan has come in each procedure, and what comes.
type course struct {
	last   []int         // numbers of the steps of work that were done last
	told   map[told]bool // steps that a change was told to be
	course []int         // the tasks that come, in order
	after  []vector      // what the machine is set to behind each of them
}

// told is a step, or the part of it that is about one thing.
type told struct {
	step *model.Step
	only string
}

func newCourse(procedures int) course {
	return course{last: make([]int, procedures), told: map[told]bool{}}
}

// afterEach is what the machine is set to behind each task of an order.
func (p *problem) afterEach(order []int) []vector {
	out := make([]vector, len(order))
	state := p.state(vector{pose: p.resting})
	for place, t := range order {
		state, _, _ = p.move(state, t)
		out[place] = p.states[state]
	}
	return out
}

// stands reports whether what an act brought about holds in a state; of what it takes back it
// says nothing.
func (p *problem) stands(one act, v vector) bool {
	m := &p.machine
	return !slices.ContainsFunc(p.changes(one), func(name string) bool {
		switch kindOf(p.inputs[one.input].Job, one.step) {
		case cuts:
			return v.cut&(1<<index(&m.energies, name)) == 0
		case uncovers:
			return v.off&(1<<index(&m.covers, name)) == 0
		case raises:
			return v.up&(1<<index(&m.lifts, name)) == 0
		case turns:
			return v.pose != index(&m.poses, name)
		}
		return false
	})
}

// serves reports whether a change is the one that a step of a procedure makes: the first work
// that its author has behind it is done before the change is taken back. Where he has none that
// needs it, any change is.
func (p *problem) serves(one act, come course, input int, step *model.Step) bool {
	next := slices.IndexFunc(p.tasks, func(t task) bool {
		return t.input == input && t.steps[len(t.steps)-1].Number > step.Number
	})
	if next < 0 || !p.wants(one, p.tasks[next].need) {
		return true
	}
	for place, t := range come.course {
		if !p.stands(one, come.after[place]) {
			return false
		}
		if t == next {
			return true
		}
	}
	return false
}

// wants reports whether a need is what an act brings about.
func (p *problem) wants(one act, want need) bool {
	return p.stands(one, vector{cut: want.cut, off: want.off, up: want.up, pose: want.pose})
}

// whose says which step an act is: of each procedure what it does next to the thing, so that
// the second time it cuts an energy off is its second such step. Where each author's own step is
// told already, it is done again: for the one who works behind it, if he has such a step.
func (p *problem) whose(one act, come course) (input int, step *model.Step, also []*model.Step, again bool) {
	input = -1
	back := slices.Contains([]kind{restores, covers, lowers}, kindOf(p.inputs[one.input].Job, one.step))
	order := []int{one.input}
	for i := range p.inputs {
		if i != one.input {
			order = append(order, i)
		}
	}
	for _, i := range order {
		job := p.inputs[i].Job
		for _, other := range job.Steps[come.last[i]:] {
			if back && kindOf(job, other) == work && other.Verb.Key != "wait" {
				break // it still needs the thing as it is
			}
			key := told{step: other}
			if len(other.Objects) > 1 {
				key.only = p.changes(one)[0]
			}
			if !p.concerns(one, job, other) || come.told[key] {
				continue
			}
			if other.Verb.Key != one.step.Verb.Key || !back && !p.serves(one, come, i, other) {
				break // the next that it does to the thing is something else, or later
			}
			come.told[key] = true
			if input < 0 {
				input, step = i, other
			} else {
				also = append(also, other)
			}
			break
		}
	}
	if input >= 0 {
		return input, step, also, false
	}
	if len(come.course) > 0 {
		next := p.tasks[come.course[0]]
		job := p.inputs[next.input].Job
		for _, other := range slices.Backward(job.Steps[:next.steps[0].Number]) {
			if other.Verb.Key == one.step.Verb.Key && p.concerns(one, job, other) {
				return next.input, other, nil, true
			}
		}
	}
	return one.input, one.step, nil, true
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
	out := Setting{Cut: pick(m.energies, v.cut), Off: pick(m.covers, v.off), Up: m.called(pick(m.lifts, v.up))}
	if v.pose >= 0 && v.pose != p.resting {
		out.Pose = m.poses[v.pose]
	}
	return out
}
