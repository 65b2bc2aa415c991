package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "interval/zero", Severity: finding.Error, Title: "An interval is no time at all",
		Why:     "Nothing can be due after it, so the job never comes, and nobody sees it.",
		Source:  "the language itself: an interval is more than nothing",
		Setting: undated,
		Bad:     "every = \"0 h\"\n[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "every = \"50 h\"\n[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		for _, list := range p.intervals() {
			for _, one := range list {
				if most, ends := one.Highest(); one.OK && ends && most.Sign() == 0 {
					p.Found(finding.Finding{Place: one.At, Summary: fmt.Sprintf("%s is no interval", one.Text.Text),
						Help: "Write how long it takes until it is due again; leave every out where a reading makes it due at once."})
				}
			}
		}
	},
})
