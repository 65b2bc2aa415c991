package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/still-loaded", Severity: finding.Error, Title: "A part comes loose while an energy still loads it",
		Why:     "It jumps, swings or sprays the moment its last thread lets go.",
		Source:  "29 CFR 1910.147(d)(5): stored energy is relieved or held before the work begins",
		Setting: whole(worn) + "cautions = [\"spring\"]\n[energy.band-tension]\nkind = \"spring\"\nisolate = \"Leave the wheel where it is.\"\nrelieve = \"Turn the wheel to the left until the pointer is at 0.\"\nprove = \"Push the band in by hand.\"\n[part.band]\nhead = \"none\"\nloaded-by = [\"band-tension\"]\n",
		Bad:     "[[step]]\nremove = \"band\"\n[[step]]\nrefit = \"band\"\n",
		Good:    "[[step]]\nrelieve = \"band-tension\"\n[[step]]\nremove = \"band\"\n[[step]]\nrefit = \"band\"\n",
	},
	Job: onBreach(state.Loaded, func(_ *Pass, b state.Breach) finding.Finding {
		help := fmt.Sprintf("Write relieve = %q before it, or isolate = %q where nothing is to be let out.", b.Name, b.Name)
		if b.Tensioner {
			help = fmt.Sprintf("Write loosen = %q before it.", b.Name)
		}
		return finding.Finding{Summary: fmt.Sprintf("step %d lets the %s go, still loaded by the %s", b.Step.Number, b.Thing, b.Other), Help: help}
	}),
})
