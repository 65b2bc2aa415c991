package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/set-while-tight", Severity: finding.Warning, Title: "Something is set when what holds it has just been tightened",
		Why:     "The setting does not take, or the tightening was for nothing.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(quiet + "[part.lid]\n[part.sieve]\nbehind = \"lid\"\n[cover.flap]\nhead = \"wing\"\n[part.clamp]\nhead = \"wing\"\n"),
		Bad:     "[[step]]\nloosen = \"clamp\"\n[[step]]\nsay = \"Move the sieve to the mark.\"\n[[step]]\ntighten = \"clamp\"\nby-hand = \"A wing nut\"\n[[step]]\nadjust = \"the brake band\"\nset = \"3 mm\"\n",
		Good:    "[[step]]\nloosen = \"clamp\"\n[[step]]\nadjust = \"the brake band\"\nset = \"3 mm\"\n[[step]]\ntighten = \"clamp\"\nby-hand = \"A wing nut\"\n",
	},
	Job: onBreach(state.SetTight, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d sets the %s, and step %d has just tightened the %s", b.Step.Number, b.Thing, b.Since.Number, b.Other),
			Help: "Set it first, then tighten."}
	}),
})
