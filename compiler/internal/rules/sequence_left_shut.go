package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/left-shut", Severity: finding.Warning, Title: "A valve is closed and never opened again",
		Why:     "The engine dies after a minute, or the pump runs dry at its next start.",
		Source:  "29 CFR 1910.147(e)(1): before energy comes back the components are operationally intact; which valves stand open while a machine works: common practice, no source",
		Setting: whole(quiet),
		Bad:     "[[step]]\nclose = \"the fuel valve\"\n",
		Good:    "[[step]]\nclose = \"the fuel valve\"\n[[step]]\nopen = \"the fuel valve\"\n",
	},
	Job: onBreach(state.LeftShut, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("the %s is closed at step %d and never opened again", b.Thing, b.Step.Number),
			Help: fmt.Sprintf("Write a step open = %q, or say in end that it stays closed.", b.Name)}
	}),
})
