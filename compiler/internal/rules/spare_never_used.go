package rules

import "benchleaf/compiler/finding"

var _ = add(Rule{
	Everywhere: true,
	Rule: finding.Rule{
		ID: "spare/never-used", Severity: finding.Warning, Title: "A listed new part is used by no step",
		Why:     "A list with things that are not needed is not trusted for those that are.",
		Source:  "S1000D: every item in the list is used in a step",
		Setting: setting + "no-isolation = \"On the bench\"\nwear = []\ntools = []\nsupplies = []\n",
		Bad:     "spares = [\"washer\"]\n" + "[spare.washer]\n" + "[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "spares = [\"washer\"]\n" + "[spare.washer]\n" + "[[step]]\nclean = \"the magnet\"\nspares = [\"washer\"]\n",
	},
	Job: func(p *Pass) {
		p.neverUsed(p.Job.Procedure.Spares, p.Needs.Spares, "spares")
	},
})
