package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/measures-with-nothing", Severity: finding.Note, Title: "A figure is to be read and no instrument is named",
		Why:     "It is not on the list, and somebody reads it off a thumb.",
		Source:  "common practice, no source",
		Setting: bench,
		Bad:     "tools = []\n[limit.gap]\nlimit = \"3 to 5 mm\"\noutside = \"Set it again.\"\n[[step]]\nmeasure = \"gap\"\nreading = \"Gap\"\n",
		Good:    "tools = [\"rule\"]\n[tool.rule]\nkind = \"measure\"\n[limit.gap]\nlimit = \"3 to 5 mm\"\noutside = \"Set it again.\"\n[[step]]\nmeasure = \"gap\"\nreading = \"Gap\"\ntools = [\"rule\"]\n",
	},
	Words: true,
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if !slices.Contains([]string{"measure", "tension", "adjust", "align"}, step.Verb.Key) {
				continue
			}
			figure, named := step.Limit, len(step.Tools.Items) > 0 || builtIn.MatchString(step.Say.Text)
			if !figure.OK {
				figure = step.SetTo
			}
			for _, object := range step.Objects {
				switch {
				case object.Limit != nil:
					named = named || len(object.Limit.Tool.Items) > 0 || builtIn.MatchString(object.Limit.How.Text)
					if !figure.OK {
						figure = object.Limit.Limit
					}
				case object.Part != nil && step.Verb.Key != "tension": // its wrench turns it by so much
					named = true
				}
			}
			if named || !figure.OK || !slices.Contains(instrument, figure.Dimension) {
				continue
			}
			p.Found(finding.Finding{Place: at(step), Summary: fmt.Sprintf("step %d wants %s and names nothing to read it with", step.Number, figure.Text.Text),
				Help: "Add tools = [\"…\"] at the step, or tool = [\"…\"] at the limit."})
		}
	},
})

// builtIn are words by which a figure is read off the machine itself.
var builtIn = pattern.MustCompile(`(?i)gauge|dial|glass|scale|meter|mark|sight|display|pointer|read |shows`)

// instrument are the quantities nobody reads without one.
var instrument = []quantity.Dimension{quantity.Length, quantity.Pressure, quantity.Force, quantity.Torque, quantity.Voltage, quantity.Current, quantity.Resistance, quantity.Mass}
