package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/left-raised", Severity: finding.Warning, Title: "Something is raised and never let down",
		Why:     "The next shift walks under it.",
		Source:  "OASIS DITA machinery task: the closing section brings the machine back",
		Setting: whole(setting + "no-isolation = \"Nothing on it is driven\"\nsupplies = []\nspares = []\ntools = []\nwear = [\"helmet\"]\ncautions = [\"crushing\"]\n[part.skid]\n"),
		Bad:     "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n",
		Good:    "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n[[step]]\nlower = \"the far end\"\n",
	},
	Job: onBreach(state.LeftRaised, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("the %s is raised at step %d and never let down", b.Thing, b.Step.Number),
			Help: "Write the step that lowers it, or say in end that it stays raised."}
	}),
})
