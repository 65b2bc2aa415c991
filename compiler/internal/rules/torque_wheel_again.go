package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/memo"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/internal/state"
	"benchleaf/compiler/source"
)

// secondTorque are words by which a procedure sees to it that wheel nuts are tightened a
// second time.
var secondTorque = pattern.MustCompile(`(?i)\bre-?torqu|\bre-?tighten|\b(?:second|next) torque|\b(?:tighten|torque|check|go over)\b.*\b(?:again|once more)\b|\b(?:tight|torque[ds]?|nuts|bolts)\b.*\bafter (?:the first )?\d`)

// Sentences that let the nuts of a wheel go, and that tighten them.
var (
	wheelLoose = pattern.MustCompile(`(?i)\b(?:loosen|undo|remove|take|unscrew|slacken|break)\b.*\b(?:wheel|lug) (?:nuts?|bolts?)|\b(?:remove|take|lift|swap|change)\b.*\bwheels?\b`)
	wheelTight = pattern.MustCompile(`(?i)\b(?:tighten|torque)\b.*\b(?:wheel|lug) (?:nuts?|bolts?)`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "torque/wheel-not-again", Severity: finding.Warning, Title: "Wheel nuts are tightened and nobody is told to tighten them again",
		Why:     "Paint and rust under the rim settle on the first kilometres, and the nuts work loose.",
		Source:  "common practice, no source; the maker's manual says after how far",
		Setting: whole(quiet + "[part.wheel-nuts]\nhead = \"wing\"\ncount = 4\n"),
		Bad:     "[[step]]\nloosen = \"wheel-nuts\"\n[[step]]\ntighten = \"wheel-nuts\"\nby-hand = \"Wing nuts\"\n",
		Good:    "[[step]]\nloosen = \"wheel-nuts\"\n[[step]]\ntighten = \"wheel-nuts\"\nby-hand = \"Wing nuts\"\n[[step]]\nsay = \"Tighten the nuts again after 50 km.\"\n",
	},
	Words: true,
	Job: func(p *Pass) {
		if p.torquedAgain() {
			return
		}
		loosened, said := map[*model.Part]bool{}, false
		for _, step := range p.Job.Steps {
			if said && wheelTight.MatchString(step.Say.Text) {
				p.onceOnly(step.Say.At, "wheel nuts", step)
				return
			}
			said = said || wheelLoose.MatchString(step.Say.Text)
			for _, object := range step.Objects {
				switch part := object.Part; {
				case part == nil:
				case step.Verb.Key == "loosen" || step.Verb.Key == "remove":
					loosened[part] = true
					for _, name := range part.HeldBy.Names() {
						loosened[p.Job.Part(name)] = true
					}
				case step.Verb.Key == "tighten" && loosened[part] && state.OfWheel(part):
					p.onceOnly(object.Text.At, part.Words(), step)
					return
				}
			}
		}
	},
})

func (p *Pass) onceOnly(place source.Place, nuts string, step *model.Step) {
	p.Found(finding.Finding{Place: place, Summary: fmt.Sprintf("the %s are tightened at step %d, and nothing says to tighten them again after first use", nuts, step.Number),
		Help: "Write a step that records when, as in record = \"the day for the second torque\" with say = \"Tighten the nuts again after 50 km.\", or say it in end."})
}

// torquedAgain reports whether the procedure speaks of a second torque anywhere.
func (p *Pass) torquedAgain() bool {
	procedure := p.Job.Procedure
	texts := []string{procedure.Title.Text, procedure.Summary.Text, procedure.When.Text}
	for _, list := range []model.List{procedure.End, procedure.Record, procedure.Notes} {
		for _, item := range list.Items {
			texts = append(texts, item.Text)
		}
	}
	for _, step := range p.Job.Steps {
		texts = append(texts, p.tells(step))
	}
	for _, part := range p.Job.Worked() {
		texts = append(texts, partTells(part))
	}
	return slices.ContainsFunc(texts, func(text string) bool { return saysAgain.Of(p.Job.Memo, text) })
}

var saysAgain = memo.Of(secondTorque.MatchString)
