package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

// A label or the name of a button has three words at most; four in capitals are a sentence.
var shouted = pattern.MustCompile(`\p{Lu}{2,}(?:[ ,]+\p{Lu}+){3,}\b`)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/capitals", Severity: finding.Note, Title: "A sentence stands in capitals",
		Why:     "Words in capitals all have the same outline; they are read slower and taken in less.",
		Source:  "NASA CR-177605 (Degani 1992): long text in lower case",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"WIPE THE PLUG AND THE SEAT.\"\n",
		Good:    "[[step]]\nsay = \"Wipe the plug and the seat, then press STOP.\"\n",
	},
	Job: func(p *Pass) {
		look := func(texts ...model.Text) {
			for _, text := range texts {
				if !maybeShouted(text.Text) {
					continue
				}
				if m := shouted.FindStringIndex(text.Text); m != nil {
					p.Found(finding.Finding{Place: text.Inside(m[0], m[1]), Summary: fmt.Sprintf("%q stands in capitals", text.Text[m[0]:m[1]]),
						Help: "Write it in small letters; **two stars** on each side make a word stand out in say."})
				}
			}
		}
		look(p.Job.Procedure.Title)
		look(p.Job.Procedure.Notes.Items...)
		for _, step := range p.Job.Steps {
			look(step.Say, step.Expect, step.Outside, step.Until, step.Stage)
			look(step.Notes.Items...)
		}
		for _, message := range p.authored() {
			look(message.Hazard, message.Consequence, message.Avoid)
		}
	},
})

// maybeShouted reports quickly whether a text may hold four words in capitals: the first of two
// letters, and letters that are not of ASCII may be capitals.
func maybeShouted(text string) bool {
	capitals := 0
	for i := range len(text) {
		if c := text[i]; 'A' <= c && c <= 'Z' || c >= 0xC0 {
			capitals++
		}
	}
	return capitals >= 5
}
