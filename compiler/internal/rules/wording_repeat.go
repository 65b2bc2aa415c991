package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/pattern"
)

var (
	repeats  = pattern.MustCompile(`(?i)^(?:repeat|do (?:this|that|it|the same) again)\b`)
	repeated = pattern.MustCompile(`(?i)\b(?:once|twice|times|until|till|each|every|all|both|other|others|second|rest|remaining|next|opposite|left|right|on|at|for|with|from|after|daily|weekly)\b|\d`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/repeat-without-end", Severity: finding.Warning, Title: "A step is repeated and nothing says how often",
		Why:     "One repeats it once, the next until he is tired of it; what it was for is missed by both.",
		Source:  "DOE-STD-1029-92: a repeated step has a count or the sign at which it ends",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Wipe the plug. Repeat.\"\n",
		Good:    "[[step]]\nsay = \"Wipe the plug. Repeat until the rag stays clean.\"\n",
	},
	Words: true,
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			for _, text := range orders(step) {
				for _, s := range p.sentences(text) {
					core, skip := s.core()
					if skip > 0 || !repeats.MatchString(core) || repeated.MatchString(core) || step.Until.Set() || step.Count.N > 0 {
						continue
					}
					p.Found(finding.Finding{Place: s.place(), Summary: fmt.Sprintf("%q does not say how often or until when", s.head()),
						Help: "Write a count (\"three times\"), the sign at which it ends (\"until the rag stays clean\"), or what else it is done to (\"on the other side\")."})
				}
			}
		}
	},
})
