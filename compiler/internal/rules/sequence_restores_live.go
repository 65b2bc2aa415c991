package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/restores-live", Severity: finding.Warning, Title: "An energy is given back that was not cut off",
		Why:     "Either the isolation is missing, or the machine was live all the while.",
		Source:  "29 CFR 1910.147(e)",
		Setting: whole(gearbox + "tools = []\ncautions = [\"start\", \"guard\", \"pinch\", \"rotation\"]\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\nrestore = \"Take the lock off.\"\n[cover.hood]\nguards = \"mains\"\nhead = \"wing\"\n"),
		Bad:     "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\ninspect = \"the hood all round\"\n[[close]]\nrestore = \"mains\"\n[[close]]\nrestore = \"mains\"\n",
		Good:    "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"hood\"\n[[step]]\nrefit = \"hood\"\n[[close]]\nrestore = \"mains\"\n",
	},
	Job: onBreach(state.RestoresLive, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d gives the %s back, which is live%s", b.Step.Number, b.Thing, after(b.Since, ": it came back", "")),
			Help: "Take the step out, or write the isolation that is missing."}
	}),
})
