package rules

import (
	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/no-wear-list", Severity: finding.Error, Title: "The procedure does not say what to wear",
		Why:     "Silence can mean that nothing is needed or that nobody thought of it.",
		Source:  "OASIS DITA machinery task: safety is stated, or said to be none; common practice",
		Setting: setting + "supplies = []\nspares = []\ntools = []\nno-isolation = \"On the bench\"\n",
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "wear = []\n[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		if procedure := p.Job.Procedure; !procedure.Wear.Given {
			p.Found(silent(procedure, "wear", "what to wear", p.wearNeeded()))
		}
	},
})

// wearNeeded lists the equipment that hazards, messages and steps ask for.
func (p *Pass) wearNeeded() []string {
	var out []string
	for _, step := range p.Job.Steps {
		out = append(out, step.Wear.Names()...)
	}
	for _, m := range p.messages() {
		out = append(out, m.Wear.Names()...)
	}
	for _, implied := range p.Hazards {
		out = append(out, implied.Hazard.Wear...)
	}
	return unique(out)
}
