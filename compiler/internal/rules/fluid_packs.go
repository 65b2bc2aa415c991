package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/packs", Severity: finding.Note, Title: "A fluid is used by volume and comes in packs by mass, or the other way round",
		Why:     "The pick list cannot say how many packs to take, since nobody knows how heavy it is.",
		Source:  "common practice, no source",
		Setting: setting + "no-isolation = \"On the bench\"\nspares = []\nwear = [\"gloves\"]\ntools = []\nsupplies = [\"grease\"]\n[point.bearing]\nfluid = \"grease\"\namount = \"20 g\"\n",
		Bad:     "[fluid.grease]\nkind = \"grease\"\npacks = [\"0.4 L\"]\n[[step]]\ngrease = \"bearing\"\n",
		Good:    "[fluid.grease]\nkind = \"grease\"\npacks = [\"400 g\"]\n[[step]]\ngrease = \"bearing\"\n",
	},
	Job: func(p *Pass) {
		told := map[*model.Fluid]bool{}
		for _, use := range p.Needs.Supplies {
			fluid := p.Job.Fluid(use.Name)
			if fluid == nil || told[fluid] || len(fluid.Packs) == 0 || !use.Amount.OK {
				continue
			}
			used := use.Amount
			if used.Dimension == quantity.Count {
				used = fluid.Stroke
			}
			other := slices.ContainsFunc(fluid.Packs, func(pack model.Amount) bool { return !pack.OK || pack.Dimension == used.Dimension })
			if !used.OK || used.Dimension != quantity.Volume && used.Dimension != quantity.Mass || other {
				continue
			}
			told[fluid] = true
			p.Found(finding.Finding{Place: fluid.Packs[0].At, Summary: fmt.Sprintf("%q comes in packs of %s, and %s is used", fluid.Name, fluid.Packs[0].Text.Text, used.Text.Text),
				Help:    "Write packs, stroke and amounts all by mass or all by volume.",
				Related: []finding.Related{{Place: used.At, Text: "what is used"}}})
		}
	},
})
