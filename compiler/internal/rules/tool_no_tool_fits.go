package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/needs"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/no-tool-fits", Severity: finding.Error, Title: "No tool of the shop fits a fastener",
		Why:     "The wrong size rounds the corners, and the job stops with the machine open.",
		Source:  "ISO 272, ASME B18.2.1 for the widths; the clearance rule for stand-ins is common practice",
		Setting: walled,
		Bad:     "tools = [\"wrench-17\"]\n[part.plug]\nacross = \"22 mm\"\n[[step]]\nloosen = \"plug\"\n",
		Good:    "tools = [\"wrench-17\"]\n[part.plug]\nacross = \"17 mm\"\n[[step]]\nloosen = \"plug\"\n",
	},
	Job: func(p *Pass) {
		p.lacking(noGrip, func(grip needs.Grip) {
			summary := fmt.Sprintf("no tool of the shop fits %s at step %d", head(grip), grip.Step.Number)
			help := fmt.Sprintf("Describe the tool in a table [tool.NAME]%s, or the right size at the part.", grip.Wanted())
			loose := grip
			loose.Torque = false
			if grip.Torque && len(loose.Grips(p.Job.Tools())) > 0 {
				summary = fmt.Sprintf("nothing that fits %s at step %d goes on a torque wrench", head(grip), grip.Step.Number)
				help = fmt.Sprintf("Describe a tool with a square drive in a table [tool.NAME]%s", grip.Wanted())
				if grip.Access == "wrench" {
					help += "."
				} else {
					help += "; where a hose or a pipe is in the way, with kind = \"crowfoot\"."
				}
			}
			p.onLine(finding.Finding{Place: grip.Object, Summary: summary,
				Help:    help + p.sizeless(),
				Related: []finding.Related{{Place: grip.Part.At, Text: "the part is described here"}}}, grip)
		})
	},
})

// sizeless names the adjustable wrenches nothing is known of.
func (p *Pass) sizeless() string {
	for _, tool := range p.Job.Tools() {
		if tool.Kind.Text == "adjustable" && len(tool.Sizes) == 0 {
			return fmt.Sprintf(" Of %q nobody can tell how far it opens; write sizes = \"30 mm\", its widest opening.", tool.Name)
		}
	}
	return ""
}
