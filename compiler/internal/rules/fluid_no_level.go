package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/no-level-check", Severity: finding.Warning, Title: "A cavity is filled and nothing tells how far",
		Why:     "The figure in the manual is for a dry gearbox; what stayed in makes it too much.",
		Source:  "common practice, no source",
		Setting: whole(setting + "no-isolation = \"On the bench\"\ntools = [\"pan\"]\nsupplies = [\"oil\"]\nspares = []\nwear = [\"gloves\"]\ncautions = [\"used-oil\"]\n[tool.pan]\nkind = \"container\"\nholds = \"5 L\"\n[fluid.oil]\nkind = \"gear-oil\"\n[part.drain]\nhead = \"wing\"\n[part.filler]\nhead = \"wing\"\n[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\ndrain = \"drain\"\nfill = \"filler\"\n"),
		Bad:     "[[step]]\nremove = \"filler\"\n[[step]]\nremove = \"drain\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\nrefit = \"drain\"\n[[step]]\nfill = \"gearbox\"\n[[step]]\nrefit = \"filler\"\n",
		Good:    "[[step]]\nremove = \"filler\"\n[[step]]\nremove = \"drain\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\nrefit = \"drain\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n[[step]]\nrefit = \"filler\"\n",
	},
	Words: true,
	Job: onBreach(state.NoLevelCheck, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d fills the %s, and no step looks at the level", b.Step.Number, b.Thing),
			Help: "Write until = \"…\" with what is seen when it is full, or a step that checks the level."}
	}),
})
