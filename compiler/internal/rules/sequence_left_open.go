package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/left-open", Severity: finding.Warning, Title: "A cover or a drain cock is opened and never closed",
		Why:     "Chips and hands get in, or the oil runs out.",
		Source:  "OASIS DITA machinery task and S1000D: the machine is brought back to the state the closing section says",
		Setting: whole(quiet + "[cover.door]\nhead = \"wing\"\n"),
		Bad:     "[[step]]\nopen = \"door\"\n",
		Good:    "[[step]]\nopen = \"door\"\n[[step]]\nclose = \"door\"\n",
	},
	Job: onBreach(state.LeftOpen, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("the %s is opened at step %d and never closed", b.Thing, b.Step.Number),
			Help: fmt.Sprintf("Write a step close = %q, or say in end that it stays open.", b.Name)}
	}),
})
