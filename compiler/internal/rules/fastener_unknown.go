package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/trade"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fastener/unknown-size", Severity: finding.Error, Title: "Nobody can tell which tool fits a fastener",
		Why:     "The wrench is tried out with the machine open.",
		Source:  "ISO 261, ISO 262, ASME B1.1 for threads; ISO 272, ISO 4762, ASME B18.2.1 and the other standards of each head for widths",
		Setting: walled,
		Bad:     "tools = []\n[part.plug]\nthread = \"M10x1.75\"\n[[step]]\nloosen = \"plug\"\n",
		Good:    "tools = [\"wrench-16\"]\n[part.plug]\nthread = \"M10\"\n[[step]]\nloosen = \"plug\"\n",
	},
	Job: func(p *Pass) {
		told := map[string]bool{}
		for _, grip := range p.Needs.Grips {
			if told[grip.Part.Name] || grip.Fault == nil && grip.Known() {
				continue
			}
			if grip.Part.Across.Set() && !grip.Part.Across.OK {
				continue // the rules on units say what is wrong
			}
			told[grip.Part.Name] = true
			place := grip.Part.Thread.At
			if !place.Known() {
				place = grip.Part.At
			}
			found := finding.Finding{Place: place, Help: "Write across = \"…\" with the width across flats measured at the machine.",
				Related: []finding.Related{{Place: grip.Object, Text: fmt.Sprintf("step %d turns it", grip.Step.Number)}}}
			switch {
			case grip.Fault != nil:
				found.Summary = grip.Fault.Error()
				if place == grip.Part.Thread.At {
					found.Fixes = meant(grip.Fault, place)
				}
				if grip.Part.Thread.Set() {
					found.Help = "Write the thread as it is marked or measured. If it is a special one, write across = \"…\" too, with the width across flats measured at the machine."
				}
			case len(trade.Recesses(grip.Head)) > 0:
				found.Summary = fmt.Sprintf("the %s has a recess without its number", grip.Part.Words())
				found.Help = fmt.Sprintf("Write size = %q or another of %s.", trade.Recesses(grip.Head)[0], names(trade.Recesses(grip.Head)))
			default:
				found.Summary = fmt.Sprintf("no standard gives the width across flats of the %s", grip.Part.Words())
			}
			p.Found(found)
		}
	},
})
