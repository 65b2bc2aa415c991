package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "limit/no-setting", Severity: finding.Warning, Title: "Something is set and nobody is told to what",
		Why:     "Each hand sets it to what it is used to.",
		Source:  "DOE-STD-1029-92: a step that sets something gives the value",
		Setting: quiet,
		Bad:     "[[step]]\nadjust = \"the brake band\"\n",
		Good:    "[[step]]\nadjust = \"the brake band\"\nset = \"3 mm\"\n",
	},
	Words: true,
	Job: func(p *Pass) {
		for i, step := range p.Job.Steps {
			if !slices.Contains([]string{"adjust", "tension", "align"}, step.Verb.Key) || step.SetTo.Set() || step.Limit.Set() || step.Until.Set() || step.Torque.Set() || step.Angle.Set() || step.Expect.Set() {
				continue
			}
			said := strings.ToLower(step.Say.Text)
			if limited(step) || strings.Contains(said, "until") || strings.ContainsAny(step.Say.Text, "0123456789") && step.Verb.Key != "tension" || slices.ContainsFunc(matched, func(word string) bool { return strings.Contains(said, word) }) {
				continue
			}
			if next := i + 1; next < len(p.Job.Steps) && slices.Contains([]string{"measure", "check"}, p.Job.Steps[next].Verb.Key) {
				continue // it is held against its limit at once
			}
			what := ""
			if len(step.Objects) > 0 {
				what = step.Objects[0].Words()
			}
			p.Found(finding.Finding{Place: at(step), Summary: fmt.Sprintf("step %d sets the %s and does not say to what", step.Number, what),
				Help: "Add set = \"…\" with the value, or until = \"…\" with what is seen when it is right."})
		}
	},
})

// matched are words by which a step sets something by another thing.
var matched = []string{"mark", "flush", "level with", "same", "in line", "field", "stop"}
