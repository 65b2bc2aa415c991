package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/meanwhile-without-wait", Severity: finding.Error, Title: "A step is done meanwhile and no wait runs",
		Why:     "Nobody can tell while what it is to be done.",
		Source:  "the language itself",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\nmeanwhile = true\n",
		Good:    "[[step]]\nwait = \"10 min\"\n[[step]]\nsay = \"Look at the plug.\"\nmeanwhile = true\n",
	},
	Job: func(p *Pass) {
		waiting := false
		for _, step := range p.Job.Steps {
			if !step.Meanwhile.On {
				waiting = step.Lasts()
			} else if !waiting {
				p.Found(finding.Finding{Place: step.Meanwhile.At, Summary: fmt.Sprintf("step %d is done meanwhile, and no wait runs before it", step.Number),
					Help: "Put it right after the wait, or after the run that has a time or an end, or take meanwhile away."})
			}
		}
	},
})
