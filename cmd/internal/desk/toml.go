package desk

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"benchleaf/schema"
)

// filled is a form as it was filled in.
type filled struct {
	Table  string         `json:"table"`  // procedure, machine, step, part …
	Header string         `json:"header"` // prepare, step or close; or the short name of a thing
	Values map[string]any `json:"values"`
	Text   string         `json:"text"`  // of the file it goes into; empty for a new one
	Line   int            `json:"line"`  // of the step that a step goes behind, from 0
	First  bool           `json:"first"` // a step goes before all others of its section
}

// placed is a piece of text and the line, from 0, before which it goes.
type placed struct {
	Line int    `json:"line"`
	Text string `json:"text"`
}

var shortName = regexp.MustCompile(schema.NamePattern)

// written writes a filled form as TOML in the order of the language, and says where in the
// file it goes. A new file begins with the version of the language.
func written(form filled) (placed, error) {
	table, known := schema.Find(form.Table)
	if !known {
		return placed{}, faultOf(422, "there is no table %q", form.Table)
	}
	header := ""
	switch {
	case form.Table == "step":
		if !slices.Contains(sections, form.Header) {
			return placed{}, faultOf(422, "a step stands in prepare, step or close, not in %q", form.Header)
		}
		header = "[[" + form.Header + "]]"
	case table.Header == "["+form.Table+"]":
		header = table.Header
	case table.Header == "["+form.Table+".NAME]":
		if !shortName.MatchString(form.Header) {
			return placed{}, faultOf(422, "%q is not a short name; write it in lower case letters and figures, words joined by hyphens", form.Header)
		}
		header = "[" + form.Table + "." + form.Header + "]"
		if line := lineOf(form.Text, form.Table, form.Header); line > 0 {
			return placed{}, faultOf(422, "there is a %s already, at line %d; give this one another short name", header, line)
		}
	default:
		return placed{}, faultOf(422, "%s is written in the text", table.Header)
	}
	if form.Table == "step" && !slices.ContainsFunc(schema.Verbs(), func(verb schema.Verb) bool { return form.Values[verb.Key] != nil }) && form.Values["say"] == nil {
		return placed{}, faultOf(422, "a step says what is done: choose what, or write it in words")
	}
	var out strings.Builder
	out.WriteString(header + "\n")
	known2 := map[string]bool{}
	for _, key := range inOrder(table) {
		known2[key.Name] = true
		value, given := form.Values[key.Name]
		if !given {
			continue
		}
		text, err := valueOf(key, value)
		if err != nil {
			return placed{}, err
		}
		if line := key.Name + " = " + text; utf8.RuneCountInString(line) > 120 && strings.HasPrefix(text, "[") {
			out.WriteString(broken(key.Name, value))
		} else {
			out.WriteString(line + "\n")
		}
	}
	for name := range form.Values {
		if !known2[name] {
			return placed{}, faultOf(422, "%s has no key %q", table.Header, name)
		}
	}
	if strings.TrimSpace(form.Text) == "" {
		return placed{0, fmt.Sprintf("benchleaf = %d\n\n%s", schema.Version, out.String())}, nil
	}
	if form.Table == "step" {
		return stepPlace(form.Text, form.Header, form.Line, form.First, out.String()), nil
	}
	return endPlace(form.Text, out.String()), nil
}

// inOrder lists the keys of a table as they are written: of a step the stage first, then
// what is done, then the rest.
func inOrder(table schema.Table) []schema.Key {
	keys := slices.Clone(table.Keys)
	if table.Name == "step" {
		first := func(key schema.Key) int {
			if key.Name == "stage" {
				return 0
			}
			return 1
		}
		slices.SortStableFunc(keys, func(a, b schema.Key) int { return first(a) - first(b) })
	}
	return keys
}

