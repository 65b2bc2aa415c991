package desk

import (
	"regexp"
	"slices"
	"strings"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// completion is one way to go on at a place of a text.
type completion struct {
	Label, Detail, Doc, Insert, Kind string
	Replace                          source.Place
}

// assistant knows how a text may go on, and what a word of it means.
type assistant interface {
	Complete(result *compiler.Result, path string, offset int) []completion
	Hover(result *compiler.Result, path string, offset int) (place source.Place, text string, ok bool)
}

// bySchema goes by the table of the language and by the names that a file can see.
type bySchema struct{}

var (
	anyHeader = regexp.MustCompile(`^\s*\[{1,2}\s*([A-Za-z0-9_-]+)(?:\.([A-Za-z0-9_-]+))?`)
	keyOfLine = regexp.MustCompile(`^\s*([A-Za-z0-9_-]+)\s*=`)
	wordPart  = regexp.MustCompile(`[A-Za-z0-9_-]*$`)
)

// tableAt finds the table of the language that a line stands in, and the keys it has above
// and below it.
func tableAt(lines []string, line int) (schema.Table, []string) {
	header := -1
	name := "file"
	for i := line; i >= 0 && header < 0; i-- {
		if match := anyHeader.FindStringSubmatch(lines[i]); match != nil {
			header, name = i, match[1]
			if slices.Contains(sections, name) {
				name = "step"
				if match[2] != "" {
					step, _ := schema.Find("step")
					if key, found := step.Key(match[2]); found && (key.Kind == schema.Sub || key.Kind == schema.Subs) {
						name = key.Of
					}
				}
			}
		}
	}
	table, _ := schema.Find(name)
	var there []string
	for i := header + 1; i < len(lines); i++ {
		if anyHeader.MatchString(lines[i]) {
			break
		}
		if match := keyOfLine.FindStringSubmatch(lines[i]); match != nil && i != line {
			there = append(there, match[1])
		}
	}
	return table, there
}

func (bySchema) Complete(result *compiler.Result, path string, offset int) []completion {
	file := result.Text(path)
	if file == nil {
		return nil
	}
	text := string(file.Text)
	lines := strings.Split(text, "\n")
	line := strings.Count(text[:offset], "\n")
	before := text[strings.LastIndexByte(text[:offset], '\n')+1 : offset]
	word := wordPart.FindString(before)
	replace := source.Place{File: file, Span: source.Span{Start: offset - len(word), End: offset}}
	table, there := tableAt(lines, line)
	if match := keyOfLine.FindStringSubmatch(before); match != nil {
		key, found := table.Key(match[1])
		if !found {
			return nil
		}
		return values(result, path, key, before, replace)
	}
	if strings.ContainsAny(before, `"'#`) {
		return nil
	}
	if trimmed := strings.TrimLeft(before, " \t"); strings.HasPrefix(trimmed, "[") {
		return headers(before, replace)
	}
	var out []completion
	for _, key := range table.Keys {
		if slices.Contains(there, key.Name) || kindNames[key.Kind] == "" && key.Kind != schema.Sub {
			continue
		}
		kind := "key"
		if _, verb := schema.FindVerb(key.Name); verb && table.Name == "step" {
			kind = "verb"
		}
		insert := key.Name + " = "
		switch key.Kind {
		case schema.Text, schema.Words, schema.Name, schema.Amount, schema.Choice:
			insert += `"${}"`
		case schema.Texts, schema.Choices:
			insert += `["${}"]`
		case schema.Names:
			insert += `"${}"`
		default:
			insert += "${}"
		}
		out = append(out, completion{Label: key.Name, Detail: key.Example, Doc: docOf(table, key), Insert: insert, Kind: kind, Replace: replace})
	}
	return out
}

// docOf is what is said of a key: of a verb what it needs and makes true, too.
func docOf(table schema.Table, key schema.Key) string {
	doc := key.Doc
	if verb, known := schema.FindVerb(key.Name); known && table.Name == "step" {
		if verb.Needs != "" {
			doc += " Needs: " + verb.Needs + "."
		}
		if verb.Makes != "" {
			doc += " Makes: " + verb.Makes + "."
		}
	}
	return doc
}

func headers(before string, replace source.Place) []completion {
	start := strings.Index(before, "[")
	replace.Span.Start = replace.Span.End - len(before[start:])
	var out []completion
	for _, table := range schema.Tables() {
		for header := range strings.SplitSeq(table.Header, ", ") {
			if strings.HasPrefix(header, "[") && strings.HasSuffix(header, "]") {
				out = append(out, completion{Label: header, Doc: table.Doc, Insert: strings.Replace(header, "NAME", "${name}", 1) + "\n", Kind: "table", Replace: replace})
			}
		}
	}
	return out
}

func values(result *compiler.Result, path string, key schema.Key, before string, replace source.Place) []completion {
	quote := strings.Count(before, `"`)%2 == 1
	insert := func(word string) string {
		if quote {
			return word
		}
		return `"` + word + `"`
	}
	var out []completion
	for _, choice := range key.Choices {
		out = append(out, completion{Label: choice.Word, Detail: choice.Doc, Insert: insert(choice.Word), Kind: "word", Replace: replace})
	}
	switch key.Kind {
	case schema.Name, schema.Names:
		kinds := strings.Fields(key.Of)
		for _, named := range result.Names(path) {
			if slices.Contains(kinds, named.Kind) {
				out = append(out, completion{Label: named.Name, Detail: named.Words, Doc: named.Kind, Insert: insert(named.Name), Kind: "name", Replace: replace})
			}
		}
	case schema.Flag:
		out = append(out, completion{Label: "true", Insert: "true", Kind: "word", Replace: replace})
	}
	return out
}

func (bySchema) Hover(result *compiler.Result, path string, offset int) (source.Place, string, bool) {
	file := result.Text(path)
	if file == nil {
		return source.Place{}, "", false
	}
	text := string(file.Text)
	lines := strings.Split(text, "\n")
	line := strings.Count(text[:offset], "\n")
	start := strings.LastIndexByte(text[:offset], '\n') + 1
	table, _ := tableAt(lines, line)
	if span := keyOfLine.FindStringSubmatchIndex(lines[line]); span != nil {
		key, found := table.Key(lines[line][span[2]:span[3]])
		if found && offset-start >= span[2] && offset-start <= span[3] {
			return source.Place{File: file, Span: source.Span{Start: start + span[2], End: start + span[3]}}, docOf(table, key), true
		}
	}
	for _, named := range result.Names(path) {
		quoted := `"` + named.Name + `"`
		for at := strings.Index(lines[line], quoted); at >= 0; {
			if offset-start >= at && offset-start <= at+len(quoted) {
				return source.Place{File: file, Span: source.Span{Start: start + at, End: start + at + len(quoted)}}, named.Kind + ": " + named.Words, true
			}
			next := strings.Index(lines[line][at+1:], quoted)
			if next < 0 {
				break
			}
			at += 1 + next
		}
	}
	return source.Place{}, "", false
}
