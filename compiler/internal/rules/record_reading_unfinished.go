package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "record/reading-unfinished", Severity: finding.Note, Title: "The second reading has blanks left",
		Why:     "The figures that stand there as blanks have been read only once.",
		Source:  twice,
		Setting: readTwice,
		Bad:     "[second-reading.part.drain-plug]\nthread = \"M22x1.5\"\ntorque = \"\"\ncondition = \"\"\n[part.drain-plug]\nthread = \"M22x1.5\"\ntorque = \"42 to 48 N·m\"\ncondition = \"dry\"\n",
		Good:    "[second-reading.part.drain-plug]\nthread = \"M22x1.5\"\ntorque = \"42 to 48 N·m\"\ncondition = \"dry\"\n[part.drain-plug]\nthread = \"M22x1.5\"\ntorque = \"42 to 48 N·m\"\ncondition = \"dry\"\n",
	},
	Reading: func(p *Pass, d model.Difference) {
		if d.Parting != model.Unfinished {
			return
		}
		left := "a blank"
		if d.Blanks > 1 {
			left = fmt.Sprintf("%d blanks", d.Blanks)
		}
		p.Found(finding.Finding{Place: d.Here, Summary: fmt.Sprintf("the second reading has %s left", left),
			Help: "Have another person fill them in, from the manual and not from the file."})
	},
})
