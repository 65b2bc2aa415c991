package rules

import (
	"strings"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/no-close", Severity: finding.Error, Title: "The procedure does not say how it is closed up and tested",
		Why:     "The last tick must mean that the machine may run.",
		Source:  "OASIS DITA machinery task and S1000D: closing requirements are stated, or said to be none",
		Setting: strings.Replace(quiet, "no-close = \"Nothing is opened\"\n", "", 1),
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\n[[close]]\nrun = \"the gearbox for a minute\"\n",
	},
	Job: func(p *Pass) {
		procedure := p.Job.Procedure
		if procedure.NoClose.Set() {
			return
		}
		for _, step := range p.Job.Steps {
			if step.Section == "close" {
				return
			}
		}
		p.Found(finding.Finding{Place: procedure.Header, Summary: "the procedure has no [[close]] steps and does not say why",
			Help: "Write [[close]] steps that refit guards, give energy back and prove that the machine runs, or no-close = \"…\" with the reason."})
	},
})
