package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "interval/no-condition", Severity: finding.Error, Title: "A reading brings a job forward, and it is not said at what value",
		Why:     "Whether the job is due cannot be told from the reading.",
		Source:  "the language itself: over, under or outside, one of them, with one figure",
		Setting: quiet,
		Bad:     "sooner = [{ reading = \"Slack\", every = \"50 h\" }]\n[[step]]\nmeasure = \"the slack of the chain\"\nlimit = \"max 40 mm\"\nreading = \"Slack\"\noutside = \"Set the chain.\"\n",
		Good:    "sooner = [{ reading = \"Slack\", outside = true, every = \"50 h\" }]\n[[step]]\nmeasure = \"the slack of the chain\"\nlimit = \"max 40 mm\"\nreading = \"Slack\"\noutside = \"Set the chain.\"\n",
	},
	Job: func(p *Pass) {
		for _, clause := range p.Job.Procedure.Sooner {
			var given []string
			for _, bound := range []struct {
				key string
				model.Amount
			}{{"over", clause.Over}, {"under", clause.Under}} {
				if !bound.Set() {
					continue
				}
				given = append(given, bound.key)
				if bound.OK && bound.Shape != quantity.Exact {
					p.Found(finding.Finding{Place: bound.At, Summary: fmt.Sprintf("%s = %q is no single figure", bound.key, bound.Text.Text),
						Help: "Write the one value from which it holds, such as \"35 mm\"."})
				}
			}
			if clause.Outside.On {
				given = append(given, "outside")
			}
			switch {
			case len(given) > 1:
				p.Found(finding.Finding{Place: clause.Key(given[1]), Summary: fmt.Sprintf("a reading brings the job forward by %s at once", strings.Join(given, " and ")),
					Help: "Keep one of them, and write a second { … } for the other."})
			case len(given) == 0 && clause.Outside.At.Known():
				p.Found(finding.Finding{Place: clause.Outside.At, Summary: "outside = false never brings the job forward",
					Help: "Write outside = true, or over = \"…\" or under = \"…\" in its place."})
			case len(given) == 0:
				p.Found(finding.Finding{Place: clause.Header, Summary: fmt.Sprintf("it is not said at what value of %q the job comes sooner", clause.Reading.Text),
					Help: "Write over = \"35 mm\", under = \"4 mm\", or outside = true for a reading outside its limit."})
			}
		}
	},
})
