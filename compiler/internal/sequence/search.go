package sequence

import (
	"fmt"
	"math/rand/v2"
	"slices"
)

// firstWidth is how many labels a layer keeps at first.
const firstWidth = 32

// search looks for the shortest order of a network.
type search struct {
	net    *network
	budget Budget
	random *rand.Rand

	best     int64 // the length of order; never if there is none
	order    []int
	bound    int64 // no order is shorter
	labels   int   // expanded so far
	complete bool  // a beam dropped nothing
	pinched  bool  // the budget kept a beam from being as wide as it should
	deepest  []int // the tasks left where the most were done

	// The bounds. The assignment takes more time than the walks, and is not used any more
	// where of what it tried it cut little.
	walks      *walks // nil before there is an order
	relaxed    *assignment
	assigns    bool
	tried, cut int
	machine    oneMachine

	// The beam.
	past   *layer     // the layer before the one that is expanded
	now    *layer     // the layer that is expanded
	next   *layer     // what comes out of it
	trace  [][]origin // the layers from the second on
	hashes []uint64   // of a task in a set

	// Scratch.
	left   []int16 // the tasks left
	done   set
	waits  []opening
	places []int32
}

// origin is where a label of a layer that is past came from.
type origin struct {
	from int32
	task int16
}

func newSearch(net *network, budget Budget) *search {
	s := &search{net: net, budget: budget, best: never, random: rand.New(rand.NewPCG(uint64(net.n), 20)), relaxed: newAssignment(net), done: newSet(net.n)}
	s.hashes = make([]uint64, net.n)
	for i := range s.hashes {
		s.hashes[i] = s.random.Uint64()
	}
	words := len(s.done)
	s.past, s.now, s.next = &layer{words: words}, &layer{words: words}, &layer{words: words}
	s.machine = oneMachine{net: net}
	return s
}

// run looks until the order is proved or the budget is used: a narrow beam for a first
// order, local search from there, and then in turn better bounds and wider beams.
func (s *search) run(width int) {
	s.assigns = s.net.Rest == nil
	s.beam(width)
	if s.settled() {
		return
	}
	s.improve()
	used := 0
	for stage := 0; !s.settled() && s.labels < s.budget.Labels; stage++ {
		if s.best < never && s.net.Rest == nil && !s.penalize(stage, used) {
			s.bound = s.best
			return
		}
		before, start := s.best, s.labels
		s.beam(width)
		if s.best < before && !s.settled() {
			s.improve()
		}
		used = s.labels - start
		left := s.budget.Labels - s.labels
		if left < used || s.pinched {
			return
		}
		width = min(2*width, width*left/used)
	}
}

// penalize makes the bound by walks better, where the last beam used so many labels; false if no order can be shorter than the best.
func (s *search) penalize(stage, used int) bool {
	net := s.net
	if s.walks == nil {
		s.walks = newWalks(net)
	}
	trails := min(trailsOf(stage), max(1, mostTrails/(net.n*net.n)))
	limit := (s.best - net.work + net.unit - 1) / net.unit
	steps := min(max(firstSteps*net.n*net.n, stepsPerLabel*used)*net.n, s.budget.Labels*net.n/stages)
	shorter := s.walks.tune(limit, steps, trails)
	if shorter {
		s.bound = max(s.bound, net.work+(s.walks.value+fine-1)/fine*net.unit)
	}
	return shorter
}

// What goes into the walks before a beam: for each task, so many trails are looked at for
// each label of the beam before, no fewer than firstSteps times the square of the tasks, and
// no more than a share of the budget's labels.
const (
	firstSteps    = 8
	stepsPerLabel = 10
	stages        = 3
)

// mostTrails is how many trails are kept at most, of 32 bytes.
const mostTrails = 1 << 22

// trailsOf is how many trails each task has at each place in a stage.
func trailsOf(stage int) int {
	if stage == 0 {
		return 1
	}
	return 4 << min(stage, 5)
}

// settled says whether there is nothing left to find.
func (s *search) settled() bool {
	return s.net.fault != nil || s.complete || s.best < never && s.bound >= s.best
}

// take notes an order if it is shorter than the best.
func (s *search) take(length int64, order []int) {
	if length < s.best {
		s.best, s.order = length, slices.Clone(order)
	}
}

// conflict is why no order was found.
func (s *search) conflict() error {
	complete := s.complete
	// Without bounds, it is seen how far it goes.
	s.assigns, s.walks, s.deepest = false, nil, nil
	s.beam(firstWidth)
	if complete {
		return &Conflict{Tasks: s.deepest, Reason: "there is no order; where the most tasks are done, these are left and none of them can begin"}
	}
	return &Conflict{Tasks: s.deepest, Reason: fmt.Sprintf("no order was found with %d labels; where the most tasks were done, these were left", s.labels)}
}
