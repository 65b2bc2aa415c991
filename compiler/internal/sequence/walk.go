package sequence

import "math/bits"

// fine is how many parts a unit of an arc has, so that penalties can be small.
const fine = 256

// unreached stands for a place that no walk goes on from, or comes to.
const unreached = int64(1) << 50

// watchable is how many tasks can be watched: a bit of a memory each.
const watchable = 128

// memory is a set of tasks that are watched.
type memory struct{ low, high uint64 }

func (m memory) with(other memory) memory { return memory{m.low | other.low, m.high | other.high} }

func (m memory) only(other memory) memory { return memory{m.low & other.low, m.high & other.high} }

func (m memory) meets(other memory) bool { return m.low&other.low|m.high&other.high != 0 }

func (m memory) within(other memory) bool { return m.low&^other.low|m.high&^other.high == 0 }

func (m memory) count() int { return bits.OnesCount64(m.low) + bits.OnesCount64(m.high) }

// bit is the memory of one of the tasks that are watched.
func bit(index int) memory {
	if index < 64 {
		return memory{low: 1 << index}
	}
	return memory{high: 1 << (index - 64)}
}

// walks bound what is left by walks of so many steps to the end. A walk may do a task twice
// and leave another out, but each task has its place no sooner than all that must come
// before it allow and no later than what must come after it does, and no task is followed
// by one that cannot come next. Two things make walks more like orders:
//
// A penalty on each task, found by subgradient steps, makes walks do each about once (Held
// and Karp 1971 for rings, Picard and Queyranne 1978 for walks with places).
//
// A walk, seen from its end, remembers some of the tasks that it has done: those that the
// tasks since all remember. It does not do a task that it remembers, nor one that must come
// after one it remembers (the ng-routes of Baldacci, Mingozzi and Roberti 2011, which
// remember only what was visited). Which task remembers which is read off the walks found.
//
// What can only be part of an order as long as the best one known is left out.
type walks struct {
	net     *network
	n       int
	penalty []int64 // what doing a task gives back, in fine parts
	fines   int64   // the sum of them
	next    [][]arc // the tasks that can come right after a task
	dead    []bool  // by place, then task: no order shorter than the best has the task there
	come    []int64 // the cheapest walk from the start to there
	ahead   [][]trail

	watched  []memory // a task alone; none if it is not watched
	count    int      // of bits
	remember []memory // what a task remembers
	barred   []memory // a task and of all before it

	steps int // the work done: one for a trail that was found, parts of one for what it took
	heap  []reach
	walk  []int16 // the cheapest walk
	value int64   // what it costs, all penalties taken
}

// arc is a task that can come next, and the fine parts of what is changed before it.
type arc struct {
	cost int64
	to   int16
}

// trail is a walk from a task at a place to the end.
type trail struct {
	cost   int64  // penalties given back, but for the task it begins at
	memory memory // the tasks done later that it remembers
	to     int16  // the task that comes next,
	then   int16  // and which of its trails
}

// reach is the best trail over an arc that was not yet looked at.
type reach struct {
	cost    int64
	arc, at int16
}

func newWalks(net *network) *walks {
	n := net.n
	w := &walks{net: net, n: n, penalty: make([]int64, n), next: make([][]arc, n+1), dead: make([]bool, n*n), come: make([]int64, n*n), ahead: make([][]trail, n*n)}
	w.watched, w.remember, w.barred, w.walk = make([]memory, n), make([]memory, n), make([]memory, n), make([]int16, n)
	for task := range n {
		soonest, latest := net.before[task].count(), n-1-net.after[task].count()
		for place := range n {
			w.dead[place*n+task] = place < soonest || place > latest
		}
	}
	for from := range n + 1 {
		for to := range n {
			if cost := net.arcs[from*(n+1)+to]; cost < forbidden {
				w.next[from] = append(w.next[from], arc{int64(cost) * fine, int16(to)})
			}
		}
	}
	return w
}

