package sequence

import (
	"math/bits"
	"math/rand/v2"
)

// exchange is local search where a change takes as long as the two tasks say and nothing
// waits: two neighbouring stretches of the order change places, which keeps each of them
// as it is. Three changes differ, and precedences are looked at only between the two
// stretches, so that a move takes constant time to try when the moves are tried in the
// order of their ends (L. M. Gambardella and M. Dorigo, An Ant Colony System Hybridized
// with a New Local Search for the Sequential Ordering Problem, INFORMS Journal on
// Computing 12(3), 2000). A disturbance begins it anew.
type exchange struct {
	net     *network
	random  *rand.Rand
	side    int
	costs   []int64 // the changes; dear where they cannot be made
	into    []int64 // the same, by the task they lead to
	dear    int64   // more than any order takes
	path    []int16 // the order, with n before it and behind
	links   []int64 // the change behind each place
	place   []int32 // where a task is
	length  int64   // of the changes
	queue   []int16 // tasks whose surroundings may be improved
	queued  []bool
	blocked set
	held    []int16
	looked  int // swaps looked at, and what else took as long as so many
}

// mostArea is how large the lengths of two stretches that are tried may be, multiplied.
const mostArea = 10_000

// swap says which stretches change places: those that begin behind left and behind middle,
// and end at middle and at right.
type swap struct {
	left, middle, right int
	gain                int64
}

func newExchange(net *network, random *rand.Rand) *exchange {
	side := net.n + 1
	x := &exchange{
		net: net, random: random, side: side, costs: make([]int64, side*side), into: make([]int64, side*side), path: make([]int16, side+1), links: make([]int64, side),
		place: make([]int32, side), queued: make([]bool, side), blocked: newSet(net.n), held: make([]int16, side+1),
	}
	x.dear = 1
	for _, change := range net.least {
		if change < never {
			x.dear = max(x.dear, change*int64(side)+1)
		}
	}
	for i, change := range net.least {
		x.costs[i] = min(change, x.dear)
		x.into[i%side*side+i/side] = x.costs[i]
	}
	return x
}

func (x *exchange) cost(from, to int16) int64 { return x.costs[int(from)*x.side+int(to)] }

// set takes an order.
func (x *exchange) set(order []int) {
	n := int16(x.net.n)
	x.path[0], x.path[n+1] = n, n
	for i, task := range order {
		x.path[i+1] = int16(task)
	}
	x.measure()
}

// from are the changes from a task to each, to those from each to it.
func (x *exchange) from(task int16) []int64 { return x.costs[int(task)*x.side:][:x.side] }
func (x *exchange) to(task int16) []int64   { return x.into[int(task)*x.side:][:x.side] }

// measure finds the places, the changes and the length anew.
func (x *exchange) measure() {
	x.length = 0
	for i := range x.side {
		x.place[x.path[i]] = int32(i)
		x.links[i] = x.cost(x.path[i], x.path[i+1])
		x.length += x.links[i]
	}
	x.looked += x.side
}

// run disturbs and mends the order until so many swaps have been looked at, and calls better
// with each order that is the shortest so far, until it is as short as enough.
func (x *exchange) run(swaps int, enough int64, better func(path []int16, length int64)) {
	n := x.net.n
	for i := range n + 1 {
		x.wake(x.path[i])
	}
	x.descend()
	best := x.length
	better(x.path[1:n+1], best)
	if n < 3 {
		return
	}
	now, kept := x.length, append([]int16{}, x.path...)
	for best > enough && x.looked < swaps {
		if !x.disturb() {
			continue
		}
		x.descend()
		if x.length < best {
			best = x.length
			better(x.path[1:n+1], best)
		}
		// As long as before and a heat more is gone on from half of the time, two heats a
		// quarter, and so on.
		if x.length <= now || (x.length-now)/int64(1+bits.LeadingZeros64(x.random.Uint64())) < heat(best/int64(n), x.looked, swaps) {
			now = x.length
			copy(kept, x.path)
			continue
		}
		copy(x.path, kept)
		x.measure()
	}
}

// coolings is how often an order is heated and cools down again. Some problems want it hot,
// some nearly cold: every second time it is hotter.
const coolings = 4

// heat is how hot it is, in seconds, when so many swaps of all have been looked at, where a
// change takes so long on average.
func heat(change int64, looked, all int) int64 {
	each := all/coolings + 1
	left := int64(each-looked%each) << 10 / int64(each)
	if looked/each%2 == 1 {
		change *= 4
	}
	return change * left / 1024 * left / 1024 / 2
}

