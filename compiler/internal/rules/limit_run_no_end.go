package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "limit/run-without-end", Severity: finding.Note, Title: "A run does not say how long or how often",
		Why:     "One runs it for ten seconds, the next until the coffee is ready.",
		Source:  "common practice, no source",
		Setting: quiet,
		Bad:     "[[step]]\nrun = \"the winch without load\"\nexpect = \"nothing rubs\"\noutside = \"Stop.\"\n",
		Good:    "[[step]]\nrun = \"the winch without load\"\nleast = \"2 min\"\nexpect = \"nothing rubs\"\noutside = \"Stop.\"\n",
	},
	Words: true,
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if step.Verb.Key != "run" || len(step.Objects) == 0 || step.Least.Set() || step.Most.Set() || step.Until.Set() || step.Time.Set() {
				continue
			}
			said := " " + strings.ToLower(step.Objects[0].Text.Text+" "+step.Say.Text) + " "
			if strings.ContainsAny(said, "0123456789") || slices.ContainsFunc(ends, func(word string) bool { return strings.Contains(said, " "+word) }) {
				continue
			}
			p.Found(finding.Finding{Place: step.Objects[0].Text.At, Summary: fmt.Sprintf("step %d does not say how long or how often it runs", step.Number),
				Help: "Add least = \"…\" with the time, until = \"…\" with what is seen, or say once, twice, three turns."})
		}
	},
})

// ends are words that say when a run is over.
var ends = []string{"once", "twice", "one ", "two ", "three ", "four ", "five ", "ten ", "until", "turn", "stroke", "cycle", "lap", "round", "second", "minute"}
