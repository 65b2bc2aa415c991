package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/not-of-the-cavity", Severity: finding.Error, Title: "A cavity is filled with another fluid than it takes",
		Why:     "The wrong fluid swells the seals or seizes the bearings, and all of it has to come out again.",
		Source:  "the machine's own description; ISO 3448, SAE J300 and J306 for what tells oils apart",
		Setting: setting + "no-isolation = \"On the bench\"\nspares = []\nwear = []\ntools = []\nsupplies = [\"coolant\"]\n[fluid.oil]\nkind = \"gear-oil\"\n[fluid.coolant]\nkind = \"coolant\"\n",
		Bad:     "[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\nfluid = \"coolant\"\n",
		Good:    "[cavity.jacket]\nfluid = \"coolant\"\ncapacity = \"1 L\"\n[[step]]\nfill = \"jacket\"\nuntil = \"it stands at the mark\"\nfluid = \"coolant\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				cavity := object.Cavity
				if step.Verb.Key != "fill" || cavity == nil || !step.Fluid.Set() || !cavity.Fluid.Set() || step.Fluid.Name() == cavity.Fluid.Name() {
					continue
				}
				p.Found(finding.Finding{Place: step.Fluid.At, Summary: fmt.Sprintf("step %d fills the %s with %q, and it takes %q", step.Number, cavity.Words(), step.Fluid.Text, cavity.Fluid.Text),
					Help:    "Leave fluid out at the step, or write at the cavity what it takes.",
					Related: []finding.Related{{Place: cavity.Fluid.At, Text: "what it takes"}}})
			}
		}
	},
})
