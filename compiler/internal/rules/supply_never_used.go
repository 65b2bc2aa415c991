package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
)

var _ = add(Rule{
	Everywhere: true,
	Rule: finding.Rule{
		ID: "supply/never-used", Severity: finding.Warning, Title: "A listed fluid or consumable is used by no step",
		Why:     "A list with things that are not needed is not trusted for those that are.",
		Source:  "S1000D: every item in the list is used in a step",
		Setting: setting + "no-isolation = \"On the bench\"\nwear = []\ntools = []\nspares = []\n",
		Bad:     "supplies = [\"rags\"]\n" + "[supply.rags]\n" + "[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "supplies = [\"rags\"]\n" + "[supply.rags]\n" + "[[step]]\nclean = \"the magnet\"\nsupplies = { rags = 2 }\n",
	},
	Job: func(p *Pass) {
		p.neverUsed(p.Job.Procedure.Supplies, p.Needs.Supplies, "supplies")
	},
})

// neverUsed tells of each name on a list that no step uses.
func (p *Pass) neverUsed(list model.List, uses []needs.Use, key string) {
	help := "Name it at the step that takes it; take it off the list only if the work does without it."
	if key == "spares" {
		help = "Write replace = or spares = [...] with this name at the step that takes it; take it off the list only if the work does without it."
	}
	for _, item := range list.Items {
		if !slices.Contains(usedNames(uses), item.Name()) {
			p.Found(finding.Finding{Place: item.At, Summary: fmt.Sprintf("%q is on the list of %s and no step uses it", item.Text, key),
				Help: help})
		}
	}
}
