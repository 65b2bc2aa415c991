package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/left-in-place", Severity: finding.Warning, Title: "A chock, a stand or a wedge is set and never taken away",
		Why:     "The next one drives over it, or starts the machine against it.",
		Source:  "common practice, no source",
		Setting: whole(quiet),
		Bad:     "[[step]]\nsay = \"Set a chock before and behind the far wheel.\"\n",
		Good:    "[[step]]\nsay = \"Set a chock before and behind the far wheel.\"\n[[step]]\nsay = \"Take both chocks away.\"\n",
	},
	Job: onBreach(state.LeftInPlace, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("nothing takes the %s away that step %d sets", b.Thing, b.Step.Number),
			Help: fmt.Sprintf("Write the step that takes the %s away, or say in end that it stays.", b.Thing)}
	}),
})
