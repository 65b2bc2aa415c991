package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/no-stand", Severity: finding.Error, Title: "Work goes on under what is raised and on no stand",
		Why:     "A jack sinks or tips, and whoever is under it does not get out.",
		Source:  "29 CFR 1910.244(a)(2)(iii): after the load has been raised it is cribbed, blocked or otherwise secured at once",
		Setting: whole(setting + "no-isolation = \"Nothing on it is driven\"\nsupplies = []\nspares = []\ntools = []\nwear = [\"helmet\"]\ncautions = [\"crushing\"]\n[part.skid]\n"),
		Bad:     "[[step]]\nraise = \"the far end\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n[[step]]\nlower = \"the far end\"\n",
		Good:    "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n[[step]]\nlower = \"the far end\"\n",
	},
	Job: onBreach(state.RaisedBare, func(_ *Pass, b state.Breach) finding.Finding {
		does := "works on"
		if b.Looked {
			does = "brings hands to"
		}
		return finding.Finding{Firm: !b.Looked, Summary: fmt.Sprintf("step %d %s the %s while the %s is raised%s and stands on nothing", b.Step.Number, does, b.Thing, b.Other, after(b.Since, "", "")),
			Help: "Write a step support = \"…\" with the stands before it."}
	}),
})
