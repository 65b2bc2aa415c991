package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/wheel-in-the-air", Severity: finding.Warning, Title: "A wheel's nuts are turned hard while it hangs free",
		Why:     "The wheel turns with the wrench, and the pull that breaks a nut loose or brings it to its torque can draw the machine off the jack.",
		Source:  "common practice, no source",
		Setting: whole(setting + "end = [\"The nuts are tightened again after 50 km.\"]\nno-isolation = \"Nothing on it is driven\"\nsupplies = []\nspares = []\ntools = []\nwear = [\"helmet\"]\ncautions = [\"crushing\"]\n[part.skid]\n[part.wheel-nuts]\nhead = \"wing\"\n"),
		Bad:     "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nloosen = \"wheel-nuts\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n[[step]]\nlower = \"the far end\"\n[[step]]\ntighten = \"wheel-nuts\"\nby-hand = \"Wing nuts\"\n",
		Good:    "[[step]]\nloosen = \"wheel-nuts\"\n[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n[[step]]\nlower = \"the far end\"\n[[step]]\ntighten = \"wheel-nuts\"\nby-hand = \"Wing nuts\"\n",
	},
	Job: onBreach(state.InTheAir, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("the %s is turned at step %d while the %s hangs in the air%s", b.Thing, b.Step.Number, b.Other, after(b.Since, ", raised", "")),
			Help: "Break them loose before it is raised, and tighten them after it is let down; or say at the step what holds the wheel."}
	}),
})
