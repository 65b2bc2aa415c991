package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/no-isolation", Severity: finding.Error, Title: "The procedure isolates nothing and does not say why",
		Why:     "Silence can mean that no energy is near or that nobody thought of it.",
		Source:  "29 CFR 1910.147; OASIS DITA machinery task: conditions are stated, or said to be none",
		Setting: gearbox + "tools = []\n",
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "no-isolation = \"The card is a look from outside the guards\"\n[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		procedure := p.Job.Procedure
		if procedure.NoIsolation.Set() {
			return
		}
		for _, step := range p.Job.Steps {
			if key := step.Verb.Key; key == "isolate" || key == "follow" {
				return
			}
		}
		var energies []string
		for _, energy := range p.Job.Energies() {
			energies = append(energies, model.The(energy.Words()))
		}
		help := "Describe the energy in a table [energy.NAME] and isolate it in a [[prepare]] step, or write no-isolation = \"…\" with the reason."
		if len(energies) > 0 {
			help = fmt.Sprintf("Isolate %s in [[prepare]] steps, or write no-isolation = \"…\" with the reason.", names(energies))
		}
		p.Found(finding.Finding{Place: procedure.Header, Firm: true, Summary: "the procedure isolates no energy and does not say why", Help: help})
	},
})
