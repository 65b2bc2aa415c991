package join

import (
	"slices"

	"benchleaf/compiler/internal/model"
)

// lead finds which energies are cut off before which: where an author cuts both off, has the one
// off whenever he comes to the other, and no author has it otherwise. Two things of one step have
// no order.
func (m *machine) lead(inputs []Input) {
	before, not := make([]uint64, len(m.energies)), make([]uint64, len(m.energies))
	for _, input := range inputs {
		all := uint64(0)
		for _, step := range input.Job.Steps {
			all |= m.cutBy(input.Job, step)
		}
		at := setting{}
		for _, step := range input.Job.Steps {
			own := m.cutBy(input.Job, step)
			for e := range m.energies {
				if own&^at.cut&(1<<e) != 0 {
					before[e] |= at.cut
					not[e] |= all &^ at.cut &^ own
				}
			}
			m.change(&at, input.Job, step)
		}
	}
	m.leads = make([]uint64, len(m.energies))
	for e := range m.energies {
		m.leads[e] = before[e] &^ not[e]
	}
}

// cutBy are the energies that a step cuts off.
func (m *machine) cutBy(job *model.Job, step *model.Step) (out uint64) {
	if kindOf(job, step) == cuts {
		for _, object := range step.Objects {
			out |= 1 << index(&m.energies, object.Energy.Name)
		}
	}
	return out
}

// led adds to energies that are to be cut off those that are cut off before them, but not what
// is off already or is to be live.
func (m *machine) led(some, but uint64) uint64 {
	for last := uint64(0); last != some; {
		last = some
		for e, leads := range m.leads {
			if some&(1<<e) != 0 {
				some |= leads &^ but
			}
		}
	}
	return some
}

// ordered are the acts of a change in an order in which every author finds his own: of two that
// an author has in one order, and none in the other, the one comes first. What no author orders,
// or authors order in a circle, stays as it is; and so does what is done to one thing.
func (p *problem) ordered(acts []act) []act {
	n := len(acts)
	after := make([][]bool, n) // after[i][k]: k is done before i
	for i := range acts {
		after[i] = make([]bool, n)
	}
	for i := range acts {
		for k := i + 1; k < n; k++ {
			switch p.order(acts[i], acts[k]) {
			case -1:
				after[k][i] = true
			case 1:
				after[i][k] = true
			}
		}
	}
	out, done := make([]act, 0, n), make([]bool, n)
	for len(out) < n {
		next, first := -1, -1
		for i := range acts {
			if done[i] {
				continue
			}
			if first < 0 {
				first = i
			}
			free := true
			for k := range acts {
				free = free && (done[k] || !after[i][k])
			}
			if !free {
				continue
			}
			if next < 0 || len(out) > 0 && acts[i].step == out[len(out)-1].step && acts[next].step != acts[i].step { // one step stays one
				next = i
			}
		}
		if next < 0 { // a circle
			next = first
		}
		out, done[next] = append(out, acts[next]), true
	}
	return out
}

// order is -1 where the first of two acts comes before the other, 1 where it comes behind, and 0
// where it does not matter. The first stands before the other as they are.
func (p *problem) order(one, other act) int {
	a, b := kindOf(p.inputs[one.input].Job, one.step), kindOf(p.inputs[other.input].Job, other.step)
	if a == b && p.same(one, other) || a == cuts && b == restores || a == lowers && b == raises {
		return -1
	}
	if p.givesBack(one, a) != p.givesBack(other, b) {
		return 0
	}
	before, behind := false, false
	for i := range p.inputs {
		first, last := p.at(i, one)
		begin, end := p.at(i, other)
		if first == 0 || begin == 0 {
			continue
		}
		before = before || first < begin && last < end
		behind = behind || first > begin && last > end
	}
	switch {
	case before && !behind || !before && !behind && p.guarded(one, a, other, b):
		return -1
	case behind && !before:
		return 1
	}
	return 0
}

// givesBack reports whether an act puts the machine back to how it stands.
func (p *problem) givesBack(one act, k kind) bool {
	switch k {
	case restores, covers, lowers:
		return true
	case turns:
		return index(&p.machine.poses, one.step.Pose.Name()) == p.resting
	}
	return false
}

// at are the first and the last step of a procedure that do what an act does; 0 for none.
func (p *problem) at(input int, one act) (first, last int) {
	job, k := p.inputs[input].Job, kindOf(p.inputs[one.input].Job, one.step)
	for _, step := range job.Steps {
		if step.Verb.Key != one.step.Verb.Key || kindOf(job, step) != k || !p.concerns(one, job, step) {
			continue
		}
		if first == 0 {
			first = step.Number
		}
		last = step.Number
	}
	return first, last
}

// guarded reports whether one act cuts off what the cover guards against that the other takes
// off, or puts the cover on before the other gives that back.
func (p *problem) guarded(one act, a kind, other act, b kind) bool {
	m := &p.machine
	against := func(cover, energy act) bool {
		return slices.ContainsFunc(p.changes(cover), func(c string) bool {
			guards := m.guards[index(&m.covers, c)]
			return slices.ContainsFunc(p.changes(energy), func(e string) bool { return guards&(1<<index(&m.energies, e)) != 0 })
		})
	}
	return a == cuts && b == uncovers && against(other, one) || a == covers && b == restores && against(one, other)
}
