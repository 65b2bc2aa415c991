package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/left-loose", Severity: finding.Error, Title: "A fastener is loosened and never tightened",
		Why:     "It works out, and takes the setting with it.",
		Source:  "OASIS DITA machinery task and S1000D: the machine is brought back to the state the closing section says",
		Setting: whole(walled),
		Bad:     "tools = [\"wrench-16\"]\n[part.clamp]\nacross = \"16 mm\"\ntorque = \"42 N·m\"\ncondition = \"dry\"\n[[step]]\nloosen = \"clamp\"\n",
		Good:    "tools = [\"wrench-16\", \"socket-16\", \"torque-wrench\"]\n[part.clamp]\nacross = \"16 mm\"\ntorque = \"42 N·m\"\ncondition = \"dry\"\n[[step]]\nloosen = \"clamp\"\n[[step]]\ntighten = \"clamp\"\n",
	},
	Job: onBreach(state.LeftLoose, func(_ *Pass, b state.Breach) finding.Finding {
		summary := fmt.Sprintf("the %s is loosened at step %d and never tightened", b.Thing, b.Step.Number)
		if b.Out > 0 {
			summary = fmt.Sprintf("%d of the %s are loosened at step %d and not tightened", b.Out, b.Thing, b.Step.Number)
		}
		return finding.Finding{Summary: summary,
			Help: fmt.Sprintf("Write a step tighten = %q, or say in end that it stays loose.", b.Name)}
	}),
})
