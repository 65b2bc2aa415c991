package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "record/checked-by-author", Severity: finding.Note, Title: "The author checked it himself",
		Why:     "Who wrote it reads what he meant; a second pair of eyes reads what stands there.",
		Source:  "common practice, no source",
		Setting: quiet,
		Bad:     "checked = \"R. Aldous\"\n[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "checked = \"T. Okafor\"\n[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		author, checked := p.Job.Procedure.Author, p.Job.Procedure.Checked
		same := func(text string) string { return strings.ToLower(strings.Join(strings.Fields(text), " ")) }
		if checked.Set() && same(author.Text) == same(checked.Text) {
			p.Found(finding.Finding{Place: checked.At, Summary: fmt.Sprintf("%s wrote it and checked it", checked.Text),
				Help: "Let another who does the job try it at the machine, and write that name; or leave checked out until then."})
		}
	},
})
