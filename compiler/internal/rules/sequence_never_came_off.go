package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/never-came-off", Severity: finding.Error, Title: "A step puts back what never came off",
		Why:     "Whoever reads it looks for a part that lies nowhere, or a removal that is not told.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(quiet + "[part.lid]\n[part.sieve]\nbehind = \"lid\"\n"),
		Bad:     "[[step]]\nrefit = \"lid\"\n",
		Good:    "[[step]]\nremove = \"lid\"\n[[step]]\nrefit = \"lid\"\n",
	},
	Job: onBreach(state.AlreadyOn, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d puts back the %s, which is on%s", b.Step.Number, b.Thing, after(b.Since, ": it went back", "; no step takes it off")),
			Help: "Write the step that takes it off, or say in start that it is off when the work begins."}
	}),
})
