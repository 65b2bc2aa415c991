package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "part/seal-again", Severity: finding.Warning, Title: "A part goes back twice with one seal",
		Why:     "A crushed washer does not seal a second time.",
		Source:  "common practice, no source",
		Setting: whole(setting + "no-isolation = \"On the bench\"\ntools = []\nsupplies = []\nspares = [\"ring\"]\nwear = []\n[spare.ring]\n[part.lid]\nseals = [\"ring\"]\n"),
		Bad:     "[[step]]\nremove = \"lid\"\n[[step]]\nrefit = \"lid\"\n[[step]]\nremove = \"lid\"\n[[step]]\nrefit = \"lid\"\n",
		Good:    "[[step]]\nremove = \"lid\"\n[[step]]\nrefit = \"lid\"\n",
	},
	Job: onBreach(state.SealAgain, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("the %s goes back a second time at step %d, and its %s is counted once", b.Thing, b.Step.Number, b.Other),
			Help: fmt.Sprintf("Name the second one at the step with spares = [%q], or leave the part off until the work is done.", b.Other)}
	}),
})
