package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "record/not-written-down", Severity: finding.Note, Title: "A value is measured and not written down",
		Why:     "Next time nobody knows whether it has grown.",
		Source:  "DOE-STD-1029-92: readings are recorded; from a digest",
		Setting: quiet,
		Bad:     "[[step]]\nmeasure = \"the depth of the groove\"\nlimit = \"max 3 mm\"\noutside = \"Renew the wheel.\"\n",
		Good:    "[[step]]\nmeasure = \"the depth of the groove\"\nlimit = \"max 3 mm\"\noutside = \"Renew the wheel.\"\nreading = \"Depth\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if step.Verb.Key != "measure" || step.Reading.Set() || !step.Limit.OK && !limited(step) {
				continue
			}
			p.Found(finding.Finding{Place: at(step), Summary: fmt.Sprintf("step %d measures, and no blank on the card takes the value", step.Number),
				Help: "Add reading = \"…\" with what stands before the blank; or write check where the value itself is of no use."})
		}
	},
})
