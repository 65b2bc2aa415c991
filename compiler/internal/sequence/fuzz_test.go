package sequence_test

import (
	"testing"

	"benchleaf/compiler/internal/sequence"
)

// Whatever a problem is, solving it ends without a panic, and a plan is what its order
// gives when it is played again.
func FuzzSolve(f *testing.F) {
	f.Add([]byte{3, 1, 2, 3, 2, 0, 1, 1, 2, 1, 0, 2, 9, 1, 5, 7, 9, 11})
	f.Add([]byte{6, 9, 8, 7, 6, 5, 4, 1, 0, 5, 2, 0, 1, 200, 3, 4, 5, 40, 2, 250, 3, 8, 1, 7, 90, 2})
	f.Add([]byte{})
	f.Fuzz(func(t *testing.T, data []byte) {
		at := 0
		next := func() int {
			if len(data) == 0 {
				return 0
			}
			at++
			return int(data[(at-1)%len(data)])
		}
		seconds := func() int64 { // seldom below 0 or huge
			switch value := next(); value {
			case 255:
				return -1
			case 254:
				return sequence.MaxSeconds
			case 253:
				return sequence.MaxSeconds + 1
			default:
				return int64(value)
			}
		}
		p := sequence.Problem{Times: make([]int64, next()%10), Start: sequence.State(next())}
		n := len(p.Times)
		for i := range p.Times {
			p.Times[i] = seconds()
		}
		for range next() % 5 {
			p.Before = append(p.Before, [2]int{next() % (n + 1), next() % (n + 1)})
		}
		for range next() % 5 {
			p.Lags = append(p.Lags, sequence.Lag{From: next() % (n + 1), To: next() % (n + 1), Least: seconds(), Most: seconds(), Bars: []int{next() % (n + 1)}})
		}
		states, shut := sequence.State(1+next()%40), next()
		if next() == 0 {
			states = 1 << 30 // without end
		}
		table := make([]int64, 64)
		for i := range table {
			table[i] = seconds()
		}
		if next()%4 > 0 {
			p.Move = func(from sequence.State, task int) (sequence.State, int64, bool) {
				i := (int(from%8)*8 + task) % 64
				return (from*3 + sequence.State(task)) % states, table[i], int(table[i])%17 != shut%17
			}
			p.Holds = func(lag int, from, to sequence.State) bool { return (uint32(lag)+uint32(from)+uint32(to))%3 > 0 }
			p.End = func(from sequence.State) int64 { return table[from%64] }
		}
		plan, err := sequence.Solve(p, sequence.Budget{Labels: 2000, Trials: 200})
		if err != nil {
			return
		}
		again, err := sequence.Replay(p, plan.Order)
		if err != nil {
			t.Fatal(err)
		}
		if again.Length != plan.Length || plan.Bound > plan.Length || plan.Proved != (plan.Bound == plan.Length) {
			t.Fatalf("%+v is %+v", plan, again)
		}
	})
}
