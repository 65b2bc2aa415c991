package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/no-until", Severity: finding.Note, Title: "Nothing says when the draining is done",
		Why:     "Whoever puts the plug back while it still runs leaves the dirt in.",
		Source:  "common practice, no source",
		Setting: setting + "no-isolation = \"On the bench\"\ntools = [\"pan\"]\nspares = []\nwear = [\"gloves\"]\nsupplies = []\ncautions = [\"used-oil\"]\n[tool.pan]\nkind = \"container\"\nholds = \"5 L\"\n[fluid.oil]\nkind = \"gear-oil\"\n[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\n",
		Bad:     "[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n",
		Good:    "[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\nuntil = \"it only drips\"\n",
	},
	Job: func(p *Pass) {
		for i, step := range p.Job.Steps {
			if step.Verb.Key != "drain" || step.Until.Set() || step.Amount.Set() || step.Time.Set() || strings.Contains(strings.ToLower(step.Say.Text), "until") {
				continue
			}
			if next := i + 1; next < len(p.Job.Steps) && p.Job.Steps[next].Verb.Key == "wait" {
				continue
			}
			p.Found(finding.Finding{Place: at(step), Summary: fmt.Sprintf("step %d does not say when it is drained", step.Number),
				Help: "Add until = \"…\" with what is seen, or a wait after it."})
		}
	},
})
