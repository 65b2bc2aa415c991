package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/needs"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/reach", Severity: finding.Error, Title: "A head sits deeper than the tools reach",
		Why:     "A socket that does not reach the head is found out with the machine open.",
		Source:  "the shop's own description: how deep the head sits and how long the tool is",
		Setting: walled,
		Bad:     "tools = [\"socket-16\", \"ratchet\"]\n[part.plug]\nacross = \"16 mm\"\nreach = \"120 mm\"\n[[step]]\nloosen = \"plug\"\n",
		Good:    "tools = [\"socket-16\", \"ratchet\", \"extension\"]\n[tool.extension]\nkind = \"extension\"\ndrive = \"1/2\"\nlength = \"125 mm\"\n[part.plug]\nacross = \"16 mm\"\nreach = \"120 mm\"\n[[step]]\nloosen = \"plug\"\n",
	},
	Job: func(p *Pass) {
		p.lacking(tooDeep, func(grip needs.Grip) {
			p.Milder(finding.Finding{Place: grip.Object, Summary: fmt.Sprintf("%s sits %s deep, and no extension or deep socket of the shop reaches it", head(grip), grip.Part.Reach.Text.Text),
				Help:    fmt.Sprintf("Describe an extension with length = %q or more.", grip.Part.Reach.Text.Text),
				Related: []finding.Related{{Place: grip.Part.Reach.At, Text: "how deep it sits"}}})
		})
	},
})
