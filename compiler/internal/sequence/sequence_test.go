package sequence_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/sequence"
)

// Each case was worked by hand.
func TestReplay(t *testing.T) {
	// The state is how the machine lies; task 1 wants it on its side, which takes 7 s.
	lie := func(from sequence.State, task int) (sequence.State, int64, bool) {
		if task == 1 && from != 1 {
			return 1, 7, true
		}
		return from, 0, true
	}
	upright := func(from sequence.State) int64 { return 9 * int64(from) }
	glue := []sequence.Lag{{From: 0, To: 2, Least: 30}}
	for name, c := range map[string]struct {
		p      sequence.Problem
		order  []int
		starts []int64
		length int64
	}{
		"nothing":                      {sequence.Problem{}, nil, []int64{}, 0},
		"nothing but closing up":       {sequence.Problem{Start: 2, End: upright}, nil, []int64{}, 18},
		"one after the other":          {sequence.Problem{Times: []int64{5, 4, 3}}, []int{2, 0, 1}, []int64{3, 8, 0}, 12},
		"a change":                     {sequence.Problem{Times: []int64{5, 4, 3}, Move: lie, End: upright}, []int{0, 1, 2}, []int64{0, 12, 16}, 28},
		"a wait with nothing in it":    {sequence.Problem{Times: []int64{5, 4, 3}, Lags: glue}, []int{0, 2, 1}, []int64{0, 38, 35}, 42},
		"a wait that is filled":        {sequence.Problem{Times: []int64{5, 4, 3}, Lags: glue}, []int{0, 1, 2}, []int64{0, 5, 35}, 38},
		"a change within a wait":       {sequence.Problem{Times: []int64{5, 4, 3}, Lags: []sequence.Lag{{From: 0, To: 1, Least: 30}}, Move: lie}, []int{0, 1, 2}, []int64{0, 35, 39}, 42},
		"a change that ends later":     {sequence.Problem{Times: []int64{5, 4, 3}, Lags: []sequence.Lag{{From: 0, To: 1, Least: 6}}, Move: lie}, []int{0, 1, 2}, []int64{0, 12, 16}, 19},
		"a task that is barred":        {sequence.Problem{Times: []int64{5, 4, 3}, Lags: []sequence.Lag{{From: 0, To: 2, Least: 30, Bars: []int{1}}}}, []int{0, 1, 2}, []int64{0, 35, 39}, 42},
		"barred before the wait opens": {sequence.Problem{Times: []int64{5, 4, 3}, Lags: []sequence.Lag{{From: 0, To: 2, Least: 30, Bars: []int{1, 0}}}}, []int{1, 0, 2}, []int64{4, 0, 39}, 42},
		"a change that a wait forbids": {sequence.Problem{Times: []int64{5, 4, 3}, Lags: glue, Move: lie, Holds: func(lag int, from, to sequence.State) bool { return false }},
			[]int{0, 1, 2}, []int64{0, 42, 46}, 49},
		"a move that changes nothing is not forbidden": {sequence.Problem{Times: []int64{5, 4, 3}, Lags: glue, Start: 1, Move: lie, Holds: func(lag int, from, to sequence.State) bool { return false }},
			[]int{0, 1, 2}, []int64{0, 5, 35}, 38},
		"the lag asked about is named": {sequence.Problem{Times: []int64{5, 4, 3}, Lags: append([]sequence.Lag{{From: 0, To: 2}}, glue...), Move: lie, Holds: func(lag int, from, to sequence.State) bool { return lag != 1 || to != 1 }},
			[]int{0, 1, 2}, []int64{0, 42, 46}, 49},
		"waits that run side by side": {sequence.Problem{Times: []int64{5, 4, 3}, Lags: []sequence.Lag{{From: 0, To: 2, Least: 10}, {From: 1, To: 2, Least: 4}}}, []int{0, 1, 2}, []int64{0, 5, 15}, 18},
	} {
		plan, err := sequence.Replay(c.p, c.order)
		require.NoError(t, err, name)
		assert.Equal(t, c.starts, plan.Starts, name)
		assert.Equal(t, c.length, plan.Length, name)
		solved, err := sequence.Solve(c.p, sequence.Budget{})
		require.NoError(t, err, name)
		assert.LessOrEqual(t, solved.Length, plan.Length, name)
		assert.True(t, solved.Proved, name)
	}
}

