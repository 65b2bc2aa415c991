package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/not-proved-again", Severity: finding.Error, Title: "A second isolation is not proved",
		Why:     "The first proof says nothing of the second lock.",
		Source:  "29 CFR 1910.147(d)(6)",
		Setting: whole(gearbox + "tools = []\ncautions = [\"start\", \"guard\", \"pinch\", \"rotation\"]\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\nrestore = \"Take the lock off.\"\n[cover.hood]\nguards = \"mains\"\nhead = \"wing\"\n"),
		Bad:     "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"hood\"\n[[step]]\nrefit = \"hood\"\n[[close]]\nrestore = \"mains\"\n[[close]]\nisolate = \"mains\"\n[[close]]\nremove = \"hood\"\n[[close]]\nrefit = \"hood\"\n[[close]]\nrestore = \"mains\"\n",
		Good:    "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"hood\"\n[[step]]\nrefit = \"hood\"\n[[close]]\nrestore = \"mains\"\n[[close]]\nisolate = \"mains\"\n[[close]]\nprove = \"mains\"\n[[close]]\nremove = \"hood\"\n[[close]]\nrefit = \"hood\"\n[[close]]\nrestore = \"mains\"\n",
	},
	Job: onBreach(state.NotProvedAgain, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Firm: true, Summary: fmt.Sprintf("step %d takes the %s off, and the %s is isolated again%s and not proved dead", b.Step.Number, b.Thing, b.Other, after(b.Since, "", "")),
			Help: fmt.Sprintf("Write a step that proves the %s dead before this one.", b.Other)}
	}),
})
