package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/hands-while-running", Severity: finding.Warning, Title: "Hands go to what turns, and nothing stops the machine",
		Why:     "The card says run and then reach in; whoever follows it reaches into a running machine.",
		Source:  "29 CFR 1910.147(a)(2)(ii), from memory: work that puts a part of the body where the machine moves is done with its energy controlled",
		Setting: setting + "no-isolation = \"The machine runs for the test\"\nsupplies = []\nspares = []\ntools = []\nwear = [\"eye-protection\"]\ncautions = [\"start\", \"pinch\", \"rotation\"]\n",
		Bad:     "[[step]]\nrun = \"the mill\"\nleast = \"2 min\"\n[[step]]\nclean = \"the drive belt\"\n",
		Good:    "[[step]]\nrun = \"the mill\"\nleast = \"2 min\"\n[[step]]\nstop = \"the mill\"\n[[step]]\nclean = \"the drive belt\"\n",
	},
	Words: true,
	Job: onBreach(state.HandsRunning, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d puts hands to what turns, and nothing has stopped the machine%s", b.Step.Number, after(b.Since, " that was set going", "")),
			Help: "Write a step stop = \"…\" before it, and isolate and prove it where it can start again; or say in the step that it is done while the machine runs, and from where."}
	}),
})
