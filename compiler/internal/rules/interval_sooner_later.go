package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "interval/not-sooner", Severity: finding.Warning, Title: "A reading brings a job forward to no sooner than it is due anyway",
		Why:     "Whichever comes first counts, so the reading changes nothing: one of the two figures is mistyped.",
		Source:  "the language itself: sooner is for an interval that is shorter",
		Setting: quiet,
		Bad:     "sooner = [{ reading = \"Slack\", over = \"35 mm\", every = \"500 h\" }]\n[[step]]\nmeasure = \"the slack of the chain\"\nlimit = \"max 40 mm\"\nreading = \"Slack\"\noutside = \"Set the chain.\"\n",
		Good:    "sooner = [{ reading = \"Slack\", over = \"35 mm\", every = \"50 h\" }]\n[[step]]\nmeasure = \"the slack of the chain\"\nlimit = \"max 40 mm\"\nreading = \"Slack\"\noutside = \"Set the chain.\"\n",
	},
	Job: func(p *Pass) {
		for _, clause := range p.Job.Procedure.Sooner {
			var later []model.Amount // the job's own that each is no sooner than
			for _, one := range clause.Every {
				for _, own := range p.Job.Procedure.Every {
					if noSooner(one, own) {
						later = append(later, own)
						break
					}
				}
			}
			if n := len(clause.Every); n > 0 && len(later) == n {
				p.Found(finding.Finding{Place: clause.Every[0].At, Summary: fmt.Sprintf("%s is no sooner than every %s", clause.Every[0].Text.Text, later[0].Text.Text),
					Help: "Write a shorter time, or leave every out where the job is due at once.", Related: []finding.Related{{Place: later[0].At, Text: "how often it is due anyway"}}})
			}
		}
	},
})

// noSooner reports whether an interval is as long as another of its kind, or longer.
func noSooner(one, own model.Amount) bool {
	if !one.OK || !own.OK || one.Dimension != own.Dimension {
		return false
	}
	least, bounded := one.Lowest()
	most, ends := own.Highest()
	return bounded && ends && least.Cmp(most) >= 0
}
