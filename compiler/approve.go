package compiler

import (
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/pages"
)

// Approvals draws an approval sheet for each job, also for those an error stands
// against: how the machine stands after each step, all findings and departures, and
// every figure with its source. They are printed on A4, or on Letter where the shop
// prints on North American stock, unless the look names another.
func (r *Result) Approvals(look Look) ([]Output, []Trouble, error) {
	outputs := make([]Output, len(r.Jobs))
	troubles := make([][]Trouble, len(r.Jobs))
	faults := make([]error, len(r.Jobs))
	inParallel(len(r.Jobs), func(i int) {
		job := r.Jobs[i]
		wishes := compose.WishesOf(job.work.Job)
		own := look
		own.Stock = first(look.Stock, large(wishes.Stock))
		settled, system, err := own.settle(wishes)
		if err != nil {
			faults[i] = err
			return
		}
		content, err := compose.Approval(job.work, system, compose.Review{Walk: job.walk, Held: job.Blocked, Found: job.of(r.Findings), Accepted: job.of(r.Allowed)})
		if err != nil {
			faults[i] = err
			return
		}
		name := job.Name
		if job.Variant != "" {
			name += "-" + job.Variant
		}
		document, problems := pages.LayApproval(content, settled)
		outputs[i], troubles[i], faults[i] = draw(name+"-approval.pdf", document, problems)
		outputs[i].Jobs = r.Jobs[i : i+1 : i+1]
	})
	var all []Trouble
	for i := range outputs {
		if faults[i] != nil {
			return nil, nil, faults[i]
		}
		all = append(all, troubles[i]...)
	}
	return outputs, all, nil
}

// large is the stock of a sheet for a folder, of the family of a stock of cards.
func large(stock string) string {
	if strings.Contains(stock, "letter") {
		return "letter"
	}
	return "a4"
}

// of keeps the findings that stand in a job's own file, or in one it takes names from.
func (job Job) of(list []finding.Finding) []finding.Finding {
	var paths []string
	for _, layer := range job.work.Job.File.Layers() {
		paths = append(paths, layer.Source.Path)
	}
	var out []finding.Finding
	for _, found := range list {
		if found.Place.File != nil && slices.Contains(paths, found.Place.File.Path) && (found.Variant == "" || found.Variant == job.Variant) {
			out = append(out, found)
		}
	}
	return out
}
