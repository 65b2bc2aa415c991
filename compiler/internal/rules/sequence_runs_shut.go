package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/runs-shut", Severity: finding.Warning, Title: "The machine runs or is bled while a valve that feeds it is closed",
		Why:     "A pump that draws on nothing is scored in a minute, and an engine draws air.",
		Source:  "common practice, no source",
		Setting: whole(quiet),
		Bad:     "[[step]]\nclose = \"the fuel valve\"\n[[step]]\nrun = \"the engine\"\nleast = \"2 min\"\n[[step]]\nopen = \"the fuel valve\"\n",
		Good:    "[[step]]\nclose = \"the fuel valve\"\n[[step]]\nopen = \"the fuel valve\"\n[[step]]\nrun = \"the engine\"\nleast = \"2 min\"\n",
	},
	Job: onBreach(state.RunsShut, func(_ *Pass, b state.Breach) finding.Finding {
		does := "runs"
		if b.Step.Verb.Key == "bleed" {
			does = "bleeds"
		}
		return finding.Finding{Summary: fmt.Sprintf("step %d %s the %s, and the %s is closed: see step %d", b.Step.Number, does, b.Thing, b.Other, b.Since.Number),
			Help: "Open it before this step; or say in the step that it runs so on purpose."}
	}),
})
