package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

// cooled are words by which a step lets a machine cool, or looks that it has.
var cooled = []string{"cooled", "cool ", "cools", "cold", "hand-warm", "hand warm"}

// coolsIn is how many seconds of waiting let a cooling system come below its boiling
// point; common practice, no source.
const coolsIn = 20 * 60

// cools reports whether a step lets heat and pressure off, apart from a wait.
func (p *Pass) cools(step *model.Step) bool {
	if step.Verb.Key == "relieve" {
		return slices.ContainsFunc(step.Objects, func(o model.Object) bool {
			return o.Energy == nil || says(o.Energy.Kind.Text, "thermal", "pneumatic", "hydraulic")
		})
	}
	text := p.tells(step) + " " + step.Expect.Text + " "
	for _, object := range step.Objects {
		text += " " + object.Words()
		if object.Energy != nil && step.Verb.Key == "isolate" {
			text += " " + object.Energy.Isolate.Text
		}
	}
	return says(text, cooled...)
}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/opened-hot", Severity: finding.Warning, Title: "What is hot and under pressure is opened right after a run",
		Why:     "What is inside boils up when the cap comes off, and scalds face and arms.",
		Source:  "the machine's own description; that a run heats it: common practice, no source",
		Setting: worn + "[cavity.radiator]\nfill = \"radiator-cap\"\npressure = \"0.9 bar\"\nhazards = [\"hot\"]\n[part.radiator-cap]\nhead = \"wing\"\n[caution.scald]\nsignal = \"danger\"\nagainst = [\"hot\", \"burst\", \"exhaust-gas\", \"injection\"]\nhazard = \"Hot coolant\"\nconsequence = \"It scalds.\"\navoid = \"Turn the cap to its first stop.\"\n",
		Bad:     "[[step]]\nrun = \"the mill\"\nleast = \"10 min\"\n[[step]]\nopen = \"radiator-cap\"\ncautions = [\"scald\"]\n[[step]]\nclose = \"radiator-cap\"\n",
		Good:    "[[step]]\nrun = \"the mill\"\nleast = \"10 min\"\n[[step]]\nwait = \"30 min\"\n[[step]]\nopen = \"radiator-cap\"\ncautions = [\"scald\"]\n[[step]]\nclose = \"radiator-cap\"\n",
	},
	Job: func(p *Pass) {
		var run *model.Step
		waited := 0.0
		for _, step := range p.Job.Steps {
			switch {
			case step.Verb.Key == "run" && heatsUp(step):
				run, waited = step, 0
				continue
			case run != nil && waited < coolsIn && p.cools(step):
				run = nil
			}
			if low, _, ok := between(step.Wait); ok {
				waited += low
			}
			if run == nil || waited >= coolsIn || !slices.Contains([]string{"open", "remove", "loosen"}, step.Verb.Key) {
				continue
			}
			for _, object := range step.Objects {
				cavity := p.pressed(object)
				if cavity == nil {
					continue
				}
				p.Found(finding.Finding{Place: object.Text.At,
					Summary: fmt.Sprintf("the %s is opened hot and under pressure: step %d lets the machine run, and it has no time to cool", object.Words(), run.Number),
					Help:    "Write a wait between, with until = \"…\" and how cool it is to be, or let the pressure out first.",
					Related: []finding.Related{{Place: at(run), Text: "it runs here"}}})
				run = nil
				break
			}
		}
	},
})

// heatsIn is how many seconds of running heat what is inside; common practice, no source.
const heatsIn = 3 * 60

// heatsUp reports whether a run is long enough to heat the machine.
func heatsUp(run *model.Step) bool {
	low, _, ok := between(run.Least)
	return !ok || low >= heatsIn
}

// pressed gives the cavity that is hot and under pressure and that an object closes above.
func (p *Pass) pressed(object model.Object) *model.Cavity {
	for _, cavity := range p.Job.Cavities() {
		if !cavity.Pressure.OK || object.Part == nil {
			continue
		}
		name := object.Part.Name
		closes := cavity.Fill.Name() == name || cavity.Vent.Name() == name || cavity.Level.Name() == name || cavity.Drain.Name() == name
		if closes && (cavity.Hazards.Has("hot") || object.Part.Hazards.Has("hot")) {
			return cavity
		}
	}
	return nil
}
