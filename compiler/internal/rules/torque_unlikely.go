package rules

import (
	"fmt"
	"math"
	"math/big"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/trade"
)

// farBelow is the share of the usual torque under which a figure is likely a slip. The
// slips there are make it 8 to 12 times too small – pound-inches for pound-feet, a figure
// left out, kilogram-metres – while covers on soft joints go down to a third: common
// practice, no source.
const farBelow = 0.25

// soft are words for joints, plugs and adjusters that are never tightened to what the
// screw would bear; common practice, no source.
var soft = []string{"plug", "adjust", "gland", "bleed", "banjo", "hose", "fitting", "jack", "lock nut", "lock-nut", "grub", "set screw", "gasket", "plastic", "nylon", "alumin", "brass", "bronze", "copper", "zinc", "magnesium", "glass", "wood", "rubber", "polymer", "sheet", "spring", "pivot", "clamp", "clip", "sensor", "glow", "terminal", "battery", "shear", "eye bolt", "stop screw"}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/unlikely", Severity: finding.Warning, Title: "A torque is far below what the screw is made for",
		Why:     "Pound-inches for pound-feet, or a figure left out, leave a bolt loose that everybody believes torqued.",
		Source:  "VDI 2230 (Kellermann and Klein) at a friction of 0.10 and 90 % of the yield of ISO 898-1 or SAE J429; for inch threads FAA AC 43.13-1B, table 7-1; that less than a quarter is a slip: common practice, no source",
		Setting: walled,
		Bad:     "tools = [\"socket-16\", \"torque-wrench\"]\n[part.hook-bolt]\nthread = \"M16\"\nacross = \"16 mm\"\nclass = \"8.8\"\ntorque = \"21 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"hook-bolt\"\n",
		Good:    "tools = [\"socket-16\", \"torque-wrench-300\"]\n[part.hook-bolt]\nthread = \"M16\"\nacross = \"16 mm\"\nclass = \"8.8\"\ntorque = \"210 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"hook-bolt\"\n",
	},
	Job: func(p *Pass) {
		told := map[*model.Part]bool{}
		p.tightened(func(step *model.Step, part *model.Part, torque model.Amount) {
			if told[part] || len(torque.Problems) > 0 || !part.Class.Set() || angleOf(step, part).Set() || p.softJoint(step, part) {
				return
			}
			usual, far := usualOf(part, torque)
			if !far {
				return
			}
			told[part] = true
			p.Found(finding.Finding{Place: torque.At,
				Summary: fmt.Sprintf("%s is far below what the %s takes: %s of %s is usually tightened to %s or more", torque.Text.Text, part.Words(), part.Thread.Text, classWords(part), nearly(usual, torque)),
				Help:    "Look the figure and its unit up again: lbf·in may stand for lbf·ft, or a figure may be missing. Where the joint is soft, name its material = \"…\"."})
		})
	},
})

// softJoint reports whether something says that the torque is not that of the screw.
func (p *Pass) softJoint(step *model.Step, part *model.Part) bool {
	if part.Seals.Given || slices.Contains([]string{"castle-nut", "set-screw", "square-plug", "socket-plug", "wing", "none"}, part.Head.Text) {
		return true
	}
	if part.Material.Set() && !says(part.Material.Text, "steel") {
		return true
	}
	if part.Cover && says(partTells(part), "inspection", "window") {
		return true
	}
	return says(partTells(part)+" "+p.tells(step), soft...)
}

// usualOf gives the usual torque of a part's screw in N·m, and whether a torque is far below it.
func usualOf(part *model.Part, torque model.Amount) (usual float64, far bool) {
	_, high, ok := between(torque)
	thread, err := trade.ParseThread(part.Thread.Text)
	if !ok || err != nil {
		return 0, false
	}
	class, err := trade.ParseClass(part.Class.Text)
	if err != nil {
		return 0, false
	}
	usual, ok = trade.Usual(thread, class)
	if row, listed := trade.FindBoltTorque(thread); listed && high >= row.Shear[0]*trade.NmPerInchPound {
		return usual, false // as little is recommended for a bolt in shear
	}
	return usual, ok && high > 0 && high < farBelow*usual
}

// nearly writes a torque in two figures, in the unit of another where that is pounds.
func nearly(nm float64, like model.Amount) string {
	value, unit := inUnitOf(nm, like)
	if value >= 100 {
		return fmt.Sprintf("%.0f %s", math.Round(value/10)*10, unit)
	}
	return fmt.Sprintf("%.2g %s", value, unit)
}

// inUnitOf gives a torque in N·m in the unit of another where that is in pounds.
func inUnitOf(nm float64, like model.Amount) (value float64, unit string) {
	base := new(big.Rat).SetFloat64(nm)
	if base == nil || like.Dimension != quantity.Torque || !strings.HasPrefix(like.Unit.Symbol, "lbf") {
		return nm, "N·m"
	}
	value, _ = like.Unit.FromBase(base).Float64()
	return value, like.Unit.Symbol
}
