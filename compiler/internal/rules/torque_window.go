package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/trade"
)

// sameFigure keeps a window of exactly a wrench's tolerance in, whatever unit it is written in.
const sameFigure = 1e-6

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/window", Severity: finding.Note, Title: "A torque range is narrower than a click wrench holds",
		Why:     "A wrench set to the middle clicks outside the range and is still a good wrench, so the range promises what nobody can keep.",
		Source:  "ISO 6789:2003, type II class A, as quoted in a maker's manual: ±4 % above 10 N·m, ±6 % at and below",
		Setting: walled,
		Bad:     "tools = [\"socket-16\", \"torque-wrench\"]\n[part.plug]\nacross = \"16 mm\"\ntorque = \"49 to 51 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\n",
		Good:    "tools = [\"socket-16\", \"torque-wrench\"]\n[part.plug]\nacross = \"16 mm\"\ntorque = \"48 to 52 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\n",
	},
	Job: func(p *Pass) {
		told := map[*model.Part]bool{}
		p.tightened(func(_ *model.Step, part *model.Part, torque model.Amount) {
			low, high, ok := between(torque)
			if !ok || torque.Shape != quantity.Range && torque.Shape != quantity.Tolerance || told[part] || !(0 < low && low < high) {
				return
			}
			if trade.Holdable(low*(1-sameFigure), high*(1+sameFigure)) {
				return
			}
			told[part] = true
			middle := (low + high) / 2
			p.Found(finding.Finding{Place: torque.At, Summary: fmt.Sprintf("%s is ±%.2g %% of its middle, and a click wrench holds ±%.0f %%", torque.Text.Text, 100*(high-low)/(high+low), 100*trade.WrenchTolerance(middle)),
				Help: "Widen the range, write the one figure of the machine's manual, or name a wrench that holds it."})
		})
	},
})
