// Package sequence puts tasks that one worker does one after the other into the order in
// which the last of them ends soonest. Tasks may have to wait for each other, what the
// machine is set to (how it lies, what is open, which tool is in) must be changed between
// them, and waits may be filled with other tasks. Without waits this is the sequential
// ordering problem. Nothing of the project is imported.
//
// An order is looked for in two ways that help each other. Local search finds good orders
// (exchange.go, shift.go). A dynamic programme over what is done, kept to the best so many
// labels a layer, finds more, and proves how good they are (beam.go); its width grows until
// nothing is dropped, which proves the order, or until the budget is used, and then the best
// of what was dropped bounds the length. A label is left out where a bound says that nothing
// shorter comes of it: what each task must at least be followed by (assignment.go), walks
// that remember some of what they did (walk.go), waits (waits.go). Budgets are counts and
// never times, and every choice at random has a fixed seed, so that the same problem gives
// the same plan on every machine.
package sequence

// MaxTasks is how many tasks a problem may have at most.
const MaxTasks = 1000

// MaxSeconds is how long one task, one wait or one change may take at most: 2^40 seconds.
const MaxSeconds = int64(1) << 40

// State is what a machine is set to. The numbers are the caller's.
type State uint32

// Lag is a least wait: task To may begin at the earliest Least seconds, at least 0, after
// task From has ended. It is open from the end of From until these seconds have passed.
// While it is open no task of Bars may begin; From and To may stand in Bars and are not
// barred by it otherwise than said. Where Most is not 0, To begins at the latest so many
// seconds after From has ended, or the order is none. The worker is never idle but for a wait
// or a Holds that he cannot go on before: From is not put off so that To comes in time.
type Lag struct {
	From, To int
	Least    int64
	Most     int64 // 0 for any; at least Least
	Bars     []int
}

// Problem is some tasks to be done one after the other by one worker, so that the last
// ends soonest. The functions must give the same answer whenever they are asked the same.
type Problem struct {
	// Times is how many seconds each task takes, by its index, at least 0.
	Times []int64
	// Before holds pairs of tasks, the first of which must end before the second begins.
	Before [][2]int
	// Lags are waits, which other tasks may fill.
	Lags []Lag
	// Start is the state of the machine before the first task.
	Start State
	// Move says how many seconds, at least 0, it takes to change the machine from a state
	// to what a task needs, and the state after the task; false where that cannot be done.
	// The change is made right before the task, once its waits allow it or sooner. Nil
	// changes nothing.
	Move func(from State, task int) (to State, change int64, ok bool)
	// End is how many seconds, at least 0, closing up takes from a state. Nil is nothing.
	End func(from State) int64
	// Rest is what has to be changed at the least, in seconds and closing up included, for the
	// tasks that are not done; done has a bit for each task, by words of 64. It takes the place
	// of the bounds that are drawn from the changes between two tasks. Nil knows nothing of it.
	Rest func(done []uint64, from State) int64
	// Holds says whether a move that takes time, or gives another state, may be begun while
	// a lag (by its index) is open. Where it may not, the worker waits until the lag has
	// run out. Nil allows all.
	Holds func(lag int, from, to State) bool
}

// Budget is how much work goes into a plan. What is 0 is the default.
type Budget struct {
	// Labels is how many labels are expanded at most, DefaultLabels if 0; a few more than
	// that, as a beam goes on to its end. With n tasks a label takes about a microsecond,
	// with waits some more, and with it goes work on bounds of up to n/4 microseconds. Memory
	// is bounded with it: 8 bytes for each label, and for each of a layer, of which there are
	// at most five times the width of the beam, about 150 + n/8 + 7·n bytes; the walks take
	// 134 MB at most.
	Labels int
	// Trials is how much local search tries each time that it is begun anew, DefaultTrials if
	// 0: with waits so many orders, without so many thousand swaps, which takes about as long.
	Trials int
}

// Defaults of a budget: about a second for 50 tasks where nothing is proved sooner.
const (
	DefaultLabels = 100_000
	DefaultTrials = 20_000
)

// Plan is an order of the tasks and how good it is.
type Plan struct {
	// Order is the tasks in the order they are done in.
	Order []int
	// Starts is when each task begins, by its index, in seconds after the start of the job.
	// A change that the task needs is made before.
	Starts []int64
	// Length is when everything has ended, closing up included.
	Length int64
	// Bound is a length that no order is shorter than.
	Bound int64
	// Proved says that no order is shorter than this one: Bound is Length.
	Proved bool
	// Labels is how many labels were expanded.
	Labels int
}

// Solve finds a short order. The error is a Conflict where no order is possible or none was
// found, and says otherwise which value of the problem cannot be.
func Solve(p Problem, budget Budget) (Plan, error) { return solve(p, budget, firstWidth) }

// solve begins with a beam of a width.
func solve(p Problem, budget Budget, width int) (Plan, error) {
	if budget.Labels <= 0 {
		budget.Labels = DefaultLabels
	}
	if budget.Trials <= 0 {
		budget.Trials = DefaultTrials
	}
	if err := check(p); err != nil {
		return Plan{}, err
	}
	net, err := prepare(p)
	if err != nil {
		return Plan{}, err
	}
	s := newSearch(net, budget)
	s.run(width)
	if net.fault != nil {
		return Plan{}, net.fault
	}
	if s.order == nil {
		return Plan{}, s.conflict()
	}
	plan, err := Replay(p, s.order)
	if err != nil {
		return Plan{}, err
	}
	plan.Bound, plan.Labels = min(s.bound, plan.Length), s.labels
	plan.Proved = plan.Bound == plan.Length
	return plan, nil
}
