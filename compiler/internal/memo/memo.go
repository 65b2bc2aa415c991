// Package memo keeps what was worked out of texts from one compile to the next. What is worked out
// hangs on the text alone, so that it makes no difference whether it was kept.
package memo

import "strings"

// Memo holds what was worked out for one job. It is of one hand at a time. The nil Memo keeps nothing.
type Memo struct {
	tables map[any]sweeper
	rooms  map[any]any
	turn   int
}

// rounds is how often a compile may go by a text that it does not meet before it is forgotten.
const rounds = 50

// Next begins another compile.
func (m *Memo) Next() {
	if m == nil {
		return
	}
	if m.turn++; m.turn%rounds == 0 {
		for _, table := range m.tables {
			table.sweep(m.turn - rounds)
		}
	}
}

// Function is a function of a text, of which a Memo keeps the results. They are not to be changed.
type Function[T any] struct{ work func(text string) T }

// Of makes one of a function that hangs on nothing but its text.
func Of[T any](work func(text string) T) *Function[T] { return &Function[T]{work} }

type sweeper interface{ sweep(before int) }

type table[T any] map[string]*kept[T]

type kept[T any] struct {
	turn int
	out  T
}

func (t table[T]) sweep(before int) {
	for text, one := range t {
		if one.turn < before {
			delete(t, text)
		}
	}
}

// Of is the result for a text.
func (f *Function[T]) Of(m *Memo, text string) T {
	if m == nil {
		return f.work(text)
	}
	in, _ := m.tables[f].(table[T])
	if in == nil {
		if m.tables == nil {
			m.tables = map[any]sweeper{}
		}
		in = table[T]{}
		m.tables[f] = in
	}
	one := in[text]
	if one == nil {
		text = strings.Clone(text) // of which the file is not to be kept
		one = &kept[T]{out: f.work(text)}
		in[text] = one
	}
	one.turn = m.turn
	return one.out
}

// Room is for a list that is made anew with each compile: it stands where that of the compile
// before stood, which is no longer to be used.
type Room[T any] struct{ _ byte }

// stood is a list with the compile that made it.
type stood[T any] struct {
	turn int
	list []T
}

// Take is an empty list, to be put back when all is in it.
func (r *Room[T]) Take(m *Memo) []T {
	if m == nil {
		return nil
	}
	before, there := m.rooms[r].(*stood[T])
	if !there || before.turn == m.turn { // a second one in this compile
		return nil
	}
	out := before.list
	before.list = nil
	return out[:0]
}

// Put keeps a list for the compile after this one.
func (r *Room[T]) Put(m *Memo, list []T) {
	if m == nil {
		return
	}
	clear(list[len(list):cap(list)])
	if before, there := m.rooms[r].(*stood[T]); there {
		if before.turn != m.turn {
			before.turn, before.list = m.turn, list
		}
		return
	}
	if m.rooms == nil {
		m.rooms = map[any]any{}
	}
	m.rooms[r] = &stood[T]{m.turn, list}
}
