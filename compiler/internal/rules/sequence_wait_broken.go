package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/wait-broken", Severity: finding.Error, Title: "A step done while waiting ends what the wait is for",
		Why:     "The oil that should drip out is shut in, and goes round with the new.",
		Source:  "the procedure itself: its steps contradict each other",
		Setting: whole(setting + "no-isolation = \"On the bench\"\ntools = [\"pan\"]\nsupplies = [\"oil\"]\nspares = []\nwear = [\"gloves\"]\ncautions = [\"used-oil\"]\n[tool.pan]\nkind = \"container\"\nholds = \"5 L\"\n[fluid.oil]\nkind = \"gear-oil\"\n[part.drain]\nhead = \"wing\"\n[part.filler]\nhead = \"wing\"\n[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\ndrain = \"drain\"\nfill = \"filler\"\n"),
		Bad:     "[[step]]\nremove = \"filler\"\n[[step]]\nremove = \"drain\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\nwait = \"20 min\"\n[[step]]\nrefit = \"drain\"\nmeanwhile = true\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n[[step]]\nrefit = \"filler\"\n",
		Good:    "[[step]]\nremove = \"filler\"\n[[step]]\nremove = \"drain\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\nwait = \"20 min\"\n[[step]]\nrefit = \"drain\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n[[step]]\nrefit = \"filler\"\n",
	},
	Job: onBreach(state.WaitBroken, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d acts on the %s while the wait%s runs", b.Step.Number, b.Thing, after(b.Since, "", "")),
			Help: "Take meanwhile out, so that it is done when the wait is over."}
	}),
})
