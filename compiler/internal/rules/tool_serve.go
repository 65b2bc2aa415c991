package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/needs"
)

// why a fastener is not served.
type lack int

const (
	served lack = iota
	notListed
	noGrip
	noHandle
	noTorqueWrench
	tooDeep
	driveTooSmall
)

// lacks tells of a fastener that the listed tools do not serve what is lacking:
// a name on the list, or a tool the shop has not.
func (p *Pass) lacks(grip needs.Grip) lack {
	if grip.Fault != nil || grip.Doubt || !grip.Known() {
		return served // the rules on fasteners and units say what is wrong
	}
	if len(grip.Listed) > 0 {
		return served
	}
	if p.otherPound(grip) {
		return served // units/mixed says what is wrong
	}
	all := p.Job.Tools()
	switch {
	case len(grip.Ways(all)) > 0:
		return notListed
	case len(grip.Grips(all)) == 0:
		return noGrip
	case grip.Torque && len(grip.Handles(all)) == 0:
		return noTorqueWrench
	}
	shallow := grip
	shallow.ReachMM = 0
	switch {
	case len(shallow.Ways(all)) > 0:
		return tooDeep
	case len(grip.AnyDrive().Ways(all)) > 0:
		return driveTooSmall
	default:
		return noHandle
	}
}

// otherPound reports whether a torque in one of two units of pounds stands in a job that
// has the other, in which the listed tools would serve it.
func (p *Pass) otherPound(grip needs.Grip) bool {
	unit := needs.TorqueOf(grip.Step, grip.Part).Unit.Symbol
	factor, ok := map[string]float64{"lbf·in": 12, "lbf·ft": 1. / 12}[unit]
	if !grip.Torque || !ok || !slices.ContainsFunc(p.Needs.Grips, func(other needs.Grip) bool {
		symbol := needs.TorqueOf(other.Step, other.Part).Unit.Symbol
		return other.Torque && symbol != unit && (symbol == "lbf·ft" || symbol == "lbf·in")
	}) {
		return false
	}
	grip.Low, grip.High = grip.Low*factor, grip.High*factor
	return len(grip.Ways(p.Job.Listed())) > 0
}

// lacking calls tell for each fastener of the job that lacks something, once a part.
func (p *Pass) lacking(want lack, tell func(grip needs.Grip)) {
	if !p.Job.Procedure.Tools.Given {
		return // tool/no-list writes the list
	}
	told := map[string]bool{}
	for i, grip := range p.Needs.Grips {
		key := fmt.Sprint(grip.Part.Name, grip.Torque)
		lacked, known := p.known[i]
		if !known {
			lacked = p.lacks(grip)
			p.known[i] = lacked
		}
		if lacked == want && !told[key] {
			told[key] = true
			tell(grip)
		}
	}
}

// head says what a tool grips: "the drain plug (24 mm hex)", and where the width is not the
// author's.
func head(grip needs.Grip) string {
	if part := grip.Part; len(grip.Widths) > 0 && !part.Across.Set() && !part.Size.Set() && part.Thread.Set() {
		return fmt.Sprintf("the %s (%s, the standard width for %s)", part.Words(), grip.Spoken(), part.Thread.Text)
	}
	return fmt.Sprintf("the %s (%s)", grip.Part.Words(), grip.Spoken())
}

// onLine reports that a fastener is not served. Where only a socket does it, and the name of
// the part tells that a hose or pipe is in its way, it says so, and one step milder: that
// rests on a word.
func (p *Pass) onLine(found finding.Finding, grip needs.Grip) {
	free := grip
	free.Access = "any"
	all := p.Job.Tools()
	if !grip.OnLine || len(free.Ways(p.Job.Listed())) == 0 && (len(grip.Ways(all)) > 0 || len(free.Ways(all)) == 0) {
		p.Found(found)
		return
	}
	found.Summary += ": a socket does not go over its hose or pipe"
	found.Help += " Where a socket does go on, write access = \"any\" at the part."
	for i := range found.Fixes {
		found.Fixes[i].Certain = false
	}
	p.Milder(found)
}
