package compiler

import (
	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
)

// Manual draws the manual of all jobs that no error stands against: what they share, a
// chapter a machine, the pick list and an index. It is printed on A4, or on Letter where
// the shop prints on North American stock, unless the look names another. There is none
// where there is no such job.
func (r *Result) Manual(look Look) ([]Output, []Trouble, error) {
	content, settled, jobs, err := r.bind(look)
	if err != nil || len(jobs) == 0 {
		return nil, nil, err
	}
	document, problems := pages.LayManual(content, settled)
	return look.draw("manual.pdf", document, problems, jobs)
}

// bind puts the manual into words.
func (r *Result) bind(look Look) (plan.Manual, pages.Look, []Job, error) {
	composed, err := r.compose(look)
	if err != nil || len(composed) == 0 {
		return plan.Manual{}, pages.Look{}, nil, err
	}
	var bound []compose.Bound
	var jobs []Job
	for _, card := range composed {
		one := compose.Bound{Card: card.content}
		for _, job := range card.jobs {
			one.Works = append(one.Works, job.work.In(look.Language))
		}
		bound, jobs = append(bound, one), append(jobs, card.jobs...)
	}
	settled, system, err := look.settleSheet(compose.WishesOf(jobs[0].work.Job))
	if err != nil {
		return plan.Manual{}, pages.Look{}, nil, err
	}
	content, err := compose.Manual(bound, system)
	return content, settled, jobs, err
}
