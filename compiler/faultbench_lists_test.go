package compiler_test

import (
	"slices"
	"strings"
)

var lists = []string{"tools", "supplies", "spares", "wear", "cautions"}

// listFaults leave something out of a list, or bring what nobody uses.
var listFaults = []faultKind{
	{name: "tool dropped from the list", family: "list", does: "One item is left out of `tools`", apply: dropItem("tools", "tool", "torque", "safety")},
	{name: "supply dropped from the list", family: "list", does: "One item is left out of `supplies`", apply: dropItem("supplies", "supply", "fluid")},
	{name: "spare dropped from the list", family: "list", does: "One item is left out of `spares`", apply: dropItem("spares", "spare")},
	{name: "unused tool", family: "list", does: "A tool no step takes is put into `tools`", apply: addItem("tools", "hub-socket", "hammer", "tape")},
	{name: "unused supply", family: "list", does: "A supply no step takes is put into `supplies`", apply: addItem("supplies", "anti-seize", "gear-460")},
	{name: "unused spare", family: "list", does: "A spare no step renews is put into `spares`", apply: addItem("spares", "split-pin-4", "lock-nut-m10")},
	{name: "item twice in a list", family: "list", does: "The first item of a list stands twice", apply: itemTwice},
	{name: "whole list dropped", family: "list", does: "`tools`, `supplies`, `spares` or `wear` is left out", apply: drop([]string{"procedure"}, lists[:4], same)},
	{name: "list emptied", family: "list", does: "`tools`, `supplies`, `spares` or `wear` is empty", apply: emptied},
	{name: "tool dropped at a step", family: "list", does: "`tools` of a step is left out, and what it works on brings them not", apply: stepToolsDropped},
	{name: "supply dropped at a step", family: "list", does: "`supplies` of a step is left out", apply: drop(stepKinds, []string{"supplies"}, func(f *folder, d damage, _ table) damage { return d.list(f, "supplies") })},
	{name: "tool dropped at the energy, point or limit", family: "list", does: "`tool` or `tools` of a thing is left out, and not every step names them too", apply: thingToolsDropped},
	{name: "torque wrench with a smaller range", family: "list", does: "The range of a torque wrench is halved", apply: halfRange},
	{name: "socket with another drive", family: "list", does: "1/2 is written 3/8, and 3/8 1/2", apply: change([]string{"tool"}, []string{"drive"}, replace(`"1/2"`, `"3/8"`, `"3/8"`, `"1/2"`), library)},
	{name: "tool of another size", family: "list", does: "The size of a socket, wrench or key is one millimetre more", apply: change([]string{"tool"}, []string{"sizes"}, replace(`"8 mm`, `"9 mm`, `"10 mm`, `"11 mm`, `"13 mm`, `"14 mm`, `"16 mm`, `"17 mm`, `"17 mm`, `"18 mm`, `"18 mm`, `"19 mm`, `"24 mm`, `"25 mm`, `"27 mm`, `"28 mm`), library)},
}

// stepToolsDropped leaves the tools of a step out where what it works on has not the same.
func stepToolsDropped(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.steps() {
		one, ok := t.entry("tools")
		if _, objects := t.verb(); ok && !covers(append(f.brought(s, objects), "lamp"), texts(one.value)) { // a lamp is at hand all the time
			out = append(out, s.cut(t, one).list(f, "tools"))
		}
	}
	return out
}

// readingDropped leaves a reading out, but of what is set later and measured once more: the
// last value is the one to keep.
func readingDropped(f *folder, s *sheet) []damage {
	var out []damage
	steps := s.steps()
	for i, t := range steps {
		one, ok := t.entry("reading")
		if !ok {
			continue
		}
		_, objects := t.verb()
		again, set := false, false
		for _, later := range steps[i+1:] {
			set = set || later.does("adjust", "align", "tension", "slacken")
			again = again || set && later.does("measure") && later.names(objects...)
		}
		if !t.does("measure") || !again {
			out = append(out, same(f, s.cut(t, one), t))
		}
	}
	return out
}

// brought lists the tools that the things a step works on bring.
func (f *folder) brought(s *sheet, objects []string) []string {
	var out []string
	for _, t := range f.machine(s).tables {
		if slices.Contains(objects, t.name) {
			out = append(append(out, t.texts("tool")...), t.texts("tools")...)
			if across, ok := t.entry("across"); ok { // the wrench of its width is worked out
				out = append(out, "wrench-"+strings.TrimSuffix(strings.Trim(across.value, `"`), " mm"))
			}
		}
	}
	return out
}

func covers(all, some []string) bool {
	return !slices.ContainsFunc(some, func(one string) bool { return !slices.Contains(all, one) })
}

// thingToolsDropped leaves the tools of a thing out where a step that works on it does not name them itself.
func thingToolsDropped(f *folder, s *sheet) []damage {
	var out []damage
	for _, d := range drop([]string{"energy", "point", "limit", "pose", "part"}, []string{"tool", "tools"}, tooled)(f, s) {
		i := slices.IndexFunc(s.tables, func(t table) bool { return d.line > t.from && d.line <= t.to })
		thing := s.tables[i]
		bare := func(procedure string) bool {
			return slices.ContainsFunc(f.sheet(procedure).steps(), func(step table) bool {
				return step.names(thing.name) && !covers(step.texts("tools"), append(thing.texts("tool"), thing.texts("tools")...))
			})
		}
		if slices.ContainsFunc(f.procedures(s.path), bare) {
			out = append(out, d)
		}
	}
	return out
}

