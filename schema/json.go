package schema

import (
	"encoding/json"
	"strings"
)

// node is a JSON Schema (draft 2020-12); the fields stand in the order they are written.
type node struct {
	Schema      string           `json:"$schema,omitempty"`
	Title       string           `json:"title,omitempty"`
	Description string           `json:"description,omitempty"`
	Ref         string           `json:"$ref,omitempty"`
	Type        string           `json:"type,omitempty"`
	Format      string           `json:"format,omitempty"`
	Pattern     string           `json:"pattern,omitempty"`
	Enum        []string         `json:"enum,omitempty"`
	Minimum     *int             `json:"minimum,omitempty"`
	Maximum     *int             `json:"maximum,omitempty"`
	MinItems    *int             `json:"minItems,omitempty"`
	MaxItems    *int             `json:"maxItems,omitempty"`
	MinLength   *int             `json:"minLength,omitempty"`
	OneOf       []*node          `json:"oneOf,omitempty"`
	Items       *node            `json:"items,omitempty"`
	Required    []string         `json:"required,omitempty"`
	Properties  map[string]*node `json:"properties,omitempty"`
	Names       *node            `json:"propertyNames,omitempty"`
	Additional  any              `json:"additionalProperties,omitempty"`
	Defs        map[string]*node `json:"$defs,omitempty"`
}

// JSON writes the language as a JSON Schema of draft 2020-12, for editors that
// know TOML but not this compiler. Amounts and names are strings to it.
func JSON() ([]byte, error) {
	root := tableNode(fileTable)
	root.Schema = "https://json-schema.org/draft/2020-12/schema"
	root.Title = "benchleaf, language version 1"
	root.Defs = map[string]*node{}
	for _, table := range Tables()[1:] {
		root.Defs[table.Name] = tableNode(table)
		partial := tableNode(table)
		partial.Required = nil
		root.Defs[table.Name+"-variant"] = partial
	}
	text, err := json.MarshalIndent(root, "", "  ")
	return append(text, '\n'), err
}

func tableNode(table Table) *node {
	out := &node{Type: "object", Description: table.Doc, Properties: map[string]*node{}, Additional: false}
	for _, key := range table.Keys {
		out.Properties[key.Name] = keyNode(key)
		if key.Required {
			out.Required = append(out.Required, key.Name)
		}
	}
	return out
}

func number(n int) *int { return &n }

func text() *node { return &node{Type: "string", MinLength: number(1)} }

func list(items *node) *node { return &node{Type: "array", Items: items} }

func oneOrMany(item *node) *node { return &node{OneOf: []*node{item, list(item)}} }

func reference(name string) *node { return &node{Ref: "#/$defs/" + name} }

func words(options []Option) *node {
	out := &node{Type: "string"}
	for _, option := range options {
		out.Enum = append(out.Enum, option.Word)
	}
	return out
}

// numbers is a list of so many numbers.
func numbers(count int) *node {
	return &node{Type: "array", Items: &node{Type: "number"}, MinItems: number(count), MaxItems: number(count)}
}

func keyNode(key Key) *node {
	out := kindNode(key)
	out.Description = key.Doc
	return out
}

func kindNode(key Key) *node {
	if strings.Contains(key.Of, "number") { // a bare number counts pieces
		item := &node{OneOf: []*node{text(), {Type: "integer", Minimum: number(0)}}}
		if key.Kind == Amounts {
			return oneOrMany(item)
		}
		return item
	}
	switch key.Kind {
	case Texts:
		return list(text())
	case Names, Amounts:
		return oneOrMany(text())
	case Whole:
		out := &node{Type: "integer", Minimum: number(1)}
		if key.Name == "benchleaf" {
			out.Maximum = number(Version)
		}
		return out
	case Wholes:
		return list(&node{Type: "integer", Minimum: number(1)})
	case Flag:
		return &node{Type: "boolean"}
	case Day:
		return &node{Type: "string", Pattern: `^\d{4}-\d{2}-\d{2}$`}
	case Choice:
		return words(key.Choices)
	case Choices:
		return list(words(key.Choices))
	case Point:
		return numbers(2)
	case Points:
		return list(numbers(2))
	case Lines:
		return list(list(numbers(2)))
	case Rounds:
		return list(numbers(3))
	case Sub:
		return reference(key.Of)
	case Subs:
		return list(reference(key.Of))
	case Named:
		return &node{Type: "object", Names: &node{Pattern: NamePattern}, Additional: reference(key.Of)}
	case Quantity:
		return &node{Type: "object", Additional: &node{OneOf: []*node{{Type: "integer", Minimum: number(1)}, text()}}}
	case Overrides:
		return &node{Type: "object", Additional: reference(key.Of + "-variant")}
	case Again:
		of, _ := fileTable.Key(key.Name)
		of.Of += "-variant"
		return kindNode(of)
	default:
		return text()
	}
}

// NamePattern is what a short name looks like.
const NamePattern = `^[a-z0-9]+(-[a-z0-9]+)*$`
