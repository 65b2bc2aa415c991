package rules

import (
	"fmt"
	"math/big"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/over-capacity", Severity: finding.Error, Title: "More is filled in than the cavity holds",
		Why:     "What is too much is thrown out at the breather or blows the seals.",
		Source:  "the machine's own description",
		Setting: setting + "no-isolation = \"On the bench\"\nspares = []\nwear = []\ntools = []\nsupplies = [\"oil\"]\n[fluid.oil]\nkind = \"gear-oil\"\n[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"0.5 L\"\n",
		Bad:     "[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\namount = \"5 L\"\n",
		Good:    "[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\namount = \"0.5 L\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				cavity := object.Cavity
				if step.Verb.Key != "fill" || cavity == nil || !step.Amount.OK || !cavity.Capacity.OK || step.Amount.Dimension != cavity.Capacity.Dimension {
					continue
				}
				room, bounded := cavity.Capacity.Highest()
				least, ok := step.Amount.Lowest()
				if !ok {
					least, ok = step.Amount.Highest()
				}
				if !ok || !bounded || least.Cmp(new(big.Rat).Mul(room, big.NewRat(101, 100))) <= 0 { // a hundredth is rounding
					continue
				}
				p.Found(finding.Finding{Place: step.Amount.At, Summary: fmt.Sprintf("step %d fills %s into the %s, which holds %s", step.Number, step.Amount.Text.Text, cavity.Words(), cavity.Capacity.Text.Text),
					Help:    "Look both figures up again in the machine's manual.",
					Related: []finding.Related{{Place: cavity.Capacity.At, Text: "what it holds"}}})
			}
		}
	},
})
