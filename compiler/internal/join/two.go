package join

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"slices"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/sequence"
)

// roundsOfTwo is how many plans for two people are tried; each takes a millisecond or so.
const roundsOfTwo = 400

// OfTwo joins procedures for two people. The plan is a good one and never called the shortest;
// its bound is what no plan of two goes below. Two steps are done at once only where each is
// done in areas that are described as apart from those of the other, nothing of either moves
// the machine, takes all hands, or reaches further (needs.Beside), no tool is asked of both,
// and all that the job cuts off anywhere is cut off. The machine is set otherwise, and runs,
// only while nobody works at it. Where a second person is no help, it is the plan for
// one, which says why. The error is a *Conflict where the procedures cannot be one job.
func OfTwo(inputs []Input, budget sequence.Budget) (*Plan, error) {
	one, err := Of(inputs, budget)
	if err != nil {
		return nil, err
	}
	p := newProblem(inputs)
	if one.ForOne = p.unshared(); one.ForOne != "" {
		return one, nil
	}
	best := p.lists()
	if best == nil || one.Length-best.length < max(leastGain, one.Length/leastShare) || !best.atOnce() {
		one.ForOne = "no plan for two that was found saves a minute, and one part in twenty" + p.longestAlone()
		return one, nil
	}
	out := p.planOfTwo(best)
	if err := out.compare(p); err != nil {
		return nil, err
	}
	return out, nil
}

// leastGain are the seconds that a plan for two saves at the least, and leastShare the part of the
// whole, or else it is none: nobody stands by for an hour to save a minute.
const leastGain, leastShare = 60, 20

// atOnce reports whether two ever work at once.
func (s *schedule) atOnce() bool {
	for i, one := range s.shifts {
		for _, other := range s.shifts[:i] {
			if one.worker != other.worker && one.start < other.ends && other.start < one.ends {
				return true
			}
		}
	}
	return false
}

// lists makes plans by shaken weights, and shakes the best of them further; nil where none
// leads to the end.
func (p *problem) lists() *schedule {
	random := rand.New(rand.NewPCG(uint64(len(p.tasks)), 2))
	shaken := make([]float64, len(p.tasks)+1) // the last is who does a task, of two that are free
	for i := range shaken {
		shaken[i] = 0.5
	}
	best := p.two(shaken)
	for round := range roundsOfTwo {
		shake := slices.Clone(shaken)
		for i := range shake {
			if round < roundsOfTwo/4 || random.IntN(len(shake)) < 3 {
				shake[i] = random.Float64()
			}
		}
		if one := p.two(shake); one != nil && (best == nil || one.length < best.length || one.length == best.length && one.swaps <= best.swaps) {
			best, shaken = one, shake
		}
	}
	return best
}

// posted works out where each step keeps a person, and what the whole job cuts off.
func (p *problem) posted() {
	p.posts, p.beside = map[*model.Step]needs.Post{}, map[[2]*model.Step]string{}
	for _, input := range p.inputs {
		for i, post := range input.Needs.Posts(input.Job) {
			p.posts[input.Job.Steps[i]] = post
		}
	}
	for t := range p.tasks {
		p.allCut |= p.tasks[t].need.cut
	}
}

// unshared says why nothing of the job can be done by two; empty where something can.
func (p *problem) unshared() string {
	p.posted()
	for _, input := range p.inputs {
		if people := input.Job.Procedure.People; people.Or(1) > 1 {
			return fmt.Sprintf("%s takes %d people already, and a job is shared out to two that one person can do", input.Job.File.Name(), people.N)
		}
	}
	why := ""
	for a := range p.tasks {
		for b := range a {
			if p.tasks[a].input == p.tasks[b].input || p.tasks[a].runs || p.tasks[b].runs {
				continue
			}
			for _, one := range p.tasks[a].steps {
				for _, other := range p.tasks[b].steps {
					apart := p.apart(one, other)
					if apart == "" {
						return ""
					}
					if why == "" && p.posts[one].Alone == "" && p.posts[other].Alone == "" {
						why = " (" + apart + ")"
					}
				}
			}
		}
	}
	return fmt.Sprintf("no two steps are described as apart%s: describe areas of the machine with [area.NAME], which of them are apart, and in which each of its parts is", why)
}

