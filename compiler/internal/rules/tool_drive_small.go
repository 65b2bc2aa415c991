package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/needs"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/drive-too-small", Severity: finding.Warning, Title: "A torque is above what a square drive takes",
		Why:     "A small square shears off under the torque of a large one, and the hand goes with it.",
		Source:  "ISO 6789: highest torque for each square, from memory",
		Setting: walled,
		Bad:     "tools = [\"socket-24\", \"adapter\", \"torque-wrench-300\"]\n[tool.socket-24]\nkind = \"socket\"\nsizes = \"24 mm\"\ndrive = \"3/8\"\n[tool.adapter]\nkind = \"drive-adapter\"\ndrive = \"1/2\"\ndrive-out = \"3/8\"\n[part.plug]\nacross = \"24 mm\"\ntorque = \"180 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\n",
		Good:    "tools = [\"socket-24\", \"torque-wrench-300\"]\n[tool.socket-24]\nkind = \"socket\"\nsizes = \"24 mm\"\ndrive = \"1/2\"\n[part.plug]\nacross = \"24 mm\"\ntorque = \"180 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\n",
	},
	Job: func(p *Pass) {
		p.lacking(driveTooSmall, func(grip needs.Grip) {
			torque := needs.TorqueOf(grip.Step, grip.Part)
			p.Found(finding.Finding{Place: grip.Object, Summary: fmt.Sprintf("%s for the %s at step %d is more than the square drive of its socket takes", torque.Text.Text, grip.Part.Words(), grip.Step.Number),
				Help:    "Take a socket with a larger drive.",
				Related: []finding.Related{{Place: torque.At, Text: "the torque"}}})
		})
	},
})
