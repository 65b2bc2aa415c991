package rules

import (
	"cmp"
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/trade"
)

// mostNutFactor is the roughest thread there is: dry, plain steel on steel is 0.20
// to 0.30, common practice, no source. What is above proof even then stretches any screw.
const mostNutFactor = 0.30

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/above-class", Severity: finding.Warning, Title: "A torque is more than the screw can bear",
		Why:     "A screw pulled past its proof load stays stretched, and breaks at the next start.",
		Source:  "proof loads of ISO 898-1 and SAE J429; torque = nut factor × diameter × load, with 0.30 for the roughest dry thread",
		Setting: walled,
		Bad:     "tools = [\"socket-16\", \"torque-wrench-300\"]\n[part.plug]\nthread = \"M8\"\nacross = \"16 mm\"\nclass = \"8.8\"\ntorque = \"85 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\n",
		Good:    "tools = [\"socket-16\", \"torque-wrench-300\"]\n[part.plug]\nthread = \"M16\"\nacross = \"16 mm\"\nclass = \"8.8\"\ntorque = \"85 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\n",
	},
	Job: func(p *Pass) {
		told := map[*model.Part]bool{}
		for _, grip := range p.Needs.Grips {
			part := grip.Part
			if !grip.Torque || told[part] {
				continue
			}
			most, ok := mostTorque(part)
			torque := needs.TorqueOf(grip.Step, part)
			high, bounded := torque.Max()
			if !ok || !bounded {
				continue
			}
			if nm, _ := high.Float64(); nm > most {
				told[part] = true
				p.Found(finding.Finding{Place: torque.At, Summary: fmt.Sprintf("%s is more than the %s bears: %s of %s reaches its proof load by %.0f N·m at the latest", torque.Text.Text, part.Words(), part.Thread.Text, classWords(part), most),
					Help: "Look the torque, the thread and the class up again in the machine's manual."})
			}
		}
	},
})

func classWords(part *model.Part) string {
	if part.Class.Set() {
		return "class " + part.Class.Text
	}
	return "the strongest class"
}

// mostTorque is the torque in N·m by which a part's screw reaches its proof load.
func mostTorque(part *model.Part) (float64, bool) {
	if !part.Thread.Set() {
		return 0, false
	}
	thread, err := trade.ParseThread(part.Thread.Text)
	if err != nil {
		return 0, false
	}
	strongest := "12.9"
	if !thread.Metric() {
		strongest = "grade 8"
	}
	class, err := trade.ParseClass(cmp.Or(part.Class.Text, strongest))
	if err != nil {
		return 0, false
	}
	load, err := trade.ProofLoadN(thread, class)
	return mostNutFactor * thread.DiameterMM / 1000 * load, err == nil
}
