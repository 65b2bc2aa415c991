package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/guard-off-again", Severity: finding.Error, Title: "A guard comes off after its energy came back",
		Why:     "Behind the guard the machine can start with hands in it.",
		Source:  "29 CFR 1910.147 and 1910.212(a)",
		Setting: whole(gearbox + "tools = []\ncautions = [\"start\", \"guard\", \"pinch\", \"rotation\"]\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\nrestore = \"Take the lock off.\"\n[cover.hood]\nguards = \"mains\"\nhead = \"wing\"\n"),
		Bad:     "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"hood\"\n[[step]]\nrefit = \"hood\"\n[[close]]\nrestore = \"mains\"\n[[close]]\nremove = \"hood\"\n[[close]]\nrefit = \"hood\"\n",
		Good:    "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"hood\"\n[[step]]\nrefit = \"hood\"\n[[close]]\nrestore = \"mains\"\n",
	},
	Job: onBreach(state.GuardOffLive, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Firm: true, Summary: fmt.Sprintf("step %d takes the %s off, and the %s is live again%s", b.Step.Number, b.Thing, b.Other, after(b.Since, ": it came back", "")),
			Help: "Isolate and prove it again before this step."}
	}),
})
