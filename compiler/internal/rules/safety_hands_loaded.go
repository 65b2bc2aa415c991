package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/hands-under-load", Severity: finding.Warning, Title: "Hands work on what a raised mass still pulls on",
		Why:     "A clip that slips or a strand that parts lets the mass down and takes the hand along.",
		Source:  "29 CFR 1910.147(d)(5), from memory: stored energy is let out or held before the work; which work is done by hand is common practice, no source",
		Setting: whole(worn) + "cautions = [\"crushing\", \"edge\"]\n[energy.raised-mast]\nkind = \"gravity\"\nisolate = \"Leave the winch where it is.\"\nrelieve = \"Wind the mast down onto its stop.\"\nprove = \"Push the rope. It hangs slack.\"\n[part.rope]\nhead = \"none\"\nloaded-by = [\"raised-mast\"]\n",
		Bad:     "[[step]]\nlubricate = \"rope\"\nuntil = \"it shines\"\n",
		Good:    "[[step]]\nrelieve = \"raised-mast\"\n[[step]]\nlubricate = \"rope\"\nuntil = \"it shines\"\n",
	},
	Job: onBreach(state.HandsLoaded, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d works by hand on the %s, still loaded by the %s", b.Step.Number, b.Thing, b.Other),
			Help: fmt.Sprintf("Write isolate = %q and prove = %q before it, or move the work behind the steps that do.", b.Name, b.Name)}
	}),
})
