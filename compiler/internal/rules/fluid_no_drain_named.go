package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/plug-not-named", Severity: finding.Warning, Title: "A cavity does not say by which plug it is drained or filled",
		Why:     "Nothing can then tell whether the plug is out before it is drained, and in and tight before it is filled.",
		Source:  "the language itself",
		Setting: setting + "no-isolation = \"On the bench\"\ntools = [\"pan\"]\nspares = []\nwear = [\"gloves\"]\nsupplies = []\ncautions = [\"used-oil\"]\n[tool.pan]\nkind = \"container\"\nholds = \"5 L\"\n[fluid.oil]\nkind = \"gear-oil\"\n[part.drain-plug]\nhead = \"wing\"\n",
		Bad:     "[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\n[[step]]\nremove = \"drain-plug\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\nuntil = \"it only drips\"\n",
		Good:    "[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\ndrain = \"drain-plug\"\n[[step]]\nremove = \"drain-plug\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\nuntil = \"it only drips\"\n",
	},
	Job: func(p *Pass) {
		opened := map[string]*model.Part{}
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				if part := object.Part; part != nil && slices.Contains([]string{"remove", "open", "loosen"}, step.Verb.Key) {
					for _, word := range strings.Fields(strings.ToLower(strings.ReplaceAll(part.Words()+" "+part.Name, "-", " "))) {
						opened[word] = part
					}
				}
				cavity := object.Cavity
				if cavity == nil {
					continue
				}
				key, named, words := "drain", cavity.Drain, []string{"drain", "drainage"}
				if step.Verb.Key == "fill" {
					key, named, words = "fill", cavity.Fill, []string{"fill", "filler"}
				} else if step.Verb.Key != "drain" {
					continue
				}
				for _, word := range words {
					part := opened[word]
					if part != nil && !named.Set() && !p.plugsOther(part, cavity) && !(key == "drain" && says(p.tells(step)+" "+strings.Join(step.Tools.Names(), " "), "pump", "suck", "siphon", "syringe", "extractor", "bail", "scoop")) {
						p.Found(finding.Finding{Place: cavity.At, Summary: fmt.Sprintf("the %s does not say that it is %sed by the %s", cavity.Words(), key, part.Words()),
							Help: fmt.Sprintf("Add %s = %q to it.", key, part.Name), Related: []finding.Related{{Place: object.Text.At, Text: "here"}}})
						break
					}
				}
			}
		}
	},
})

// plugsOther reports whether a part is the plug of another cavity.
func (p *Pass) plugsOther(part *model.Part, cavity *model.Cavity) bool {
	return slices.ContainsFunc(p.Job.Cavities(), func(other *model.Cavity) bool {
		return other != cavity && (other.Drain.Name() == part.Name || other.Fill.Name() == part.Name)
	})
}
