package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "record/read-once", Severity: finding.Note, Title: "The second reading leaves a figure out",
		Why:     "Who sees that there is a second reading takes every figure for read twice.",
		Source:  twice,
		Setting: readTwice,
		Bad:     "[second-reading.part.drain-plug]\nthread = \"M22x1.5\"\n[part.drain-plug]\nthread = \"M22x1.5\"\ntorque = \"42 to 48 N·m\"\ncondition = \"dry\"\n",
		Good:    "[second-reading.part.drain-plug]\nthread = \"M22x1.5\"\ntorque = \"42 to 48 N·m\"\ncondition = \"dry\"\n[part.drain-plug]\nthread = \"M22x1.5\"\ntorque = \"42 to 48 N·m\"\ncondition = \"dry\"\n",
	},
	Reading: func(p *Pass, d model.Difference) {
		if d.Parting != model.ReadOnce {
			return
		}
		verb := "is"
		if len(d.Keys) > 1 {
			verb = "are"
		}
		p.Found(finding.Finding{Place: d.Here, Summary: fmt.Sprintf("%s %s read only once", whose(d), verb),
			Related: []finding.Related{{Place: d.There, Text: "the second reading"}},
			Help:    lookUp(d) + ", and have another person write it into the second reading."})
	},
})
