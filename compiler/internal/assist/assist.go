// Package assist tells somebody who writes what is known of the place under the cursor:
// what can stand there, what a name is and where else it stands, how a file is laid out, and
// what a step leaves behind. It must not know editors, nor whether the work is right.
package assist

import (
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/source"
)

// Shop is the files of a shop as far as they can be read, and what is written of each name.
type Shop struct {
	set      *model.Set
	rules    []finding.Rule
	pictures []string // paths of the pictures that were given
	mentions map[*model.File][]mention
	named    map[target][]mention // in order of file and place
}

// Completion is one thing that can stand at a place.
type Completion struct {
	Label   string
	Detail  string       // short, for the same line
	Doc     string       // CommonMark
	Insert  string       // plain text; one "$0" in it is where the cursor goes
	Kind    string       // key, verb, table, name, value or unit
	Replace source.Place // what it takes the place of; may be empty
}

// Hover is what is known of a place.
type Hover struct {
	Place source.Place
	Text  string // CommonMark
}

// Symbol is a thing of a file, for its outline.
type Symbol struct {
	Name     string
	Detail   string
	Kind     string       // shop, machine, procedure, section, step, group, or the name of the table of a thing
	Place    source.Place // its name
	Whole    source.Place // all of it
	Children []Symbol
}

// Hint is a short text that an editor shows behind a place, and that is not in the file.
type Hint struct {
	At   int // byte offset
	Text string
	Tip  string
}

// New makes a shop of the files of a set.
func New(set *model.Set, rules []finding.Rule, pictures []string) *Shop {
	s := &Shop{set: set.Sketch(), rules: rules, pictures: pictures, mentions: map[*model.File][]mention{}, named: map[target][]mention{}}
	for _, file := range s.set.Files {
		s.mentions[file] = s.read(file)
	}
	for _, file := range s.set.Files {
		for _, m := range s.mentions[file] {
			if t := s.resolve(m); t.known() {
				s.named[t] = append(s.named[t], m)
			}
		}
	}
	return s
}

// within reports whether an offset is in a span or at one of its ends.
func within(span source.Span, offset int) bool { return span.Start <= offset && offset <= span.End }

func place(file *model.File, span source.Span) source.Place {
	return source.Place{File: file.Source, Span: span}
}

// sortPlaces orders places by file and offset, and drops repeats.
func sortPlaces(list []source.Place) []source.Place {
	slices.SortStableFunc(list, comparePlaces)
	return slices.Compact(list)
}
