package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/trade"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/yellow-metal", Severity: finding.Warning, Title: "An oil for hypoid gears goes where bronze or brass runs",
		Why:     "The additives of a GL-5 oil can eat copper alloys: worm wheels and synchroniser rings wear out early. That it also meets GL-4 does not make it milder.",
		Source:  "machinerylubrication.com/Read/30366: GL-5 in a synchronised box leaves two to four times the copper in the used oil; many makers allow one all the same, so it is never an error",
		Setting: setting + "no-isolation = \"On the bench\"\nspares = []\nwear = []\ntools = []\nsupplies = [\"oil\"]\n[cavity.gearbox]\ntitle = \"worm gearbox\"\nfluid = \"oil\"\ncapacity = \"1 L\"\n",
		Bad:     "[fluid.oil]\nkind = \"gear-oil\"\ngrade = \"SAE 80W-90\"\nservice = \"API GL-5\"\n[[step]]\nfill = \"gearbox\"\n" + seen,
		Good:    "[fluid.oil]\nkind = \"gear-oil\"\ngrade = \"SAE 80W-90\"\nservice = \"API GL-4\"\n[[step]]\nfill = \"gearbox\"\n" + seen,
	},
	Job: func(p *Pass) {
		told := map[*model.Cavity]bool{}
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				cavity := object.Cavity
				if step.Verb.Key != "fill" || cavity == nil || told[cavity] {
					continue
				}
				fluid := p.fluidIn(step, cavity)
				if fluid == nil || !slices.Contains(trade.GearServices(fluid.Title.Text+" "+fluid.Grade.Text+" "+fluid.Service.Text), "5") {
					continue
				}
				metal, place, ok := p.yellow(cavity)
				if !ok || mild(fluid, cavity) {
					continue
				}
				told[cavity] = true
				p.Found(finding.Finding{Place: object.Text.At, Summary: fmt.Sprintf("step %d fills %s into the %s, where %s runs", step.Number, fluid.Words(), cavity.Words(), metal),
					Help:    "Look what the maker's manual asks for. Where it names this oil, say so in the notes of the cavity: \"GL-5 by the maker's list\".",
					Related: []finding.Related{{Place: place.At, Text: "what tells of it"}}})
			}
		}
	},
})

// fluidIn is the fluid a step puts into a cavity: its own, or the cavity's.
func (p *Pass) fluidIn(step *model.Step, cavity *model.Cavity) *model.Fluid {
	if step.Fluid.Set() {
		return p.Job.Fluid(step.Fluid.Name())
	}
	return p.Job.Fluid(cavity.Fluid.Name())
}

// mild reports whether the author says that the oil suits: it is safe for yellow metals,
// or the maker names it.
func mild(fluid *model.Fluid, cavity *model.Cavity) bool {
	own := fluid.Title.Text + " " + fluid.Service.Text
	if says(own, "yellow", "bronze", "brass", "copper") && !says(own, "not for") {
		return true
	}
	return slices.ContainsFunc(cavity.Notes.Items, func(note model.Text) bool { return says(note.Text, "gl-5", "gl5", "gl 5", "maker", "manual") })
}

// yellow tells what copper alloy or which gear that is made of one runs in a cavity.
func (p *Pass) yellow(cavity *model.Cavity) (metal string, at model.Text, ok bool) {
	texts := append([]model.Text{cavity.Title}, cavity.Notes.Items...)
	for _, text := range texts {
		if metal, ok := trade.YellowMetal(text.Text); ok {
			return metal, text, true
		}
		if gear, ok := trade.YellowGear(text.Text); ok && !says(text.Text, "steel worm wheel", "worm drive clamp") {
			return "a " + gear + " gear", text, true
		}
	}
	if gear, ok := trade.YellowGear(model.Spoken(cavity.Name)); ok {
		return "a " + gear + " gear", model.Text{At: cavity.At}, true
	}
	for _, part := range p.parts() { // a worm wheel of bronze that the job has in hand
		if metal, ok := trade.YellowMetal(part.Material.Text); ok {
			if _, gear := trade.YellowGear(model.Spoken(part.Name) + " " + part.Title.Text); gear {
				return metal, part.Material, true
			}
		}
	}
	return "", model.Text{}, false
}
