package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/level-place", Severity: finding.Warning, Title: "The openings of a cavity stand in an order that cannot be",
		Why:     "The drawing of the level shows oil over an open plug; one of the places is wrong, or one of the names.",
		Source:  "the language itself: y goes down, and what is drained runs down",
		Setting: quiet,
		Bad:     "[machine]\ntitle = \"Winch\"\nmanual = \"Plate on the frame\"\noutline = [[0, 0], [60, 0], [60, 20], [0, 20]]\n[part.plug]\nacross = \"16 mm\"\nat = [50, 2]\n[part.glass]\nhead = \"none\"\nat = [50, 10]\n[cavity.box]\ndrain = \"plug\"\nlevel = \"glass\"\n[[step]]\ninspect = \"box\"\nexpect = \"oil at the middle of the glass\"\n",
		Good:    "[machine]\ntitle = \"Winch\"\nmanual = \"Plate on the frame\"\noutline = [[0, 0], [60, 0], [60, 20], [0, 20]]\n[part.plug]\nacross = \"16 mm\"\nat = [50, 18]\n[part.glass]\nhead = \"none\"\nat = [50, 10]\n[cavity.box]\ndrain = \"plug\"\nlevel = \"glass\"\n[[step]]\ninspect = \"box\"\nexpect = \"oil at the middle of the glass\"\n",
	},
	Job: func(p *Pass) {
		for _, cavity := range p.Job.Cavities() {
			order := []struct {
				what string
				name model.Text
			}{{"fill", cavity.Fill}, {"level", cavity.Level}, {"drain", cavity.Drain}}
			for i, upper := range order {
				for _, lower := range order[i+1:] {
					a, b := p.Job.Part(upper.name.Name()), p.Job.Part(lower.name.Name())
					if a == nil || b == nil || a == b || len(a.Spot) == 0 || len(b.Spot) == 0 || a.Spot[0].Y <= b.Spot[0].Y {
						continue
					}
					if upper.what == "fill" && lower.what == "drain" {
						continue // filled from below, by a pump
					}
					p.Found(finding.Finding{Place: a.Key("at"), Summary: fmt.Sprintf("%s, the %s of %s, lies lower than %s, its %s", model.The(a.Words()), upper.what, model.The(cavity.Words()), model.The(b.Words()), lower.what),
						Help:    "Write the places as they are: y is the second figure, and it grows downwards.",
						Related: []finding.Related{{Place: b.Key("at"), Text: "the other"}}})
				}
			}
		}
	},
})
