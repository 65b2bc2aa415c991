package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/gloves-near-rotation", Severity: finding.Warning, Title: "Gloves are asked for where something turns",
		Why:     "A turning part takes hold of a glove and pulls the hand in with it.",
		Source:  "ISO 7010 P028 (no gloves); common practice",
		Setting: setting + "supplies = []\nspares = []\ntools = []\nno-isolation = \"The machine runs for the test\"\nwear = [\"gloves\", \"clothing\"]\ncautions = [\"shaft\"]\n",
		Bad:     "[[step]]\nrun = \"the tail shaft\"\nwear = [\"gloves\"]\n",
		Good:    "[[step]]\nrun = \"the tail shaft\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			key := step.Verb.Key
			turns := key == "run" || key == "start"
			for _, implied := range p.Hazards {
				turns = turns || implied.Step == step && implied.Hazard.Key == "shaft"
			}
			for _, item := range step.Wear.Items {
				if turns && (item.Text == "gloves" || item.Text == "cut-resistant-gloves") {
					p.Found(finding.Finding{Place: item.At, Summary: fmt.Sprintf("step %d asks for gloves where something turns", step.Number),
						Help: "Take the gloves off this step, and wear them at the steps where nothing turns."})
				}
			}
		}
	},
})
