// Package source holds the text of the files a shop writes and turns byte
// offsets into places a person or an editor understands. It must not know
// what the text means.
//
// Three notations of a place are in use, each converted here and nowhere else:
//
//	offset     bytes from the start of the file, from 0; used inside the compiler
//	Position   line and column from 1, the column in characters; for people, SARIF and JSON
//	UTF16      line and character from 0, the character in UTF-16 units; for editors
package source

import (
	"bytes"
	"sort"
	"unicode/utf8"
)

// Span is a half-open range of byte offsets in one file.
type Span struct{ Start, End int }

// Len is the number of bytes the span covers.
func (s Span) Len() int { return s.End - s.Start }

// Position is a place as people count: line and column from 1, the column in characters.
type Position struct{ Line, Column int }

// File is one text with its path as the shop knows it: relative to the shop
// folder, with forward slashes on every system.
type File struct {
	Path  string
	Text  []byte
	lines []int
}

// New makes a file from its path and text.
func New(path string, text []byte) *File {
	lines := make([]int, 1, bytes.Count(text, []byte("\n"))+1)
	for i, b := range text {
		if b == '\n' {
			lines = append(lines, i+1)
		}
	}
	return &File{Path: path, Text: text, lines: lines}
}

// Lines is the number of lines; a text that ends in a line break has an empty last line.
func (f *File) Lines() int { return len(f.lines) }

func (f *File) lineOf(offset int) int {
	return sort.Search(len(f.lines), func(i int) bool { return f.lines[i] > offset }) - 1
}

func (f *File) clamp(offset int) int { return max(0, min(offset, len(f.Text))) }

// Position turns an offset into line and column; an offset past either end is clamped.
func (f *File) Position(offset int) Position {
	offset = f.clamp(offset)
	line := f.lineOf(offset)
	return Position{line + 1, utf8.RuneCount(f.Text[f.lines[line]:offset]) + 1}
}

// UTF16 turns an offset into an editor's line and character, both from 0.
func (f *File) UTF16(offset int) (line, character int) {
	offset = f.clamp(offset)
	line = f.lineOf(offset)
	for _, r := range string(f.Text[f.lines[line]:offset]) {
		character++
		if r > 0xFFFF {
			character++
		}
	}
	return line, character
}

// Offset is the byte offset of a place as editors count it: line and UTF-16 units from 0. What
// lies outside is clamped to the line, or to the text.
func (f *File) Offset(line, character int) int {
	if line < 0 {
		return 0
	}
	if line >= len(f.lines) {
		return len(f.Text)
	}
	offset, end := f.lines[line], len(f.Text)
	if line+1 < len(f.lines) {
		end = f.lines[line+1] - 1
	}
	for character > 0 && offset < end {
		r, size := utf8.DecodeRune(f.Text[offset:end])
		if character--; r > 0xFFFF {
			if character--; character < 0 {
				break // within the two halves of a character
			}
		}
		offset += size
	}
	return offset
}

// Extent is where a line counted from 1 begins, and how many bytes it is long without its line feed.
func (f *File) Extent(n int) (start, long int) {
	end := len(f.Text)
	if n < len(f.lines) {
		end = f.lines[n] - 1
	}
	return f.lines[n-1], end - f.lines[n-1]
}

// Line is the text of a line counted from 1, without its line break; empty past the end.
func (f *File) Line(n int) string {
	if n < 1 || n > len(f.lines) {
		return ""
	}
	start, end := f.lines[n-1], len(f.Text)
	if n < len(f.lines) {
		end = f.lines[n] - 1
	}
	if end > start && f.Text[end-1] == '\r' {
		end--
	}
	return string(f.Text[start:end])
}

// Place is a span in a named file. The zero Place is nowhere.
type Place struct {
	File *File
	Span Span
}

// Known reports whether the place is somewhere.
func (p Place) Known() bool { return p.File != nil }

// Location is a place as other programs are told it: line and column from 1, the column in
// characters; offset and length are bytes.
type Location struct {
	File   string `json:"file"`
	Line   int    `json:"line"`
	Column int    `json:"column"`
	Offset int    `json:"offset"`
	Length int    `json:"length"`
}

// Location is the place for other programs; empty where it is not known.
func (p Place) Location() Location {
	if !p.Known() {
		return Location{}
	}
	start := p.Start()
	return Location{p.File.Path, start.Line, start.Column, p.Span.Start, p.Span.Len()}
}

// Start is where the place begins, as people count.
func (p Place) Start() Position {
	if p.File == nil {
		return Position{}
	}
	return p.File.Position(p.Span.Start)
}

// Text is the author's text at the place.
func (p Place) Text() string {
	if p.File == nil {
		return ""
	}
	return string(p.File.Text[p.File.clamp(p.Span.Start):p.File.clamp(p.Span.End)])
}
