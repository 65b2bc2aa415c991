package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/time-upside-down", Severity: finding.Error, Title: "A wait or a run lasts longer at least than at most",
		Why:     "Nobody can keep both, and each keeps the other.",
		Source:  "the language itself",
		Setting: quiet,
		Bad:     "[[step]]\nwait = \"20 min\"\nmost = \"5 min\"\n",
		Good:    "[[step]]\nwait = \"5 min\"\nmost = \"20 min\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			least := step.Least
			if step.Verb.Key == "wait" {
				least = step.Wait
			}
			if !least.OK || !step.Most.OK {
				continue
			}
			low, bounded := least.Lowest()
			high, ends := step.Most.Highest()
			if bounded && ends && low.Cmp(high) > 0 {
				p.Found(finding.Finding{Place: step.Most.At, Summary: fmt.Sprintf("step %d lasts %s at least and %s at most", step.Number, least.Text.Text, step.Most.Text.Text),
					Help: "Write the longer time as most.", Related: []finding.Related{{Place: least.At, Text: "the least time"}}})
			}
		}
	},
})

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "record/outside-of-nothing", Severity: finding.Warning, Title: "A step says what to do otherwise, and not what is looked for",
		Why:     "“If not” with nothing before it leaves each reader to guess what should have been.",
		Source:  "DOE-STD-1029-92: an acceptance criterion stands at the step that looks; from memory",
		Setting: quiet,
		Bad:     "[[step]]\ninspect = \"the paint of the vent\"\noutside = \"Call the foreman.\"\n",
		Good:    "[[step]]\ninspect = \"the paint of the vent\"\nexpect = \"no blister\"\noutside = \"Call the foreman.\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if !step.Outside.Set() || step.Expect.Set() || step.Limit.Set() || step.SetTo.Set() || step.Reading.Set() || step.Until.Set() || step.Say.Set() || step.Torque.Set() || limited(step) {
				continue
			}
			p.Found(finding.Finding{Place: step.Outside.At, Summary: fmt.Sprintf("step %d says what to do otherwise, and nothing says what it should be", step.Number),
				Help: "Write expect = \"…\" with what is seen when all is well, or limit = \"…\"."})
		}
	},
})

// limited reports whether the thing a step acts on has a limit.
func limited(step *model.Step) bool {
	for _, object := range step.Objects {
		if object.Limit != nil || object.Energy != nil {
			return true
		}
	}
	return false
}
