package sequence

import (
	"cmp"
	"slices"
)

// label is a way to have done a set of tasks.
type label struct {
	hash   uint64 // of the set and the state
	time   int64  // when the last of them ended
	rest   int64  // a bound of what is left, waits left out
	rank   int64  // a bound of the length of all
	seen   memory // the tasks done that walks watch
	fines  int64  // the penalties of the tasks left
	from   int32  // where the label it came from stands in the layer before
	state  int32
	task   int16 // the last one done
	worse  bool  // another label of the set and state is as good in all
	waits  int32 // how many waits are open,
	waitAt int32 // and where they stand in the layer
}

// opening is a wait that is open, and when it runs out.
type opening struct {
	wait int32
	end  int64
}

// layer is labels that have as many tasks done.
type layer struct {
	words  int // of a set
	labels []label
	sets   []uint64
	waits  []opening
	prices prices
	// table finds the labels of a set and state: open addressing, places of labels plus 1.
	table []int32
}

func (l *layer) set(index int) set { return l.sets[index*l.words : (index+1)*l.words] }

func (l *layer) open(lab *label) []opening { return l.waits[lab.waitAt : lab.waitAt+lab.waits] }

func (l *layer) clear() {
	l.labels, l.sets, l.waits = l.labels[:0], l.sets[:0], l.waits[:0]
	clear(l.table)
}

// add puts a label into the layer, unless one of its set and state is as good in all; those
// that it is as good as go. Where what is left is limited, sooner is not better as such.
func (l *layer) add(lab label, done set, open []opening, limited bool) {
	if len(l.table) < 4*(len(l.labels)+1) {
		l.table = make([]int32, max(1024, 2*len(l.table)))
		l.index()
	}
	mask := uint64(len(l.table) - 1)
	place := -1
	slot := lab.hash & mask
	for ; l.table[slot] != 0; slot = (slot + 1) & mask {
		at := int(l.table[slot] - 1)
		other := &l.labels[at]
		if other.hash != lab.hash || other.state != lab.state || other.worse || !slices.Equal(l.set(at), done) {
			continue
		}
		// What is left is the same for both, so each bound of it holds for both.
		rest := max(lab.rest, other.rest)
		other.rest, lab.rest = rest, rest
		other.rank, lab.rank = max(other.rank, other.time+rest), max(lab.rank, lab.time+rest)
		if other.time <= lab.time && asGood(l.open(other), other.time, open, lab.time, limited) {
			return
		}
		if lab.time <= other.time && asGood(open, lab.time, l.open(other), other.time, limited) {
			if place < 0 {
				place = at
			} else {
				other.worse = true
			}
		}
	}
	if place < 0 {
		place = len(l.labels)
		l.labels = append(l.labels, label{})
		l.sets = append(l.sets, done...)
		l.table[slot] = int32(place + 1)
	}
	lab.waitAt, lab.waits = int32(len(l.waits)), int32(len(open))
	l.waits = append(l.waits, open...)
	l.labels[place] = lab
}

// asGood says whether what waits at a time is as good as what others wait for at a later one.
// A task that has to begin within a time after another may come too late because that one is
// done sooner, when a third wait keeps the two apart. So where such tasks are left, it is as
// good only if all goes on in the same way, but sooner: each wait takes as long from now on, and
// those that have run out leave no less time to the task behind them.
func asGood(some []opening, time int64, others []opening, later int64, limited bool) bool {
	if !limited {
		return within(some, others, later)
	}
	return slices.EqualFunc(some, others, func(one, other opening) bool {
		left, leaves := one.end-time, other.end-later
		return one.wait == other.wait && (left == leaves || left <= 0 && leaves <= 0 && left >= leaves)
	})
}

// within says whether each wait of some that is still open at a time runs out no later than
// the same wait of others. Both are in the order of the waits.
func within(some, others []opening, time int64) bool {
	for _, one := range some {
		if one.end <= time {
			continue
		}
		for len(others) > 0 && others[0].wait < one.wait {
			others = others[1:]
		}
		if len(others) == 0 || others[0].wait != one.wait || others[0].end < one.end {
			return false
		}
	}
	return true
}

// index fills the table anew.
func (l *layer) index() {
	clear(l.table)
	mask := uint64(len(l.table) - 1)
	for i := range l.labels {
		slot := l.labels[i].hash & mask
		for l.table[slot] != 0 {
			slot = (slot + 1) & mask
		}
		l.table[slot] = int32(i + 1)
	}
}

// narrow keeps the best so many labels, and returns the least rank of those that it drops;
// never if none. Those that others are as good as go first, and cost nothing.
func (l *layer) narrow(width int, order []int32) (dropped int64, scratch []int32) {
	order = order[:0]
	for i := range l.labels {
		if !l.labels[i].worse {
			order = append(order, int32(i))
		}
	}
	dropped = never
	if len(order) > width {
		slices.SortFunc(order, func(a, b int32) int {
			x, y := &l.labels[a], &l.labels[b]
			return cmp.Or(cmp.Compare(x.rank, y.rank), cmp.Compare(y.time, x.time), cmp.Compare(a, b))
		})
		dropped = l.labels[order[width]].rank
		order = order[:width]
		slices.Sort(order)
	}
	if len(order) == len(l.labels) {
		return dropped, order
	}
	var waits []opening
	for to, from := range order {
		lab := l.labels[from]
		open := l.open(&lab)
		lab.waitAt = int32(len(waits))
		waits = append(waits, open...)
		l.labels[to] = lab
		copy(l.set(to), l.set(int(from)))
	}
	l.labels, l.sets, l.waits = l.labels[:len(order)], l.sets[:len(order)*l.words], waits
	l.index()
	return dropped, order
}
