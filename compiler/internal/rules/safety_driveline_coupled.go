package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/hazard"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

// Words of a shaft that drives an implement, and those by which it is taken out of drive.
var (
	driveline = pattern.MustCompile(`(?i)\bPTO\b|\bpower take-?[ -]?off\b|\bdrivelines?\b|\bcardan\b|\bdrive ?shafts?\b`)
	uncoupled = pattern.MustCompile(`(?i)\b(?:disengag|disconnect|uncoupl|decoupl|unhitch|detach|remov|withdraw)\w*\b.*(?:PTO|take-?[ -]?off|driveline|cardan|drive ?shaft)|\b(?:take|pull|switch|turn|put|slide)\b.*(?:PTO|take-?[ -]?off|driveline|cardan|drive ?shaft)\b.*\b(?:off|out)\b|(?:PTO|take-?[ -]?off|driveline|cardan|drive ?shaft)\b.*\b(?:off|out|disengaged|disconnected|uncoupled|neutral)\b`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/driveline-coupled", Severity: finding.Warning, Title: "Work is on an implement, and only the engine is cut off",
		Why:     "With the PTO engaged the implement turns as soon as somebody starts the tractor for another reason.",
		Source:  "29 CFR 1928.57(a)(6), from memory: stop the engine, disconnect the power source and wait until all stands still; that the PTO is disengaged first is common practice",
		Setting: gearbox + "tools = []\ncautions = [\"start\", \"pinch\", \"rotation\"]\n[energy.engine]\nkind = \"engine\"\nisolate = \"Stop the engine, and take the key.\"\nprove = \"Turn the switch. Nothing turns.\"\n",
		Bad:     "[[prepare]]\nsay = \"Park the tractor with the PTO mower on level ground.\"\n[[prepare]]\nisolate = \"engine\"\n[[prepare]]\nprove = \"engine\"\n[[step]]\nclean = \"the drive belt\"\n",
		Good:    "[[prepare]]\nsay = \"Disengage the PTO.\"\n[[prepare]]\nisolate = \"engine\"\n[[prepare]]\nprove = \"engine\"\n[[step]]\nclean = \"the drive belt\"\n",
	},
	Job: func(p *Pass) {
		cut, energies := (*model.Step)(nil), p.Job.Energies()
		for _, energy := range energies {
			switch {
			case energy.Kind.Text == "shaft":
				return // told where it is not isolated
			case energy.Kind.Text == "engine" && cut == nil:
				cut = p.isolated(energy.Name)
			}
		}
		texts := p.allWords()
		if cut == nil || !slices.ContainsFunc(texts, driveline.MatchString) || slices.ContainsFunc(texts, uncoupled.MatchString) {
			return
		}
		hands := hazard.HandsIn(p.Hazards)
		for _, step := range p.Job.Steps[cut.Number:] {
			if place, in := hands(step); in {
				p.Found(finding.Finding{Place: place, Summary: fmt.Sprintf("step %d puts hands on what the driveline turns, and only the engine is cut off", step.Number),
					Help:    "Describe the driveline as [energy.driveline] with kind = \"shaft\", and isolate and prove it; or write a step that disengages the PTO or takes the shaft off.",
					Related: []finding.Related{{Place: at(cut), Text: "the engine is cut off here"}}})
				return
			}
		}
	},
})

// allWords are the words of a job: what it is called, how it starts, what its steps say and name.
// The list is not to be changed.
func (p *Pass) allWords() []string {
	if p.words != nil {
		return p.words
	}
	out := make([]string, 0, 8+3*len(p.Job.Steps))
	out = append(out, p.Job.MachineTitle(), p.Job.Procedure.Title.Text, p.Job.Procedure.Summary.Text)
	for _, start := range p.Job.Procedure.Start.Items {
		out = append(out, start.Text)
	}
	for _, energy := range p.Job.Energies() {
		out = append(out, energy.Isolate.Text)
	}
	for _, step := range p.Job.Steps {
		out = append(out, p.tells(step))
		for _, object := range step.Objects {
			out = append(out, step.Verb.Key+" "+object.Words())
		}
	}
	p.words = slices.Clip(out)
	return p.words
}
