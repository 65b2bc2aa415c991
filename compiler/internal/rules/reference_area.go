package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "reference/area", Severity: finding.Warning, Title: "An area of the machine is apart from itself, or nothing is in it",
		Why:     "What was meant was another area, and two people are planned for one place or for none.",
		Source:  "the machine's file itself",
		Setting: quiet,
		Bad:     "[area.tail]\napart = [\"tail\"]\n[[step]]\nsay = \"Look at the plug.\"\narea = [\"tail\"]\n",
		Good:    "[area.tail]\napart = [\"head\"]\n[area.head]\n[[step]]\nsay = \"Look at the plug.\"\narea = [\"tail\"]\n[[step]]\nsay = \"Look at the label.\"\narea = [\"head\"]\n",
	},
	Job: func(p *Pass) {
		for _, area := range p.Job.AllAreas() {
			seen := map[string]model.Text{}
			for _, other := range area.Apart.Items {
				if first, twice := seen[other.Name()]; twice {
					p.Found(finding.Finding{Place: other.At, Summary: fmt.Sprintf("%q stands twice in apart of the %s", other.Text, area.Words()), Help: "Take one of them out, or name the area that was meant.",
						Related: []finding.Related{{Place: first.At, Text: "the first"}}})
				} else if other.Name() == area.Name {
					p.Found(finding.Finding{Place: other.At, Summary: fmt.Sprintf("the %s is said to be apart from itself", area.Words()), Help: "Take it out, or name the area that was meant: two people in one area are never apart."})
				}
				seen[other.Name()] = other
			}
			if !p.Job.InUse(area) {
				p.Milder(finding.Finding{Place: area.Header, Summary: fmt.Sprintf("nothing is in the area %q", area.Name), Help: "Name it in area of the parts that are there, or of the steps that are done there; or take it out."})
			}
		}
	},
})
