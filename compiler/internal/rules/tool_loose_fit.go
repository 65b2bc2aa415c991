package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/trade"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/loose-fit", Severity: finding.Warning, Title: "Only a tool with much slack is listed for a fastener",
		Why:     "With more than 1 % slack a wrench bears on the corners alone and rounds them.",
		Source:  "common practice, no source: clearance of the tool over the width across flats",
		Setting: walled,
		Bad:     "tools = [\"wrench-7-8\"]\n[tool.wrench-7-8]\nkind = \"wrench\"\nsizes = \"7/8 in\"\n[part.plug]\nacross = \"22 mm\"\n[[step]]\nloosen = \"plug\"\n",
		Good:    "tools = [\"wrench-22\"]\n[tool.wrench-22]\nkind = \"wrench\"\nsizes = \"22 mm\"\n[part.plug]\nacross = \"22 mm\"\n[[step]]\nloosen = \"plug\"\n",
	},
	Job: func(p *Pass) {
		told, listed := map[string]bool{}, p.Job.Listed()
		for _, grip := range p.Needs.Grips {
			fits := grip.Grips(listed)
			if len(fits) == 0 || fits[0].Fit != trade.Loose || told[grip.Part.Name] || p.lacks(grip) != served {
				continue
			}
			told[grip.Part.Name] = true
			p.Found(finding.Finding{Place: grip.Object, Summary: fmt.Sprintf("%q is a loose fit on %s: %s", fits[0].Tool.Name, head(grip), fits[0].Why),
				Help: "List a tool of the right size, or turn it by hand only lightly and allow this with the reason."})
		}
	},
})
