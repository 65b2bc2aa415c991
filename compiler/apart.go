package compiler

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/standing"
)

// apart takes an entry of a joined procedure apart into one for each procedure it was joined
// out of, since these come due, each with its own steps and readings. It is the entry itself
// for any other procedure. problem says why it cannot be.
func (r *Result) apart(e Entry, units []standing.Unit) (parts []Entry, problem string) {
	at := slices.IndexFunc(units, func(unit standing.Unit) bool { return unit.Name == e.Unit })
	if at < 0 || e.Procedure == "" {
		return []Entry{e}, ""
	}
	joined := r.jobOf(e.Procedure, units[at])
	if joined == nil || len(joined.work.Job.Procedure.Joins.Items) == 0 {
		return []Entry{e}, ""
	}
	if usual := moves(r.uses(e, units)); !slices.Equal(usual, e.Used) {
		return nil, fmt.Sprintf("%s is several procedures in one, and nobody knows which of them took more; log it without used, and then put right the entry of the one that did: --corrects N --used", e.Procedure)
	}
	for i, name := range joined.work.Job.Procedure.Joins.Names() {
		job := r.jobOf(name, units[at])
		if job == nil {
			return nil, fmt.Sprintf("%s was joined out of %s, which is not there or has an error", e.Procedure, name)
		}
		part, err := r.part(e, i, joined.work.Job, job)
		if err != nil {
			return nil, err.Error()
		}
		part.Used = moves(r.uses(part, units))
		parts = append(parts, part)
	}
	return parts, ""
}

// part is what an entry of a joined procedure says of one of those it was joined out of.
func (r *Result) part(e Entry, letter int, joined *model.Job, job *Job) (Entry, error) {
	card, err := r.card(job, Look{})
	if err != nil {
		return Entry{}, err
	}
	out := Entry{Unit: e.Unit, Procedure: job.Name, Revision: card.Revision, Machine: card.Machine, Variant: card.Variant, Date: e.Date, Who: e.Who, Meter: e.Meter, NewMeter: e.NewMeter,
		Remarks: strings.TrimSpace(e.Remarks + " [" + e.Procedure + "]")}
	own := map[int][]int{} // steps of the procedure by those of the joined one
	left := map[int]bool{} // of the procedure, that no step of the joined one does
	for _, step := range job.work.Job.Steps {
		left[step.Number] = true
	}
	for _, step := range joined.Steps {
		for _, origin := range step.Origins() {
			if origin.Letter == model.Letter(letter) {
				own[step.Number] = append(own[step.Number], origin.Number)
				delete(left, origin.Number)
			}
		}
	}
	of := func(steps []int) (out []int) {
		for _, step := range steps {
			out = append(out, own[step]...)
		}
		slices.Sort(out)
		return slices.Compact(out)
	}
	out.Done, out.Open = of(e.Done), of(e.Open)
	out.Done = slices.DeleteFunc(out.Done, func(number int) bool { return slices.Contains(out.Open, number) }) // a part of it is not done
	for _, step := range e.LeftOut {
		for _, number := range own[step.Step] {
			out.LeftOut = append(out.LeftOut, entry.LeftOut{Step: number, Why: step.Why})
		}
	}
	told := map[int]bool{}
	for _, number := range slices.Concat(out.Done, out.Open) {
		told[number] = true
	}
	for _, step := range out.LeftOut {
		told[step.Step] = true
	}
	for _, step := range job.work.Job.Steps { // the joined job makes ready and closes up once
		if !left[step.Number] || told[step.Number] {
			continue
		}
		if slices.Contains(out.Open, nearest(job.work.Job.Steps, step.Number, left)) {
			out.Open = append(out.Open, step.Number)
		} else {
			out.Done = append(out.Done, step.Number)
		}
	}
	slices.Sort(out.Open)
	slices.Sort(out.Done)
	for _, reading := range e.Readings {
		if reading.Step == 0 {
			if slices.ContainsFunc(card.Blanks, func(blank plan.Blank) bool { return blank.Of == "" && blank.Label == reading.What }) {
				out.Readings = append(out.Readings, reading)
			}
			continue
		}
		for _, number := range own[reading.Step] {
			moved := reading
			moved.Step = number
			out.Readings = append(out.Readings, moved)
		}
	}
	return out.Judged(card), nil
}

// nearest is the number of the next step of a procedure that a joined one does, or of the one
// before where nothing comes: what is left out is done when that is. It is 0 where there is none.
func nearest(steps []*model.Step, number int, left map[int]bool) int {
	for _, step := range steps[number:] {
		if !left[step.Number] {
			return step.Number
		}
	}
	for _, step := range slices.Backward(steps[:number]) {
		if !left[step.Number] {
			return step.Number
		}
	}
	return 0
}
