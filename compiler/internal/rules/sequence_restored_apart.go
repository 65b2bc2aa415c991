package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/restored-apart", Severity: finding.Warning, Title: "Energy comes back before a part goes on again",
		Why:     "Whoever fits the part has hands in a machine that can start.",
		Source:  "29 CFR 1910.147(e)(1): the machine is whole before the energy comes back",
		Setting: whole(gearbox) + "tools = []\ncautions = [\"start\"]\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\nrestore = \"Take the lock off.\"\n[part.bobbin]\nhead = \"none\"\n",
		Bad:     "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"bobbin\"\n[[close]]\nrestore = \"mains\"\n[[close]]\nrefit = \"bobbin\"\n[[close]]\nrun = \"the winch\"\nleast = \"1 min\"\n",
		Good:    "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"bobbin\"\n[[close]]\nrefit = \"bobbin\"\n[[close]]\nrestore = \"mains\"\n[[close]]\nrun = \"the winch\"\nleast = \"1 min\"\n",
	},
	Job: onBreach(state.RestoredApart, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("step %d gives the %s back while the %s is off, and it goes on only later", b.Step.Number, b.Thing, b.Other),
			Help: "Put the part back first, or isolate again before it goes on."}
	}),
})
