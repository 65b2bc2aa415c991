package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/passes", Severity: finding.Error, Title: "The passes do not rise to the full torque",
		Why:     "After the last pass the fastener is left at less than its torque, or at more; a pass in newton metres among percents does the same.",
		Source:  "the language itself: passes are shares of the torque in percent, rising to 100; the way of ASME PCC-1, from memory, which ends with rounds at 100",
		Setting: walled,
		Bad:     "tools = [\"socket-16\", \"torque-wrench\"]\n[part.plug]\nacross = \"16 mm\"\ntorque = \"80 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\npasses = [30, 60, 80]\n",
		Good:    "tools = [\"socket-16\", \"torque-wrench\"]\n[part.plug]\nacross = \"16 mm\"\ntorque = \"80 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\npasses = [30, 60, 100, 100]\n",
	},
	Job: func(p *Pass) {
		told := map[model.Whole]bool{}
		p.tightened(func(step *model.Step, part *model.Part, _ model.Amount) {
			passes := passesOf(step, part)
			if len(passes) == 0 || told[passes[0]] {
				return
			}
			told[passes[0]] = true
			last := passes[len(passes)-1]
			for i, pass := range passes[1:] {
				before := passes[i]
				if pass.N < before.N || pass.N == before.N && pass.N != 100 {
					p.Found(finding.Finding{Place: pass.At, Summary: fmt.Sprintf("a pass of %d %% comes after one of %d %%", pass.N, before.N),
						Help: "Write the passes in percent of the torque, each higher than the one before: passes = [30, 60, 100]."})
					return
				}
			}
			if last.N != 100 {
				p.Found(finding.Finding{Place: last.At, Summary: fmt.Sprintf("the last pass is at %d %% of the torque, and not at 100", last.N),
					Help: "End the passes with 100. They are percents of the torque, not newton metres: passes = [30, 60, 100]."})
			}
		})
	},
})

// roughPass is how far under its range a wrench still serves an early pass, which need not be exact.
const roughPass = 0.9

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/pass-below-wrench", Severity: finding.Warning, Title: "No listed torque wrench can be set to an early pass",
		Why:     "Below its range the wrench does not click, and the first pass becomes the full torque.",
		Source:  "ISO 6789:2003, test points 20, 60 and 100 %; ISO 6789:2017, from the lowest marked value; common practice for passes",
		Setting: walled,
		Bad:     "tools = [\"socket-16\", \"torque-wrench\"]\n[part.plug]\nacross = \"16 mm\"\ntorque = \"40 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\npasses = [20, 60, 100]\n",
		Good:    "tools = [\"socket-16\", \"torque-wrench\"]\n[part.plug]\nacross = \"16 mm\"\ntorque = \"40 N·m\"\ncondition = \"dry\"\n[[step]]\ntighten = \"plug\"\npasses = [50, 100]\n",
	},
	Job: func(p *Pass) {
		told := map[model.Whole]bool{}
		for _, grip := range p.Needs.Grips {
			passes := passesOf(grip.Step, grip.Part)
			if !grip.Torque || len(grip.Listed) == 0 || len(passes) < 2 || told[passes[0]] {
				continue
			}
			told[passes[0]] = true
			for _, pass := range passes {
				set := (grip.Low + grip.High) / 2 * float64(pass.N) / 100
				if pass.N >= 100 || p.wrenchFor(set) {
					continue
				}
				value, unit := inUnitOf(set, needs.TorqueOf(grip.Step, grip.Part))
				p.Found(finding.Finding{Place: pass.At, Summary: fmt.Sprintf("no listed torque wrench can be set to %.3g %s, which is %d %% of the torque of the %s", value, unit, pass.N, grip.Part.Words()),
					Help: "Begin with a higher share, list a smaller torque wrench for the first pass, or leave the pass out and say that the bolts are run down by hand."})
				break
			}
		}
	},
})

// wrenchFor reports whether a listed torque wrench can be set to a torque in N·m, or nearly.
func (p *Pass) wrenchFor(nm float64) bool {
	for _, tool := range p.Job.Listed() {
		if low, high, ok := needs.Usable(tool); ok && tool.Kind.Text == "torque-wrench" && low*roughPass <= nm && nm <= high {
			return true
		}
	}
	return false
}
