package join

import (
	"math/bits"

	"benchleaf/compiler/internal/sequence"
)

// What is still to be changed, seen from each task of a procedure to its end. What one thing
// of the machine costs does not hang on the others, so what they cost at least adds up: a
// cover comes off as often as one procedure alone has to take it off, whatever the others do.
type ahead struct {
	covers, energies, lifts []phases
	poses                   []int // demands in order, one after another different
	tasks                   int
}

// phases are how often a thing has to be off, cut or raised, and whether that is what is
// wanted of it first.
type phases struct {
	times int
	now   bool // the first demand is to be off
	any   bool // there is a demand
}

// demanded looks one task further back.
func (f phases) demanded(off, on bool) phases {
	switch {
	case off && (!f.any || !f.now):
		return phases{f.times + 1, true, true}
	case off:
		return phases{f.times, true, true}
	case on:
		return phases{f.times, false, true}
	}
	return f
}

// costs is what a thing that is off, or is not, costs at the least until it is as it was.
func (f phases) costs(off bool, there, back int64) int64 {
	goes, comes := int64(f.times), int64(f.times)
	switch {
	case off && f.any && f.now:
		goes--
	case off:
		comes++
	}
	return goes*there + comes*back
}

// lookAhead works out, for each task, what comes from it on in its procedure.
func (p *problem) lookAhead() {
	m := &p.machine
	p.from = make([]ahead, len(p.tasks)+1)
	for t := len(p.tasks) - 1; t >= 0; t-- {
		one := &p.tasks[t]
		next := ahead{covers: make([]phases, len(m.covers)), energies: make([]phases, len(m.energies)), lifts: make([]phases, len(m.lifts))}
		if t+1 < len(p.tasks) && p.tasks[t+1].input == one.input {
			next = p.from[t+1]
		}
		if one.within >= 0 {
			p.from[t] = next
			continue
		}
		own := ahead{tasks: next.tasks + 1, poses: next.poses}
		own.covers = demands(next.covers, one.need.off, one.need.on)
		own.energies = demands(next.energies, one.need.cut, one.need.live)
		own.lifts = demands(next.lifts, one.need.up, one.need.down)
		if pose := one.need.pose; pose >= 0 && (len(own.poses) == 0 || own.poses[0] != pose) {
			own.poses = append([]int{pose}, own.poses...)
		}
		p.from[t] = own
	}
	for t := range p.tasks {
		if t == 0 || p.tasks[t-1].input != p.tasks[t].input {
			p.chains = append(p.chains, t)
		}
	}
	p.chains = append(p.chains, len(p.tasks))
	for i := range m.covers {
		p.offCost, p.onCost = append(p.offCost, p.cost(m.off[i])), append(p.onCost, p.cost(m.on[i]))
	}
	for i := range m.energies {
		p.cutCost, p.backCost = append(p.cutCost, p.cost(m.cut[i])), append(p.backCost, p.cost(m.back[i]))
	}
	for i := range m.lifts {
		p.upCost, p.downCost = append(p.upCost, p.cost(m.up[i])), append(p.downCost, p.cost(m.down[i]))
	}
	for i := range m.poses {
		p.turnCost = append(p.turnCost, p.cost(m.turn[i]))
	}
}

func demands(next []phases, off, on uint64) []phases {
	out := make([]phases, len(next))
	for i, one := range next {
		out[i] = one.demanded(off&(1<<i) != 0, on&(1<<i) != 0)
	}
	return out
}

// rest is what has to be changed at the least for the tasks that are not done, closing up
// included. done is a bit for each task; those of a procedure are done in their order.
func (p *problem) rest(done []uint64, state sequence.State) int64 {
	v := &p.states[state]
	var heads [64]int
	n, total := 0, int64(0)
	for c := range len(p.chains) - 1 {
		at := p.chains[c]
		for at < p.chains[c+1] { // the first that is not done
			word := ^done[at/64] >> (at % 64)
			if word != 0 {
				at += bits.TrailingZeros64(word)
				break
			}
			at += 64 - at%64
		}
		if at < p.chains[c+1] && n < len(heads) {
			heads[n] = at
			n++
			if v.input != 0 && p.tasks[at].input+1 != v.input && p.from[at].tasks > 0 {
				total += placeSeconds
			}
		}
	}
	most := func(count int, off uint64, of func(*ahead, int) phases, there, back []int64) {
		for i := range count {
			is := off&(1<<i) != 0
			cost := phases{}.costs(is, there[i], back[i])
			for _, head := range heads[:n] {
				cost = max(cost, of(&p.from[head], i).costs(is, there[i], back[i]))
			}
			total += cost
		}
	}
	m := &p.machine
	most(len(m.covers), v.off, func(a *ahead, i int) phases { return a.covers[i] }, p.offCost, p.onCost)
	most(len(m.energies), v.cut, func(a *ahead, i int) phases { return a.energies[i] }, p.cutCost, p.backCost)
	most(len(m.lifts), v.up, func(a *ahead, i int) phases { return a.lifts[i] }, p.upCost, p.downCost)
	turns := p.turning(v.pose, nil)
	for _, head := range heads[:n] {
		turns = max(turns, p.turning(v.pose, p.from[head].poses))
	}
	return total + turns
}

// turning is what it takes to turn the machine through some poses and back to how it rests.
func (p *problem) turning(at int, poses []int) int64 {
	var out int64
	for _, pose := range poses {
		if pose != at {
			out += p.turnCost[pose]
			at = pose
		}
	}
	if rest := p.resting; rest >= 0 && at != rest {
		out += p.turnCost[rest]
	}
	return out
}
