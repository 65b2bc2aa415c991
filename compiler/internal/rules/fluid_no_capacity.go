package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/no-capacity", Severity: finding.Warning, Title: "Nobody is told how much of a fluid to bring",
		Why:     "The pick list cannot say how many bottles, and the second one stands in the shop.",
		Source:  "common practice, no source",
		Setting: setting + "no-isolation = \"On the bench\"\ntools = []\nspares = []\nwear = []\nsupplies = [\"grease\"]\n[fluid.grease]\nkind = \"grease\"\n",
		Bad:     "[point.pin]\nfluid = \"grease\"\n[[step]]\ngrease = \"pin\"\n",
		Good:    "[point.pin]\nfluid = \"grease\"\namount = \"2 strokes\"\n[[step]]\ngrease = \"pin\"\n",
	},
	Job: func(p *Pass) {
		drained := map[*model.Cavity]bool{}
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				cavity, point := object.Cavity, object.Point
				switch {
				case cavity != nil && step.Verb.Key == "drain":
					drained[cavity] = true
				case cavity != nil && step.Verb.Key == "fill" && drained[cavity] && !step.Amount.Set() && !cavity.Capacity.Set():
					p.Found(finding.Finding{Place: object.Text.At, Summary: fmt.Sprintf("the %s is filled anew at step %d, and nothing says how much it holds", object.Words(), step.Number),
						Help: "Add capacity = \"…\" at the cavity, or amount = \"…\" at the step; until may stand beside it."})
				case p.thinly(step, object):
				case slices.Contains([]string{"grease", "lubricate"}, step.Verb.Key) && cavity == nil && !step.Amount.Set() && !step.Until.Set() && (point == nil && step.Fluid.Set() || point != nil && !point.Amount.Set() && !point.Until.Set()) && !strings.Contains(strings.ToLower(step.Say.Text), "until") && !strings.ContainsAny(step.Say.Text, "0123456789"):
					p.Found(finding.Finding{Place: object.Text.At, Summary: fmt.Sprintf("step %d does not say how much goes to %s", step.Number, object.Words()),
						Help: "Add amount = \"…\", such as 2 strokes or 20 g, or until = \"…\" with what is seen."})
				}
			}
		}
	},
})

// film finds words of so little that no amount is measured; common practice, no source.
var film = pattern.MustCompile(`(?i)\b(?:film|smear|thin|thinly|coat|lightly|terminals?|battery posts?|battery clamps?)\b`)

// thinly reports whether what a step puts on is a film: its words say so, or it goes onto the
// terminals of a battery.
func (p *Pass) thinly(step *model.Step, object model.Object) bool {
	words := p.tells(step) + " " + object.Words()
	for _, used := range step.Supplies {
		words += " " + used.Amount.Text.Text
	}
	return film.MatchString(words)
}
