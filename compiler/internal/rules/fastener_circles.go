package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fastener/circles", Severity: finding.Error, Title: "The fasteners cannot be shared out over their circles",
		Why:     "The order on each circle is worked out from how many sit on it, and the card would print a wrong one.",
		Source:  "the language itself: circles is on how many bolt circles the count is shared out, the same number on each",
		Setting: quiet,
		Bad:     "[part.nuts]\ncount = 10\ncircles = 3\n[[step]]\ninspect = \"nuts\"\n",
		Good:    "[part.nuts]\ncount = 10\ncircles = 2\n[[step]]\ninspect = \"nuts\"\n",
	},
	Job: func(p *Pass) {
		told := map[*model.Part]bool{}
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				part := object.Part
				if part == nil || told[part] || part.Circles.N < 1 || part.Count.Or(1)%part.Circles.N == 0 {
					continue
				}
				told[part] = true
				p.Found(finding.Finding{Place: part.Circles.At, Summary: fmt.Sprintf("%d cannot be shared out over %d circles", part.Count.Or(1), part.Circles.N),
					Help: "Count them at the machine; where the circles differ, write each as a part of its own."})
			}
		}
	},
})
