package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/lowered-apart", Severity: finding.Error, Title: "Something is let down on a part that is off",
		Why:     "It comes down on the hub, or on the hand that holds the wheel.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(setting + "no-isolation = \"Nothing on it is driven\"\nsupplies = []\nspares = []\ntools = []\nwear = [\"helmet\"]\ncautions = [\"crushing\"]\n[part.skid]\n"),
		Bad:     "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nremove = \"skid\"\n[[step]]\nlower = \"the far end\"\n[[step]]\nrefit = \"skid\"\n",
		Good:    "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n[[step]]\nlower = \"the far end\"\n",
	},
	Job: onBreach(state.LoweredApart, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d lets the %s down, and the %s is off%s", b.Step.Number, b.Thing, b.Other, after(b.Since, ": it came off", "")),
			Help: fmt.Sprintf("Put the %s back before it, or say in end that it stays off.", b.Other)}
	}),
})