// library: right is also the lists that bring the tool, and whatever is said of tools at a step.
func library(f *folder, d damage, t table) damage { return users(f, d, t).of("tool", "torque") }

func itemTwice(_ *folder, s *sheet) []damage {
	var out []damage
	procedure, _ := s.table("procedure", "")
	for _, key := range lists {
		if one, ok := procedure.entry(key); ok && len(texts(one.value)) > 0 {
			out = append(out, s.put(procedure, one, including(one.value, texts(one.value)[0])))
		}
	}
	return out
}

func emptied(_ *folder, s *sheet) []damage {
	var out []damage
	procedure, _ := s.table("procedure", "")
	for _, key := range lists[:4] {
		if one, ok := procedure.entry(key); ok && len(texts(one.value)) > 0 {
			d := s.with(key+" is empty", edit{one.from, one.to, []string{key + " = []"}})
			out = append(out, d.of("tool", "torque", "supply", "fluid", "spare", "safety"))
		}
	}
	return out
}

func halfRange(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.tables {
		kind, _ := t.entry("kind")
		if one, ok := t.entry("range"); ok && kind.value == `"torque-wrench"` {
			out = append(out, library(f, s.put(t, one, scaled(one.value, 0.5)), t))
		}
	}
	return out
}

// limitFaults leave out what to do, or set what the limit does not let pass.
var limitFaults = []faultKind{
	{name: "outside dropped at the limit", family: "limit", does: "`outside` of a limit is left out", apply: drop([]string{"limit"}, []string{"outside"}, same)},
	{name: "outside dropped at a step", family: "limit", does: "`outside` of a look or a measurement is left out, and its limit has none", apply: outsideDropped},
	{name: "expect dropped", family: "limit", does: "`expect` of a step is left out", apply: drop(stepKinds, []string{"expect"}, same)},
	{name: "limit dropped", family: "limit", does: "`limit` is left out", apply: drop([]string{"limit", "step"}, []string{"limit"}, same)},
	{name: "set outside its limit", family: "limit", does: "The value set is twice as large", apply: setOutside},
	{name: "set dropped", family: "limit", does: "`set` of a step is left out", apply: setDropped},
	{name: "limit turned round", family: "limit", does: "max is written min, and min max", apply: change([]string{"limit", "step"}, []string{"limit", "set"}, replace(`"max`, `"min`, `"min`, `"max`), same)},
	{name: "limit times ten", family: "limit", does: "The figures of a limit are ten times as large", apply: change([]string{"limit"}, []string{"limit"}, scale(10), tooled)},
	{name: "inches for millimetres", family: "limit", does: "`mm` of a limit or a value set is written `in`", apply: change(every, []string{"limit", "set", "new"}, replace("mm", "in"), tooled)},
	{name: "new outside its limit", family: "limit", does: "`new` is twice as large", apply: change([]string{"limit"}, []string{"new"}, scale(2), same)},
	{name: "another quantity", family: "limit", does: "A length is written as a force, a pressure as a length", apply: change([]string{"limit"}, []string{"limit"}, replace(" mm", " N", " bar", " mm", " N", " mm", " °C", " bar"), tooled)},
	{name: "reading dropped", family: "limit", does: "`reading` of a measurement is left out", apply: readingDropped},
	{name: "least dropped", family: "limit", does: "A run without a time", apply: drop(stepKinds, []string{"least"}, same)},
	{name: "wait longer than elapsed", family: "limit", does: "A wait or run takes 30 h where `elapsed` says less", apply: longWait},
	{name: "elapsed shorter than hands-on", family: "limit", does: "`elapsed` is one minute", apply: change([]string{"procedure"}, []string{"elapsed"}, func(string) (string, bool) { return `"1 min"`, true }, same)},
	{name: "interval dropped", family: "limit", does: "`every` of the procedure is left out", apply: drop([]string{"procedure"}, []string{"every"}, same)},
	{name: "first after every", family: "limit", does: "`first` is a hundred times as long", apply: change([]string{"procedure"}, []string{"first"}, scale(100), same)},
}

func setOutside(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.steps() {
		_, objects := t.verb()
		one, ok := t.entry("set")
		if !ok || len(objects) == 0 {
			continue
		}
		if _, limited := f.machine(s).table("limit", objects[0]); limited {
			out = append(out, s.put(t, one, scaled(one.value, 2)).naming(f, objects...))
		}
	}
	return out
}

// outsideDropped leaves out what to do where nothing else says it: a value that is set
// is set until it is right, and a limit says it for every step that measures it.
func outsideDropped(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.steps() {
		_, objects := t.verb()
		_, sets := t.entry("set")
		one, ok := t.entry("outside")
		if !ok || sets || len(objects) == 0 || t.does("adjust", "align", "tension") {
			continue
		}
		if _, limited := f.machine(s).table("limit", objects[0]); !limited {
			out = append(out, s.cut(t, one))
		}
	}
	return out
}

// setDropped leaves out the value where no limit gives another.
func setDropped(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.steps() {
		_, objects := t.verb()
		one, ok := t.entry("set")
		if !ok || len(objects) == 0 {
			continue
		}
		if _, limited := f.machine(s).table("limit", objects[0]); !limited {
			out = append(out, s.cut(t, one))
		}
	}
	return out
}

func longWait(f *folder, s *sheet) []damage {
	var out []damage
	procedure, _ := s.table("procedure", "")
	for _, t := range s.steps() {
		for _, key := range []string{"wait", "least"} {
			_, told := procedure.entry("elapsed")
			if one, ok := t.entry(key); ok && told {
				out = append(out, s.put(t, one, `"30 h"`).list(f, "elapsed"))
			}
		}
	}
	return out
}
