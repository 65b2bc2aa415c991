package rules

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/trade"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fastener/unknown-thread", Severity: finding.Warning, Title: "A thread is in no list of threads",
		Why:     "A thread that does not exist sends someone for a tap, a nut or a plug that is not sold.",
		Source:  "ISO 261, ISO 262, ASME B1.1, ISO 228-1, ISO 7-1, ASME B1.20.1",
		Setting: walled,
		Bad:     "tools = [\"wrench-16\"]\n[part.plug]\nthread = \"M61x1.5\"\nacross = \"16 mm\"\n[[step]]\nloosen = \"plug\"\n",
		Good:    "tools = [\"wrench-16\"]\n[part.plug]\nthread = \"M10\"\nacross = \"16 mm\"\n[[step]]\nloosen = \"plug\"\n",
	},
	Job: func(p *Pass) {
		for _, part := range p.Job.Worked() {
			if !part.Thread.Set() || !part.Across.Set() {
				continue // without a width fastener/unknown-size says it
			}
			if _, err := trade.ParseThread(part.Thread.Text); err != nil {
				p.Found(finding.Finding{Place: part.Thread.At, Summary: err.Error(), Help: "Write the thread as it is marked or measured; if it is a special one, allow this and say what it is.", Fixes: meant(err, part.Thread.At)})
			}
		}
	},
})
