package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "record/people-short", Severity: finding.Warning, Title: "A step takes more people than the job",
		Why:     "One goes alone to a job for two, and lifts alone when it comes to the step.",
		Source:  "common practice, no source",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Lift the lid off.\"\npeople = 2\n",
		Good:    "people = 2\n[[step]]\nsay = \"Lift the lid off.\"\npeople = 2\n",
	},
	Job: func(p *Pass) {
		have := p.Job.Procedure.People.Or(1)
		for _, step := range p.Job.Steps {
			if step.People.N > have {
				p.Found(finding.Finding{Place: step.People.At, Summary: fmt.Sprintf("step %d takes %d people, and the job %d", step.Number, step.People.N, have),
					Help: fmt.Sprintf("Write people = %d in [procedure].", step.People.N)})
				return
			}
		}
	},
})
