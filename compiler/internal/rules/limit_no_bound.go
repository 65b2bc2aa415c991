package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "limit/no-bound", Severity: finding.Warning, Title: "A limit is one figure and does not say which side is bad",
		Why:     "Nobody can tell whether 253 mm against a limit of 254 mm is worn out or as good as new.",
		Source:  "DOE-STD-1029-92: limits are given as least and most; from a digest",
		Setting: quiet,
		Bad:     "[[step]]\nmeasure = \"the wall of the vent\"\nlimit = \"254 mm\"\n",
		Good:    "[[step]]\nmeasure = \"the wall of the vent\"\nlimit = \"min 254 mm\"\n",
	},
	Job: func(p *Pass) {
		for _, limit := range p.limits() {
			if !limit.OK || limit.Shape != quantity.Exact || limit.Dimension == quantity.Count { // 4 pieces are 4 pieces
				continue
			}
			if value, _ := limit.Lowest(); value.Sign() == 0 && limit.Dimension != quantity.Temperature { // nothing at all is a bound
				continue
			}
			figure := limit.Text.Text
			p.Found(finding.Finding{Place: limit.At, Summary: fmt.Sprintf("the limit %s does not say whether more or less is bad", figure),
				Help: fmt.Sprintf("Write %q, %q, or a range such as %q.", "max "+figure, "min "+figure, "3 to 5 mm")})
		}
	},
})
