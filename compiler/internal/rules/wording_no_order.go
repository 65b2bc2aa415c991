package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/pattern"
)

// gerund is a verb of the language with -ing and what it acts on: "removing the plug".
var gerund = pattern.MustCompile(`(?i)^(?:isolat|reliev|prov|restor|rais|support|lower|stopp|start|runn|remov|refitt|replac|loosen|tighten|disconnect|connect|open|clos|drain|fill|bleed|greas|lubricat|clean|inspect|check|measur|adjust|align|tension|slacken|sharpen|mark|record|dispos)ing (?:of |` + determiner + `)`)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/no-order", Severity: finding.Warning, Title: "A step in words does not say what to do",
		Why:     "“The plug is removed” leaves open whether it is already out, and who is to take it out.",
		Source:  "ASD-STE100 rule 5.3; DOE-STD-1029-92: a step begins with its verb",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"The plug is wiped dry.\"\n",
		Good:    "[[step]]\nsay = \"Wipe the plug dry.\"\n",
	},
	Words: true,
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if step.Verb.Key != "" || !step.Say.Set() {
				continue
			}
			all := p.sentences(step.Say)
			if len(all) == 0 || !all[0].states() && (!gerund.MatchString(all[0].words) || clause.MatchString(all[0].words)) {
				continue
			}
			p.Found(finding.Finding{Place: all[0].place(), Summary: fmt.Sprintf("step %d begins with %q and not with what to do", step.Number, all[0].head()),
				Help: "Begin with the verb, as an order: \"Wipe the plug dry.\" A condition may stand before it: \"When the oil is out, …\". What only informs is a note."})
		}
	},
})
