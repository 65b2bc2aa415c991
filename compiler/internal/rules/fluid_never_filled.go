package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/never-filled", Severity: finding.Error, Title: "A cavity is drained and never filled",
		Why:     "The machine runs dry, and is scrap within the minute.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(setting + "no-isolation = \"On the bench\"\ntools = [\"pan\"]\nspares = []\nwear = [\"gloves\"]\ncautions = [\"used-oil\"]\n"),
		Bad:     "supplies = []\n[tool.pan]\nkind = \"container\"\nholds = \"5 L\"\n[fluid.oil]\nkind = \"gear-oil\"\n[part.drain]\nhead = \"wing\"\n[part.filler]\nhead = \"wing\"\n[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\ndrain = \"drain\"\nfill = \"filler\"\n[[step]]\nremove = \"filler\"\n[[step]]\nremove = \"drain\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\nrefit = \"drain\"\n[[step]]\nrefit = \"filler\"\n",
		Good:    "supplies = [\"oil\"]\n[tool.pan]\nkind = \"container\"\nholds = \"5 L\"\n[fluid.oil]\nkind = \"gear-oil\"\n[part.drain]\nhead = \"wing\"\n[part.filler]\nhead = \"wing\"\n[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\ndrain = \"drain\"\nfill = \"filler\"\n[[step]]\nremove = \"filler\"\n[[step]]\nremove = \"drain\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\nrefit = \"drain\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n[[step]]\nrefit = \"filler\"\n",
	},
	Job: onBreach(state.NeverFilled, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("the %s is drained at step %d and never filled", b.Thing, b.Step.Number),
			Help: "Write the step that fills it, or say in end that it stays empty."}
	}),
})
