package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "picture/place-off", Severity: finding.Warning, Title: "A place lies off the outline of its machine",
		Why:     "The map of the machine points into the air beside it.",
		Source:  "the language itself: places are in the units of the outline",
		Setting: quiet,
		Bad:     "[machine]\ntitle = \"Winch\"\nmanual = \"Plate on the frame\"\noutline = [[0, 0], [60, 0], [60, 20], [0, 20]]\n[part.plug]\nacross = \"16 mm\"\nat = [70, 10]\n[[step]]\ninspect = \"plug\"\nexpect = \"dry\"\n",
		Good:    "[machine]\ntitle = \"Winch\"\nmanual = \"Plate on the frame\"\noutline = [[0, 0], [60, 0], [60, 20], [0, 20]]\n[part.plug]\nacross = \"16 mm\"\nat = [50, 10]\n[[step]]\ninspect = \"plug\"\nexpect = \"dry\"\n",
	},
	Job: func(p *Pass) {
		machine := p.Job.Machine
		if machine == nil || len(machine.Outline) == 0 {
			return
		}
		low, high := machine.Outline[0], machine.Outline[0]
		for _, corner := range machine.Outline {
			low.X, low.Y = min(low.X, corner.X), min(low.Y, corner.Y)
			high.X, high.Y = max(high.X, corner.X), max(high.Y, corner.Y)
		}
		look := func(thing model.Thing, spot []model.Spot) {
			if len(spot) == 0 {
				return
			}
			at := spot[0]
			if at.X >= low.X && at.X <= high.X && at.Y >= low.Y && at.Y <= high.Y { // not a number fails this as well
				return
			}
			p.Found(finding.Finding{Place: thing.Key("at"), Summary: fmt.Sprintf("the place [%g, %g] lies off the outline, which goes from [%g, %g] to [%g, %g]", at.X, at.Y, low.X, low.Y, high.X, high.Y),
				Help: "Write a place on the outline: from the left, then from the top."})
		}
		for _, part := range append(p.Job.Covers(), p.Job.Parts()...) {
			look(part.Thing, part.Spot)
		}
		for _, cavity := range p.Job.Cavities() {
			look(cavity.Thing, cavity.Spot)
		}
		for _, energy := range p.Job.Energies() {
			look(energy.Thing, energy.Spot)
		}
		for _, point := range p.Job.Points() {
			look(point.Thing, point.Spot)
		}
		for _, limit := range p.Job.Limits() {
			look(limit.Thing, limit.Spot)
		}
	},
})
