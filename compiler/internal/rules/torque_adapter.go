package rules

import (
	"fmt"
	"math"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/trade"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/adapter", Severity: finding.Error, Title: "The lever of an adapter cannot be",
		Why:     "The setting of the wrench is worked out from these lengths: from a wrong one comes a wrong torque, or none.",
		Source:  "US Army TM 9-254, figure 4-5: setting = torque × lever / (lever + adapter × cos angle)",
		Setting: walled,
		Bad:     "tools = [\"crow\", \"torque-wrench\"]\n[tool.crow]\nkind = \"special\"\n[part.plug]\ntool = [\"crow\", \"torque-wrench\"]\ntorque = \"40 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\nadapter = { length = \"400 mm\", wrench = \"400 mm\", angle = \"180°\" }\n",
		Good:    "tools = [\"crow\", \"torque-wrench\"]\n[tool.crow]\nkind = \"special\"\n[part.plug]\ntool = [\"crow\", \"torque-wrench\"]\ntorque = \"40 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\nadapter = { length = \"50 mm\", wrench = \"400 mm\", angle = \"180°\" }\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if step.Adapter != nil && step.Adapter.Length.OK && step.Adapter.Wrench.OK {
				p.lever(step, step.Adapter)
			}
		}
	},
})

// lever tells of an adapter whose lengths give no setting, or hardly can be meant.
func (p *Pass) lever(step *model.Step, adapter *model.Adapter) {
	length, _, okLength := between(adapter.Length)
	wrench, _, okWrench := between(adapter.Wrench)
	angle, _, _ := between(adapter.Angle)
	found := finding.Finding{Place: adapter.Length.At, Help: "Measure both from the centre of the square: length to the centre of the fastener, wrench to the middle of the hand."}
	switch {
	case !okLength || !okWrench:
	case wrench <= 0:
		found.Place = adapter.Wrench.At
		found.Summary = fmt.Sprintf("the wrench of the adapter is %s long", adapter.Wrench.Text.Text)
		p.Found(found)
	case length <= 0:
		found.Summary = fmt.Sprintf("the adapter is %s long", adapter.Length.Text.Text)
		found.Help = "Write the length of the adapter, or leave adapter out where none is used."
		p.Found(found)
	case math.IsNaN(trade.LeverSetting(1, wrench, length, angle)):
		found.Summary = fmt.Sprintf("at %s an adapter of %s reaches back to the hand on a wrench of %s or past it", adapter.Angle.Text.Text, adapter.Length.Text.Text, adapter.Wrench.Text.Text)
		p.Found(found)
	case length >= wrench:
		found.Summary = fmt.Sprintf("the adapter of %s is as long as its wrench of %s or longer", adapter.Length.Text.Text, adapter.Wrench.Text.Text)
		found.Help = "Look whether the two figures stand in each other's place. " + found.Help
		p.Milder(found)
	}
}
