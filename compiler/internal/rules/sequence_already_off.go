package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/already-off", Severity: finding.Error, Title: "A step takes off what is off",
		Why:     "One of the two steps is wrong, or the part that went back between them is not told.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(quiet + "[part.lid]\n[part.sieve]\nbehind = \"lid\"\n"),
		Bad:     "[[step]]\nremove = \"lid\"\n[[step]]\nremove = \"lid\"\n[[step]]\nrefit = \"lid\"\n",
		Good:    "[[step]]\nremove = \"lid\"\n[[step]]\nrefit = \"lid\"\n",
	},
	Job: onBreach(state.AlreadyOff, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d takes off more of the %s than is on%s", b.Step.Number, b.Thing, after(b.Since, ": it came off", "")),
			Help: "Take the step out, or write the step before it that puts it back."}
	}),
})
