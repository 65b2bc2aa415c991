package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/source"
)

// Words of what rolls on the ground, of wheels that do not, and of what keeps it from
// rolling; common practice, no source.
var (
	rolling = pattern.MustCompile(`(?i)\b(?:axles?|wheels?)\b`)
	jacksUp = pattern.MustCompile(`(?i)\bjack (?:up )?(?:the|its|under the|both) ((?:\w+ ){0,4}(?:axles?|wheels?))\b`)
	noWheel = pattern.MustCompile(`(?i)\b(?:band|grinding|hand|fly|blade|saw|gauge|idler|drive|depth|spare|steering|polishing|brush|feed|worm|star|chain|jockey|transport|support|press|packer) ?-?wheels?\b`)
	noRoll  = pattern.MustCompile(`(?i)\bchock|\b(?:centre|center|paddock|work|repair) stand\b|\bscotch|\b(?:block|wedge)\w*\b.*\bwheels?\b|\bwheels?\b.*\b(?:blocked|wedged|wedges|blocks)\b`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/no-chocks", Severity: finding.Warning, Title: "A wheel is raised and no chocks are named before",
		Why:     "The machine rolls, and the jack tips with it.",
		Source:  "common practice, no source; 29 CFR 1910.178(k)(1), from memory, asks the same of a truck at a dock",
		Setting: setting + "no-isolation = \"Nothing on it is driven\"\nsupplies = []\nspares = []\ntools = []\nwear = [\"helmet\"]\ncautions = [\"crushing\"]\n",
		Bad:     "[[step]]\nraise = \"the left end of the axle\"\n[[step]]\nsupport = \"the left end of the axle\"\n[[step]]\ninspect = \"the paint of the drawbar\"\n[[step]]\nlower = \"the left end of the axle\"\n",
		Good:    "[[step]]\nsay = \"Chock both right wheels.\"\n[[step]]\nraise = \"the left end of the axle\"\n[[step]]\nsupport = \"the left end of the axle\"\n[[step]]\ninspect = \"the paint of the drawbar\"\n[[step]]\nlower = \"the left end of the axle\"\n[[step]]\nsay = \"Take the chocks away.\"\n",
	},
	Job: func(p *Pass) {
		for _, item := range p.Job.Procedure.Start.Items {
			if noRoll.MatchString(item.Text) {
				return
			}
		}
		for _, tool := range p.Job.Listed() {
			if noRoll.MatchString(tool.Title.Text + " " + tool.Name) {
				return
			}
		}
		for _, step := range p.Job.Steps {
			words := p.tells(step) + " " + step.Expect.Text
			for _, name := range step.Tools.Names() {
				words += " " + name
			}
			if pose := p.Job.Pose(step.Pose.Name()); pose != nil {
				words += " " + pose.How.Text
			}
			if noRoll.MatchString(words) {
				return
			}
			if place, what := wheelsUp(step); what != "" {
				p.Found(finding.Finding{Place: place, Summary: fmt.Sprintf("step %d raises the %s, and nothing before it keeps the machine from rolling", step.Number, what),
					Help: "Write before it the step that sets chocks at the wheels that stay down, and put them on the list of tools; or say in start that they stand."})
				return
			}
		}
	},
})

// wheelsUp is where a step raises wheels or an axle, by its verb or in words.
func wheelsUp(step *model.Step) (place source.Place, what string) {
	for _, object := range step.Objects {
		if step.Verb.Key == "raise" && rolling.MatchString(object.Words()) && !noWheel.MatchString(object.Words()) {
			return object.Text.At, object.Words()
		}
	}
	if at := jacksUp.FindStringSubmatchIndex(step.Say.Text); at != nil && step.Verb.Key != "lower" {
		return step.Say.Inside(at[0], at[1]), step.Say.Text[at[2]:at[3]]
	}
	return source.Place{}, ""
}