// comeFrom finds the cheapest walks from the start, which remember nothing.
func (w *walks) comeFrom() {
	n := w.n
	for i := range w.come {
		w.come[i] = unreached
	}
	for place := range n {
		row := w.come[place*n : (place+1)*n]
		dead := w.dead[place*n : (place+1)*n]
		if place == 0 {
			for _, arc := range w.next[n] {
				if !dead[arc.to] {
					row[arc.to] = arc.cost - w.penalty[arc.to]
				}
			}
			continue
		}
		for from, cost := range w.come[(place-1)*n : place*n] {
			if cost >= unreached {
				continue
			}
			for _, arc := range w.next[from] {
				if way := cost + arc.cost - w.penalty[arc.to]; way < row[arc.to] && !dead[arc.to] {
					row[arc.to] = way
				}
			}
		}
	}
}

// measure finds the cheapest walks to the end from each task at each place, at most so many
// trails for each, that can be part of an order of less than limit, in units. It says
// whether there is one from the start.
func (w *walks) measure(limit int64, trails int) bool {
	n := w.n
	w.fines = 0
	for _, penalty := range w.penalty {
		w.fines += penalty
	}
	w.comeFrom()
	most := (limit-1)*fine - w.fines
	for place := n - 1; place >= 0; place-- {
		for task := range n {
			at := place*n + task
			list := w.ahead[at][:0]
			if come := w.come[at]; come < unreached && !w.dead[at] {
				if place < n-1 {
					list = w.extend(list, task, place, most-come, trails)
				} else if end := w.net.arcs[task*(n+1)+n]; end < forbidden && int64(end)*fine <= most-come {
					list = append(list, trail{cost: int64(end) * fine})
				}
			}
			w.ahead[at] = list
			w.dead[at] = len(list) == 0
			w.steps += 1 + len(w.next[task])/8
		}
	}
	return w.trace()
}

// extend finds the trails from a task at a place, cheapest first: those over each arc are in
// that order, so the cheapest of all that is left is taken again and again. A trail that
// remembers all that a cheaper one does is left out. Where there are too many, the last one
// stands for all further ones: it costs as much as the cheapest of them and remembers
// nothing.
func (w *walks) extend(list []trail, task, place int, most int64, trails int) []trail {
	n := w.n
	arcs, barred, remember := w.next[task], w.barred[task], w.remember[task]
	rows := w.ahead[(place+1)*n : (place+2)*n]
	w.heap = w.heap[:0]
	for i, arc := range arcs {
		w.offer(i, 0, arc, rows[arc.to], barred, most)
	}
	for len(w.heap) > 0 {
		top := w.take()
		w.steps += 1 + len(list)/8
		arc := arcs[top.arc]
		from := rows[arc.to]
		found := trail{cost: top.cost, memory: from[top.at].memory.with(w.watched[arc.to]).only(remember), to: arc.to, then: top.at}
		known := false
		for i := range list {
			if list[i].memory.within(found.memory) {
				known = true
				break
			}
		}
		if !known {
			if len(list) == trails-1 {
				found.memory = memory{}
			}
			list = append(list, found)
			if (found.memory == memory{}) {
				break
			}
		}
		w.offer(int(top.arc), int(top.at)+1, arc, from, barred, most)
	}
	return list
}

// offer puts the first trail over an arc, from one of them on, that may be gone on to into
// the heap.
func (w *walks) offer(index, at int, arc arc, from []trail, barred memory, most int64) {
	for ; at < len(from); at++ {
		cost := arc.cost - w.penalty[arc.to] + from[at].cost
		if cost > most {
			return
		}
		if from[at].memory.meets(barred) {
			continue
		}
		w.heap = append(w.heap, reach{cost, int16(index), int16(at)})
		i := len(w.heap) - 1
		for i > 0 && w.heap[(i-1)/2].cost > cost {
			w.heap[i] = w.heap[(i-1)/2]
			i = (i - 1) / 2
		}
		w.heap[i] = reach{cost, int16(index), int16(at)}
		return
	}
}

