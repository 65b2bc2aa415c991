package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/runs-isolated", Severity: finding.Error, Title: "The machine is to run while its energy is cut off",
		Why:     "It does not run, and somebody takes the lock off to see why.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(gearbox + "tools = []\ncautions = [\"start\", \"guard\", \"pinch\", \"rotation\"]\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\nrestore = \"Take the lock off.\"\n[cover.hood]\nguards = \"mains\"\nhead = \"wing\"\n"),
		Bad:     "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[close]]\nrun = \"the conveyor\"\nleast = \"2 min\"\n[[close]]\nrestore = \"mains\"\n",
		Good:    "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[close]]\nrestore = \"mains\"\n[[close]]\nrun = \"the conveyor\"\nleast = \"2 min\"\n",
	},
	Job: onBreach(state.RunsDead, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d runs the %s, and the %s is cut off%s", b.Step.Number, b.Thing, b.Other, after(b.Since, "", "")),
			Help: fmt.Sprintf("Give the %s back before this step.", b.Other)}
	}),
})
