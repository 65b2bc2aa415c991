package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

// twice is where it is shown that two readings held against each other find slips.
const twice = "DOE-STD-1036-93, independent verification; Barchard et al., Behavior Research Methods 52 (2020), doi 10.3758/s13428-019-01207-3: entering twice finds more slips than reading over"

// readTwice is a part and who read it a second time.
const readTwice = quiet + `[[step]]
inspect = "drain-plug"
[second-reading]
by = "T. Okafor"
date = 2026-02-20
from = "Operator's manual, page 41"
procedure = { every = "500 h" }
`

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "record/read-otherwise", Severity: finding.Error, Title: "A second reading has another figure",
		Why:     "Two people have read two figures, so one of the two is wrong, and nobody at the machine can tell which.",
		Source:  twice,
		Setting: readTwice,
		Bad:     "[second-reading.part.drain-plug]\nthread = \"M22x1.5\"\n[part.drain-plug]\nthread = \"M20x1.5\"\n",
		Good:    "[second-reading.part.drain-plug]\nthread = \"M22x1.5\"\n[part.drain-plug]\nthread = \"M22 x 1.5\"\n",
	},
	Reading: func(p *Pass, d model.Difference) {
		found := finding.Finding{Place: d.Here, Related: []finding.Related{{Place: d.There, Text: "the second reading"}}}
		there := inLine(d.There.Text())
		switch {
		case d.Parting == model.ReadOtherwise:
			found.Summary = fmt.Sprintf("%s is %s here, and %s in the second reading", whose(d), inLine(d.Here.Text()), there)
			found.Help = lookUp(d) + ", and put the wrong one right."
		case d.Parting == model.NotHere && len(d.Keys) > 0:
			found.Summary = fmt.Sprintf("the second reading gives %s as %s, and nothing is written here", whose(d), there)
			found.Help = lookUp(d) + ", and write it here; or take it out of the second reading."
		case d.Parting == model.NotHere && strings.TrimSpace(d.Of) == "":
			found.Summary = "the second reading has figures of something without a name, and nothing here is held against them"
			found.Help = "Write its name in the second reading, as it stands here."
		case d.Parting == model.NotHere:
			found.Summary = fmt.Sprintf("the second reading has “%s”, and nothing here is named so", d.Of)
			found.Help = lookUp(d) + ": write what is missing, or give both the same name."
		default:
			return
		}
		p.Found(found)
	},
})

// lookUp says where to look.
func lookUp(d model.Difference) string {
	if d.From == "" {
		return "Look it up again"
	}
	return fmt.Sprintf("Look it up again (%s)", d.From)
}

// whose names figures: "the torque of the drain plug", "the amount at “fill gearbox”".
func whose(d model.Difference) string {
	switch {
	case d.Of == "":
		return fmt.Sprintf("“%s”", names(d.Keys))
	case d.Step:
		return fmt.Sprintf("the %s at “%s”", names(d.Keys), d.Of)
	}
	return strings.ReplaceAll(fmt.Sprintf("the %s of the %s", names(d.Keys), d.Of), "the the ", "the ")
}

// inLine is what is written, on one line.
func inLine(text string) string { return strings.Join(strings.Fields(text), " ") }
