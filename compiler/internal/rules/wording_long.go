package rules

import (
	"fmt"
	"strings"
	"unicode"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/memo"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

const (
	orderWords = 20 // in a sentence that says what to do
	tellWords  = 25 // in a sentence that tells how things are
)

var (
	bracketed = pattern.MustCompile(`\([^()]*\)`)
	// A figure with its unit, and a range of them, count as one word.
	oneWord = pattern.MustCompile(`\d[\d.,/]*(?:\s*(?:to|–|-|±|×|x)\s*\d[\d.,/]*)*(?:[\s\x{a0}]+[^\s\d]+)?`)
)

// marks is at least the number of words, told quickly: a figure or a bracket makes no more of it
// than a blank or a bracket does.
func marks(words string) int {
	n := 1
	for _, r := range words {
		if r == '(' || unicode.IsSpace(r) {
			n++
		}
	}
	return n
}

var counted = memo.Of(wordCount)

func wordCount(words string) int {
	words = bracketed.ReplaceAllString(words, " ")
	return len(strings.Fields(oneWord.ReplaceAllString(words, "0")))
}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/long-sentence", Severity: finding.Note, Title: "A sentence is too long to hold in the head",
		Why:     "Whoever reads at arm's length looks up in the middle, and does what stood in the first half.",
		Source:  "ASD-STE100 rules 5.1 and 6.2: at most 20 words in a step, 25 in what informs; an amount counts as one here",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Wipe the plug and the seat under it with a clean dry rag that leaves no lint until no oil shows on either of them.\"\n",
		Good:    "[[step]]\nsay = \"Wipe the plug and the seat under it with a rag that leaves no lint. No oil shows on either of them.\"\n",
	},
	Job: func(p *Pass) {
		look := func(text model.Text, most int, what string, args ...any) {
			for _, s := range p.sentences(text) {
				if marks(s.words) <= most {
					continue
				}
				if n := counted.Of(p.Job.Memo, s.words); n > most {
					p.Found(finding.Finding{Place: s.place(), Summary: fmt.Sprintf("%s has %d words in one sentence, from %q", fmt.Sprintf(what, args...), n, s.head()),
						Help: fmt.Sprintf("Make two of it; %d words are enough for one. An amount counts as one word.", most)})
				}
			}
		}
		for _, step := range p.Job.Steps {
			for _, text := range orders(step) {
				look(text, orderWords, "step %d", step.Number)
			}
			for _, text := range append([]model.Text{step.Expect, step.Until}, step.Notes.Items...) {
				look(text, tellWords, "step %d", step.Number)
			}
		}
		for _, note := range p.Job.Procedure.Notes.Items {
			look(note, tellWords, "the note")
		}
		for _, message := range p.authored() {
			const what = "the message on %q"
			look(message.Avoid, orderWords, what, message.Hazard.Text)
			look(message.Hazard, tellWords, what, message.Hazard.Text)
			look(message.Consequence, tellWords, what, message.Hazard.Text)
		}
	},
})
