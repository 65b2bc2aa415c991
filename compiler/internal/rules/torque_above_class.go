package rules

import (
	"cmp"
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/trade"
)

// anyThread is the nut factor of the roughest dry thread, for a part that does not say
// how its thread is: bare steel, 0.30, Shigley as quoted.
const anyThread = 0.30

// roughest is the greatest nut factor published for any state of a thread, and beyondDoubt how far
// above what the strongest class takes at that no screw of any steel is tightened.
const (
	roughest    = 0.35
	beyondDoubt = 1.5
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/above-class", Severity: finding.Error, Title: "A torque is more than the screw can bear",
		Why:     "A screw pulled past its proof load stays stretched, and breaks at the next start.",
		Source:  "proof loads of ISO 898-1 and SAE J429; torque = nut factor × diameter × load, with the roughest nut factor published for the state of the thread: 0.30 dry (Shigley), 0.26 oiled, 0.35 zinc-plated (zipfastener.com). Above what an ordinary thread of that state takes, 0.25 dry, 0.20 oiled (mechconcepts.tech), or where class or state is not written, it is a warning, and an error again above half as much more than the strongest class takes at 0.35. A metric screw of no written class: the yield of class 12.9, torsion and all, by VDI 2230 at the frictions it gives for a thread of that state (from memory)",
		Setting: walled,
		Bad:     "tools = [\"socket-16\", \"torque-wrench-300\"]\n[part.plug]\nthread = \"M8\"\nacross = \"16 mm\"\nclass = \"8.8\"\ntorque = \"85 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\n",
		Good:    "tools = [\"socket-16\", \"torque-wrench-300\"]\n[part.plug]\nthread = \"M16\"\nacross = \"16 mm\"\nclass = \"8.8\"\ntorque = \"85 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\n",
	},
	Job:  func(p *Pass) { p.torques(p.aboveClass) },
	Part: func(p *Pass, part *model.Part) { p.aboveClass(part, part.Torque, part.Condition) },
})

// aboveClass tells of a torque that is more than the screw of a part bears in a state of its thread.
func (p *Pass) aboveClass(part *model.Part, torque model.Amount, state model.Text) {
	low, high, ok := between(torque)
	thread, err := p.threadOf(part)
	if !ok || err != nil {
		return
	}
	class, err := trade.ParseClass(cmp.Or(part.Class.Text, strongest(thread)))
	if err != nil {
		return
	}
	rough, known := trade.RoughnessOf(state.Text)
	if !known {
		rough = trade.Roughness{Usual: anyThread, Most: anyThread}
	}
	usual, err := trade.ProofTorqueNm(thread, class, rough.Usual)
	most, _ := trade.ProofTorqueNm(thread, class, rough.Most)
	reaches := "its proof load"
	if !part.Class.Set() {
		rough.Published = false
		if yields, ok := trade.Yields(thread, class, state.Text); ok && yields < usual {
			usual, most, reaches = yields, yields, "its yield"
		}
	}
	if err != nil || high <= usual {
		return
	}
	found := finding.Finding{Place: torque.At, Help: "Look the torque, the thread, the class and the state of the thread up again in the machine's manual."}
	summary := fmt.Sprintf("%s is more than the %s bears: %s of %s reaches %s", torque.Text.Text, part.Words(), part.Thread.Text, classWords(part), reaches)
	atUsual, unit := inUnitOf(usual, torque)
	atMost, _ := inUnitOf(most, torque)
	beyond, _ := trade.ProofTorqueNm(thread, class, roughest)
	switch {
	case !part.Class.Set() && low > beyondDoubt*beyond:
		atBeyond, _ := inUnitOf(beyond, torque)
		found.Summary = fmt.Sprintf("%s by %.3g %s, however rough its thread is", summary, atBeyond, unit)
		p.Found(found)
	case low > most && rough.Published:
		found.Summary = fmt.Sprintf("%s by %.3g %s at the latest", summary, atMost, unit)
		p.Found(found)
	case rough.Published || known && !part.Class.Set():
		found.Summary = fmt.Sprintf("%s at %.3g %s when its thread is %s", summary, atUsual, unit, stateWords[state.Text])
		p.Milder(found)
	default:
		found.Summary = fmt.Sprintf("%s by %.3g %s at the latest", summary, atMost, unit)
		p.Milder(found)
	}
}

// stateWords say a state of a thread in a sentence.
var stateWords = map[string]string{"dry": "dry", "oiled": "oiled", "greased": "greased", "anti-seize": "coated with anti-seize", "plated": "plated", "thread-lock": "wet with adhesive", "sealant": "wet with sealant"}

func strongest(thread trade.Thread) string {
	if thread.Metric() {
		return "12.9"
	}
	return "grade 8"
}

func classWords(part *model.Part) string {
	if part.Class.Set() {
		return "class " + part.Class.Text
	}
	return "the strongest class"
}
