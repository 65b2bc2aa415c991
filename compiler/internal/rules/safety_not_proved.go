package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/hazard"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/not-proved", Severity: finding.Error, Title: "An energy is isolated and never proved dead",
		Why:     "A switch can be the wrong one, or its contacts welded: only a try shows that the energy is gone.",
		Source:  "29 CFR 1910.147(d)(6)",
		Setting: gearbox + "tools = []\ncautions = [\"start\"]\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\n",
		Bad:     "[[prepare]]\nisolate = \"mains\"\n[[step]]\nclean = \"the vent of the motor\"\n",
		Good:    "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nclean = \"the vent of the motor\"\n",
	},
	Job: func(p *Pass) {
		for _, energy := range p.Job.Energies() {
			cut := p.isolated(energy.Name)
			if cut == nil {
				continue
			}
			proof := p.first("prove", energy.Name)
			found := finding.Finding{Place: at(cut), Firm: true, Help: fmt.Sprintf("Write a step prove = %q after the isolation and before hands go on the machine.", energy.Name)}
			switch hands := p.firstHands(cut.Number); {
			case proof == nil:
				found.Summary = fmt.Sprintf("the %s is isolated at step %d and never proved dead", energy.Words(), cut.Number)
				p.Found(found)
			case proof.Number < cut.Number:
				found.Summary = fmt.Sprintf("the %s is proved dead at step %d, before it is isolated at step %d", energy.Words(), proof.Number, cut.Number)
				found.Related = []finding.Related{{Place: at(proof), Text: "proved here"}}
				p.Found(found)
			case hands != nil && hands.Number < proof.Number:
				found.Summary = fmt.Sprintf("hands go on the machine at step %d before the %s is proved dead at step %d", hands.Number, energy.Words(), proof.Number)
				found.Related = []finding.Related{{Place: at(hands), Text: "hands go on here"}, {Place: at(proof), Text: "proved here"}}
				p.Found(found)
			}
		}
	},
})

// firstHands is the first step after a number that brings hands onto the
// machine, or nil; letting out what is stored belongs to the isolation.
func (p *Pass) firstHands(after int) *model.Step {
	for _, step := range p.Job.Steps {
		if step.Number > after && hazard.Hands(step.Verb.Key) && step.Verb.Key != "relieve" {
			return step
		}
	}
	return nil
}
