package compiler_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"benchleaf/schema"
)

// languageFaults are slips of the pen: the wrong word, the wrong kind of value, a mark left out.
var languageFaults = []faultKind{
	{name: "name misspelt in a list of the procedure", family: "language", does: "A letter is left out of a name", apply: eachText(in("procedure"), schema.Name, schema.Names)},
	{name: "name misspelt at a key of a step", family: "language", does: "A letter is left out of a name", apply: eachText(inStep, schema.Name, schema.Names)},
	{name: "name misspelt at a verb", family: "language", does: "A letter is left out of a name", apply: misspeltObject},
	{name: "name misspelt in a machine", family: "language", does: "A letter is left out of a name", apply: eachText(in("part", "cover", "cavity", "energy", "pose", "point", "limit"), schema.Name, schema.Names)},
	{name: "name of a thing changed", family: "language", does: "A letter is left out in the header of what others name", apply: renamedThing},
	{name: "thing dropped", family: "language", does: "The table of what others name is left out", apply: droppedThing},
	{name: "key misspelt", family: "language", does: "A letter is left out of a key that is no verb", apply: misspeltKey(false)},
	{name: "verb misspelt", family: "language", does: "A letter is left out of a verb", apply: misspeltKey(true)},
	{name: "table misspelt", family: "language", does: "A letter is left out of the kind of a table", apply: misspeltTable},
	{name: "word of a choice misspelt", family: "language", does: "A letter is left out of a word of a list of words", apply: eachText(anywhere, schema.Choice, schema.Choices)},
	{name: "required key dropped", family: "language", does: "A key the language always wants is left out", apply: dropRequired},
	{name: "value emptied", family: "language", does: `A text is ""`, apply: eachEntry(anywhere, empty, schema.Text, schema.Words, schema.Name, schema.Amount)},
	{name: "range turned round", family: "language", does: "The larger figure stands first", apply: eachEntry(anywhere, turned, schema.Amount, schema.Amounts)},
	{name: "decimal comma", family: "language", does: "1.1 is written 1,1", apply: eachEntry(anywhere, comma, schema.Amount, schema.Amounts)},
	{name: "amount without quotes", family: "language", does: "The figure stands alone", apply: eachEntry(anywhere, figureOnly, schema.Amount)},
	{name: "number in quotes", family: "language", does: `4 is written "4"`, apply: eachEntry(anywhere, quoted, schema.Whole, schema.Flag)},
	{name: "whole number zero", family: "language", does: "A count is 0", apply: eachEntry(anywhere, func(string) (string, bool) { return "0", true }, schema.Whole)},
	{name: "unit misspelt", family: "language", does: "`mm` is written `mn`, `min` `mim`, `h` `hr`", apply: eachEntry(anywhere, replace(` mm"`, ` mn"`, ` min"`, ` mim"`, ` h"`, ` hrz"`, ` bar"`, ` bra"`), schema.Amount, schema.Amounts)},
	{name: "key twice", family: "language", does: "A key stands twice", syntax: true, apply: keyTwice},
	{name: "table twice", family: "language", does: "A table with its name stands twice", syntax: true, apply: tableTwice},
	{name: "two verbs in a step", family: "language", does: "The header between two steps is left out", syntax: true, apply: twoVerbs},
	{name: "step without a verb", family: "language", does: "The verb of a step without `say` is left out", apply: noVerb},
	{name: "use deleted", family: "language", does: "An entry of `use` is left out", apply: droppedUse},
	{name: "version dropped", family: "language", does: "`benchleaf = 1` is left out", apply: drop([]string{""}, []string{"benchleaf"}, func(_ *folder, d damage, _ table) damage {
		d.right = append(d.right, lines{d.path, 1, 1})
		return d
	})},
	{name: "day that does not exist", family: "language", does: "The day of a date is the 32nd", syntax: true, apply: eachEntry(anywhere, func(value string) (string, bool) { return value[:8] + "32", true }, schema.Day)},
	{name: "quote not closed", family: "language", does: "The closing quote of a text is left out", syntax: true, apply: mangled(`"$`, "")},
	{name: "bracket not closed", family: "language", does: "The closing bracket of a list is left out", syntax: true, apply: mangled(`^([a-z-]+ = \[.*)\]$`, "$1")},
	{name: "comma dropped", family: "language", does: "The first comma of a list is left out", syntax: true, apply: mangled(`(= \["[^"]*"),`, "$1")},
	{name: "equals sign dropped", family: "language", does: "The equals sign after a key is left out", syntax: true, apply: mangled(`^([a-z-]+) = `, "$1 ")},
	{name: "header not closed", family: "language", does: "The closing bracket of a header is left out", syntax: true, apply: mangled(`^(\[.*)\]$`, "$1")},
	{name: "quotes left out", family: "language", does: "A text stands without quotes", syntax: true, apply: mangled(`^([a-z-]+ = )"([^"]*)"$`, "$1$2")},
}

func in(kinds ...string) func(table) bool {
	return func(t table) bool { return slices.Contains(kinds, t.kind) }
}

func inStep(t table) bool { return slices.Contains(stepKinds, t.kind) }

func anywhere(table) bool { return true }

// schemaKey is what the language says of a key of a table.
func schemaKey(t table, name string) (schema.Key, bool) {
	kind := t.kind
	if inStep(t) {
		kind = "step"
	}
	for _, one := range schema.Tables() {
		if one.Name == kind || kind == "" && one.Header == "" {
			return one.Key(name)
		}
	}
	return schema.Key{}, false
}

