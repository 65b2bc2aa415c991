package rules

import (
	"fmt"
	"math/big"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "record/elapsed-short", Severity: finding.Warning, Title: "The job takes less time than the hands are on it",
		Why:     "Whoever plans the day plans by the longer of the two, and one of them is wrong.",
		Source:  "common practice, no source",
		Setting: setting + "no-isolation = \"On the bench\"\nsupplies = []\nspares = []\nwear = []\ntools = []\n",
		Bad:     "elapsed = \"20 min\"\n[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "elapsed = \"40 min\"\n[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		procedure := p.Job.Procedure
		if !procedure.HandsOn.OK || !procedure.Elapsed.OK {
			return
		}
		hands, ok := procedure.HandsOn.Lowest()
		elapsed, bounded := procedure.Elapsed.Highest()
		people := big.NewRat(int64(procedure.People.Or(1)), 1)
		if ok && bounded && new(big.Rat).Mul(elapsed, people).Cmp(hands) < 0 {
			p.Found(finding.Finding{Place: procedure.Elapsed.At, Summary: fmt.Sprintf("the job takes %s, and hands are on it for %s", procedure.Elapsed.Text.Text, procedure.HandsOn.Text.Text),
				Help: "Write the time from the first step to the last, waits included.", Related: []finding.Related{{Place: procedure.HandsOn.At, Text: "hands on"}}})
		}
	},
})
