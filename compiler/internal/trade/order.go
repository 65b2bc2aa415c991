package trade

// crossStarts are the first bolts of each group of four, for n/4 groups: ASME PCC-1,
// legacy cross pattern; the table is from memory, its opposite pairs are tested.
var crossStarts = [][]int{nil, {1}, {1, 2}, {1, 2, 3}, {1, 3, 2, 4}, {1, 3, 5, 2, 4}, {1, 4, 2, 5, 3, 6}}

// CrossOrder is the order in which 3 to 24 bolts on a circle are tightened, numbered
// from 1 clockwise. With an even number each bolt is followed by the one opposite it.
// Multiples of four follow the legacy cross pattern of ASME PCC-1; other even numbers
// halve the gap between pairs in the same way; odd numbers go round in steps of nearly
// half a turn, which for five is every second bolt (common practice, no source).
func CrossOrder(bolts int) ([]int, bool) {
	if bolts < 3 || bolts > 24 {
		return nil, false
	}
	half := bolts / 2
	out := make([]int, 0, bolts)
	switch {
	case bolts%2 == 1:
		for i := range bolts {
			out = append(out, i*max(half, 1)%bolts+1)
		}
	case bolts%4 == 0:
		quarter := bolts / 4
		for _, first := range crossStarts[quarter] {
			out = append(out, first, first+half, first+quarter, first+half+quarter)
		}
	default:
		for i := range half {
			first := i*(half/2)%half + 1
			out = append(out, first, first+half)
		}
	}
	return out, true
}

// Passes are the usual shares of the torque on a bolt circle, in percent; a last round
// at the full torque follows (ASME PCC-1 allows 20 to 30, 50 to 70 and 100 %).
func Passes() []int { return []int{30, 60, 100} }
