package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/needs"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/crowfoot-no-adapter", Severity: finding.Warning, Title: "A crowfoot is on the torque wrench and nothing says how long it is",
		Why:     "The crowfoot makes the lever longer: at the marked torque the fastener gets a tenth more.",
		Source:  "US Army TM 9-254, figure 4-5: setting = torque × lever / (lever + adapter)",
		Setting: walled,
		Bad:     "tools = [\"crowfoot-16\", \"torque-wrench-300\"]\n[tool.crowfoot-16]\nkind = \"crowfoot\"\nsizes = \"16 mm\"\ndrive = \"1/2\"\n[part.plug]\nacross = \"16 mm\"\ntorque = \"80 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\n",
		Good:    "tools = [\"crowfoot-16\", \"torque-wrench-300\"]\n[tool.crowfoot-16]\nkind = \"crowfoot\"\nsizes = \"16 mm\"\ndrive = \"1/2\"\n[part.plug]\nacross = \"16 mm\"\ntorque = \"80 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\nadapter = { length = \"40 mm\", wrench = \"450 mm\" }\n",
	},
	Job: func(p *Pass) {
		for _, grip := range p.Needs.Grips {
			if !grip.Torque || grip.Step.Adapter != nil || len(grip.Listed) == 0 || slices.ContainsFunc(grip.Listed, func(way needs.Set) bool { return !p.crowfoot(way) }) {
				continue
			}
			p.Found(finding.Finding{Place: grip.Object, Summary: fmt.Sprintf("step %d tightens the %s with a crowfoot and does not say how it changes the lever", grip.Step.Number, grip.Part.Words()),
				Help: "Write adapter = { length = \"…\", wrench = \"…\" } at the step, with the length from square to fastener and from square to the middle of the grip; or list a socket that fits."})
		}
	},
})

// crowfoot reports whether a crowfoot is among some tools.
func (p *Pass) crowfoot(way needs.Set) bool {
	return slices.ContainsFunc(way, func(name string) bool {
		tool := p.Job.Tool(name)
		return tool != nil && tool.Kind.Text == "crowfoot"
	})
}
