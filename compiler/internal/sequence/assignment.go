package sequence

import (
	"math"
	"slices"
)

// assignment is the cheapest way to give each thing that is left a thing that comes right
// after it, rings allowed: a bound of the changes that are left, which each order keeps to.
// Rows are the tasks left and, as row n, where the worker is; columns the tasks left and,
// as column n, the end. It is solved by shortest augmenting paths (Kuhn 1955, Tomizawa
// 1971), and mended rather than solved anew when a task is done.
type assignment struct {
	net    *network
	side   int
	here   []int32 // the arcs out of where the worker is
	price  []int32 // of a column
	row    []int16 // the row of a column; -1 for none
	column []int16 // the column of a row
	value  int64   // of the assignment, in units
	live   []int16 // the columns, the end last
	// The search of a path: how far each column is, from which row, and which are open.
	far  []int32
	from []int16
	open []int16
	done []int16
	// back is how much dearer the assignment gets where a row loses its column.
	back []int32
}

func newAssignment(net *network) *assignment {
	side := net.n + 1
	return &assignment{
		net: net, side: side,
		here: make([]int32, side), price: make([]int32, side), row: make([]int16, side), column: make([]int16, side),
		far: make([]int32, side), from: make([]int16, side), back: make([]int32, side),
	}
}

// arcs are the arcs out of a row.
func (a *assignment) arcs(row int) []int32 {
	if row == a.side-1 {
		return a.here
	}
	return a.net.arcs[row*a.side : (row+1)*a.side]
}

// stand puts the worker into a state with these tasks left, of which some may be next.
func (a *assignment) stand(state int32, left []int16, done set) {
	n := a.side - 1
	a.live = append(append(a.live[:0], left...), int16(n))
	a.here[n] = forbidden
	if len(left) == 0 {
		a.here[n] = a.net.units(a.net.closing(state))
	}
	row := a.net.row(state)
	for _, task := range left {
		a.here[task] = forbidden
		if a.net.before[task].within(done) {
			a.here[task] = a.net.units(row[task].change)
		}
	}
}

// solve finds the assignment from nothing.
func (a *assignment) solve() {
	a.value = 0
	for _, column := range a.live {
		a.row[column] = -1
		lowest := a.here[column]
		for _, row := range a.live[:len(a.live)-1] {
			lowest = min(lowest, a.net.across[int(column)*a.side+int(row)])
		}
		a.price[column] = lowest
		a.value += int64(lowest)
	}
	for _, row := range a.live {
		a.augment(row)
	}
}

// mend makes the assignment of one task more left, in which stand has already put the
// worker to where it is after task done, into that of the tasks left now.
func (a *assignment) mend(done int) {
	n := int16(a.side - 1)
	loser := a.row[done]
	for _, column := range a.live {
		switch row := a.row[column]; row {
		case n, int16(done):
			a.row[column] = -1
		default:
			a.column[row] = column
		}
	}
	a.value = 0
	for _, column := range a.live {
		if row := a.row[column]; row < 0 {
			a.value += int64(a.price[column])
		} else {
			a.value += int64(a.net.arcs[int(row)*a.side+int(column)])
		}
	}
	if loser != n && loser != int16(done) {
		a.augment(loser)
	}
	a.augment(n)
}

// augment gives a row without column one, moving others where that is cheaper.
func (a *assignment) augment(row int16) {
	a.open = append(a.open[:0], a.live...)
	a.done = a.done[:0]
	far, price := a.far, a.price
	arcs := a.arcs(int(row))
	for _, column := range a.open {
		far[column], a.from[column] = arcs[column]-price[column], row
	}
	var nearest int16
	var reach int32
	for {
		at, least := 0, int32(math.MaxInt32)
		for i, column := range a.open {
			if far[column] < least {
				at, least = i, far[column]
			}
		}
		nearest, reach = a.open[at], least
		if a.row[nearest] < 0 {
			break
		}
		a.open[at] = a.open[len(a.open)-1]
		a.open = a.open[:len(a.open)-1]
		a.done = append(a.done, nearest)
		next := a.row[nearest]
		arcs := a.arcs(int(next))
		base := reach - (arcs[nearest] - price[nearest])
		for _, column := range a.open {
			if way := base + arcs[column] - price[column]; way < far[column] {
				far[column], a.from[column] = way, next
			}
		}
	}
	for _, column := range a.done {
		price[column] += far[column] - reach
	}
	a.value += int64(reach)
	for column := nearest; ; {
		giver := a.from[column]
		before := a.column[giver]
		a.row[column], a.column[giver] = giver, column
		if giver == row {
			return
		}
		column = before
	}
}

// measureBack finds for each row but the worker's how much dearer the rest gets if the
// worker's row goes, and the row gives its column away and gets another. What is dearer
// than limit is given as more than limit.
func (a *assignment) measureBack(limit int64) {
	n := a.side - 1
	freed := a.column[n]
	rows := append(a.open[:0], a.live[:len(a.live)-1]...)
	across, price, back := a.net.across, a.price, a.back
	// own is the price of a row; the row's own column costs nothing over it.
	own := a.far
	towards := across[int(freed)*a.side : int(freed)*a.side+a.side]
	for _, row := range rows {
		column := a.column[row]
		own[row] = a.net.arcs[int(row)*a.side+int(column)] - price[column]
		back[row] = towards[row] - own[row] - price[freed]
	}
	for len(rows) > 0 {
		at, least := 0, int32(math.MaxInt32)
		for i, row := range rows {
			if back[row] < least {
				at, least = i, back[row]
			}
		}
		if int64(least) > limit {
			return
		}
		nearest := rows[at]
		rows[at] = rows[len(rows)-1]
		rows = rows[:len(rows)-1]
		column := a.column[nearest]
		towards := across[int(column)*a.side : int(column)*a.side+a.side]
		base := least - price[column]
		for _, row := range rows {
			if way := base + towards[row] - own[row]; way < back[row] {
				back[row] = way
			}
		}
	}
}

// dearer is how much dearer the assignment gets, at the least, if a task is done next;
// measureBack has been called.
func (a *assignment) dearer(task int) int64 {
	n := a.side - 1
	column := a.column[n]
	// The price of the worker's row comes out of the column it has.
	own := int64(a.here[column]) - int64(a.price[column])
	more := int64(a.here[task]) - own - int64(a.price[task])
	if row := a.row[task]; int(row) != n {
		more += int64(a.back[row])
	}
	return more
}

// prices are the assignments of the labels of a layer, by the label's index.
type prices struct {
	side  int
	price []int32
	row   []int16
}

// resize makes room for so many labels.
func (p *prices) resize(side, labels int) {
	p.side = side
	p.price = slices.Grow(p.price[:0], side*labels)[:side*labels]
	p.row = slices.Grow(p.row[:0], side*labels)[:side*labels]
}

// keep notes the assignment as that of a label.
func (p *prices) keep(a *assignment, label int) {
	copy(p.price[label*p.side:(label+1)*p.side], a.price)
	copy(p.row[label*p.side:(label+1)*p.side], a.row)
}

// load takes the assignment of a label.
func (p *prices) load(a *assignment, label int) {
	copy(a.price, p.price[label*p.side:(label+1)*p.side])
	copy(a.row, p.row[label*p.side:(label+1)*p.side])
}
