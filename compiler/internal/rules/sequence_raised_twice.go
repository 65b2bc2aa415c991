package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/raised-twice", Severity: finding.Warning, Title: "Something is raised again and was never let down",
		Why:     "The stands are wanted at the other end, and what was worked on first still hangs.",
		Source:  "the procedure itself; that no more than one is up at a time is common practice, no source",
		Setting: whole(setting + "no-isolation = \"Nothing on it is driven\"\nsupplies = []\nspares = []\ntools = []\nwear = [\"helmet\"]\ncautions = [\"crushing\"]\n[part.skid]\n"),
		Bad:     "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n[[step]]\nlower = \"the far end\"\n",
		Good:    "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n[[step]]\nlower = \"the far end\"\n[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n[[step]]\nlower = \"the far end\"\n",
	},
	Job: onBreach(state.RaisedTwice, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d raises the %s, and it was not let down%s", b.Step.Number, b.Thing, after(b.Since, " since it was raised", "")),
			Help: "Write the step lower = \"…\" before it; or say at the step that it goes higher, and let down each that was raised."}
	}),
})
