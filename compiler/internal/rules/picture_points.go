package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "picture/point-off", Severity: finding.Warning, Title: "A call-out lies outside its picture",
		Why:     "The number points at nothing, or stands on the words beside the picture.",
		Source:  "the language itself: points are parts of the width and the height, from 0 to 1",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\npicture = { file = \"plug.png\", title = \"Plug\", points = [[25, 50]] }\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\npicture = { file = \"plug.png\", title = \"Plug\", points = [[0.25, 0.5]] }\n",
	},
	Job: func(p *Pass) {
		for _, picture := range p.File.Pictures() {
			for i, point := range picture.Points {
				if point.X >= 0 && point.X <= 1 && point.Y >= 0 && point.Y <= 1 { // not a number fails this as well
					continue
				}
				p.Found(finding.Finding{Place: picture.Key("points"), Summary: fmt.Sprintf("call-out %d at [%g, %g] lies outside the picture", i+1, point.X, point.Y),
					Help: "Write parts of the width and the height, from the left and from the top: [0.25, 0.5] is a quarter across and half-way down."})
			}
		}
	},
})
