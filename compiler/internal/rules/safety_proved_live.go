package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/proved-not-isolated", Severity: finding.Error, Title: "What no step isolates is proved dead",
		Why:     "The proof shows only that it stands still now; nobody has seen to it that it stays so.",
		Source:  "29 CFR 1910.147(d)(3) to (d)(6)",
		Setting: whole(gearbox + "tools = []\ncautions = [\"start\", \"guard\", \"pinch\", \"rotation\"]\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\nrestore = \"Take the lock off.\"\n[energy.lamps]\nkind = \"electric\"\nisolate = \"Pull the fuse.\"\nprove = \"Press the switch.\"\nrestore = \"Put the fuse in.\"\n"),
		Bad:     "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[prepare]]\nprove = \"lamps\"\n[[close]]\nrestore = \"mains\"\n",
		Good:    "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[prepare]]\nisolate = \"lamps\"\n[[prepare]]\nprove = \"lamps\"\n[[close]]\nrestore = \"mains\"\n[[close]]\nrestore = \"lamps\"\n",
	},
	Job: onBreach(state.ProvedLive, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d proves the %s dead, which no step isolates", b.Step.Number, b.Thing),
			Help: fmt.Sprintf("Write a step isolate = %q before it.", b.Name)}
	}),
})
