package desk

import "benchleaf/schema"

// The language as the page's forms read it.
type (
	languageTold struct {
		Version int         `json:"version"`
		Tables  []tableTold `json:"tables"`
		Verbs   []verbTold  `json:"verbs"`
	}
	tableTold struct {
		Name   string    `json:"name"`
		Header string    `json:"header"`
		Doc    string    `json:"doc"`
		Keys   []keyTold `json:"keys"`
	}
	keyTold struct {
		Name     string       `json:"name"`
		Kind     string       `json:"kind"`
		Of       string       `json:"of,omitempty"`
		Required bool         `json:"required,omitempty"`
		Doc      string       `json:"doc"`
		Example  string       `json:"example,omitempty"`
		Choices  []optionTold `json:"choices,omitempty"`
	}
	optionTold struct {
		Word string `json:"word"`
		Doc  string `json:"doc"`
	}
	verbTold struct {
		Key    string   `json:"key"`
		Object string   `json:"object"`
		Takes  []string `json:"takes,omitempty"`
		Doc    string   `json:"doc"`
		Needs  string   `json:"needs,omitempty"`
		Makes  string   `json:"makes,omitempty"`
		Sample string   `json:"sample"`
	}
)

// kindNames are the names of the kinds of values that a form can ask for; what has none is
// written in the text.
var kindNames = map[schema.Kind]string{
	schema.Text: "text", schema.Words: "words", schema.Texts: "texts", schema.Name: "name", schema.Names: "names", schema.Amount: "amount",
	schema.Amounts: "amounts", schema.Whole: "whole", schema.Wholes: "wholes", schema.Flag: "flag", schema.Day: "day", schema.Choice: "choice",
	schema.Choices: "choices", schema.Quantity: "quantity",
}

// language tells the language out of its one table.
func language() languageTold {
	out := languageTold{Version: schema.Version}
	for _, table := range schema.Tables() {
		told := tableTold{Name: table.Name, Header: table.Header, Doc: table.Doc}
		for _, key := range table.Keys {
			one := keyTold{Name: key.Name, Kind: kindNames[key.Kind], Of: key.Of, Required: key.Required, Doc: key.Doc, Example: key.Example}
			for _, choice := range key.Choices {
				one.Choices = append(one.Choices, optionTold(choice))
			}
			told.Keys = append(told.Keys, one)
		}
		out.Tables = append(out.Tables, told)
	}
	for _, verb := range schema.Verbs() {
		out.Verbs = append(out.Verbs, verbTold(verb))
	}
	return out
}
