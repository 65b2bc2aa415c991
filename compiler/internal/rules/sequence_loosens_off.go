package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/loosens-what-is-off", Severity: finding.Error, Title: "A step loosens what is off",
		Why:     "One of the two steps is wrong.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(walled + "tools = [\"socket-16\", \"wrench-16\", \"torque-wrench\"]\n[part.clamp]\nacross = \"16 mm\"\ntorque = \"42 N·m\"\ncondition = \"dry\"\n"),
		Bad:     "[[step]]\nremove = \"clamp\"\n[[step]]\nloosen = \"clamp\"\n[[step]]\nrefit = \"clamp\"\n[[step]]\ntighten = \"clamp\"\n",
		Good:    "[[step]]\nloosen = \"clamp\"\n[[step]]\nremove = \"clamp\"\n[[step]]\nrefit = \"clamp\"\n[[step]]\ntighten = \"clamp\"\n",
	},
	Job: onBreach(state.LoosensOff, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d loosens the %s, which is off%s", b.Step.Number, b.Thing, after(b.Since, ": it came off", "")),
			Help: "Move the step before the one that takes it off, or take it out."}
	}),
})
