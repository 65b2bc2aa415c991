package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/pattern"
)

var (
	joined = pattern.MustCompile(`(?i)^(` + verbForm + `)\s+(?:.*?[\s,])??(?:and then|and|then)\s+(` + verbForm + `)\s+` + determiner)
	// "Start at the top" acts on nothing; what follows is the action.
	actsOnNothing = pattern.MustCompile(`(?i)^ (?:at|with|from|by|on|in) `)
	// What is done and undone to work a thing through is one action, and so is a look at
	// what runs, and to write down what was just read.
	oneAction = map[string]string{"open": "close", "close": "open", "start": "stop run", "stop": "start", "raise": "lower", "lower": "raise",
		"connect": "disconnect", "disconnect": "connect", "tighten": "loosen", "loosen": "tighten", "remove": "refit", "run": "check inspect measure"}
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/two-actions", Severity: finding.Warning, Title: "A sentence tells of two actions",
		Why:     "One tick box for two actions hides the one that was forgotten.",
		Source:  "ASD-STE100 rule 5.2; DOE-STD-1029-92: one action a step",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Remove the plug and clean the seat.\"\n",
		Good:    "[[step]]\nsay = \"Remove the plug.\"\n[[step]]\nsay = \"Clean the seat.\"\n",
	},
	Words: true,
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if step.Verb.Key != "" || !step.Say.Set() {
				continue
			}
			for _, s := range p.sentences(step.Say) {
				core, skip := s.core()
				m := joined.FindStringSubmatchIndex(core)
				if m == nil {
					continue
				}
				first, second := strings.ToLower(core[m[2]:m[3]]), strings.ToLower(core[m[4]:m[5]])
				if actsOnNothing.MatchString(core[m[3]:]) || second == "record" || strings.Contains(oneAction[first], second) {
					continue
				}
				p.Found(finding.Finding{Place: s.at(skip+m[4], skip+m[5]), Summary: fmt.Sprintf("step %d tells of two actions in one sentence, %q and %q", step.Number, first, second),
					Help: fmt.Sprintf("Make a step of its own for %q, with a verb key for each where there is one.", second)})
			}
		}
	},
})
