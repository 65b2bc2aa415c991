package compiler_test

import (
	"fmt"
	"slices"
)

// safetyFaults leave a message out, put it too late, or leave the machine live.
var safetyFaults = []faultKind{
	{name: "caution dropped from the list", family: "safety", does: "One name is left out of `cautions` of the procedure", apply: dropItem("cautions", "safety")},
	{name: "caution dropped at a step", family: "safety", does: "`cautions` or `[[step.caution]]` of a step is left out", apply: dropStepCaution},
	{name: "message at the last step", family: "safety", does: "A message of the list or of a step stands at the last step only", apply: lateCaution},
	{name: "signal word lowered", family: "safety", does: "danger is written warning, and warning caution", apply: lowerSignal},
	{name: "isolate dropped", family: "safety", does: "A step that isolates is left out", apply: dropStep("isolate")},
	{name: "prove dropped", family: "safety", does: "A step that proves is left out", apply: dropStep("prove")},
	{name: "relieve dropped", family: "safety", does: "A step that relieves is left out", apply: dropStep("relieve")},
	{name: "restore dropped", family: "safety", does: "A step that restores is left out", apply: dropStep("restore")},
	{name: "prove before isolate", family: "safety", does: "The two steps change places", apply: swapSteps(verbs("isolate", "prove"))},
	{name: "prove before relieve", family: "safety", does: "The two steps change places", apply: swapSteps(verbs("relieve", "prove"))},
	{name: "guard off before it is proved", family: "safety", does: "The step that proves and the one that takes the guard off change places", apply: swapSteps(related([]string{"prove"}, []string{"remove", "open"}))},
	{name: "guard off before it is isolated", family: "safety", does: "The step that isolates stands after the one that takes the guard off", apply: isolateLate},
	{name: "restore before the guard is on", family: "safety", does: "The step that restores changes places with the refit or close of the guard", apply: swapSteps(related([]string{"refit", "close"}, []string{"restore"}))},
	{name: "run before restore", family: "safety", does: "The two steps change places", apply: swapSteps(func(_ *folder, _ *sheet, a, b table) bool { return a.does("restore") && b.does("run") })},
	{name: "run before the guard is on", family: "safety", does: "The run changes places with the refit or close of the guard", apply: swapSteps(guardAndRun)},
	{name: "guard not put back", family: "safety", does: "The refit or close of a guard is left out", apply: dropSteps(func(f *folder, s *sheet, t table) bool { return t.does("refit", "close") && guards(f, s, t) })},
	{name: "support dropped", family: "safety", does: "What is raised is never supported", apply: dropStep("support")},
	{name: "support after the work", family: "safety", does: "The support and the removal after it change places", apply: swapSteps(func(_ *folder, _ *sheet, a, b table) bool { return a.does("support") && b.does("remove") })},
	{name: "message without a way out", family: "safety", does: "`avoid` of a message is left out", apply: drop([]string{"caution"}, []string{"avoid"}, users)},
	{name: "what a message says to wear dropped", family: "safety", does: "One item is left out of `wear` of the procedure", apply: dropItem("wear", "safety")},
	{name: "no reason for no isolation", family: "safety", does: "`no-isolation` is left out", apply: drop([]string{"procedure"}, []string{"no-isolation"}, same)},
	{name: "guard that guards nothing", family: "safety", does: "`guards` of a cover is left out", apply: drop([]string{"cover"}, []string{"guards"}, users)},
	{name: "hazard dropped", family: "safety", does: "`hazards` of a part, cavity or tool is left out", apply: drop([]string{"part", "cavity", "tool", "supply"}, []string{"hazards"}, users)},
}

// guards reports whether a step's object is a cover that keeps people from an energy.
func guards(f *folder, s *sheet, t table) bool {
	_, objects := t.verb()
	return slices.ContainsFunc(objects, func(name string) bool {
		cover, ok := f.machine(s).table("cover", name)
		return ok && len(cover.texts("guards")) > 0
	})
}

func guardAndRun(f *folder, s *sheet, a, b table) bool {
	return a.does("refit", "close") && guards(f, s, a) && b.does("run", "start")
}

func dropStepCaution(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.steps() {
		for _, inner := range t.inner {
			if inner.name != "caution" {
				continue
			}
			d := s.with(fmt.Sprintf("%s: the message is gone", t.call()), edit{inner.from, inner.to, []string{""}})
			out = append(out, d.list(f, "cautions").of("safety"))
		}
		if one, ok := t.entry("cautions"); ok {
			out = append(out, s.cut(t, one).list(f, "cautions").of("safety"))
		}
	}
	return out
}

func lateCaution(f *folder, s *sheet) []damage {
	var out []damage
	steps := s.steps()
	if len(steps) == 0 {
		return nil
	}
	procedure, _ := s.table("procedure", "")
	last := steps[len(steps)-1]
	late := func(name string) edit {
		at := last.from + 1
		if own, ok := last.entry("cautions"); ok {
			return edit{own.from, own.to, []string{"cautions = " + including(own.value, name)}}
		}
		return edit{at, at, []string{`cautions = ["` + name + `"]`}}
	}
	for _, t := range append([]table{procedure}, steps[:len(steps)-1]...) {
		one, ok := t.entry("cautions")
		if !ok {
			continue
		}
		for _, name := range t.texts("cautions") {
			d := s.with(fmt.Sprintf("message %q stands at the last step only", name), edit{one.from, one.to, []string{"cautions = " + without(one.value, name)}}, late(name))
			out = append(out, d.of("safety"))
		}
	}
	return out
}

func lowerSignal(f *folder, s *sheet) []damage {
	var out []damage
	lower := replace("danger", "warning", "warning", "caution")
	for _, t := range s.tables {
		if one, ok := t.entry("signal"); ok && t.kind == "caution" {
			value, _ := lower(one.value)
			out = append(out, users(f, s.put(t, one, value), t).of("safety"))
		}
		for _, inner := range t.inner {
			if one, ok := inner.entry("signal"); ok {
				value, _ := lower(one.value)
				out = append(out, s.put(inner, one, value).of("safety"))
			}
		}
	}
	return out
}

func isolateLate(f *folder, s *sheet) []damage {
	var out []damage
	steps := s.steps()
	for i, t := range steps {
		if !t.does("isolate") {
			continue
		}
		_, energies := t.verb()
		kin := f.kin(s, energies...)
		for _, later := range steps[i+1:] {
			if later.does("remove", "open") && later.names(kin...) {
				out = append(out, s.move(t, later).naming(f, kin...))
				break
			}
		}
	}
	return out
}
