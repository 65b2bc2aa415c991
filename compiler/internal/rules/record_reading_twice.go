package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "record/reading-twice", Severity: finding.Warning, Title: "Two blanks of a job have one name",
		Why:     "In the log nobody can tell which of the two values was before and which after.",
		Source:  "ASD-STE100: one name for one thing; common practice",
		Setting: quiet,
		Bad:     "[[step]]\nmeasure = \"the groove on the left\"\nreading = \"Depth\"\n[[step]]\nmeasure = \"the groove on the right\"\nreading = \"Depth\"\n",
		Good:    "[[step]]\nmeasure = \"the groove on the left\"\nreading = \"Depth, left\"\n[[step]]\nmeasure = \"the groove on the right\"\nreading = \"Depth, right\"\n",
	},
	Job: func(p *Pass) {
		first := map[string]model.Text{}
		look := func(text model.Text) {
			key := strings.ToLower(strings.Join(strings.Fields(strings.TrimRight(text.Text, " .:")), " "))
			if other, twice := first[key]; twice {
				p.Found(finding.Finding{Place: text.At, Summary: fmt.Sprintf("two blanks are named %q", text.Text),
					Help: "Name them apart: \"…, left\" and \"…, right\", \"… found\" and \"… left\".", Related: []finding.Related{{Place: other.At, Text: "the first"}}})
				return
			}
			first[key] = text
		}
		for _, step := range p.Job.Steps {
			if step.Reading.Set() {
				look(step.Reading)
			}
		}
		clear(first) // a blank at the end may repeat a reading, so that it is copied for the log
		for _, item := range p.Job.Procedure.Record.Items {
			look(item)
		}
	},
})
