package join

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/sequence"
)

// problem is the tasks of some jobs on one machine.
type problem struct {
	inputs  []Input
	machine machine
	tasks   []task
	waits   []wait
	over    []wait // that are waited out within a task, and have a most
	warmed  []wait // from a run that warms something to where it is drained
	spans   []span
	final   []setting // how each author leaves the machine
	gives   []bool    // who gives an energy back
	before  [][2]int
	anews   []anew
	lids    []uint64 // of each procedure: covers of vessels that it opens
	seconds map[*model.Step]int64
	mean    map[*model.Step]int64 // of steps that only change the state, among those alike

	from              []ahead // what comes from each task on
	chains            []int   // the first task of each procedure, and the end
	resting           int     // pose before everything
	offCost, onCost   []int64 // of covers
	cutCost, backCost []int64 // of energies
	upCost, downCost  []int64 // of what is raised
	turnCost          []int64 // into poses

	posts  map[*model.Step]needs.Post // of a job for two: where each step keeps a person
	beside map[[2]*model.Step]string  // and why two of them cannot be done at once
	allCut uint64                     // energies that are cut off somewhere in it

	states []vector
	index  map[vector]sequence.State
	tools  []string
	fluids []string
}

// vector is what the machine and the hands are at.
type vector struct {
	cut, off, up, open uint64
	pose, tool, fluid  int
	input              int // whose task was the last, from 1
}

func newProblem(inputs []Input) *problem {
	p := &problem{inputs: inputs, index: map[vector]sequence.State{}, seconds: map[*model.Step]int64{}, mean: map[*model.Step]int64{}}
	for i, input := range inputs {
		p.machine.learn(i, input.Job)
	}
	p.machine.settle(inputs)
	p.machine.lead(inputs)
	p.resting = p.rests()
	for i, input := range inputs {
		p.spans = append(p.spans, spansOf(i, input.Job)...)
	}
	for i, input := range inputs {
		p.tasksOf(i, input.Job)
	}
	p.mark()
	p.setAnew()
	p.shutFromDirt()
	p.guardFromTurning()
	p.coldFirst()
	p.share()
	p.barWaits()
	p.keepWarm()
	p.lookAhead()
	return p
}

// mark says of each task what it opens, what it closes, and what bars it.
func (p *problem) mark() {
	for s, one := range p.spans {
		p.span(one, 1<<s)
	}
	for t := range p.tasks {
		one := &p.tasks[t]
		for _, step := range one.steps {
			keys := touched(p.inputs[one.input].Job, step, p.spans)
			for s, span := range p.spans {
				if span.input != one.input && (keys[span.key] || one.runs) {
					one.bars |= 1 << s
				}
			}
		}
	}
}

// span marks the tasks that open and close one span. It is closed by the last task that puts
// the thing right before it is opened again; by none, it is when the machine runs again, or
// at the end of the job.
func (p *problem) span(one span, bit uint64) {
	opened, last := -1, -1
	closes := func(t int) { p.tasks[t].closes |= bit }
	for t := range p.tasks {
		if p.tasks[t].input != one.input {
			continue
		}
		if opened >= 0 && last < 0 && p.tasks[t].runs && t > opened {
			closes(t - 1)
			opened = -1
		}
		for _, step := range p.tasks[t].steps {
			if !slices.ContainsFunc(step.Objects, func(o model.Object) bool { return thing(o) == one.key }) {
				continue
			}
			switch {
			case slices.Contains(one.opens(), step.Verb.Key):
				if last >= 0 {
					closes(last)
				}
				opened, last = t, -1
				p.tasks[t].opens |= bit
			case slices.Contains(one.closes(), step.Verb.Key) && opened >= 0:
				last = t
			}
		}
	}
	switch {
	case last >= 0:
		closes(last)
	case opened >= 0:
		for t := range p.tasks {
			if p.tasks[t].input == one.input {
				last = t
			}
		}
		closes(last)
	}
}

// hands says which tools a step takes, and what it leaves wet.
func (p *problem) hands(input int, step *model.Step) hands {
	out := hands{tool: strings.Join(p.inputs[input].Needs.Hands(step), " ")}
	for _, object := range step.Objects {
		switch {
		case step.Fluid.Set():
			out.fluid = step.Fluid.Name()
		case object.Cavity != nil && step.Verb.Key == "fill":
			out.fluid = object.Cavity.Fluid.Name()
		case object.Point != nil && (step.Verb.Key == "grease" || step.Verb.Key == "lubricate"):
			out.fluid = object.Point.Fluid.Name()
		}
	}
	return out
}

