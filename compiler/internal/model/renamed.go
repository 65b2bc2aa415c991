package model

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hbollon/go-edlib"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// lost is a name that nothing has: the finding that tells of it, by its place among all of the set,
// and the file and the ref that name it.
type lost struct {
	at    int
	file  *File
	ref   Ref
	kinds []string
}

// renamed puts the findings on one name that is described nowhere together, where it stands more than
// once and one described name alone stands nowhere: that is likely what the other was renamed to. Each
// file that names it is told once.
func (s *Set) renamed() {
	all := s.lost()
	if len(all) < 2 {
		return
	}
	count := map[string]int{}
	for _, one := range all {
		count[one.ref.Name.Name()]++
	}
	named := s.named()
	told := map[*File]map[string]int{} // where the first of a file stands among the findings
	var folded []int
	for _, one := range all {
		name := one.ref.Name.Name()
		if count[name] < 2 {
			continue
		}
		if first, again := told[one.file][name]; again {
			s.Findings[first].Related = append(s.Findings[first].Related, finding.Related{Place: one.ref.Name.At, Text: "named here too"})
			folded = append(folded, one.at)
			continue
		}
		now, only := idle(name, all, named)
		if !only {
			continue
		}
		if told[one.file] == nil {
			told[one.file] = map[string]int{}
		}
		told[one.file][name] = one.at
		s.tellRenamed(one, now, all)
	}
	for _, at := range slices.Backward(folded) {
		s.Findings = slices.Delete(s.Findings, at, at+1)
	}
}

// lost are the names of described things that nothing has, in the order of the findings.
func (s *Set) lost() []lost {
	var out []lost
	for i, found := range s.Findings {
		if found.Rule != unknownName.ID {
			continue
		}
		file := s.byPath[found.Place.File.Path]
		at := slices.IndexFunc(file.refs, func(ref Ref) bool { return ref.Name.At == found.Place })
		if at < 0 || several(file.refs[at].Name) != "" {
			continue
		}
		kinds := slices.DeleteFunc(strings.Fields(file.refs[at].Of), func(kind string) bool { return !slices.Contains(homeKinds, kind) || kind == "caution" })
		if len(kinds) > 0 {
			out = append(out, lost{i, file, file.refs[at], kinds})
		}
	}
	return out
}

// named are the names that stand somewhere, whatever for.
func (s *Set) named() map[string]bool {
	out := map[string]bool{}
	for _, file := range s.Files {
		for _, ref := range file.refs {
			out[ref.Name.Name()] = true
		}
	}
	return out
}

// idle is the one thing that nobody names and that would do wherever a name stands which nothing has:
// it is of a kind that all these places take, and all their files see it. Of several it is the one that
// has a word of the name. It is false where there is none or more, where another name that nothing has
// may be meant for it as well, or where a name that somebody uses is but a slip of the pen away.
func idle(name string, all []lost, named map[string]bool) (key, bool) {
	var places []lost
	for _, one := range all {
		if one.ref.Name.Name() == name {
			places = append(places, one)
		}
	}
	first := places[0]
	var out []key
	for _, kind := range first.kinds {
		for _, known := range first.file.names(kind) {
			lacks := func(one lost) bool { return !slices.Contains(one.kinds, kind) || one.file.find(kind, known) == nil }
			if !named[known] && !slices.ContainsFunc(places, lacks) && !slices.ContainsFunc(out, func(of key) bool { return of.name == known }) {
				out = append(out, key{kind, known})
			}
		}
	}
	if len(out) > 1 {
		words := strings.Split(name, "-")
		out = slices.DeleteFunc(out, func(of key) bool {
			return !slices.ContainsFunc(strings.Split(of.name, "-"), func(word string) bool { return slices.Contains(words, word) })
		})
	}
	if len(out) != 1 {
		return key{}, false
	}
	of := out[0]
	other := func(one lost) bool {
		return one.ref.Name.Name() != name && slices.Contains(one.kinds, of.kind) && one.file.find(of.kind, of.name) != nil
	}
	return of, !slices.ContainsFunc(all, other) && !first.slip(of.name)
}

// mostSlips is how many letters a slip of the pen is wrong by.
const mostSlips = 2

// slip reports whether another name than one is a slip of the pen away from what was written, and
// nearer.
func (l lost) slip(than string) bool {
	written := strings.ToLower(l.ref.Name.Name())
	least := min(mostSlips, edlib.OSADamerauLevenshteinDistance(written, than)-1)
	return slices.ContainsFunc(l.kinds, func(kind string) bool {
		return slices.ContainsFunc(l.file.names(kind), func(known string) bool {
			return known != than && edlib.OSADamerauLevenshteinDistance(written, known) <= least
		})
	})
}

// tellRenamed says at the first place of a file that a name was likely changed where it is described.
func (s *Set) tellRenamed(first lost, of key, all []lost) {
	name := first.ref.Name.Name()
	found := &s.Findings[first.at]
	found.Summary = fmt.Sprintf("no %s is named %q, and nothing names the %s %q: it was likely renamed", of.kind, first.ref.Name.Text, of.kind, of.name)
	found.Help = fmt.Sprintf("Write %q wherever %q stands, or give its table the old name.", of.name, first.ref.Name.Text)
	fix := finding.Fix{Title: fmt.Sprintf("Write %q wherever %q stands", of.name, first.ref.Name.Text)}
	for _, one := range all {
		if one.ref.Name.Name() == name {
			fix.Edits = append(fix.Edits, writeName(one.ref.Name, of.name)[0].Edits...)
		}
	}
	found.Fixes, found.Related = []finding.Fix{fix}, nil
	if file, _ := first.file.Describing(of.kind, of.name); file != nil {
		if at := file.headerOf(of); at.Known() {
			found.Related = []finding.Related{{Place: at, Text: "described here"}}
		}
	}
}

// headerOf is where a file describes a thing.
func (f *File) headerOf(of key) source.Place {
	for _, thing := range f.things {
		if thing.kind == of.kind && thing.name == of.name {
			return thing.at
		}
	}
	return source.Place{}
}
