package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/tilted-open", Severity: finding.Error, Title: "The machine is turned over with a cavity open",
		Why:     "What is in it is on the floor and in the electrics.",
		Source:  "the machine's own description: the cavity is open above or below",
		Setting: whole(setting + "no-isolation = \"On the bench\"\ntools = []\nsupplies = []\nspares = []\nwear = [\"gloves\"]\ncautions = [\"used-oil\"]\n[fluid.oil]\nkind = \"gear-oil\"\n[part.drain]\nhead = \"wing\"\n[part.filler]\nhead = \"wing\"\n[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\ndrain = \"drain\"\nfill = \"filler\"\n"),
		Bad:     "[[step]]\nremove = \"filler\"\n[[step]]\nturn-over = \"the whole gearbox\"\n[[step]]\nrefit = \"filler\"\n",
		Good:    "[[step]]\nremove = \"filler\"\n[[step]]\nrefit = \"filler\"\n[[step]]\nturn-over = \"the whole gearbox\"\n",
	},
	Job: onBreach(state.TiltedOpen, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d turns the machine with the %s open: the %s is out", b.Step.Number, b.Thing, b.Other),
			Help: fmt.Sprintf("Put the %s in first, or drain the %s.", b.Other, b.Thing)}
	}),
})
