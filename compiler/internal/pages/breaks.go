package pages

import "math"

// item is what a side is filled with: it stays whole.
type item struct {
	piece
	above float64 // blank before it, unless it begins a side
	part  string  // heading repeated when a side begins with this item; empty for none
	stays bool    // belongs on the side of the item before it
	dear  float64 // cost of turning over before it
	bar   bool    // done while something waits: a bar runs beside it
	low   bool    // lies at the foot of its side
}

// Costs of turning over. A side more costs far more than any other fault; then
// the hands should be free, and the sides about as full as each other.
const (
	costSide      = 4000.0
	costBlank     = 160.0 // of a wholly blank side that is not the last; grows with the square
	costLast      = 110.0 // the same of the last
	costPart      = 0.0   // before a part of the job
	costStage     = 6.0   // before a stage
	costList      = 15.0  // before a row of a list
	costTable     = 5.0   // before a row of a table that is read line by line
	costStep      = 20.0  // before a step
	costFree      = 8.0   // before a step behind one that takes its time by itself
	costGoesOn    = 70.0  // before a step that goes on with the thing the hands are at
	costSafety    = 90.0  // within what is read before the work
	costEnergy    = 40.0  // between the messages and where energy is cut off
	costBring     = 60.0  // within what is fetched
	costMeanwhile = 90.0  // before a step done while something waits
	costInside    = 400.0 // within a step too tall to stay whole
	costParted    = 20000.0
)

// room tells the height free for items first to end-1 on a side of their own.
type room func(first, end int) float64

// turns finds the cheapest way to share items out to sides: the index of the
// first item of each side. Parted tells that items which belong together had to
// be parted. Every item must fit on a side by itself. What the last side costs for its blank
// is costLast, or less where the sides before it are to be full.
func turns(items []item, free room, last float64) (starts []int, parted bool) {
	n := len(items)
	best := make([]float64, n+1)
	from := make([]int, n+1)
	for end := 1; end <= n; end++ {
		best[end], from[end] = math.Inf(1), end-1
		height := 0.0
		for first := end - 1; first >= 0; first-- {
			height += items[first].height
			if first+1 < end {
				height += items[first+1].above
			}
			left := free(first, end) - height
			if left < -tiny && first < end-1 {
				break
			}
			cost := best[first] + costSide + turnCost(items, first) + blankCost(left, free(first, end), blankOf(end == n, last))
			if cost < best[end] {
				best[end], from[end] = cost, first
			}
		}
	}
	for end := n; end > 0; end = from[end] {
		starts = append([]int{from[end]}, starts...)
		parted = parted || (from[end] > 0 && items[from[end]].stays)
	}
	return starts, parted
}

func turnCost(items []item, first int) float64 {
	switch {
	case first == 0:
		return 0
	case items[first].stays:
		return costParted
	}
	return items[first].dear
}

// blankOf is what a wholly blank side costs.
func blankOf(isLast bool, last float64) float64 {
	if isLast {
		return last
	}
	return costBlank
}

func blankCost(left, whole, blank float64) float64 {
	share := max(left, 0) / whole
	return blank * share * share
}
