package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/tightened-for-nothing", Severity: finding.Warning, Title: "What is loosened is tightened with nothing done between",
		Why:     "The step it was loosened for stands elsewhere, where it is tight.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(quiet + "[part.lid]\n[part.sieve]\nbehind = \"lid\"\n[cover.flap]\nhead = \"wing\"\n[part.clamp]\nhead = \"wing\"\n"),
		Bad:     "[[step]]\nadjust = \"the brake band\"\nset = \"3 mm\"\n[[step]]\nloosen = \"clamp\"\n[[step]]\ntighten = \"clamp\"\nby-hand = \"A wing nut\"\n",
		Good:    "[[step]]\nloosen = \"clamp\"\n[[step]]\nadjust = \"the brake band\"\nset = \"3 mm\"\n[[step]]\ntighten = \"clamp\"\nby-hand = \"A wing nut\"\n",
	},
	Job: onBreach(state.TightForNothing, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("the %s is loosened and tightened at once, at steps %d and %d", b.Thing, b.Since.Number, b.Step.Number),
			Help: "Write between the two what it is loosened for; or say in the step why it is done."}
	}),
})
