package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "picture/path", Severity: finding.Error, Title: "The path of a picture leads out of the shop folder",
		Why:     "A card must come out the same on every machine that has the shop folder, and nothing else is read.",
		Source:  "the language itself: a path from the file, with forward slashes",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\npicture = { file = \"../../plug.png\", title = \"Plug\" }\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\npicture = { file = \"pictures/plug.png\", title = \"Plug\" }\n",
	},
	Job: func(p *Pass) {
		for _, picture := range p.File.Pictures() {
			file := picture.Path.Text
			found := finding.Finding{Place: picture.Path.At}
			switch {
			case picture.Outside():
				found.Summary, found.Help = fmt.Sprintf("the picture %q is outside the shop folder", file), "Copy the picture into the shop folder and write its path from this file: \"pictures/plug.png\"."
			case strings.Contains(file, `\`):
				found.Summary, found.Help = fmt.Sprintf("the path %q has backslashes", file), fmt.Sprintf("Write %q.", strings.ReplaceAll(file, `\`, "/"))
			default:
				continue
			}
			p.Found(found)
		}
	},
})
