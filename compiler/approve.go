package compiler

import (
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/quantity"
)

// Approvals draws an approval sheet for each job, also for those an error stands
// against: how the machine stands after each step, all findings and departures, and
// every figure with its source. They are printed on A4, or on Letter where the shop
// prints on North American stock, unless the look names another.
func (r *Result) Approvals(look Look) ([]Output, []Trouble, error) {
	return r.sheets(look, "-approval.pdf", r.Jobs, func(job Job, settled pages.Look, system quantity.System) (pages.Document, []pages.Problem, error) {
		content, err := compose.Approval(job.work.In(look.Language), system, compose.Review{Walk: job.walk, Held: job.Blocked, Found: job.of(r.Findings), Accepted: job.of(r.Allowed)})
		if err != nil {
			return pages.Document{}, nil, err
		}
		document, problems := pages.LayApproval(content, settled)
		return document, problems, nil
	})
}

// Records draws a record sheet for each job that no error stands against, to write
// its readings on time after time; on stock as approval sheets are.
func (r *Result) Records(look Look) ([]Output, []Trouble, error) {
	jobs := slices.DeleteFunc(slices.Clone(r.Jobs), func(job Job) bool { return job.Blocked })
	return r.sheets(look, "-record.pdf", jobs, func(job Job, settled pages.Look, system quantity.System) (pages.Document, []pages.Problem, error) {
		content, err := compose.RecordSheet(job.work.In(look.Language), system)
		if err != nil {
			return pages.Document{}, nil, err
		}
		document, problems := pages.LayRecordSheet(content, settled)
		return document, problems, nil
	})
}

// Charts draws a wall chart for each machine: what is due at which interval. They are
// printed on A3, or on Tabloid where the shop prints on North American stock, unless
// the look names another.
func (r *Result) Charts(look Look) ([]Output, []Trouble, error) {
	var machines []string
	of := map[string][]Job{}
	for _, job := range r.Jobs {
		if job.Blocked {
			continue
		}
		if of[job.Machine] == nil {
			machines = append(machines, job.Machine)
		}
		of[job.Machine] = append(of[job.Machine], job)
	}
	var outputs []Output
	var all []Trouble
	for _, machine := range machines {
		jobs := of[machine]
		var works []compose.Work
		for _, job := range jobs {
			works = append(works, job.work.In(look.Language))
		}
		wishes := compose.WishesOf(works[0].Job)
		wall := map[string]string{"a4": "a3", "letter": "tabloid"}[large(wishes.Stock)]
		own := look
		own.Stock = first(look.Stock, wall)
		wishes.DistanceMM = 0 // a chart hangs farther away than a card lies
		settled, system, err := own.settle(wishes)
		if err != nil {
			return nil, nil, err
		}
		content, err := compose.WallChart(works, system)
		if err != nil {
			return nil, nil, err
		}
		var document pages.Document
		var problems []pages.Problem
		for _, share := range []float64{1.5, 1.25, 1} { // as large as one side takes it
			wide := settled
			if wide.DistanceMM == 0 {
				wide.DistanceMM = min(share*settled.Stock.Distance, settled.Stock.Farthest())
			}
			if document, problems = pages.LayWallChart(content, wide); len(document.Sides) == 1 && len(problems) == 0 {
				break
			}
		}
		made, troubles, err := look.draw(strings.ToLower(works[0].Job.Procedure.Machine.Name())+"-chart.pdf", document, problems, jobs)
		if err != nil {
			return nil, nil, err
		}
		outputs, all = append(outputs, made...), append(all, troubles...)
	}
	return outputs, all, nil
}

// Gauge draws a page of true sizes: a ruler, and the widths across flats of the shop's
// sockets and wrenches; on stock as approval sheets are.
func (r *Result) Gauge(look Look) ([]Output, []Trouble, error) {
	if len(r.Jobs) == 0 {
		return nil, nil, nil
	}
	var works []compose.Work
	for _, job := range r.Jobs {
		works = append(works, job.work.In(look.Language))
	}
	settled, system, err := look.settleSheet(compose.WishesOf(works[0].Job))
	if err != nil {
		return nil, nil, err
	}
	content, err := compose.Gauge(works, system)
	if err != nil {
		return nil, nil, err
	}
	document, problems := pages.LayGauge(content, settled)
	return look.draw("gauge.pdf", document, problems, r.Jobs)
}

// sheets draws a sheet for each of some jobs, named after it.
func (r *Result) sheets(look Look, ending string, jobs []Job, lay func(Job, pages.Look, quantity.System) (pages.Document, []pages.Problem, error)) ([]Output, []Trouble, error) {
	outputs := make([][]Output, len(jobs))
	troubles := make([][]Trouble, len(jobs))
	faults := make([]error, len(jobs))
	inParallel(len(jobs), func(i int) {
		job := jobs[i]
		settled, system, err := look.settleSheet(compose.WishesOf(job.work.Job))
		if err != nil {
			faults[i] = err
			return
		}
		document, problems, err := lay(job, settled, system)
		if err != nil {
			faults[i] = err
			return
		}
		outputs[i], troubles[i], faults[i] = look.draw(job.named()+ending, document, problems, jobs[i:i+1:i+1])
	})
	var all []Output
	var told []Trouble
	for i := range outputs {
		if faults[i] != nil {
			return nil, nil, faults[i]
		}
		all, told = append(all, outputs[i]...), append(told, troubles[i]...)
	}
	return all, told, nil
}

// settleSheet settles the look of a sheet for a folder, which is on a large stock where none
// is asked for.
func (look Look) settleSheet(wishes compose.Wishes) (pages.Look, quantity.System, error) {
	look.Stock = first(look.Stock, large(wishes.Stock))
	return look.settle(wishes)
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
