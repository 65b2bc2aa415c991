package rules

import (
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/memo"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/tree"
)

var prose = memo.Of(quantity.Prose)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "units/in-words", Severity: finding.Warning, Title: "An amount in a sentence misleads",
		Why:     "A figure in the words is set at the machine like any other, and nothing works it out for the other system.",
		Source:  "NIST SP 811, 7.2; US and imperial gallons, NIST Handbook 44",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Fill 2 gal of water.\"\n",
		Good:    "[[step]]\nsay = \"Fill 2 US gal of water.\"\n",
	},
	Job: func(p *Pass) {
		told := map[*tree.Value]bool{}
		look := func(text model.Text) {
			if !text.Set() || !strings.ContainsAny(text.Text, "0123456789") || told[text.Value] {
				return
			}
			told[text.Value] = true
			for _, problem := range prose.Of(p.Job.Memo, text.Text) {
				p.Found(finding.Finding{Place: text.Inside(problem.Start, problem.End), Summary: problem.Message + ", in the words", Help: problem.Help})
			}
		}
		for _, step := range p.Job.Steps {
			for _, text := range []model.Text{step.Say, step.Until, step.Outside, step.Expect, step.ByHand} {
				look(text)
			}
			for _, list := range []model.List{step.Keep, step.Notes} {
				for _, text := range list.Items {
					look(text)
				}
			}
			for _, object := range step.Objects {
				if object.Limit != nil {
					look(object.Limit.How)
					look(object.Limit.Outside)
				}
				if object.Energy != nil {
					look(object.Energy.Isolate)
					look(object.Energy.Relieve)
					look(object.Energy.Prove)
				}
			}
		}
	},
})
