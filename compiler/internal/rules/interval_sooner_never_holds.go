package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "interval/never-holds", Severity: finding.Error, Title: "A reading can never bring the job forward",
		Why:     "What is written down cannot be held against the value, so the job never comes sooner, and nobody sees it.",
		Source:  "the language itself: a reading is outside only of a limit, and over or under a value of its own kind",
		Setting: quiet,
		Bad:     "sooner = [{ reading = \"Slack\", over = \"35 bar\", every = \"50 h\" }]\n[[step]]\nmeasure = \"the slack of the chain\"\nlimit = \"max 40 mm\"\nreading = \"Slack\"\noutside = \"Set the chain.\"\n",
		Good:    "sooner = [{ reading = \"Slack\", over = \"35 mm\", every = \"50 h\" }]\n[[step]]\nmeasure = \"the slack of the chain\"\nlimit = \"max 40 mm\"\nreading = \"Slack\"\noutside = \"Set the chain.\"\n",
	},
	Everywhere: true,
	Job: func(p *Pass) {
		for _, clause := range p.Job.Procedure.Sooner {
			meant, _, known := p.readings(clause)
			if !known || len(meant) == 0 {
				continue
			}
			var limits []model.Amount
			for _, one := range meant {
				if one.Limit.OK && one.Limit.Set() {
					limits = append(limits, one.Limit)
				}
			}
			if len(limits) == 0 && clause.Outside.On {
				p.Found(finding.Finding{Place: clause.Outside.At, Summary: fmt.Sprintf("the reading %q has no limit to be outside of", clause.Reading.Text),
					Help: "Give the step that measures it limit = \"…\", or write over = \"…\" or under = \"…\" here."})
			}
			for _, bound := range []model.Amount{clause.Over, clause.Under} {
				if !bound.Set() || !bound.OK || len(limits) == 0 || anyOf(limits, bound) {
					continue
				}
				p.Found(finding.Finding{Place: bound.At, Summary: fmt.Sprintf("%s is %s, and the reading %q is %s", bound.Text.Text, aThing(bound.Dimension.String()), clause.Reading.Text, aThing(limits[0].Dimension.String())),
					Help: fmt.Sprintf("Write a value of the kind of its limit, %s.", limits[0].Text.Text), Related: []finding.Related{{Place: limits[0].At, Text: "the limit of the reading"}}})
			}
		}
	},
})

// anyOf reports whether one of some limits is of the dimension of an amount.
func anyOf(limits []model.Amount, amount model.Amount) bool {
	for _, limit := range limits {
		if limit.Dimension == amount.Dimension {
			return true
		}
	}
	return false
}
