package rules

import "benchleaf/compiler/finding"

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "spare/no-list", Severity: finding.Error, Title: "The procedure does not say which parts are renewed",
		Why:     "What is missing is found out with the machine open.",
		Source:  "S1000D and OASIS DITA machinery task: supplies and spares are listed first, or said to be none",
		Setting: setting + "no-isolation = \"On the bench\"\nwear = []\ntools = []\nsupplies = []\n",
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "spares = []\n[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		if procedure := p.Job.Procedure; !procedure.Spares.Given {
			p.Found(silent(procedure, "spares", "which parts are renewed", usedNames(p.Needs.Spares)))
		}
	},
})
