package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/not-connected", Severity: finding.Error, Title: "Something is parted and never joined",
		Why:     "The hose or the plug hangs loose when the machine starts.",
		Source:  "OASIS DITA machinery task and S1000D: the machine is brought back to the state the closing section says",
		Setting: whole(quiet + ""),
		Bad:     "[[step]]\ndisconnect = \"the sensor plug\"\n",
		Good:    "[[step]]\ndisconnect = \"the sensor plug\"\n[[step]]\nconnect = \"the sensor plug\"\n",
	},
	Job: onBreach(state.NotConnected, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("the %s is disconnected at step %d and never connected", b.Thing, b.Step.Number),
			Help: "Write the step that connects it, in the same words."}
	}),
})