func valueOf(key schema.Key, value any) (string, error) {
	wrong := faultOf(422, "%s wants another value, such as %s", key.Name, key.Example)
	switch value := value.(type) {
	case string:
		if key.Kind == schema.Day {
			if !day.MatchString(value) {
				return "", wrong
			}
			return value, nil
		}
		if key.Kind == schema.Whole || key.Kind == schema.Flag || key.Kind == schema.Wholes || key.Kind == schema.Quantity {
			return "", wrong
		}
		return quoted(value, key.Kind == schema.Words), nil
	case bool:
		if key.Kind != schema.Flag {
			return "", wrong
		}
		return strconv.FormatBool(value), nil
	case float64:
		if value != float64(int(value)) || key.Kind != schema.Whole && key.Kind != schema.Wholes {
			return "", wrong
		}
		return strconv.Itoa(int(value)), nil
	case []any:
		var items []string
		for _, item := range value {
			text, err := valueOf(key, item)
			if err != nil {
				return "", err
			}
			items = append(items, text)
		}
		return "[" + strings.Join(items, ", ") + "]", nil
	case map[string]any:
		if key.Kind != schema.Quantity {
			return "", wrong
		}
		var items []string
		for _, name := range sortedKeys(value) {
			text := ""
			switch amount := value[name].(type) {
			case float64:
				text = strconv.FormatFloat(amount, 'f', -1, 64)
			case string:
				text = quoted(amount, false)
			default:
				return "", wrong
			}
			if !shortName.MatchString(name) {
				name = quoted(name, false)
			}
			items = append(items, name+" = "+text)
		}
		return "{ " + strings.Join(items, ", ") + " }", nil
	}
	return "", wrong
}

var day = regexp.MustCompile(`^\d{4}-\d\d-\d\d$`)

