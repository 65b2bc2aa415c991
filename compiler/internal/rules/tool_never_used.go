package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
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
			if tool := p.Job.Tool(item.Name()); tool != nil && !lamp(tool) && !used[item.Name()] {
				p.Found(finding.Finding{Place: item.At, Summary: fmt.Sprintf("%q is on the list of tools and no step uses it", item.Text),
					Help: fmt.Sprintf("Name it with tools = [%q] at the step that takes it, or write the step that is missing; take it off the list only if the work does without it.", item.Text)})
			}
		}
	},
})

// Words of a lamp that one sees by, and of what only has its name.
var (
	lamps   = pattern.MustCompile(`(?i)\b(?:hand ?lamp|head ?lamp|inspection (?:lamp|light)|work ?light|flash ?light|torch|lamp)\b`)
	noLamps = pattern.MustCompile(`(?i)\b(?:blow|gas|weld\w*|cutting|plasma|heat\w*|test|timing|uv) ?-?(?:torch|lamp|light)\b`)
)

// lamp reports whether a tool is a lamp, which is at hand for the whole job and no step's own.
func lamp(tool *model.Tool) bool {
	words := tool.Title.Text + " " + model.Spoken(tool.Name)
	return (tool.Kind.Text == "light" || lamps.MatchString(words)) && !noLamps.MatchString(words)
}
