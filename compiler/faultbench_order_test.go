package compiler_test

import (
	"fmt"
	"slices"
	"strings"
)

// orderFaults do the right things in the wrong order, or twice.
var orderFaults = []faultKind{
	{name: "drain before the plug is out", family: "order", does: "The removal of the plug and the drain change places", apply: swapSteps(related([]string{"remove", "open"}, []string{"drain"}))},
	{name: "tighten before refit", family: "order", does: "The two steps change places", apply: swapSteps(verbs("refit", "tighten"))},
	{name: "fill before drain", family: "order", does: "The two steps change places", apply: swapSteps(verbs("drain", "fill"))},
	{name: "fill before the drain plug is in", family: "order", does: "The refit of the plug and the fill change places", apply: swapSteps(plugs("refit"))},
	{name: "fill before the drain plug is tight", family: "order", does: "The tightening of the plug and the fill change places", apply: swapSteps(plugs("tighten"))},
	{name: "fill before the fill plug is out", family: "order", does: "The removal of the fill plug stands after the fill", apply: fillShut},
	{name: "refit before remove", family: "order", does: "The two steps change places", apply: swapSteps(verbs("remove", "refit"))},
	{name: "replace after refit of what holds it", family: "order", does: "The new part and the refit after it change places", apply: swapSteps(func(_ *folder, _ *sheet, a, b table) bool { return a.does("replace") && b.does("refit") })},
	{name: "tighten before adjust", family: "order", does: "The adjustment and the tightening after it change places", apply: swapSteps(func(_ *folder, _ *sheet, a, b table) bool {
		return a.does("adjust", "align", "tension") && b.does("tighten")
	})},
	{name: "adjust before loosen", family: "order", does: "The loosening and the adjustment after it change places", apply: swapSteps(func(_ *folder, _ *sheet, a, b table) bool {
		return a.does("loosen") && b.does("adjust", "align", "tension")
	})},
	{name: "loosen after raise", family: "order", does: "The loosening on the ground and the raise change places", apply: swapSteps(func(_ *folder, _ *sheet, a, b table) bool { return a.does("loosen") && b.does("raise") })},
	{name: "tighten before lower", family: "order", does: "The lowering and the tightening after it change places", apply: swapSteps(func(_ *folder, _ *sheet, a, b table) bool { return a.does("lower") && b.does("tighten") })},
	{name: "support before raise", family: "order", does: "The two steps change places", apply: swapSteps(func(_ *folder, _ *sheet, a, b table) bool { return a.does("raise") && b.does("support") })},
	{name: "lower before the work is done", family: "order", does: "The lowering stands after the support", apply: lowerEarly},
	{name: "measure before the guard is off", family: "order", does: "The removal of the guard and a look behind it change places", apply: swapSteps(related([]string{"remove", "open"}, []string{"measure", "adjust", "grease"}))},
	{name: "disconnect after connect", family: "order", does: "The two steps change places", apply: swapSteps(verbs("disconnect", "connect"))},
	{name: "wait at the end", family: "order", does: "A wait stands last of the work", apply: waitLate},
	{name: "meanwhile without a wait", family: "order", does: "`meanwhile = true` is written at a step no wait stands before", apply: meanwhileAlone},
	{name: "step twice", family: "order", does: "A remove, refit, replace, drain, fill, raise, lower or restore stands twice in a row", apply: doubled},
}

// plugs makes a pair of what is done to a drain plug and the fill of what it drains.
func plugs(verb string) func(*folder, *sheet, table, table) bool {
	return func(f *folder, s *sheet, a, b table) bool {
		if !a.does(verb) || !b.does("fill") {
			return false
		}
		_, cavities := b.verb()
		return slices.ContainsFunc(cavities, func(name string) bool {
			cavity, _ := f.machine(s).table("cavity", name)
			return a.names(cavity.texts("drain")...)
		})
	}
}

func fillShut(f *folder, s *sheet) []damage {
	var out []damage
	steps := s.steps()
	for _, b := range steps {
		_, cavities := b.verb()
		if !b.does("fill") || len(cavities) == 0 {
			continue
		}
		cavity, _ := f.machine(s).table("cavity", cavities[0])
		for _, a := range steps {
			if a.does("remove", "open") && a.names(cavity.texts("fill")...) && a.from < b.from {
				out = append(out, s.move(a, b).naming(f, f.kin(s, cavities...)...))
			}
		}
	}
	return out
}

