package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

// What writers leave where they mean to come back; common practice, no source. XXX
// stands alone, so that a drum marked XXX-4 is none.
var blankLeft = pattern.MustCompile(`(?i:\b(?:tbd|tbc|tba|todo|fixme|to be (?:defined|confirmed|determined|decided)|lorem ipsum)\b)|\?\?+|(?:^|\s)(?:XXX+|xxx+|_{3,}|\.{4,})(?:[\s.,;]|$)|<[a-z ]{3,20}>`)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/unfinished", Severity: finding.Warning, Title: "A place that was to be filled in is still open",
		Why:     "It prints as it stands, and whoever meets it at the machine fills it in himself.",
		Source:  "common practice, no source",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Turn the knob to TBD.\"\n",
		Good:    "[[step]]\nsay = \"Turn the knob to 3.\"\n",
	},
	Job: func(p *Pass) {
		procedure := p.Job.Procedure
		look := func(texts ...model.Text) {
			for _, text := range texts {
				if !maybeBlank(text.Text) {
					continue
				}
				if m := blankLeft.FindStringIndex(text.Text); m != nil {
					p.Found(finding.Finding{Place: text.Inside(m[0], m[1]), Summary: fmt.Sprintf("%q is still to be filled in", text.Text[m[0]:m[1]]),
						Help: "Write what belongs there, or take the sentence out until it is known."})
				}
			}
		}
		look(procedure.Title, procedure.Summary, procedure.Who, procedure.Manual, procedure.When, procedure.NoIsolation, procedure.NoClose)
		for _, list := range []model.List{procedure.Start, procedure.End, procedure.Notes, procedure.Record} {
			look(list.Items...)
		}
		for _, step := range p.Job.Steps {
			look(step.Say, step.Stage, step.Expect, step.Outside, step.Until, step.ByHand, step.Reading)
			look(step.Notes.Items...)
			look(step.Keep.Items...)
			for _, object := range step.Objects {
				look(object.Text)
			}
		}
		for _, message := range p.authored() {
			look(message.Hazard, message.Consequence, message.Avoid)
		}
	},
})

// maybeBlank reports quickly whether a text may hold one of the marks.
func maybeBlank(text string) bool {
	if text == "" {
		return false
	}
	if strings.ContainsAny(text, "<_") || strings.Contains(text, "??") || strings.Contains(text, "...") {
		return true
	}
	return blankWords.May(text)
}

// blankWords are how the marks that are words begin.
var blankWords = pattern.MustCompile(`(?i)tbd|tbc|tba|todo|fixme|to be |lorem|xxx`)
