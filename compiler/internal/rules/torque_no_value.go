package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/needs"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/no-value", Severity: finding.Error, Title: "A fastener is tightened to no value",
		Why:     "Each hand tightens to another torque: one strips the thread, the next leaves it loose.",
		Source:  "DOE-STD-1029-92: a step that sets something gives the value; MIL-STD-40051-2, from memory",
		Setting: walled,
		Bad:     "tools = [\"wrench-16\"]\n[part.plug]\nacross = \"16 mm\"\n[[step]]\ntighten = \"plug\"\n",
		Good:    "tools = [\"wrench-16\"]\n[part.plug]\nacross = \"16 mm\"\n[[step]]\ntighten = \"plug\"\nby-hand = \"It seals on an O-ring; snug is enough\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if step.Verb.Key != "tighten" || step.ByHand.Set() || step.Angle.Set() {
				continue
			}
			for _, object := range step.Objects {
				if object.Part == nil || needs.TorqueOf(step, object.Part).Set() || object.Part.Angle.Set() {
					continue
				}
				p.Found(finding.Finding{Place: object.Text.At, Summary: fmt.Sprintf("step %d tightens the %s to no torque", step.Number, object.Words()),
					Help:    "Write torque = \"…\" at the step or at the part from the machine's manual, or by-hand = \"…\" with the reason.",
					Related: []finding.Related{{Place: object.Part.At, Text: "the part is described here"}}})
			}
		}
	},
})