func TestReplayRefuses(t *testing.T) {
	p := sequence.Problem{Times: []int64{1, 2}, Before: [][2]int{{0, 1}}}
	for want, order := range map[string][]int{
		"the order has 1 tasks of 2":                              {0},
		"the order has task 0 twice":                              {0, 0},
		"place 0 of the order has task 7, and there are 2":        {7, 0},
		"tasks 0, 1: the first must end before the second begins": {1, 0},
	} {
		_, err := sequence.Replay(p, order)
		assert.EqualError(t, err, want)
	}
	p.Before, p.Lags = nil, []sequence.Lag{{From: 0, To: 1}}
	_, err := sequence.Replay(p, []int{1, 0})
	assert.EqualError(t, err, "tasks 0, 1: the second waits for the first")
	p.Move = func(from sequence.State, task int) (sequence.State, int64, bool) { return 4, 0, from != 4 }
	_, err = sequence.Replay(p, []int{0, 1})
	assert.EqualError(t, err, "task 1: it cannot be done out of state 4")
}

// What cannot be is refused in the same words by both.
func TestRefused(t *testing.T) {
	times := []int64{1, 1, 1, 1}
	for want, p := range map[string]sequence.Problem{
		"the time of task 1 is -1 s: it must be 0 to 1099511627776":                       {Times: []int64{0, -1}},
		"the time of task 0 is 1099511627777 s: it must be 0 to 1099511627776":            {Times: []int64{sequence.MaxSeconds + 1}},
		"the wait of lag 0 is -5 s: it must be 0 to 1099511627776":                        {Times: times, Lags: []sequence.Lag{{From: 0, To: 1, Least: -5}}},
		"pair 0 names task 9, and there are 4":                                            {Times: times, Before: [][2]int{{9, 1}}},
		"lag 1 names task -1, and there are 4":                                            {Times: times, Lags: []sequence.Lag{{From: 0, To: 1}, {From: 0, To: 1, Bars: []int{-1}}}},
		"tasks 1, 2, 3: each must be done before the next, and the last before the first": {Times: times, Before: [][2]int{{0, 1}, {1, 2}, {3, 1}}, Lags: []sequence.Lag{{From: 2, To: 3}}},
		"task 2: each must be done before the next, and the last before the first":        {Times: times, Before: [][2]int{{2, 2}}},
		"there are 1001 tasks, more than 1000":                                            {Times: make([]int64, 1001)},
	} {
		_, err := sequence.Solve(p, sequence.Budget{})
		assert.EqualError(t, err, want)
		_, err = sequence.Replay(p, make([]int, len(p.Times)))
		assert.EqualError(t, err, want)
	}
}

// Functions that say what cannot be are refused, whichever state says it.
func TestFunctionsRefused(t *testing.T) {
	p := sequence.Problem{Times: []int64{1, 1}, Move: func(from sequence.State, task int) (sequence.State, int64, bool) {
		return sequence.State(task), int64(task) - 1, true
	}}
	_, err := sequence.Solve(p, sequence.Budget{})
	assert.EqualError(t, err, "a change before task 0 is -1 s: it must be 0 to 1099511627776")
	p = sequence.Problem{Times: []int64{1, 1}, End: func(sequence.State) int64 { return -2 }}
	_, err = sequence.Solve(p, sequence.Budget{})
	assert.EqualError(t, err, "closing up out of state 0 is -2 s: it must be 0 to 1099511627776")
}