// longestAlone names the step that takes longest of those beside which nobody can work, and why;
// empty where there is none. A run is nobody's to do beside something else.
func (p *problem) longestAlone() string {
	var longest *model.Step
	for t := range p.tasks {
		if p.tasks[t].within >= 0 || p.tasks[t].runs {
			continue
		}
		for _, step := range p.tasks[t].steps {
			if p.posts[step].Alone != "" && (longest == nil || p.seconds[step] > p.seconds[longest]) {
				longest = step
			}
		}
	}
	if longest == nil {
		return ""
	}
	return fmt.Sprintf("; what keeps two from working at once longest is step %d of %s (%s): %s", longest.Number, p.inputs[p.inputOf(longest)].Job.File.Name(), plain(p.seconds[longest]), p.posts[longest].Alone)
}

// apart says why two steps of two procedures cannot be done at once; empty where they can.
func (p *problem) apart(one, other *model.Step) string {
	pair := [2]*model.Step{one, other}
	why, known := p.beside[pair]
	if !known {
		why = needs.Beside(p.inputs[p.inputOf(one)].Job, p.posts[one], p.posts[other])
		p.beside[pair] = why
	}
	return why
}

// shift is one task of a plan for two, with the change before it.
type shift struct {
	task   int
	worker int    // 0 or 1
	before vector // what the machine was set to
	made   change
	from   int64 // the change begins
	start  int64 // the task begins
	ends   int64
	state  vector
	lead   int64 // seconds at its begin for another tool, fluid or procedure
	takes  bool  // another tool is taken for it
	place  int   // of the task in the order
}

// schedule is a plan for two.
type schedule struct {
	shifts []shift
	order  []int    // of all tasks, those that another run does included
	after  []vector // what the machine is set to behind each of them
	last   vector   // what the machine is set to before it is closed up
	close  change
	length int64
	swaps  int // how often a procedure is gone on with by the other
}

// hand is what one person is at.
type hand struct {
	at    hands
	input int // whose task was the last, from 1
	busy  bool
	ends  int64
	task  int
	steps []moment // of the task it is at, with their times
}

// moment is a step with its times.
type moment struct {
	step       *model.Step
	start, end int64
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
	first  bool // the first who is free does a task, whoever was at its procedure
}

