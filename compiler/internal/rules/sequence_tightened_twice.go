package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/tightened-twice", Severity: finding.Warning, Title: "What is tight is tightened once more",
		Why:     "It was copied, or another fastener is meant, which is then left loose.",
		Source:  "the procedure itself: nothing lets it go between the two",
		Setting: whole(quiet + "[part.clamp]\nhead = \"wing\"\n"),
		Bad:     "[[step]]\nloosen = \"clamp\"\n[[step]]\nadjust = \"the brake band\"\nset = \"3 mm\"\n[[step]]\ntighten = \"clamp\"\nby-hand = \"A wing nut\"\n[[step]]\nclean = \"the drum\"\n[[step]]\ntighten = \"clamp\"\nby-hand = \"A wing nut\"\n",
		Good:    "[[step]]\nloosen = \"clamp\"\n[[step]]\nadjust = \"the brake band\"\nset = \"3 mm\"\n[[step]]\ntighten = \"clamp\"\nby-hand = \"A wing nut\"\n[[step]]\nclean = \"the drum\"\n",
	},
	Job: onBreach(state.TightTwice, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("the %s is tight since step %d, and step %d tightens it once more", b.Thing, b.Since.Number, b.Step.Number),
			Help: "Name what is meant, or take the step out; or say in it that it is tightened again, and why."}
	}),
})
