package join

import (
	"cmp"
	"math/rand/v2"
	"slices"

	"benchleaf/compiler/internal/sequence"
)

// roundsOfTwo is how many plans for two people are tried; each takes a millisecond or so.
const roundsOfTwo = 400

// OfTwo joins procedures for two people. The plan is a good one and never called the shortest;
// its bound is what no plan of two goes below. Both work at the machine as it is set; it is set
// otherwise only while nobody works at it, and while it runs nobody works at anything else.
func OfTwo(inputs []Input, budget sequence.Budget) (*Plan, error) {
	one, err := Of(inputs, budget)
	if err != nil {
		return nil, err
	}
	p := newProblem(inputs)
	best := p.two(nil)
	random := rand.New(rand.NewPCG(uint64(len(p.tasks)), 2))
	for range roundsOfTwo {
		shake := make([]float64, len(p.tasks))
		for i := range shake {
			shake[i] = random.Float64()
		}
		if one := p.two(shake); one != nil && (best == nil || one.length < best.length) {
			best = one
		}
	}
	if best == nil || best.length >= one.Length { // a second person is no help
		one.Workers, one.Bound, one.Proved = 2, min(one.Length, p.boundOfTwo()), false
		for d := range one.Deeds {
			one.Deeds[d].Worker = 1
		}
		return one, nil
	}
	out := p.planOfTwo(best)
	if err := out.compare(p); err != nil {
		return nil, err
	}
	return out, nil
}

// shift is one task of a plan for two, with the change before it.
type shift struct {
	task   int
	worker int    // 0 or 1
	before vector // what the machine was set to
	made   change
	from   int64 // the change begins
	start  int64 // the task begins
	state  vector
	lead   int64 // seconds at its begin for another tool, fluid or procedure
}

// schedule is a plan for two.
type schedule struct {
	shifts []shift
	last   vector // what the machine is set to before it is closed up
	close  change
	length int64
}

// hand is what one person is at.
type hand struct {
	at    hands
	input int // whose task was the last, from 1
	busy  bool
	ends  int64
	task  int
}

// bench is a plan for two while it is made.
type bench struct {
	p      *problem
	v      vector
	now    int64
	hands  [2]hand
	ended  []int64 // when each task has ended; -1 while it has not
	begun  []bool
	left   int
	out    schedule
	weight []float64
}

// two makes a plan for two by the weights of the tasks, the heaviest first: what comes behind
// a task, shaken. It is nil where the weights lead nowhere.
func (p *problem) two(shake []float64) *schedule {
	b := &bench{p: p, v: vector{pose: p.resting}, ended: make([]int64, len(p.tasks)), begun: make([]bool, len(p.tasks)), left: len(p.tasks), weight: make([]float64, len(p.tasks))}
	tails := p.tails()
	for t := range p.tasks {
		b.ended[t], b.weight[t] = -1, float64(tails[t])
		if shake != nil {
			b.weight[t] *= 0.6 + 0.8*shake[t]
		}
	}
	for b.left > 0 {
		if !b.step() {
			return nil
		}
	}
	b.out.last = b.v
	b.out.close = p.toward(b.v, p.closed())
	b.out.length = b.now + p.cost(b.out.close.acts)
	return &b.out
}

// tails are the seconds from the begin of each task to the end of its procedure, waits included.
func (p *problem) tails() []int64 {
	out := make([]int64, len(p.tasks))
	for t := len(p.tasks) - 1; t >= 0; t-- {
		out[t] = p.tasks[t].time
		if t+1 < len(p.tasks) && p.tasks[t+1].input == p.tasks[t].input {
			out[t] += out[t+1]
		}
		for _, w := range p.waits {
			if w.from == t {
				out[t] = max(out[t], p.tasks[t].time+w.least+out[w.to])
			}
		}
	}
	return out
}

