package sequence

// none stands for a state that a task cannot lead to.
const none = int32(-1)

// states are the states met so far, by small numbers, and what each task does to them.
type states struct {
	index map[State]int32
	names []State
	rows  [][]step // what each task does out of a state; nil until asked for
	ends  []int64  // what closing up takes; -1 until asked for
}

// step is what a task does to a state.
type step struct {
	to     int32 // the state after; none where it cannot be done
	change int64 // seconds of change before
}

// number is the small number of a state.
func (s *states) number(name State) int32 {
	if number, known := s.index[name]; known {
		return number
	}
	number := int32(len(s.names))
	s.index[name] = number
	s.names, s.rows, s.ends = append(s.names, name), append(s.rows, nil), append(s.ends, -1)
	return number
}

// row is what each task does out of a state.
func (net *network) row(state int32) []step {
	if row := net.states.rows[state]; row != nil {
		return row
	}
	row := make([]step, net.n)
	for task := range row {
		row[task] = step{to: state}
		if net.Move == nil {
			continue
		}
		to, change, ok := net.Move(net.states.names[state], task)
		if !ok {
			row[task] = step{to: none, change: never}
			continue
		}
		if err := seconds("a change before task", task, change); err != nil {
			net.blame(err)
			change = 0
		}
		row[task] = step{to: net.states.number(to), change: change}
	}
	net.states.rows[state] = row
	return row
}

// closing is what closing up takes from a state.
func (net *network) closing(state int32) int64 {
	if net.End == nil {
		return 0
	}
	if net.states.ends[state] < 0 {
		end := net.End(net.states.names[state])
		if err := seconds("closing up out of state", int(net.states.names[state]), end); err != nil {
			net.blame(err)
			end = 0
		}
		net.states.ends[state] = end
	}
	return net.states.ends[state]
}

// mostPairs is how many pairs of a task and the state after it are looked at to find the
// least changes. Where there are more, changes count as nothing in bounds.
const mostPairs = 50_000

// reach finds the least change between each two tasks over the states that can be there
// after the first, and the tasks that can be done at all.
func (net *network) reach() set {
	n, side := net.n, net.n+1
	net.least = make([]int64, side*side)
	for i := range net.least {
		net.least[i] = never
	}
	type pair struct{ task, state int32 }
	start := net.states.number(net.Start)
	seen := map[pair]bool{}
	pairs := []pair{{int32(n), start}}
	reached := newSet(n)
	after := make([]int, n) // the number of states that can be there after a task
	for at := 0; at < len(pairs) && len(pairs) <= mostPairs && net.fault == nil; at++ {
		from := pairs[at]
		row := net.row(from.state)
		least := net.least[int(from.task)*side : (int(from.task)+1)*side]
		for task := range n {
			if row[task].to == none || !net.adjoins(int(from.task), task) {
				continue
			}
			least[task] = min(least[task], row[task].change)
			reached.add(task)
			if next := (pair{int32(task), row[task].to}); !seen[next] {
				seen[next] = true
				pairs = append(pairs, next)
				after[task]++
			}
		}
		if int(from.task) == n || net.last(int(from.task)) {
			least[n] = min(least[n], net.closing(from.state))
		}
	}
	if n > 0 {
		least := net.least[n*side:]
		least[n] = never
	}
	net.exact = len(net.waits) == 0
	for _, count := range after {
		net.exact = net.exact && count == 1
	}
	if len(pairs) > mostPairs {
		net.exact = false
		for row := range side {
			for column := range side {
				if column == n && row < n && net.last(row) || column < n && net.adjoins(row, column) {
					net.least[row*side+column] = 0
				}
			}
		}
		for task := range n {
			reached.add(task)
		}
	}
	return reached
}

// adjoins says whether a task can come right after another, or after the start, which is n.
func (net *network) adjoins(from, to int) bool {
	if from == net.n {
		return net.free(to)
	}
	return net.follows(from, to)
}
