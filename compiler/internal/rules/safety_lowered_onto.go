package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/lowered-onto", Severity: finding.Warning, Title: "Something comes down onto what was set under it",
		Why:     "It tips on the plank, or brings the platform down with whoever stands there.",
		Source:  "common practice, no source; what stands under it is told from the words",
		Setting: whole(setting + "no-isolation = \"Nothing on it is driven\"\nsupplies = []\nspares = []\ntools = []\nwear = [\"helmet\"]\ncautions = [\"crushing\"]\n[part.skid]\n"),
		Bad:     "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nsay = \"Lay a plank under the far end.\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n[[step]]\nlower = \"the far end\"\n[[step]]\nsay = \"Take the plank away.\"\n",
		Good:    "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nsay = \"Lay a plank under the far end.\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n[[step]]\nsay = \"Take the plank away.\"\n[[step]]\nlower = \"the far end\"\n",
	},
	Job: onBreach(state.LoweredOnto, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d lets the %s down, and the %s is still under it%s", b.Step.Number, b.Thing, b.Other, after(b.Since, ", set", "")),
			Help: fmt.Sprintf("Write before it the step that takes the %s away, or say at the step that it comes down onto it.", b.Other)}
	}),
})
