package compiler_test

import (
	"fmt"
	"slices"
	"strings"
)

// mixupFaults take one thing for another, as happens when a step is copied.
var mixupFaults = []faultKind{
	{name: "opposite verb", family: "mix-up", does: "remove is written refit, loosen tighten, open close, drain fill, raise lower, isolate restore, or the other way round", apply: opposite},
	{name: "another thing refitted", family: "mix-up", does: "A step that refits names what another step refits", apply: otherObject("refit")},
	{name: "another thing tightened", family: "mix-up", does: "A step that tightens names what another step tightens", apply: otherObject("tighten")},
	{name: "another thing removed", family: "mix-up", does: "A step that removes names what another step removes", apply: otherObject("remove")},
	{name: "another energy proved", family: "mix-up", does: "A step that proves names what another step proves", apply: otherObject("prove")},
	{name: "another energy isolated", family: "mix-up", does: "A step that isolates names what another step isolates", apply: otherObject("isolate")},
	{name: "step of another part of the job", family: "mix-up", does: "The first step of the work stands last", apply: firstLast},
	{name: "procedure of another machine", family: "mix-up", does: "`machine` names another machine of the shop", apply: otherMachine},
	{name: "message of another hazard", family: "mix-up", does: "A message of the list is replaced by one nothing here asks for", apply: otherCaution},
	{name: "tool of the next size", family: "mix-up", does: "A socket, wrench or key of the list is replaced by the next one on the wall", apply: otherTool},
	{name: "grease for oil", family: "mix-up", does: "A fluid of the list is replaced by another", apply: otherSupply},
}

var opposites = []string{"remove", "refit", "loosen", "tighten", "open", "close", "drain", "fill", "raise", "lower", "isolate", "restore", "disconnect", "connect"}

func opposite(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.steps() {
		verb, objects := t.verb()
		at := slices.Index(opposites, verb)
		if at < 0 {
			continue
		}
		one, _ := t.entry(verb)
		other := opposites[at^1]
		text := strings.Replace(s.lines[one.from], verb, other, 1)
		d := s.with(fmt.Sprintf("%q is now %q", t.call(), other+" "+strings.Join(objects, ", ")), edit{one.from, one.from + 1, []string{text}})
		out = append(out, d.naming(f, f.kin(s, objects...)...))
	}
	return out
}

// otherObject gives each step that does something the object of the next that does the same to another.
func otherObject(verb string) generator {
	return func(f *folder, s *sheet) []damage {
		var out []damage
		steps := slices.DeleteFunc(s.steps(), func(t table) bool { return !t.does(verb) })
		for i, t := range steps {
			one, _ := t.entry(verb)
			for n := range steps[1:] {
				other, _ := steps[(i+n+1)%len(steps)].entry(verb)
				if own := texts(one.value); !slices.ContainsFunc(texts(other.value), func(name string) bool { return slices.Contains(own, name) }) {
					d := s.put(t, one, other.value)
					out = append(out, d.naming(f, f.kin(s, append(texts(one.value), texts(other.value)...)...)...))
					break
				}
			}
		}
		return out
	}
}

func firstLast(f *folder, s *sheet) []damage {
	work := slices.DeleteFunc(s.steps(), func(t table) bool { return t.kind != "step" })
	if len(work) < 2 {
		return nil
	}
	_, objects := work[0].verb()
	return []damage{s.move(work[0], work[len(work)-1]).naming(f, f.kin(s, objects...)...)}
}

func otherMachine(f *folder, s *sheet) []damage {
	procedure, ok := s.table("procedure", "")
	one, has := procedure.entry("machine")
	if !ok || !has {
		return nil
	}
	to, _ := replace("band-mill", "edger", "edger", "band-mill", "log-deck", "chipper", "chipper", "log-deck", "log-trailer", "power-pack", "power-pack", "compressor", "compressor", "power-pack")(one.value)
	d := s.put(procedure, one, to)
	return []damage{d.of("reference")}
}

// inList writes another item for one of a list of the procedure.
func inList(f *folder, s *sheet, key string, to func(string) (string, bool), families ...string) []damage {
	var out []damage
	procedure, _ := s.table("procedure", "")
	one, ok := procedure.entry(key)
	if !ok {
		return nil
	}
	for _, item := range texts(one.value) {
		other, can := to(item)
		if !can || strings.Contains(one.value, `"`+other+`"`) {
			continue
		}
		d := s.put(procedure, one, strings.Replace(one.value, `"`+item+`"`, `"`+other+`"`, 1))
		d.words = fmt.Sprintf("%q in %s is now %q", item, key, other)
		out = append(out, d.naming(f, item, other).of(families...))
	}
	return out
}

func otherCaution(f *folder, s *sheet) []damage {
	return inList(f, s, "cautions", func(string) (string, bool) { return "battery-gas", true }, "safety")
}

var wall = []string{"socket-10", "socket-13", "socket-16", "socket-17", "socket-18", "socket-19", "socket-24", "socket-27", "socket-30", "",
	"wrench-16", "wrench-17", "wrench-18", "wrench-19", "wrench-22", "wrench-24", "wrench-27", "wrench-30", "wrench-32", "",
	"hex-key-4", "hex-key-5", "hex-key-6", "hex-key-8", "hex-key-10", "", "hex-bit-5", "hex-bit-6", "hex-bit-8", "hex-bit-10", "",
	"torque-wrench-25", "torque-wrench-100", "torque-wrench-300", "torque-wrench-25", "", "ratchet-1-2", "ratchet-3-8"}

func otherTool(f *folder, s *sheet) []damage {
	return inList(f, s, "tools", func(item string) (string, bool) {
		at := slices.Index(wall, item)
		if at < 0 || at+1 == len(wall) || wall[at+1] == "" {
			return item, false
		}
		return wall[at+1], true
	}, "tool", "torque")
}

func otherSupply(f *folder, s *sheet) []damage {
	return inList(f, s, "supplies", otherFluid, "supply", "fluid")
}
