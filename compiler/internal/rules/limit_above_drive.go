package rules

import (
	"fmt"
	"strconv"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/internal/quantity"
)

// Words of a speed in the title of a shaft, and of what turns at another speed than the
// shaft that drives the machine.
var (
	titledSpeed = pattern.MustCompile(`(?i)\b(\d{3,4}) ?(?:rpm|r/min|1/min)`)
	geared      = []string{"engine", "rotor", "drum", "fan", "impeller", "spindle", "blade", "pump", "blower", "flywheel", "beater"}
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "limit/above-drive", Severity: finding.Warning, Title: "A machine is to run faster than the shaft that drives it",
		Why:     "A machine built for 540 rpm flies apart at 1000.",
		Source:  "the machine's own description; that a machine runs as fast as its shaft: common practice, no source",
		Setting: setting + "no-isolation = \"It runs for the test\"\ntools = []\nsupplies = []\nspares = []\nwear = [\"clothing\"]\ncautions = [\"shaft\"]\n[energy.pto]\ntitle = \"tractor PTO, 540 rpm\"\nkind = \"shaft\"\nisolate = \"Pull the shaft off.\"\nprove = \"The shaft lies on the ground.\"\n",
		Bad:     "[[step]]\nrun = \"the auger\"\nset = \"1000 rpm\"\nleast = \"5 min\"\n",
		Good:    "[[step]]\nrun = \"the auger\"\nset = \"540 rpm\"\nleast = \"5 min\"\n",
	},
	Words: true,
	Job: func(p *Pass) {
		for _, energy := range p.Job.Energies() {
			titled := titledSpeed.FindStringSubmatch(energy.Words())
			if titled == nil || energy.Kind.Text != "shaft" {
				continue
			}
			shaft, _ := strconv.ParseFloat(titled[1], 64)
			for _, step := range p.Job.Steps {
				low, _, ok := between(step.SetTo)
				if !ok || step.SetTo.Dimension != quantity.RotationalSpeed || low <= shaft*1.05 || len(step.Objects) == 0 || says(step.Objects[0].Words(), geared...) {
					continue
				}
				if step.Verb.Key == "run" || step.Verb.Key == "start" {
					p.Found(finding.Finding{Place: step.SetTo.At, Summary: fmt.Sprintf("step %d runs the %s at %s, and its drive is the %s", step.Number, step.Objects[0].Words(), step.SetTo.Text.Text, energy.Words()),
						Help:    "Look the speed up in the machine's manual, and put the one right that is wrong.",
						Related: []finding.Related{{Place: energy.Header, Text: "its drive"}}})
				}
			}
		}
	},
})