// step begins a task, or lets time go on; false where nothing can ever begin.
func (b *bench) step() bool {
	for t := range b.p.tasks { // what another run did is done
		if one := &b.p.tasks[t]; one.within >= 0 && !b.begun[t] && b.ready(t) {
			b.begun[t], b.ended[t] = true, b.now
			b.left--
			return true
		}
	}
	for w := range b.hands {
		if b.hands[w].busy {
			continue
		}
		if t := b.choose(func(t int) bool { return len(b.p.toward(b.v, b.p.tasks[t].need).acts) == 0 }); t >= 0 {
			b.begin(t, w)
			return true
		}
	}
	if b.hands[0].busy || b.hands[1].busy {
		b.goOn()
		return true
	}
	if t := b.choose(b.changes); t >= 0 {
		b.begin(t, 0)
		return true
	}
	next := int64(-1) // a wait has to run out first
	for _, wait := range b.p.waits {
		if ended := b.ended[wait.from]; ended >= 0 && ended+wait.least > b.now && (next < 0 || ended+wait.least < next) {
			next = ended + wait.least
		}
	}
	if next < 0 {
		return false
	}
	b.now = next
	return true
}

// ready reports whether what a task waits for is over.
func (b *bench) ready(t int) bool {
	for _, pair := range b.p.before {
		if pair[1] == t && (b.ended[pair[0]] < 0 || b.ended[pair[0]] > b.now) {
			return false
		}
	}
	for _, wait := range b.p.waits {
		if wait.to == t && b.ended[wait.from]+wait.least > b.now {
			return false
		}
	}
	return true
}

// choose is the heaviest task that can begin now and suits; -1 for none.
func (b *bench) choose(suits func(int) bool) int {
	best := -1
	alone := !b.hands[0].busy && !b.hands[1].busy
	for t := range b.p.tasks {
		one := &b.p.tasks[t]
		if b.begun[t] || one.within >= 0 || b.v.open&one.bars != 0 || one.runs && !alone || !b.ready(t) {
			continue
		}
		if !alone && slices.ContainsFunc(b.hands[:], func(h hand) bool { return h.busy && (b.p.tasks[h.task].runs || b.p.tasks[h.task].bars&one.opens != 0) }) {
			continue
		}
		if (best < 0 || b.weight[t] > b.weight[best]) && suits(t) {
			best = t
		}
	}
	return best
}

// changes reports whether the machine may be set to what a task needs now.
func (b *bench) changes(t int) bool {
	made := b.p.toward(b.v, b.p.tasks[t].need)
	moved := made.to.pose != b.v.pose || made.to.up != b.v.up
	if moved && b.p.spilt(b.v.open) {
		return false
	}
	for _, wait := range b.p.waits {
		open := b.ended[wait.from] >= 0 && b.ended[wait.from]+wait.least > b.now
		if open && (moved || b.v.cut&^made.to.cut != 0) {
			return false
		}
	}
	return true
}

// begin lets a person begin a task, after the change it needs.
func (b *bench) begin(t, worker int) {
	one, h := &b.p.tasks[t], &b.hands[worker]
	made, before := b.p.toward(b.v, one.need), b.v
	from := b.now
	b.now += b.p.cost(made.acts)
	lead := int64(0)
	if one.first.tool != "" && one.first.tool != h.at.tool {
		lead += toolSeconds
	}
	if one.first.fluid != "" && h.at.fluid != "" && one.first.fluid != h.at.fluid {
		lead += fluidSeconds
	}
	if h.input != 0 && h.input != one.input+1 {
		lead += placeSeconds
	}
	h.at.tool, h.at.fluid = cmp.Or(one.last.tool, h.at.tool), cmp.Or(one.last.fluid, h.at.fluid)
	h.input, h.busy, h.task = one.input+1, true, t
	h.ends = b.now + lead + one.time
	b.v = made.to
	b.v.open |= one.opens
	b.begun[t] = true
	b.out.shifts = append(b.out.shifts, shift{task: t, worker: worker, before: before, made: made, from: from, start: b.now + lead, state: b.v, lead: lead})
}

