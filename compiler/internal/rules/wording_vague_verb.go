package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/pattern"
)

var (
	vagueVerb = pattern.MustCompile(`(?i)^(ensure|make sure|make certain|be sure|see to it|secure|service|adjust) `)
	naming    = pattern.MustCompile(`(?i)^(?:ensure|make|be|see)`) // a result, not a deed
	// What says how far, by what or with what.
	specifics = pattern.MustCompile(`(?i)\b(?:until|till|so|to|by|with|against|from|under|on|in line|as|per|level|flush)\b`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/vague-verb", Severity: finding.Note, Title: "A verb leaves open what the hands do",
		Why:     "“Ensure” and “secure” name a result: one reader looks, another works, and both tick the box.",
		Source:  "DOE-STD-1029-92: each verb from a list and defined, or with its specifics; from a digest",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Secure the cover.\"\n",
		Good:    "[[step]]\nsay = \"Tie the cover to the rail.\"\n",
	},
	Words: true,
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if !step.Say.Set() || valued(step) {
				continue
			}
			for _, s := range p.sentences(step.Say) {
				core, skip := s.core()
				m := vagueVerb.FindStringSubmatchIndex(core)
				if m == nil || s.figure() {
					continue
				}
				verb := core[m[2]:m[3]]
				result := naming.MatchString(verb)
				if !result && specifics.MatchString(core[m[3]:]) {
					continue
				}
				help := "Write what the hands do and until when: \"Tie the cover to the rail.\", \"Turn the screw until the pointer stands at 0.\""
				if result {
					help = "Write check for a look, with expect, or the verb of the deed: close, tighten, tie."
				}
				p.Found(finding.Finding{Place: s.at(skip+m[2], skip+m[3]), Summary: fmt.Sprintf("%q leaves open what is done", s.head()), Help: help})
			}
		}
	},
})
