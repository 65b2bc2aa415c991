package rules

import (
	"fmt"
	"math"

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
		if machine == nil || len(machine.Outline) < 3 {
			return
		}
		for _, place := range p.Job.Places() {
			if reach := off(machine.Outline, place.At); !(reach <= 0.03*across(machine.Outline)) { // a little over the edge is drawn at the edge
				p.Found(finding.Finding{Place: place.Where, Summary: fmt.Sprintf("the place [%g, %g] lies off the outline", place.At.X, place.At.Y),
					Help: "Write a place on the outline: from the left, then from the top, in the units of the outline."})
			}
		}
	},
})

// off is how far a place lies outside of an outline; 0 inside.
func off(outline []model.Spot, at model.Spot) float64 {
	inside := false
	nearest := math.Inf(1)
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.Y > at.Y) != (b.Y > at.Y) && at.X < a.X+(at.Y-a.Y)*(b.X-a.X)/(b.Y-a.Y) {
			inside = !inside
		}
		dx, dy := b.X-a.X, b.Y-a.Y
		along := 0.0
		if length := dx*dx + dy*dy; length > 0 {
			along = min(max(((at.X-a.X)*dx+(at.Y-a.Y)*dy)/length, 0), 1)
		}
		nearest = min(nearest, math.Hypot(at.X-a.X-along*dx, at.Y-a.Y-along*dy))
	}
	if inside {
		return 0
	}
	return nearest
}

// across is the diagonal of the box round an outline.
func across(outline []model.Spot) float64 {
	low, high := outline[0], outline[0]
	for _, corner := range outline {
		low.X, low.Y = min(low.X, corner.X), min(low.Y, corner.Y)
		high.X, high.Y = max(high.X, corner.X), max(high.Y, corner.Y)
	}
	return math.Hypot(high.X-low.X, high.Y-low.Y)
}