// Where there is no order, the tasks at fault are named.
func TestConflict(t *testing.T) {
	times := []int64{1, 1, 1}
	for want, p := range map[string]sequence.Problem{
		"task 1: it cannot be done out of any state that can be there when it is its turn": {Times: times, Move: func(from sequence.State, task int) (sequence.State, int64, bool) {
			return from, 0, task != 1
		}},
		"tasks 1, 2: there is no order; where the most tasks are done, these are left and none of them can begin": {Times: times, Move: func(from sequence.State, task int) (sequence.State, int64, bool) {
			return sequence.State(1 + task%2), 0, from == 0 || from == 2 && task == 1
		}},
	} {
		_, err := sequence.Solve(p, sequence.Budget{})
		assert.EqualError(t, err, want)
	}
}

// The longest times there can be do not overflow.
func TestLongest(t *testing.T) {
	p := sequence.Problem{Times: make([]int64, 12)}
	for i := range p.Times {
		p.Times[i] = sequence.MaxSeconds
		if i > 0 {
			p.Lags = append(p.Lags, sequence.Lag{From: i - 1, To: i, Least: sequence.MaxSeconds})
		}
	}
	p.Move = func(from sequence.State, task int) (sequence.State, int64, bool) {
		return sequence.State(task), sequence.MaxSeconds - int64(from), true
	}
	p.End = func(sequence.State) int64 { return sequence.MaxSeconds }
	plan, err := sequence.Solve(p, sequence.Budget{})
	require.NoError(t, err)
	assert.Equal(t, []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}, plan.Order)
	assert.True(t, plan.Proved)
	assert.Positive(t, plan.Length)
}

// Where there are more states than are looked through for the least changes, plans stay right.
func TestStatesWithoutEnd(t *testing.T) {
	p := sequence.Problem{Times: []int64{3, 1, 4, 1, 5, 9}, Before: [][2]int{{4, 0}}}
	p.Move = func(from sequence.State, task int) (sequence.State, int64, bool) {
		return from*7 + sequence.State(task) + 1, int64(from*31+sequence.State(task)) % 50, true
	}
	want, _ := bruteForce(p)
	plan, err := sequence.Solve(p, sequence.Budget{})
	require.NoError(t, err)
	assert.Equal(t, want, plan.Length)
	assert.True(t, plan.Proved)
}

// The same problem gives the same plan.
func TestSamePlan(t *testing.T) {
	p := grid(30)
	first, err := sequence.Solve(p, sequence.Budget{Labels: 3000, Trials: 500})
	require.NoError(t, err)
	assert.LessOrEqual(t, first.Labels, 3000+30)
	for range 3 {
		again, err := sequence.Solve(p, sequence.Budget{Labels: 3000, Trials: 500})
		require.NoError(t, err)
		assert.Equal(t, first, again)
	}
}

// More work gives no worse a plan, and no worse a bound, on a problem that is not proved
// at once.
func TestBudget(t *testing.T) {
	p := grid(30)
	length, bound := int64(1)<<60, int64(0)
	for _, labels := range []int{100, 2000, 30000} {
		plan, err := sequence.Solve(p, sequence.Budget{Labels: labels, Trials: labels / 10})
		require.NoError(t, err)
		assert.LessOrEqual(t, plan.Length, length)
		assert.GreaterOrEqual(t, plan.Bound, bound)
		assert.LessOrEqual(t, plan.Bound, plan.Length)
		length, bound = plan.Length, plan.Bound
	}
}

// grid is a problem of places that lie about, with waits: the state is where the worker is.
func grid(n int) sequence.Problem {
	p := sequence.Problem{Times: make([]int64, n), Start: sequence.State(n)}
	x, y := func(i int) int { return i * 37 % 101 }, func(i int) int { return i * 53 % 89 }
	for i := range n {
		p.Times[i] = int64(5 + i%7)
		if i%3 == 0 && i+7 < n {
			p.Before = append(p.Before, [2]int{i, i + 7})
		}
		if i%5 == 0 && i+11 < n {
			p.Lags = append(p.Lags, sequence.Lag{From: i, To: i + 11, Least: 300, Bars: []int{(i + 4) % n}})
		}
	}
	p.Move = func(from sequence.State, task int) (sequence.State, int64, bool) {
		dx, dy := x(int(from))-x(task), y(int(from))-y(task)
		return sequence.State(task), int64(max(dx, -dx) + max(dy, -dy)), true
	}
	return p
}
