package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/step-twice", Severity: finding.Error, Title: "A step stands twice in a row",
		Why:     "It was copied and not changed: the second was to do something else, or is not needed.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(quiet + "[part.lid]\n[part.sieve]\nbehind = \"lid\"\n[cover.flap]\nhead = \"wing\"\n[part.clamp]\nhead = \"wing\"\n"),
		Bad:     "[[step]]\nopen = \"flap\"\n[[step]]\nopen = \"flap\"\n[[step]]\nclose = \"flap\"\n",
		Good:    "[[step]]\nopen = \"flap\"\n[[step]]\nclose = \"flap\"\n",
	},
	Job: onBreach(state.Twice, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d is step %d once more", b.Step.Number, b.Since.Number),
			Help: "Change the second, or take it out."}
	}),
})
