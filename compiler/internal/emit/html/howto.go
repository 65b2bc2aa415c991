package html

import (
	"strings"

	"benchleaf/compiler/internal/plan"
)

// thing is a thing of the vocabulary of schema.org, for programs that read the page.
type thing struct {
	Context  string  `json:"@context,omitempty"`
	Type     string  `json:"@type"`
	Name     string  `json:"name,omitempty"`
	About    string  `json:"description,omitempty"`
	Language string  `json:"inLanguage,omitempty"`
	Version  string  `json:"version,omitempty"`
	Modified string  `json:"dateModified,omitempty"`
	Author   *thing  `json:"author,omitempty"`
	Quantity string  `json:"requiredQuantity,omitempty"`
	Position int     `json:"position,omitempty"`
	Text     string  `json:"text,omitempty"`
	Tools    []thing `json:"tool,omitempty"`
	Supplies []thing `json:"supply,omitempty"`
	Steps    []thing `json:"step,omitempty"`
	Items    []thing `json:"itemListElement,omitempty"`
}

// howTo tells a card as a HowTo: each section with its steps, and before the direction of
// a step its safety messages.
func howTo(card plan.Card) thing {
	out := thing{Context: "https://schema.org", Type: "HowTo", Name: joined(card.Title, card.Machine, card.Variant), About: said(card.Summary),
		Language: card.Words.Language, Version: card.Revision, Modified: card.Date}
	if card.Author != "" {
		out.Author = &thing{Type: "Person", Name: card.Author}
	}
	for _, tool := range card.Tools {
		out.Tools = append(out.Tools, thing{Type: "HowToTool", Name: tool.Name, Quantity: tool.Quantity})
	}
	for _, list := range [][]plan.Item{card.Supplies, card.Spares} {
		for _, supply := range list {
			out.Supplies = append(out.Supplies, thing{Type: "HowToSupply", Name: supply.Name, Quantity: supply.Quantity})
		}
	}
	for i, section := range card.Sections {
		part := thing{Type: "HowToSection", Name: section.Title, Position: i + 1}
		for _, step := range section.Steps {
			part.Items = append(part.Items, stepThing(step))
		}
		out.Steps = append(out.Steps, part)
	}
	return out
}

func stepThing(step plan.Step) thing {
	out := thing{Type: "HowToStep", Position: step.Number}
	for _, caution := range plan.WorstFirst(step.Cautions) {
		out.Items = append(out.Items, thing{Type: "HowToTip", Text: caution.Word + ": " + sentences(caution.Hazard+".", caution.Consequence, caution.Avoid)})
	}
	words := []string{said(step.Action)}
	for _, block := range step.Say {
		words = append(words, said(block.Runs))
	}
	for _, value := range step.Values {
		words = append(words, value.Label+": "+value.Text+".")
	}
	out.Items = append(out.Items, thing{Type: "HowToDirection", Text: sentences(words...)})
	return out
}

func said(runs []plan.Run) string {
	var out strings.Builder
	for _, run := range runs {
		out.WriteString(run.Text)
	}
	return out.String()
}

func sentences(texts ...string) string { return strings.TrimSpace(strings.Join(texts, " ")) }
