package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/held-tight", Severity: finding.Warning, Title: "Something is set while what holds it is tight",
		Why:     "It does not move, or it moves back when the fastener is loosened after all.",
		Source:  "the procedure itself: its steps and held-by contradict each other",
		Setting: whole(quiet + "[part.clamp]\nhead = \"wing\"\n[limit.band-gap]\nlimit = \"2 to 4 mm\"\noutside = \"Set the band again.\"\nheld-by = [\"clamp\"]\n"),
		Bad:     "[[step]]\nadjust = \"band-gap\"\n[[step]]\nloosen = \"clamp\"\n[[step]]\nsay = \"Wipe the band.\"\n[[step]]\ntighten = \"clamp\"\nby-hand = \"A wing nut\"\n",
		Good:    "[[step]]\nloosen = \"clamp\"\n[[step]]\nadjust = \"band-gap\"\n[[step]]\ntighten = \"clamp\"\nby-hand = \"A wing nut\"\n",
	},
	Job: onBreach(state.HeldTight, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d sets the %s while the %s is tight", b.Step.Number, b.Thing, b.Other),
			Help: fmt.Sprintf("Write loosen = %q before it and tighten = %q after it; or take %q out of held-by.", b.Name, b.Name, b.Name)}
	}),
})
