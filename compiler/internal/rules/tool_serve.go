package rules

import (
	"fmt"

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

// head says what a tool grips: "the drain plug (24 mm hex)".
func head(grip needs.Grip) string {
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
