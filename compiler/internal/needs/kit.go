package needs

import (
	"math/bits"
	"slices"
)

// Kit is the smallest set of tools that serves every demand.
type Kit struct {
	Tools   []string // sorted
	Proved  bool     // no smaller set exists; false only when the search ran out of its budget
	Unmet   []int    // demands nothing serves, by index
	Choices int      // places where the search had to choose, for the curious
}

// budget bounds the search by steps, not by a clock, so that the same demands
// give the same kit on any machine.
const budget = 2_000_000

// Demand is one need with the ways to serve it; a need for a tool outright has
// one way of one tool.
type Demand struct{ Ways []Set }

// Smallest finds the fewest tools that serve every demand: exact branch and
// bound over the demand with the fewest ways open, bounded below by demands
// that share no tool. Among kits of one size it takes the one whose tools were
// preferred: ways stand in order of preference.
func Smallest(demands []Demand) Kit {
	s := newSearch(demands)
	s.run()
	kit := Kit{Proved: s.left > 0, Unmet: s.unmet, Choices: s.choices}
	for i, name := range s.names {
		if s.best.has(i) {
			kit.Tools = append(kit.Tools, name)
		}
	}
	return kit
}

// mask is a set of tools as bits.
type mask []uint64

func (m mask) has(i int) bool { return m[i/64]&(1<<(i%64)) != 0 }

func (m mask) with(other mask) mask {
	out := slices.Clone(m)
	for i := range other {
		out[i] |= other[i]
	}
	return out
}

// lacking counts the bits of other that m has not.
func (m mask) lacking(other mask) int {
	n := 0
	for i := range other {
		n += bits.OnesCount64(other[i] &^ m[i])
	}
	return n
}

func (m mask) count() int { return mask(make([]uint64, len(m))).lacking(m) }

type search struct {
	names   []string
	demands [][]mask
	unions  []mask // all tools of a demand's ways
	unmet   []int
	best    mask
	size    int
	left    int
	choices int
}

func newSearch(demands []Demand) *search {
	s := &search{left: budget}
	for i, demand := range demands {
		if len(demand.Ways) == 0 {
			s.unmet = append(s.unmet, i)
		}
		for _, way := range demand.Ways {
			s.names = append(s.names, way...)
		}
	}
	slices.Sort(s.names)
	s.names = slices.Compact(s.names)
	words := len(s.names)/64 + 1
	seen := map[string]bool{}
	for _, demand := range demands {
		var ways []mask
		union := mask(make([]uint64, words))
		key := ""
		for _, way := range demand.Ways {
			m := mask(make([]uint64, words))
			for _, name := range way {
				i, _ := slices.BinarySearch(s.names, name)
				m[i/64] |= 1 << (i % 64)
				key += name + " "
			}
			key += "|"
			ways = append(ways, m)
			union = union.with(m)
		}
		if len(ways) == 0 || seen[key] {
			continue
		}
		seen[key] = true
		s.demands = append(s.demands, ways)
		s.unions = append(s.unions, union)
	}
	s.best = make(mask, words)
	s.size = len(s.names) + 1
	return s
}

func (s *search) run() {
	start := mask(make([]uint64, len(s.names)/64+1))
	open := make([]int, len(s.demands))
	for i := range open {
		open[i] = i
	}
	s.branch(start, open)
}

// branch takes the open demand with the fewest ways and tries each of them.
func (s *search) branch(taken mask, open []int) {
	if s.left--; s.left <= 0 {
		if s.size > len(s.names) { // nothing yet: finish greedily
			s.greedy(taken, open)
		}
		return
	}
	open = s.stillOpen(taken, open)
	if len(open) == 0 {
		if n := taken.count(); n < s.size {
			s.best, s.size = taken, n
		}
		return
	}
	if taken.count()+s.bound(taken, open) >= s.size {
		return
	}
	pick := open[0]
	for _, i := range open[1:] {
		if len(s.demands[i]) < len(s.demands[pick]) {
			pick = i
		}
	}
	ways := slices.Clone(s.demands[pick])
	slices.SortStableFunc(ways, func(a, b mask) int { return taken.lacking(a) - taken.lacking(b) })
	if len(ways) > 1 {
		s.choices++
	}
	for _, way := range ways {
		s.branch(taken.with(way), open)
	}
}

func (s *search) greedy(taken mask, open []int) {
	for _, i := range open {
		best := s.demands[i][0]
		for _, way := range s.demands[i][1:] {
			if taken.lacking(way) < taken.lacking(best) {
				best = way
			}
		}
		taken = taken.with(best)
	}
	s.best, s.size = taken, taken.count()
}

func (s *search) stillOpen(taken mask, open []int) []int {
	var out []int
	for _, i := range open {
		if !slices.ContainsFunc(s.demands[i], func(way mask) bool { return taken.lacking(way) == 0 }) {
			out = append(out, i)
		}
	}
	return out
}

// bound counts tools that must still be taken: for demands whose ways share no
// tool outside what is taken, the least each of them lacks.
func (s *search) bound(taken mask, open []int) int {
	used := mask(make([]uint64, len(taken)))
	total := 0
	for _, i := range open {
		apart := true
		for w := range used {
			if used[w]&(s.unions[i][w]&^taken[w]) != 0 {
				apart = false
				break
			}
		}
		if !apart {
			continue
		}
		least := len(s.names)
		for _, way := range s.demands[i] {
			least = min(least, taken.lacking(way))
		}
		total += least
		used = used.with(s.unions[i])
	}
	return total
}
