package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "people/once", Severity: finding.Error, Title: "A step waits for one that does not come before it",
		Why:     "The other person is waited for at a step that nobody knows, or that comes later, and the two wait for each other.",
		Source:  "the procedure itself",
		Setting: quiet,
		Bad:     "people = 2\n[[step]]\nsay = \"Look at the plug.\"\nperson = 1\nonce = [\"plug-out\"]\n",
		Good:    "people = 2\n[[step]]\nid = \"plug-out\"\nsay = \"Take the paper off the plug.\"\nperson = 2\n[[step]]\nsay = \"Look at the plug.\"\nperson = 1\nonce = [\"plug-out\"]\n",
	},
	Job: func(p *Pass) {
		seen := map[string]int{}
		for _, step := range p.Job.Steps {
			if step.ID.Set() {
				if before := seen[step.ID.Name()]; before > 0 {
					p.Found(finding.Finding{Place: step.ID.At, Summary: fmt.Sprintf("steps %d and %d have one id, %q", before, step.Number, step.ID.Text), Help: "Give each an id of its own."})
				}
				seen[step.ID.Name()] = step.Number
			}
			if step.Person.N > 2 && p.Job.Procedure.People.Or(1) > 2 {
				p.Found(finding.Finding{Place: step.Person.At, Summary: fmt.Sprintf("step %d is for person %d, and a job is shared out to two", step.Number, step.Person.N),
					Help: "Write person = 1 or person = 2. A step that more have to be at has none."})
			} else if step.Person.N > max(1, p.Job.Procedure.People.Or(1)) {
				p.Found(finding.Finding{Place: step.Person.At, Summary: fmt.Sprintf("step %d is for person %d, and the job takes %d", step.Number, step.Person.N, p.Job.Procedure.People.Or(1)),
					Help: fmt.Sprintf("Write people = %d in [procedure], or say who does it otherwise.", step.Person.N)})
			}
			for _, name := range step.Once.Items {
				other := p.Job.StepOf(name.Name())
				switch {
				case other == nil:
					p.Found(finding.Finding{Place: name.At, Summary: fmt.Sprintf("no step has the id %q", name.Text), Help: "Write id = \"" + name.Name() + "\" at the step that is to be done before."})
				case other.Number >= step.Number:
					p.Found(finding.Finding{Place: name.At, Summary: fmt.Sprintf("step %d waits for step %d, which comes after it", step.Number, other.Number), Help: "Bring the steps into the order they are done in.",
						Related: []finding.Related{{Place: at(other), Text: fmt.Sprintf("step %d", other.Number)}}})
				case step.Person.N == 0:
					p.Found(finding.Finding{Place: name.At, Summary: fmt.Sprintf("step %d waits for another, and does not say who does it", step.Number), Help: "Write person = 1 or person = 2 at the step. A step without is one that both come to, when all before it is done."})
				}
			}
		}
	},
})
