package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/pattern"
)

var (
	condition = pattern.MustCompile(`(?i)[\s,](only if|if|unless)\s+([\w-]+)`)
	// Behind these, "if" asks whether, and is no condition.
	whether = pattern.MustCompile(`(?i)\b(?:check|see|look|test|ask|know|feel|find out|tell|note|decide|watch|determine|verify|inspect|record|say|write|try|listen)\b`)
	// What stands before "if" in "as if", or begins a clause of its own in ", and if".
	setPhrase = pattern.MustCompile(`(?i)\b(?:as|even|what|and|or|but|then|except)$`)
	// "if fitted" limits the thing and not the deed; "if needed" is another rule's.
	ofTheThing = pattern.MustCompile(`(?i)^(?:fitted|present|any|so|not|there|necessary|needed|required|possible|applicable|available|at|in)$`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/condition-last", Severity: finding.Warning, Title: "The condition stands behind what to do",
		Why:     "The hand has acted before the eye comes to the condition.",
		Source:  "ASD-STE100 rule 5.4; DOE-STD-1029-92: the condition stands before the action",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Remove the plug if it weeps.\"\n",
		Good:    "[[step]]\nsay = \"If the plug weeps, remove it.\"\n",
	},
	Words: true,
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			for _, text := range orders(step) {
				for _, s := range p.sentences(text) {
					core, skip := s.core()
					m := condition.FindStringSubmatchIndex(core)
					if m == nil || !orderForm.MatchString(core) {
						continue
					}
					before, word := strings.TrimRight(core[:m[2]], " ,"), core[m[4]:m[5]]
					if whether.MatchString(before) || setPhrase.MatchString(before) || ofTheThing.MatchString(word) || strings.Contains(core[m[3]:], ",") {
						continue
					}
					p.Found(finding.Finding{Place: s.at(skip+m[2], len(s.words)), Summary: fmt.Sprintf("the condition %q stands behind what to do", strings.Join(strings.Fields(core[m[2]:]), " ")),
						Help: "Write the condition first, then a comma, then what to do: \"If it leaks, stop the pump.\""})
				}
			}
		}
	},
})
