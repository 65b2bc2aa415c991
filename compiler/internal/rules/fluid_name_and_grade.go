package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/pattern"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/name-and-grade", Severity: finding.Warning, Title: "A fluid is named after one grade and is of another",
		Why:     "One of the two is read off at the shelf, and it may be the wrong one.",
		Source:  "common practice, no source",
		Setting: setting + "no-isolation = \"On the bench\"\ntools = []\nspares = []\nwear = []\nsupplies = [\"oil-460\"]\n",
		Bad:     "[fluid.oil-460]\nkind = \"gear-oil\"\ngrade = \"ISO VG 220\"\n[cavity.gearbox]\nfluid = \"oil-460\"\ncapacity = \"1.1 L\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n",
		Good:    "[fluid.oil-460]\nkind = \"gear-oil\"\ngrade = \"ISO VG 460\"\n[cavity.gearbox]\nfluid = \"oil-460\"\ncapacity = \"1.1 L\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n",
	},
	Job: func(p *Pass) {
		for _, name := range p.Needs.Fluids(p.Job) {
			fluid := p.Job.Fluid(name)
			if fluid == nil || !fluid.Grade.Set() {
				continue
			}
			grade := numbers.FindAllString(fluid.Grade.Text, -1)
			for _, words := range []string{fluid.Name, fluid.Title.Text} {
				of := numbers.FindAllString(words, -1)
				if len(of) == 0 || len(grade) == 0 || slices.ContainsFunc(of, func(n string) bool { return slices.Contains(grade, n) }) || slices.ContainsFunc(of, func(n string) bool { return strings.Contains(fluid.Service.Text, n) }) {
					continue
				}
				p.Found(finding.Finding{Place: fluid.Grade.At, Summary: fmt.Sprintf("the fluid %q is of grade %s", words, fluid.Grade.Text),
					Help: "Correct the one that is wrong: the name, or the grade."})
				break
			}
		}
	},
})

var numbers = pattern.MustCompile(`\d+`)
