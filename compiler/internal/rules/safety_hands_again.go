package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/hands-after-restore", Severity: finding.Warning, Title: "Hands go in after the energy came back",
		Why:     "The lock is off, and the next who passes presses START.",
		Source:  "29 CFR 1910.147(c)(2) and (e)",
		Setting: whole(gearbox + "tools = []\ncautions = [\"start\", \"guard\", \"pinch\", \"rotation\"]\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\nrestore = \"Take the lock off.\"\n[cover.hood]\nguards = \"mains\"\nhead = \"wing\"\n"),
		Bad:     "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"hood\"\n[[step]]\nrefit = \"hood\"\n[[close]]\nrestore = \"mains\"\n[[close]]\nclean = \"the drive belt\"\n",
		Good:    "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"hood\"\n[[step]]\nclean = \"the drive belt\"\n[[step]]\nrefit = \"hood\"\n[[close]]\nrestore = \"mains\"\n",
	},
	Job: onBreach(state.HandsAgain, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d puts hands where the machine moves, and the %s is live again%s", b.Step.Number, b.Other, after(b.Since, ": it came back", "")),
			Help: "Move the step before the energy is given back, or isolate and prove it again."}
	}),
})
