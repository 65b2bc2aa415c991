package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/trade"
)

var _ = add(Rule{
	Everywhere: true,
	Rule: finding.Rule{
		ID: "tool/idle", Severity: finding.Note, Title: "A listed tool does only what another listed tool does",
		Why:     "It is carried to the machine and back for nothing, or the step it is meant for is not written.",
		Source:  "common practice, no source",
		Setting: walled,
		Bad:     "tools = [\"socket-16\", \"torque-wrench\", \"torque-wrench-300\"]\n[part.plug]\nacross = \"16 mm\"\ntorque = \"80 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\n",
		Good:    "tools = [\"socket-16\", \"torque-wrench\"]\n[part.plug]\nacross = \"16 mm\"\ntorque = \"80 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\n",
	},
	Job: func(p *Pass) {
		if !p.Job.Procedure.Tools.Given {
			return
		}
		kit := p.kit(p.Job.Listed())
		for _, item := range p.Job.Procedure.Tools.Items {
			tool := p.Job.Tool(item.Name())
			if tool == nil || slices.Contains(kit, tool.Name) || p.mentioned(tool) {
				continue
			}
			if other, grip := p.instead(tool, kit); other != nil {
				p.Found(finding.Finding{Place: item.At, Summary: fmt.Sprintf("%q is listed beside %q, which serves the same: %s", tool.Name, other.Name, head(grip)),
					Help: fmt.Sprintf("List one of the two, or name this one with tools = [%q] at the step that takes it.", tool.Name)})
			}
		}
	},
})

// instead finds the tool of the kit that serves, as well and in the same way, every fastener
// that an idle one would serve, with the first of them.
func (p *Pass) instead(idle *model.Tool, kit []string) (*model.Tool, needs.Grip) {
	var served []needs.Grip
	all := p.Job.Tools()
	for _, grip := range p.Needs.Grips {
		if len(grip.Listed) == 0 && slices.ContainsFunc(grip.Ways(all), func(way needs.Set) bool { return slices.Contains(way, idle.Name) }) {
			return nil, needs.Grip{} // it may serve there, once the list is whole
		}
		if slices.ContainsFunc(grip.Listed, func(way needs.Set) bool { return slices.Contains(way, idle.Name) }) {
			served = append(served, grip)
		}
	}
	for _, name := range kit {
		if other := p.Job.Tool(name); other != nil && len(served) > 0 && p.stands(other, idle, served) {
			return other, served[0]
		}
	}
	return nil, needs.Grip{}
}

// stands reports whether one tool stands for another at some fasteners. What a mechanic may
// want beside it does not count: a second wrench that holds the other end of a bolt, another
// length or drive, a bar that breaks loose, a wrench that reaches down to the first pass.
func (p *Pass) stands(other, idle *model.Tool, served []needs.Grip) bool {
	if other.Kind.Text != idle.Kind.Text || other.Drive.Text != idle.Drive.Text || other.Length.Text != idle.Length.Text {
		return false
	}
	switch idle.Kind.Text {
	case "torque-wrench":
		return p.settable(other, idle, served)
	case "ratchet":
		return true
	case "wrench", "adjustable", "socket", "hex-key", "hex-bit", "bit", "screwdriver", "crowfoot":
		return !slices.ContainsFunc(served, func(grip needs.Grip) bool {
			between := idle.Kind.Text == "wrench" || idle.Kind.Text == "adjustable"
			return len(grip.Widths) > 1 || between && !strings.Contains(strings.ToLower(grip.Part.Words()), "plug") || fitOf(grip, other) > fitOf(grip, idle)
		})
	}
	return false
}

// fitOf is how well a tool goes on a fastener; worse than any where it does not.
func fitOf(grip needs.Grip, tool *model.Tool) trade.Fitting {
	for _, fitting := range grip.Grips([]*model.Tool{tool}) {
		return fitting.Fit
	}
	return trade.Loose + 1
}

// settable reports whether a torque wrench can be set to all that another can be wanted for,
// the early passes with it, and no step speaks of a torque that is not worked out. In the
// lower half of its range it does not stand for a smaller wrench.
func (p *Pass) settable(other, idle *model.Tool, served []needs.Grip) bool {
	low, high, ok := needs.Usable(other)
	below, above, known := needs.Usable(idle)
	if !ok || !known {
		return false
	}
	if above < high && slices.ContainsFunc(served, func(grip needs.Grip) bool { return grip.Low+grip.High < high }) {
		return false
	}
	for _, step := range p.Job.Steps {
		if step.Torque.Set() && !slices.ContainsFunc(p.Needs.Grips, func(grip needs.Grip) bool { return grip.Step == step && grip.Torque }) {
			return false
		}
	}
	for _, grip := range p.Needs.Grips {
		for _, pass := range passesOf(grip.Step, grip.Part) {
			set := (grip.Low + grip.High) / 2 * float64(pass.N) / 100
			if grip.Torque && below*roughPass <= set && set <= above && (set < low || high < set) {
				return false
			}
		}
	}
	return true
}

// mentioned reports whether a step names a tool, outright or in words.
func (p *Pass) mentioned(tool *model.Tool) bool {
	if slices.ContainsFunc(p.Needs.Tools, func(use needs.Use) bool { return use.Name == tool.Name }) {
		return true
	}
	title := strings.ToLower(tool.Title.Text)
	for _, step := range p.Job.Steps {
		if p.says(step, model.Spoken(tool.Name), tool.Name) || title != "" && p.says(step, title) {
			return true
		}
	}
	return false
}
