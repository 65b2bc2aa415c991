package rules

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

var andOr = pattern.MustCompile(`(?i)\band\s?/\s?or\b`)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/and-or", Severity: finding.Note, Title: "“And/or” leaves open which is meant",
		Why:     "One reader takes both, the next takes either, and each has done what stands there.",
		Source:  "DOE-STD-1029-92: and and or are not mixed; from a digest",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Wipe the plug and/or the seat.\"\n",
		Good:    "[[step]]\nsay = \"Wipe the plug and the seat.\"\n",
	},
	Words: true,
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			for _, text := range append([]model.Text{step.Expect, step.Until}, orders(step)...) {
				if m := andOr.FindStringIndex(text.Text); m != nil {
					p.Found(finding.Finding{Place: text.Inside(m[0], m[1]), Summary: "“and/or” leaves open which of the two is meant",
						Help: "Write and, or, or \"one of the two, or both\"."})
				}
			}
		}
	},
})
