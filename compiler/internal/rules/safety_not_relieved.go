package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
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
			if cut == nil || !energy.Relieve.Set() || p.first("relieve", energy.Name) != nil {
				continue
			}
			p.Found(finding.Finding{Place: at(cut), Firm: true,
				Summary: fmt.Sprintf("%s is isolated at step %d, and what is stored is never let out", energy.Words(), cut.Number),
				Help:    fmt.Sprintf("Write a step relieve = %q after the isolation.", energy.Name),
				Related: []finding.Related{{Place: energy.Relieve.At, Text: "how it is let out"}}})
		}
	},
})
