package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "picture/shows-other-count", Severity: finding.Warning, Title: "A picture has not as many names as call-outs",
		Why:     "A number without a name says nothing, and a name without a number is looked for in vain.",
		Source:  "the language itself: a name for each point, in their order",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\npicture = { file = \"plug.jpg\", title = \"Plug\", points = [[0.2, 0.3], [0.5, 0.5]], shows = [\"plug\"] }\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\npicture = { file = \"plug.jpg\", title = \"Plug\", points = [[0.2, 0.3], [0.5, 0.5]], shows = [\"plug\", \"breather\"] }\n",
	},
	Job: func(p *Pass) {
		for _, picture := range p.File.Pictures() {
			names, points := len(picture.Shows.Items), len(picture.Points)
			if names == points || names == 0 {
				continue
			}
			p.Found(finding.Finding{Place: picture.Key("shows"), Summary: fmt.Sprintf("the picture has %d call-outs and %d names for them", points, names),
				Help: "Write in shows what each of the points shows, in their order."})
		}
	},
})
