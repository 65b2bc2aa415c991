package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "limit/not-anew", Severity: finding.Warning, Title: "A part is renewed, and a setting that hangs on it is not made anew",
		Why:     "The setting was made to the old part, and the new one runs out of it.",
		Source:  "the machine's own description: anew-after",
		Setting: whole(quiet) + "[part.band]\nhead = \"none\"\n[limit.band-gap]\nlimit = \"2 to 4 mm\"\noutside = \"Set the band again.\"\nanew-after = [\"band\"]\n",
		Bad:     "[[step]]\nremove = \"band\"\n[[step]]\nrefit = \"band\"\n",
		Good:    "[[step]]\nremove = \"band\"\n[[step]]\nrefit = \"band\"\n[[step]]\nadjust = \"band-gap\"\n",
	},
	Job: onBreach(state.NotAnew, func(p *Pass, b state.Breach) finding.Finding {
		out := finding.Finding{Summary: fmt.Sprintf("the %s comes on at step %d, and no later step sets or measures the %s", b.Thing, b.Step.Number, b.Other),
			Help: fmt.Sprintf("Write a later step with adjust = %q or measure = %q, or one with follow = \"…\" and the procedure that does it.", b.Name, b.Name)}
		for _, item := range p.Job.Limit(b.Name).Anew.Items {
			if part := p.Job.Part(item.Name()); part != nil && part.Words() == b.Thing {
				out.Related = []finding.Related{{Place: item.At, Text: "the setting wants it"}}
			}
		}
		return out
	}),
})
