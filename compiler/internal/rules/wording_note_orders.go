package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/order-in-note", Severity: finding.Warning, Title: "A note tells somebody to do something",
		Why:     "A note has no number and no tick box, so what it orders is left undone.",
		Source:  "ASD-STE100 rule 5.5; DOE-STD-1029-92: notes inform and hold no actions",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Wipe the plug.\"\nnotes = [\"Clean the seat as well.\"]\n",
		Good:    "[[step]]\nsay = \"Wipe the plug.\"\n[[step]]\nsay = \"Wipe the seat.\"\nnotes = [\"Grit on the seat lets oil past the plug.\"]\n",
	},
	Words: true,
	Job: func(p *Pass) {
		notes := slices.Clone(p.Job.Procedure.Notes.Items)
		for _, step := range p.Job.Steps {
			notes = append(notes, step.Notes.Items...)
		}
		for _, note := range notes {
			for _, s := range p.sentences(note) {
				if firmOrder.MatchString(s.words) {
					p.Found(finding.Finding{Place: s.place(), Summary: fmt.Sprintf("the note orders: %q", s.head()),
						Help: "Make a step of it, or put it into the say of the step it belongs to. A note only tells how things are."})
				}
			}
		}
	},
})
