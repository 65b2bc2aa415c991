package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/runs-apart", Severity: finding.Error, Title: "The machine runs with a part off or not tightened",
		Why:     "What is not in falls in, and what is not tight flies off.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(quiet + "[part.lid]\n"),
		Bad:     "[[step]]\nremove = \"lid\"\n[[step]]\nrun = \"the mill\"\nleast = \"2 min\"\n[[step]]\nrefit = \"lid\"\n",
		Good:    "[[step]]\nremove = \"lid\"\n[[step]]\nrefit = \"lid\"\n[[step]]\nrun = \"the mill\"\nleast = \"2 min\"\n",
	},
	Job: onBreach(state.RunsApart, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d runs the %s, and the %s is off or not tightened%s", b.Step.Number, b.Thing, b.Other, after(b.Since, ": see", "")),
			Help: fmt.Sprintf("Put the %s back and tighten it before this step.", b.Other)}
	}),
})
