package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "limit/new-outside", Severity: finding.Warning, Title: "A new part would be outside its limit",
		Why:     "A new part is thrown away, or the worn one passes: one of the two figures is mistyped.",
		Source:  "the language itself: new is the value when new, limit is what it is held against",
		Setting: quiet,
		Bad:     "[limit.felt]\nnew = \"20 mm\"\nlimit = \"min 25 mm\"\noutside = \"Renew the felt.\"\n[[step]]\nmeasure = \"felt\"\n",
		Good:    "[limit.felt]\nnew = \"20 mm\"\nlimit = \"min 12 mm\"\noutside = \"Renew the felt.\"\n[[step]]\nmeasure = \"felt\"\n",
	},
	Job: func(p *Pass) {
		told := map[string]bool{}
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				limit := object.Limit
				if limit == nil || told[limit.Name] || !alike(limit.New, limit.Limit) || !apart(limit.New, limit.Limit) {
					continue
				}
				told[limit.Name] = true
				p.Found(finding.Finding{Place: limit.New.At, Summary: fmt.Sprintf("the %s is %s when new, and its limit is %s", limit.Words(), limit.New.Text.Text, limit.Limit.Text.Text),
					Help: "Put the figure right that is wrong; for a wear limit new lies on the good side of it.", Related: []finding.Related{{Place: limit.Limit.At, Text: "the limit"}}})
			}
		}
	},
})
