package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/order-in-message", Severity: finding.Warning, Title: "A message gives an order where it names the hazard",
		Why:     "Who looks for what to do looks at the end of the message, and finds half of it.",
		Source:  "ANSI Z535.6: hazard, consequence, avoidance, in this order; ASD-STE100 section 7",
		Setting: worn,
		Bad:     "[[step]]\nsay = \"Wipe the rim.\"\n[[step.caution]]\nsignal = \"caution\"\nhazard = \"Sharp rim\"\nconsequence = \"It can cut you. Keep the rag flat.\"\navoid = \"Wear gloves.\"\nwear = [\"cut-resistant-gloves\"]\n",
		Good:    "[[step]]\nsay = \"Wipe the rim.\"\n[[step.caution]]\nsignal = \"caution\"\nhazard = \"Sharp rim\"\nconsequence = \"It can cut you.\"\navoid = \"Keep the rag flat, and wear gloves.\"\nwear = [\"cut-resistant-gloves\"]\n",
	},
	Words: true,
	Job: func(p *Pass) {
		for _, message := range p.authored() {
			for _, text := range []model.Text{message.Hazard, message.Consequence} {
				for _, s := range p.sentences(text) {
					if firmOrder.MatchString(s.words) {
						p.Found(finding.Finding{Place: s.place(), Summary: fmt.Sprintf("the message on %q orders before it comes to avoid: %q", message.Hazard.Text, s.head()),
							Help: "Put what to do into avoid; hazard and consequence only tell what it is and what it does."})
					}
				}
			}
		}
	},
})
