package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/pattern"
)

var (
	advice = pattern.MustCompile(`(?i)\b(?:should|ought to|(?:may|might|would|could) (?:want|like|wish) to|(?:is|are) (?:recommended|advised|advisable))\b`)
	// "as it should", "where it should be": a comparison, no advice.
	asItShould = pattern.MustCompile(`(?i)\b(?:as|than|where|what|how|that|which|who|why)\b[^,]*$`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/should", Severity: finding.Note, Title: "An order is written as advice",
		Why:     "One reads “should” as must, the next as may, and skips it when time is short.",
		Source:  "ASD-STE100: an order stands in the imperative, rule 5.3; common practice",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Wipe the plug. You should use a clean rag.\"\n",
		Good:    "[[step]]\nsay = \"Wipe the plug with a clean rag.\"\n",
	},
	Words: true,
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			for _, text := range orders(step) {
				for _, s := range p.sentences(text) {
					m := advice.FindStringIndex(s.words)
					if m == nil || m[0] == 0 || asItShould.MatchString(s.words[:m[0]]) || s.states() && step.Verb.Key == "" && text == step.Say && s.start == 0 { // the last is wording/no-order
						continue
					}
					p.Found(finding.Finding{Place: s.at(m[0], m[1]), Summary: fmt.Sprintf("%q leaves open whether it must be", strings.Join(strings.Fields(s.words[m[0]:m[1]]), " ")),
						Help: "Write the order itself (\"Use a clean rag.\"); write expect = \"…\" for what is seen when all is well; take out what may be left undone."})
				}
			}
		}
	},
})
