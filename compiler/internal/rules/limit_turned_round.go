package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "limit/turned-round", Severity: finding.Warning, Title: "A limit has the other side than its kind has",
		Why:     "Play grows with wear and tread shrinks: with the bound on the wrong side every worn part passes.",
		Source:  "common practice, no source",
		Setting: quiet,
		Bad:     "[limit.bearing-play]\nlimit = \"min 0.3 mm\"\noutside = \"Set it again.\"\n[[step]]\nmeasure = \"bearing-play\"\nreading = \"Play\"\n",
		Good:    "[limit.bearing-play]\nlimit = \"max 0.3 mm\"\noutside = \"Set it again.\"\n[[step]]\nmeasure = \"bearing-play\"\nreading = \"Play\"\n",
	},
	Job: func(p *Pass) {
		tell := func(amount model.Amount, words string) {
			if !amount.OK || amount.Shape == quantity.Exact || amount.Shape == quantity.About {
				return
			}
			_, from := amount.Lowest()
			_, to := amount.Highest()
			name := " " + strings.ToLower(strings.ReplaceAll(words, "-", " ")) + " "
			has := func(list []string) string {
				for _, word := range list {
					if strings.Contains(name, " "+word+" ") {
						return word
					}
				}
				return ""
			}
			switch grows, shrinks := has(growing), has(shrinking); {
			case grows != "" && shrinks == "" && from && !to:
				p.Found(finding.Finding{Place: amount.At, Summary: fmt.Sprintf("the %s has a least and no most: %s", words, amount.Text.Text), Help: "Write max where more of it is bad."})
			case shrinks != "" && grows == "" && to && !from:
				p.Found(finding.Finding{Place: amount.At, Summary: fmt.Sprintf("the %s has a most and no least: %s", words, amount.Text.Text), Help: "Write min where less of it is bad."})
			}
		}
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				if object.Limit != nil && !step.Limit.Set() {
					tell(object.Limit.Limit, object.Limit.Words())
				}
				tell(step.Limit, object.Words())
				tell(step.SetTo, object.Words())
				if step.Verb.Key == "align" {
					tell(step.SetTo, "offset")
				}
			}
		}
	},
})

// growing is what wear makes more of, shrinking what it makes less of.
var (
	growing = []string{"play", "runout", "run out", "wear", "stretch", "offset", "difference", "leak", "leakage", "misalignment", "line of", "lean", "wobble", "taper", "ovality", "drop",
		"bearing temperature", "housing temperature", "stop time", "stopping time", "run down", "time to stop", "freezing point", "freeze point", "frost protection"}
	shrinking = []string{"tread", "lining", "pad thickness", "compression", "charge"}
)
