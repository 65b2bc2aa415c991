package compiler

import (
	"bytes"
	"io"

	"benchleaf/compiler/internal/entry"
)

// Bookfile is the name of the service book of a shop, in its folder.
const Bookfile = "service-book.toml"

// BookHead is what a new service book begins with.
const BookHead = entry.Head

// Entry is an entry of a service book.
type Entry = entry.Entry

// Reading is a value of an entry that was read.
type Reading = entry.Reading

// Moved is an amount of something that came out of the store or into it.
type Moved = entry.Moved

// BookFaults are the faults of a service book, one for each entry that cannot be read.
type BookFaults = entry.Faults

// ScanBook hands over the entries of a service book, with the lines they begin on; what
// cannot be read is told at the end as BookFaults.
func ScanBook(text io.Reader, each func(e Entry, line int) error) error {
	return entry.Scan(text, each)
}

// ScanForm hands over the entries of a form that was filled in, or of what a phone gave.
// Unlike the book it may begin with the version of the language.
func ScanForm(text []byte, each func(e Entry, line int) error) error {
	return entry.Scan(bytes.NewReader(entry.Unversioned(text)), each)
}

// IsForm reports whether a text holds entries of a service book and nothing else. It is then
// no procedure, machine or library, whatever the name of its file.
func IsForm(text []byte) bool { return entry.Alone(text) }

// BookText is the text of a service book, as long as it was when it was opened: what is
// added to it meanwhile is left for the next time. It is read piece by piece, more than
// once, and never kept; nil is a book with nothing in it.
type BookText interface {
	io.ReaderAt
	Size() int64
}

// TornBook gives how many bytes of a service book are whole; the rest was torn in writing.
func TornBook(text BookText) (whole int64, err error) { return entry.TornAt(text, text.Size()) }

// LastEntry is the number of the last entry of a text in which every entry stands as the
// program writes it, each with a higher number than the one before; false for any other.
func LastEntry(text []byte) (number int, ok bool) { return entry.Last(text) }

// Steps names steps by their numbers, with a word behind them for one or for several.
func Steps(numbers []int, one, several string) string { return entry.Steps(numbers, one, several) }

// Voids reports whether an entry only takes another one out, and says nothing instead.
func Voids(e Entry) bool { return e.Voids() }

// On is an entry of a day such as 2026-05-01.
func On(e Entry, day string) Entry {
	e.Date = entry.Day(day)
	return e
}
