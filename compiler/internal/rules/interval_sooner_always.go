package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "interval/always-holds", Severity: finding.Warning, Title: "A reading brings the job forward even when all is new",
		Why:     "The shorter interval then always counts, and the job's own never does: one of the two figures is mistyped.",
		Source:  "the language itself: sooner is for what has worn",
		Setting: quiet,
		Bad:     "sooner = [{ reading = \"Length\", under = \"60 mm\", every = \"50 h\" }]\n[limit.tooth]\ntitle = \"length of the tooth\"\nhow = \"Measure it.\"\nnew = \"40 mm\"\nlimit = \"min 20 mm\"\noutside = \"Renew it.\"\n[[step]]\nmeasure = \"tooth\"\nreading = \"Length\"\n",
		Good:    "sooner = [{ reading = \"Length\", under = \"26 mm\", every = \"50 h\" }]\n[limit.tooth]\ntitle = \"length of the tooth\"\nhow = \"Measure it.\"\nnew = \"40 mm\"\nlimit = \"min 20 mm\"\noutside = \"Renew it.\"\n[[step]]\nmeasure = \"tooth\"\nreading = \"Length\"\n",
	},
	Everywhere: true,
	Job: func(p *Pass) {
		for _, clause := range p.Job.Procedure.Sooner {
			meant, _, known := p.readings(clause)
			if !known || len(meant) != 1 || !meant[0].New.OK {
				continue
			}
			fresh := meant[0].New
			least, bounded := fresh.Lowest()
			most, ends := fresh.Highest()
			tell := func(bound, than string) {
				p.Found(finding.Finding{Place: clause.Header, Summary: fmt.Sprintf("%s when new is %s than %s already, so it always comes sooner", fresh.Text.Text, than, bound),
					Help: "Write the value from which it is worn, between new and the limit.", Related: []finding.Related{{Place: fresh.At, Text: "what it is when new"}}})
			}
			if bound := clause.Under; bound.OK && bound.Dimension == fresh.Dimension && ends {
				if from, ok := bound.Lowest(); ok && most.Cmp(from) < 0 {
					tell(bound.Text.Text, "less")
				}
			}
			if bound := clause.Over; bound.OK && bound.Dimension == fresh.Dimension && bounded {
				if from, ok := bound.Highest(); ok && least.Cmp(from) > 0 {
					tell(bound.Text.Text, "more")
				}
			}
		}
	},
})