// resting is the pose a job begins in: the one it ends in, so that it is a turn and back.
func (m *machine) resting(job *model.Job) int {
	last := -1
	for _, step := range job.Steps {
		if kindOf(job, step) == turns {
			last = index(&m.poses, step.Pose.Name())
		}
	}
	if last < 0 && len(m.poses) > 0 {
		return -1
	}
	return last
}

// rests is the pose the machine is in before everything: that of the first job that turns it.
func (p *problem) rests() int {
	for _, input := range p.inputs {
		if at := p.machine.resting(input.Job); at >= 0 {
			return at
		}
	}
	return -1
}

func (p *problem) state(v vector) sequence.State {
	if at, known := p.index[v]; known {
		return at
	}
	at := sequence.State(len(p.states))
	p.states, p.index[v] = append(p.states, v), at
	return at
}

// asked is the problem as the search takes it.
func (p *problem) asked() sequence.Problem {
	out := sequence.Problem{Before: p.before, Start: p.state(vector{pose: p.resting}), Move: p.move, End: p.end, Holds: p.holds, Rest: p.rest}
	for _, one := range p.tasks {
		out.Times = append(out.Times, one.time)
	}
	out.Lags = p.lags(0)
	return out
}

// roomy is the problem with something in hand at the end of each wait that has a most.
func (p *problem) roomy() sequence.Problem {
	out := p.asked()
	out.Lags = p.lags(spared)
	return out
}

// warm is that problem with what was run warm drained while it is.
func (p *problem) warm() sequence.Problem {
	out := p.roomy()
	for _, one := range p.warmed {
		out.Lags = append(out.Lags, sequence.Lag{From: one.from, To: one.to, Most: p.passes(one) + staysWarm})
	}
	return out
}

// spared is the share of what lies between the least and the most of a wait that a plan keeps
// free at its end, one part in so many: the times are those that authors list, and nobody works
// by the second.
const spared = 4

// lags are the waits between tasks, those that are waited out within one last. Of what lies
// between the least and the most of a wait a share is kept in hand, one part in so many; 0 for
// none.
func (p *problem) lags(share int64) []sequence.Lag {
	var out []sequence.Lag
	for _, one := range slices.Concat(p.waits, p.over) {
		most := one.most
		if most > 0 {
			if share > 0 {
				most -= (most - one.least) / share
			}
			most = max(most, p.passes(one))
		}
		out = append(out, sequence.Lag{From: one.from, To: one.to, Least: one.least, Most: most, Bars: one.bars})
	}
	return out
}

// solve finds the order, or says which steps fight.
func (p *problem) solve(budget sequence.Budget) (sequence.Plan, error) {
	if err := cmp.Or(p.crowded(), p.leftOpen()); err != nil {
		return sequence.Plan{}, err
	}
	asked := p.asked()
	plan, err := sequence.Solve(p.warm(), budget)
	var fight *sequence.Conflict
	if errors.As(err, &fight) && len(p.warmed) > 0 { // cold, then
		plan, err = sequence.Solve(p.roomy(), budget)
	}
	if errors.As(err, &fight) { // with nothing in hand, then
		plan, err = sequence.Solve(asked, budget)
	}
	if err != nil && errors.As(err, &fight) {
		if late := p.late(asked, budget); late != nil {
			return plan, late
		}
		return plan, p.explain(fight)
	}
	return plan, err
}

// passes is the time that a wait and what comes next takes its author alone: no order has it
// shorter, so none is held against it.
func (p *problem) passes(one wait) int64 {
	begin := one.from
	for begin > 0 && p.tasks[begin-1].input == one.input {
		begin--
	}
	alone := sequence.Problem{Start: p.state(vector{pose: p.resting}), Holds: p.holds}
	var order []int
	for t := begin; t <= one.to; t++ {
		order = append(order, t-begin)
		alone.Times = append(alone.Times, p.tasks[t].time)
	}
	for _, w := range p.waits {
		if w.input == one.input && w.to <= one.to {
			alone.Lags = append(alone.Lags, sequence.Lag{From: w.from - begin, To: w.to - begin, Least: w.least})
		}
	}
	alone.Move = func(from sequence.State, t int) (sequence.State, int64, bool) { return p.move(from, begin+t) }
	plan, err := sequence.Replay(alone, order)
	if err != nil {
		return 0 // the search says why
	}
	return plan.Starts[one.to-begin] - plan.Starts[one.from-begin] - p.tasks[one.from].time
}

