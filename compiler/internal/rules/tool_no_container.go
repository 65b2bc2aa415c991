package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/no-container", Severity: finding.Warning, Title: "What is drained has no container",
		Why:     "The pan is looked for while the oil runs.",
		Source:  "40 CFR 279.22: used oil goes into a container",
		Setting: setting + "no-isolation = \"On the bench\"\nsupplies = []\nspares = []\nwear = [\"gloves\"]\ncautions = [\"used-oil\"]\n",
		Bad:     "tools = []\n[cavity.gearbox]\n[[step]]\ndrain = \"gearbox\"\n",
		Good:    "tools = [\"pan\"]\n[tool.pan]\nkind = \"container\"\n[cavity.gearbox]\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n",
	},
	Job: func(p *Pass) {
		for _, catch := range p.Needs.Catch {
			if !catch.Step.Into.Set() {
				p.Found(finding.Finding{Place: at(catch.Step), Summary: fmt.Sprintf("step %d drains the %s into nothing", catch.Step.Number, catch.Cavity.Words()),
					Help: "Name the container with into = \"…\" and list it among the tools."})
			}
		}
	},
})
