package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/trade"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/no-protection", Severity: finding.Warning, Title: "Protective equipment that is asked for is not on the list",
		Why:     "What is not brought is not worn.",
		Source:  "29 CFR 1910.132(d), from memory: equipment is chosen by the hazards of the work; ISO 7010 for the signs",
		Setting: setting + "supplies = []\nspares = []\ntools = []\nno-isolation = \"On the bench\"\n",
		Bad:     "wear = []\n[[step]]\nclean = \"the magnet of the plug\"\nwear = [\"gloves\"]\n",
		Good:    "wear = [\"gloves\"]\n[[step]]\nclean = \"the magnet of the plug\"\nwear = [\"gloves\"]\n",
	},
	Job: func(p *Pass) {
		if !p.Job.Procedure.Wear.Given {
			return
		}
		told := map[string]bool{}
		tell := func(asked string, found finding.Finding) {
			if told[asked] || onList(p.Job.Procedure.Wear, asked) {
				return
			}
			told[asked] = true
			found.Help = fmt.Sprintf("Add %q to wear of the procedure.", asked)
			found.Fixes = []finding.Fix{{Title: fmt.Sprintf("Add %q to wear", asked), Certain: true,
				Edits: []finding.Edit{addTo(p.Job.Procedure.Wear, p.Job.Procedure.Header, "wear", asked)}}}
			p.Found(found)
		}
		for _, step := range p.Job.Steps {
			for _, item := range step.Wear.Items {
				tell(item.Text, finding.Finding{Place: item.At, Summary: fmt.Sprintf("step %d asks for %s on the list", step.Number, missingWear(item.Text))})
			}
		}
		for _, m := range p.messages() {
			for _, item := range m.Wear.Items {
				place := p.Job.Procedure.Cautions.At
				if m.step != nil {
					place = at(m.step)
				}
				tell(item.Text, finding.Finding{Place: place, Summary: fmt.Sprintf("the message %q asks for %s on the list", m.Hazard.Text, missingWear(item.Text))})
			}
		}
		messages := p.messages()
		for _, implied := range p.Hazards {
			if _, m := cover(messages, implied); m.Caution != nil && m.Wear.Given {
				continue // the message says what to wear
			}
			for _, asked := range implied.Hazard.Wear {
				tell(asked, finding.Finding{Place: implied.Place, Summary: fmt.Sprintf("step %d brings %s, which asks for %s: %s", implied.Step.Number, implied.Hazard.Title, spokenWear(asked), implied.Why)})
			}
		}
	},
})

// missingWear says of equipment that it is not there: "a face shield, which is not".
func missingWear(key string) string {
	if name := spokenWear(key); plural(name) {
		return name + ", which are not"
	}
	return spokenWear(key) + ", which is not"
}

func spokenWear(key string) string {
	wear, ok := trade.FindWear(key)
	switch {
	case !ok:
		return key
	case slices.Contains([]string{"face-shield", "apron", "mask", "harness"}, key):
		return "a " + wear.Name
	}
	return wear.Name
}
