package rules

import (
	"fmt"
	"math/big"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "record/hands-on-short", Severity: finding.Warning, Title: "The steps take longer than the hands are on the machine",
		Why:     "Whoever plans the shift by the card stands there with the machine open at its end.",
		Source:  "common practice, no source",
		Setting: quiet, // 30 min
		Bad:     "[[step]]\nsay = \"Wipe the plug.\"\ntime = \"25 min\"\n[[step]]\nsay = \"Wipe the vent.\"\ntime = \"10 min\"\n",
		Good:    "[[step]]\nsay = \"Wipe the plug.\"\ntime = \"15 min\"\n[[step]]\nsay = \"Wipe the vent.\"\ntime = \"10 min\"\n",
	},
	Job: func(p *Pass) {
		hands := p.Job.Procedure.HandsOn
		most, bounded := hands.Highest()
		if !hands.OK || !bounded {
			return
		}
		if hands.Shape == quantity.About { // a quarter more is still about that
			most = new(big.Rat).Mul(most, big.NewRat(5, 4))
		}
		sum := new(big.Rat)
		for _, step := range p.Job.Steps {
			least, given := step.Time.Lowest()
			if !step.Time.OK || !given || step.Verb.Key == "wait" || step.Verb.Key == "run" || step.Verb.Key == "follow" || step.Meanwhile.On {
				continue // nobody has a hand on it then, or it is told elsewhere
			}
			sum.Add(sum, least)
		}
		if sum.Cmp(most) > 0 {
			minutes := new(big.Rat).Quo(sum, big.NewRat(60, 1))
			p.Found(finding.Finding{Place: hands.At, Summary: fmt.Sprintf("the steps take %s min by their own times, and hands-on says %s", minutes.FloatString(0), hands.Text.Text),
				Help: "Write hands-on as long as the steps take together, or put the time of a step right. Waits and runs are not counted."})
		}
	},
})
