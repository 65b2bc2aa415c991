package rules

import (
	"strings"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "interval/not-stated", Severity: finding.Warning, Title: "The procedure does not say when it is due",
		Why:     "A service nobody knows the date of is done after the damage.",
		Source:  "MIL-STD-40051-2, from memory; common practice",
		Setting: strings.Replace(quiet, "every = \"500 h\"\n", "", 1),
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "when = \"When the plug weeps\"\n[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		procedure := p.Job.Procedure
		if len(procedure.Every) == 0 && !procedure.When.Set() {
			p.Found(finding.Finding{Place: procedure.Header, Summary: "the procedure does not say when it is due",
				Help: "Write every = \"250 h\", every = [\"250 h\", \"12 months\"], or when = \"…\" for a job that is done on a condition."})
		}
	},
})
