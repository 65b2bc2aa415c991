package standing

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
)

// Watched are the readings that bring the day of some job forward: by the name of the
// procedure that asks for them, the names of what is read.
type Watched map[string][]string

// Watch lists the readings that some jobs watch.
func Watch(jobs []*model.Job) Watched {
	out := Watched{}
	for _, job := range jobs {
		for _, clause := range job.Procedure.Sooner {
			of, what := readIn(job, clause), clause.Reading.Text
			if !slices.ContainsFunc(out[of], func(other string) bool { return strings.EqualFold(other, what) }) {
				out[of] = append(out[of], what)
			}
		}
	}
	return out
}

// readIn is the name of the procedure a clause takes its reading from.
func readIn(job *model.Job, clause *model.Sooner) string {
	return cmp.Or(clause.Of.Name(), job.File.Name())
}

// Prompt is a reading that brings the day of a job forward.
type Prompt struct {
	Clause *model.Sooner
	Entry  int
	Day    due.Day
	Value  string // as it was written: "38 mm"

	outside bool
}

// watch keeps what an entry says of the readings that are watched: of each only the last, by
// its day and then by its place in the book.
func (h *history) watch(e entry.Entry, number int, day due.Day, watched Watched) {
	for _, what := range watched[e.Procedure] {
		for _, reading := range e.Readings {
			if !strings.EqualFold(strings.TrimSpace(reading.What), strings.TrimSpace(what)) || reading.Value == "" && !reading.Outside {
				continue
			}
			key := [2]string{e.Procedure, strings.ToLower(strings.TrimSpace(what))}
			if before, known := h.last[key]; known && before.Day > day {
				continue
			}
			if h.last == nil {
				h.last = map[[2]string]Prompt{}
			}
			h.last[key] = Prompt{Entry: number, Day: day, Value: reading.Value, outside: reading.Outside}
		}
	}
}

// prompts are the readings that bring the day of a job forward now, and what they ask for.
//
// A clause with an interval holds until the reading is taken again and is right, however
// often the job is done meanwhile: a chain that has grown long is looked at more often from
// then on. A clause without one makes the job due on the day of the reading, until it is
// done. A reading of another procedure is spent when the job was done on its day or later.
// One of the job itself is spent when the job was done once more, on a later day or further
// down in the book; not by the entry it stands in, since what is still wrong when the work
// ends is not done.
func (b *Book) prompts(unit Unit, job *model.Job, last *Done) (out []Prompt, asks []due.Sooner) {
	kept := b.of(unit.Name)
	for _, clause := range job.Procedure.Sooner {
		of := readIn(job, clause)
		read, known := kept.last[[2]string{of, strings.ToLower(strings.TrimSpace(clause.Reading.Text))}]
		if !known {
			continue
		}
		every := interval(clause.Every, unit.Meter)
		atOnce := len(clause.Every) == 0
		if !atOnce && every == (due.Interval{}) || atOnce && spent(read, last, of == job.File.Name()) {
			continue
		}
		holds, problem := held(clause, read)
		if problem != "" {
			b.tell(read.Entry, fmt.Sprintf("the reading %q of %s %s", clause.Reading.Text, unit.Name, problem))
		}
		if !holds {
			continue
		}
		read.Clause = clause
		out, asks = append(out, read), append(asks, due.Sooner{Every: every, Day: read.Day})
	}
	return out, asks
}

// spent reports whether a reading that makes a job due at once was answered by doing it.
func spent(read Prompt, last *Done, own bool) bool {
	switch {
	case last == nil || last.Day < read.Day:
		return false
	case own && last.Day == read.Day:
		return last.Entry > read.Entry
	}
	return true
}

// held holds a reading against a clause; problem says why that cannot be done.
func held(clause *model.Sooner, read Prompt) (holds bool, problem string) {
	bound, over := clause.Under, false
	if clause.Over.Set() {
		bound, over = clause.Over, true
	}
	if !bound.Set() {
		return clause.Outside.On && read.outside, ""
	}
	if !bound.OK {
		return false, "" // a finding stands against it
	}
	amount, problems := quantity.Parse(read.Value, bound.Dimension)
	if slices.ContainsFunc(problems, func(one quantity.Problem) bool { return !one.Warning }) {
		return false, fmt.Sprintf("is %q, which cannot be held against %s", read.Value, bound.Text.Text)
	}
	ours, bounded := bound.Min()
	theirs, ends := amount.Min()
	if over {
		ours, bounded = bound.Max()
		theirs, ends = amount.Max()
	}
	if !bounded || !ends {
		return false, fmt.Sprintf("is %q, which cannot be held against %s", read.Value, bound.Text.Text)
	}
	if over {
		return theirs.Cmp(ours) > 0, ""
	}
	return theirs.Cmp(ours) < 0, ""
}

// tell puts a problem down once, however many clauses meet it.
func (b *Book) tell(number int, text string) {
	if one := (Problem{number, text}); !slices.Contains(b.Problems, one) {
		b.Problems = append(b.Problems, one)
	}
}
