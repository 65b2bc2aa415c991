package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "record/measured-for-nothing", Severity: finding.Warning, Title: "A value is measured, held against nothing and not written down",
		Why:     "Nobody can tell afterwards what it was, and at the machine nobody can tell whether it is good.",
		Source:  "DOE-STD-1029-92: a step that yields a value gives its criterion; from a digest",
		Setting: quiet,
		Bad:     "[[step]]\nmeasure = \"the depth of the groove\"\n",
		Good:    "[[step]]\nmeasure = \"the depth of the groove\"\nlimit = \"max 3 mm\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if step.Verb.Key != "measure" || step.Limit.Set() || step.Expect.Set() || step.Reading.Set() || step.SetTo.Set() || step.Say.Set() || limited(step) {
				continue
			}
			p.Found(finding.Finding{Place: at(step), Summary: fmt.Sprintf("step %d measures and holds the value against nothing", step.Number),
				Help: "Write limit = \"…\" for what is good, expect = \"…\" in words, or reading = \"…\" for a blank to write it in."})
		}
	},
})
