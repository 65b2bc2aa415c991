package compiler_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// mangled changes the first line of each value; right is its table and the next,
// for a reader can lose its way there.
func mangled(form, to string) generator {
	pattern := regexp.MustCompile(form)
	return func(_ *folder, s *sheet) []damage {
		var out []damage
		for i, line := range s.lines {
			if strings.Contains(line, "#") || !pattern.MatchString(line) {
				continue
			}
			made := pattern.ReplaceAllString(line, to)
			out = append(out, s.with(fmt.Sprintf("%q is now %q", line, made), edit{i, i + 1, []string{made}}))
		}
		return out
	}
}

func keyTwice(_ *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.tables {
		for _, one := range t.entries {
			if one.to == one.from+1 {
				out = append(out, s.with(fmt.Sprintf("%s: %s stands twice", t.call(), one.key), edit{one.from, one.from, s.lines[one.from:one.to]}))
			}
		}
	}
	return out
}

func tableTwice(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.tables {
		if t.name != "" {
			text := append(slices.Clone(s.lines[t.from:t.to]), "")
			out = append(out, same(f, s.with(s.lines[t.from]+" stands twice", edit{t.to, t.to, text}), t))
		}
	}
	return out
}

func twoVerbs(_ *folder, s *sheet) []damage {
	var out []damage
	steps := s.steps()
	for i := 1; i < len(steps); i++ {
		before, _ := steps[i-1].verb()
		verb, _ := steps[i].verb()
		if verb != "" && before != "" && verb != before && len(steps[i-1].inner) == 0 {
			out = append(out, s.with(fmt.Sprintf("the header between %q and %q is gone", steps[i-1].call(), steps[i].call()), edit{steps[i].from, steps[i].from + 1, nil}))
		}
	}
	return out
}

func noVerb(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.steps() {
		verb, objects := t.verb()
		one, ok := t.entry(verb)
		if _, said := t.entry("say"); ok && !said {
			d := s.cut(t, one)
			out = append(out, d.naming(f, f.kin(s, objects...)...))
		}
	}
	return out
}

// droppedUse takes an entry of use away; right is whatever names what is gone.
func droppedUse(_ *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.tables {
		one, ok := t.entry("use")
		if !ok || t.kind != "" {
			continue
		}
		for _, path := range texts(one.value) {
			d := s.put(t, one, without(one.value, path))
			d.words = fmt.Sprintf("%q is gone from use", path)
			out = append(out, d.of("reference", "names"))
		}
	}
	return out
}
