package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/trade"
)

// wellBelow is the share of the usual torque under which the figure asks for a second
// look; common practice, no source.
const wellBelow = 0.6

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/low", Severity: finding.Note, Title: "A torque is well below what the screw is made for",
		Why:     "Half the torque is a slip of the pen as often as it is a soft joint, and a bolt at half its preload works loose.",
		Source:  "VDI 2230 (Kellermann and Klein) at a friction of 0.10 and 90 % of the yield of ISO 898-1 or SAE J429; that less than 0.6 of it asks for a look: common practice, no source",
		Setting: walled,
		Bad:     "tools = [\"socket-16\", \"torque-wrench-300\"]\n[part.hook-bolt]\nthread = \"M16\"\nacross = \"16 mm\"\nclass = \"8.8\"\ntorque = \"100 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"hook-bolt\"\n",
		Good:    "tools = [\"socket-16\", \"torque-wrench-300\"]\n[part.hook-bolt]\nthread = \"M16\"\nacross = \"16 mm\"\nclass = \"8.8\"\ntorque = \"210 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"hook-bolt\"\n",
	},
	Job: func(p *Pass) {
		told := map[*model.Part]bool{}
		p.tightened(func(step *model.Step, part *model.Part, torque model.Amount) {
			if told[part] || len(torque.Problems) > 0 || !part.Class.Set() || p.angled(part) || p.softJoint(step, part) {
				return
			}
			usual, far := usualOf(part, torque)
			_, high, ok := between(torque)
			thread, err := p.threadOf(part)
			if !ok || far || usual <= 0 || high >= wellBelow*usual || err != nil {
				return
			}
			if row, listed := trade.FindBoltTorque(thread); listed && high >= row.Shear[0]*trade.NmPerInchPound {
				return // as little is recommended for a bolt in shear
			}
			told[part] = true
			p.Found(finding.Finding{Place: torque.At,
				Summary: fmt.Sprintf("%s is little for the %s: %s of %s is usually tightened to %s or more", torque.Text.Text, part.Words(), part.Thread.Text, classWords(part), nearly(usual, torque)),
				Help:    "Look the figure up again. Where the joint is soft, name its material = \"…\", or allow this with the reason."})
		})
	},
})

// angled reports whether a step of the job turns a part on by an angle, as a step of
// its own or in words.
func (p *Pass) angled(part *model.Part) bool {
	for _, step := range p.Job.Steps {
		for _, object := range step.Objects {
			if object.Part == part && (angleOf(step, part).Set() || strings.Contains(step.Say.Text, "°")) {
				return true
			}
		}
	}
	return false
}
