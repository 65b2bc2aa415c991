package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/runs-with-guard-off", Severity: finding.Error, Title: "The machine runs with a guard off",
		Why:     "Whoever stands beside it is drawn in.",
		Source:  "29 CFR 1910.212(a)(1)",
		Setting: whole(gearbox + "tools = []\ncautions = [\"rotation\", \"guard\"]\n[energy.flywheel]\nkind = \"rotation\"\nisolate = \"Press STOP, and wait until it stands still.\"\nprove = \"Look through the slot. It stands still.\"\n[cover.hood]\nguards = \"flywheel\"\nhead = \"wing\"\n"),
		Bad:     "[[prepare]]\nisolate = \"flywheel\"\n[[prepare]]\nprove = \"flywheel\"\n[[step]]\nremove = \"hood\"\n[[step]]\nrun = \"the feed\"\nleast = \"2 min\"\n[[step]]\nrefit = \"hood\"\n",
		Good:    "[[prepare]]\nisolate = \"flywheel\"\n[[prepare]]\nprove = \"flywheel\"\n[[step]]\nremove = \"hood\"\n[[step]]\nrefit = \"hood\"\n[[step]]\nrun = \"the feed\"\nleast = \"2 min\"\n",
	},
	Excused: true,
	Job: onBreach(state.RunsGuardOff, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Firm: true, Summary: fmt.Sprintf("step %d runs the %s, and the %s is off%s", b.Step.Number, b.Thing, b.Other, after(b.Since, ": it came off", "")),
			Help: fmt.Sprintf("Put the %s back before this step; if it must run open to be looked at, say in the step how far to stand, with a figure.", b.Other)}
	}),
})
