package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/isolated-or-not", Severity: finding.Warning, Title: "The procedure isolates, and says that nothing needs to be isolated",
		Why:     "The card says in front that nothing is cut off, and whoever trusts that skips the lock.",
		Source:  "29 CFR 1910.147; common practice",
		Setting: gearbox + "tools = []\ncautions = [\"start\"]\n",
		Bad:     "no-isolation = \"Nothing is touched\"\n" + lockable,
		Good:    lockable,
	},
	Job: func(p *Pass) {
		none := p.Job.Procedure.NoIsolation
		if !none.Set() {
			return
		}
		for _, step := range p.Job.Steps {
			if step.Verb.Key == "isolate" {
				p.Found(finding.Finding{Place: none.At, Summary: fmt.Sprintf("no-isolation says that nothing is isolated, and step %d isolates", step.Number),
					Help: "Take no-isolation out.", Related: []finding.Related{{Place: at(step), Text: "isolated here"}}})
				return
			}
		}
	},
})

// lockable is an energy that is isolated and proved.
const lockable = "[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\n[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n"
