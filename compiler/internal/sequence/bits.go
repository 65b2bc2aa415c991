package sequence

import "math/bits"

// set is a set of tasks, one bit each.
type set []uint64

func newSet(n int) set { return make(set, (n+63)/64) }

func (s set) has(task int) bool { return s[task>>6]>>(task&63)&1 != 0 }

func (s set) add(task int) { s[task>>6] |= 1 << (task & 63) }

// join adds all of another set.
func (s set) join(other set) {
	for i, word := range other {
		s[i] |= word
	}
}

// meets says whether two sets have a task in common.
func (s set) meets(other set) bool {
	for i, word := range other {
		if s[i]&word != 0 {
			return true
		}
	}
	return false
}

// within says whether all of a set is in another.
func (s set) within(other set) bool {
	for i, word := range s {
		if word&^other[i] != 0 {
			return false
		}
	}
	return true
}

// count is how many tasks are in a set.
func (s set) count() int {
	count := 0
	for _, word := range s {
		count += bits.OnesCount64(word)
	}
	return count
}
