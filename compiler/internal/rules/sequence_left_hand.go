package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/left-hand-tight", Severity: finding.Error, Title: "A part is put in and never tightened",
		Why:     "It works loose, and the oil or the wheel goes with it.",
		Source:  "OASIS DITA machinery task and S1000D: the machine is brought back to the state the closing section says",
		Setting: whole(walled),
		Bad:     "tools = [\"wrench-16\"]\n[part.clamp]\nacross = \"16 mm\"\ntorque = \"42 N·m\"\ncondition = \"dry\"\n[[step]]\nremove = \"clamp\"\n[[step]]\nrefit = \"clamp\"\n",
		Good:    "tools = [\"wrench-16\", \"socket-16\", \"torque-wrench\"]\n[part.clamp]\nacross = \"16 mm\"\ntorque = \"42 N·m\"\ncondition = \"dry\"\n[[step]]\nremove = \"clamp\"\n[[step]]\nrefit = \"clamp\"\n[[step]]\ntighten = \"clamp\"\n",
	},
	Job: onBreach(state.LeftHand, func(_ *Pass, b state.Breach) finding.Finding {
		summary := fmt.Sprintf("the %s is put in at step %d and never tightened", b.Thing, b.Step.Number)
		if b.Out > 0 {
			summary = fmt.Sprintf("%d of the %s are put in at step %d and not tightened", b.Out, b.Thing, b.Step.Number)
		}
		return finding.Finding{Summary: summary,
			Help: fmt.Sprintf("Write a step tighten = %q, or by-hand = \"…\" at the step with the reason.", b.Name)}
	}),
})
