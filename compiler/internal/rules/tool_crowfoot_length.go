package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/crowfoot-length", Severity: finding.Warning, Title: "An adapter is not as long as the crowfoot it is",
		Why:     "The setting of the wrench is worked out from the length; with another one the fastener gets another torque.",
		Source:  "US Army TM 9-254, figure 4-5: setting = torque × lever / (lever + adapter)",
		Setting: walled,
		Bad:     "tools = [\"crowfoot-16\", \"torque-wrench-300\"]\n[tool.crowfoot-16]\nkind = \"crowfoot\"\nsizes = \"16 mm\"\ndrive = \"1/2\"\nlength = \"40 mm\"\n[part.plug]\nacross = \"16 mm\"\ntorque = \"80 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\nadapter = { length = \"80 mm\", wrench = \"450 mm\" }\n",
		Good:    "tools = [\"crowfoot-16\", \"torque-wrench-300\"]\n[tool.crowfoot-16]\nkind = \"crowfoot\"\nsizes = \"16 mm\"\ndrive = \"1/2\"\nlength = \"40 mm\"\n[part.plug]\nacross = \"16 mm\"\ntorque = \"80 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\nadapter = { length = \"40 mm\", wrench = \"450 mm\" }\n",
	},
	Job: func(p *Pass) {
		for _, grip := range p.Needs.Grips {
			adapter := grip.Step.Adapter
			if adapter == nil || !adapter.Length.OK {
				continue
			}
			var feet []*model.Tool
			for _, way := range grip.Listed {
				for _, name := range way {
					if tool := p.Job.Tool(name); tool != nil && tool.Kind.Text == "crowfoot" {
						feet = append(feet, tool)
					}
				}
			}
			for _, tool := range feet {
				long, _ := tool.Length.Highest()
				written, ok := adapter.Length.Highest()
				if tool.Length.OK && ok && long != nil && long.Cmp(written) != 0 {
					p.Found(finding.Finding{Place: adapter.Length.At, Summary: fmt.Sprintf("step %d reckons with an adapter of %s, and the crowfoot %q is %s long", grip.Step.Number, adapter.Length.Text.Text, tool.Name, tool.Length.Text.Text),
						Help: "Write the length from the square to the middle of the fastener, the same at both.", Related: []finding.Related{{Place: tool.Length.At, Text: "its length"}}})
					break
				}
			}
		}
	},
})
