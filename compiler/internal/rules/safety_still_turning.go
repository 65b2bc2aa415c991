package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/still-turning", Severity: finding.Error, Title: "A guard comes off before the mass stands still",
		Why:     "A saw runs on for a minute after STOP, and makes no sound.",
		Source:  "16 CFR 1205.5 (blade stop time); 29 CFR 1910.147(d)(5): stored energy",
		Setting: whole(gearbox + "tools = []\ncautions = [\"start\", \"guard\", \"pinch\", \"rotation\"]\n[energy.mains]\nkind = \"electric\"\nstops-in = \"90 s\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\nrestore = \"Take the lock off.\"\n[cover.hood]\nguards = \"mains\"\nhead = \"wing\"\n"),
		Bad:     "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"hood\"\n[[step]]\nrefit = \"hood\"\n[[close]]\nrestore = \"mains\"\n",
		Good:    "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[prepare]]\nwait = \"2 min\"\n[[step]]\nremove = \"hood\"\n[[step]]\nrefit = \"hood\"\n[[close]]\nrestore = \"mains\"\n",
	},
	Job: onBreach(state.StillTurning, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Firm: true, Summary: fmt.Sprintf("step %d takes the %s off, and what the %s drives turns on longer than the wait%s", b.Step.Number, b.Thing, b.Other, after(b.Since, " since it was isolated", "")),
			Help: "Write a wait of at least stops-in between them, or a proof that looks whether it stands still."}
	}),
})
