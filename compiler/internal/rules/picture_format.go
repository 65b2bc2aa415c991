package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "picture/format", Severity: finding.Error, Title: "A picture is neither PNG nor JPEG",
		Why:     "A picture that cannot be read is missing from the card.",
		Source:  "the language itself: PNG or JPEG",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\npicture = { file = \"plug.bmp\", title = \"Plug\" }\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\npicture = { file = \"plug.jpg\", title = \"Plug\" }\n",
	},
	Job: func(p *Pass) {
		for _, picture := range p.File.Pictures() {
			if picture.Readable() {
				continue
			}
			p.Found(finding.Finding{Place: picture.Path.At, Summary: fmt.Sprintf("the picture %q is neither PNG nor JPEG by its name", picture.Path.Text),
				Help: "Save the picture as PNG or JPEG, and write the name with .png, .jpg or .jpeg."})
		}
	},
})
