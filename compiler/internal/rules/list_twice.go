package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "reference/listed-twice", Severity: finding.Warning, Title: "A name stands twice on one list",
		Why:     "Whoever packs by the card looks for the second one.",
		Source:  "common practice, no source",
		Setting: walled,
		Bad:     "tools = [\"wrench-16\", \"wrench-16\"]\n[part.plug]\nacross = \"16 mm\"\n[[step]]\nloosen = \"plug\"\n",
		Good:    "tools = [\"wrench-16\"]\n[part.plug]\nacross = \"16 mm\"\n[[step]]\nloosen = \"plug\"\n",
	},
	Job: func(p *Pass) {
		procedure := p.Job.Procedure
		for _, list := range []model.List{procedure.Tools, procedure.Supplies, procedure.Spares, procedure.Wear, procedure.Cautions} {
			seen := map[string]model.Text{}
			for _, item := range list.Items {
				if first, twice := seen[item.Name()]; twice {
					p.Found(finding.Finding{Place: item.At, Summary: fmt.Sprintf("%q stands twice on the list", item.Text), Help: "Take one of them out.",
						Related: []finding.Related{{Place: first.At, Text: "the first"}}})
				}
				seen[item.Name()] = item
			}
		}
	},
})
