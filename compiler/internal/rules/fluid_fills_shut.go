package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/filled-through-a-plug", Severity: finding.Error, Title: "A cavity is filled while its filler is shut",
		Why:     "Somebody looks for another hole, and fills the breather.",
		Source:  "the machine's own description: where it is filled",
		Setting: whole(setting + "no-isolation = \"On the bench\"\ntools = [\"pan\"]\nsupplies = [\"oil\"]\nspares = []\nwear = [\"gloves\"]\ncautions = [\"used-oil\"]\n[tool.pan]\nkind = \"container\"\nholds = \"5 L\"\n[fluid.oil]\nkind = \"gear-oil\"\n[part.drain]\nhead = \"wing\"\n[part.filler]\nhead = \"wing\"\n[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\ndrain = \"drain\"\nfill = \"filler\"\n"),
		Bad:     "[[step]]\nremove = \"filler\"\n[[step]]\nremove = \"drain\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\nrefit = \"drain\"\n[[step]]\nrefit = \"filler\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n",
		Good:    "[[step]]\nremove = \"filler\"\n[[step]]\nremove = \"drain\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\nrefit = \"drain\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n[[step]]\nrefit = \"filler\"\n",
	},
	Job: onBreach(state.FillsShut, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d fills the %s, and the %s is in%s", b.Step.Number, b.Thing, b.Other, after(b.Since, ": it went back", "")),
			Help: fmt.Sprintf("Take the %s out before it, or move this step before it goes back.", b.Other)}
	}),
})
