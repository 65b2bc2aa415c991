package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/two-names", Severity: finding.Warning, Title: "One order number stands under two names",
		Why:     "Two lines are picked for one thing, or one of the two numbers is mistyped and the wrong part comes.",
		Source:  "ASD-STE100: one name for one thing; common practice for order numbers",
		Setting: version + "[spare.washer-18]\nnumber = \"LD-0418\"\n[spare.ring-18]\nnumber = \"LD-0418\"\n[spare.pin-4]\nnumber = \"LD-0401\"\n" + procedure + "no-isolation = \"On the bench\"\ntools = []\nsupplies = []\nwear = []\n",
		Bad:     "spares = [\"washer-18\", \"ring-18\"]\n[[step]]\nsay = \"Lay the new parts out.\"\nspares = [\"washer-18\", \"ring-18\"]\n",
		Good:    "spares = [\"washer-18\", \"pin-4\"]\n[[step]]\nsay = \"Lay the new parts out.\"\nspares = [\"washer-18\", \"pin-4\"]\n",
	},
	Job: func(p *Pass) {
		first := map[string]model.Text{}
		look := func(item, number model.Text) {
			key := strings.ToLower(strings.Join(strings.Fields(number.Text), ""))
			if !strings.ContainsAny(key, "0123456789") { // "see the manual"
				return
			}
			other, known := first[key]
			if !known {
				first[key] = item
				return
			}
			if other.Name() != item.Name() {
				p.Found(finding.Finding{Place: item.At, Summary: fmt.Sprintf("%q and %q have one order number, %s", other.Text, item.Text, number.Text),
					Help: "Describe it once and use that name, or put the number right.", Related: []finding.Related{{Place: other.At, Text: "the other name"}, {Place: number.At, Text: "the number"}}})
			}
		}
		for _, item := range p.Job.Procedure.Spares.Items {
			if spare := p.Job.Spare(item.Name()); spare != nil {
				look(item, spare.Number)
			}
		}
		for _, item := range p.Job.Procedure.Supplies.Items {
			if fluid := p.Job.Fluid(item.Name()); fluid != nil {
				look(item, fluid.Number)
			} else if supply := p.Job.Supply(item.Name()); supply != nil {
				look(item, supply.Number)
			}
		}
	},
})
