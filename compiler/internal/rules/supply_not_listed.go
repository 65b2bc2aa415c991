package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "supply/not-listed", Severity: finding.Error, Title: "A fluid or consumable the work takes is not on the list",
		Why:     "What is missing is found out with the machine open.",
		Source:  "S1000D: every item used in a step stands in the list; MIL-STD-40051-2: what is always renewed is listed first",
		Setting: setting + "no-isolation = \"On the bench\"\nwear = []\ntools = []\nspares = []\n",
		Bad:     "supplies = []\n" + "[supply.rags]\n" + "[[step]]\nclean = \"the magnet\"\nsupplies = { rags = 2 }\n",
		Good:    "supplies = [\"rags\"]\n" + "[supply.rags]\n" + "[[step]]\nclean = \"the magnet\"\nsupplies = { rags = 2 }\n",
	},
	Job: func(p *Pass) {
		if procedure := p.Job.Procedure; procedure.Supplies.Given {
			p.notListed(p.Needs.Supplies, procedure.Supplies, "supplies")
		}
	},
})

// notListed tells once of each name that steps use and a list has not.
func (p *Pass) notListed(uses []needs.Use, list model.List, key string) {
	told := map[string]bool{}
	for _, use := range uses {
		if list.Has(use.Name) || told[use.Name] || use.Name == "" {
			continue
		}
		told[use.Name] = true
		p.Found(finding.Finding{Place: use.At, Summary: fmt.Sprintf("step %d takes %q (%s), which is not on the list of %s", use.Step.Number, use.Name, use.Why, key),
			Help:  fmt.Sprintf("Add %q to %s of the procedure.", use.Name, key),
			Fixes: []finding.Fix{{Title: fmt.Sprintf("Add %q to %s", use.Name, key), Certain: true, Edits: []finding.Edit{addTo(list, p.Job.Procedure.Header, key, use.Name)}}}})
	}
}
