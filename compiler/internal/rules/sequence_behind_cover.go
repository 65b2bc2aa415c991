package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/behind-cover", Severity: finding.Error, Title: "A step works behind a cover that is on",
		Why:     "The step cannot be done, or it is done through a gap with the cover half off.",
		Source:  "the machine's own description: what is hidden behind what",
		Setting: whole(quiet + "[part.lid]\n[part.sieve]\nbehind = \"lid\"\n"),
		Bad:     "[[step]]\nremove = \"sieve\"\n[[step]]\nrefit = \"sieve\"\n",
		Good:    "[[step]]\nremove = \"lid\"\n[[step]]\nremove = \"sieve\"\n[[step]]\nrefit = \"sieve\"\n[[step]]\nrefit = \"lid\"\n",
	},
	Job: onBreach(state.BehindCover, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d gets at the %s, and the %s before it is on%s", b.Step.Number, b.Thing, b.Other, after(b.Since, ": it went back", "")),
			Help: fmt.Sprintf("Write a step remove = %q before this one, or move this one before the %s goes back.", b.Name, b.Other)}
	}),
})
