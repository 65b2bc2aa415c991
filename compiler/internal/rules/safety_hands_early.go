package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/hazard"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/source"
)

// handsOn are verbs that put hands or a tool on a thing of the machine while it
// could start; opening, cleaning and filling from outside are not among them.
var handsOn = []string{"remove", "refit", "replace", "loosen", "tighten", "disconnect", "connect", "grease", "lubricate", "adjust", "align", "tension", "slacken", "sharpen", "bleed"}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/hands-before-isolation", Severity: finding.Warning, Title: "Hands go on the machine before its energy is cut off",
		Why:     "Until it is locked out the machine can start with hands on it.",
		Source:  "29 CFR 1910.147(c)(2) and (d): energy is controlled before servicing begins",
		Setting: gearbox + "tools = []\ncautions = [\"start\"]\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\n[part.cap]\nhead = \"wing\"\n",
		Bad:     "[[step]]\nremove = \"cap\"\n[[step]]\nisolate = \"mains\"\n[[step]]\nprove = \"mains\"\n",
		Good:    "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"cap\"\n",
	},
	Job: func(p *Pass) {
		cut := slices.IndexFunc(p.Job.Steps, func(step *model.Step) bool { return step.Verb.Key == "isolate" })
		if cut < 0 {
			return
		}
		hands := hazard.HandsIn(p.Hazards)
		for _, step := range p.Job.Steps[:cut] {
			if place, in := hands(step); in {
				p.early(place, fmt.Sprintf("step %d puts hands where the machine moves before any energy is isolated at step %d", step.Number, p.Job.Steps[cut].Number), p.Job.Steps[cut])
				return // the first tells where to look
			}
			if !slices.Contains(handsOn, step.Verb.Key) {
				continue
			}
			for _, object := range step.Objects {
				if object.Part == nil && object.Point == nil && object.Cavity == nil || object.Part != nil && object.Part.Cover && len(object.Part.Guards.Items) > 0 {
					continue // words say too little; of guards another rule tells more
				}
				p.early(object.Text.At, fmt.Sprintf("step %d puts hands on the %s before any energy is isolated at step %d", step.Number, object.Words(), p.Job.Steps[cut].Number), p.Job.Steps[cut])
				return
			}
		}
	},
})

func (p *Pass) early(place source.Place, summary string, cut *model.Step) {
	p.Found(finding.Finding{Place: place, Summary: summary,
		Help:    "Move the step behind the isolation and its proof, or allow this with the reason why nothing can start.",
		Related: []finding.Related{{Place: at(cut), Text: "the first isolation"}}})
}
