// Package tree reads TOML v1.0 into a tree in which every key, value and comment
// has its place, comments are kept, and one run finds several faults. It must not
// know what the keys mean.
package tree

import (
	"sort"

	"benchleaf/compiler/source"
)

// Kind is the type of a value.
type Kind uint8

// The kinds of value; TablesKind is a list of tables made by [[headers]].
const (
	StringKind Kind = iota
	IntegerKind
	FloatKind
	BooleanKind
	DateTimeKind
	LocalDateTimeKind
	LocalDateKind
	LocalTimeKind
	ArrayKind
	TableKind
	TablesKind
)

// Value is one value with its place.
type Value struct {
	Kind  Kind
	Bool  bool
	from  uint32      // of a string that stands in the file byte by byte: where; or else 0
	Span  source.Span // as written, quotes and brackets included; for a table made by a header, the header
	Text  string      // a string decoded; a number, boolean or date as written
	Int   int64
	Float float64
	Items []*Value // of ArrayKind and TablesKind
	Table *Table   // of TableKind

	spelt *[]run // of another string: where its decoded bytes stand
}

// run is a stretch of a decoded string that stands in the file byte by byte.
type run struct{ decoded, written int }

// Inside is the span in the file of the bytes [start, end) of a decoded string,
// clamped to it; the whole span for another kind of value.
func (v *Value) Inside(start, end int) source.Span {
	if v.Kind != StringKind || v.spelt == nil && v.from == 0 {
		return v.Span
	}
	start = max(0, min(start, len(v.Text)))
	end = max(start, min(end, len(v.Text)))
	if v.from > 0 {
		return source.Span{Start: int(v.from) + start, End: int(v.from) + end}
	}
	out := source.Span{Start: v.written(start), End: v.written(end)}
	if end > start {
		out.End = max(v.written(end-1)+1, out.End)
	}
	return out
}

func (v *Value) written(offset int) int {
	runs := *v.spelt
	i := sort.Search(len(runs), func(i int) bool { return runs[i].decoded > offset }) - 1
	return runs[i].written + offset - runs[i].decoded
}

// Table is a set of entries.
type Table struct {
	Header  source.Span // "[part.plug]" as written; the key that made it for a dotted or implied table; the whole of an inline table
	Inline  bool
	Entries []*Entry // in order of writing

	index map[string]*Entry // nil where there are few
	made  origin
}

// origin says how a table came to be, which decides who may add to it.
type origin int

const (
	implied origin = iota // by the header of a table inside it
	headed                // by its own header
	dotted                // by a dotted key
	closed                // inline: complete as written
)

// Get finds an entry by its key, in the same case; nil when there is none.
func (t *Table) Get(key string) *Entry {
	if t.index != nil {
		return t.index[key]
	}
	for _, entry := range t.Entries {
		if entry.Key == key {
			return entry
		}
	}
	return nil
}

// few is how many entries of a table are looked through one by one.
const few = 12

// End is the offset behind the last value written in the table or in a table inside it.
func (t *Table) End() int {
	end := t.Header.End
	for _, entry := range t.Entries {
		end = max(end, entry.Value.end())
	}
	return end
}

func (v *Value) end() int {
	end := v.Span.End
	for _, item := range v.Items {
		end = max(end, item.end())
	}
	if v.Table != nil {
		end = max(end, v.Table.End())
	}
	return end
}

func (t *Table) add(entry *Entry) {
	t.Entries = append(t.Entries, entry)
	switch {
	case t.index != nil:
		t.index[entry.Key] = entry
	case len(t.Entries) > few:
		t.index = map[string]*Entry{}
		for _, one := range t.Entries {
			t.index[one.Key] = one
		}
	}
}

// Entry is a key with its value.
type Entry struct {
	Key     string
	KeySpan source.Span // this part of the key as written
	Value   *Value
	Again   []source.Span // where it is written once more, in headers and dotted keys that add to its table
}

// Comment is a comment from its # to the end of the line.
type Comment struct {
	Span source.Span
	Text string
}

// Document is a file, read.
type Document struct {
	File     *source.File
	Root     *Table
	Comments []Comment
}
