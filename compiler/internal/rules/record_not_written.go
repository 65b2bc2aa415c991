package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "record/not-written-down", Severity: finding.Note, Title: "A value is measured and not written down",
		Why:     "Next time nobody knows whether it has grown.",
		Source:  "DOE-STD-1029-92: readings are recorded; from a digest",
		Setting: quiet,
		Bad:     "[[step]]\nmeasure = \"the depth of the groove\"\nlimit = \"max 3 mm\"\noutside = \"Renew the wheel.\"\n",
		Good:    "[[step]]\nmeasure = \"the depth of the groove\"\nlimit = \"max 3 mm\"\noutside = \"Renew the wheel.\"\nreading = \"Depth\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if step.Verb.Key != "measure" || step.Reading.Set() || !step.Limit.OK && !limited(step) || p.measuredAgain(step) {
				continue
			}
			p.Found(finding.Finding{Place: at(step), Summary: fmt.Sprintf("step %d measures, and no blank on the card takes the value", step.Number),
				Help: "Add reading = \"…\" with what stands before the blank; or write check where the value itself is of no use."})
		}
	},
})

// measuredAgain reports whether what a step measures is set later and measured once more, so
// that the last value is the one to keep.
func (p *Pass) measuredAgain(step *model.Step) bool {
	set := false
	for _, later := range p.Job.Steps[step.Number:] {
		switch later.Verb.Key {
		case "adjust", "align", "tension", "slacken":
			set = true
		case "measure":
			if set && slices.EqualFunc(step.Objects, later.Objects, func(a, b model.Object) bool { return a.Words() == b.Words() }) {
				return true
			}
		}
	}
	return false
}
