package model

import (
	"strings"
	"unicode/utf8"

	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
)

// Text is a string of the author's with its place. The zero Text was left out.
type Text struct {
	Text  string
	Value *tree.Value
	At    source.Place
}

// Set reports whether the author wrote it.
func (t Text) Set() bool { return t.Value != nil }

// Name is the text as a short name: spaces count as hyphens.
func (t Text) Name() string {
	for i := range len(t.Text) {
		if c := t.Text[i]; c <= ' ' || c >= utf8.RuneSelf {
			return strings.ReplaceAll(strings.TrimSpace(t.Text), " ", "-")
		}
	}
	return t.Text
}

// Inside is the place of some bytes of the text.
func (t Text) Inside(start, end int) source.Place {
	if t.Value == nil || t.Value.Kind != tree.StringKind {
		return t.At
	}
	return source.Place{File: t.At.File, Span: t.Value.Inside(start, end)}
}

// List is a list of texts; Given tells an empty list from none.
type List struct {
	Items []Text
	Given bool
	At    source.Place
}

// Has reports whether the list holds a name.
func (l List) Has(name string) bool {
	for _, item := range l.Items {
		if item.Name() == name {
			return true
		}
	}
	return false
}

// Names are the texts as short names.
func (l List) Names() []string {
	names := make([]string, len(l.Items))
	for i, item := range l.Items {
		names[i] = item.Name()
	}
	return names
}

// Amount is an amount of the author's. Where it could not be read, OK is false
// and Problems say why; an amount that is read with doubts has both.
type Amount struct {
	quantity.Amount
	OK       bool
	Problems []quantity.Problem
	Of       string // the dimensions the schema allows here
	Text
}

// Set reports whether the author wrote it.
func (a Amount) Set() bool { return a.Value != nil }

// Whole is a whole number from 1. The zero Whole was left out.
type Whole struct {
	N  int
	At source.Place
}

// Or is the number, or another where it was left out.
func (w Whole) Or(other int) int {
	if w.N == 0 {
		return other
	}
	return w.N
}

// Flag is a yes or no.
type Flag struct {
	On bool
	At source.Place
}

// Used is a name with how many or how much of it is used: one of Count and Amount.
type Used struct {
	Name   Text
	Count  int
	Amount Amount
}

// Override is what differs for one variant; it is decoded again over a copy.
type Override struct {
	Variant Text
	Table   *tree.Table
}

// Spot is a point on an outline or a picture.
type Spot struct{ X, Y float64 }

// Round is a circle on an outline.
type Round struct {
	Spot
	Radius float64
}

// Thing is what every table has: its name and its places.
type Thing struct {
	Name   string       // short name; empty for a table without one
	At     source.Place // name, or header where there is none
	Header source.Place // where a missing key is reported
	Table  *tree.Table
	File   *File
}

// Key is the place of a key of the table, or of its header where the key is not written.
func (t Thing) Key(key string) source.Place {
	if t.Table != nil {
		if entry := t.Table.Get(key); entry != nil {
			return source.Place{File: t.At.File, Span: entry.KeySpan}
		}
	}
	return t.Header
}

// Determined reports whether words already say which thing is meant, so that no
// article goes before them: "both plugs", "4 bolts".
func Determined(words string) bool {
	first, _, _ := strings.Cut(strings.ToLower(words), " ")
	switch first {
	case "the", "a", "an", "all", "both", "each", "every", "your", "any", "no", "one", "two", "three", "four", "its",
		"under", "behind", "inside", "around", "round", "between", "above", "below", "beside", "near", "along", "what", "whether":
		return true
	}
	return first != "" && first[0] >= '0' && first[0] <= '9'
}

// The puts the article before words that have none.
func The(words string) string {
	if Determined(words) {
		return words
	}
	return "the " + words
}

// Spoken turns a short name into words.
func Spoken(name string) string { return strings.ReplaceAll(name, "-", " ") }

func spokenOr(title Text, name string) string {
	if title.Text != "" {
		return title.Text
	}
	return Spoken(name)
}