func lowerEarly(f *folder, s *sheet) []damage {
	var out []damage
	steps := s.steps()
	for _, lower := range steps {
		i := slices.IndexFunc(steps, func(t table) bool { return t.does("support") && t.from < lower.from })
		if lower.does("lower") && i >= 0 {
			back := s.with(fmt.Sprintf("%q now stands after %q", lower.call(), steps[i].call()),
				edit{steps[i].to, steps[i].to, s.lines[lower.from:lower.to]}, edit{lower.from, lower.to, nil})
			out = append(out, back.where(f, func(t table) bool { return t.does("remove", "refit", "support", "raise") }))
		}
	}
	return out
}

func waitLate(f *folder, s *sheet) []damage {
	var out []damage
	work := slices.DeleteFunc(s.steps(), func(t table) bool { return t.kind != "step" })
	for _, t := range work {
		if t.does("wait") {
			d := s.move(t, work[len(work)-1])
			out = append(out, d.where(f, func(t table) bool { _, ok := t.entry("meanwhile"); return ok || t.does("drain", "wait") }))
		}
	}
	return out
}

func meanwhileAlone(_ *folder, s *sheet) []damage {
	var out []damage
	steps := s.steps()
	for i, t := range steps {
		waits := slices.ContainsFunc(steps[:i], func(before table) bool { return before.does("wait", "run", "drain") })
		if t.does("inspect", "clean", "measure") && !waits {
			d := s.with(t.call()+": meanwhile = true is put in", edit{t.from + 1, t.from + 1, []string{"meanwhile = true"}})
			out = append(out, d)
		}
	}
	return out
}

func doubled(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.steps() {
		if t.does("remove", "refit", "replace", "drain", "fill", "raise", "lower", "restore") {
			text := slices.Clone(s.lines[t.from:t.to])
			if strings.TrimSpace(text[len(text)-1]) != "" {
				text = append(text, "")
			}
			_, objects := t.verb()
			out = append(out, s.with(fmt.Sprintf("%q stands twice", t.call()), edit{t.from, t.from, text}).naming(f, objects...))
		}
	}
	return out
}

// missingFaults leave a step of the work out.
var missingFaults = []faultKind{
	{name: "refit dropped", family: "missing step", does: "What came off is not put back, and no part before it brings it along", apply: dropUnless("refit", brings("before", "refit", "replace"))},
	{name: "tighten dropped", family: "missing step", does: "What was loosened or put back is not tightened", apply: dropStep("tighten")},
	{name: "remove dropped", family: "missing step", does: "What is put back never came off, and no part after it takes it along", apply: dropUnless("remove", brings("remove", "replace"))},
	{name: "loosen dropped", family: "missing step", does: "What is set was never loosened; where it comes off next, that loosens it", apply: dropUnless("loosen", brings("remove", "disconnect"))},
	{name: "open dropped", family: "missing step", does: "What is closed was never opened", apply: dropStep("open")},
	{name: "close dropped", family: "missing step", does: "What was opened is not closed", apply: dropStep("close")},
	{name: "drain dropped", family: "missing step", does: "Nothing is drained", apply: dropStep("drain")},
	{name: "fill dropped", family: "missing step", does: "What was drained is not filled", apply: dropStep("fill")},
	{name: "replace dropped", family: "missing step", does: "The new part is not put in", apply: dropReplace},
	{name: "raise dropped", family: "missing step", does: "What is supported was never raised", apply: dropStep("raise")},
	{name: "lower dropped", family: "missing step", does: "What was raised is not let down", apply: dropStep("lower")},
	{name: "wait dropped", family: "missing step", does: "A wait is left out", apply: dropStep("wait")},
	{name: "disconnect dropped", family: "missing step", does: "What is connected was never parted, and no new one after it takes it along", apply: dropUnless("disconnect", brings("replace"))},
	{name: "connect dropped", family: "missing step", does: "What was parted is not joined", apply: dropStep("connect")},
	{name: "last run dropped", family: "missing step", does: "A test run is left out", apply: dropSteps(func(_ *folder, _ *sheet, t table) bool { return t.kind == "close" && t.does("run") })},
	{name: "measure dropped", family: "missing step", does: "A measurement is left out", apply: func(f *folder, s *sheet) []damage {
		var out []damage
		for _, d := range dropStep("measure")(f, s) {
			out = append(out, d.list(f, "tools", "record"))
		}
		return out
	}},
}

func dropReplace(f *folder, s *sheet) []damage {
	var out []damage
	for _, d := range dropStep("replace")(f, s) {
		out = append(out, d.list(f, "spares"))
	}
	return out
}
