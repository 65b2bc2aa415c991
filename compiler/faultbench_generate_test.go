package compiler_test

import (
	"fmt"
	"slices"
	"strings"
)

// faultKinds lists every kind, family by family.
var faultKinds = slices.Concat(safetyFaults, orderFaults, missingFaults, mixupFaults, fastenerFaults, fluidFaults, listFaults, limitFaults, languageFaults)

type generator = func(f *folder, s *sheet) []damage

// dropStep takes each step out that does one of these.
func dropStep(verbs ...string) generator {
	return dropSteps(func(_ *folder, _ *sheet, t table) bool { return t.does(verbs...) })
}

// dropSteps takes each step out that passes. Right is what is beside it, and
// every step that names the same thing or what belongs with it.
func dropSteps(passes func(f *folder, s *sheet, t table) bool) generator {
	return func(f *folder, s *sheet) []damage {
		var out []damage
		for _, t := range s.steps() {
			if !passes(f, s, t) {
				continue
			}
			_, objects := t.verb()
			d := s.with(fmt.Sprintf("%q is gone", t.call()), edit{t.from, t.to, nil})
			if procedure, ok := s.table("procedure", ""); ok { // a missing step is told at the header of what it is missing from
				d.right = append(d.right, lines{s.path, procedure.from + 1, procedure.from + 1})
			}
			out = append(out, d.naming(f, f.kin(s, objects...)...))
		}
		return out
	}
}

// brings reports whether a later step takes out, or puts in, what a step does, with
// what it holds: to renew a belt takes the old one out, and to put a lid on puts its
// screws on. To leave the step out is then no fault.
func brings(verbs ...string) func(f *folder, s *sheet, t table) bool {
	return func(f *folder, s *sheet, t table) bool {
		_, objects := t.verb()
		steps := s.steps()
		i := slices.IndexFunc(steps, func(other table) bool { return other.from == t.from })
		near := steps[i+1:]
		if slices.Contains(verbs, "before") {
			near = steps[max(0, i-1):i]
		}
		return slices.ContainsFunc(near, func(other table) bool {
			_, things := other.verb()
			return other.does(verbs...) && slices.ContainsFunc(things, func(name string) bool {
				thing, _ := f.machine(s).table("part", name)
				return slices.Contains(objects, name) || slices.ContainsFunc(objects, func(object string) bool {
					return slices.Contains(thing.texts("held-by"), object) || kindred(object, name)
				})
			})
		})
	}
}

// kindred reports whether a spare is a new one of a part: of its kind by the last word.
func kindred(part, spare string) bool {
	last := func(name string) string { return strings.TrimSuffix(name[strings.LastIndex(name, "-")+1:], "s") }
	return last(part) == last(spare)
}

// dropUnless takes each step out that does the verb, but where another brings it along.
func dropUnless(verb string, brought ...func(*folder, *sheet, table) bool) generator {
	return dropSteps(func(f *folder, s *sheet, t table) bool {
		return t.does(verb) && !slices.ContainsFunc(brought, func(brings func(*folder, *sheet, table) bool) bool { return brings(f, s, t) })
	})
}

// swapSteps changes the places of each step with the nearest later one that makes
// a pair with it; what comes loose or off makes none once it is back.
func swapSteps(pair func(f *folder, s *sheet, a, b table) bool) generator {
	return func(f *folder, s *sheet) []damage {
		var out []damage
		steps := s.steps()
		for i, a := range steps {
			_, first := a.verb()
			for _, b := range steps[i+1:] {
				if pair(f, s, a, b) {
					_, second := b.verb()
					out = append(out, s.swap(a, b).naming(f, f.kin(s, append(slices.Clone(first), second...)...)...))
					break
				}
				if a.does("loosen", "remove", "open") && b.does("tighten", "refit", "close") && b.names(first...) {
					break
				}
			}
		}
		return out
	}
}

