package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "limit/outside-of-nothing", Severity: finding.Warning, Title: "A step says what to do outside a limit, and there is none",
		Why:     "Nobody can tell when to do it.",
		Source:  "DOE-STD-1029-92: a criterion goes with the action when it is not met; from a digest",
		Setting: quiet,
		Bad:     "[[step]]\nmeasure = \"the groove\"\noutside = \"Renew the wheel.\"\nreading = \"Depth\"\n",
		Good:    "[[step]]\nmeasure = \"the groove\"\nexpect = \"no deeper than the mark\"\noutside = \"Renew the wheel.\"\nreading = \"Depth\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if step.Verb.Key != "measure" || !step.Outside.Set() || step.Limit.Set() || step.Expect.Set() || step.SetTo.Set() || limited(step) || step.Say.Set() && strings.ContainsAny(step.Say.Text, "0123456789") {
				continue
			}
			p.Found(finding.Finding{Place: at(step), Summary: fmt.Sprintf("step %d says what to do when the value is bad, and not when it is", step.Number),
				Help: "Add limit = \"…\" or expect = \"…\"."})
		}
	},
})
