package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "record/read-by-author", Severity: finding.Warning, Title: "The author read his own figures a second time",
		Why:     "Who misread a figure once is likely to misread it again, or writes what he remembers.",
		Source:  "DOE-STD-1036-93: a second check counts where it is another person's and does not see the first",
		Setting: quiet + "[[step]]\ninspect = \"the drain plug\"\n[second-reading]\ndate = 2026-02-20\nfrom = \"Operator's manual, page 41\"\nprocedure = { every = \"500 h\" }\n",
		Bad:     "by = \"R. Aldous\"\n",
		Good:    "by = \"T. Okafor\"\n",
	},
	Job: func(p *Pass) {
		author := p.Job.Procedure.Author
		for _, file := range p.File.Readings() {
			if by := file.Second.By; by.Set() && strings.EqualFold(inLine(by.Text), inLine(author.Text)) {
				p.Found(finding.Finding{Place: by.At, Summary: fmt.Sprintf("%s wrote the procedure and read its figures a second time", by.Text),
					Help: "Have another person read them, from the manual and not from the file."})
			}
		}
	},
})
