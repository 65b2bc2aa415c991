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
		used := p.usedTools()
		for _, item := range p.Job.Procedure.Tools.Items {
			if p.Job.Tool(item.Name()) != nil && !used[item.Name()] {
				p.Found(finding.Finding{Place: item.At, Summary: fmt.Sprintf("%q is on the list of tools and no step uses it", item.Text),
					Help: fmt.Sprintf("Take it off the list, or name it with tools = [%q] at the step that takes it.", item.Text)})
			}
		}
	},
})

// usedTools are the listed tools that a step names or that take part in turning a
// fastener. While a fastener is not served, every tool that could be meant for it counts.
func (p *Pass) usedTools() map[string]bool {
	used := map[string]bool{}
	for _, use := range p.Needs.Tools {
		used[use.Name] = true
	}
	listed := p.tools()
	for _, grip := range p.Needs.Grips {
		ways := grip.Ways(listed)
		for _, way := range ways {
			for _, name := range way {
				used[name] = true
			}
		}
		for _, tool := range listed {
			if (len(ways) == 0 || grip.Doubt) && grip.Meant(tool) {
				used[tool.Name] = true
			}
		}
	}
	return used
}
