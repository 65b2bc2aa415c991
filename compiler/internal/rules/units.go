package rules

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
)

// onProblem makes the check of a rule on units: it tells each problem of one
// kind that the amount was read with, at the very characters.
func onProblem(kind quantity.Kind) func(*Pass, model.Amount) {
	return func(p *Pass, amount model.Amount) {
		for _, problem := range amount.Problems {
			if problem.Kind != kind {
				continue
			}
			place := amount.Inside(problem.Start, problem.End)
			found := finding.Finding{Place: place, Summary: problem.Message, Help: problem.Help}
			if problem.Replace != "" {
				found.Fixes = []finding.Fix{{Title: "Write " + problem.Replace, Certain: problem.Certain,
					Edits: []finding.Edit{{Place: place, Text: problem.Replace}}}}
			}
			p.Found(found)
		}
	}
}
