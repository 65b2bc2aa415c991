package rules

import "benchleaf/compiler/finding"

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "spare/not-listed", Severity: finding.Error, Title: "A new part the work takes is not on the list",
		Why:     "What is missing is found out with the machine open.",
		Source:  "S1000D: every item used in a step stands in the list; MIL-STD-40051-2: what is always renewed is listed first",
		Setting: setting + "no-isolation = \"On the bench\"\nwear = []\ntools = []\nsupplies = []\n",
		Bad:     "spares = []\n" + "[spare.washer]\n" + "[[step]]\nclean = \"the magnet\"\nspares = [\"washer\"]\n",
		Good:    "spares = [\"washer\"]\n" + "[spare.washer]\n" + "[[step]]\nclean = \"the magnet\"\nspares = [\"washer\"]\n",
	},
	Job: func(p *Pass) {
		if procedure := p.Job.Procedure; procedure.Spares.Given {
			p.notListed(p.Needs.Spares, procedure.Spares, "spares")
		}
	},
})
