package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/avoid-no-order", Severity: finding.Warning, Title: "A message does not say what to do against the hazard",
		Why:     "“The load must be held” names nobody; whoever stands beside it waits for the other.",
		Source:  "ASD-STE100 section 7: the order first; ANSI Z535.6: how the hazard is avoided",
		Setting: worn,
		Bad:     "[[step]]\nsay = \"Wipe the rim.\"\n[[step.caution]]\nsignal = \"caution\"\nhazard = \"Sharp rim\"\nconsequence = \"It can cut you.\"\navoid = \"Gloves must be worn.\"\nwear = [\"cut-resistant-gloves\"]\n",
		Good:    "[[step]]\nsay = \"Wipe the rim.\"\n[[step.caution]]\nsignal = \"caution\"\nhazard = \"Sharp rim\"\nconsequence = \"It can cut you.\"\navoid = \"Wear gloves.\"\nwear = [\"cut-resistant-gloves\"]\n",
	},
	Words: true,
	Job: func(p *Pass) {
		for _, message := range p.authored() {
			all := p.sentences(message.Avoid)
			if len(all) > 0 && all[0].states() {
				p.Found(finding.Finding{Place: all[0].place(), Summary: fmt.Sprintf("avoid begins with %q and not with what to do", all[0].head()),
					Help: "Begin with the verb, as an order: \"Wear gloves.\", \"Stand clear of the load.\" A condition may stand before it."})
			}
		}
	},
})
