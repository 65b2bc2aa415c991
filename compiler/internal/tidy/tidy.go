// Package tidy writes a file in its one layout: spacing, quotes, lists and the spelling of
// amounts. Order, comments and data stay. It must not know the disk, or whether what the file
// says is right.
package tidy

import (
	"bytes"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
)

// Width is how many characters a line has before a list is broken over several.
const Width = 100

// File lays a file out. One in which a fault of the syntax stands comes back as it is, with its
// faults; what is behind goes by what it says, and may rest on there being none.
func File(file *source.File) ([]byte, []finding.Finding) {
	document, faults := tree.Parse(file)
	if len(faults) > 0 {
		return file.Text, faults
	}
	text := plain(file.Text)
	if len(text) < len(file.Text) { // so that the places are those of the plain text
		document, _ = tree.Parse(source.New(file.Path, text))
	}
	amounts := map[int]string{}
	for _, amount := range model.Amounts(document) {
		if settled, ok := amount.Settled(); ok && settled != amount.Text.Text && !strings.ContainsAny(settled, `"\`) {
			amounts[amount.Value.Span.Start] = settled
		}
	}
	r := &reader{src: text, amounts: amounts}
	w := &writer{}
	w.lines(r.lines())
	return w.out.Bytes(), nil
}

// plain is a text without a byte order mark, each of its lines ended by a line feed alone. The
// tree reads both to the same data.
func plain(text []byte) []byte {
	text = bytes.TrimPrefix(text, []byte("\uFEFF"))
	if bytes.IndexByte(text, '\r') >= 0 { // where there is no fault it stands only before a line feed
		text = bytes.ReplaceAll(text, []byte("\r\n"), []byte("\n"))
	}
	return text
}

// kind is what a line holds.
type kind int

const (
	remark kind = iota // a comment on a line of its own
	header             // [part.plug] or [[step]]
	pair               // key = value
)

// line is one statement with the comment behind it, or a comment alone.
type line struct {
	kind    kind
	blank   bool   // a blank line stands before it
	name    string // the header, or the key
	value   *node
	comment string // empty where there is none
	apart   bool   // two blanks or more stand before the comment behind it
}

// node is a value.
type node struct {
	open  byte   // [ or {, 0 for what has no inside
	text  string // of a value with no inside
	head  string // comment behind the opening bracket, on its line
	items []item
	last  []note // comments behind the last item, on lines of their own
	width int    // in characters, on one line; -1 where it does not go on one
	rows  bool   // a number, or a list of such: figures, which are set in rows
}

// item is a value of a list, or a key with its value in braces.
type item struct {
	notes   []note // comments before it, on lines of their own
	blank   bool   // a blank line stands before it
	row     bool   // it begins a line
	key     string // of a table in braces
	value   *node
	comment string // behind it, on its line
}

// note is a comment on a line of its own in a list.
type note struct {
	blank bool
	text  string
}

// tidyComment is a comment with a space behind its mark where words follow at once, and none at its end.
// Marks behind the # are left: rulers, and lines that are meant for an editor.
func tidyComment(text string) string {
	text = strings.TrimRight(text, " \t")
	if len(text) > 1 && !strings.ContainsRune(" \t#!:-=*_~+/|.", rune(text[1])) {
		return "# " + text[1:]
	}
	return text
}

// bare reports whether a letter may stand in a key without quotes.
func bare(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '-'
}

// tidyKey is one part of a key as written: bare where it can be.
func tidyKey(written string) string {
	if written[0] != '"' && written[0] != '\'' {
		return written
	}
	if name := tree.Unquote(written); name != "" && !strings.ContainsFunc(name, func(c rune) bool { return c > '~' || !bare(byte(c)) }) {
		return name
	}
	return tidyQuotes(written)
}

// tidyQuotes puts a text on one line into plain quotes; single ones stay where they hold what
// would need a backslash.
func tidyQuotes(written string) string {
	if written[0] == '\'' && !strings.ContainsAny(written, `"\`) {
		return `"` + written[1:len(written)-1] + `"`
	}
	return written
}
