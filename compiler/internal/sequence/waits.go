package sequence

import (
	"cmp"
	"slices"
)

// begin is when a task begins out of a state, while these waits are open.
func (net *network) begin(now int64, state int32, step step, open []opening, task int) int64 {
	if net.Holds != nil && (step.change > 0 || step.to != state) {
		from, to := net.states.names[state], net.states.names[step.to]
		for _, wait := range open {
			if wait.end > now && !net.Holds(net.names[wait.wait], from, to) {
				now = wait.end
			}
		}
	}
	now += step.change
	for _, wait := range open {
		if wait.end > now && slices.Contains(net.barred[task], int(wait.wait)) {
			now = wait.end
		}
	}
	return now
}

// limited says whether a task that is not done has to begin within a time after another.
func (net *network) limited(done set) bool {
	return slices.ContainsFunc(net.limits, func(task int) bool { return !done.has(task) })
}

// late says whether a task that begins and ends then comes too late after another, or leaves
// one behind that will.
func (net *network) late(open []opening, task int, began, ended int64) bool {
	if len(net.limits) == 0 {
		return false
	}
	for _, wait := range open {
		lag := &net.waits[wait.wait]
		if lag.Most == 0 {
			continue
		}
		limit, at := wait.end-lag.Least+lag.Most, ended
		if lag.To == task {
			at = began
		}
		if at > limit {
			return true
		}
	}
	return false
}

// carry adds the waits that are open when a task has ended, in their order: those that were
// and have not run out, and those that it opens. One that has a most stays until its task is
// done.
func (net *network) carry(to, open []opening, task int, ended int64) []opening {
	opened := net.opens[task]
	for _, wait := range open {
		for len(opened) > 0 && opened[0] < int(wait.wait) {
			to = append(to, opening{int32(opened[0]), ended + net.waits[opened[0]].Least})
			opened = opened[1:]
		}
		if lag := &net.waits[wait.wait]; wait.end > ended || lag.Most > 0 && lag.To != task {
			to = append(to, wait)
		}
	}
	for _, wait := range opened {
		to = append(to, opening{int32(wait), ended + net.waits[wait].Least})
	}
	return to
}

// oneMachine bounds a length by heads and tails: each task may be begun no sooner than its
// waits allow, takes its time with the least change before it, and has the longest chain
// after it still to come. If tasks could be broken off, the longest tail first would be best
// (Jackson's rule, as used by Carlier 1982), which is quick to follow.
type oneMachine struct {
	net  *network
	jobs []job
	head []int64
	heap []job
}

type job struct{ head, time, tail int64 }

// bound is the least length if the tasks left but one, which was done last, are yet to do.
func (m *oneMachine) bound(now int64, left []int16, done int, open []opening) int64 {
	net := m.net
	if m.head == nil {
		m.head = make([]int64, net.n)
	}
	for _, task := range left {
		m.head[task] = now + net.enter[task]
	}
	for _, wait := range open {
		for _, task := range left {
			if slices.Contains(net.barred[task], int(wait.wait)) {
				m.head[task] = max(m.head[task], wait.end)
			}
		}
	}
	m.head[done] = never
	m.jobs = m.jobs[:0]
	for _, task := range net.ordered {
		if !slices.Contains(left, int16(task)) || task == done {
			continue
		}
		ended := m.head[task] + net.Times[task]
		for _, wait := range net.opens[task] {
			lag := net.waits[wait]
			m.head[lag.To] = max(m.head[lag.To], ended+lag.Least)
		}
		m.jobs = append(m.jobs, job{m.head[task] - net.enter[task], net.enter[task] + net.Times[task], net.tail[task]})
	}
	slices.SortFunc(m.jobs, func(a, b job) int { return cmp.Compare(a.head, b.head) })
	return m.preempt(now)
}

// preempt does the jobs, in the order of their heads, the longest tail first.
func (m *oneMachine) preempt(now int64) int64 {
	jobs, length := m.jobs, int64(0)
	m.heap = m.heap[:0]
	for len(jobs) > 0 || len(m.heap) > 0 {
		if len(m.heap) == 0 {
			now = max(now, jobs[0].head)
		}
		for len(jobs) > 0 && jobs[0].head <= now {
			m.push(jobs[0])
			jobs = jobs[1:]
		}
		top := &m.heap[len(m.heap)-1]
		if len(jobs) > 0 && jobs[0].head < now+top.time {
			top.time -= jobs[0].head - now
			now = jobs[0].head
			continue
		}
		now += top.time
		length = max(length, now+top.tail)
		m.heap = m.heap[:len(m.heap)-1]
	}
	return length
}

// push keeps the jobs that can be done in the order of their tails, the longest last.
func (m *oneMachine) push(one job) {
	at, _ := slices.BinarySearchFunc(m.heap, one, func(a, b job) int { return cmp.Compare(a.tail, b.tail) })
	m.heap = slices.Insert(m.heap, at, one)
}
