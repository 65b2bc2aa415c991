package rules

import (
	"fmt"
	"strings"

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
		summary := fmt.Sprintf("the second reading has no “%s”", d.Of)
		verb := "is"
		if len(d.Keys) > 1 || len(d.Keys) == 1 && strings.HasSuffix(d.Keys[0], "s") {
			verb = "are"
		}
		if len(d.Keys) > 0 {
			summary = fmt.Sprintf("%s %s read only once", whose(d), verb)
		}
		p.Found(finding.Finding{Place: d.Here, Summary: summary,
			Related: []finding.Related{{Place: d.There, Text: "the second reading"}},
			Help:    fmt.Sprintf("Have it read again (%s) and written into the second reading.", d.From)})
	},
})
