package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/hazard"
	"benchleaf/compiler/internal/trade"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/missing-caution", Severity: finding.Error, Title: "A hazard of the work has no safety message",
		Why:     "Whoever holds the card has only the card: a hazard that is not on it is met unwarned.",
		Source:  "ANSI Z535.6 and IEC/IEEE 82079-1: safety messages stand before the step they belong to; each hazard's own source stands in its message",
		Setting: worn,
		Bad:     "[[step]]\nsharpen = \"the scraper\"\n",
		Good:    "[[step]]\nsharpen = \"the scraper\"\n[[step.caution]]\nsignal = \"warning\"\nagainst = [\"edge\"]\nhazard = \"Sharp edge\"\nconsequence = \"It can cut your hands.\"\navoid = \"Clamp the scraper.\"\n",
	},
	Job: func(p *Pass) {
		p.uncovered(missing, func(implied hazard.Implied, _ message, steps string) {
			found := finding.Finding{
				Place: implied.Place, Firm: implied.Level <= trade.Warning,
				Summary: fmt.Sprintf("%s has no safety message against %s: %s", steps, implied.Hazard.Title, implied.Why),
				Why:     fmt.Sprintf("%s %s. Source: %s.", implied.Hazard.Hazard, implied.Hazard.Consequence, implied.Hazard.Source),
				Help:    fmt.Sprintf("Write cautions = [%q] at the step or for the whole job, or a message of your own with signal = %q and against = [%q].", implied.Hazard.Key, implied.Level, implied.Hazard.Key),
			}
			if caution := p.Job.Caution(implied.Hazard.Key); caution != nil {
				caution = hazard.Message(caution, p.Hazards)
				if level, err := trade.ParseSignal(caution.Signal.Text); err != nil || !level.Covers(implied.Level) {
					found.Help = "Write a message at the step:\n" + ownMessage(implied)
				} else {
					found.Fixes = []finding.Fix{{Title: fmt.Sprintf("Add %q to the cautions of the step", implied.Hazard.Key),
						Edits: []finding.Edit{addTo(implied.Step.Cautions, implied.Step.Header, "cautions", implied.Hazard.Key)}}}
				}
			}
			if implied.Level <= trade.Warning && !implied.Hazard.FromMemory {
				p.Found(found)
			} else {
				p.Milder(found)
			}
		})
	},
})
