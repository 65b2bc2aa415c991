package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/support-out-early", Severity: finding.Warning, Title: "Chocks or stands come away under what is still raised",
		Why:     "It rolls off the jack, or sinks with it, on whoever is under it.",
		Source:  "29 CFR 1910.244(a)(2)(iii): a raised load is cribbed, blocked or otherwise secured; that they came away is told from the words",
		Setting: setting + "no-isolation = \"Nothing on it is driven\"\nsupplies = []\nspares = []\ntools = []\nwear = [\"helmet\"]\ncautions = [\"crushing\"]\n[part.skid]\n[part.belly-plate]\n",
		Bad:     "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nsay = \"Take the stands out.\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n[[step]]\nlower = \"the far end\"\n",
		Good:    "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n[[step]]\nsay = \"Take the stands out.\"\n[[step]]\nlower = \"the far end\"\n",
	},
	Job: onBreach(state.SupportOut, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: supportOut(b),
			Help: "Move it behind the work, or behind the step that lets it down."}
	}),
})

// supportOut says what came away under what: the chocks at the step itself, the stands
// at one before it.
func supportOut(b state.Breach) string {
	if b.Thing == "chocks" {
		return fmt.Sprintf("step %d takes the chocks away, and %s is still raised%s", b.Step.Number, b.Other, after(b.Since, "", ""))
	}
	return fmt.Sprintf("step %d works on the %s while %s is raised, and its stands came away%s", b.Step.Number, b.Thing, b.Other, after(b.Since, "", ""))
}
