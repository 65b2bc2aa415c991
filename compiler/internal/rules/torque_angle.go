package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

// fullTurn is a whole turn in degrees, the base unit of an angle.
const fullTurn = 360.0

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/angle-from-nothing", Severity: finding.Warning, Title: "An angle does not say where it begins",
		Why:     "The turn is counted from where the parts lie tight together; from anywhere else it leaves the screw loose or breaks it.",
		Source:  "VDI 2230, from memory: tightening by angle begins at a snug torque",
		Setting: walled,
		Bad:     "tools = [\"wrench-16\"]\n[part.plug]\nacross = \"16 mm\"\n[[step]]\ntighten = \"plug\"\nangle = \"90°\"\n",
		Good:    "tools = [\"socket-16\", \"torque-wrench\"]\n[part.plug]\nacross = \"16 mm\"\n[[step]]\ntighten = \"plug\"\ntorque = \"40 N·m\"\ncondition = \"oiled\"\nangle = \"90°\"\n",
	},
	Job: func(p *Pass) {
		snug := map[*model.Part]bool{}
		p.tightened(func(step *model.Step, part *model.Part, torque model.Amount) {
			angle := angleOf(step, part)
			begins := torque.Set() || step.ByHand.Set() || says(p.tells(step)+" "+partTells(part), "hand", "finger", "snug", "touch", "contact", "seat", "tight", "mark")
			if angle.Set() && !begins && !snug[part] {
				p.Found(finding.Finding{Place: angle.At, Summary: fmt.Sprintf("step %d turns the %s by %s, and nothing says from where", step.Number, part.Words(), angle.Text.Text),
					Help: "Write the torque = \"…\" it begins at, or by-hand = \"Finger-tight, then by the angle\"."})
			}
			snug[part] = snug[part] || begins
		})
	},
})

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/angle-over-a-turn", Severity: finding.Warning, Title: "A screw is turned by more than a whole turn after its torque",
		Why:     "A screw that is tight already breaks, or strips its thread, long before a whole turn.",
		Source:  "common practice, no source; fittings that are turned from finger-tight are let be",
		Setting: walled,
		Bad:     "tools = [\"socket-16\", \"torque-wrench\"]\n[part.plug]\nacross = \"16 mm\"\n[[step]]\ntighten = \"plug\"\ntorque = \"40 N·m\"\ncondition = \"oiled\"\nangle = \"900°\"\n",
		Good:    "tools = [\"socket-16\", \"torque-wrench\"]\n[part.plug]\nacross = \"16 mm\"\n[[step]]\ntighten = \"plug\"\ntorque = \"40 N·m\"\ncondition = \"oiled\"\nangle = \"90°\"\n",
	},
	Job: func(p *Pass) {
		told := map[string]bool{}
		p.tightened(func(step *model.Step, part *model.Part, torque model.Amount) {
			angle := angleOf(step, part)
			low, _, ok := between(angle)
			if !ok || !torque.Set() || low <= fullTurn || told[part.Name] {
				return
			}
			told[part.Name] = true
			p.Found(finding.Finding{Place: angle.At, Summary: fmt.Sprintf("the %s is turned by %s after %s", part.Words(), angle.Text.Text, torque.Text.Text),
				Help: "Look the angle up again in the machine's manual; 90° is a quarter turn."})
		})
	},
})
