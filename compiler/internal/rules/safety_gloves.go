package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/hazard"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/gloves-near-rotation", Severity: finding.Warning, Title: "Gloves are asked for where something turns",
		Why:     "A turning part takes hold of a glove and pulls the hand in with it.",
		Source:  "ISO 7010 P028 (no gloves); common practice",
		Setting: setting + "supplies = []\nspares = []\ntools = []\nno-isolation = \"The machine runs for the test\"\nwear = [\"gloves\", \"clothing\"]\ncautions = [\"shaft\"]\n",
		Bad:     "[[step]]\nrun = \"the tail shaft\"\nwear = [\"gloves\"]\n",
		Good:    "[[step]]\nrun = \"the tail shaft\"\n",
	},
	Job: func(p *Pass) {
		messages := p.messages()
		barring := slices.DeleteFunc(slices.Clone(messages), func(m message) bool { return !noGloves.MatchString(m.Avoid.Text) })
		for _, step := range p.Job.Steps { // a built-in message is written for the shaft that turns
			if i := slices.IndexFunc(barring, func(m message) bool { return p.speaks(m, step) && (!m.BuiltIn() || p.turns(step)) }); i >= 0 {
				p.gloved(step, messages, fmt.Sprintf("the message %q says no gloves", barring[i].Hazard.Text))
			} else if p.turns(step) {
				p.gloved(step, nil, "something turns")
			}
		}
	},
})

// noGloves finds what a message says against gloves.
var noGloves = pattern.MustCompile(`(?i)\b(?:no|without|never wear|not wear|don't wear)(?: any)? gloves\b|\bgloves off\b|\btake off (?:your |the )?gloves\b`)

// gloved tells of the gloves that a step asks for, itself or in a message of its own.
func (p *Pass) gloved(step *model.Step, messages []message, against string) {
	const help = "Take the gloves off this step, and wear them at the steps where nothing turns."
	for _, item := range step.Wear.Items {
		if glove(item) {
			p.Found(finding.Finding{Place: item.At, Summary: fmt.Sprintf("step %d asks for gloves where %s", step.Number, against), Help: help})
			return
		}
	}
	for _, m := range messages {
		if m.step == step && slices.ContainsFunc(m.Wear.Items, glove) {
			p.Found(finding.Finding{Place: at(step), Summary: fmt.Sprintf("at step %d the message %q asks for gloves where %s", step.Number, m.Hazard.Text, against),
				Help: "Write at the step which of the two holds; do the part of the work that takes gloves in a step of its own."})
			return
		}
	}
}

func glove(item model.Text) bool { return item.Text == "gloves" || item.Text == "cut-resistant-gloves" }

// speaks reports whether a message is read for a step: it stands there, or stands for the
// whole job and the step brings what it speaks against.
func (p *Pass) speaks(m message, step *model.Step) bool {
	return m.step == step || m.step == nil && slices.ContainsFunc(p.hazardsAt(step), func(one hazard.Implied) bool { return m.against(one.Hazard.Key) })
}

// turns reports whether something turns at a step; a shaft that hands are on stands still,
// unless the words say that it turns.
func (p *Pass) turns(step *model.Step) bool {
	return step.Verb.Key == "run" || step.Verb.Key == "start" || slices.ContainsFunc(p.hazardsAt(step), func(one hazard.Implied) bool {
		return one.Hazard.Key == "shaft" && says(one.Why, "turning", "rotating", "spinning", "revolving", "running", "engag")
	})
}
