package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

var (
	elastic = pattern.MustCompile(`(?i)\b(?:(?:as|if|when|where|wherever|whenever) (?:required|necessary|needed|appropriate)|properly|correctly|adequately|appropriately|sufficient(?:ly)?|adequate|and so on|etc\b\.?)`)
	// "as required by the plate" names who requires it.
	namesWho = pattern.MustCompile(`(?i)^ (?:by|in|on|under|from|for|to)\b`)
	// "a properly seated ring" tells of the thing and asks for nothing.
	ofAThing = pattern.MustCompile(`(?i)\b(?:a|an|any|no) $`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/no-value", Severity: finding.Warning, Title: "Words stand where a value or a sign should stand",
		Why:     "Each reader fills in what he is used to, and nobody can tell afterwards whether it was enough.",
		Source:  "DOE-STD-1029-92: words without specifics are a defect, from a digest",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Wipe the plug as necessary.\"\n",
		Good:    "[[step]]\nsay = \"Wipe the plug until the rag stays clean.\"\n",
	},
	Words: true,
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if valued(step) && !step.Until.Set() {
				continue
			}
			for _, text := range append(append([]model.Text{step.Expect, step.Until}, orders(step)...), step.Keep.Items...) {
				for _, s := range p.sentences(text) {
					m := elastic.FindStringIndex(s.words)
					if m == nil || s.figure() || namesWho.MatchString(s.words[m[1]:]) || ofAThing.MatchString(s.words[:m[0]]) {
						continue
					}
					p.Found(finding.Finding{Place: s.at(m[0], m[1]), Summary: fmt.Sprintf("%q says neither how much nor how it is known", s.words[m[0]:m[1]]),
						Help: "Write the value, the sign by which it is known, or the condition: \"until the rag stays clean\", \"if the gap is over 1 mm, …\"."})
				}
			}
		}
	},
})
