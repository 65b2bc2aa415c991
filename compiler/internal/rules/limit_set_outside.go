package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

const narrowGap = "[limit.gap]\nlimit = \"3 to 5 mm\"\noutside = \"Set it again.\"\n"

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "limit/set-outside", Severity: finding.Error, Title: "A step sets a value outside the limit",
		Why:     "Whoever sets it as the card says fails it as the card says.",
		Source:  "the language itself: the value that is set and the limit it is held against",
		Setting: quiet + narrowGap,
		Bad:     "[[step]]\nadjust = \"gap\"\nset = \"6 to 7 mm\"\n",
		Good:    "[[step]]\nadjust = \"gap\"\nset = \"3 to 4 mm\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			limit := limitOf(step)
			if alike(step.SetTo, limit) && apart(step.SetTo, limit) {
				p.Found(finding.Finding{Place: step.SetTo.At, Summary: fmt.Sprintf("step %d sets %s, and the limit is %s", step.Number, step.SetTo.Text.Text, limit.Text.Text),
					Help:    "Put the figure right that is wrong. Where another limit holds at this step, as for new belts, write limit = \"…\" at the step.",
					Related: []finding.Related{{Place: limit.At, Text: "the limit"}}})
			}
		}
	},
})

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "limit/set-wider", Severity: finding.Warning, Title: "A step lets a value be set outside the limit",
		Why:     "One who sets it at the end of what the card allows fails it by the same card.",
		Source:  "the language itself: the value that is set and the limit it is held against",
		Setting: quiet + narrowGap,
		Bad:     "[[step]]\nadjust = \"gap\"\nset = \"3 to 6 mm\"\n",
		Good:    "[[step]]\nadjust = \"gap\"\nset = \"3 to 5 mm\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			limit := limitOf(step)
			if alike(step.SetTo, limit) && !apart(step.SetTo, limit) && !within(step.SetTo, limit) {
				p.Found(finding.Finding{Place: step.SetTo.At, Summary: fmt.Sprintf("step %d lets it be set to %s, wider than the limit %s", step.Number, step.SetTo.Text.Text, limit.Text.Text),
					Help: "Write a set that lies within the limit, with both ends.", Related: []finding.Related{{Place: limit.At, Text: "the limit"}}})
			}
		}
	},
})
