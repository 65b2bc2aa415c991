package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/name-and-kind", Severity: finding.Warning, Title: "A fluid is named after one kind and is of another",
		Why:     "One of the two is read off at the shelf, and it may be the wrong one.",
		Source:  "common practice, no source",
		Setting: setting + "no-isolation = \"On the bench\"\ntools = []\nspares = []\nwear = []\nsupplies = [\"gear-oil\"]\n[cavity.gearbox]\nfluid = \"gear-oil\"\ncapacity = \"1.1 L\"\n",
		Bad:     "[fluid.gear-oil]\nkind = \"hydraulic-oil\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n",
		Good:    "[fluid.gear-oil]\nkind = \"gear-oil\"\n[[step]]\nfill = \"gearbox\"\nuntil = \"it stands at the mark\"\n",
	},
	Job: func(p *Pass) {
		for _, name := range p.Needs.Fluids(p.Job) {
			fluid := p.Job.Fluid(name)
			if fluid == nil {
				continue
			}
			words := " " + strings.ToLower(apartWords.Replace(fluid.Name+" "+fluid.Title.Text)) + " "
			if said := saidKind(words, kindNames, fluid.Kind.Text); said != "" {
				p.Found(finding.Finding{Place: fluid.Kind.At, Summary: fmt.Sprintf("the fluid %q is of the kind %s", fluid.Words(), fluid.Kind.Text),
					Help: fmt.Sprintf("Write kind = %q, or name it after what it is.", said)})
			}
			if said := saidKind(words, thickenerNames, fluid.Thickener.Text); fluid.Thickener.Set() && said != "" {
				p.Found(finding.Finding{Place: fluid.Thickener.At, Summary: fmt.Sprintf("the grease %q has the thickener %s", fluid.Words(), fluid.Thickener.Text),
					Help: fmt.Sprintf("Write thickener = %q, or name it after what it is.", said)})
			}
		}
	},
})

// What names of fluids and greases say they are, by the word of the language.
var (
	kindNames = map[string]string{"gear oil": "gear-oil", "engine oil": "engine-oil", "motor oil": "engine-oil", "hydraulic oil": "hydraulic-oil", "hydraulic fluid": "hydraulic-oil",
		"compressor oil": "compressor-oil", "chain oil": "chain-oil", "brake fluid": "brake-fluid", "grease": "grease", "coolant": "coolant"}
	thickenerNames = map[string]string{"lithium": "lithium", "polyurea": "polyurea", "clay": "clay", "calcium": "calcium", "aluminium": "aluminium", "bentone": "clay"}
)

// saidKind is the one kind that words say, where it is not the kind that is written;
// empty where they say none, several, or that one.
func saidKind(words string, names map[string]string, written string) string {
	said := ""
	for name, kind := range names {
		if !strings.Contains(words, " "+name+" ") {
			continue
		}
		fluidGrease := kind == "grease" && written == "gear-oil" // NLGI 00 in gears
		if kind == written || fluidGrease || strings.HasPrefix(written, kind) || said != "" && said != kind {
			return ""
		}
		said = kind
	}
	return said
}
