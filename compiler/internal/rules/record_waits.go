package rules

import (
	"fmt"
	"math/big"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "record/waits-longer", Severity: finding.Warning, Title: "Waits and runs take longer than the whole job",
		Why:     "Whoever plans the day plans by elapsed.",
		Source:  "common practice, no source",
		Setting: setting + "no-isolation = \"On the bench\"\nsupplies = []\nspares = []\nwear = []\ntools = []\n",
		Bad:     "elapsed = \"40 min\"\n[[step]]\nwait = \"30 h\"\n",
		Good:    "elapsed = \"31 h\"\n[[step]]\nwait = \"30 h\"\n",
	},
	Job: func(p *Pass) {
		elapsed := p.Job.Procedure.Elapsed
		most, ok := elapsed.Highest()
		if !elapsed.OK || !ok {
			return
		}
		sum := new(big.Rat)
		var longest *model.Step
		var longestTime *big.Rat
		for _, step := range p.Job.Steps {
			for _, time := range []model.Amount{step.Wait, step.Least} {
				if !time.OK || step.Meanwhile.On {
					continue
				}
				if least, bounded := time.Lowest(); bounded {
					sum.Add(sum, least)
					if longest == nil || least.Cmp(longestTime) > 0 {
						longest, longestTime = step, least
					}
				}
			}
		}
		if longest == nil || sum.Cmp(most) <= 0 {
			return
		}
		p.Found(finding.Finding{Place: at(longest), Summary: fmt.Sprintf("the waits and runs take longer than the %s of the whole job; the longest is at step %d", elapsed.Text.Text, longest.Number),
			Help: "Correct the time at the step, or write elapsed = \"…\" for the whole job, waits included.", Related: []finding.Related{{Place: elapsed.At, Text: "the whole job"}}})
	},
})
