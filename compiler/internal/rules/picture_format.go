package rules

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "picture/format", Severity: finding.Warning, Title: "A picture is neither PNG nor JPEG",
		Why:     "A picture that cannot be read is missing from the card.",
		Source:  "the language itself: PNG or JPEG",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\npicture = { file = \"plug.bmp\", title = \"Plug\" }\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\npicture = { file = \"plug.jpg\", title = \"Plug\" }\n",
	},
	Job: func(p *Pass) {
		for _, picture := range p.pictures() {
			file := picture.Path.Text
			if slices.Contains([]string{".png", ".jpg", ".jpeg"}, strings.ToLower(path.Ext(file))) {
				continue
			}
			p.Found(finding.Finding{Place: picture.Path.At, Summary: fmt.Sprintf("the picture %q is neither PNG nor JPEG by its name", file),
				Help: "Save the picture as PNG or JPEG, and write the name with .png, .jpg or .jpeg."})
		}
	},
})
