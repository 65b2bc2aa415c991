package rules

import (
	"fmt"
	"math/big"

	"benchleaf/compiler/finding"
)

// comfort is how much larger than what runs out a container should be: a quarter, common practice, no source.
var comfort = big.NewRat(5, 4)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/container-too-small", Severity: finding.Error, Title: "A container is smaller than what is drained into it",
		Why:     "Oil over the rim of the pan is on the floor under your feet and in the ground.",
		Source:  "40 CFR 279.22: used oil is kept in containers and not released; a quarter of room to spare is common practice",
		Setting: setting + "no-isolation = \"On the bench\"\nsupplies = []\nspares = []\nwear = [\"gloves\"]\ncautions = [\"used-oil\"]\ntools = [\"pan\"]\n[cavity.gearbox]\ncapacity = \"5 L\"\n",
		Bad:     "[tool.pan]\nkind = \"container\"\nholds = \"4 L\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n",
		Good:    "[tool.pan]\nkind = \"container\"\nholds = \"8 L\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n",
	},
	Job: func(p *Pass) {
		for _, catch := range p.Needs.Catch {
			tool := p.Job.Tool(catch.Step.Into.Name())
			if tool == nil || !tool.Holds.OK || !catch.Amount.OK || tool.Holds.Dimension != catch.Amount.Dimension {
				continue
			}
			room, okRoom := tool.Holds.Highest()
			runs, okRuns := catch.Amount.Highest()
			if !okRoom || !okRuns || room.Cmp(new(big.Rat).Mul(runs, comfort)) >= 0 {
				continue
			}
			found := finding.Finding{Place: catch.Step.Into.At, Help: "Name a larger container.",
				Summary: fmt.Sprintf("%q holds %s, and %s runs out of the %s", tool.Name, tool.Holds.Text.Text, catch.Amount.Text.Text, catch.Cavity.Words()),
				Related: []finding.Related{{Place: tool.Holds.At, Text: "what it holds"}, {Place: catch.Amount.At, Text: "what runs out"}}}
			if room.Cmp(runs) < 0 {
				p.Found(found)
			} else {
				found.Summary += ": little room is left"
				p.Milder(found)
			}
		}
	},
})
