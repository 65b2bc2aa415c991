package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/raised-for-nothing", Severity: finding.Error, Title: "Something is raised and let down with nothing done",
		Why:     "The work it was raised for stands elsewhere in the procedure, where it is not raised.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(setting + "no-isolation = \"Nothing on it is driven\"\nsupplies = []\nspares = []\ntools = []\nwear = [\"helmet\"]\ncautions = [\"crushing\"]\n[part.skid]\n[part.wheel-nuts]\nhead = \"wing\"\n"),
		Bad:     "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nlower = \"the far end\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n",
		Good:    "[[step]]\nraise = \"the far end\"\n[[step]]\nsupport = \"the far end\"\n[[step]]\nremove = \"skid\"\n[[step]]\nrefit = \"skid\"\n[[step]]\nlower = \"the far end\"\n",
	},
	Job: onBreach(state.RaisedForNothing, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d lets the %s down and nothing was done since%s", b.Step.Number, b.Thing, after(b.Since, " it was raised", "")),
			Help: "Write the work between the two, or take both out."}
	}),
})