// late is the conflict of a problem that has an order only if a wait takes longer than its
// author lets it; nil where that is not why there is none.
func (p *problem) late(asked sequence.Problem, budget sequence.Budget) error {
	asked.Lags = slices.Clone(asked.Lags)
	at := -1
	for i := range asked.Lags {
		if asked.Lags[i].Most > 0 {
			asked.Lags[i].Most, at = 0, i
		}
	}
	if at < 0 {
		return nil
	}
	if _, err := sequence.Solve(asked, budget); err != nil {
		return nil
	}
	one := slices.Concat(p.waits, p.over)[at]
	wait, to := step{one.input, one.step}, step{one.input, p.tasks[one.to].steps[0]}
	return p.conflict(fmt.Sprintf("%s would come later than the wait at %s lets it, in every order that was found", p.named(to), p.named(wait)), "Leave one of the procedures out, or give the wait a longer most if the work bears it.", wait, to)
}

// holds says whether a change may be made while a wait runs: the machine stays as it lies,
// and stays cut off, no vessel is shut that has to stand open, and no cover is put back or comes
// off that its author puts back or takes off behind the wait.
func (p *problem) holds(lag int, from, to sequence.State) bool {
	a, b := p.states[from], p.states[to]
	w := p.waits[lag]
	put, taken := a.off&^b.off, b.off&^a.off
	return !p.shuts(w, a, b) && put&w.off == 0 && taken&w.later == 0 && a.pose == b.pose && a.up == b.up && a.cut&^b.cut == 0
}

// change is how the machine is set otherwise: the acts in order, and the state behind them.
type change struct {
	acts   []act
	counts Changes
	to     vector
}

// toward is how the machine is brought from a state to what is needed: covers on, energies
// cut off, the machine turned, raised or let down, energies given back, covers off.
func (p *problem) toward(from vector, want need) change {
	m := &p.machine
	out := change{to: from}
	v := &out.to
	live := want.live & v.cut
	on := want.on & v.off
	for c, guards := range m.guards { // what guards against an energy goes on before that comes back
		if guards&live != 0 {
			on |= v.off & (1 << c) &^ want.off
		}
	}
	for c := range m.covers {
		if on&(1<<c) != 0 {
			out.acts = append(out.acts, m.on[c]...)
			v.off &^= 1 << c
		}
	}
	missing := m.led(want.cut&^v.cut, v.cut|want.live)
	out.acts = append(out.acts, m.inOrder(missing, cuts, m.cut)...)
	for e := range m.energies {
		if missing&(1<<e) != 0 {
			out.counts.Isolations++
		}
	}
	v.cut |= missing
	if want.pose >= 0 && want.pose != v.pose {
		out.acts = append(out.acts, m.turn[want.pose]...)
		out.counts.Turns++
		v.pose = want.pose
	}
	for l := range m.lifts {
		if bit := uint64(1) << l; want.down&v.up&bit != 0 {
			out.acts = append(out.acts, m.down[l]...)
			v.up &^= bit
		}
	}
	for l := range m.lifts {
		if bit := uint64(1) << l; want.up&bit != 0 && v.up&bit == 0 {
			out.acts = append(out.acts, m.up[l]...)
			out.counts.Turns++
			v.up |= bit
		}
	}
	if live != 0 {
		out.acts = append(out.acts, m.inOrder(live, restores, m.back)...)
		v.cut &^= live | m.follows
	}
	for c := range m.covers {
		if want.off&(1<<c) != 0 && v.off&(1<<c) == 0 {
			out.acts = append(out.acts, m.off[c]...)
			out.counts.Covers++
			v.off |= 1 << c
		}
	}
	return out
}

