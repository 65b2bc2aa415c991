package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/not-restored", Severity: finding.Warning, Title: "An energy is cut off and never given back",
		Why:     "The machine stays dead, or somebody who was not there takes the lock off.",
		Source:  "29 CFR 1910.147(e)",
		Setting: whole(gearbox + "tools = []\ncautions = [\"start\", \"guard\", \"pinch\", \"rotation\"]\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\nrestore = \"Take the lock off.\"\n[cover.hood]\nguards = \"mains\"\nhead = \"wing\"\n"),
		Bad:     "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"hood\"\n[[step]]\nrefit = \"hood\"\n",
		Good:    "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"hood\"\n[[step]]\nrefit = \"hood\"\n[[close]]\nrestore = \"mains\"\n",
	},
	Job: onBreach(state.NotRestored, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("the %s is isolated at step %d and never given back", b.Thing, b.Step.Number),
			Help: fmt.Sprintf("Write a step restore = %q at the close, or say in end that the lock stays on.", b.Name)}
	}),
})
