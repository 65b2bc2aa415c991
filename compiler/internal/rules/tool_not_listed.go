package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/needs"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/not-listed", Severity: finding.Error, Title: "A tool the work takes is not on the list",
		Why:     "The walk back to the tool wall is made with the machine open.",
		Source:  "S1000D: every support item used in a step stands in the list",
		Setting: walled,
		Bad:     "tools = [\"socket-16\"]\n[part.plug]\nacross = \"16 mm\"\n[[step]]\nloosen = \"plug\"\n",
		Good:    "tools = [\"socket-16\", \"ratchet\"]\n[part.plug]\nacross = \"16 mm\"\n[[step]]\nloosen = \"plug\"\n",
	},
	Job: func(p *Pass) {
		procedure := p.Job.Procedure
		if !procedure.Tools.Given {
			return
		}
		told := map[string]bool{}
		for _, use := range p.Needs.Tools {
			if procedure.Tools.Has(use.Name) || told[use.Name] || p.Job.Tool(use.Name) == nil {
				continue
			}
			told[use.Name] = true
			p.Found(finding.Finding{Place: use.At, Summary: fmt.Sprintf("step %d takes %q, which is not on the list of tools", use.Step.Number, use.Name),
				Help:  fmt.Sprintf("Add %q to tools of the procedure.", use.Name),
				Fixes: []finding.Fix{{Title: fmt.Sprintf("Add %q to tools", use.Name), Certain: true, Edits: []finding.Edit{addTo(procedure.Tools, procedure.Header, "tools", use.Name)}}}})
		}
		more := map[string]int{} // steps that lack the same tools
		p.lacking(notListed, func(grip needs.Grip) { more[names(p.nearestWay(grip))]++ })
		said := map[string]bool{}
		p.lacking(notListed, func(grip needs.Grip) {
			way := p.nearestWay(grip)
			if said[names(way)] {
				return
			}
			said[names(way)] = true
			var fixes []finding.Fix
			if len(way) == 1 {
				fixes = []finding.Fix{{Title: fmt.Sprintf("Add %q to tools", way[0]), Certain: true, Edits: []finding.Edit{addTo(procedure.Tools, procedure.Header, "tools", way[0])}}}
			}
			what := "turns"
			if grip.Torque {
				what = "tightens"
			}
			summary := fmt.Sprintf("no listed tool %s %s at step %d", what, head(grip), grip.Step.Number)
			if n := more[names(way)] - 1; n > 0 {
				summary += fmt.Sprintf(" (%d more lack the same)", n)
			}
			p.onLine(finding.Finding{Place: grip.Object, Summary: summary,
				Help: fmt.Sprintf("Add %s to tools of the procedure.", names(way)), Fixes: fixes,
				Related: []finding.Related{{Place: grip.Part.At, Text: "the part is described here"}}}, grip)
		})
	},
})

// nearestWay is what has to be added to the list so that a fastener is served:
// the fewest tools, an exact size before a stand-in.
func (p *Pass) nearestWay(grip needs.Grip) []string {
	var best []string
	for _, way := range grip.Handy(p.Job.Tools()) {
		var add []string
		for _, name := range way {
			if !p.Job.Procedure.Tools.Has(name) {
				add = append(add, name)
			}
		}
		if best == nil || len(add) < len(best) {
			best = add
		}
	}
	return best
}
