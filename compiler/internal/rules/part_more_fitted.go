package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "part/more-fitted", Severity: finding.Warning, Title: "More new ones go in than came off",
		Why:     "The pick list brings too many, or one has no place to go.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(setting + "no-isolation = \"On the bench\"\nsupplies = []\nspares = [\"new-clip\"]\ntools = []\nwear = []\n[spare.new-clip]\n[part.clip]\ncount = 4\n"),
		Bad:     "[[step]]\nremove = \"clip\"\n[[step]]\nreplace = \"new-clip\"\ncount = 5\n",
		Good:    "[[step]]\nremove = \"clip\"\n[[step]]\nreplace = \"new-clip\"\ncount = 4\n",
	},
	Job: onBreach(state.MoreFitted, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d puts %d in, and %d of the %s came off", b.Step.Number, b.Back, b.Out, b.Other),
			Help: "Correct the count at one of the steps, or at the part."}
	}),
})
