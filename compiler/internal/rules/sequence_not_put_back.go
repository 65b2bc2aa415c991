package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/not-put-back", Severity: finding.Error, Title: "A part comes off and never goes back",
		Why:     "It is found on the bench when the machine runs.",
		Source:  "OASIS DITA machinery task and S1000D: the machine is brought back to the state the closing section says",
		Setting: whole(quiet + "[part.lid]\n[part.sieve]\nbehind = \"lid\"\n"),
		Bad:     "[[step]]\nremove = \"lid\"\n",
		Good:    "[[step]]\nremove = \"lid\"\n[[step]]\nrefit = \"lid\"\n",
	},
	Job: onBreach(state.NotPutBack, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Firm: b.Guard, Summary: fmt.Sprintf("the %s is taken off at step %d and never put back", b.Thing, b.Step.Number),
			Help: fmt.Sprintf("Write a step refit = %q, or replace = %q where a new one goes in; or say in end that it stays off.", b.Name, b.Name)}
	}),
})
