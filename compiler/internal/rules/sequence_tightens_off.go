package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/tightens-what-is-off", Severity: finding.Error, Title: "A step tightens what is off",
		Why:     "The bolt is not in, so the torque goes nowhere.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(walled + "tools = [\"socket-16\", \"wrench-16\", \"torque-wrench\"]\n[part.clamp]\nacross = \"16 mm\"\ntorque = \"42 N·m\"\ncondition = \"dry\"\n"),
		Bad:     "[[step]]\nremove = \"clamp\"\n[[step]]\ntighten = \"clamp\"\n[[step]]\nrefit = \"clamp\"\n[[step]]\ntighten = \"clamp\"\n",
		Good:    "[[step]]\nremove = \"clamp\"\n[[step]]\nrefit = \"clamp\"\n[[step]]\ntighten = \"clamp\"\n",
	},
	Job: onBreach(state.TightensOff, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d tightens the %s, which is off%s", b.Step.Number, b.Thing, after(b.Since, ": it came off", "")),
			Help: "Move the step behind the one that puts it back."}
	}),
})
