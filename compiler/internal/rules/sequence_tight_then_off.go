package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/tightened-then-off", Severity: finding.Warning, Title: "A step tightens what the next ones take off",
		Why:     "One of the two is the wrong way round.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(quiet + "[part.clamp]\nhead = \"wing\"\n"),
		Bad:     "[[step]]\ntighten = \"clamp\"\nby-hand = \"A wing nut\"\n[[step]]\nremove = \"clamp\"\n[[step]]\nrefit = \"clamp\"\n",
		Good:    "[[step]]\nloosen = \"clamp\"\n[[step]]\nremove = \"clamp\"\n[[step]]\nrefit = \"clamp\"\n[[step]]\ntighten = \"clamp\"\nby-hand = \"A wing nut\"\n",
	},
	Job: onBreach(state.TightThenOff, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d tightens the %s, and step %d takes it off or lets it go again", b.Since.Number, b.Thing, b.Step.Number),
			Help: "Write loosen where it is meant; or say in the step why it is tightened first."}
	}),
})
