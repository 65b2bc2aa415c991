package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/cross-of-two", Severity: finding.Warning, Title: "A cross order is asked of fewer than three fasteners",
		Why:     "Crosswise needs a circle: the count is wrong, or it was left out and the card does not say how many there are.",
		Source:  "ASME PCC-1, legacy cross pattern, from memory; common practice",
		Setting: walled,
		Bad:     "tools = [\"socket-16\", \"torque-wrench\"]\n[part.plug]\nacross = \"16 mm\"\ntorque = \"40 N·m\"\ncondition = \"dry\"\norder = \"cross\"\n[[step]]\ntighten = \"plug\"\n",
		Good:    "tools = [\"socket-16\", \"torque-wrench\"]\n[part.plugs]\ncount = 4\nacross = \"16 mm\"\ntorque = \"40 N·m\"\ncondition = \"dry\"\norder = \"cross\"\n[[step]]\ntighten = \"plugs\"\n",
	},
	Job: func(p *Pass) {
		told := map[model.Text]bool{}
		for _, step := range p.Job.Steps {
			order, count := step.Order, 0
			for _, object := range step.Objects {
				if object.Part == nil {
					count = 3 // words may mean any number
					continue
				}
				if !order.Set() && step.Verb.Key == "tighten" {
					order = object.Part.Order
				}
				count += p.fasteners(object.Part)
			}
			if count = max(count, step.Count.N); len(step.Objects) == 1 && step.Objects[0].Part != nil && step.Objects[0].Part.Circles.N > 1 {
				count = step.Objects[0].Part.OnCircle(step.Count)
			}
			if order.Text != "cross" || count >= 3 || count == 0 || told[order] {
				continue
			}
			told[order] = true
			p.Found(finding.Finding{Place: order.At, Summary: fmt.Sprintf("step %d goes crosswise over %d", step.Number, count),
				Help: "Write how many there are, count = 4, at the part, and on how many circles where it is more than one; or leave order out."})
		}
	},
})

// fasteners is how many fasteners a part is or is held by.
func (p *Pass) fasteners(part *model.Part) int {
	count := part.Count.Or(1)
	for _, name := range part.HeldBy.Names() {
		if holder := p.Job.Part(name); holder != nil {
			count += holder.Count.Or(1)
		}
	}
	return count
}
