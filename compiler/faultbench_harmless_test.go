package compiler_test

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/schema"
)

const harmless = "harmless"

// harmlessKinds change what stands in a file and leave the job as it is.
var harmlessKinds = []faultKind{
	{family: harmless, name: "comment", does: "A comment stands above a table", apply: above("# as found at the machine")},
	{family: harmless, name: "empty lines", does: "Two empty lines stand above a table", apply: above("", "")},
	{family: harmless, name: "line breaks of another system", does: "Every line ends in CR LF", apply: returns},
	{family: harmless, name: "keys in another order", does: "Two neighbouring keys change places", apply: keysSwapped},
	{family: harmless, name: "no spaces at the equals sign", does: "`key=value`", apply: mangled(`^([a-z-]+) = `, "$1=")},
	{family: harmless, name: "list the other way round", does: "The names of a list stand in the opposite order", apply: eachEntry(anywhere, reversed, schema.Names)},
	{family: harmless, name: "list over several lines", does: "Each name has a line of its own", apply: eachEntry(anywhere, spreadOut, schema.Names)},
	{family: harmless, name: "list of one without brackets", does: `["x"] is written "x"`, apply: eachEntry(anywhere, bracketless, schema.Names)},
	{family: harmless, name: "one name in brackets", does: `"x" is written ["x"]`, apply: eachEntry(inStep, func(value string) (string, bool) {
		return "[" + value + "]", strings.HasPrefix(value, `"`) && !strings.Contains(value, " ")
	}, schema.Names)},
	{family: harmless, name: "newton metres without the dot", does: "`N·m` is written `Nm`", apply: eachEntry(anywhere, replace("N·m", "Nm"), schema.Amount)},
	{family: harmless, name: "millilitres of the same", does: "1.1 L is written 1100 mL", apply: eachEntry(anywhere, same1000(" L", " mL"), schema.Amount)},
	{family: harmless, name: "both units, agreeing", does: "The other system stands in parentheses", apply: eachEntry(anywhere, replace(`"42 to 48 N·m"`, `"42 to 48 N·m (31 to 35 lbf·ft)"`, `"22 to 27 N·m"`, `"22 to 27 N·m (16.2 to 19.9 lbf·ft)"`, `"75 to 85 N·m"`, `"75 to 85 N·m (55 to 63 lbf·ft)"`, `"1.1 L"`, `"1.1 L (1.16 US qt)"`, `"24 mm"`, `"24 mm (0.945 in)"`), schema.Amount)},
	{family: harmless, once: true, name: "torque a little less", does: "Every figure of `torque` is 4 percent less, and nobody has read it twice", apply: change(held, []string{"torque"}, scale(0.96), same)},
	{family: harmless, once: true, name: "amount a little less", does: "Every `amount` or `capacity` is 10 percent less, and nobody has read it twice", apply: change(holders, fluidKeys, scale(0.9), same)},
	{family: harmless, name: "tables in another order", does: "Two neighbouring parts, limits, tools … change places", apply: tablesSwapped},
	{family: harmless, name: "two proofs in another order", does: "Two neighbouring steps that prove change places", apply: swapNext("prove")},
	{family: harmless, name: "note put in", does: "`notes` stands at a step", apply: putIn("notes", `["The paint here is new."]`, stepKinds...)},
	{family: harmless, name: "id put in", does: "`id` stands at a step", apply: putIn("id", `"as-it-was"`, stepKinds...)},
	{family: harmless, name: "heading dropped", does: "`stage` of a step is left out", apply: drop(stepKinds, []string{"stage"}, same)},
	{family: harmless, name: "notes dropped", does: "`notes` are left out", apply: drop(append([]string{"procedure"}, stepKinds...), []string{"notes"}, same)},
	{family: harmless, name: "place and number dropped", does: "`at`, `where` or `number` is left out", apply: drop([]string{"part", "cover", "cavity", "energy", "point", "tool", "fluid", "supply", "spare"}, []string{"at", "where", "number"}, same)},
	{family: harmless, name: "summary and checker dropped", does: "`summary` or `checked` is left out", apply: drop([]string{"procedure"}, []string{"summary", "checked"}, same)},
	{family: harmless, name: "more described than used", does: "A tool nobody uses stands in a library", apply: moreTools},
	{family: harmless, name: "last step of words", does: "A step that puts the card back is put in at the end", apply: sweep},
}

