package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/range", Severity: finding.Error, Title: "An instrument does not reach what it measures",
		Why:     "A gauge that ends below the limit tells nothing, and a pressure gauge driven past its end bursts.",
		Source:  "IEC 61010-1 and EN 837-2: an instrument is used within its marked range; common practice",
		Setting: setting + "no-isolation = \"On the bench\"\nsupplies = []\nspares = []\nwear = []\ntools = [\"gauge\"]\n[limit.pressure]\nlimit = \"155 to 165 bar\"\noutside = \"Stop, and call the foreman.\"\ntool = \"gauge\"\n",
		Bad:     "[tool.gauge]\nkind = \"gauge\"\nrange = \"0 to 100 bar\"\n[[step]]\nmeasure = \"pressure\"\n",
		Good:    "[tool.gauge]\nkind = \"gauge\"\nrange = \"0 to 250 bar\"\n[[step]]\nmeasure = \"pressure\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				if object.Limit == nil || step.Verb.Key == "record" {
					continue
				}
				limit := step.Limit
				if !limit.Set() {
					limit = object.Limit.Limit
				}
				for _, list := range []model.List{object.Limit.Tool, step.Tools} {
					for _, name := range list.Items {
						p.reaches(p.Job.Tool(name.Name()), name, limit)
					}
				}
			}
		}
	},
})

// reaches tells of an instrument whose range ends before a limit.
func (p *Pass) reaches(tool *model.Tool, name model.Text, limit model.Amount) {
	if tool == nil || !tool.Range.OK || !limit.OK || tool.Kind.Text == "torque-wrench" || tool.Range.Dimension != limit.Dimension {
		return
	}
	least, from := tool.Range.Lowest()
	most, to := tool.Range.Highest()
	low, bounded := limit.Lowest()
	high, ends := limit.Highest()
	if ends && to && high.Cmp(most) > 0 || bounded && from && low.Cmp(least) < 0 {
		p.Found(finding.Finding{Place: name.At, Summary: fmt.Sprintf("%q reads %s, and %s is to be measured", tool.Name, tool.Range.Text.Text, limit.Text.Text),
			Help:    "Name an instrument whose range holds the whole limit.",
			Related: []finding.Related{{Place: tool.Range.At, Text: "its range"}, {Place: limit.At, Text: "the limit"}}})
	}
}
