package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/not-all-back", Severity: finding.Error, Title: "Fewer go back than came off",
		Why:     "Three bolts hold what four were made for.",
		Source:  "OASIS DITA machinery task and S1000D: the machine is brought back to the state the closing section says",
		Setting: whole(quiet + "[part.clips]\ncount = 4\n"),
		Bad:     "[[step]]\nremove = \"clips\"\n[[step]]\nrefit = \"clips\"\ncount = 3\n",
		Good:    "[[step]]\nremove = \"clips\"\n[[step]]\nrefit = \"clips\"\ncount = 4\n",
	},
	Job: onBreach(state.NotAllBack, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("of the %s %d come off and %d go back", b.Thing, b.Out, b.Back),
			Help: "Put the same number back, or say in end which stay off."}
	}),
})
