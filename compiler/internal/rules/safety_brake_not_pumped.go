package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

// Parts of a brake that is worked by fluid, deeds after which its pistons stand back or
// air is in it, and words by which it is tried; common practice, no source.
var (
	brakeParts = pattern.MustCompile(`(?i)\bbrakes?[ -](?:disc |disk )?(?:pads?|callipers?|calipers?|pistons?|hoses?|pipes?|fluid|cylinders?|master cylinder|circuits?)\b|\b(?:wheel|master) cylinders?\b|\bbleed\b.*\bbrakes?\b`)
	brakeBits  = pattern.MustCompile(`(?i)\b(?:callipers?|calipers?|pads?|pistons?)\b`) // where the title names the brake
	brakeDeeds = []string{"remove", "refit", "replace", "disconnect", "connect", "bleed", "drain"}
	brakeWords = pattern.MustCompile(`(?i)\b(?:fit|put|push|renew|replace|change|swap|bleed|drain|remove|take)\b`)
	brakeTried = pattern.MustCompile(`(?i)\bpedal|\blevers?\b|\b(?:pump|press|operate|apply|work|squeeze|try|test|pull)\b.*\bbrakes?\b|\bbrakes?\b.*\b(?:holds?|bites?|firm)\b`)
	driven     = pattern.MustCompile(`(?i)\b(?:test drive|road test|drive (?:it|the|slowly|forward|off|out)|tow (?:it|the))\b`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/brake-not-pumped", Severity: finding.Warning, Title: "A brake is worked on and nobody presses the pedal before the machine moves",
		Why:     "The pads stand back from the disc, and the first push of the pedal goes to the floor with the machine rolling.",
		Source:  "common practice, no source",
		Setting: whole(quiet + "[part.brake-calliper]\nhead = \"none\"\n"),
		Bad:     "[[step]]\nremove = \"brake-calliper\"\n[[step]]\nrefit = \"brake-calliper\"\n",
		Good:    "[[step]]\nremove = \"brake-calliper\"\n[[step]]\nrefit = \"brake-calliper\"\n[[step]]\nsay = \"Press the brake pedal until it is firm.\"\n",
	},
	Words: true,
	Job: func(p *Pass) {
		if len(p.Job.Procedure.End.Items) > 0 && says(p.Job.Procedure.End.Items[0].Text, "next card", "another card") {
			return // tried there
		}
		var worked *model.Step
		for _, step := range p.Job.Steps {
			text := p.tells(step) + " " + step.Expect.Text
			for _, object := range step.Objects {
				text += " " + step.Verb.Key + " " + object.Words()
			}
			switch {
			case p.onBrake(step):
				worked = step
				if step.Verb.Key == "bleed" && brakeTried.MatchString(text) {
					worked = nil
				}
			case worked != nil && brakeTried.MatchString(text):
				worked = nil
			case worked != nil && driven.MatchString(text):
				p.unpumped(step, fmt.Sprintf("step %d moves the machine, and nobody has pressed the brake pedal since step %d", step.Number, worked.Number))
				return
			}
		}
		if worked != nil {
			p.unpumped(worked, fmt.Sprintf("step %d is the last on the brake, and no step after it presses the pedal", worked.Number))
		}
	},
})

// onBrake reports whether a step leaves the pistons of a brake back, or air in it.
func (p *Pass) onBrake(step *model.Step) bool {
	named := func(text string) bool {
		return brakeParts.MatchString(text) || says(p.Job.Procedure.Title.Text, "brake") && brakeBits.MatchString(text)
	}
	if step.Verb.Key == "" {
		return brakeWords.MatchString(step.Say.Text) && named(step.Say.Text)
	}
	return slices.Contains(brakeDeeds, step.Verb.Key) && slices.ContainsFunc(step.Objects, func(object model.Object) bool {
		fluid := object.Cavity != nil && p.fluidIn(step, object.Cavity) != nil && p.fluidIn(step, object.Cavity).Kind.Text == "brake-fluid"
		return fluid || named(step.Verb.Key+" the "+object.Words())
	})
}

func (p *Pass) unpumped(step *model.Step, summary string) {
	p.Found(finding.Finding{Place: at(step), Summary: summary,
		Help: "Write a step that presses the pedal or lever until it is firm, before the machine moves, with expect = \"…\"."})
}
