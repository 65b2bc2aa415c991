package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/not-tried", Severity: finding.Warning, Title: "The energy comes back and nobody tries whether the machine is right",
		Why:     "What was put back wrong shows first when the machine works alone, with nobody looking.",
		Source:  "29 CFR 1910.147(e); common practice",
		Setting: whole(tested + "tools = []\ncautions = [\"start\", \"guard\", \"pinch\", \"rotation\"]\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\nrestore = \"Take the lock off.\"\n[cover.hood]\nguards = \"mains\"\nhead = \"wing\"\n"),
		Bad:     "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"hood\"\n[[step]]\nrefit = \"hood\"\n[[close]]\nrestore = \"mains\"\n",
		Good:    "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"hood\"\n[[step]]\nrefit = \"hood\"\n[[close]]\nrestore = \"mains\"\n[[close]]\ncheck = \"the winch, at walking pace\"\nexpect = \"it sits tight and nothing rubs\"\noutside = \"Stop, and call the foreman.\"\n",
	},
	Job: onBreach(state.NotTried, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("the %s comes back at step %d and no step after it runs the machine or looks", b.Thing, b.Step.Number),
			Help: "Write a run or a check at the close, with what is to be seen and heard; or no-close with the reason."}
	}),
})
