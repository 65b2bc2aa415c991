package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/drains-shut", Severity: finding.Error, Title: "A cavity is drained while its plug is in",
		Why:     "Nothing runs out, and the oil that was to go is taken for the new one.",
		Source:  "the machine's own description: where it is drained",
		Setting: whole(setting + "no-isolation = \"On the bench\"\ntools = [\"pan\"]\nsupplies = [\"oil\"]\nspares = []\nwear = [\"gloves\"]\ncautions = [\"used-oil\"]\n[tool.pan]\nkind = \"container\"\nholds = \"5 L\"\n[fluid.oil]\nkind = \"gear-oil\"\n[part.drain]\nhead = \"wing\"\n[part.filler]\nhead = \"wing\"\n[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\ndrain = \"drain\"\nfill = \"filler\"\n"),
		Bad:     "[[step]]\nremove = \"filler\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n[[step]]\nrefit = \"filler\"\n",
		Good:    "[[step]]\nremove = \"filler\"\n[[step]]\nremove = \"drain\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\nrefit = \"drain\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n[[step]]\nrefit = \"filler\"\n",
	},
	Job: onBreach(state.DrainsShut, func(p *Pass, b state.Breach) finding.Finding {
		for _, before := range p.Job.Steps[:b.Step.Number-1] {
			if before.Verb.Key == "" && strings.Contains(strings.ToLower(before.Say.Text), strings.ToLower(b.Other)) {
				return finding.Finding{Summary: fmt.Sprintf("step %d drains the %s, and no verb has taken the %s out: step %d speaks of it in words only", b.Step.Number, b.Thing, b.Other, before.Number),
					Help:    fmt.Sprintf("Write it there with its verb: remove = %q, and what else there is to say in say.", b.Name),
					Related: []finding.Related{{Place: at(before), Text: "words alone change nothing"}}}
			}
		}
		return finding.Finding{Summary: fmt.Sprintf("step %d drains the %s, and the %s is in%s", b.Step.Number, b.Thing, b.Other, after(b.Since, ": it went back", "")),
			Help: fmt.Sprintf("Write the step that takes the %s out before this one.", b.Other)}
	}),
})
