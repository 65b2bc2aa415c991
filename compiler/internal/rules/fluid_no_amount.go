package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/no-amount", Severity: finding.Error, Title: "A cavity is filled with nobody knows how much",
		Why:     "Too little runs dry, too much churns, foams and blows the seals.",
		Source:  "DOE-STD-1029-92: a step that sets something gives the value",
		Setting: setting + "no-isolation = \"On the bench\"\ntools = []\nspares = []\nwear = []\nsupplies = [\"oil\"]\n[fluid.oil]\nkind = \"gear-oil\"\n",
		Bad:     "[cavity.gearbox]\nfluid = \"oil\"\n[[step]]\nfill = \"gearbox\"\n[[step]]\ncheck = \"gearbox\"\nexpect = \"it stands at the mark\"\noutside = \"Stop, and call the foreman.\"\n",
		Good:    "[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1.1 L\"\n[[step]]\nfill = \"gearbox\"\n[[step]]\ncheck = \"gearbox\"\nexpect = \"it stands at the mark\"\noutside = \"Stop, and call the foreman.\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if step.Verb.Key != "fill" || step.Amount.Set() || step.Until.Set() {
				continue
			}
			for _, object := range step.Objects {
				if object.Cavity != nil && !object.Cavity.Capacity.Set() {
					p.Found(finding.Finding{Place: object.Text.At, Summary: fmt.Sprintf("step %d fills the %s and does not say how much", step.Number, object.Words()),
						Help: "Write amount = \"…\" or until = \"…\" at the step, or capacity = \"…\" at the cavity."})
				}
			}
		}
	},
})
