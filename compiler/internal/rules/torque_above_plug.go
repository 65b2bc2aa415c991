package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/internal/trade"
)

// overPlug is how many times the greatest published torque of a plug is likely a slip: common
// practice, no source.
const overPlug = 2

var (
	plugWord = pattern.MustCompile(`\bplugs?\b`)
	// otherPlugs are no screw plugs, or sit in what is not steel or iron.
	otherPlugs = []string{"spark", "glow", "heater", "electric", "socket", "expansion", "wheel", "hub"}
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/above-plug", Severity: finding.Warning, Title: "A torque is far above what a plug is tightened to",
		Why:     "A plug has the thread of a large bolt and sits in a thin wall: the thread strips or the housing cracks long before the plug breaks.",
		Source:  "the greatest torque of the works standards MTN 5183-1 and MTN 5183-6 for plugs into steel and grey cast iron, as printed in manuals of MTU; that twice as much is a slip: common practice, no source",
		Setting: walled,
		Bad:     "tools = [\"torque-wrench-300\", \"socket-16\"]\n[part.drain-plug]\nthread = \"M18x1.5\"\nacross = \"16 mm\"\ntorque = \"250 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"drain-plug\"\n",
		Good:    "tools = [\"torque-wrench\", \"socket-16\"]\n[part.drain-plug]\nthread = \"M18x1.5\"\nacross = \"16 mm\"\ntorque = \"50 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"drain-plug\"\n",
	},
	Words: true,
	Job:   func(p *Pass) { p.torques(p.abovePlug) },
	Part:  func(p *Pass, part *model.Part) { p.abovePlug(part, part.Torque, part.Condition) },
})

// abovePlug tells of a torque that is far above what a screw plug of its thread takes. A screw with a
// class is taken for a bolt, whatever it is called.
func (p *Pass) abovePlug(part *model.Part, torque model.Amount, _ model.Text) {
	low, _, ok := between(torque)
	thread, err := p.threadOf(part)
	if !ok || err != nil || part.Class.Set() || !screwPlug(part) {
		return
	}
	most, listed := trade.PlugTorqueNm(thread)
	if !listed || low <= overPlug*most {
		return
	}
	usual, unit := inUnitOf(most, torque)
	p.Found(finding.Finding{Place: torque.At,
		Summary: fmt.Sprintf("%s is far above what the %s takes: a plug of %s is tightened to %.3g %s at the most", torque.Text.Text, part.Words(), part.Thread.Text, usual, unit),
		Help:    "Look the figure and its unit up again in the machine's manual: a figure may stand twice, or N·m for lbf·in."})
}

// screwPlug reports whether a part is a plug that closes a hole, by its head or by how it is called.
func screwPlug(part *model.Part) bool {
	called := part.Name + " " + part.Title.Text
	switch {
	case part.Head.Text == "socket-plug":
		return true
	case part.Cover || part.Head.Set() && part.Head.Text != "hex" && part.Head.Text != "socket":
		return false
	}
	return says(called, "plug") && plugWord.MatchString(called) && !says(called, otherPlugs...)
}