// wake puts a task, or the start, into the queue.
func (x *exchange) wake(task int16) {
	if !x.queued[task] {
		x.queued[task] = true
		x.queue = append(x.queue, task)
	}
}

// descend makes swaps until none is a gain.
func (x *exchange) descend() {
	for at := 0; at < len(x.queue); at++ {
		task := x.queue[at]
		x.queued[task] = false
		for {
			place := int(x.place[task])
			best := x.backward(place, x.forward(place, swap{}))
			if best.gain <= 0 {
				break
			}
			x.make(best)
		}
	}
	x.queue = x.queue[:0]
}

// aside is how many swaps could be looked at while those behind one more task are begun on.
const aside = 4

// forward is the best swap whose stretches begin behind a place.
func (x *exchange) forward(left int, best swap) swap {
	n, path, links := x.net.n, x.path, x.links
	clear(x.blocked)
	toHead, fromLeft := x.to(path[left+1]), x.from(path[left])
	limit := n // no stretch reaches beyond
	for middle := left + 1; middle < limit; middle++ {
		x.blocked.join(x.net.after[path[middle]])
		least := links[left] + links[middle] - fromLeft[path[middle+1]] - best.gain
		fromMiddle := x.from(path[middle])
		end := min(limit, middle+mostArea/(middle-left))
		x.looked += end - middle + aside
		for right := middle + 1; right <= end; right++ {
			task := path[right]
			if x.blocked.has(int(task)) {
				x.looked -= end - right
				limit = right - 1
				break
			}
			if gain := least + links[right] - toHead[task] - fromMiddle[path[right+1]]; gain > 0 {
				best = swap{left, middle, right, best.gain + gain}
				least -= gain
			}
		}
	}
	return best
}

// backward is the best swap whose stretches end at a place.
func (x *exchange) backward(right int, best swap) swap {
	path, links := x.path, x.links
	if right == 0 {
		return best
	}
	clear(x.blocked)
	fromTail, toBehind := x.from(path[right]), x.to(path[right+1])
	limit := 0 // no stretch reaches before what follows this place
	for middle := right - 1; middle > limit; middle-- {
		x.blocked.join(x.net.before[path[middle+1]])
		least := links[right] + links[middle] - toBehind[path[middle]] - best.gain
		toMiddle := x.to(path[middle+1])
		end := max(limit, middle-mostArea/(right-middle))
		x.looked += middle - end + aside
		for left := middle - 1; left >= end; left-- {
			task := path[left+1]
			if x.blocked.has(int(task)) {
				x.looked -= left + 1 - end
				limit = left + 1
				break
			}
			if gain := least + links[left] - toMiddle[path[left]] - fromTail[task]; gain > 0 {
				best = swap{left, middle, right, best.gain + gain}
				least -= gain
			}
		}
	}
	return best
}

// make makes a swap, and wakes the ends of the stretches.
func (x *exchange) make(s swap) {
	path := x.path
	count := copy(x.held, path[s.left+1:s.middle+1])
	copy(path[s.left+1:], path[s.middle+1:s.right+1])
	copy(path[s.right+1-count:], x.held[:count])
	for i := s.left + 1; i <= s.right; i++ {
		x.place[path[i]] = int32(i)
	}
	for i := s.left; i <= s.right; i++ {
		x.links[i] = x.cost(path[i], path[i+1])
	}
	x.looked += s.right - s.left
	x.length -= s.gain
	for _, i := range [...]int{s.left, s.left + 1, s.left + s.right - s.middle, s.left + s.right - s.middle + 1, s.right, s.right + 1} {
		x.wake(path[i])
	}
}

// longest is how long a stretch of a disturbance is at most.
const longest = 50

// disturb makes a swap at random; false if those it tried cannot be.
func (x *exchange) disturb() bool {
	n, path := x.net.n, x.path
	for range 20 {
		left := x.random.IntN(n - 1)
		middle := left + 1 + x.random.IntN(1+x.random.IntN(min(longest, n-1-left)))
		x.looked += middle - left + 4*aside
		clear(x.blocked)
		for i := left + 1; i <= middle; i++ {
			x.blocked.join(x.net.after[path[i]])
		}
		limit := middle
		for limit < min(n, middle+longest) && !x.blocked.has(int(path[limit+1])) {
			limit++
		}
		if limit == middle {
			continue
		}
		right := middle + 1 + x.random.IntN(limit-middle)
		x.make(swap{left, middle, right, x.cost(path[left], path[left+1]) + x.cost(path[middle], path[middle+1]) + x.cost(path[right], path[right+1]) -
			x.cost(path[left], path[middle+1]) - x.cost(path[right], path[left+1]) - x.cost(path[middle], path[right+1])})
		return true
	}
	return false
}
