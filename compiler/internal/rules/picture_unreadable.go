package rules

import (
	"errors"
	"fmt"
	"path"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/picture"
)

var unreadablePicture = add(Rule{
	Rule: finding.Rule{
		ID: "picture/unreadable", Severity: finding.Error, Title: "A picture is not there, or cannot be read",
		Why:     "The card would come out without it, and nobody would know what was to be seen.",
		Source:  "the language itself; PNG (ISO/IEC 15948) and JPEG (ISO/IEC 10918)",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\npicture = { file = \"missing.jpg\", title = \"Plug\" }\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\npicture = { file = \"plug.jpg\", title = \"Plug\" }\n",
	},
})

var coarsePicture = add(Rule{
	Rule: finding.Rule{
		ID: "picture/coarse", Severity: finding.Warning, Title: "A picture has too few pixels to print",
		Why:     "On paper it is a mosaic: what it is to show cannot be told.",
		Source:  "100 pixels to the inch as the least for a print that is held in the hand, over 100 mm: common practice, no source",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\npicture = { file = \"coarse.jpg\", title = \"Plug\" }\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\npicture = { file = \"plug.jpg\", title = \"Plug\" }\n",
	},
})

// fewestPixels of the longer side: 100 mm at 100 to the inch.
const fewestPixels = 394

// Pictures tells of the pictures of a file that cannot be shown as they should; look gives
// one, or why there is none, or neither where none was looked for.
func Pictures(file *model.File, look func(*model.Picture) (*picture.Picture, error)) []finding.Finding {
	var out []finding.Finding
	for _, shown := range file.Pictures() {
		seen, err := look(shown)
		switch {
		case err != nil:
			pass := &Pass{File: file, rule: unreadablePicture, out: &out}
			var fixes []finding.Fix
			if fault := new(picture.Fault); errors.As(err, &fault) && fault.Near != "" {
				fixes = write(path.Join(path.Dir(shown.Path.Text), fault.Near), shown.Path.At)
			}
			pass.Found(finding.Finding{Fixes: fixes, Place: shown.Path.At, Summary: fmt.Sprintf("the picture %q %s", shown.Path.Text, err),
				Help: fmt.Sprintf("Put a PNG or a JPEG at %s in the shop folder, write its name as it is there, or take the picture out.", shown.Place())})
		case seen != nil && max(seen.Width, seen.Height) < fewestPixels:
			pass := &Pass{File: file, rule: coarsePicture, out: &out}
			pass.Found(finding.Finding{Place: shown.Path.At, Summary: fmt.Sprintf("the picture %q has only %d × %d pixels", shown.Path.Text, seen.Width, seen.Height),
				Help: fmt.Sprintf("Take one with at least %d pixels along its longer side.", fewestPixels)})
		}
	}
	return out
}
