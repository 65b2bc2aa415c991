package rules

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
)

const secondsOfDay = 24 * 60 * 60

// undated leaves the interval to the example.
var undated = strings.Replace(quiet, "every = \"500 h\"\n", "", 1)

// intervals are the lists of intervals a job goes by: its own, those that readings bring
// it forward to, and those of the points it lubricates, each once.
func (p *Pass) intervals() [][]model.Amount {
	out := [][]model.Amount{p.Job.Procedure.Every, p.Job.Procedure.First}
	for _, clause := range p.Job.Procedure.Sooner {
		out = append(out, clause.Every)
	}
	var seen []string
	for _, step := range p.Job.Steps {
		for _, object := range step.Objects {
			if object.Point != nil && !slices.Contains(seen, object.Point.Name) {
				seen = append(seen, object.Point.Name)
				out = append(out, object.Point.Every)
			}
		}
	}
	return out
}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "interval/hours-never-reached", Severity: finding.Warning, Title: "The running time is longer than the calendar time beside it",
		Why:     "Whichever comes first counts, so the hours never do: one of the two is mistyped.",
		Source:  "a day has 24 hours; a month is the mean of the Gregorian calendar",
		Setting: undated,
		Bad:     "every = [\"2000 h\", \"1 month\"]\n[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "every = [\"200 h\", \"1 month\"]\n[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		for _, list := range p.intervals() {
			for _, hours := range list {
				for _, calendar := range list {
					if !hours.OK || !calendar.OK || hours.Dimension != quantity.Time || calendar.Dimension != quantity.Calendar {
						continue
					}
					run, bounded := hours.Lowest()
					days, ends := calendar.Highest()
					if bounded && ends && run.Cmp(new(big.Rat).Mul(days, big.NewRat(secondsOfDay, 1))) > 0 {
						most := new(big.Rat).Mul(days, big.NewRat(24, 1))
						p.Found(finding.Finding{Place: hours.At, Summary: fmt.Sprintf("%s of running never come first: %s %s only %s hours", hours.Text.Text, calendar.Text.Text, isOrAre(calendar.Text.Text), most.FloatString(0)),
							Help: "Put the figure right that is wrong, or take out the hours.", Related: []finding.Related{{Place: calendar.At, Text: "the calendar time"}}})
					}
				}
			}
		}
	},
})

// isOrAre is the verb behind an amount: "1 month is", "3 months are".
func isOrAre(amount string) string {
	if strings.HasPrefix(amount, "1 ") {
		return "is"
	}
	return "are"
}
