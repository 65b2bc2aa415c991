package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/runs-open", Severity: finding.Warning, Title: "The machine runs before all is closed up and filled",
		Why:     "Oil is thrown out of what is open, and what is dry seizes in a minute.",
		Source:  "29 CFR 1910.147(e)(1): before energy comes back the components are operationally intact",
		Setting: whole(quiet + "[cover.lid]\nhead = \"wing\"\n"),
		Bad:     "[[step]]\nopen = \"lid\"\n[[step]]\nrun = \"the mill\"\nleast = \"2 min\"\n[[step]]\nclose = \"lid\"\n",
		Good:    "[[step]]\nopen = \"lid\"\n[[step]]\nclose = \"lid\"\n[[step]]\nrun = \"the mill\"\nleast = \"2 min\"\n",
	},
	Words: true,
	Job: onBreach(state.RunsOpen, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d runs the %s, and the %s is still %s%s", b.Step.Number, b.Thing, b.Other, b.Name, after(b.Since, ": see", "")),
			Help: "Close, tighten, connect or fill it before this step; or say in the step that it runs so on purpose."}
	}),
})
