package rules

import (
	"fmt"
	"math"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/no-wrench", Severity: finding.Error, Title: "No torque wrench covers a torque",
		Why:     "Below a fifth of its maximum a torque wrench is not tested, and above its maximum it is overloaded.",
		Source:  "ISO 6789:2003, test points 20, 60 and 100 %; ISO 6789:2017, from the lowest marked value",
		Setting: walled,
		Bad:     "tools = [\"socket-16\"]\n[part.plug]\nacross = \"16 mm\"\ntorque = \"12 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\n",
		Good:    "tools = [\"socket-16\", \"torque-wrench\"]\n[part.plug]\nacross = \"16 mm\"\ntorque = \"42 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\n",
	},
	Job: func(p *Pass) {
		p.lacking(noTorqueWrench, func(grip needs.Grip) {
			if math.IsNaN(grip.Low) {
				return // torque/adapter says why there is no setting
			}
			torque := needs.TorqueOf(grip.Step, grip.Part)
			summary := fmt.Sprintf("no torque wrench of the shop covers %s for the %s at step %d", torque.Text.Text, grip.Part.Words(), grip.Step.Number)
			if grip.Step.Adapter != nil {
				set, unit := inUnitOf((grip.Low+grip.High)/2, torque)
				summary += fmt.Sprintf(": behind the adapter it is set to %.4g %s", set, unit)
			}
			p.Found(finding.Finding{Place: grip.Object, Summary: summary,
				Help:    "Look the figure up again; if it is right, describe a torque wrench whose range holds it, above a fifth of the wrench's maximum." + p.ranges(),
				Related: []finding.Related{{Place: torque.At, Text: "the torque"}}})
		})
	},
})

// ranges tells the usable ranges of the torque wrenches the shop has.
func (p *Pass) ranges() string {
	var out []string
	for _, tool := range p.Job.Tools() {
		if low, high, ok := needs.Usable(tool); ok && tool.Kind.Text == "torque-wrench" {
			from, unit := inUnitOf(low, tool.Range)
			to, _ := inUnitOf(high, tool.Range)
			text := fmt.Sprintf("%s (%s in) from %.4g to %.4g %s", tool.Name, tool.Drive.Text, from, to, unit)
			if tool.Range.Shape == quantity.Exact {
				text = fmt.Sprintf("%s only at %s, since its range has one figure", tool.Name, tool.Range.Text.Text)
			}
			out = append(out, text)
		}
	}
	if len(out) == 0 {
		return " The shop has none."
	}
	return " Usable are " + names(out) + "."
}