// take takes the cheapest out of the heap.
func (w *walks) take() reach {
	top, last := w.heap[0], w.heap[len(w.heap)-1]
	w.heap = w.heap[:len(w.heap)-1]
	i := 0
	for {
		child := 2*i + 1
		if child >= len(w.heap) {
			break
		}
		if child+1 < len(w.heap) && w.heap[child+1].cost < w.heap[child].cost {
			child++
		}
		if w.heap[child].cost >= last.cost {
			break
		}
		w.heap[i] = w.heap[child]
		i = child
	}
	if len(w.heap) > 0 {
		w.heap[i] = last
	}
	return top
}

// trace reads off the cheapest walk from the start; false if there is none.
func (w *walks) trace() bool {
	n := w.n
	var best trail
	w.value = unreached
	for _, arc := range w.next[n] {
		if list := w.ahead[arc.to]; len(list) > 0 {
			if way := arc.cost - w.penalty[arc.to] + list[0].cost; way < w.value {
				w.value, best = way, trail{to: arc.to, then: 0}
			}
		}
	}
	if w.value >= unreached {
		return false
	}
	w.value += w.fines
	for place := range n {
		w.walk[place] = best.to
		best = w.ahead[place*n+int(best.to)][best.then]
	}
	return true
}

// learn makes tasks remember what the cheapest walk did wrong: each shortest stretch that
// begins with a task which is done again, or must come after the task it ends with.
func (w *walks) learn() {
	nearest := w.n // where the stretches found so far begin that end soonest
	for first := w.n - 2; first >= 0; first-- {
		task := int(w.walk[first])
		for last := first + 1; last < nearest; last++ {
			again := int(w.walk[last])
			if again != task && !w.net.before[task].has(again) {
				continue
			}
			nearest = last
			if (w.watched[again] == memory{}) {
				if w.count == watchable {
					break
				}
				w.watched[again] = bit(w.count)
				w.count++
				for other := range w.n {
					if other == again || w.net.before[other].has(again) {
						w.barred[other] = w.barred[other].with(w.watched[again])
					}
				}
			}
			for _, between := range w.walk[first+1 : last] {
				if w.remember[between].count() < mostRemembered {
					w.remember[between] = w.remember[between].with(w.watched[again])
				}
			}
			break
		}
	}
}

// mostRemembered is how many tasks a task remembers at most.
const mostRemembered = 24

// tune looks for penalties, and what to remember, that make the bound high, in so many steps;
// limit is what is to be reached, in units. It says whether there can be an order of less.
func (w *walks) tune(limit int64, steps, trails int) bool {
	share, idle := int64(1024), 0 // of the way to the limit, in 1024ths
	if trails > 1 {
		share = 256 // the penalties are near already
	}
	best := -unreached
	kept, counts := make([]int64, w.n), make([]int64, w.n)
	copy(kept, w.penalty)
	for until := w.steps + steps; w.steps < until; {
		if !w.measure(limit, trails) {
			return false
		}
		idle++
		if w.value > best {
			best, idle = w.value, 0
			copy(kept, w.penalty)
		}
		if idle > 6 {
			share, idle = share*3/4, 0
			copy(w.penalty, kept)
			if !w.measure(limit, trails) {
				return false
			}
		}
		if trails > 1 {
			w.learn()
		}
		clear(counts)
		for _, task := range w.walk {
			counts[task]++
		}
		square := int64(0)
		for _, count := range counts {
			square += (count - 1) * (count - 1)
		}
		if share == 0 {
			break
		}
		if square == 0 {
			continue
		}
		length := (limit*fine - w.value) * share / 1024
		for task, count := range counts {
			w.penalty[task] += length * (1 - count) / square
		}
	}
	copy(w.penalty, kept)
	return w.measure(limit, trails)
}

// rest is the cheapest walk to the end from a task at a place that remembers none of the
// tasks seen, in fine parts, penalties given back; unreached if there is none.
func (w *walks) rest(place, task int, seen memory) int64 {
	list := w.ahead[place*w.n+task]
	for i := range list {
		if !list[i].memory.meets(seen) {
			return list[i].cost
		}
	}
	return unreached
}
