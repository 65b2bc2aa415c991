package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/never-loosened", Severity: finding.Warning, Title: "A step tightens what no step has loosened, after something was set",
		Why:     "What is set against a tight bolt does not move, or moves back.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(quiet + "[part.lid]\n[part.sieve]\nbehind = \"lid\"\n[cover.flap]\nhead = \"wing\"\n[part.clamp]\nhead = \"wing\"\n"),
		Bad:     "[[step]]\nadjust = \"the brake band\"\nset = \"3 mm\"\n[[step]]\ntighten = \"clamp\"\nby-hand = \"A wing nut\"\n",
		Good:    "[[step]]\nloosen = \"clamp\"\n[[step]]\nadjust = \"the brake band\"\nset = \"3 mm\"\n[[step]]\ntighten = \"clamp\"\nby-hand = \"A wing nut\"\n",
	},
	Job: onBreach(state.NeverLoose, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d tightens the %s, which no step has loosened before the %s is set", b.Step.Number, b.Thing, b.Other),
			Help: "Write the step that loosens it before the one that sets; or say again in the step, where it is only tightened once more."}
	}),
})
