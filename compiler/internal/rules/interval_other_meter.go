package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "interval/other-meter", Severity: finding.Warning, Title: "The meter of the machine does not count what the interval is of",
		Why:     "When the job is due is not known, so it is never told to be.",
		Source:  "the language itself: meter says what is counted, and an interval goes by it or by the calendar",
		Setting: undated,
		Bad:     "every = \"500 h\"\n[machine]\ntitle = \"Log-deck conveyor\"\nmanual = \"LD 6\"\nmeter = \"none\"\n[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "every = \"12 months\"\n[machine]\ntitle = \"Log-deck conveyor\"\nmanual = \"LD 6\"\nmeter = \"none\"\n[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		if p.Job.Machine == nil {
			return // nobody says what its meter counts
		}
		procedure := p.Job.Procedure
		lists := [][]model.Amount{procedure.Every, procedure.First}
		for _, clause := range procedure.Sooner {
			lists = append(lists, clause.Every)
		}
		meter := p.Job.Machine.MeterUnit()
		for _, list := range lists {
			if len(list) == 0 || slices.ContainsFunc(list, func(one model.Amount) bool { return !one.OK || model.Counted(one, meter) }) {
				continue // what else stands there counts
			}
			found := finding.Finding{Place: list[0].At, Summary: fmt.Sprintf("%s has no meter, so nobody knows when %s are over", p.Job.MachineTitle(), list[0].Text.Text),
				Help: "Write an interval of the calendar, such as \"12 months\", or the meter of the machine: meter = \"hours\", \"cycles\" or \"distance\"."}
			if meter != "" {
				found.Summary = fmt.Sprintf("the meter of %s counts %s, so nobody knows when %s are over", p.Job.MachineTitle(), meter, list[0].Text.Text)
			}
			if stated := p.Job.Machine.Meter; stated.Set() {
				found.Related = []finding.Related{{Place: stated.At, Text: "what its meter counts"}}
			}
			p.Found(found)
		}
	},
})
