package sequence_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/sequence"
)

// bruteForce is the least length over all orders; false where no order can be.
func bruteForce(p sequence.Problem) (int64, bool) {
	best, found := int64(0), false
	order := make([]int, len(p.Times))
	for i := range order {
		order[i] = i
	}
	var permute func(at int)
	permute = func(at int) {
		if at == len(order) {
			if plan, err := sequence.Replay(p, order); err == nil && (!found || plan.Length < best) {
				best, found = plan.Length, true
			}
			return
		}
		for i := at; i < len(order); i++ {
			order[at], order[i] = order[i], order[at]
			permute(at + 1)
			order[at], order[i] = order[i], order[at]
		}
	}
	permute(0)
	return best, found
}

// workshop is a random problem: a machine that lies one way or another, with covers open or
// closed and a tool in; each task wants some of that.
func workshop(random *rand.Rand, most int) sequence.Problem {
	n := random.IntN(most + 1)
	p := sequence.Problem{Times: make([]int64, n)}
	for i := range p.Times {
		p.Times[i] = random.Int64N(20)
	}
	pair := func() (int, int) {
		a, b := random.IntN(n), random.IntN(n)
		if a > b && random.IntN(40) > 0 { // seldom a ring
			a, b = b, a
		}
		return a, b
	}
	if n > 1 {
		for range random.IntN(n) {
			if a, b := pair(); a != b {
				p.Before = append(p.Before, [2]int{a, b})
			}
		}
		for range random.IntN(4) {
			a, b := pair()
			if a == b {
				continue
			}
			lag := sequence.Lag{From: a, To: b, Least: random.Int64N(60)}
			for range random.IntN(3) {
				lag.Bars = append(lag.Bars, random.IntN(n))
			}
			if random.IntN(3) == 0 {
				lag.Most = max(1, lag.Least+random.Int64N(30))
			}
			p.Lags = append(p.Lags, lag)
		}
	}
	const poses, covers, tools = 3, 4, 3
	type want struct{ pose, open, shut, tool, leaves int }
	wants := make([]want, n)
	for i := range wants {
		wants[i] = want{random.IntN(poses+1) - 1, random.IntN(covers), random.IntN(covers), random.IntN(tools+1) - 1, -1}
		wants[i].shut &^= wants[i].open
		if random.IntN(4) == 0 {
			wants[i].leaves = random.IntN(poses)
		}
	}
	turn, cover, change := random.Int64N(15), random.Int64N(10), random.Int64N(5)
	stuck := random.IntN(3) == 0 // a tool that cannot be taken out with the machine on its side
	p.Start = sequence.State(random.IntN(poses * covers * tools))
	p.Move = func(from sequence.State, task int) (sequence.State, int64, bool) {
		pose, open, tool := int(from)%poses, int(from)/poses%covers, int(from)/poses/covers
		want, seconds := wants[task], int64(0)
		if want.tool >= 0 && want.tool != tool {
			if stuck && pose == 2 {
				return 0, 0, false
			}
			tool, seconds = want.tool, seconds+change
		}
		for bit := 1; bit < covers; bit <<= 1 {
			if want.open&^open&bit != 0 || want.shut&open&bit != 0 {
				open, seconds = open^bit, seconds+cover
			}
		}
		if want.pose >= 0 && want.pose != pose {
			pose, seconds = want.pose, seconds+turn
		}
		if want.leaves >= 0 {
			pose = want.leaves
		}
		return sequence.State(pose + poses*(open+covers*tool)), seconds, true
	}
	p.End = func(from sequence.State) int64 { return cover * int64(int(from)/poses%covers) }
	if random.IntN(2) == 0 {
		p.Holds = func(lag int, from, to sequence.State) bool {
			return lag%2 == 0 || int(from)%poses == int(to)%poses
		}
	}
	return p
}

// matrix is a random problem whose state is the task done last.
func matrix(random *rand.Rand, most int) sequence.Problem {
	n := 1 + random.IntN(most)
	p := sequence.Problem{Times: make([]int64, n), Start: sequence.State(n)}
	change := make([][]int64, n+1)
	for i := range change {
		change[i] = make([]int64, n+1)
		for j := range change[i] {
			change[i][j] = random.Int64N(100)
			if random.IntN(6) == 0 {
				change[i][j] = -1
			}
		}
	}
	for range random.IntN(2 * n) {
		if a, b := random.IntN(n), random.IntN(n); a < b {
			p.Before = append(p.Before, [2]int{a, b})
		}
	}
	p.Move = func(from sequence.State, task int) (sequence.State, int64, bool) {
		return sequence.State(task), max(0, change[from][task]), change[from][task] >= 0
	}
	p.End = func(from sequence.State) int64 { return max(0, change[from][n]) }
	return p
}

// Solve finds what trying all orders finds, proves it, and says so where there is none, also
// where the beam is so narrow at first that all bounds and both searches are needed.
func TestSolveAgainstAllOrders(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 7))
	possible, impossible, limited := 0, 0, 0
	for round := range 3000 {
		most := 6
		if round%10 == 0 {
			most = 8
		}
		p := workshop(random, most)
		if round%3 == 0 {
			p = matrix(random, most)
		}
		want, found := bruteForce(p)
		if free := p; slices.ContainsFunc(p.Lags, func(lag sequence.Lag) bool { return lag.Most > 0 }) {
			free.Lags = slices.Clone(p.Lags)
			for i := range free.Lags {
				free.Lags[i].Most = 0
			}
			if shorter, any := bruteForce(free); any && (!found || shorter < want) {
				limited++
			}
		}
		for _, width := range []int{32, 1} {
			plan, err := sequence.SolveFrom(p, sequence.Budget{Labels: 100_000, Trials: 50}, width)
			if !found {
				var conflict *sequence.Conflict
				require.ErrorAs(t, err, &conflict, "problem %d", round)
				assert.NotEmpty(t, conflict.Tasks)
				continue
			}
			require.NoError(t, err, "problem %d", round)
			require.Equal(t, want, plan.Length, "problem %d: %v", round, plan)
			require.True(t, plan.Proved, "problem %d", round)
			require.Equal(t, want, plan.Bound)
			again, err := sequence.Replay(p, plan.Order)
			require.NoError(t, err)
			require.Equal(t, again.Length, plan.Length)
			require.Equal(t, again.Starts, plan.Starts)
		}
		if found {
			possible++
		} else {
			impossible++
		}
	}
	t.Logf("%d possible, %d impossible, %d that a most makes longer or impossible", possible, impossible, limited)
	assert.Greater(t, limited, 100)
	assert.Greater(t, possible, 2000)
	assert.Greater(t, impossible, 100)
}