func sortedKeys(table map[string]any) []string {
	var names []string
	for name := range table {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// broken writes a long list over several lines.
func broken(name string, value any) string {
	var out strings.Builder
	out.WriteString(name + " = [\n")
	for _, item := range value.([]any) {
		text, _ := item.(string)
		out.WriteString("  " + quoted(text, false) + ",\n")
	}
	out.WriteString("]\n")
	return out.String()
}

// quoted writes a basic string of TOML 1.0; one of several lines only where it may be.
func quoted(text string, lines bool) string {
	several := lines && strings.Contains(text, "\n")
	var out strings.Builder
	for _, r := range text {
		switch {
		case r == '"' || r == '\\':
			out.WriteString(`\` + string(r))
		case r == '\n' && several:
			out.WriteRune(r)
		case r == '\n':
			out.WriteString(`\n`)
		case r == '\t':
			out.WriteString(`\t`)
		case r < 0x20 || r == 0x7f:
			fmt.Fprintf(&out, `\u%04x`, r)
		default:
			out.WriteRune(r)
		}
	}
	if several {
		return "\"\"\"\n" + out.String() + "\"\"\""
	}
	return `"` + out.String() + `"`
}

var sections = []string{"prepare", "step", "close"}

// block is a table of a text with its lines, from 0, the last one not with it.
type block struct {
	section  string // prepare, step or close; empty for another table
	from, to int    // to stands behind the last line that says something
	head     int    // from, or the first of the comment lines that stand right above it
}

var (
	stepHeader  = regexp.MustCompile(`^\s*\[\[\s*(prepare|step|close)\s*\]\]\s*(?:#.*)?$`)
	stepInner   = regexp.MustCompile(`^\s*\[{1,2}\s*(?:prepare|step|close)\s*\.`)
	otherHeader = regexp.MustCompile(`^\s*\[{1,2}\s*[A-Za-z"'][^=]*\]{1,2}\s*(?:#.*)?$`)
)

// blocks finds the tables of a text by their headers, those within a step with the step.
func blocks(lines []string) []block {
	var out []block
	inside := "" // the quotes of a text over several lines that is open
	for i, line := range lines {
		header := false
		if inside == "" {
			if match := stepHeader.FindStringSubmatch(line); match != nil {
				out, header = append(out, block{match[1], i, i + 1, comment(lines, i)}), true
			} else if otherHeader.MatchString(line) && !stepInner.MatchString(line) {
				out, header = append(out, block{"", i, i + 1, comment(lines, i)}), true
			}
		}
		if trimmed := strings.TrimSpace(line); !header && len(out) > 0 && trimmed != "" && (inside != "" || !strings.HasPrefix(trimmed, "#")) {
			out[len(out)-1].to = i + 1
		}
		for _, quotes := range []string{`"""`, `'''`} {
			if strings.Count(line, quotes)%2 == 1 && (inside == "" || inside == quotes) {
				if inside == "" {
					inside = quotes
				} else {
					inside = ""
				}
				break
			}
		}
	}
	return out
}

// comment is the first of the comment lines that stand right above a line, or the line itself.
func comment(lines []string, at int) int {
	for at > 0 && strings.HasPrefix(strings.TrimSpace(lines[at-1]), "#") {
		at--
	}
	return at
}

// blockAt is which of the blocks a line stands in; -1 where it stands before all of them.
func blockAt(all []block, line int) int {
	for i := len(all) - 1; i >= 0; i-- {
		if all[i].head <= line {
			return i
		}
	}
	return -1
}

// standing asks which steps a text has, and which of them the cursor is in.
type standing struct {
	Text string `json:"text"`
	Line int    `json:"line"` // where the cursor is, from 0
}

// stepsTold are the steps of a text in its order. Section is the one that somebody at the cursor
// is in; Here is the line of the step that the cursor is in, -1 where it is in none.
type stepsTold struct {
	Section string       `json:"section"`
	Here    int          `json:"here"`
	Steps   []headerTold `json:"steps"`
}

// headerTold is a step by its section, the line of its header, from 0, and what it says is done.
type headerTold struct {
	Section string `json:"section"`
	Line    int    `json:"line"`
	Words   string `json:"words"`
}

// steps finds the steps. Before the first one somebody is in the work, and in a text without
// steps where the machine is made safe.
func (s standing) steps() stepsTold {
	lines := strings.Split(s.Text, "\n")
	all := blocks(lines)
	out := stepsTold{Here: -1, Steps: []headerTold{}}
	here := blockAt(all, s.Line)
	for i, one := range all {
		if one.section == "" {
			continue
		}
		out.Steps = append(out.Steps, headerTold{one.section, one.from, done(lines[one.from:one.to])})
		if i <= here {
			out.Section = one.section
		}
		if i == here {
			out.Here = one.from
		}
	}
	if out.Section == "" && len(out.Steps) == 0 {
		out.Section = "prepare"
	} else if out.Section == "" {
		out.Section = "step"
	}
	return out
}

// done is the line of a step that says what is done.
func done(step []string) string {
	for _, line := range step {
		key, _, _ := strings.Cut(line, "=")
		key = strings.TrimSpace(key)
		if key == "say" || slices.ContainsFunc(schema.Verbs(), func(verb schema.Verb) bool { return verb.Key == key }) {
			return strings.TrimSpace(line)
		}
	}
	return ""
}

// lineOf is the line, from 1, of the table that describes a thing in a text; 0 where there is none.
func lineOf(text, table, name string) int {
	header := regexp.MustCompile(`^\s*\[\s*` + table + `\s*\.\s*["']?` + regexp.QuoteMeta(name) + `["']?\s*\]`)
	lines := strings.Split(text, "\n")
	for _, one := range blocks(lines) {
		if header.MatchString(lines[one.from]) {
			return one.from + 1
		}
	}
	return 0
}

// stepPlace puts a step behind the one that a line is in, where it is of the same section; or
// else behind the last of its section, or of those before it. The first stands before all others
// of its section.
func stepPlace(text, section string, line int, first bool, step string) placed {
	lines := strings.Split(text, "\n")
	all := blocks(lines)
	at, here, rank := -1, blockAt(all, line), slices.Index(sections, section)
	if head := slices.IndexFunc(all, func(one block) bool { return one.section == section }); first && head >= 0 {
		return placed{all[head].head, step + "\n"}
	}
	if here >= 0 && all[here].section == section {
		at = all[here].to
	}
	for before := rank; at < 0 && before >= 0; before-- {
		for _, one := range all {
			if one.section == sections[before] {
				at = one.to
			}
		}
	}
	if at < 0 { // the first one: before the steps behind it, or before what is described
		for i, one := range all {
			if one.section != "" {
				return placed{one.head, step + "\n"}
			}
			if header := strings.TrimSpace(lines[one.from]); at < 0 && strings.HasPrefix(header, "[procedure]") {
				at = one.to
				for _, inner := range all[i+1:] {
					if !strings.HasPrefix(strings.TrimLeft(strings.TrimSpace(lines[inner.from]), "["), "procedure.") {
						break
					}
					at = inner.to
				}
			}
		}
	}
	if at < 0 {
		return endPlace(text, step)
	}
	if at >= len(lines) { // the last line has no end
		return placed{at, "\n\n" + step}
	}
	return placed{at, "\n" + step}
}

// endPlace puts a table at the end of a text, behind an empty line.
func endPlace(text, table string) placed {
	line := strings.Count(text, "\n")
	switch {
	case strings.HasSuffix(text, "\n\n"):
		return placed{line, table}
	case strings.HasSuffix(text, "\n"):
		return placed{line, "\n" + table}
	}
	return placed{line + 1, "\n\n" + table}
}
