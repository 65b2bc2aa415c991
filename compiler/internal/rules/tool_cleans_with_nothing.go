package rules

import (
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/pattern"
)

// Kinds of tool that take dirt off, and words of what does it where no tool is named;
// common practice, no source.
var (
	cleaners = []string{"brush", "scraper", "air-gun", "file", "pump"}
	cleaned  = pattern.MustCompile(`(?i)\b(?:rags?|cloths?|brush|broom|scrap\w*|wip\w*|towel|vacuum|water|wash\w*|rins\w*|blow\w*|air|hands?|fingers?|sweep|shovel|soap|solvent|cleaner|knock|shake|tap|bath|emery|file|paper)\b`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/cleans-with-nothing", Severity: finding.Note, Title: "Something is cleaned, and nothing to clean it with is named",
		Why:     "A sleeve leaves lint where a rag would not, and a screwdriver scores what a brush cleans.",
		Source:  "common practice, no source",
		Setting: setting + "no-isolation = \"On the bench\"\nspares = []\nwear = []\ntools = []\n",
		Bad:     "supplies = []\n[[step]]\nclean = \"the vent\"\n",
		Good:    "supplies = [\"rags\"]\n[supply.rags]\n[[step]]\nclean = \"the vent\"\nsupplies = { rags = 1 }\n",
	},
	Words: true,
	Job: func(p *Pass) {
		listed := slices.ContainsFunc(p.Job.Procedure.Supplies.Names(), func(name string) bool {
			fluid := p.Job.Fluid(name)
			return fluid == nil || fluid.Kind.Text == "cleaner" || fluid.Kind.Text == "water"
		})
		p.withNothing(cleans, listed || p.lists(cleaners...), cleaned, "cleans the %s with nothing that is named", "Add tools = [\"…\"] with the brush or the scraper, or supplies = { rags = 1 }.")
	},
})
