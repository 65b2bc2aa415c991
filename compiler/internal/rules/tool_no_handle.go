package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/needs"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/no-drive", Severity: finding.Error, Title: "A socket has nothing that drives it",
		Why:     "A 1/2 in socket does not go on a 3/8 in ratchet.",
		Source:  "ISO 1174-1: square drives",
		Setting: bench,
		Bad:     "tools = [\"socket-13\", \"ratchet-3-8\"]\n[tool.socket-13]\nkind = \"socket\"\nsizes = \"13 mm\"\ndrive = \"1/2\"\n[tool.ratchet-3-8]\nkind = \"ratchet\"\ndrive = \"3/8\"\n[part.plug]\nacross = \"13 mm\"\n[[step]]\nloosen = \"plug\"\n",
		Good:    "tools = [\"socket-13\", \"ratchet-3-8\"]\n[tool.socket-13]\nkind = \"socket\"\nsizes = \"13 mm\"\ndrive = \"3/8\"\n[tool.ratchet-3-8]\nkind = \"ratchet\"\ndrive = \"3/8\"\n[part.plug]\nacross = \"13 mm\"\n[[step]]\nloosen = \"plug\"\n",
	},
	Job: func(p *Pass) {
		p.lacking(noHandle, func(grip needs.Grip) {
			summary := fmt.Sprintf("a tool fits %s at step %d, and nothing of the shop drives it", head(grip), grip.Step.Number)
			help := "Describe a handle with the same square drive, a drive-adapter between the two, or a wrench that needs no drive."
			if grip.Torque {
				summary = fmt.Sprintf("a tool fits %s at step %d, and no torque wrench for %s has its square drive", head(grip), grip.Step.Number, needs.TorqueOf(grip.Step, grip.Part).Text.Text)
				help = "Describe the socket with the drive of the torque wrench, or a drive-adapter between the two." + p.ranges()
			}
			p.Found(finding.Finding{Place: grip.Object, Summary: summary, Help: help,
				Related: []finding.Related{{Place: grip.Part.At, Text: "the part is described here"}}})
		})
	},
})
