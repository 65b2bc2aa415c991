package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "interval/twice", Severity: finding.Warning, Title: "One interval is given twice",
		Why:     "Whichever comes first counts, so the longer one never does.",
		Source:  "the language itself: running time, calendar time, distance and cycles, each once",
		Setting: undated,
		Bad:     "every = [\"500 h\", \"250 h\"]\n[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "every = [\"500 h\", \"12 months\"]\n[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		for _, list := range p.intervals() {
			first := map[quantity.Dimension]model.Amount{}
			for _, one := range list {
				if !one.OK {
					continue
				}
				if other, twice := first[one.Dimension]; twice {
					p.Found(finding.Finding{Place: one.At, Summary: fmt.Sprintf("%s and %s are both a %s; the longer never comes first", other.Text.Text, one.Text.Text, one.Dimension),
						Help: "Keep one of them; a job of its own may have the other.", Related: []finding.Related{{Place: other.At, Text: "the first"}}})
					continue
				}
				first[one.Dimension] = one
			}
		}
	},
})