// verbs makes a pair of a step that does one thing and one that does another to the same object.
func verbs(first, second string) func(*folder, *sheet, table, table) bool {
	return func(_ *folder, _ *sheet, a, b table) bool {
		_, objects := a.verb()
		return a.does(first) && b.does(second) && b.names(objects...)
	}
}

// related is the same where the second object belongs with the first.
func related(first, second []string) func(*folder, *sheet, table, table) bool {
	return func(f *folder, s *sheet, a, b table) bool {
		_, objects := a.verb()
		return a.does(first...) && b.does(second...) && b.names(f.kin(s, objects...)...)
	}
}

// change writes another value to the keys of the tables of these kinds; the
// change says no where it cannot be made.
func change(kinds, keys []string, to func(value string) (string, bool), right func(*folder, damage, table) damage) generator {
	return func(f *folder, s *sheet) []damage {
		var out []damage
		for _, t := range s.tables {
			if !slices.Contains(kinds, t.kind) {
				continue
			}
			for _, one := range t.entries {
				if !slices.Contains(keys, one.key) {
					continue
				}
				if value, ok := to(one.value); ok && value != one.value {
					out = append(out, right(f, s.put(t, one, value), t))
				}
			}
		}
		return out
	}
}

// drop takes a key away from the tables of these kinds.
func drop(kinds, keys []string, right func(*folder, damage, table) damage) generator {
	return func(f *folder, s *sheet) []damage {
		var out []damage
		for _, t := range s.tables {
			for _, key := range keys {
				if one, ok := t.entry(key); ok && slices.Contains(kinds, t.kind) {
					out = append(out, right(f, s.cut(t, one), t))
				}
			}
		}
		return out
	}
}

// same: right is the table alone and the steps that name it.
func same(f *folder, d damage, t table) damage {
	if t.name == "" {
		return d
	}
	return d.naming(f, t.name)
}

// tooled: right is also the list of tools, and what a rule on tools says of a step.
func tooled(f *folder, d damage, t table) damage { return same(f, d, t).list(f, "tools") }

// users: right is also everything that holds or takes it.
func users(f *folder, d damage, t table) damage {
	quoted := `"` + t.name + `"`
	return same(f, d, t).where(f, func(other table) bool {
		return slices.ContainsFunc(other.entries, func(e entry) bool {
			return strings.Contains(e.value, quoted) || e.key == "supplies" && strings.Contains(e.value, t.name)
		})
	})
}

// dropItem takes each item out of a list of the procedure.
func dropItem(key string, families ...string) generator {
	return func(f *folder, s *sheet) []damage {
		var out []damage
		procedure, ok := s.table("procedure", "")
		one, listed := procedure.entry(key)
		if !ok || !listed {
			return nil
		}
		for _, item := range texts(one.value) {
			d := s.put(procedure, one, without(one.value, item))
			d.words = fmt.Sprintf("%q is gone from %s", item, key)
			out = append(out, d.naming(f, item).of(families...))
		}
		return out
	}
}

// addItem puts something nobody uses into a list of the procedure.
func addItem(key string, items ...string) generator {
	return func(f *folder, s *sheet) []damage {
		procedure, ok := s.table("procedure", "")
		one, listed := procedure.entry(key)
		if !ok || !listed {
			return nil
		}
		var out []damage
		for _, item := range items {
			if !strings.Contains(s.text(), `"`+item+`"`) {
				d := s.put(procedure, one, including(one.value, item))
				d.words = fmt.Sprintf("%q is put into %s", item, key)
				out = append(out, d)
			}
		}
		return out
	}
}

// scale multiplies the figures of a value.
func scale(by float64) func(string) (string, bool) {
	return func(value string) (string, bool) { return scaled(value, by), true }
}

// replace puts one text for another in a value that has it.
func replace(pairs ...string) func(string) (string, bool) {
	return func(value string) (string, bool) {
		for i := 0; i < len(pairs); i += 2 {
			if strings.Contains(value, pairs[i]) {
				return strings.Replace(value, pairs[i], pairs[i+1], 1), true
			}
		}
		return value, false
	}
}
