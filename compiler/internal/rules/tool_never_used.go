package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Everywhere: true,
	Rule: finding.Rule{
		ID: "tool/never-used", Severity: finding.Warning, Title: "A listed tool is used by no step",
		Why:     "A list with things that are not needed is not trusted for those that are.",
		Source:  "S1000D: every item in the list is used in a step",
		Setting: walled,
		Bad:     "tools = [\"wrench-16\", \"wrench-17\"]\n[part.plug]\nacross = \"16 mm\"\n[[step]]\nloosen = \"plug\"\n",
		Good:    "tools = [\"wrench-16\"]\n[part.plug]\nacross = \"16 mm\"\n[[step]]\nloosen = \"plug\"\n",
	},
	Job: func(p *Pass) {
		used := p.Needs.Used().Tools
		for _, item := range p.Job.Procedure.Tools.Items {
			if p.Job.Tool(item.Name()) != nil && !used[item.Name()] {
				p.Found(finding.Finding{Place: item.At, Summary: fmt.Sprintf("%q is on the list of tools and no step uses it", item.Text),
					Help: fmt.Sprintf("Name it with tools = [%q] at the step that takes it, or write the step that is missing; take it off the list only if the work does without it.", item.Text)})
			}
		}
	},
})
