package compiler

import (
	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/emit/json"
	"benchleaf/compiler/internal/export"
)

// Model is everything that the files mean, as JSON in a form that stays and that
// schema.ModelJSON describes: machines, libraries and procedures, each name looked up and each
// amount as numbers, with what was found.
func (r *Result) Model() []byte {
	works := make([]export.Work, len(r.Jobs))
	inParallel(len(r.Jobs), func(i int) {
		job := r.Jobs[i]
		works[i] = export.Work{Job: job.work.Job, Needs: job.work.Needs, Hazards: job.work.Hazards, Walk: job.walk, Actions: compose.Actions(job.work), Blocked: job.Blocked}
	})
	return json.Model(export.Of(r.set, works), json.Report{Findings: r.Findings, Allowed: r.Allowed})
}
