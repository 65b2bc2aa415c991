package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/already-shut", Severity: finding.Error, Title: "A step closes or connects what never was open",
		Why:     "One of two steps is missing, or it is another one that was meant.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(quiet + "[part.lid]\n[part.sieve]\nbehind = \"lid\"\n[cover.flap]\nhead = \"wing\"\n[part.clamp]\nhead = \"wing\"\n"),
		Bad:     "[[step]]\nclose = \"flap\"\n",
		Good:    "[[step]]\nopen = \"flap\"\n[[step]]\ncheck = \"the rope\"\nexpect = \"it is whole\"\noutside = \"Stop, and call the foreman.\"\n[[step]]\nclose = \"flap\"\n",
	},
	Job: onBreach(state.AlreadyShut, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d closes or connects the %s, and no step before it opens or parts it", b.Step.Number, b.Thing),
			Help: "Write the step before it that does, or say in start that it is open."}
	}),
})
