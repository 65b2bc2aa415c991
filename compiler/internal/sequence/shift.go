package sequence

import "math/rand/v2"

// shift is local search for problems with waits and states: a stretch of tasks is put
// somewhere else, and all is done again from the first place that changed. What is done
// before stays, so that an order costs what lies behind the change.
type shift struct {
	net    *network
	random *rand.Rand
	order  []int
	trial  []int
	place  []int     // of a task in order
	stops  []stop    // of order: what there is before each place, and behind the last
	open   []opening // scratch
	spare  []opening // scratch
	length int64     // of order
}

// stop is what there is when some tasks have been done.
type stop struct {
	time  int64
	state int32
	open  []opening
}

// missing is what an order counts as for each task that cannot be done in it.
const missing = never >> 12

func newShift(net *network, random *rand.Rand) *shift {
	n := net.n
	return &shift{net: net, random: random, order: make([]int, n), trial: make([]int, n), place: make([]int, n), stops: make([]stop, n+1)}
}

// set takes an order.
func (x *shift) set(order []int) {
	copy(x.order, order)
	x.stops[0] = stop{state: x.net.states.index[x.net.Start]}
	x.keep(0)
}

// keep does the order again from a place on and notes what there is at each.
func (x *shift) keep(from int) {
	for place := from; place < len(x.order); place++ {
		task := x.order[place]
		x.place[task] = place
		at := &x.stops[place]
		next := &x.stops[place+1]
		if at.state == none {
			next.state = none
			continue
		}
		next.time, next.state, next.open = x.net.do(*at, task, next.open[:0])
	}
	x.length = x.lengthOf(x.order, 0)
}

// do does a task: when it ends, the state then, none if it cannot be done, and what waits.
func (net *network) do(at stop, task int, open []opening) (int64, int32, []opening) {
	step := net.row(at.state)[task]
	if step.to == none {
		return at.time, none, open
	}
	began := net.begin(at.time, at.state, step, at.open, task)
	ended := began + net.Times[task]
	if net.late(at.open, task, began, ended) {
		return at.time, none, open
	}
	return ended, step.to, net.carry(open, at.open, task, ended)
}

// lengthOf is the length of an order that is as x.order before a place.
func (x *shift) lengthOf(order []int, from int) int64 {
	at := x.stops[from]
	for place := from; place < len(order); place++ {
		if at.state == none {
			return missing * int64(len(order)-place+1)
		}
		at.time, at.state, x.spare = x.net.do(at, order[place], x.spare[:0])
		at.open = x.spare
		x.spare, x.open = x.open, x.spare
	}
	if at.state == none {
		return missing
	}
	return at.time + x.net.closing(at.state)
}

// run disturbs and mends the order so many times and calls better with each order that is
// the shortest so far, until it is as short as enough.
func (x *shift) run(rounds int, enough int64, better func(order []int, length int64)) {
	n := x.net.n
	if n < 2 {
		return
	}
	rounds -= x.descend(rounds)
	best := x.length
	better(x.order, best)
	now, kept := x.length, append([]int{}, x.order...)
	for rounds > 0 && best > enough {
		rounds--
		for range 2 + x.random.IntN(2) {
			from, count, to := x.random.IntN(n), 1+x.random.IntN(3), x.random.IntN(n)
			if x.try(from, count, to) {
				x.take(min(from, to))
			}
		}
		rounds -= x.descend(rounds)
		if x.length < best {
			best = x.length
			better(x.order, best)
		}
		if x.length <= now {
			now = x.length
			copy(kept, x.order)
			continue
		}
		copy(x.order, kept)
		x.keep(0)
	}
}

// descend makes the first shift that is a gain until there is none, or as many as rounds
// orders have been looked at; it returns how many.
func (x *shift) descend(rounds int) int {
	n, looked := x.net.n, 0
	for gained := true; gained; {
		gained = false
		for count := 1; count <= min(3, n-1); count++ {
			for from := 0; from+count <= n; from++ {
				for _, way := range [...]int{1, -1} {
					// Where one task cannot be passed, none behind it can be.
					for to := from + way; looked < rounds && x.try(from, count, to); to += way {
						looked++
						if x.lengthOf(x.trial, min(from, to)) < x.length {
							x.take(min(from, to))
							gained = true
							break
						}
					}
				}
			}
		}
	}
	return looked
}

// try makes trial the order with a stretch of so many tasks moved from a place to another;
// false if it has no room there, or a task would be done before one it must follow.
func (x *shift) try(from, count, to int) bool {
	n := len(x.order)
	if to < 0 || from == to || max(from, to)+count > n {
		return false
	}
	low, high := to, from // the tasks between are passed
	if to > from {
		low, high = from+count, to+count
	}
	for _, moved := range x.order[from : from+count] {
		for _, passed := range x.order[low:high] {
			if to > from && x.net.before[passed].has(moved) || to < from && x.net.before[moved].has(passed) {
				return false
			}
		}
	}
	copy(x.trial, x.order)
	if to > from {
		copy(x.trial[from:], x.order[low:high])
	} else {
		copy(x.trial[to+count:], x.order[low:high])
	}
	copy(x.trial[to:to+count], x.order[from:from+count])
	return true
}

// take makes trial the order; it is the same before a place.
func (x *shift) take(from int) {
	copy(x.order, x.trial)
	x.keep(from)
}
