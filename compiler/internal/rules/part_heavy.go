package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

// tooHeavyKg is what one person lifts under no conditions: the load constant of the
// NIOSH lifting equation is 23 kg, and 25 kg leaves room for a figure that was rounded.
const tooHeavyKg = 25

// carried are words for a part that is never lifted by hand; common practice, no source.
var carried = []string{"hoist", "crane", "jack", "forklift", "fork lift", "loader", "trolley", "lift", "slide", "roll", "hinge", "swing", "gas spring", "counterweight", "helper", "second person", "two people", "in halves", "in pieces", "one at a time", "sling", "chain block"}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "part/too-heavy", Severity: finding.Warning, Title: "A heavy part is lifted by one person with nothing to lift it by",
		Why:     "A back gives way before the bolts are back in, or the part comes down on a foot.",
		Source:  "NIOSH lifting equation, load constant 23 kg, from memory",
		Setting: setting + "no-isolation = \"On the bench\"\nsupplies = []\nspares = []\nwear = [\"helmet\", \"safety-shoes\"]\ncautions = [\"load\"]\n",
		Bad:     "tools = []\n[part.gearbox]\nmass = \"38 kg\"\n[[step]]\nreplace = \"gearbox\"\n",
		Good:    "tools = [\"hoist\"]\n[tool.hoist]\nkind = \"hoist\"\nholds = \"500 kg\"\n[part.gearbox]\nmass = \"38 kg\"\n[[step]]\nreplace = \"gearbox\"\ntools = [\"hoist\"]\n",
	},
	Job: func(p *Pass) {
		told := map[*model.Part]bool{}
		if p.Job.Procedure.People.Or(1) > 1 || !p.warnsOfLoad() {
			return
		}
		listed := p.liftsListed()
		for _, step := range p.Job.Steps {
			if !slices.Contains([]string{"remove", "refit", "replace"}, step.Verb.Key) || step.People.Or(1) > 1 {
				continue
			}
			for _, object := range step.Objects {
				part := object.Part
				if part == nil || told[part] || !part.Mass.OK || p.says(step, carried...) || says(partTells(part), carried...) {
					continue
				}
				geared := p.gearedAt(part)
				if listed && (geared == nil || p.lifted(step)) {
					continue
				}
				if mass, _, ok := between(part.Mass); !ok || mass < tooHeavyKg {
					continue
				}
				told[part] = true
				found := finding.Finding{Place: object.Text.At, Summary: fmt.Sprintf("step %d leaves one person to lift the %s, which weighs %s", step.Number, part.Words(), part.Mass.Text.Text),
					Help:    "Name lifting gear with tools = [\"…\"], or write people = 2 at the step.",
					Related: []finding.Related{{Place: part.Mass.At, Text: "the mass"}}}
				if listed {
					found.Summary = fmt.Sprintf("step %d lifts the %s, which weighs %s, without the lifting gear of step %d", step.Number, part.Words(), part.Mass.Text.Text, geared.Number)
					found.Related = append(found.Related, finding.Related{Place: at(geared), Text: "with lifting gear here"})
				}
				p.Found(found)
			}
		}
	},
})

// liftsListed reports whether the procedure brings something that lifts.
func (p *Pass) liftsListed() bool {
	return slices.ContainsFunc(p.Job.Listed(), func(tool *model.Tool) bool {
		return slices.Contains(lifting, tool.Kind.Text) || says(tool.Name+" "+tool.Title.Text, "trolley", "lift", "crane", "hoist")
	})
}

// warnsOfLoad reports whether the job has a message against a heavy part; without one
// safety/missing-caution says it first.
func (p *Pass) warnsOfLoad() bool {
	return slices.ContainsFunc(p.messages(), func(m message) bool { return m.against("load") })
}

// lifted reports whether a step takes lifting gear by itself.
func (p *Pass) lifted(step *model.Step) bool {
	return slices.ContainsFunc(step.Tools.Names(), func(name string) bool {
		tool := p.Job.Tool(name)
		return tool != nil && slices.Contains(lifting, tool.Kind.Text)
	})
}

// gearedAt is a step that lifts a part with lifting gear; nil where none does.
func (p *Pass) gearedAt(part *model.Part) *model.Step {
	for _, step := range p.Job.Steps {
		if p.lifted(step) && slices.ContainsFunc(step.Objects, func(o model.Object) bool { return o.Part == part }) {
			return step
		}
	}
	return nil
}