// two makes a plan for two by the weights of the tasks, the heaviest first: what comes behind
// a task, shaken by a factor of 0.2 to 1.8. It is nil where the weights lead nowhere.
func (p *problem) two(shake []float64) *schedule {
	b := &bench{p: p, v: vector{pose: p.resting}, ended: make([]int64, len(p.tasks)), begun: make([]bool, len(p.tasks)), left: len(p.tasks), weight: make([]float64, len(p.tasks)), first: shake[len(p.tasks)] > 0.5}
	tails := p.tails()
	for t := range p.tasks {
		b.ended[t], b.weight[t] = -1, float64(tails[t])
		b.weight[t] *= 0.2 + 1.6*shake[t]
	}
	for b.left > 0 {
		if !b.step() {
			return nil
		}
	}
	begun, at := map[int]int64{}, map[int]int{}
	for _, one := range b.out.shifts {
		begun[one.task] = one.start
		input := p.tasks[one.task].input
		if before := at[input]; before != 0 && before != one.worker+1 {
			b.out.swaps++
		}
		at[input] = one.worker + 1
	}
	for _, lag := range p.warm().Lags {
		if start, known := begun[lag.To]; known && lag.Most > 0 && start-b.ended[lag.From] > lag.Most {
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
			b.out.order, b.out.after = append(b.out.order, t), append(b.out.after, b.v)
			b.left--
			return true
		}
	}
	if !b.hands[0].busy || !b.hands[1].busy {
		if t := b.choose(func(t int) bool { return len(b.p.toward(b.v, b.p.tasks[t].need).acts) == 0 }); t >= 0 {
			b.begin(t, b.whose(t))
			return true
		}
	}
	if b.hands[0].busy || b.hands[1].busy {
		b.goOn()
		return true
	}
	if t := b.choose(b.changes); t >= 0 {
		b.begin(t, b.whose(t))
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

// whose is who does a task, of those that are free: who was at its procedure, then who loses the
// least by another tool or fluid, then the first. Work that changes hands for nothing is told
// twice.
func (b *bench) whose(t int) int {
	one, best, least := &b.p.tasks[t], -1, int64(0)
	for w := range b.hands {
		if b.hands[w].busy {
			continue
		}
		if b.first {
			return w
		}
		lost := one.lost(b.hands[w].at, b.hands[w].input)
		if b.hands[w].input != 0 && b.hands[w].input == one.input+1 {
			lost = -1
		}
		if best < 0 || lost < least {
			best, least = w, lost
		}
	}
	return best
}

// ready reports whether what a task waits for is over.
func (b *bench) ready(t int) bool {
	for _, pair := range b.p.before {
		if pair[1] == t && (b.ended[pair[0]] < 0 || b.ended[pair[0]] > b.now) {
			return false
		}
	}
	for _, wait := range b.p.waits {
		ended := b.ended[wait.from]
		if over := ended+wait.least <= b.now; !over && (wait.to == t || ended >= 0 && slices.Contains(wait.bars, t)) {
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
		if !alone && slices.ContainsFunc(b.hands[:], func(h hand) bool { return h.busy && !b.beside(t, h) }) {
			continue
		}
		if (best < 0 || b.weight[t] > b.weight[best]) && suits(t) {
			best = t
		}
	}
	return best
}

// beside reports whether a task can begin now while another person goes on with what they are
// at: no two of their steps that would be done at once are in each other's way.
func (b *bench) beside(t int, other hand) bool {
	p, one := b.p, &b.p.tasks[t]
	if p.tasks[other.task].runs || p.tasks[other.task].bars&one.opens != 0 || p.allCut&^b.v.cut != 0 {
		return false
	}
	idle := b.hands[0]
	if idle.busy {
		idle = b.hands[1]
	}
	for _, own := range p.moments(t, b.now+one.lost(idle.at, idle.input)) {
		for _, theirs := range other.steps {
			if own.start < theirs.end && theirs.start < own.end && p.apart(own.step, theirs.step) != "" {
				return false
			}
		}
	}
	return true
}

// moments are the steps of a task that begins at a time.
func (p *problem) moments(t int, start int64) []moment {
	one := &p.tasks[t]
	out := make([]moment, len(one.steps))
	for i, step := range one.steps {
		begin := start
		start += one.lead[i] + p.seconds[step]
		out[i] = moment{step, begin, start}
	}
	return out
}

// changes reports whether the machine may be set to what a task needs now.
func (b *bench) changes(t int) bool {
	made := b.p.toward(b.v, b.p.tasks[t].need)
	moved := made.to.pose != b.v.pose || made.to.up != b.v.up
	if moved && b.p.spilt(b.v.open) {
		return false
	}
	for w, wait := range b.p.waits {
		if ended := b.ended[wait.from]; ended >= 0 && ended+wait.least > b.now && !b.p.holds(w, b.p.state(b.v), b.p.state(made.to)) {
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
	lost, takes := one.lost(h.at, h.input), one.takes(h.at)
	h.at.tool, h.at.fluid = cmp.Or(one.last.tool, h.at.tool), cmp.Or(one.last.fluid, h.at.fluid)
	h.input, h.busy, h.task = one.input+1, true, t
	h.ends = b.now + lost + one.time
	h.steps = b.p.moments(t, b.now+lost)
	b.v = made.to
	b.v.open |= one.opens
	b.begun[t] = true
	after := b.v
	if one.runs {
		after.cut &^= b.p.machine.follows
	}
	b.out.order, b.out.after = append(b.out.order, t), append(b.out.after, after)
	b.out.shifts = append(b.out.shifts, shift{task: t, worker: worker, before: before, made: made, from: from, start: b.now + lost, ends: h.ends, state: b.v, lead: lost, takes: takes, place: len(b.out.order) - 1})
}

// goOn lets time go on to the next end of a step.
func (b *bench) goOn() {
	next := int64(-1)
	for _, h := range b.hands {
		for _, one := range append(h.steps, moment{end: h.ends}) {
			if h.busy && one.end > b.now && (next < 0 || one.end < next) {
				next = one.end
			}
		}
	}
	if next < 0 { // what is at hand takes no time
		next = b.now
	}
	b.now = next
	for w := range b.hands {
		h := &b.hands[w]
		if !h.busy || h.ends > next {
			continue
		}
		one := &b.p.tasks[h.task]
		h.busy, h.steps, b.ended[h.task] = false, nil, next
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
		for _, lost := range t.lead {
			one.made.counts.Seconds += lost
		}
		out.Changes.add(one.made.counts)
		out.Changes.Tools += t.tools
		if one.takes {
			out.Changes.Tools++
		}
		before := &Plan{}
		come.course, come.after = made.order[one.place:], made.after[one.place:]
		p.acts(before, one.before, one.made, one.from, come)
		for _, deed := range before.Deeds {
			deed.Worker = does(deed, one.worker+1)
			pieces = append(pieces, piece{deed: deed, task: -1, insertion: n})
		}
		for i, deed := range p.deeds(t, one.start, one.state) {
			deed.Worker = one.worker + 1
			pieces = append(pieces, piece{deed: deed, task: one.task, isFirst: i == 0, isLast: i == len(t.steps)-1, insertion: n})
		}
		p.passed(come, t)
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
	closes := len(out.Deeds)
	come.course, come.after = nil, nil
	p.acts(out, made.last, made.close, made.length-closing, come)
	for d := range out.Deeds[closes:] {
		out.Deeds[closes+d].Worker = does(out.Deeds[closes+d], 1)
	}
	p.once(out)
	for d := range out.Deeds {
		out.Deeds[d].Held = -1
	}
	for t := range p.tasks {
		if does := p.tasks[t].within; does >= 0 {
			begin[t], finish[t] = begin[does], finish[does]
		}
	}
	p.addWaits(out, begin, finish)
	out.loaded()
	return out
}

// does says who does a change of the machine in a plan for two: where an energy is cut off or
// given back both are there, each with a lock of their own.
func does(deed Deed, worker int) int {
	if deed.Step.Verb.Key == "isolate" || deed.Step.Verb.Key == "restore" {
		return 0
	}
	return worker
}

// once tells each deed of the last deed of the other person that is to be done before it: where
// the two cannot be done at once, and nothing that is told already sees to it. What one person
// does comes in its order by itself.
func (p *problem) once(out *Plan) {
	known := make([][3]int, len(out.Deeds)) // of each person, the last deed that is over before this one, from 1
	var last [3]int                         // of each person, the last deed so far, from 1
	for d := range out.Deeds {
		deed := &out.Deeds[d]
		if deed.Worker == 0 { // both come to it when all before it is done
			last, known[d] = [3]int{0, d + 1, d + 1}, [3]int{0, d + 1, d + 1}
			continue
		}
		other := 3 - deed.Worker
		if own := last[deed.Worker]; own > 0 {
			known[d] = known[own-1]
			known[d][deed.Worker] = own
		}
		for e := last[other] - 1; e >= known[d][other]; e-- {
			if out.Deeds[e].Worker == other && !p.together(&out.Deeds[e], deed) {
				deed.Once = append(deed.Once, e)
				known[d][other] = max(e+1, known[e][other])
				known[d][deed.Worker] = max(known[d][deed.Worker], known[e][deed.Worker])
				break
			}
		}
		last[deed.Worker] = d + 1
	}
}

// together reports whether two deeds of two people can be done at once, or in either order.
func (p *problem) together(one, other *Deed) bool {
	if one.Change || other.Change || one.Input == other.Input {
		return false
	}
	cut := func(s Setting) bool {
		var bits uint64
		for _, name := range s.Cut {
			bits |= 1 << index(&p.machine.energies, name)
		}
		return p.allCut&^bits == 0
	}
	if !cut(one.State) || !cut(other.State) || p.apart(one.Step, other.Step) != "" {
		return false
	}
	for _, pair := range [][2]*Deed{{one, other}, {other, one}} {
		t, u := p.taskOf(pair[0].Step), p.taskOf(pair[1].Step)
		if p.tasks[t].bars&(p.tasks[u].opens|p.tasks[u].closes) != 0 {
			return false
		}
	}
	return true
}

// taskOf is the task that a step of work stands in.
func (p *problem) taskOf(step *model.Step) int {
	return slices.IndexFunc(p.tasks, func(one task) bool { return slices.Contains(one.steps, step) })
}

// boundOfTwo is what no plan of two goes below: all the work and all that has to be changed,
// less what two can do at once at the most; or the longest procedure with its waits.
func (p *problem) boundOfTwo() int64 {
	var work int64
	for t := range p.tasks {
		work += p.tasks[t].time
	}
	start := p.state(vector{pose: p.resting})
	out := work + p.rest(make([]uint64, len(p.tasks)/64+1), start) - p.mostAtOnce()
	tails := p.tails()
	for _, t := range p.chains[:len(p.chains)-1] {
		out = max(out, tails[t])
	}
	return out
}

// mostAtOnce is how many seconds at the most two people can work at once: a step is done beside
// those only that it can be done beside, and beside one at a time. That is a matching of times,
// which may be broken off: half of the largest flow from the steps to the steps.
func (p *problem) mostAtOnce() int64 {
	var steps []moment // with their times, wherever they begin
	var of []int       // whose they are
	for t := range p.tasks {
		if p.tasks[t].runs || p.tasks[t].within >= 0 {
			continue
		}
		for _, one := range p.moments(t, 0) {
			steps, of = append(steps, one), append(of, p.tasks[t].input)
		}
	}
	n := len(steps)
	source, sink := 2*n, 2*n+1
	left := make([][]int64, 2*n+2) // capacity that is left from node to node
	for i := range left {
		left[i] = make([]int64, 2*n+2)
	}
	for i, one := range steps {
		left[source][i], left[n+i][sink] = one.end-one.start, one.end-one.start
		for k, other := range steps {
			if of[i] != of[k] && p.apart(one.step, other.step) == "" {
				left[i][n+k] = one.end - one.start
			}
		}
	}
	return flow(left, source, sink) / 2
}

// flow is the largest flow from a node to another, by shortest ways that still take some
// (Edmonds and Karp 1972). It uses up the capacities.
func flow(left [][]int64, source, sink int) int64 {
	var total int64
	for {
		from := make([]int, len(left))
		for i := range from {
			from[i] = -1
		}
		from[source] = source
		for queue := []int{source}; len(queue) > 0 && from[sink] < 0; queue = queue[1:] {
			for next, capacity := range left[queue[0]] {
				if capacity > 0 && from[next] < 0 {
					from[next] = queue[0]
					queue = append(queue, next)
				}
			}
		}
		if from[sink] < 0 {
			return total
		}
		most := int64(-1)
		for at := sink; at != source; at = from[at] {
			if c := left[from[at]][at]; most < 0 || c < most {
				most = c
			}
		}
		for at := sink; at != source; at = from[at] {
			left[from[at]][at] -= most
			left[at][from[at]] += most
		}
		total += most
	}
}
