package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

// circuits are words that say which fluid runs in a thing; renewing one of its parts lets
// air in. What returns to an open tank, or filters air, lets none in that matters. Common
// practice, no source.
var (
	circuits  = [][]string{{"fuel", "diesel", "injection", "injector"}, {"brake", "calliper", "caliper", "wheel cylinder"}, {"clutch"}, {"hydraulic", "lift circuit"}, {"cooling", "coolant", "radiator"}, {"steering"}}
	renewable = []string{"filter", "hose", "pump", "calliper", "caliper", "cylinder", "line", "pipe", "injector", "separator", "cartridge", "radiator"}
	harmless  = []string{"return", "air", "breather", "belt", "blade", "disc", "pad", "bearing"}
)

// sharesCircuit reports whether two texts name the same circuit.
func sharesCircuit(one, other string) bool {
	return slices.ContainsFunc(circuits, func(words []string) bool { return says(one, words...) && says(other, words...) })
}

// bledWords is all that names what a step bleeds.
func bledWords(p *Pass, step *model.Step) string {
	out := step.Say.Text
	for _, object := range step.Objects {
		out += " " + object.Words() + " " + object.Text.Text
		if object.Cavity != nil {
			if fluid := p.Job.Fluid(object.Cavity.Fluid.Name()); fluid != nil {
				out += " " + fluid.Kind.Text + " " + fluid.Words()
			}
		}
	}
	return out
}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/bled-early", Severity: finding.Warning, Title: "A circuit is bled, and then opened for a new part",
		Why:     "The new part lets air in again: the engine does not fire, or the pedal goes to the floor.",
		Source:  "common practice, no source",
		Setting: whole(quiet) + "[part.clutch-hose]\n",
		Bad:     "[[step]]\nbleed = \"the clutch line\"\nuntil = \"no bubbles come\"\n[[step]]\nreplace = \"clutch-hose\"\n",
		Good:    "[[step]]\nreplace = \"clutch-hose\"\n[[step]]\nbleed = \"the clutch line\"\nuntil = \"no bubbles come\"\n",
	},
	Job: func(p *Pass) {
		told := map[*model.Step]bool{}
		for _, step := range p.Job.Steps {
			if step.Verb.Key != "replace" {
				continue
			}
			for _, object := range step.Objects {
				words := object.Words() + " " + object.Text.Text
				if !says(words, renewable...) || says(words, harmless...) {
					continue
				}
				bleeds := func(s *model.Step) bool {
					return s.Verb.Key == "bleed" && sharesCircuit(bledWords(p, s), words) || says(s.Say.Text, "bleed", "prime", "vent")
				}
				before := slices.IndexFunc(p.Job.Steps, func(s *model.Step) bool {
					return s.Verb.Key == "bleed" && sharesCircuit(bledWords(p, s), words) && !says(p.tells(s)+bledWords(p, s), "pressure")
				})
				if before < 0 || before >= step.Number-1 || slices.ContainsFunc(p.Job.Steps[step.Number-1:], bleeds) || told[p.Job.Steps[before]] {
					continue
				}
				bled := p.Job.Steps[before]
				told[bled] = true
				p.Found(finding.Finding{Place: bled.Objects[0].Text.At,
					Summary: fmt.Sprintf("step %d bleeds the %s, and step %d lets air in again: it renews the %s", bled.Number, bled.Objects[0].Words(), step.Number, object.Words()),
					Help:    fmt.Sprintf("Bleed after step %d, or once more.", step.Number),
					Related: []finding.Related{{Place: object.Text.At, Text: "renewed after it"}}})
			}
		}
	},
})
