package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/no-condition", Severity: finding.Warning, Title: "A torque does not say how the thread is",
		Why:     "On an oiled thread the torque for a dry one stretches the bolt by a third more; on a dry one the torque for oil leaves it loose.",
		Source:  "VDI 2230 and the nut factor: 0.20 dry, 0.15 oiled, so a torque holds for one state of the thread only",
		Setting: walled,
		Bad:     "tools = [\"socket-16\", \"torque-wrench-300\"]\n[part.plug]\nacross = \"16 mm\"\ntorque = \"80 N·m\"\n[[step]]\ntighten = \"plug\"\n",
		Good:    "tools = [\"socket-16\", \"torque-wrench-300\"]\n[part.plug]\nacross = \"16 mm\"\ntorque = \"80 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\n",
	},
	Job: func(p *Pass) {
		told := map[*model.Part]bool{}
		for _, step := range p.Job.Steps {
			if step.Verb.Key != "tighten" || step.Condition.Set() {
				continue
			}
			for _, object := range step.Objects {
				part := object.Part
				if part == nil || told[part] || part.Condition.Set() || part.Product.Set() || !needs.TorqueOf(step, part).OK {
					continue
				}
				told[part] = true
				torque := needs.TorqueOf(step, part)
				p.Found(finding.Finding{Place: torque.At, Summary: fmt.Sprintf("%s for the %s does not say whether its thread is dry or oiled", torque.Text.Text, part.Words()),
					Help: "Write condition = \"dry\", \"oiled\" or another beside the torque, as the machine's manual has it."})
			}
		}
	},
})
