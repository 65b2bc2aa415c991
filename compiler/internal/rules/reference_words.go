package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "reference/words-for-name", Severity: finding.Warning, Title: "A step says in words what has a name",
		Why:     "Words stand for nothing: the torque, the tools, the seals and the hazards of the thing are left out.",
		Source:  "the language itself",
		Setting: quiet + "[part.rope-guides]\nnotes = [\"Their grooves wear on one side\"]\n",
		Bad:     "[[step]]\ninspect = \"the rope guide\"\n",
		Good:    "[[step]]\ninspect = \"rope-guides\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				if object.Kind != "words" || !strings.Contains(object.Text.Text, " ") { // one word alone is a name
					continue
				}
				if kind, name := p.Job.Alike(step, object.Text.Text); name != "" {
					tell := p.Found
					if slices.Contains([]string{"inspect", "check", "clean", "mark"}, step.Verb.Key) { // nothing hangs on it but the place and the hazards
						tell = p.Milder
					}
					tell(finding.Finding{Place: object.Text.At, Summary: fmt.Sprintf("%q is written in words, and %s is named %q", object.Text.Text, aThing(kind), name),
						Help:  fmt.Sprintf("Write %q, or say in the words what else is meant.", name),
						Fixes: []finding.Fix{{Title: fmt.Sprintf("Write %q", name), Edits: []finding.Edit{{Place: object.Text.At, Text: fmt.Sprintf("%q", name)}}}}})
				}
			}
		}
	},
})

// aThing puts the article before a kind of thing: "an energy", "a part".
func aThing(kind string) string {
	if strings.ContainsAny(kind[:1], "aeiou") {
		return "an " + kind
	}
	return "a " + kind
}
