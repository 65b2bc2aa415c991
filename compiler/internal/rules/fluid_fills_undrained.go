package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/filled-undrained", Severity: finding.Error, Title: "The drain comes out, nothing is drained, and it is filled",
		Why:     "The old oil runs over the floor, or nobody waits until it has run out and the new fills over the old.",
		Source:  "the machine's own description: where it is drained",
		Setting: whole(setting + "no-isolation = \"On the bench\"\ntools = [\"pan\"]\nsupplies = [\"oil\"]\nspares = []\nwear = [\"gloves\"]\ncautions = [\"used-oil\"]\n[tool.pan]\nkind = \"container\"\nholds = \"5 L\"\n[fluid.oil]\nkind = \"gear-oil\"\n[part.drain]\nhead = \"wing\"\n[part.filler]\nhead = \"wing\"\n[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\ndrain = \"drain\"\nfill = \"filler\"\n"),
		Bad:     "[[step]]\nremove = \"filler\"\n[[step]]\nremove = \"drain\"\ntools = [\"pan\"]\n[[step]]\nrefit = \"drain\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n[[step]]\nrefit = \"filler\"\n",
		Good:    "[[step]]\nremove = \"filler\"\n[[step]]\nremove = \"drain\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\nrefit = \"drain\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n[[step]]\nrefit = \"filler\"\n",
	},
	Job: onBreach(state.FillsUndrained, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d fills the %s, whose %s came out and which no step drains%s", b.Step.Number, b.Thing, b.Other, after(b.Since, ": see", "")),
			Help: "Write the drain step, with until and into, after the one that takes the plug out."}
	}),
})
