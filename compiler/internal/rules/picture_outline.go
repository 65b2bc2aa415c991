package rules

import (
	"fmt"
	"math"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "picture/outline", Severity: finding.Warning, Title: "The drawing of a machine is no drawing of one",
		Why:     "The map comes out as a blot or a line, or not at all, and nobody finds the plug by it.",
		Source:  "the language itself: an outline goes round the machine, and what is drawn inside lies inside",
		Setting: quiet,
		Bad:     "[machine]\ntitle = \"Winch\"\nmanual = \"Plate on the frame\"\noutline = [[0, 0], [60, 0]]\n[[step]]\ninspect = \"the drum\"\nexpect = \"dry\"\n",
		Good:    "[machine]\ntitle = \"Winch\"\nmanual = \"Plate on the frame\"\noutline = [[0, 0], [60, 0], [60, 20], [0, 20]]\n[[step]]\ninspect = \"the drum\"\nexpect = \"dry\"\n",
	},
	Job: func(p *Pass) {
		machine := p.Job.Machine
		if machine == nil {
			return
		}
		say := func(key, help, format string, args ...any) {
			p.Found(finding.Finding{Place: machine.Key(key), Summary: fmt.Sprintf(format, args...), Help: help})
		}
		outline := machine.Outline
		if len(outline) == 0 {
			if len(machine.Lines)+len(machine.Rounds) > 0 {
				say("lines", "Write outline = [[0, 0], …] round the machine.", "lines and rounds are drawn inside an outline, and there is none")
			} else if places := p.Job.Places(); len(places) > 0 {
				p.Found(finding.Finding{Place: places[0].Where, Summary: "a place is on the outline of the machine, and the machine has none", Help: "Write outline = [[0, 0], …] under [machine], or take the places out."})
			}
			return
		}
		size := across(outline)
		if len(outline) < 3 || math.Abs(area(outline)) < 0.01*size*size {
			say("outline", "Write the corners round the machine, three at least.", "the outline of %d corners encloses next to nothing", len(outline))
			return
		}
		const inside = "Draw what lies inside the outline; what reaches out of it belongs to the outline."
		for i, line := range machine.Lines {
			switch far := farthest(outline, line); {
			case len(line) < 2:
				say("lines", "Write two points at least.", "line %d has %d points", i+1, len(line))
			case far > 0.15*size:
				say("lines", inside, "line %d reaches far out of the outline", i+1)
			}
		}
		for i, round := range machine.Rounds {
			switch r := round.Radius; {
			case !(r > 0):
				say("rounds", "Write the radius behind the middle: [x, y, radius].", "circle %d has a radius of %g", i+1, r)
			case r > size/2 || farthest(outline, []model.Spot{{X: round.X - r, Y: round.Y}, {X: round.X + r, Y: round.Y}, {X: round.X, Y: round.Y - r}, {X: round.X, Y: round.Y + r}}) > 0.15*size:
				say("rounds", inside, "circle %d reaches far out of the outline", i+1)
			}
		}
	},
})

// area is what an outline encloses, less where it goes round the other way (the shoelace formula).
func area(outline []model.Spot) float64 {
	sum := 0.0
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		sum += a.X*b.Y - b.X*a.Y
	}
	return sum / 2
}

// farthest is how far the farthest of some spots lies out of an outline.
func farthest(outline, spots []model.Spot) float64 {
	out := 0.0
	for _, spot := range spots {
		out = max(out, off(outline, spot))
	}
	return out
}
