package rules

import (
	"fmt"
	"strconv"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

var (
	stepNumber = pattern.MustCompile(`(?i)\bsteps? (\d{1,3})(?:[.,;:)\s]|$)`)
	// Steps of something else, and stairs.
	otherSteps = pattern.MustCompile(`(?i)^\s*(?:of|in|on|mm|cm|inch(?:es)?|rungs?|high|up|down)\b|^\d`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/step-not-there", Severity: finding.Warning, Title: "A sentence names a step that is not there",
		Why:     "Steps are numbered anew when one is put in or taken out; the words go on pointing at the old number.",
		Source:  "DOE-STD-1029-92: what is referred to must be there; from a digest",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Wipe the plug as in step 4.\"\n",
		Good:    "[[step]]\nsay = \"Wipe the plug.\"\n[[step]]\nsay = \"Wipe the seat as in step 1.\"\n",
	},
	Words: true,
	Job: func(p *Pass) {
		last := len(p.Job.Steps)
		for _, step := range p.Job.Steps {
			for _, text := range append(append([]model.Text{step.Expect, step.Until}, orders(step)...), step.Notes.Items...) {
				for _, m := range stepNumber.FindAllStringSubmatchIndex(text.Text, -1) {
					number, err := strconv.Atoi(text.Text[m[2]:m[3]])
					if err != nil || number >= 1 && number <= last || otherSteps.MatchString(text.Text[m[3]:]) {
						continue
					}
					p.Found(finding.Finding{Place: text.Inside(m[0], m[3]), Summary: fmt.Sprintf("%q is named, and the job has %d steps", text.Text[m[0]:m[3]], last),
						Help: "Write the number the step has on the card, or better what is done there: \"as when the plug was wiped\"."})
				}
			}
		}
	},
})
