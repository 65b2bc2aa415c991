package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/proved-too-early", Severity: finding.Error, Title: "What is stored is proved gone before it is let off",
		Why:     "The proof shows the pressure that is still there, or is read as a failed one and passed over. After it is let off nobody looks again.",
		Source:  "29 CFR 1910.147(d)(5) and (d)(6)",
		Setting: whole(setting + "supplies = []\nspares = []\nwear = [\"eye-protection\", \"face-shield\"]\ntools = []\ncautions = [\"spring\"]\n[energy.spring]\nkind = \"spring\"\nisolate = \"Pin the arm.\"\nrelieve = \"Turn the wheel until the pointer stands at 0.\"\nprove = \"Push the arm by hand; it gives way.\"\nrestore = \"Pull the pin.\"\n"),
		Bad:     "[[prepare]]\nisolate = \"spring\"\n[[prepare]]\nprove = \"spring\"\n[[prepare]]\nrelieve = \"spring\"\n[[close]]\nrestore = \"spring\"\n",
		Good:    "[[prepare]]\nisolate = \"spring\"\n[[prepare]]\nrelieve = \"spring\"\n[[prepare]]\nprove = \"spring\"\n[[close]]\nrestore = \"spring\"\n",
	},
	Job: onBreach(state.ProvedEarly, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("the %s is proved gone at step %d and let off only at step %d", b.Thing, b.Step.Number, b.Since.Number),
			Help: "Let it off first, then prove it."}
	}),
})
