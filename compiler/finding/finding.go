// Package finding is the one shape in which the compiler says that something
// in a procedure is wrong or missing. It must not know any rule.
package finding

import (
	"cmp"
	"slices"
	"strings"

	"benchleaf/compiler/source"
)

// Severity says how much a finding weighs.
type Severity int

// Note informs; Warning rests on common practice; Error rests on a published fact or on the language itself.
const (
	Note Severity = iota
	Warning
	Error
)

func (s Severity) String() string { return [...]string{"note", "warning", "error"}[s] }

// Finding is one fault, at its place, with the way out.
type Finding struct {
	Rule     string // family/what-is-wrong
	Severity Severity
	Place    source.Place
	Summary  string    // one line, lower case, no full stop; says what is the case and quotes the author
	Why      string    // why it matters at the machine; may be empty
	Help     string    // what to write; may be empty only where a fix is given
	Related  []Related // other places that belong to the fault
	Fixes    []Fix     // alternatives; one at most is applied
	Variant  string    // the machine variant it holds for, empty when it holds for all
	Firm     bool      // the author cannot stand by it: a missing danger or warning
}

// Holds reports whether no card is printed while the finding stands.
func (f Finding) Holds() bool { return f.Severity == Error }

// Related is another place that belongs to a finding, with what stands there.
type Related struct {
	Place source.Place
	Text  string
}

// Fix is a change to the text that is certain to be right where Certain is set,
// and otherwise a suggestion. Its title is a verb phrase.
type Fix struct {
	Title   string
	Certain bool
	Edits   []Edit
}

// Edit replaces the bytes of a place by Text; an empty span inserts.
type Edit struct {
	Place source.Place
	Text  string
}

// Sort orders findings by file, place and rule, so that output never depends
// on the order in which rules ran, and drops exact repeats.
func Sort(list []Finding) []Finding {
	slices.SortStableFunc(list, compare)
	return slices.CompactFunc(list, func(a, b Finding) bool {
		return compare(a, b) == 0
	})
}

func compare(a, b Finding) int {
	return cmp.Or(
		cmp.Compare(path(a), path(b)),
		cmp.Compare(a.Place.Span.Start, b.Place.Span.Start),
		cmp.Compare(a.Place.Span.End, b.Place.Span.End),
		cmp.Compare(a.Rule, b.Rule),
		cmp.Compare(a.Summary, b.Summary),
		cmp.Compare(a.Variant, b.Variant),
	)
}

func path(f Finding) string {
	if f.Place.File == nil {
		return ""
	}
	return f.Place.File.Path
}

// Rule documents one kind of finding: why it matters at the machine, where that
// is published, and an example of each. The examples are run as tests.
type Rule struct {
	ID       string // family/what-is-wrong
	Title    string
	Why      string
	Source   string // publication, or "common practice, no source"
	Severity Severity
	Setting  string // the rest of the file the examples stand in; not shown
	Bad      string // TOML that raises the finding
	Good     string // the same, mended
}

// Short is a text whose lines are cut where nobody would read on.
func Short(text string) string {
	const most = 200
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		if runes := []rune(line); len(runes) > most {
			lines[i] = string(runes[:most]) + "…"
		}
	}
	return strings.Join(lines, "\n")
}
