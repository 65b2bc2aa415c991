package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/trade"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fastener/class-without-thread", Severity: finding.Note, Title: "A strength class is written and the thread is not",
		Why:     "Without the thread nobody can tell whether the torque is right for the class.",
		Source:  "ISO 898-1: a class says the strength, the thread how much of it there is",
		Setting: quiet,
		Bad:     "[part.clamp]\nhead = \"wing\"\nclass = \"8.8\"\n[[step]]\nloosen = \"clamp\"\n",
		Good:    "[part.clamp]\nhead = \"wing\"\nclass = \"8.8\"\nthread = \"M8\"\n[[step]]\nloosen = \"clamp\"\n",
	},
	Job: func(p *Pass) {
		for _, part := range p.Job.Worked() {
			if !part.Class.Set() || part.Thread.Set() {
				continue
			}
			if _, err := trade.ParseClass(part.Class.Text); err != nil {
				continue
			}
			p.Found(finding.Finding{Place: part.Class.At, Summary: fmt.Sprintf("the %s has a class and no thread", part.Words()),
				Help: "Add thread = \"…\", as it is marked or measured."})
		}
	},
})
