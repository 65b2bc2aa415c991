package schema

import (
	"fmt"
	"strings"
)

// Reference writes the language as a page in Markdown, from the same table the
// compiler reads with.
func Reference() string {
	var b strings.Builder
	fmt.Fprintf(&b, "# The language, version %d\n\n", Version)
	b.WriteString("This page is written from the table in `schema/`; `go test ./schema -update` renews it.\n\n")
	b.WriteString("A key marked • is always needed. Names are short, in lower case, with hyphens; where a name is asked for, spaces do as well as hyphens. Amounts are written as the trade writes them: `\"35 to 40 N·m\"`, `\"0.85 L\"`, `\"max 0.5 mm\"`, `\"1-3/16 in\"`, `\"20 min\"`.\n\n")
	for _, table := range Tables() {
		writeTable(&b, table)
	}
	return b.String()
}

func writeTable(b *strings.Builder, table Table) {
	fmt.Fprintf(b, "## %s\n\n%s\n\n", code(table.Header), table.Doc)
	if table.Example != "" {
		fmt.Fprintf(b, "```toml\n%s\n```\n\n", table.Example)
	}
	if table.Name == "step" {
		writeVerbs(b)
	}
	b.WriteString("| key | holds | meaning | example |\n|---|---|---|---|\n")
	for _, key := range table.Keys {
		if _, verb := FindVerb(key.Name); verb && table.Name == "step" {
			continue
		}
		mark := ""
		if key.Required {
			mark = " •"
		}
		fmt.Fprintf(b, "| `%s`%s | %s | %s | %s |\n", key.Name, mark, cell(key.holds()), cell(key.Doc), cell(code(key.Example)))
	}
	b.WriteString("\n")
	for _, key := range table.Keys {
		if len(key.Choices) == 0 || repeated(table, key) {
			continue
		}
		fmt.Fprintf(b, "`%s` is one of:\n\n", key.Name)
		for _, option := range key.Choices {
			fmt.Fprintf(b, "- `%s`: %s\n", option.Word, option.Doc)
		}
		b.WriteString("\n")
	}
}

// repeated keeps the long lists that stand on many tables to the first of them.
func repeated(table Table, key Key) bool {
	for _, earlier := range Tables() {
		if earlier.Name == table.Name {
			return false
		}
		for _, other := range earlier.Keys {
			if len(other.Choices) > 0 && &other.Choices[0] == &key.Choices[0] {
				return true
			}
		}
	}
	return false
}

func writeVerbs(b *strings.Builder) {
	b.WriteString("### The verbs\n\n| verb | its object | meaning | needs | makes | takes |\n|---|---|---|---|---|---|\n")
	for _, verb := range Verbs() {
		fmt.Fprintf(b, "| `%s = %s` | %s | %s | %s | %s | %s |\n", verb.Key, cell(verb.Sample), strings.ReplaceAll(verb.Object, " ", ", "),
			cell(verb.Doc), cell(verb.Needs), cell(verb.Makes), codes(verb.Takes))
	}
	b.WriteString("\nWhere the object may be words, a name that is described somewhere is taken as that thing; words with a space in them stand as they are. The cuts `part`, `cover`, `cavity` … are the tables below.\n\n### The other keys of a step\n\n")
}

func (key Key) holds() string {
	of := strings.ReplaceAll(key.Of, " ", " or ")
	switch key.Kind {
	case Text:
		return "text"
	case Words:
		return "text, CommonMark"
	case Texts:
		return "list of texts"
	case Name:
		return "name of a " + of
	case Names:
		return "name or names of a " + of
	case Amount:
		return "amount: " + of
	case Amounts:
		return "amount or amounts: " + of
	case Whole:
		return "whole number from 1"
	case Wholes:
		return "list of whole numbers"
	case Flag:
		return "true or false"
	case Day:
		return "date, YYYY-MM-DD"
	case Choice:
		return "one word"
	case Choices:
		return "list of words"
	case Point:
		return "two numbers"
	case Points:
		return "list of points"
	case Lines:
		return "list of lists of points"
	case Rounds:
		return "list of three numbers"
	case Sub:
		return "table"
	case Subs:
		return "list of tables"
	case Named:
		return "tables by name"
	case Again:
		return "as in the file, any of the keys"
	case Quantity:
		return "how many or how much of each " + of
	default:
		return "keys of this table, by variant"
	}
}

func code(text string) string {
	if text == "" {
		return ""
	}
	return "`" + text + "`"
}

func codes(words []string) string {
	out := make([]string, len(words))
	for i, word := range words {
		out[i] = code(word)
	}
	return strings.Join(out, ", ")
}

func cell(text string) string { return strings.ReplaceAll(text, "|", "\\|") }
