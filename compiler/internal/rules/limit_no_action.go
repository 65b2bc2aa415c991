package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "limit/no-action", Severity: finding.Note, Title: "Nothing says what to do when it is not so",
		Why:     "Whoever finds it out of its limit stands there and decides alone, or passes it over.",
		Source:  "DOE-STD-1029-92: a criterion goes with the action when it is not met; from a digest",
		Setting: quiet,
		Bad:     "[[step]]\ncheck = \"the groove\"\nexpect = \"sharp edges\"\n",
		Good:    "[[step]]\ncheck = \"the groove\"\nexpect = \"sharp edges\"\noutside = \"Renew the wheel.\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if step.Outside.Set() || !slices.Contains(criterion, step.Verb.Key) {
				continue
			}
			what, acts := "", false
			switch {
			case step.Limit.Set():
				what = step.Limit.Text.Text
			case step.Expect.Set():
				what = step.Expect.Text
			}
			for _, object := range step.Objects {
				if object.Limit != nil {
					acts = acts || object.Limit.Outside.Set()
					if what == "" {
						what = object.Limit.Limit.Text.Text
					}
				}
			}
			said := " " + strings.ToLower(step.Say.Text) + " "
			if what == "" || acts || strings.Contains(said, " if ") || strings.Contains(said, " until ") || strings.Contains(said, "otherwise") {
				continue
			}
			p.Found(finding.Finding{Place: at(step), Summary: fmt.Sprintf("step %d does not say what to do when it is not so: %s", step.Number, what),
				Help: "Add outside = \"…\" with the action: stop and call, set it again, renew it."})
		}
	},
})

// criterion are the verbs that hold something against what is good.
var criterion = []string{"measure", "check", "inspect", "run", "start"}
