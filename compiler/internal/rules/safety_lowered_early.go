package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/lowered-before-done", Severity: finding.Warning, Title: "It is let down before what came off under it is back",
		Why:     "The part is then fitted lying under a machine that stands on nothing but itself, or it is raised again in haste.",
		Source:  "common practice, no source",
		Setting: setting + "no-isolation = \"Nothing on it is driven\"\nsupplies = []\nspares = []\ntools = []\nwear = [\"helmet\"]\ncautions = [\"crushing\"]\n[part.skid]\n[part.belly-plate]\n",
		Bad:     "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nremove = \"belly-plate\"\n[[step]]\nlower = \"the far end\"\n[[step]]\nrefit = \"belly-plate\"\n",
		Good:    "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nremove = \"belly-plate\"\n[[step]]\nrefit = \"belly-plate\"\n[[step]]\nlower = \"the far end\"\n",
	},
	Job: onBreach(state.LoweredEarly, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d lets %s down, and the %s goes back under it only later%s", b.Step.Number, b.Thing, b.Other, after(b.Since, ": it came off", "")),
			Help: fmt.Sprintf("Put the %s back before it, or raise and support it again.", b.Other)}
	}),
})
