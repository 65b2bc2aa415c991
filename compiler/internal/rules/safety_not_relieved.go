package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/hazard"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/not-relieved", Severity: finding.Error, Title: "Stored energy is isolated and never let out",
		Why:     "Cutting the supply off leaves the pressure, the spring or the load where it was.",
		Source:  "29 CFR 1910.147(d)(5)",
		Setting: setting + "supplies = []\nspares = []\ntools = []\nwear = [\"eye-protection\", \"face-shield\"]\ncautions = [\"start\", \"air\"]\n[energy.air]\nkind = \"pneumatic\"\nisolate = \"Close and lock the valve.\"\nrelieve = \"Open the dump valve.\"\nprove = \"The gauge reads zero.\"\n",
		Bad:     "[[prepare]]\nisolate = \"air\"\n[[prepare]]\nprove = \"air\"\n",
		Good:    "[[prepare]]\nisolate = \"air\"\n[[prepare]]\nrelieve = \"air\"\n[[prepare]]\nprove = \"air\"\n",
	},
	Job: func(p *Pass) {
		for _, energy := range p.Job.Energies() {
			cut := p.isolated(energy.Name)
			if cut == nil || !energy.Relieve.Set() {
				continue
			}
			if out := p.first("relieve", energy.Name); out != nil {
				p.relievedLate(energy, cut, out)
				continue
			}
			p.Found(finding.Finding{Place: at(cut), Firm: true,
				Summary: fmt.Sprintf("the %s is isolated at step %d, and what is stored is never let out", energy.Words(), cut.Number),
				Help:    fmt.Sprintf("Write a step relieve = %q after the isolation.", energy.Name),
				Related: []finding.Related{{Place: energy.Relieve.At, Text: "how it is let out"}}})
		}
	},
})

// lets are the hazards of what comes out of each kind of energy while it is stored.
var lets = map[string][]string{"hydraulic": {"injection"}, "pneumatic": {"air", "burst"}, "spring": {"spring"}, "gravity": {"crushing"}}

// relievedLate tells of hands on what is still under pressure or tension.
func (p *Pass) relievedLate(energy *model.Energy, cut, out *model.Step) {
	for _, implied := range p.Hazards {
		step := implied.Step
		if step.Number >= out.Number || step.Number <= cut.Number || !hazard.Hands(step.Verb.Key) && step.Verb.Key != "" || !slices.Contains(lets[energy.Kind.Text], implied.Hazard.Key) {
			continue
		}
		p.Found(finding.Finding{Place: implied.Place, Firm: true,
			Summary: fmt.Sprintf("hands go on at step %d before the %s is let out at step %d: %s", step.Number, energy.Words(), out.Number, implied.Why),
			Help:    fmt.Sprintf("Move the step relieve = %q before it.", energy.Name),
			Related: []finding.Related{{Place: at(out), Text: "it is let out only here"}}})
		return
	}
}
