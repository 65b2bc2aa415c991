package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/pattern"
)

var (
	replaceWords = pattern.MustCompile(`(?i)\breplace (?:the |both |all |its |your )*([\w -]+?)(?: and | then | before | after |,|$)`)
	// What is worn or new is renewed, and "with another" says so.
	renewed = pattern.MustCompile(`(?i)\b(?:new|another|fresh|spare|if|when|worn|torn|cracked|damaged|old|with|by)\b`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "wording/replace-unclear", Severity: finding.Warning, Title: "“Replace” may mean put back or renew",
		Why:     "One puts the old part back in, the next goes for a new one that is not on the list.",
		Source:  "ASD-STE100: one word, one meaning; here replace puts a new part in, refit puts the old one back",
		Setting: quiet + "[part.hub-cap]\nhead = \"none\"\n",
		Bad:     "[[step]]\nremove = \"hub-cap\"\n[[step]]\nsay = \"Replace the hub cap.\"\n[[step]]\nrefit = \"hub-cap\"\n",
		Good:    "[[step]]\nremove = \"hub-cap\"\n[[step]]\nrefit = \"hub-cap\"\n",
	},
	Words: true,
	Job: func(p *Pass) {
		var removed []string
		for _, step := range p.Job.Steps {
			for _, s := range p.sentences(step.Say) {
				m := replaceWords.FindStringSubmatchIndex(s.words)
				if m == nil || renewed.MatchString(s.words) {
					continue
				}
				thing := strings.ToLower(strings.TrimSpace(s.words[m[2]:m[3]]))
				if slices.Contains(removed, strings.TrimSuffix(thing, "s")) {
					p.Found(finding.Finding{Place: s.at(m[0], m[3]), Summary: fmt.Sprintf("%q may mean put back or renew", strings.TrimSpace(s.words[m[0]:m[3]])),
						Help: "Write refit = \"…\" for the part that was taken off, or replace = \"…\" with the new part, and list it as a spare."})
				}
			}
			if step.Verb.Key != "remove" {
				continue
			}
			for _, object := range step.Objects {
				if object.Spare == nil {
					removed = append(removed, strings.TrimSuffix(strings.TrimPrefix(strings.ToLower(object.Words()), "the "), "s"))
				}
			}
		}
	},
})
