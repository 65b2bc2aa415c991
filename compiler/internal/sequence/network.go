package sequence

// never stands for a change that cannot be made, in seconds: more than any plan is long.
const never = int64(1) << 56

// forbidden stands for it in the units of the arcs.
const forbidden = int32(1) << 28

// network is a problem made ready: who comes before whom, which states there are, and the
// least change between each two tasks. A task's row n stands for the start, column n for
// the end.
type network struct {
	Problem
	n      int
	work   int64 // what all tasks take
	before []set // all that must be done before a task
	after  []set // all that must be done after it
	first  []set // the least of before that implies the rest

	waits  []Lag   // the lags that take time or have a most; their indexes in Problem are in names
	names  []int   // the index of each wait in Problem
	limits []int   // the tasks that have to begin within a time after another
	opens  [][]int // the waits that open when a task ends
	barred [][]int // the waits that hold a task back while they are open

	states states
	fault  error // the first value of Move or End that cannot be

	least   []int64 // the least change from a row to a column, (n+1)·(n+1); never
	exact   bool    // least is what a change takes, and nothing waits
	unit    int64   // seconds in a unit of arcs
	arcs    []int32 // least in whole units, rounded down; forbidden where never
	across  []int32 // arcs, columns first
	enter   []int64 // the least change before a task
	tail    []int64 // the least time from the end of a task to the end of all
	ordered []int   // the tasks, none before one that it must follow
}

// prepare makes a problem that check found in order ready.
func prepare(p Problem) (*network, error) {
	net := &network{Problem: p, n: len(p.Times)}
	for _, time := range p.Times {
		net.work += time
	}
	net.close()
	for index, lag := range p.Lags {
		if lag.Most > 0 {
			net.limits = append(net.limits, lag.To)
		}
		if lag.Least > 0 || lag.Most > 0 {
			net.waits, net.names = append(net.waits, lag), append(net.names, index)
		}
	}
	net.opens, net.barred = make([][]int, net.n), make([][]int, net.n)
	for wait, lag := range net.waits {
		net.opens[lag.From] = append(net.opens[lag.From], wait)
		for task := range net.n {
			if holdsBack(lag, task) {
				net.barred[task] = append(net.barred[task], wait)
			}
		}
	}
	net.states = states{index: map[State]int32{}}
	reached := net.reach()
	if net.fault != nil {
		return nil, net.fault
	}
	for task := range net.n {
		if !reached.has(task) {
			return nil, &Conflict{Tasks: []int{task}, Reason: "it cannot be done out of any state that can be there when it is its turn"}
		}
	}
	net.scale()
	net.measureTails()
	return net, nil
}

// close finds all that must come before and after each task.
func (net *network) close() {
	n := net.n
	net.before, net.after, net.first = make([]set, n), make([]set, n), make([]set, n)
	next := make([][]int, n)
	open := make([]int, n)
	link := func(from, to int) {
		next[from] = append(next[from], to)
		open[to]++
	}
	for _, pair := range net.Before {
		link(pair[0], pair[1])
	}
	for _, lag := range net.Lags {
		link(lag.From, lag.To)
	}
	for task := range n {
		net.before[task], net.after[task], net.first[task] = newSet(n), newSet(n), newSet(n)
		if open[task] == 0 {
			net.ordered = append(net.ordered, task)
		}
	}
	for at := 0; at < len(net.ordered); at++ {
		task := net.ordered[at]
		for _, to := range next[task] {
			net.before[to].add(task)
			net.before[to].join(net.before[task])
			if open[to]--; open[to] == 0 {
				net.ordered = append(net.ordered, to)
			}
		}
	}
	for to := range n {
		for from := range n {
			if net.before[to].has(from) {
				net.after[from].add(to)
			}
		}
	}
	for to := range n {
		for from := range n {
			if net.before[to].has(from) && !net.after[from].meets(net.before[to]) {
				net.first[to].add(from)
			}
		}
	}
}

// follows says whether a task can come right after another.
func (net *network) follows(from, to int) bool {
	return from != to && !net.before[from].has(to) && (!net.before[to].has(from) || net.first[to].has(from))
}

// free says whether nothing must come before a task, last whether nothing must come after.
func (net *network) free(task int) bool { return net.before[task].count() == 0 }
func (net *network) last(task int) bool { return net.after[task].count() == 0 }

// scale turns changes into arcs: whole units, so few that sums of them stay far from the
// end of an int32.
func (net *network) scale() {
	side := net.n + 1
	total := int64(0)
	for row := range side {
		most := int64(0)
		for _, change := range net.least[row*side : (row+1)*side] {
			if change < never {
				most = max(most, change)
			}
		}
		total += most
	}
	net.unit = total/int64(forbidden/4) + 1
	net.arcs, net.across = make([]int32, side*side), make([]int32, side*side)
	for row := range side {
		for column := range side {
			arc := net.units(net.least[row*side+column])
			net.arcs[row*side+column], net.across[column*side+row] = arc, arc
		}
	}
}

// units is a change in whole units of arcs. A change out of one state may be far longer
// than the least one: what is more than half of forbidden counts as that much.
func (net *network) units(change int64) int32 {
	if change >= never {
		return forbidden
	}
	return int32(min(change/net.unit, int64(forbidden/2)))
}

// measureTails finds the least change before each task, and the longest chain of waits,
// changes and tasks after it.
func (net *network) measureTails() {
	n := net.n
	net.enter, net.tail = make([]int64, n), make([]int64, n)
	closing := never
	for task := range n {
		net.enter[task] = never
		for row := range n + 1 {
			net.enter[task] = min(net.enter[task], net.least[row*(n+1)+task])
		}
		closing = min(closing, net.least[task*(n+1)+n])
	}
	for at := n - 1; at >= 0; at-- {
		task := net.ordered[at]
		net.tail[task] = closing
		for next := range n {
			if net.first[next].has(task) {
				net.tail[task] = max(net.tail[task], net.enter[next]+net.Times[next]+net.tail[next])
			}
		}
		for _, wait := range net.opens[task] {
			lag := net.waits[wait]
			net.tail[task] = max(net.tail[task], lag.Least+net.Times[lag.To]+net.tail[lag.To])
		}
	}
}

// blame keeps the first fault of a function of the problem.
func (net *network) blame(err error) {
	if net.fault == nil && err != nil {
		net.fault = err
	}
}
