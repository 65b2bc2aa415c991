package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fastener/more-than-there-are", Severity: finding.Warning, Title: "A step counts more of a part than there are",
		Why:     "One of the two figures is wrong: one bolt is looked for that is not there, or one more is left as it was.",
		Source:  "the language itself: count is how many of the object, when not all of them",
		Setting: quiet,
		Bad:     "[part.bolts]\ncount = 4\n[[step]]\ninspect = \"bolts\"\ncount = 6\n",
		Good:    "[part.bolts]\ncount = 6\n[[step]]\ninspect = \"bolts\"\ncount = 4\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if len(step.Objects) != 1 || step.Count.N == 0 {
				continue // of several parts nobody can tell which are counted
			}
			there := step.Objects[0]
			count := 0
			switch {
			case there.Part != nil:
				count = there.Part.Count.N
			case there.Point != nil:
				count = there.Point.Count.N
			}
			if count == 0 || step.Count.N <= count {
				continue // a count that was left out says nothing
			}
			found := finding.Finding{Place: step.Count.At, Summary: fmt.Sprintf("step %d counts %d of the %s, and there are %d", step.Number, step.Count.N, there.Words(), count),
				Help: "Count them at the machine, and write the same in both places."}
			if there.Part != nil {
				found.Related = []finding.Related{{Place: there.Part.Count.At, Text: "how many there are"}}
			} else {
				found.Related = []finding.Related{{Place: there.Point.Count.At, Text: "how many there are"}}
			}
			p.Found(found)
		}
	},
})
