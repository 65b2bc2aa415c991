package rules

import (
	"fmt"
	"math/big"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
)

// lifting are the kinds of tool that bear a load.
var lifting = []string{"jack", "hoist", "sling", "stand"}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/rating", Severity: finding.Error, Title: "Lifting gear is rated for less than what it bears",
		Why:     "A jack or a sling past its rating lets go with the load in the air.",
		Source:  "29 CFR 1910.184(c)(4) and 1910.244(a)(1)(i): gear is not loaded beyond its rated capacity",
		Setting: setting + "no-isolation = \"On the bench\"\nsupplies = []\nspares = []\nwear = [\"helmet\", \"safety-shoes\"]\ntools = [\"sling\"]\ncautions = [\"load\"]\n[part.gearbox]\nmass = \"38 kg\"\n",
		Bad:     "[tool.sling]\nkind = \"sling\"\nholds = \"30 kg\"\n[[step]]\nremove = \"gearbox\"\ntools = [\"sling\"]\n",
		Good:    "[tool.sling]\nkind = \"sling\"\nholds = \"500 kg\"\n[[step]]\nremove = \"gearbox\"\ntools = [\"sling\"]\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				if object.Part == nil || !object.Part.Mass.OK {
					continue
				}
				lists := []model.List{step.Tools}
				if pose := p.Job.Pose(step.Pose.Name()); pose != nil {
					lists = append(lists, pose.Tools)
				}
				for _, list := range lists {
					for _, name := range list.Items {
						p.bears(p.Job.Tool(name.Name()), name, object.Part)
					}
				}
			}
		}
	},
})

// bears tells of lifting gear that is rated for less than a part weighs; each of a
// number of stands bears its share.
func (p *Pass) bears(tool *model.Tool, name model.Text, part *model.Part) {
	if tool == nil || !slices.Contains(lifting, tool.Kind.Text) || !tool.Holds.OK || tool.Holds.Dimension != quantity.Mass {
		return
	}
	rated, ok := tool.Holds.Highest()
	mass, bounded := part.Mass.Highest()
	if !ok || !bounded || new(big.Rat).Mul(rated, big.NewRat(int64(tool.Count.Or(1)), 1)).Cmp(mass) >= 0 {
		return
	}
	p.Found(finding.Finding{Place: name.At, Summary: fmt.Sprintf("%q is rated for %s, and the %s weighs %s", tool.Name, tool.Holds.Text.Text, part.Words(), part.Mass.Text.Text),
		Help:    "Name gear that is rated for the mass.",
		Related: []finding.Related{{Place: tool.Holds.At, Text: "its rating"}, {Place: part.Mass.At, Text: "the mass"}}})
}
