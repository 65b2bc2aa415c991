package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "interval/first-later", Severity: finding.Warning, Title: "The first time is later than every other time",
		Why:     "By then the job is overdue; most often the two figures were exchanged.",
		Source:  "the language itself: first is for a first time that comes sooner",
		Setting: quiet,
		Bad:     "first = \"600 h\"\n[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "first = \"50 h\"\n[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		procedure := p.Job.Procedure
		for _, first := range procedure.First {
			for _, every := range procedure.Every {
				if !first.OK || !every.OK || first.Dimension != every.Dimension {
					continue
				}
				least, bounded := first.Lowest()
				most, ends := every.Highest()
				if bounded && ends && least.Cmp(most) > 0 {
					p.Found(finding.Finding{Place: first.At, Summary: fmt.Sprintf("it is due first at %s, and again every %s", first.Text.Text, every.Text.Text),
						Help: "Write the shorter time as first, or leave first out.", Related: []finding.Related{{Place: every.At, Text: "how often after that"}}})
				}
			}
		}
	},
})