// inOrder are the acts that cut some energies off, or give them back, in the order of the
// author who does so to most of them; what that one has not comes behind.
func (m *machine) inOrder(some uint64, k kind, longest [][]act) []act {
	best, most := -1, 0
	for input, ways := range m.ways {
		n := 0
		for e, name := range m.energies {
			if some&(1<<e) != 0 && len(ways[name][k]) > 0 && len(ways[name][k]) == len(longest[e]) {
				n++
			}
		}
		if n > most {
			best, most = input, n
		}
	}
	var out, rest, mixed []act
	for e, name := range m.energies {
		switch {
		case some&(1<<e) == 0:
		case best >= 0 && len(m.ways[best][name][k]) == len(longest[e]):
			out = append(out, withWaits(m.ways[best][name][k], longest[e])...)
		case slices.ContainsFunc(longest[e], func(one act) bool { return one.input != longest[e][0].input }):
			mixed = append(mixed, longest[e]...) // a way of several authors stays as it is
		default:
			rest = append(rest, longest[e]...)
		}
	}
	order := func(acts []act) {
		slices.SortStableFunc(acts, func(a, b act) int {
			return cmp.Or(cmp.Compare(a.input, b.input), cmp.Compare(a.step.Number, b.step.Number), cmp.Compare(place(a), place(b)))
		})
	}
	order(out)
	order(rest)
	return slices.Concat(out, rest, mixed)
}

// place is where the object of an act stands among those of its step.
func place(one act) int {
	return slices.IndexFunc(one.step.Objects, func(o model.Object) bool { return o.Energy != nil && o.Energy.Name == one.only })
}

// cost is what acts take, in seconds; one of several objects takes its share.
func (p *problem) cost(acts []act) int64 {
	var out int64
	for _, one := range acts {
		out += p.took(one)
	}
	for _, wait := range waitsOf(acts) {
		out += seconds(wait.Wait)
	}
	return out
}

// took is what an act takes: the mean of what the authors of such a step give it.
func (p *problem) took(one act) int64 {
	mean, known := p.mean[one.step]
	if !known {
		same := []*model.Step{one.step}
		for i, input := range p.inputs {
			if at := slices.IndexFunc(input.Job.Steps, func(step *model.Step) bool {
				return one.alike(input.Job, step) && len(step.Objects) == len(one.step.Objects)
			}); at >= 0 && i != one.input {
				same = append(same, input.Job.Steps[at])
			}
		}
		sum := int64(0)
		for _, step := range same {
			sum += p.seconds[step]
		}
		mean = sum / int64(len(same))
		for _, step := range same {
			p.mean[step] = mean
		}
	}
	if one.only == "" {
		return mean
	}
	return mean / int64(max(1, len(one.step.Objects)))
}

// move is what has to be changed before a task, and the state after it.
func (p *problem) move(from sequence.State, t int) (sequence.State, int64, bool) {
	one, v := &p.tasks[t], p.states[from]
	if one.within >= 0 {
		return from, 0, true
	}
	if v.open&one.bars != 0 {
		return 0, 0, false
	}
	made := p.toward(v, one.need)
	if (made.to.pose != v.pose || made.to.up != v.up) && p.spilt(v.open) {
		return 0, 0, false
	}
	cost := p.cost(made.acts) + one.lost(p.inHand(v), v.input)
	v = made.to
	if one.first.tool != "" {
		v.tool = index(&p.tools, one.last.tool) + 1
	}
	if one.first.fluid != "" {
		v.fluid = index(&p.fluids, one.last.fluid) + 1
	}
	v.input = one.input + 1
	v.open = v.open&^one.closes | one.opens&^one.closes
	if one.runs {
		v.cut &^= p.machine.follows
	}
	return p.state(v), cost, true
}

// inHand is what the hands are at in a state.
func (p *problem) inHand(v vector) (out hands) {
	if v.tool > 0 {
		out.tool = p.tools[v.tool-1]
	}
	if v.fluid > 0 {
		out.fluid = p.fluids[v.fluid-1]
	}
	return out
}

// spilt reports whether something that holds a fluid is open.
func (p *problem) spilt(open uint64) bool {
	for s, one := range p.spans {
		if one.cavity && open&(1<<s) != 0 {
			return true
		}
	}
	return false
}

// end is what closing up takes.
func (p *problem) end(from sequence.State) int64 {
	return p.cost(p.toward(p.states[from], p.closed()).acts)
}

// closed is what the machine is to be set to in the end: as it was.
func (p *problem) closed() need {
	m := &p.machine
	return need{live: 1<<len(m.energies) - 1, on: 1<<len(m.covers) - 1, down: 1<<len(m.lifts) - 1, pose: p.resting}
}