// goOn lets time go on to the next end of a task.
func (b *bench) goOn() {
	next := int64(-1)
	for _, h := range b.hands {
		if h.busy && (next < 0 || h.ends < next) {
			next = h.ends
		}
	}
	b.now = next
	for w := range b.hands {
		h := &b.hands[w]
		if !h.busy || h.ends != next {
			continue
		}
		one := &b.p.tasks[h.task]
		h.busy, b.ended[h.task] = false, next
		b.left--
		b.v.open &^= one.closes
		if one.runs {
			b.v.cut &^= b.p.machine.follows
		}
	}
}

// planOfTwo turns a schedule into steps with their times.
func (p *problem) planOfTwo(made *schedule) *Plan {
	out := &Plan{Inputs: p.inputs, Length: made.length, Bound: p.boundOfTwo(), Workers: 2}
	begin, finish := map[int]int{}, map[int]int{}
	type piece struct {
		deed      Deed
		task      int
		isFirst   bool
		isLast    bool
		insertion int
	}
	var pieces []piece
	come := newCourse(len(p.inputs))
	for n, one := range made.shifts {
		t := &p.tasks[one.task]
		one.made.counts.Seconds = p.cost(one.made.acts) + one.lead
		out.Changes.add(one.made.counts)
		out.Changes.Tools += t.tools
		before := &Plan{}
		p.acts(before, one.before, one.made, one.from, come)
		for _, deed := range before.Deeds {
			deed.Worker = one.worker + 1
			pieces = append(pieces, piece{deed: deed, task: -1, insertion: n})
		}
		start := one.start
		for i, step := range t.steps {
			start += t.lead[i]
			deed := Deed{Input: t.input, Step: step, Start: start, Seconds: p.seconds[step], Gate: -1, State: p.setting(one.state), Worker: one.worker + 1}
			if i == 0 {
				deed.Gate, deed.Also = t.gate, p.shared(t)
			}
			pieces = append(pieces, piece{deed: deed, task: one.task, isFirst: i == 0, isLast: i == len(t.steps)-1, insertion: n})
			start += p.seconds[step]
			come.last[t.input] = step.Number
		}
		for _, step := range p.shared(t) {
			come.last[p.inputOf(step)] = step.Number
		}
	}
	slices.SortStableFunc(pieces, func(a, b piece) int {
		return cmp.Or(cmp.Compare(a.deed.Start, b.deed.Start), cmp.Compare(a.insertion, b.insertion))
	})
	for _, one := range pieces {
		if one.isFirst {
			begin[one.task] = len(out.Deeds)
		}
		if one.isLast {
			finish[one.task] = len(out.Deeds)
		}
		out.Deeds = append(out.Deeds, one.deed)
	}
	closing := p.cost(made.close.acts)
	out.Changes.Seconds += closing
	p.acts(out, made.last, made.close, made.length-closing, come)
	for d := range out.Deeds {
		out.Deeds[d].Worker = max(out.Deeds[d].Worker, 1)
	}
	for t := range p.tasks {
		if does := p.tasks[t].within; does >= 0 {
			begin[t], finish[t] = begin[does], finish[does]
		}
	}
	for w, one := range p.waits {
		wait := Wait{Input: one.input, Step: one.step, From: finish[one.from], To: begin[one.to], Least: one.least}
		for d := wait.From + 1; d < wait.To; d++ {
			out.Deeds[d].Open = append(out.Deeds[d].Open, w)
		}
		out.Waits = append(out.Waits, wait)
	}
	return out
}

// boundOfTwo is what no plan of two goes below: half of the work, and all of the runs and of
// what has to be changed, since nobody works then; or the longest procedure with its waits.
func (p *problem) boundOfTwo() int64 {
	var work, alone int64
	for t := range p.tasks {
		if p.tasks[t].runs {
			alone += p.tasks[t].time
		} else {
			work += p.tasks[t].time
		}
	}
	start := p.state(vector{pose: p.resting})
	out := (work+1)/2 + alone + p.rest(make([]uint64, len(p.tasks)/64+1), start)
	tails := p.tails()
	for _, t := range p.chains[:len(p.chains)-1] {
		out = max(out, tails[t])
	}
	return out
}
