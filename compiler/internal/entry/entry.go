// Package entry is the form of an entry in a machine's service book: what was done by
// which procedure, what was read, and what was left out. It must not know who writes one.
//
// Entries are tables of TOML, one below the other, so that a new one is added at the end
// of the book and nothing above it is touched:
//
//	[[entry]]
//	procedure = "log-deck-gearbox-oil"
//	revision = "C"
//	machine = "Log-deck conveyor"
//	date = 2026-11-27
//	who = "R. A."
//	done = [1, 2, 3]
//
//	[[entry.reading]]
//	step = 15
//	what = "Chain slack"
//	value = "34 mm"
//	limit = "20 to 30 mm"
//	outside = true
package entry

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"
)

// Entry is one time a procedure was worked by, or a meter that was read, or what came into
// the store.
type Entry struct {
	Number    int       `toml:"number,omitempty"`    // in the book, from 1; given when it is written there
	Corrects  int       `toml:"corrects,omitempty"`  // number of an entry that no longer counts, since this one stands for it
	Unit      string    `toml:"unit,omitempty"`      // short name of the machine it was done to
	Procedure string    `toml:"procedure,omitempty"` // its short name; none where only a meter was read
	Revision  string    `toml:"revision,omitempty"`
	Machine   string    `toml:"machine,omitempty"`
	Variant   string    `toml:"variant,omitempty"`
	Date      Day       `toml:"date"`
	Who       string    `toml:"who,omitempty"`
	Meter     string    `toml:"meter,omitempty"`     // what the meter stood at: "1234 h"
	NewMeter  string    `toml:"new-meter,omitempty"` // what another meter stood at that took its place on that day
	Done      []int     `toml:"done,omitempty"`      // steps that were ticked
	Open      []int     `toml:"open,omitempty"`      // steps neither ticked nor left out
	Remarks   string    `toml:"remarks,omitempty"`
	Readings  []Reading `toml:"reading,omitempty"`
	LeftOut   []LeftOut `toml:"left-out,omitempty"`
	Used      []Moved   `toml:"used,omitempty"`     // out of the store
	Received  []Moved   `toml:"received,omitempty"` // into it
}

// Voids reports whether the entry only takes another one out, and says nothing instead.
func (e Entry) Voids() bool {
	return e.Corrects > 0 && e.Unit == "" && e.Machine == "" && e.Procedure == "" && e.Meter == "" && e.NewMeter == "" &&
		len(e.Done)+len(e.Open)+len(e.Readings)+len(e.LeftOut)+len(e.Used)+len(e.Received) == 0
}

// SameWork reports whether two entries tell of the same work: the same steps of the same
// procedure, and the same readings.
func (e Entry) SameWork(other Entry) bool {
	return e.Procedure == other.Procedure && slices.Equal(e.Done, other.Done) && slices.Equal(e.Open, other.Open) && slices.Equal(e.LeftOut, other.LeftOut) &&
		slices.EqualFunc(e.Readings, other.Readings, func(a, b Reading) bool { return a.Step == b.Step && a.What == b.What && a.Value == b.Value })
}

// Same reports whether two entries of one machine tell of the same work on the same day, or
// else of the same reading of its meter. Who wrote them, and words beside work that was done,
// do not matter.
func (e Entry) Same(other Entry) bool {
	if e.Date != other.Date || e.Meter != other.Meter || e.NewMeter != other.NewMeter || !e.SameWork(other) {
		return false
	}
	return e.Procedure != "" || e.Remarks == other.Remarks && slices.Equal(e.Used, other.Used) && slices.Equal(e.Received, other.Received)
}

// Moved is an amount or a number of something in the store.
type Moved struct {
	What   string `toml:"what"`   // short name of a fluid, a supply or a spare
	Amount string `toml:"amount"` // "1.1 L", "2"
}

// Reading is a value that was read, at a step or for the work as a whole.
type Reading struct {
	Step    int    `toml:"step,omitempty"` // 0 for the work as a whole
	What    string `toml:"what"`
	Value   string `toml:"value"` // with its unit, as amounts are written: "34 mm"
	Limit   string `toml:"limit,omitempty"`
	Outside bool   `toml:"outside,omitempty"` // of its limit
}

// LeftOut is a step that was left out on purpose.
type LeftOut struct {
	Step int    `toml:"step"`
	Why  string `toml:"why,omitempty"`
}

// Day is a day as ISO 8601 writes it, a TOML local date.
type Day string

// UnmarshalTOML takes a date; a time behind it is let go.
func (d *Day) UnmarshalTOML(value any) error {
	day, ok := value.(interface{ Format(string) string })
	if !ok {
		return fmt.Errorf("date is no day such as 2026-11-27")
	}
	*d = Day(day.Format("2006-01-02"))
	return nil
}

// Read reads the entries of a service book in their order. Text that is no TOML, and keys
// that no entry has, are errors.
func Read(text []byte) ([]Entry, error) {
	var book struct {
		Entries []Entry `toml:"entry"`
	}
	meta, err := toml.Decode(string(text), &book)
	if err != nil {
		return nil, fmt.Errorf("service book: %w", err)
	}
	if unknown := meta.Undecoded(); len(unknown) > 0 {
		return nil, fmt.Errorf("service book: no entry has a key %q", unknown[0].String())
	}
	return book.Entries, nil
}

// Field is one key of an entry, for what writes one.
type Field struct {
	Key    string  `json:"key"`
	Kind   string  `json:"kind"`             // text, day, whole, wholes, flag, tables
	May    bool    `json:"may,omitempty"`    // it is left out where there is nothing to say
	Fields []Field `json:"fields,omitempty"` // of tables
}

// Layout lists the keys of an entry in the order they are written.
func Layout() []Field { return layout(reflect.TypeFor[Entry]()) }

func layout(table reflect.Type) []Field {
	var out []Field
	for i := range table.NumField() {
		key, rest, _ := strings.Cut(table.Field(i).Tag.Get("toml"), ",")
		field := Field{Key: key, May: rest == "omitempty"}
		switch of := table.Field(i).Type; {
		case of == reflect.TypeFor[Day]():
			field.Kind = "day"
		case of.Kind() == reflect.String:
			field.Kind = "text"
		case of.Kind() == reflect.Int:
			field.Kind = "whole"
		case of.Kind() == reflect.Bool:
			field.Kind = "flag"
		case of == reflect.TypeFor[[]int]():
			field.Kind = "wholes"
		default:
			field.Kind, field.Fields = "tables", layout(of.Elem())
		}
		out = append(out, field)
	}
	return out
}
