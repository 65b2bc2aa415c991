package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/hazard"
	"benchleaf/compiler/internal/trade"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/signal-too-low", Severity: finding.Error, Title: "A safety message has too mild a signal word",
		Why:     "The signal word tells how bad it can get: CAUTION promises that nobody is maimed.",
		Source:  "ANSI Z535.6: DANGER and WARNING for death or serious injury, CAUTION for minor or moderate injury",
		Setting: worn,
		Bad:     "[[step]]\nsupport = \"the infeed end\"\n[[step.caution]]\nsignal = \"caution\"\nagainst = [\"crushing\"]\nhazard = \"Raised end\"\nconsequence = \"It can come down.\"\navoid = \"Use rated stands.\"\n",
		Good:    "[[step]]\nsupport = \"the infeed end\"\n[[step.caution]]\nsignal = \"danger\"\nagainst = [\"crushing\"]\nhazard = \"Raised end\"\nconsequence = \"It will crush whoever is under it.\"\navoid = \"Use rated stands.\"\n",
	},
	Job: func(p *Pass) {
		p.uncovered(tooLow, func(implied hazard.Implied, m message, steps string) {
			reason := implied.Why
			if implied.Raised != "" {
				reason = implied.Raised
			}
			found := finding.Finding{
				Place: implied.Place, Firm: implied.Level <= trade.Warning,
				Summary: fmt.Sprintf("the message against %s says %s, and %s needs %s: %s", implied.Hazard.Title, m.level.Word(), steps, implied.Level.Word(), reason),
				Help:    "Write a message of its own at the step:\n" + ownMessage(implied),
			}
			if m.Signal.At.Known() {
				found.Help = fmt.Sprintf("Write signal = %q in the message, or a second message at the step:\n%s", implied.Level, ownMessage(implied))
				found.Related = []finding.Related{{Place: m.Signal.At, Text: "the signal word of the message"}}
			}
			if implied.Hazard.FromMemory {
				p.Milder(found)
			} else {
				p.Found(found)
			}
		})
	},
})
