package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/restored-with-guard-off", Severity: finding.Error, Title: "An energy is given back while a guard is off",
		Why:     "The next START runs what the guard keeps hands from.",
		Source:  "29 CFR 1910.147(e)(1): the work area is inspected and guards are back before energy is restored",
		Setting: whole(gearbox + "tools = []\ncautions = [\"start\", \"guard\", \"pinch\", \"rotation\"]\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\nrestore = \"Take the lock off.\"\n[cover.hood]\nguards = \"mains\"\nhead = \"wing\"\n"),
		Bad:     "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"hood\"\n[[close]]\nrestore = \"mains\"\n[[close]]\nrefit = \"hood\"\n",
		Good:    "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"hood\"\n[[step]]\nrefit = \"hood\"\n[[close]]\nrestore = \"mains\"\n",
	},
	Excused: true,
	Job: onBreach(state.RestoredGuardOff, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Firm: true, Summary: fmt.Sprintf("step %d gives the %s back, and the %s is off%s", b.Step.Number, b.Thing, b.Other, after(b.Since, ": it came off", "")),
			Help: fmt.Sprintf("Put the %s back before this step.", b.Other)}
	}),
})
