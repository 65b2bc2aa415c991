package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/no-air", Severity: finding.Warning, Title: "A cavity is drained with no way for air",
		Why:     "The oil gurgles out for an hour, and a third of it stays in.",
		Source:  "common practice, no source",
		Setting: whole(setting + "no-isolation = \"On the bench\"\ntools = [\"pan\"]\nsupplies = [\"oil\"]\nspares = []\nwear = [\"gloves\"]\ncautions = [\"used-oil\"]\n[tool.pan]\nkind = \"container\"\nholds = \"5 L\"\n[fluid.oil]\nkind = \"gear-oil\"\n[part.drain]\nhead = \"wing\"\n[part.filler]\nhead = \"wing\"\n[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\ndrain = \"drain\"\nfill = \"filler\"\n"),
		Bad:     "[[step]]\nremove = \"drain\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\nrefit = \"drain\"\n[[step]]\nremove = \"filler\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n[[step]]\nrefit = \"filler\"\n",
		Good:    "[[step]]\nremove = \"filler\"\n[[step]]\nremove = \"drain\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\nrefit = \"drain\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n[[step]]\nrefit = \"filler\"\n",
	},
	Job: onBreach(state.NoAir, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d drains the %s, and no air gets in: the %s is in", b.Step.Number, b.Thing, b.Other),
			Help: fmt.Sprintf("Take the %s out before it, or write vent = \"…\" at the cavity if it breathes elsewhere.", b.Other)}
	}),
})
