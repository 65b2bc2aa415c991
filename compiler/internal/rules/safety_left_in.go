package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/left-in", Severity: finding.Warning, Title: "The machine runs with a wedge or a locking pin in",
		Why:     "The pin shears or the wedge is thrown, and the machine starts with a jolt.",
		Source:  "29 CFR 1910.147(e)(1): what does not belong there is taken out before energy is restored; what is taken for such a thing is told from the words",
		Setting: setting + "no-isolation = \"The machine runs for the test\"\nsupplies = []\nspares = []\ntools = []\nwear = [\"eye-protection\"]\ncautions = [\"start\", \"pinch\", \"rotation\"]\n",
		Bad:     "[[step]]\nsay = \"Push the locking pin into the drum.\"\n[[step]]\nrun = \"the mill\"\nleast = \"2 min\"\n[[step]]\nsay = \"Pull the locking pin out.\"\n",
		Good:    "[[step]]\nsay = \"Push the locking pin into the drum.\"\n[[step]]\nsay = \"Pull the locking pin out.\"\n[[step]]\nrun = \"the mill\"\nleast = \"2 min\"\n",
	},
	Job: onBreach(state.LeftIn, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d runs the %s, and the %s is still in%s", b.Step.Number, b.Thing, b.Other, after(b.Since, ": it went in", "")),
			Help: fmt.Sprintf("Write before it the step that takes the %s out.", b.Other)}
	}),
})