// eachEntry changes the values of some kinds of keys.
func eachEntry(passes func(table) bool, to func(string) (string, bool), kinds ...schema.Kind) generator {
	return func(f *folder, s *sheet) []damage {
		var out []damage
		for _, t := range s.tables {
			for _, one := range t.entries {
				key, ok := schemaKey(t, one.key)
				if !ok || !passes(t) || !slices.Contains(kinds, key.Kind) {
					continue
				}
				if value, ok := to(one.value); ok && value != one.value {
					out = append(out, users(f, s.put(t, one, value), t))
				}
			}
		}
		return out
	}
}

// eachText misspells each text of the values of some kinds of keys; verbs have a kind of their own.
func eachText(passes func(table) bool, kinds ...schema.Kind) generator {
	return func(f *folder, s *sheet) []damage {
		var out []damage
		for _, t := range s.tables {
			for _, one := range t.entries {
				key, ok := schemaKey(t, one.key)
				_, verb := schema.FindVerb(one.key)
				if !ok || verb && inStep(t) || !passes(t) || !slices.Contains(kinds, key.Kind) {
					continue
				}
				for _, text := range texts(one.value) {
					d := s.put(t, one, strings.Replace(one.value, `"`+text+`"`, `"`+misspelt(text)+`"`, 1))
					d.words = fmt.Sprintf("%s: %q in %s is now %q", t.call(), text, one.key, misspelt(text))
					out = append(out, same(f, d, t))
				}
			}
		}
		return out
	}
}

func misspeltObject(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.steps() {
		verb, objects := t.verb()
		one, _ := t.entry(verb)
		for _, name := range objects {
			if strings.Contains(name, " ") || verb == "wait" {
				continue
			}
			d := s.put(t, one, strings.Replace(one.value, `"`+name+`"`, `"`+misspelt(name)+`"`, 1))
			out = append(out, d)
		}
	}
	return out
}

func misspeltKey(verbs bool) generator {
	return func(_ *folder, s *sheet) []damage {
		var out []damage
		for _, t := range s.tables {
			for _, one := range t.entries {
				if _, verb := schema.FindVerb(one.key); (verb && inStep(t)) != verbs || strings.Contains(one.key, ".") || len(one.key) < 3 {
					continue
				}
				text := slices.Clone(s.lines[one.from:one.to])
				text[0] = misspelt(one.key) + strings.TrimPrefix(text[0], one.key)
				out = append(out, s.with(fmt.Sprintf("%s: key %s is now %s", t.call(), one.key, misspelt(one.key)), edit{one.from, one.to, text}))
			}
		}
		return out
	}
}

func misspeltTable(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.tables {
		if t.kind != "" {
			header := strings.Replace(s.lines[t.from], t.kind, misspelt(t.kind), 1)
			out = append(out, users(f, s.with(s.lines[t.from]+" is now "+header, edit{t.from, t.from + 1, []string{header}}), t))
		}
	}
	return out
}

// things are the tables by name that others name. A shelf of the store has the name of what lies on it.
func things(f *folder, s *sheet) []table {
	return slices.DeleteFunc(slices.Clone(s.tables), func(t table) bool {
		return t.name == "" || t.kind == "store" || !slices.ContainsFunc(f.procedures(s.path), func(path string) bool { return strings.Contains(f.sheet(path).text(), `"`+t.name+`"`) })
	})
}

func renamedThing(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range onlyOne(f, things(f, s)) {
		header := strings.Replace(s.lines[t.from], "."+t.name+"]", "."+misspelt(t.name)+"]", 1)
		out = append(out, users(f, s.with(s.lines[t.from]+" is now "+header, edit{t.from, t.from + 1, []string{header}}), t))
	}
	return out
}

// onlyOne leaves out what another thing of its name can stand for: a part and the spare it is renewed by.
func onlyOne(f *folder, tables []table) []table {
	return slices.DeleteFunc(tables, func(t table) bool {
		count := 0
		for _, s := range f.sheets {
			for _, other := range s.tables {
				if other.name == t.name {
					count++
				}
			}
		}
		return t.kind == "part" && count > 1
	})
}

func droppedThing(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range onlyOne(f, things(f, s)) {
		out = append(out, users(f, s.with(s.lines[t.from]+" is gone", edit{t.from, t.to, nil}), t))
	}
	return out
}

func dropRequired(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.tables {
		for _, one := range t.entries {
			if key, ok := schemaKey(t, one.key); ok && key.Required && t.kind != "" {
				out = append(out, users(f, s.cut(t, one), t))
			}
		}
	}
	return out
}

func empty(string) (string, bool) { return `""`, true }

func quoted(value string) (string, bool) { return `"` + value + `"`, true }

func figureOnly(value string) (string, bool) {
	figure := figureForm.FindString(value)
	return figure, figure != ""
}

var (
	rangeForm   = regexp.MustCompile(`(\d+(?:\.\d+)?) to (\d+(?:\.\d+)?)`)
	decimalForm = regexp.MustCompile(`(\d)\.(\d)`)
)

func turned(value string) (string, bool) {
	return rangeForm.ReplaceAllString(value, "$2 to $1"), rangeForm.MatchString(value)
}

func comma(value string) (string, bool) {
	return decimalForm.ReplaceAllString(value, "$1,$2"), decimalForm.MatchString(value)
}
