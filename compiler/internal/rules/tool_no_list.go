package rules

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/no-list", Severity: finding.Error, Title: "The procedure does not say which tools to bring",
		Why:     "The walk back to the tool wall is made with the machine open.",
		Source:  "S1000D and OASIS DITA machinery task: support equipment is listed first, or said to be none",
		Setting: bench,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "tools = []\n[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		if procedure := p.Job.Procedure; !procedure.Tools.Given {
			p.Found(silent(procedure, "tools", "which tools to bring", p.kit(p.Job.Tools())))
		}
	},
})

// kit is the fewest of some tools that serve the job.
func (p *Pass) kit(tools []*model.Tool) []string {
	var demands []needs.Demand
	for _, grip := range p.Needs.Unlike(tools) {
		demands = append(demands, needs.Demand{Ways: grip.Handy(tools)})
	}
	for _, use := range p.Needs.Tools {
		demands = append(demands, needs.Demand{Ways: []needs.Set{{use.Name}}})
	}
	return needs.Smallest(demands).Tools
}
