package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/guard-before-isolation", Severity: finding.Error, Title: "A guard comes off before its energy is cut off",
		Why:     "Behind the guard the machine can start with hands in it.",
		Source:  "29 CFR 1910.147 and 1910.212(a)",
		Setting: gearbox + "tools = []\ncautions = [\"start\", \"guard\", \"pinch\"]\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\n[cover.chain-guard]\nguards = \"mains\"\n",
		Bad:     "[[step]]\nremove = \"chain-guard\"\n[[step]]\nisolate = \"mains\"\n[[step]]\nprove = \"mains\"\n",
		Good:    "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n[[step]]\nremove = \"chain-guard\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if key := step.Verb.Key; key != "remove" && key != "open" && key != "loosen" {
				continue
			}
			for _, object := range step.Objects {
				for _, cover := range p.Job.Freed(object.Part) {
					for _, name := range cover.Guards.Names() {
						if energy := p.Job.Energy(name); energy != nil {
							p.guarded(step, object, energy)
						}
					}
				}
			}
		}
	},
})

func (p *Pass) guarded(step *model.Step, object model.Object, energy *model.Energy) {
	cut := p.isolated(energy.Name)
	if cut != nil && cut.Number < step.Number {
		return
	}
	found := finding.Finding{Place: object.Text.At, Firm: true,
		Summary: fmt.Sprintf("the %s comes off at step %d before the %s is isolated", object.Words(), step.Number, energy.Words()),
		Help:    fmt.Sprintf("Write a step isolate = %q and a step prove = %q before this one.", energy.Name, energy.Name),
		Related: []finding.Related{{Place: energy.At, Text: "the energy it guards against"}}}
	if cut != nil {
		found.Related = append(found.Related, finding.Related{Place: at(cut), Text: "it is isolated only here"})
	}
	p.Found(found)
}

// isolated is the first step that isolates an energy, or nil.
func (p *Pass) isolated(energy string) *model.Step { return p.first("isolate", energy) }

// first is the first step with a verb on an energy, or nil.
func (p *Pass) first(verb, energy string) *model.Step {
	for _, step := range p.Job.Steps {
		if step.Verb.Key != verb {
			continue
		}
		for _, object := range step.Objects {
			if object.Energy != nil && object.Energy.Name == energy {
				return step
			}
		}
	}
	return nil
}
