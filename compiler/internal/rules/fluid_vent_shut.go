package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/vent-shut", Severity: finding.Warning, Title: "A cavity is filled with its vent shut",
		Why:     "The air cannot get out: the oil comes back up the filler, or the level reads full and is not.",
		Source:  "common practice, no source",
		Setting: whole(setting + "no-isolation = \"On the bench\"\ntools = []\nsupplies = [\"oil\"]\nspares = []\nwear = [\"gloves\"]\n[fluid.oil]\nkind = \"gear-oil\"\n[part.filler]\nhead = \"wing\"\n[part.vent-screw]\nhead = \"wing\"\n[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\nfill = \"filler\"\nvent = \"vent-screw\"\n"),
		Bad:     "[[step]]\nremove = \"filler\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n[[step]]\nrefit = \"filler\"\n",
		Good:    "[[step]]\nremove = \"filler\"\n[[step]]\nopen = \"vent-screw\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n[[step]]\nclose = \"vent-screw\"\n[[step]]\nrefit = \"filler\"\n",
	},
	Job: onBreach(state.VentShut, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d fills the %s, and no air gets out: the %s is shut%s", b.Step.Number, b.Thing, b.Other, after(b.Since, "", "")),
			Help: fmt.Sprintf("Open or free the %s before this step, and close it after.", b.Other)}
	}),
})
