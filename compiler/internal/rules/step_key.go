package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/schema"
)

// worded are the keys that say something of the deed itself, so that a verb either
// takes them or does nothing with them.
var worded = []string{"count", "torque", "angle", "passes", "order", "adapter", "condition", "by-hand", "amount", "fluid", "into", "set", "limit", "expect", "reading", "least", "most", "until", "keep", "pose"}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "language/key-without-effect", Severity: finding.Warning, Title: "A step has a key its verb does nothing with",
		Why:     "What the key says is not printed and not checked, so the figure never reaches the bench.",
		Source:  "the language itself",
		Setting: quiet,
		Bad:     "[[step]]\nclean = \"the vent\"\ntorque = \"50 N·m\"\n",
		Good:    "[[step]]\nclean = \"the vent\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			if step.Verb.Key == "" {
				continue
			}
			for _, entry := range step.Table.Entries {
				if !slices.Contains(worded, entry.Key) || slices.Contains(step.Verb.Takes, entry.Key) {
					continue
				}
				p.Found(finding.Finding{Place: step.Key(entry.Key), Summary: fmt.Sprintf("%q does nothing at a step that says %s", entry.Key, step.Verb.Key),
					Help: fmt.Sprintf("Write it at a step with one of the verbs that take it: %s; or say it in words.", strings.Join(takers(entry.Key), ", "))})
			}
		}
	},
})

// takers are the verbs that take a key.
func takers(key string) []string {
	var out []string
	for _, verb := range schema.Verbs() {
		if slices.Contains(verb.Takes, key) {
			out = append(out, verb.Key)
		}
	}
	return out
}
