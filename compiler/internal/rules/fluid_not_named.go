package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/not-named", Severity: finding.Error, Title: "A cavity is filled with nobody knows what",
		Why:     "The wrong oil can foam, eat bronze or turn to sludge with what is left in.",
		Source:  "DOE-STD-1029-92: a step that sets something gives the value; MIL-STD-40051-2, from memory: a material has a name and a quantity",
		Setting: quiet,
		Bad:     "[cavity.gearbox]\ncapacity = \"1 L\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\nallow = []\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if step.Verb.Key != "fill" {
				continue
			}
			for _, object := range step.Objects {
				if object.Cavity != nil && !step.Fluid.Set() && !object.Cavity.Fluid.Set() {
					p.Found(finding.Finding{Place: object.Text.At, Summary: fmt.Sprintf("step %d fills the %s and does not say with what", step.Number, object.Words()),
						Help: "Write fluid = \"…\" at the step or at the cavity, and describe it in a table [fluid.NAME]."})
				}
			}
		}
	},
})
