package compiler_test

import (
	"cmp"
	"fmt"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// faultKind is one kind of fault people make, and where in a file it can be made.
type faultKind struct {
	name, family, does string
	syntax             bool // the damaged file may be no TOML
	once               bool // without the second readings
	apply              func(f *folder, s *sheet) []damage
}

// damage is a file with one fault in it.
type damage struct {
	path, text string
	words      string // what was changed
	line       int    // where, in the undamaged file, from 1
	right      []lines
	families   []string // a finding of these families of rules is right in any step
}

// lines are lines of a file, from 1, both ends counted.
type lines struct {
	path     string
	from, to int
}

// edit puts other lines in the place of those from up to before to.
type edit struct {
	from, to int
	lines    []string
}

// with makes a damage. Right is whatever table the change touches; where lines
// go, the tables on both sides.
func (s *sheet) with(words string, edits ...edit) damage {
	slices.SortFunc(edits, func(a, b edit) int { return cmp.Compare(a.from, b.from) })
	var made []string
	var touched []lines
	at := 0
	for _, one := range edits {
		made = append(append(made, s.lines[at:one.from]...), one.lines...)
		at = one.to
		touched = append(touched, lines{s.path, len(made) - len(one.lines) + 1, max(len(made), len(made)-len(one.lines)+1)})
		if len(one.lines) == 0 {
			touched[len(touched)-1].from--
		}
	}
	made = append(made, s.lines[at:]...)
	out := damage{path: s.path, text: strings.Join(made, "\n"), words: words, line: edits[0].from + 1, right: touched}
	for _, t := range readSheet(s.path, out.text).tables {
		for _, one := range touched {
			if t.from < one.to && t.to >= one.from {
				out.right = append(out.right, lines{s.path, t.from + 1, t.to})
			}
		}
	}
	return out
}

// naming takes as right too whatever step or table of the damaged shop is, or names, one of the things.
func (d damage) naming(f *folder, things ...string) damage {
	return d.where(f, func(t table) bool { return t.names(things...) })
}

// where takes as right too the tables that pass.
func (d damage) where(f *folder, passes func(table) bool) damage {
	files := append(f.procedures(d.path), f.machine(f.sheet(d.path)).path)
	for _, file := range slices.Compact(append(files, d.path)) {
		s := f.sheet(file)
		if file == d.path {
			s = readSheet(file, d.text)
		}
		for _, t := range s.tables {
			if passes(t) {
				d.right = append(d.right, lines{file, t.from + 1, t.to})
			}
		}
	}
	return d
}

// list takes as right too a list of the procedures.
func (d damage) list(f *folder, keys ...string) damage {
	for _, file := range f.procedures(d.path) {
		s := f.sheet(file)
		if file == d.path {
			s = readSheet(file, d.text)
		}
		procedure, _ := s.table("procedure", "")
		for _, key := range keys {
			if one, ok := procedure.entry(key); ok {
				d.right = append(d.right, lines{file, one.from + 1, one.to})
			}
		}
	}
	return d
}

// of takes as right too any finding of a family of rules.
func (d damage) of(families ...string) damage {
	d.families = append(d.families, families...)
	return d
}

// meets reports whether a finding points at the fault.
func (d damage) meets(found finding.Finding) bool {
	if slices.Contains(d.families, path.Dir(found.Rule)) {
		return true
	}
	places := []source.Place{found.Place}
	for _, other := range found.Related {
		places = append(places, other.Place)
	}
	return slices.ContainsFunc(places, func(at source.Place) bool {
		return at.Known() && slices.ContainsFunc(d.right, func(want lines) bool {
			line := at.Start().Line
			return at.File.Path == want.path && line >= want.from && line <= want.to
		})
	})
}

// put writes another value to a key.
func (s *sheet) put(t table, one entry, value string) damage {
	text := strings.Replace(strings.Join(s.lines[one.from:one.to], "\n"), one.value, value, 1)
	words := fmt.Sprintf("%s: %s = %s is now %s", t.call(), one.key, flat(one.value), flat(value))
	return s.with(words, edit{one.from, one.to, strings.Split(text, "\n")})
}

// cut takes a key away.
func (s *sheet) cut(t table, one entry) damage {
	return s.with(fmt.Sprintf("%s: %s = %s is gone", t.call(), one.key, flat(one.value)), edit{one.from, one.to, nil})
}

// swap changes the places of two tables.
func (s *sheet) swap(a, b table) damage {
	return s.with(fmt.Sprintf("%q and %q have changed places", a.call(), b.call()),
		edit{a.from, a.to, renamed(s.lines[b.from:b.to], b.kind, a.kind)}, edit{b.from, b.to, renamed(s.lines[a.from:a.to], a.kind, b.kind)})
}

// move takes a table out and puts it behind another.
func (s *sheet) move(t, behind table) damage {
	return s.with(fmt.Sprintf("%q now stands after %q", t.call(), behind.call()),
		edit{t.from, t.to, nil}, edit{behind.to, behind.to, renamed(s.lines[t.from:t.to], t.kind, behind.kind)})
}

// renamed gives a step the header of where it goes, so that parts of the job stay in order.
func renamed(text []string, from, to string) []string {
	out := slices.Clone(text)
	for i, line := range out {
		if strings.HasPrefix(line, "[["+from) {
			out[i] = "[[" + to + strings.TrimPrefix(line, "[["+from)
		}
	}
	if strings.TrimSpace(out[len(out)-1]) != "" {
		out = append(out, "")
	}
	return out
}

func flat(text string) string { return strings.Join(strings.Fields(text), " ") }

// without takes one text out of a list as it is written.
func without(list, item string) string {
	quoted := regexp.QuoteMeta(`"` + item + `"`)
	for _, form := range []string{quoted + `,\s*`, `,\s*` + quoted, quoted} {
		if at := regexp.MustCompile(form).FindStringIndex(list); at != nil {
			return list[:at[0]] + list[at[1]:]
		}
	}
	return list
}

// including puts one more text at the end of a list.
func including(list, item string) string {
	list = strings.TrimRight(strings.TrimSuffix(list, "]"), ", \n")
	if list == "[" {
		return `["` + item + `"]`
	}
	return list + `, "` + item + `"]`
}

var figureForm = regexp.MustCompile(`\d+(?:\.\d+)?`)

// scaled multiplies every figure of an amount.
func scaled(amount string, by float64) string {
	return figureForm.ReplaceAllStringFunc(amount, func(figure string) string {
		value, _ := strconv.ParseFloat(figure, 64)
		return strconv.FormatFloat(value*by, 'g', 8, 64)
	})
}

// misspelt leaves a letter out, or doubles the last of a short word.
func misspelt(word string) string {
	if len(word) < 4 {
		return word + word[len(word)-1:]
	}
	return word[:2] + word[3:]
}
