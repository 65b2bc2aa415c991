package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/hazard"
	"benchleaf/compiler/internal/trade"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/caution-too-late", Severity: finding.Error, Title: "A safety message comes after the step it belongs to",
		Why:     "A warning read after the deed has warned nobody.",
		Source:  "ANSI Z535.6: the message precedes the step; MIL-STD-38784, from memory: never only after it",
		Setting: worn,
		Bad:     "[[step]]\nsharpen = \"the scraper\"\n[[step]]\nsay = \"Look at the edge.\"\n[[step.caution]]\nsignal = \"warning\"\nagainst = [\"edge\"]\nhazard = \"Sharp edge\"\nconsequence = \"It can cut your hands.\"\navoid = \"Clamp the scraper.\"\n",
		Good:    "[[step]]\nsharpen = \"the scraper\"\n[[step.caution]]\nsignal = \"warning\"\nagainst = [\"edge\"]\nhazard = \"Sharp edge\"\nconsequence = \"It can cut your hands.\"\navoid = \"Clamp the scraper.\"\n",
	},
	Job: func(p *Pass) {
		p.uncovered(tooLate, func(implied hazard.Implied, m message, steps string) {
			found := finding.Finding{
				Place: implied.Place, Firm: implied.Level <= trade.Warning,
				Summary: fmt.Sprintf("the message against %s stands at step %d, after %s", implied.Hazard.Title, m.step.Number, steps),
				Help:    "Move it to the first step that needs it, or name it in cautions of the procedure.",
				Related: []finding.Related{{Place: at(m.step), Text: "the message stands here"}},
			}
			if implied.Level <= trade.Warning {
				p.Found(found)
			} else {
				p.Milder(found)
			}
		})
	},
})
