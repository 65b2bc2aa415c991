package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/hazard"
	"benchleaf/compiler/internal/model"
)

// feeds are the kinds of energy behind a hazard that shows when hands are on a line of it,
// or on what a shaft from another machine turns.
var feeds = map[string][]string{"injection": {"hydraulic"}, "shock": {"electric", "battery"}, "shaft": {"shaft"}, "burst": {"pneumatic"},
	"start": {"shaft"}, "rotation": {"shaft"}, "pinch": {"shaft"}, "feed": {"shaft"}}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/energy-live", Severity: finding.Warning, Title: "Hands go on what an energy of the machine still feeds",
		Why:     "Another energy is cut off, and this one is still in the line that is opened.",
		Source:  "29 CFR 1910.147(d)(3): all sources of energy are isolated",
		Setting: setting + "supplies = []\nspares = []\ntools = []\nwear = [\"eye-protection\", \"gloves\"]\ncautions = [\"start\", \"injection\"]\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\n[energy.oil]\nkind = \"hydraulic\"\npressure = \"160 bar\"\nisolate = \"Stop the pump.\"\nprove = \"The gauge reads 0.\"\n[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n",
		Bad:     "[[step]]\ndisconnect = \"the hydraulic hose\"\n",
		Good:    "[[prepare]]\nisolate = \"oil\"\n[[prepare]]\nprove = \"oil\"\n[[step]]\ndisconnect = \"the hydraulic hose\"\n",
	},
	Job: func(p *Pass) {
		if p.Job.Procedure.NoIsolation.Set() {
			return
		}
		told := map[string]bool{}
		for _, implied := range p.Hazards {
			kinds, step := feeds[implied.Hazard.Key], implied.Step
			if len(kinds) == 0 || step.Verb.Key != "" && !hazard.Hands(step.Verb.Key) {
				continue
			}
			var live *model.Energy
			cut := false
			for _, energy := range p.Job.Energies() {
				if !slices.Contains(kinds, energy.Kind.Text) {
					continue
				}
				isolated := p.isolated(energy.Name)
				parted := p.first("disconnect", energy.Name)
				if isolated != nil && isolated.Number < step.Number || parted != nil && parted.Number <= step.Number {
					cut = true
				} else if live == nil {
					live = energy
				}
			}
			if live == nil || cut || told[live.Name] {
				continue
			}
			told[live.Name] = true
			p.Found(finding.Finding{Place: implied.Place,
				Summary: fmt.Sprintf("step %d puts hands on what the %s feeds, which is not isolated before it: %s", step.Number, live.Words(), implied.Why),
				Help:    fmt.Sprintf("Write a step isolate = %q and a step prove = %q before it, or allow this with the reason.", live.Name, live.Name),
				Related: []finding.Related{{Place: live.At, Text: "the energy"}}})
		}
	},
})
