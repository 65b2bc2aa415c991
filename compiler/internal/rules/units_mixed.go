package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/needs"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "units/mixed", Severity: finding.Warning, Title: "One job uses pound-feet and pound-inches",
		Why:     "The two differ by twelve, and at the bench one is read for the other: the commonest over-torque there is.",
		Source:  "common practice, no source",
		Setting: walled + "tools = [\"wrench-16\", \"socket-16\", \"wrench-lbf\"]\n[tool.wrench-lbf]\nkind = \"torque-wrench\"\ndrive = \"1/2\"\nrange = \"5 to 50 lbf·ft\"\n[part.plug]\nacross = \"16 mm\"\n[part.screw]\nacross = \"16 mm\"\n",
		Bad:     "[[step]]\ntighten = \"plug\"\ntorque = \"20 lbf·ft\"\ncondition = \"dry\"\n[[step]]\ntighten = \"screw\"\ntorque = \"180 lbf·in\"\ncondition = \"dry\"\n[[step]]\nloosen = \"screw\"\ntools = [\"wrench-16\"]\nsay = \"A quarter turn.\"\n",
		Good:    "[[step]]\ntighten = \"plug\"\ntorque = \"20 lbf·ft\"\ncondition = \"dry\"\n[[step]]\ntighten = \"screw\"\ntorque = \"15 lbf·ft\"\ncondition = \"dry\"\n[[step]]\nloosen = \"screw\"\ntools = [\"wrench-16\"]\nsay = \"A quarter turn.\"\n",
	},
	Job: func(p *Pass) {
		var first needs.Grip
		for _, grip := range p.Needs.Grips {
			torque := needs.TorqueOf(grip.Step, grip.Part)
			if !grip.Torque || torque.Unit.Symbol != "lbf·ft" && torque.Unit.Symbol != "lbf·in" {
				continue
			}
			if first.Part == nil {
				first = grip
				continue
			}
			other := needs.TorqueOf(first.Step, first.Part)
			if other.Unit.Symbol == torque.Unit.Symbol {
				continue
			}
			p.Found(finding.Finding{Place: torque.At, Summary: fmt.Sprintf("%s and %s stand in one job", other.Text.Text, torque.Text.Text),
				Help:    "Write both in the same unit.",
				Related: []finding.Related{{Place: other.At, Text: "the other unit"}}})
			return
		}
	},
})