// above puts lines before each table.
func above(text ...string) generator {
	return func(_ *folder, s *sheet) []damage {
		var out []damage
		for _, t := range s.tables {
			if t.kind != "" {
				out = append(out, s.with(fmt.Sprintf("%q stands above %s", text, t.call()), edit{t.from, t.from, text}))
			}
		}
		return out
	}
}

func returns(_ *folder, s *sheet) []damage {
	d := s.with("CR LF at the end of each line", edit{0, 1, s.lines[:1]})
	d.text = strings.ReplaceAll(d.text, "\n", "\r\n")
	return []damage{d}
}

func keysSwapped(_ *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.tables {
		for i := 1; i < len(t.entries); i++ {
			a, b := t.entries[i-1], t.entries[i]
			if a.to == b.from {
				text := append(slices.Clone(s.lines[b.from:b.to]), s.lines[a.from:a.to]...)
				out = append(out, s.with(fmt.Sprintf("%s: %s stands before %s", t.call(), b.key, a.key), edit{a.from, b.to, text}))
			}
		}
	}
	return out
}

func list(items []string, between string) string {
	return `["` + strings.Join(items, `",`+between+`"`) + `"]`
}

func reversed(value string) (string, bool) {
	items := texts(value)
	slices.Reverse(items)
	return list(items, " "), len(items) > 1
}

func spreadOut(value string) (string, bool) {
	items := texts(value)
	return "[\n  \"" + strings.Join(items, "\",\n  \"") + "\",\n]", len(items) > 1
}

func bracketless(value string) (string, bool) {
	items := texts(value)
	return `"` + strings.Join(items, "") + `"`, len(items) == 1 && strings.HasPrefix(value, "[")
}

func same1000(large, small string) func(string) (string, bool) {
	return func(value string) (string, bool) {
		if !strings.Contains(value, large+`"`) {
			return value, false
		}
		return strings.Replace(scaled(value, 1000), large, small, 1), true
	}
}

func tablesSwapped(_ *folder, s *sheet) []damage {
	var out []damage
	for i := 1; i < len(s.tables); i++ {
		a, b := s.tables[i-1], s.tables[i]
		if a.name != "" && b.name != "" {
			out = append(out, s.swap(a, b))
		}
	}
	return out
}

func swapNext(verb string) generator {
	return func(_ *folder, s *sheet) []damage {
		var out []damage
		steps := s.steps()
		for i := 1; i < len(steps); i++ {
			if steps[i-1].does(verb) && steps[i].does(verb) {
				out = append(out, s.swap(steps[i-1], steps[i]))
			}
		}
		return out
	}
}

func putIn(key, value string, kinds ...string) generator {
	return func(_ *folder, s *sheet) []damage {
		var out []damage
		for _, t := range s.tables {
			if _, has := t.entry(key); !has && slices.Contains(kinds, t.kind) {
				out = append(out, s.with(fmt.Sprintf("%s: %s = %s is put in", t.call(), key, value), edit{t.from + 1, t.from + 1, []string{key + " = " + value}}))
			}
		}
		return out
	}
}

func moreTools(_ *folder, s *sheet) []damage {
	if !strings.HasPrefix(s.path, "shop/") && !strings.HasPrefix(s.path, "machines/") {
		return nil
	}
	text := []string{"", "[tool.socket-55]", `kind = "socket"`, `sizes = "55 mm"`, `drive = "1"`, ""}
	return []damage{s.with("[tool.socket-55] is put in", edit{len(s.lines), len(s.lines), text})}
}

func sweep(_ *folder, s *sheet) []damage {
	steps := s.steps()
	if len(steps) == 0 {
		return nil
	}
	kind := steps[len(steps)-1].kind
	text := []string{"", "[[" + kind + "]]", `say = "Put the card back on its hook."`, ""}
	return []damage{s.with("a last step of words is put in", edit{len(s.lines), len(s.lines), text})}
}
