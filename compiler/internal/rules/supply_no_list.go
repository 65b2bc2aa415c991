package rules

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/needs"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "supply/no-list", Severity: finding.Error, Title: "The procedure does not say which fluids and consumables to bring",
		Why:     "What is missing is found out with the machine open.",
		Source:  "S1000D and OASIS DITA machinery task: supplies and spares are listed first, or said to be none",
		Setting: setting + "no-isolation = \"On the bench\"\nwear = []\ntools = []\nspares = []\n",
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "supplies = []\n[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		if procedure := p.Job.Procedure; !procedure.Supplies.Given {
			p.Found(silent(procedure, "supplies", "which fluids and consumables to bring", usedNames(p.Needs.Supplies)))
		}
	},
})

func usedNames(uses []needs.Use) []string {
	var out []string
	for _, use := range uses {
		out = append(out, use.Name)
	}
	return unique(out)
}
