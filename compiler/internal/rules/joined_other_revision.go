package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "joined/other-revision", Severity: finding.Error, Title: "A joined job holds an old revision of a procedure",
		Why:     "The card in the hand says what its author has taken back, and nobody sees that it does.",
		Source:  "the procedures themselves: the joined one is a copy of them",
		Setting: quiet,
		Bad:     "joined-revisions = [\"A\"]\n[[step]]\nsay = \"Look at the plug.\"\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\n",
	},
	Job: func(p *Pass) {
		joins, revisions := p.Job.Procedure.Joins, p.Job.Procedure.Joined
		if len(joins.Items) != len(revisions.Items) {
			place := revisions.At
			if !revisions.Given {
				place = joins.At
			}
			p.Found(finding.Finding{Place: place, Summary: fmt.Sprintf("the job is joined out of %d procedures, and joined-revisions tells the revisions of %d", len(joins.Items), len(revisions.Items)),
				Help: "Write both lists again, in the order of the letters that the origins of the steps name, or join the job anew. A job that is not joined has neither, and no origins."})
			return
		}
		for _, one := range p.joins() {
			if one.anew() {
				p.Found(finding.Finding{Place: one.revision.At, Summary: fmt.Sprintf("the job was joined out of revision %s of %s, which is now %s", one.revision.Text, one.item.Text, one.job.Procedure.Revision.Text),
					Help: "Join it anew, or take over what has changed and write the new revision here.", Related: []finding.Related{{Place: one.job.Procedure.Revision.At, Text: "the revision now"}}})
			}
		}
	},
})
