package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/pattern"
)

// Kinds of tool that bring grease to its place, and words of what does it where no tool
// is named; common practice, no source.
var (
	greasers = []string{"grease-gun", "pump", "brush", "oil-can", "special"}
	greased  = pattern.MustCompile(`(?i)\b(?:guns?|brush|packer|hands?|fingers?|press|pack|spatula|smear|spread|automatic|cartridge|strokes?|lever)\b`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/greases-with-nothing", Severity: finding.Note, Title: "Something is greased, and nothing brings the grease there",
		Why:     "The gun is not on the list, and it hangs at the other end of the yard.",
		Source:  "common practice, no source",
		Setting: setting + "no-isolation = \"On the bench\"\nspares = []\nwear = [\"gloves\"]\nsupplies = [\"lithium\"]\n",
		Bad:     "tools = []\n[fluid.lithium]\nkind = \"grease\"\n[[step]]\ngrease = \"the tail bearing\"\nfluid = \"lithium\"\namount = \"10 g\"\n",
		Good:    "tools = [\"gun\"]\n[fluid.lithium]\nkind = \"grease\"\n[tool.gun]\nkind = \"grease-gun\"\n[[step]]\ngrease = \"the tail bearing\"\nfluid = \"lithium\"\namount = \"10 g\"\ntools = [\"gun\"]\n",
	},
	Words: true,
	Job: func(p *Pass) {
		p.withNothing(p.greases, p.lists(greasers...), greased, "greases the %s with nothing that is named", "Add tools = [\"…\"] with the grease gun, the brush or the packer, or say that it goes in by hand.")
	},
})

// greases reports whether a step brings grease to its place.
func (p *Pass) greases(step *model.Step) bool {
	if step.Verb.Key != "lubricate" {
		return step.Verb.Key == "grease"
	}
	name := step.Fluid
	if !name.Set() && len(step.Objects) > 0 && step.Objects[0].Point != nil {
		name = step.Objects[0].Point.Fluid
	}
	fluid := p.Job.Fluid(name.Name())
	return fluid != nil && fluid.Kind.Text == "grease"
}

// cleans reports whether a step cleans.
func cleans(step *model.Step) bool { return step.Verb.Key == "clean" }

// withNothing tells of steps of one kind that name nothing to do it with, by a tool, a
// supply or a word. Where something for it is on the list, it tells only of a card on
// which other such steps name what they take.
func (p *Pass) withNothing(does func(*model.Step) bool, listed bool, words *pattern.Pattern, summary, help string) {
	if slices.ContainsFunc(p.Needs.Tools, func(use needs.Use) bool { return does(use.Step) && p.Job.Tool(use.Name) == nil }) {
		return // told elsewhere
	}
	var bare []*model.Step
	named := false
	for _, step := range p.Job.Steps {
		switch {
		case !does(step) || len(step.Objects) == 0:
		case len(step.Tools.Items) > 0, cleans(step) && (len(step.Supplies) > 0 || step.Fluid.Set()):
			named = true
		case step.Objects[0].Point != nil && len(step.Objects[0].Point.Tool.Items) > 0:
			named = true
		case words.MatchString(p.tells(step)):
		case step.Objects[0].Point != nil && words.MatchString(step.Objects[0].Point.Until.Text+" "+step.Objects[0].Point.Fitting.Text):
		default:
			bare = append(bare, step)
		}
	}
	if listed && !named {
		return
	}
	for _, step := range bare {
		p.Found(finding.Finding{Place: at(step), Summary: strings.ReplaceAll(fmt.Sprintf("step %d "+summary, step.Number, step.Objects[0].Words()), "the the ", "the "), Help: help})
	}
}

// lists reports whether a tool of one of some kinds is on the list.
func (p *Pass) lists(kinds ...string) bool {
	return slices.ContainsFunc(p.Job.Listed(), func(tool *model.Tool) bool { return slices.Contains(kinds, tool.Kind.Text) })
}
