package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/guards-nothing", Severity: finding.Warning, Title: "A guard is described and not what it guards",
		Why:     "Without it nobody is told to isolate before it comes off, or to put it on before the energy comes back.",
		Source:  "29 CFR 1910.212(a); ISO 12100 (guard)",
		Setting: gearbox + "tools = []\ncautions = [\"start\", \"guard\", \"pinch\"]\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\n",
		Bad:     "[cover.chain-guard]\n[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"chain-guard\"\n",
		Good:    "[cover.chain-guard]\nguards = \"mains\"\n[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"chain-guard\"\n",
	},
	Job: func(p *Pass) {
		energies := p.Job.Energies()
		if len(energies) == 0 {
			return
		}
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				for _, cover := range p.Job.Freed(object.Part) {
					if len(cover.Guards.Items) > 0 || says(cover.Words(), harmlessDoors...) || !slices.ContainsFunc(guardNames, func(word string) bool {
						return slices.Contains(strings.Fields(strings.ToLower(strings.ReplaceAll(cover.Words(), "-", " "))), word)
					}) {
						continue
					}
					p.Found(finding.Finding{Place: cover.At, Related: []finding.Related{{Place: object.Text.At, Text: "used here"}},
						Summary: fmt.Sprintf("the %s is a guard, and what it guards is not said", cover.Words()),
						Help:    fmt.Sprintf("Add guards with the energies that move what is behind it, like guards = [%q].", energies[0].Name)})
				}
			}
		}
	},
})

// guardNames are words by which the trade calls a cover that keeps hands from what
// moves; common practice, no source.
var guardNames = []string{"guard", "guards", "hood", "shield", "shroud", "fence", "door", "doors"}

// harmlessDoors are words of what has a door or a hood and nothing that moves behind it;
// common practice, no source.
var harmlessDoors = []string{"tank", "sump", "cab", "cupboard", "locker", "glove", "tool box", "toolbox", "oven", "boiler", "shed", "room", "switch", "fuse", "battery", "filter", "air box", "airbox", "rain"}
